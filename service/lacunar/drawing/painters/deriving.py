"""Derives the project's drawing faces from an openly licensed font package, byte for byte alike.

The source's license (SIL Open Font License 1.1) reserves its name, so every derived face carries a
family name of ours. Each face is its own family at weight 400, because cairo asks for "medium" when
told "normal" and would mix up the weights of one family. Hinting, kerning and all substitution of
glyphs are dropped: a text is then exactly as wide as the sum of its advances, in every engine.
"""

from io import BytesIO
from typing import Any

from fontTools import subset
from fontTools.ttLib import TTFont, newTable
from fontTools.ttLib.tables._g_l_y_f import Glyph

_LATIN = (*range(0x20, 0x7F), *range(0xA0, 0x180), *range(0x218, 0x21C), 0x1E9E)
_PUNCTUATION = tuple(
    map(ord, "\u2013\u2014\u2018\u2019\u201a\u201c\u201d\u201e\u2020\u2021•…\u2039\u203a")
)
_SIGNS = tuple(map(ord, "\u2032\u2033\u2044\u2212≈≠≤≥√∞∆π€№™✓←↑→↓↔"))
_DIGITS = tuple(map(ord, "⁰⁴⁵⁶⁷⁸⁹₀₁₂₃₄₅₆₇₈₉⅓⅔⅕⅖⅗⅘⅙⅚⅛⅜⅝⅞"))
LETTERS = (*_LATIN, *_PUNCTUATION, *_SIGNS, *_DIGITS)
"""Code points taken over from the source."""

TWINS = {0x2010: 0x2D, 0x2011: 0x2D, 0x2300: 0xD8}
"""Code points the source lacks, drawn with another's glyph: two hyphens and the diameter sign."""

THIN_SPACES = (0x2009, 0x202F)
_THIN = 1 / 6
"""Width of a thin space [em]: common practice, no source."""

_WEIGHT = 400
_REGULAR = 1 << 6
_NOT_REGULAR = (1 << 0) | (1 << 5)
_DROPPED = ("DSIG", "GDEF", "GPOS", "GSUB", "GlyphOrder", "gasp", "kern", "meta")
_KEPT_NAMES = (0, 13, 14)
"""Copyright, license and license address."""


def derived_face(source: bytes, family: str) -> bytes:
    """The source face as a TrueType face of ours: subset, unhinted, renamed, with thin spaces."""
    font = _opened(source)
    _reduce(font)
    _add_thin_spaces(font)
    _add_twins(font)
    _rename(font, family)
    return _saved(font, None)


def web_face(face: bytes) -> bytes:
    """The same face compressed as WOFF2, for browsers.

    It keeps every letter: with fewer, a browser would draw some users' names in a font of its own,
    as wide as it likes, for the sake of 3 KB.
    """
    return _saved(_opened(face), "woff2")


def _opened(data: bytes) -> TTFont:
    return TTFont(BytesIO(data), recalcTimestamp=False)


def _saved(font: TTFont, flavor: str | None) -> bytes:
    font.flavor = flavor
    target = BytesIO()
    font.save(target)
    return target.getvalue()


def _reduce(font: TTFont) -> None:
    options = subset.Options()
    options.hinting = False
    options.layout_features = []
    options.drop_tables = [*options.drop_tables, *_DROPPED]
    options.name_IDs = ["*"]
    options.notdef_outline = True
    options.recalc_timestamp = False
    subsetter = subset.Subsetter(options)
    subsetter.populate(unicodes=LETTERS)
    subsetter.subset(font)


def _add_thin_spaces(font: TTFont) -> None:
    width = round(font["head"].unitsPerEm * _THIN)
    for code_point in THIN_SPACES:
        glyph = f"uni{code_point:04X}"
        font["glyf"][glyph] = Glyph()
        font["hmtx"][glyph] = (width, 0)
        _map(font, code_point, glyph)


def _add_twins(font: TTFont) -> None:
    drawn = font.getBestCmap()
    for code_point, like in TWINS.items():
        _map(font, code_point, drawn[like])


def _map(font: TTFont, code_point: int, glyph: str) -> None:
    for table in font["cmap"].tables:
        if table.isUnicode():
            table.cmap[code_point] = glyph


def _rename(font: TTFont, family: str) -> None:
    kept = [record for record in font["name"].names if record.nameID in _KEPT_NAMES]
    font["name"] = names = newTable("name")
    names.names = kept
    plain = family.replace(" ", "")
    ours = {1: family, 2: "Regular", 3: f"{plain};1", 4: family, 5: "Version 1.0", 6: plain}
    for name_id, text in ours.items():
        names.setName(text, name_id, 3, 1, 0x409)
    _set_plain_weight(font["OS/2"], font["head"])


def _set_plain_weight(metrics: Any, head: Any) -> None:
    metrics.usWeightClass = _WEIGHT
    metrics.fsSelection = (metrics.fsSelection | _REGULAR) & ~_NOT_REGULAR
    metrics.achVendID = "NONE"
    head.macStyle = 0
