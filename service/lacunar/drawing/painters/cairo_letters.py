"""Makes cairo letter the sheets with the project's own faces, or says why it cannot.

Cairo finds fonts through fontconfig. A private configuration lets it see nothing but the derived
faces, so a sheet never depends on what fonts the machine has. Fontconfig reads its configuration
once per process, at the first text; whether ours came in time is therefore measured, not assumed.
The environment variable stays set, because fontconfig may look again.
"""

import os
import sys
import tempfile
from collections.abc import Iterator
from pathlib import Path
from typing import Any

from lacunar.drawing.elements import Face
from lacunar.drawing.painters.fonts import (
    CONFIGURATION_FILE,
    checked_faces,
    font_configuration,
    font_folder,
)
from lacunar.drawing.painters.unavailable import CairoMissing, WrongFont
from lacunar.drawing.typeface import Typeface

_OLDEST_CAIRO = 11600
"""Cairo 1.16 brought the outline, the page labels and the properties of a PDF."""

_TEST_SIZE = 1000.0
_TOLERANCE = 0.01
"""How far an advance may be off at that size: a hundred thousandth of an em."""

_VISIBLE_ASCII = "".join(map(chr, range(0x21, 0x7F)))

_INSTALL = {
    "linux": "install the package libcairo2 (apt-get install libcairo2; on Fedora: cairo)",
    "darwin": "install cairo (brew install cairo)",
    "win32": "install a cairo library (libcairo-2.dll) and put its folder on PATH",
}


def load_cairo() -> Any:
    """The module cairocffi with the cairo library behind it. Raises `CairoMissing`."""
    remedy = _INSTALL.get(sys.platform, _INSTALL["linux"])
    try:
        import cairocffi as cairo
    except OSError as error:
        raise CairoMissing(
            f"PDF sheets are painted with the cairo library, which is not on this machine: {remedy}"
            "; SVG sheets need nothing more."
        ) from error
    if cairo.cairo_version() < _OLDEST_CAIRO:
        raise CairoMissing(
            f"PDF sheets need cairo 1.16 or newer, and here is {cairo.cairo_version_string()}: "
            f"{remedy}; SVG sheets need nothing more."
        )
    return cairo


def lettering_cairo(typeface: Typeface) -> Any:
    """The module cairocffi, proven to advance every letter as `typeface` says.

    Raises `CairoMissing` without the library; `WrongFont` where a font file is not the right one or
    cairo takes letters from another font than ours.
    """
    checked_faces()
    os.environ["FONTCONFIG_FILE"] = str(_configuration(font_folder()))
    cairo = load_cairo()
    for face in Face:
        if any(_stray_letters(cairo, typeface, face)):
            raise WrongFont(
                f'PDF sheets cannot be lettered: asked for the font "{typeface.family[face]}", '
                "cairo gave another; start the program anew, without the environment variable "
                "FONTCONFIG_SYSROOT and with nothing drawing text in the process before it."
            )
    return cairo


def _configuration(folder: Path) -> Path:
    """The folder's fontconfig file, written anew where the folder was moved or the file changed."""
    path = folder / CONFIGURATION_FILE
    content = font_configuration(folder)
    try:
        if not path.is_file() or path.read_bytes() != content:
            _replace(path, content)
    except OSError as error:
        raise WrongFont(
            f"The font configuration {path} is not right and cannot be written ({error.strerror}); "
            f"delete the folder {folder} and start again."
        ) from error
    return path


def _replace(path: Path, content: bytes) -> None:
    """Write the file whole beside its place and then put it there, for others may be reading."""
    handle, unfinished = tempfile.mkstemp(dir=path.parent)
    with os.fdopen(handle, "wb") as file:
        file.write(content)
    Path(unfinished).chmod(0o644)
    Path(unfinished).replace(path)


def _stray_letters(cairo: Any, typeface: Typeface, face: Face) -> Iterator[str]:
    context = cairo.Context(cairo.PDFSurface(None, 1, 1))
    context.select_font_face(typeface.family[face])
    context.set_font_size(_TEST_SIZE)
    for letter in _VISIBLE_ASCII:
        advance = context.text_extents(letter)[4]
        if abs(advance - typeface.advances[face][letter] * _TEST_SIZE) > _TOLERANCE:
            yield letter
