"""Sets up a private environment for Lacunar on a machine that has nothing but Python.

`draw_examples.py` and `tests/run.py` call `run_script`. The steps, in order:

1. refuse a Python that is too old;
2. find the system packages that are missing, name them, and install them where that is allowed;
3. make `.venv` in the checkout and fill it from `requirements.lock`, hashes checked;
4. write the stamp, last of all, so that an interrupted set-up is never taken for a complete one.

Step 3 is skipped while the stamp fits. Outside the checkout nothing is touched but the named
system packages. These scripts must be readable by an old Python 3 so that it can be refused in
words: nothing newer than Python 3.6 may stand in them.
"""

import contextlib
import ctypes
import ctypes.util
import hashlib
import importlib
import importlib.util
import os
import shutil
import subprocess
import sys
from typing import Callable, Dict, Iterator, List, Mapping, NamedTuple, Optional, Sequence, Tuple

OLDEST_PYTHON = (3, 11)
EXIT_ENVIRONMENT = 3
EXIT_INTERRUPTED = 130

ROOT = os.path.dirname(os.path.dirname(os.path.abspath(__file__)))
ENVIRONMENT = os.path.join(ROOT, ".venv")
LOCK = os.path.join(ROOT, "requirements.lock")
STAMP_NAME = "lacunar-set-up"
UNFINISHED = "unfinished"

# What an environment is made from: a change in any of them asks for a new one.
SOURCES = (LOCK, os.path.join(ROOT, "pyproject.toml"), os.path.abspath(__file__))


class SetUpError(Exception):
    """The machine lacks something that this script may not or cannot bring; the text says what."""


class SystemNeed(NamedTuple):
    """Something the machine itself must have, and the Debian package that brings it."""

    package: str
    purpose: str
    is_there: Callable[[], bool]


class Machine(NamedTuple):
    """What decides how a missing system package can be had."""

    has_apt: bool
    is_root: bool
    sudo: Optional[Tuple[str, ...]]  # the words to put before a command, None where there are none


# --- Step 1: the Python ---------------------------------------------------------------------------


def refusal(version: Tuple[int, ...], executable: str) -> str:
    """Return why this Python cannot be used, as one sentence; empty where it can."""
    if version >= OLDEST_PYTHON:
        return ""
    oldest, this = (".".join(map(str, part)) for part in (OLDEST_PYTHON, version))
    return (
        f"Lacunar needs Python {oldest} or newer, and {executable} is Python {this}: "
        "run the same command with a newer one."
    )


# --- Step 2: system packages ----------------------------------------------------------------------


def has_venv() -> bool:
    """Tell whether this Python can make environments (Debian keeps that part in a package)."""
    importlib.invalidate_caches()
    return all(importlib.util.find_spec(name) is not None for name in ("venv", "ensurepip"))


def has_cairo() -> bool:
    """Tell whether the cairo library, which draws the PDF sheets, can be loaded."""
    for name in ("libcairo.so.2", "libcairo.2.dylib", ctypes.util.find_library("cairo")):
        if name is not None:
            with contextlib.suppress(OSError):
                ctypes.CDLL(name)
                return True
    return False


SYSTEM_NEEDS = (
    SystemNeed("libcairo2", "the cairo library, draws the PDF sheets", has_cairo),
    SystemNeed("python3-venv", "lets Python make a private environment", has_venv),
)


def missing_needs(needs: Sequence[SystemNeed]) -> List[SystemNeed]:
    """Return the needs that this machine does not meet yet."""
    return [need for need in needs if not need.is_there()]


def install_command(packages: Sequence[str]) -> List[str]:
    """Return the command that installs Debian packages, without the words that give the right."""
    return ["apt-get", "install", "-y", "--no-install-recommends", *packages]


def line_to_run(packages: Sequence[str]) -> str:
    """Return the line a person with the right to install can run as it stands."""
    return "apt-get update && " + " ".join(install_command(packages))


def words_before(machine: Machine, missing: Sequence[SystemNeed]) -> Tuple[str, ...]:
    """Return what stands before `apt-get` on this machine; refuse where it may not be run."""
    if not machine.has_apt:
        raise SetUpError(
            "This system has no apt-get: please install what brings this here, then run the same "
            "command again."
        )
    if machine.is_root:
        return ()
    if machine.sudo is None:
        raise SetUpError(
            "You may not install system packages here: please have this line run as root, then "
            "run the same command again.\n  " + line_to_run([need.package for need in missing])
        )
    return machine.sudo


def _described(need: SystemNeed) -> str:
    return f"{need.package} ({need.purpose})"


def this_machine() -> Machine:
    """Look at what this machine offers for installing system packages."""
    return Machine(
        has_apt=shutil.which("apt-get") is not None,
        is_root=os.geteuid() == 0,
        sudo=_sudo(),
    )


def _sudo() -> Optional[Tuple[str, ...]]:
    if shutil.which("sudo") is None:
        return None
    if _succeeds(["sudo", "-n", "true"]):
        return ("sudo", "-n")
    # Someone sits at a terminal and can be asked for a password.
    return ("sudo",) if sys.stdin is not None and sys.stdin.isatty() else None


def _succeeds(command: Sequence[str]) -> bool:
    """Run a command whose exit code alone is of interest."""
    quiet = subprocess.DEVNULL
    return subprocess.call(command, stdin=quiet, stdout=quiet, stderr=quiet) == 0


def bring_system_packages() -> None:
    """Install the missing system packages, named first; leave alone what is there."""
    missing = missing_needs(SYSTEM_NEEDS)
    if not missing:
        return
    say("Missing on this machine: " + "; ".join(_described(need) for need in missing) + ".")
    before = words_before(this_machine(), missing)
    packages = [need.package for need in missing]
    command = [*before, *install_command(packages)]
    update = [*before, "apt-get", "update"]
    if not _succeeds([*install_command(packages), "--simulate"]):
        _run_aloud(update)  # the package lists were never fetched
        installed = _run_aloud(command)
    else:
        # The package lists may be old enough to name files that are gone: then fetch them anew.
        installed = _run_aloud(command) or (_run_aloud(update) and _run_aloud(command))
    if not installed or missing_needs(missing):
        raise SetUpError(
            "The system packages could not be brought; the lines above say why. "
            f"If {sys.executable} is not your system's own Python, it needs venv and ensurepip "
            f"modules of its own. To install by hand, as root:\n  {line_to_run(packages)}"
        )


def _run_aloud(command: Sequence[str]) -> bool:
    say("Running: " + " ".join(command))
    environment = dict(os.environ, DEBIAN_FRONTEND="noninteractive")
    return subprocess.call(command, env=environment) == 0


# --- Steps 3 and 4: the private environment -------------------------------------------------------


def stamp_of(sources: Sequence[bytes], python: str, place: str) -> str:
    """Return the mark of an environment made from these files, by this Python, in this place.

    The place counts because an environment holds its own path and that of the checkout.
    """
    digest = hashlib.sha256()
    for part in [*sources, python.encode(), place.encode()]:
        digest.update(hashlib.sha256(part).digest())
    return digest.hexdigest()


def wanted_stamp() -> str:
    """Return the stamp that an environment made now would get."""
    contents = []
    for path in SOURCES:
        with open(path, "rb") as source:
            contents.append(source.read())
    return stamp_of(contents, sys.version + sys.base_prefix, ROOT)


def python_in(environment: str) -> str:
    """Return the Python of an environment."""
    return os.path.join(environment, "bin", "python")


def is_complete(environment: str, stamp: str) -> bool:
    """Tell whether an environment was finished, from the same files by the same Python."""
    return os.path.exists(python_in(environment)) and _read_stamp(environment) == stamp


def _read_stamp(environment: str) -> str:
    try:
        with open(os.path.join(environment, STAMP_NAME), encoding="ascii") as stamp_file:
            return stamp_file.read().strip()
    except OSError:
        return ""


def write_stamp(environment: str, stamp: str) -> None:
    """Put a stamp on an environment, in one step: it is never half written."""
    path = os.path.join(environment, STAMP_NAME)
    with open(path + ".new", "w", encoding="ascii") as stamp_file:
        stamp_file.write(stamp + "\n")
    os.replace(path + ".new", path)


def clear(environment: str) -> None:
    """Leave an empty folder marked unfinished; refuse one that this set-up did not make."""
    if os.path.isdir(environment) and os.listdir(environment) and not _read_stamp(environment):
        raise SetUpError(
            f"{environment} was not made by this set-up: please move it away, then run the same "
            "command again."
        )
    os.makedirs(environment, exist_ok=True)
    # The mark comes first and stays, so that this folder is known again after an interruption.
    write_stamp(environment, UNFINISHED)
    for name in os.listdir(environment):
        path = os.path.join(environment, name)
        if os.path.isdir(path) and not os.path.islink(path):
            shutil.rmtree(path)
        elif name != STAMP_NAME:
            os.remove(path)


def build(environment: str, stamp: str) -> None:
    """Make the environment, fill it from the lock, add this checkout, stamp it."""
    import venv  # Debian's bare Python brings it only with the system package

    clear(environment)
    say(f"Making a private environment in {environment} (about a minute) ...")
    venv.EnvBuilder(with_pip=True, symlinks=True).create(environment)
    say(f"Installing what {os.path.basename(LOCK)} lists ...")
    pip = [python_in(environment), "-m", "pip", "--no-input", "--disable-pip-version-check"]
    install = [*pip, "install", "--quiet", "--no-cache-dir"]
    _install([*install, "--require-hashes", "--requirement", LOCK])
    _install([*install, "--no-deps", "--no-build-isolation", "--editable", ROOT])
    write_stamp(environment, stamp)
    say("The environment is complete.")


def _install(command: Sequence[str]) -> None:
    if subprocess.call(command, env=clean_variables(os.environ)) != 0:
        raise SetUpError("The libraries could not be installed; the lines above say why.")


def clean_variables(variables: Mapping[str, str]) -> Dict[str, str]:
    """Return the variables without those that would let other installations in, or ours out."""
    dropped = ("PYTHONHOME", "PYTHONPATH", "PIP_TARGET", "PIP_PREFIX", "PIP_ROOT")
    kept = {name: value for name, value in variables.items() if name not in dropped}
    return dict(kept, PIP_USER="0")


@contextlib.contextmanager
def one_at_a_time() -> Iterator[None]:
    """Let a second set-up of the same checkout wait for the first."""
    import fcntl  # only where there is a POSIX system, which `set_up` makes sure of

    checkout = os.open(ROOT, os.O_RDONLY)
    try:
        try:
            fcntl.flock(checkout, fcntl.LOCK_EX | fcntl.LOCK_NB)
        except OSError:
            say("Waiting for another set-up of this checkout to end ...")
            fcntl.flock(checkout, fcntl.LOCK_EX)
        yield
    finally:
        os.close(checkout)


def set_up() -> str:
    """Make sure that everything is there, and return the private environment's Python."""
    if os.name != "posix":
        raise SetUpError("This set-up knows Linux and macOS only.")
    bring_system_packages()
    stamp = wanted_stamp()
    with one_at_a_time():
        if not is_complete(ENVIRONMENT, stamp):
            try:
                build(ENVIRONMENT, stamp)
            except (OSError, subprocess.CalledProcessError) as fault:
                raise SetUpError(f"The private environment could not be made: {fault}") from fault
    return python_in(ENVIRONMENT)


# --- For the two scripts --------------------------------------------------------------------------


def say(line: str) -> None:
    """Print at once, so that the line stands before the output of a command run next."""
    print(line, flush=True)


def run_in_environment(command: Sequence[str]) -> int:
    """Run a command of the private environment from the top of the checkout; return its code."""
    return subprocess.call(command, cwd=ROOT, env=clean_variables(os.environ))


def run_script(script: Callable[[Sequence[str]], int]) -> None:
    """Run a script's main function and leave with its exit code, or with a sentence and 3."""
    too_old = refusal(sys.version_info[:2], sys.executable)
    if too_old:
        print(too_old, file=sys.stderr)
        sys.exit(EXIT_ENVIRONMENT)
    try:
        code = script(sys.argv[1:])
    except SetUpError as lack:
        print(lack, file=sys.stderr)
        code = EXIT_ENVIRONMENT
    except KeyboardInterrupt:
        print("Interrupted. What is unfinished is begun anew next time.", file=sys.stderr)
        code = EXIT_INTERRUPTED
    sys.exit(code)
