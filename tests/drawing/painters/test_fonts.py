import re
import shutil
import sys
from importlib import resources
from io import BytesIO
from pathlib import Path

import pytest
from fontTools.ttLib import TTFont

from lacunar.drawing.elements import Face
from lacunar.drawing.painters.fonts import (
    checked_faces,
    font_folder,
    font_license,
    load_font_styles,
    load_typeface,
)
from lacunar.drawing.painters.unavailable import DrawingUnavailable, WrongFont
from lacunar.drawing.typeface import Typeface
from tests.drawing.painters.fresh_process import output, popen

SOURCE = resources.files("fontpkg_ibm_plex_sans_condensed")
SOURCE_FILES = {
    Face.REGULAR: "IBMPlexSansCondensed-Regular.ttf",
    Face.MEDIUM: "IBMPlexSansCondensed-Medium.ttf",
    Face.SEMIBOLD: "IBMPlexSansCondensed-SemiBold.ttf",
}


def original(face: Face) -> TTFont:
    return TTFont(BytesIO(SOURCE.joinpath("files", SOURCE_FILES[face]).read_bytes()))


@pytest.mark.parametrize("face", list(Face))
def test_letters_are_as_wide_as_in_the_original(typeface: Typeface, face: Face) -> None:
    font = original(face)
    for point, glyph in font.getBestCmap().items():
        if chr(point) in typeface.advances[face]:
            expected = font["hmtx"][glyph][0] / font["head"].unitsPerEm
            assert typeface.advances[face][chr(point)] == expected


def test_heights_are_those_drawn_in_the_original(typeface: Typeface) -> None:
    """The capital H stands on the baseline; no visible ASCII letter reaches below the descent."""
    font = original(Face.REGULAR)
    glyphs, letters = font["glyf"], font.getBestCmap()
    em = font["head"].unitsPerEm
    assert typeface.cap_height == glyphs[letters[ord("H")]].yMax / em
    lowest = min(glyphs[letters[point]].yMin for point in range(0x21, 0x7F))
    assert typeface.descent == -lowest / em > 0


@pytest.mark.parametrize("face", list(Face))
def test_every_letter_of_latin_names_and_drafting_is_there(typeface: Typeface, face: Face) -> None:
    names = "".join(map(chr, (*range(0x20, 0x7F), *range(0xA0, 0x180))))
    signs = "\xd7÷°\u2032\u2033±\u2013—\u2212…≤≥Ø⌀½¼¾⅛⅜⅝⅞\u2009\u202f\u2010\u2011"
    assert set(names + signs) <= set(typeface.advances[face])
    assert typeface.missing(names + signs + "漢") == ("漢",)


def test_digits_are_all_as_wide_in_every_face(typeface: Typeface) -> None:
    assert len({typeface.advances[face][digit] for face in Face for digit in "0123456789"}) == 1


def test_each_face_is_a_plain_family_of_its_own(typeface: Typeface) -> None:
    assert len(set(typeface.family.values())) == len(Face)
    for face, data in checked_faces().items():
        font = TTFont(BytesIO(data))
        assert font["name"].getDebugName(1) == typeface.family[face]
        assert font["OS/2"].usWeightClass == 400
        assert font["OS/2"].fsSelection & 0b1100001 == 0b1000000
        assert {"GSUB", "GPOS", "GDEF", "kern", "fpgm", "prep", "cvt "}.isdisjoint(font.keys())


def test_the_fonts_keep_to_their_license() -> None:
    """SIL Open Font License 1.1: copyright and license stay with the font (condition 2), and no
    name of a modified version uses a reserved name (condition 3)."""
    reserved = re.findall(r'Reserved Font Name "([^"]+)"', SOURCE.joinpath("LICENSE").read_text())
    assert reserved
    for face, data in checked_faces().items():
        names = TTFont(BytesIO(data))["name"]
        source_names = original(face)["name"]
        assert names.getDebugName(0) == source_names.getDebugName(0)
        assert names.getDebugName(13) == source_names.getDebugName(13)
        for word in reserved:
            assert not [record for record in names.names if word.lower() in str(record).lower()]
    notice = (font_folder() / "OFL.txt").read_text(encoding="utf-8")
    assert notice == font_license()
    assert SOURCE.joinpath("LICENSE").read_text(encoding="utf-8") in notice


def test_the_cache_is_where_the_environment_says(
    monkeypatch: pytest.MonkeyPatch, tmp_path: Path, typeface: Typeface
) -> None:
    monkeypatch.setenv("LACUNAR_CACHE", str(tmp_path / "new" / "cache"))
    assert load_typeface() == typeface
    assert font_folder().parent == tmp_path / "new" / "cache"
    assert [path.name for path in font_folder().parent.iterdir()] == [font_folder().name]


def test_without_a_writable_environment_the_users_cache_is_taken(
    monkeypatch: pytest.MonkeyPatch, tmp_path: Path
) -> None:
    not_a_folder = tmp_path / "file"
    not_a_folder.write_text("")
    monkeypatch.delenv("LACUNAR_CACHE", raising=False)
    monkeypatch.delenv("LOCALAPPDATA", raising=False)
    monkeypatch.setattr(sys, "prefix", str(not_a_folder))
    monkeypatch.setenv("XDG_CACHE_HOME", str(tmp_path / "users"))
    assert font_folder().parent == tmp_path / "users" / "lacunar"
    monkeypatch.setenv("XDG_CACHE_HOME", str(not_a_folder))
    monkeypatch.setenv("HOME", str(tmp_path / "home"))
    assert font_folder().parent == tmp_path / "home" / ".cache" / "lacunar"


def test_a_cache_that_cannot_be_written_is_said_so(
    monkeypatch: pytest.MonkeyPatch, tmp_path: Path
) -> None:
    not_a_folder = tmp_path / "file"
    not_a_folder.write_text("")
    monkeypatch.setenv("LACUNAR_CACHE", str(not_a_folder))
    with pytest.raises(DrawingUnavailable, match=r"LACUNAR_CACHE name a folder") as raised:
        load_typeface()
    assert str(not_a_folder) in str(raised.value)


def test_two_processes_that_start_at_once_do_not_disturb_each_other(
    tmp_path: Path, typeface: Typeface
) -> None:
    code = "from lacunar.drawing.painters.fonts import *; print(load_typeface().digest)"
    started = [popen(code, LACUNAR_CACHE=str(tmp_path)) for _ in range(3)]
    assert {output(process).decode().strip() for process in started} == {typeface.digest}
    assert len(list(tmp_path.iterdir())) == 1


@pytest.fixture
def own_cache(monkeypatch: pytest.MonkeyPatch, tmp_path: Path) -> Path:
    monkeypatch.setenv("LACUNAR_CACHE", str(tmp_path))
    return font_folder()


def test_a_font_with_another_content_is_refused(own_cache: Path) -> None:
    faces = sorted((own_cache / "faces").iterdir())
    shutil.copy(faces[1], faces[0])
    with pytest.raises(WrongFont, match="not the one this version draws with") as raised:
        load_typeface()
    assert faces[0].name in str(raised.value)
    assert "\n" not in str(raised.value)


def test_a_web_font_with_another_content_is_refused(own_cache: Path) -> None:
    web = sorted((own_cache / "web").iterdir())[0]
    web.write_bytes(web.read_bytes()[:-1])
    load_typeface()
    with pytest.raises(WrongFont, match="not the one this version draws with"):
        load_font_styles()


def test_a_font_that_is_gone_is_refused(own_cache: Path) -> None:
    sorted((own_cache / "faces").iterdir())[0].unlink()
    with pytest.raises(WrongFont, match=r"cannot be read .*start again"):
        load_typeface()


def test_a_missing_source_package_is_named(monkeypatch: pytest.MonkeyPatch, tmp_path: Path) -> None:
    monkeypatch.setenv("LACUNAR_CACHE", str(tmp_path))
    monkeypatch.setitem(sys.modules, "fontpkg_ibm_plex_sans_condensed", None)
    with pytest.raises(WrongFont, match="fontpkg-ibm-plex-sans-condensed"):
        load_typeface()
    assert not list(tmp_path.iterdir())
