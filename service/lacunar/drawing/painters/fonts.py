"""The project's drawing fonts: derived at first use, kept in a cache, checked whenever loaded.

Nothing of them is in this repository. They come from the openly licensed package named below, and
are taken only if they are, byte for byte, the faces that the digests here belong to: the width of
every text on a sheet, and so the sheet itself, depends on them.
"""

import base64
import hashlib
import os
from collections.abc import Iterable, Mapping
from dataclasses import dataclass
from functools import lru_cache
from importlib import resources
from io import BytesIO
from pathlib import Path
from types import MappingProxyType
from xml.sax.saxutils import escape

from fontTools.ttLib import TTFont

from lacunar.drawing.elements import Face
from lacunar.drawing.painters.cache import cached_folder
from lacunar.drawing.painters.deriving import derived_face, web_face
from lacunar.drawing.painters.unavailable import WrongFont
from lacunar.drawing.typeface import Typeface

_SOURCE_PACKAGE = "fontpkg_ibm_plex_sans_condensed"
_SOURCE_DISTRIBUTION = "fontpkg-ibm-plex-sans-condensed"
_LICENSE_FILE = "OFL.txt"
_FACES_FOLDER = "faces"
_WEB_FOLDER = "web"
CONFIGURATION_FILE = "fonts.conf"
_VISIBLE_ASCII = "".join(map(chr, range(0x21, 0x7F)))


@dataclass(frozen=True, slots=True)
class _Derived:
    """One face: our family name, the source's file, and the SHA-256 of what must come of it."""

    family: str
    source: str
    face_digest: str
    web_digest: str

    @property
    def stem(self) -> str:
        return self.family.replace(" ", "")


_DERIVED: Mapping[Face, _Derived] = MappingProxyType(
    {
        Face.REGULAR: _Derived(
            "Lacunar Drafting",
            "IBMPlexSansCondensed-Regular.ttf",
            "d910ffa38df1e19688d56c8085ff6d539dbe8d4665e4615c8b7af8fa126eca44",
            "42dddc559cb3bf8adf37284d72e50421daf6fd4b99b5fc874799bfbd4684efd6",
        ),
        Face.MEDIUM: _Derived(
            "Lacunar Drafting Medium",
            "IBMPlexSansCondensed-Medium.ttf",
            "c2afddb614cd616ad621a42dd84f2d13c402a09d922788b00d711fcecfeed8ee",
            "41dc4ef0a59103391f9626e3fdfd8d7fe7b16c7489a046adeb18e8d73352a5ff",
        ),
        Face.SEMIBOLD: _Derived(
            "Lacunar Drafting SemiBold",
            "IBMPlexSansCondensed-SemiBold.ttf",
            "7850e5fb5b3c930051be982784edfcf181e30492e8ae010d60734537c3cdb619",
            "97aacec5e859b94fecc82ab7cf2989a5aa10b83931e2cc9dd17f07330e6f7230",
        ),
    }
)

FONT_DIGEST = hashlib.sha256(
    "".join(f"{d.face_digest}{d.web_digest}" for d in _DERIVED.values()).encode()
).hexdigest()
"""SHA-256 that stands for all derived font files together."""

_LICENSE_PREAMBLE = """\
The drawings are lettered in the font families {families}.
They are modified versions of a font under the SIL Open Font License, Version 1.1: renamed, since
that license reserves the original's name, reduced to the letters of drawings, and without hinting,
kerning and substitution of glyphs. They are under the same license, which follows as it came with
the original.

"""

_CONFIGURATION = """\
<?xml version="1.0"?>
<!DOCTYPE fontconfig SYSTEM "urn:fontconfig:fonts.dtd">
<fontconfig>
<dir>{faces}</dir>
<cachedir>{cache}</cachedir>
<cachedir prefix="xdg">fontconfig</cachedir>
<config><rescan><int>0</int></rescan></config>
</fontconfig>
"""


@dataclass(frozen=True, slots=True)
class FontStyles:
    """The style rule that embeds each face in an SVG, so that any browser letters it alike."""

    rules: Mapping[Face, str]

    def css(self, faces: Iterable[Face]) -> str:
        """The rules of those faces, always in the same order."""
        used = frozenset(faces)
        return "".join(self.rules[face] for face in Face if face in used)


def load_typeface() -> Typeface:
    """The advance widths and heights of the three derived faces [em].

    Derives them first where no cache has them yet. Raises `WrongFont` where a file is not, byte for
    byte, the face the sheets are made for, and `DrawingUnavailable` where no cache can be written.
    """
    return _measured(tuple(checked_faces().values()))


def load_font_styles() -> FontStyles:
    """The three faces as WOFF2 in style rules. Raises the same as `load_typeface`."""
    folder = font_folder() / _WEB_FOLDER
    rules = {}
    for face, derived in _DERIVED.items():
        data = _checked(folder / f"{derived.stem}.woff2", derived.web_digest)
        rules[face] = (
            f'@font-face{{font-family:"{derived.family}";font-weight:400;'
            f"src:url(data:font/woff2;base64,{base64.b64encode(data).decode()})"
            ' format("woff2")}'
        )
    return FontStyles(MappingProxyType(rules))


def font_license() -> str:
    """The notice and license text under which the fonts are embedded in drawings."""
    families = ", ".join(f'"{derived.family}"' for derived in _DERIVED.values())
    text = _source("LICENSE").decode("utf-8").replace("\r\n", "\n")
    return _LICENSE_PREAMBLE.format(families=families) + text


def font_folder() -> Path:
    """The cache folder with the derived fonts, filled if need be; `checked_faces` checks it."""
    return cached_folder(f"fonts-{FONT_DIGEST[:16]}", _fill)


def font_configuration(folder: Path) -> bytes:
    """The fontconfig file that shows nothing but the faces in that folder, and keeps them so.

    Fontconfig's own index goes into the folder as well, or where that is shared and cannot be
    written, into the user's.
    """
    text = _CONFIGURATION.format(
        faces=escape(str(folder / _FACES_FOLDER)), cache=escape(str(folder / "fontconfig"))
    )
    return os.fsencode(text)


def checked_faces() -> dict[Face, bytes]:
    """The TrueType file of each face. Raises `WrongFont` where one is not what it must be."""
    folder = font_folder() / _FACES_FOLDER
    return {
        face: _checked(folder / f"{derived.stem}.ttf", derived.face_digest)
        for face, derived in _DERIVED.items()
    }


def _fill(folder: Path, target: Path) -> None:
    for name in (_FACES_FOLDER, _WEB_FOLDER):
        (folder / name).mkdir()
    for derived in _DERIVED.values():
        face = derived_face(_source("files", derived.source), derived.family)
        (folder / _FACES_FOLDER / f"{derived.stem}.ttf").write_bytes(face)
        (folder / _WEB_FOLDER / f"{derived.stem}.woff2").write_bytes(web_face(face))
    (folder / CONFIGURATION_FILE).write_bytes(font_configuration(target))
    (folder / _LICENSE_FILE).write_text(font_license(), encoding="utf-8", newline="\n")


def _source(*path: str) -> bytes:
    try:
        return resources.files(_SOURCE_PACKAGE).joinpath(*path).read_bytes()
    except (ModuleNotFoundError, FileNotFoundError) as error:
        raise WrongFont(
            f"The package {_SOURCE_DISTRIBUTION}, from which the drawing fonts are made, "
            "is not installed in the version this program asks for."
        ) from error


def _checked(path: Path, digest: str) -> bytes:
    try:
        data = path.read_bytes()
    except OSError as error:
        raise WrongFont(
            f"The drawing font {path} cannot be read ({error.strerror}); "
            f"delete the folder {path.parents[1]} and start again."
        ) from error
    if hashlib.sha256(data).hexdigest() != digest:
        raise WrongFont(
            f"The drawing font {path} is not the one this version draws with; delete the folder "
            f"{path.parents[1]}, install the pinned requirements and start again."
        )
    return data


@lru_cache(maxsize=1)
def _measured(faces: tuple[bytes, ...]) -> Typeface:
    fonts = dict(zip(_DERIVED, (TTFont(BytesIO(data)) for data in faces), strict=True))
    regular = fonts[Face.REGULAR]
    em = regular["head"].unitsPerEm
    letters = regular.getBestCmap()
    return Typeface(
        family=MappingProxyType({face: derived.family for face, derived in _DERIVED.items()}),
        advances=MappingProxyType({face: _advances(font) for face, font in fonts.items()}),
        cap_height=regular["OS/2"].sCapHeight / em,
        descent=-min(regular["glyf"][letters[ord(c)]].yMin for c in _VISIBLE_ASCII) / em,
        digest=FONT_DIGEST,
    )


def _advances(font: TTFont) -> Mapping[str, float]:
    em, widths = font["head"].unitsPerEm, font["hmtx"]
    letters = sorted(font.getBestCmap().items())
    return MappingProxyType({chr(point): widths[glyph][0] / em for point, glyph in letters})
