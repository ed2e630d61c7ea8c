"""The last place for derived files is a folder that no other user can have prepared."""

import os
from pathlib import Path

import pytest

from lacunar.drawing.painters import cache
from lacunar.drawing.painters.unavailable import DrawingUnavailable

pytestmark = pytest.mark.skipif(not hasattr(os, "getuid"), reason="folders have no owner's number")


@pytest.fixture
def temporary(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> Path:
    """The user's own folder for temporary files, with no other place left for the cache."""
    monkeypatch.setattr(cache.tempfile, "gettempdir", lambda: str(tmp_path))
    place = cache._temporary_place()
    monkeypatch.setattr(cache, "_places", lambda: iter([place]))
    return place


def _fill(folder: Path, target: Path) -> None:
    del target
    (folder / "face").write_text("ours")


def test_folder_is_of_this_user_alone(temporary: Path) -> None:
    folder = cache.cached_folder("fonts", _fill)
    assert (folder / "face").read_text() == "ours"
    assert temporary.name == f"lacunar-{os.getuid()}"
    assert temporary.stat().st_mode & 0o777 == 0o700
    assert cache.cached_folder("fonts", _fill) == folder


def _planted(place: Path) -> None:
    (place / "fonts").mkdir(parents=True)
    (place / "fonts" / "face").write_text("theirs")


def test_folder_others_can_write_is_refused(temporary: Path) -> None:
    _planted(temporary)
    temporary.chmod(0o777)
    with pytest.raises(DrawingUnavailable, match="not a folder of this user alone"):
        cache.cached_folder("fonts", _fill)


def test_link_to_another_folder_is_refused(temporary: Path, tmp_path: Path) -> None:
    _planted(tmp_path / "elsewhere")
    (tmp_path / "elsewhere").chmod(0o700)
    temporary.symlink_to(tmp_path / "elsewhere")
    with pytest.raises(DrawingUnavailable, match="not a folder of this user alone"):
        cache.cached_folder("fonts", _fill)


def test_folder_of_another_user_is_refused(
    temporary: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    _planted(temporary)
    temporary.chmod(0o700)
    real = os.getuid()
    monkeypatch.setattr(cache, "_temporary_place", lambda: temporary)
    monkeypatch.setattr(cache.os, "getuid", lambda: real + 1)
    with pytest.raises(DrawingUnavailable, match="not a folder of this user alone"):
        cache.cached_folder("fonts", _fill)
