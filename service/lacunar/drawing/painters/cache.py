"""Where derived files are kept: one folder per content, written whole or not at all.

A folder appears by renaming a finished one, so two processes that start at once cannot disturb each
other: the second finds the name taken by the same content and uses that.
"""

import contextlib
import errno
import os
import shutil
import stat
import sys
import tempfile
from collections.abc import Callable, Iterator
from pathlib import Path

from lacunar.drawing.painters.unavailable import DrawingUnavailable

CACHE_VARIABLE = "LACUNAR_CACHE"


def cached_folder(folder_name: str, fill: Callable[[Path, Path], None]) -> Path:
    """The folder of that name in the cache; where it is in none yet, `fill` writes its files first.

    `fill` is given the folder to write into and the one it will become.

    The cache is the folder that the environment variable LACUNAR_CACHE names; without it the first
    of these that can be written: `var/lacunar` in the Python environment, `lacunar` in the user's
    cache folder, one of the user's own in the folder for temporary files. Raises
    `DrawingUnavailable` where none can be written.
    """
    failures: list[str] = []
    for place in _places():
        try:
            return _written(place, folder_name, fill)
        except OSError as error:
            failures.append(f"{place} ({error.strerror or error})")
    raise DrawingUnavailable(
        f"The drawing fonts can be kept in no folder: tried {', '.join(failures)}; "
        f"let the environment variable {CACHE_VARIABLE} name a folder that can be written."
    )


def _places() -> Iterator[Path]:
    chosen = os.environ.get(CACHE_VARIABLE)
    if chosen:
        yield Path(chosen).absolute()
        return
    yield Path(sys.prefix, "var", "lacunar")
    for variable in ("LOCALAPPDATA", "XDG_CACHE_HOME"):
        if os.environ.get(variable):
            yield Path(os.environ[variable], "lacunar")
    home = Path("~").expanduser()
    if home.is_absolute():
        yield home / ".cache" / "lacunar"
    yield _temporary_place()


def _temporary_place() -> Path:
    """A folder by the user's number: others write in the folder for temporary files, too."""
    user = f"-{os.getuid()}" if hasattr(os, "getuid") else ""
    return Path(tempfile.gettempdir(), f"lacunar{user}")


def _claim(place: Path) -> None:
    """Make the temporary place, for this user alone; raises OSError where somebody else has it.

    Whoever makes a folder of that name first could otherwise give us fonts to read.
    """
    if not hasattr(os, "getuid"):
        return  # there the folder for temporary files is the user's own
    with contextlib.suppress(FileExistsError):
        place.mkdir(mode=0o700, parents=True)
    found = place.lstat()
    private = stat.S_ISDIR(found.st_mode) and not found.st_mode & 0o077
    if found.st_uid != os.getuid() or not private:
        raise PermissionError(errno.EPERM, "not a folder of this user alone", str(place))


def _written(place: Path, folder_name: str, fill: Callable[[Path, Path], None]) -> Path:
    if place == _temporary_place():
        _claim(place)
    target = place / folder_name
    if target.is_dir():
        return target
    place.mkdir(parents=True, exist_ok=True)
    unfinished = Path(tempfile.mkdtemp(prefix=f".{folder_name}-", dir=place))
    try:
        fill(unfinished, target)
        _open_to_readers(unfinished)
        unfinished.rename(target)
    except OSError:
        if not target.is_dir():
            raise
    finally:
        shutil.rmtree(unfinished, ignore_errors=True)
    return target


def _open_to_readers(folder: Path) -> None:
    """Let other users read what the first one wrote; a temporary folder is private otherwise."""
    folder.chmod(0o755)
    for path in folder.rglob("*"):
        path.chmod(0o755 if path.is_dir() else 0o644)
