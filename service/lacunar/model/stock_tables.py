"""Published sizes of lumber and sheets, as data, each table with its source.

All sizes are in inches: trade names are names of inch sizes, whatever a ceiling is laid out in.
"""

from collections.abc import Mapping
from fractions import Fraction
from types import MappingProxyType

Inches = Fraction


def _table(sizes: dict[str, str]) -> Mapping[Inches, Inches]:
    return MappingProxyType(
        {_inches(nominal): _inches(actual) for nominal, actual in sizes.items()}
    )


def _inches(text: str) -> Inches:
    return sum((Fraction(part) for part in text.split()), Fraction(0))


# American Softwood Lumber Standard, NIST Voluntary Product Standard PS 20, nominal and minimum
# dressed sizes of boards, dimension and timbers, columns "dry" (as its size table is reproduced in
# engineering references; the standard itself was not opened).
BOARD_THICKNESS = _table({"1": "3/4", "1 1/4": "1", "1 1/2": "1 1/4"})
DIMENSION_THICKNESS = _table({"2": "1 1/2", "2 1/2": "2", "3": "2 1/2", "3 1/2": "3", "4": "3 1/2"})
FACE_WIDTH = _table(
    {
        "2": "1 1/2",
        "3": "2 1/2",
        "4": "3 1/2",
        "5": "4 1/2",
        "6": "5 1/2",
        "7": "6 1/2",
        "8": "7 1/4",
        "9": "8 1/4",
        "10": "9 1/4",
        "11": "10 1/4",
        "12": "11 1/4",
        "14": "13 1/4",
        "16": "15 1/4",
    }
)

# Published, but kept by few yards (common practice, no source).
UNCOMMON_WIDTHS = ("5", "7", "9", "11", "14", "16")

# How a board's nominal thickness is spelled in its name where that is not a whole number: in
# quarters (common practice, no source).
QUARTERS_OF_BOARD = MappingProxyType({"5/4": _inches("1 1/4"), "6/4": _inches("1 1/2")})

# Hardwood thickness surfaced two sides, from the rough thickness in quarters of an inch (hardwood
# grading rules as tabulated in engineering references; a grading thickness, so real stock is also
# sold thinner: 4/4 at 3/4, 5/4 at 1, 6/4 at 1 1/4; give an actual size then).
QUARTER_THICKNESS = MappingProxyType(
    {
        name: _inches(actual)
        for name, actual in {
            "4/4": "13/16",
            "5/4": "1 1/16",
            "6/4": "1 5/16",
            "8/4": "1 3/4",
            "12/4": "2 3/4",
            "16/4": "3 3/4",
        }.items()
    }
)

# Voluntary Product Standard PS 1, Structural Plywood, performance categories.
SHEET_CATEGORIES = tuple(
    _inches(category)
    for category in (
        "1/4",
        "3/8",
        "15/32",
        "1/2",
        "19/32",
        "5/8",
        "23/32",
        "3/4",
        "7/8",
        "1",
        "1 1/8",
    )
)
# The same standard: thickness may differ from the category by 1/32 in up to 13/16, and by 5 % above
# (unsanded, touch-sanded and overlaid panels).
SHEET_TOLERANCE = _inches("1/32")
SHEET_TOLERANCE_UP_TO = _inches("13/16")
SHEET_TOLERANCE_SHARE = Fraction(5, 100)

# The short edge of the common sheet, 48 x 96 in (common practice, no source): the widest strip.
SHEET_WIDTH = _inches("48")
