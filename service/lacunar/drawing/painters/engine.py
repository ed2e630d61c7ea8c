"""What draws: the versions and the font that the bytes of a drawing depend on."""

import os
from collections.abc import Mapping
from importlib.metadata import version

from lacunar import __version__
from lacunar.drawing.painters.cairo_letters import load_cairo
from lacunar.drawing.painters.fonts import FONT_DIGEST
from lacunar.drawing.painters.unavailable import CairoMissing

CAIROSVG_VERSION = "2.9.1"
"""The version whose insides `cairo_pages` knows."""

STOCK_TEXT_VARIABLE = "LACUNAR_STOCK_TEXT"


def engine() -> Mapping[str, str]:
    """Names and versions of what draws; `cairo` is "missing" where the library is.

    `text` tells who draws the shapes and texts of a PDF: "whole" for our painter, "stock" for
    cairosvg's.
    """
    try:
        cairo = str(load_cairo().cairo_version_string())
    except CairoMissing:
        cairo = "missing"
    return {
        "lacunar": __version__,
        "svgwrite": version("svgwrite"),
        "cairosvg": version("cairosvg"),
        "cairo": cairo,
        "pypdfium2": version("pypdfium2"),
        "ezdxf": version("ezdxf"),
        "text": "stock" if stock_text() else "whole",
        "font": FONT_DIGEST,
    }


def stock_text() -> bool:
    """Whether the environment asks for sheets as cairosvg draws them: LACUNAR_STOCK_TEXT=1."""
    return os.environ.get(STOCK_TEXT_VARIABLE, "0") not in ("", "0")
