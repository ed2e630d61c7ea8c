"""Published sizes of lumber and sheets, held against the stock the names are read as.

The standards themselves were not opened; the figures are as engineering references reproduce them:
PS 20 (American Softwood Lumber Standard, dressed dry), hardwood thickness surfaced two sides, and
PS 1 (Structural Plywood, thickness by performance category).
"""

from fractions import Fraction

import pytest

from lacunar.measure.length import Length
from lacunar.model.stock import read_stock, thickness_range


def inches(text: str) -> Length:
    """`5 1/2` in inches."""
    return Length.of_inches(sum(Fraction(part) for part in text.split()))


# PS 20, boards, dry: nominal 1, 1-1/4, 1-1/2.
@pytest.mark.parametrize(
    ("name", "thickness"), [("1x6", "3/4"), ("5/4x6", "1"), ("6/4x6", "1 1/4")]
)
def test_board_thickness(name: str, thickness: str):
    assert read_stock(name).thickness == inches(thickness)


# PS 20, dimension, dry: nominal 2 to 4.
@pytest.mark.parametrize(
    ("name", "thickness"),
    [
        ("2x6", "1 1/2"),
        ("2-1/2x6", "2"),
        ("3x6", "2 1/2"),
        ("3-1/2x6", "3"),
        ("4x6", "3 1/2"),
    ],
)
def test_dimension_thickness(name: str, thickness: str):
    assert read_stock(name).thickness == inches(thickness)


# PS 20, face widths of boards and dimension, dry.
@pytest.mark.parametrize(
    ("nominal", "width"),
    [
        (2, "1 1/2"),
        (3, "2 1/2"),
        (4, "3 1/2"),
        (5, "4 1/2"),
        (6, "5 1/2"),
        (7, "6 1/2"),
        (8, "7 1/4"),
        (9, "8 1/4"),
        (10, "9 1/4"),
        (11, "10 1/4"),
        (12, "11 1/4"),
        (14, "13 1/4"),
        (16, "15 1/4"),
    ],
)
def test_face_width(nominal: int, width: str):
    assert read_stock(f"1x{nominal}").width == inches(width)
    assert read_stock(f"2x{nominal}").width == inches(width)


# The same widths by their rule, derived from the table: n - 1/2 up to 7, n - 3/4 from 8 on.
@pytest.mark.parametrize("nominal", [2, 3, 4, 5, 6, 7, 8, 9, 10, 11, 12, 14, 16])
def test_dressed_width_is_nominal_less_one_of_two_amounts(nominal: int):
    less = Fraction(1, 2) if nominal <= 7 else Fraction(3, 4)
    assert read_stock(f"1x{nominal}").width == Length.of_inches(nominal - less)


# Hardwood, rough thickness in quarters, surfaced two sides.
@pytest.mark.parametrize(
    ("name", "thickness"),
    [
        ("4/4", "13/16"),
        ("5/4", "1 1/16"),
        ("6/4", "1 5/16"),
        ("8/4", "1 3/4"),
        ("12/4", "2 3/4"),
        ("16/4", "3 3/4"),
    ],
)
def test_hardwood_thickness(name: str, thickness: str):
    assert read_stock(name, inches("7 1/2")).thickness == inches(thickness)


# PS 1, thickness range of each performance category, printed to three decimals (so to 0.0005).
@pytest.mark.parametrize(
    ("category", "least", "most"),
    [
        ("1/4", "0.219", "0.281"),
        ("3/8", "0.344", "0.406"),
        ("15/32", "0.438", "0.500"),
        ("1/2", "0.469", "0.531"),
        ("19/32", "0.563", "0.625"),
        ("5/8", "0.594", "0.656"),
        ("23/32", "0.688", "0.750"),
        ("3/4", "0.719", "0.781"),
        # by the rule of 5 percent, worked by hand: 0.875 * 0.95 = 0.83125, * 1.05 = 0.91875;
        # 1.125 * 0.95 = 1.06875, * 1.05 = 1.18125
        ("7/8", "0.831", "0.919"),
        ("1-1/8", "1.069", "1.181"),
    ],
)
def test_sheet_thickness_range(category: str, least: str, most: str):
    sheet = read_stock(f"{category} sheet")
    bounds = thickness_range(sheet)
    assert bounds is not None
    for bound, printed in zip(bounds, (least, most), strict=True):
        assert abs(bound.inches - Fraction(printed)) <= Fraction("0.0005")
    assert bounds[0] < sheet.thickness < bounds[1]
