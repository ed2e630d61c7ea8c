"""What names of stock mean, what is said of those that mean nothing, and what else would do."""

from fractions import Fraction

import pytest

from lacunar.measure.length import Length
from lacunar.measure.units import Units
from lacunar.model.stock import (
    StockKind,
    StockNameError,
    actual_stock,
    boards_at_least,
    is_common,
    read_stock,
    same_stock_at_least,
    thickness_range,
)


def inches(amount: str) -> Length:
    return Length.of_inches(Fraction(amount))


@pytest.mark.parametrize(
    ("written", "name", "kind"),
    [
        ("1x8", "1x8", StockKind.BOARD),
        (" 1 X 8 ", "1x8", StockKind.BOARD),
        ("1\u00d78", "1x8", StockKind.BOARD),
        ("1-1/4x6", "5/4x6", StockKind.BOARD),
        ("1 1/4 x 6", "5/4x6", StockKind.BOARD),
        ("6/4x8", "6/4x8", StockKind.BOARD),
        ("2x12", "2x12", StockKind.DIMENSION),
        ("4x12", "4x12", StockKind.DIMENSION),
        ("2 1/2x4", "2-1/2x4", StockKind.DIMENSION),
        ("23/32 sheet", "23/32 sheet", StockKind.SHEET),
        ("1-1/8 Sheet", "1-1/8 sheet", StockKind.SHEET),
    ],
)
def test_one_size_has_one_name(written: str, name: str, kind: StockKind):
    stock = read_stock(written)
    assert (stock.name, stock.kind) == (name, kind)
    assert read_stock(stock.name) == stock


@pytest.mark.parametrize(
    "name",
    [
        *(
            "",
            "x",
            "1x",
            "1x13",
            "1x1",
            "1/4x6",
            "5x5",
            "4/4x6",
            "8/4x6",
            "3/4x5 1/2",
            "oak",
            "1x8x1",
        ),
        *(
            "33/32 sheet",
            "sheet",
            "- sheet",
            "1//2 sheet",
            "1/0 sheet",
            "7/4",
            "1x\u0668",
            "2x4\n2",
        ),
    ],
)
def test_a_name_without_a_published_size_is_refused_with_a_remedy(name: str):
    with pytest.raises(StockNameError) as caught:
        read_stock(name)
    assert caught.value.reason.endswith(".")
    assert caught.value.remedy.endswith(".")


def test_hardwood_has_no_width_of_its_own():
    with pytest.raises(StockNameError, match="random widths"):
        read_stock("5/4")
    assert read_stock("5/4", inches("7.5")).width == inches("7.5")


def test_a_softwood_board_takes_no_other_width_than_its_own():
    with pytest.raises(StockNameError, match="another is given"):
        read_stock("1x8", inches("6"))


def test_a_strip_is_no_wider_than_its_sheet():
    # Two equal strips of 24 in do not come out of 48 in once the saw has taken its kerf, but each
    # alone does: only what exceeds the sheet itself cannot be.
    assert read_stock("3/4 sheet").width == inches("48")
    assert read_stock("3/4 sheet", inches("24")).width == inches("24")
    with pytest.raises(StockNameError, match="48 in"):
        read_stock("3/4 sheet", inches("48.125"))


def test_boards_that_would_do_come_narrowest_first():
    # 7 in wanted: 1x7 dresses to 6 1/2, 1x8 to 7 1/4 (PS 20).
    names = [board.name for board in boards_at_least(inches("7"))]
    assert names == ["1x8", "1x9", "1x10", "1x11", "1x12", "1x14", "1x16"]
    assert boards_at_least(inches("7.25"))[0].name == "1x8"
    assert boards_at_least(inches("15.3")) == ()


def test_boards_that_would_do_keep_the_thickness_asked_for():
    assert boards_at_least(inches("5"), read_stock("5/4x4"))[0].name == "5/4x6"
    assert boards_at_least(inches("5"), read_stock("2x4"))[0].name == "2x6"
    assert boards_at_least(inches("5"), read_stock("4/4", inches("4")))[0].name == "1x6"


def test_the_same_stock_wider():
    assert same_stock_at_least(read_stock("2x4"), inches("6")) == read_stock("2x7")
    assert same_stock_at_least(read_stock("1x4"), inches("16")) is None
    assert same_stock_at_least(read_stock("3/4 sheet"), inches("50")) is None
    ripped = same_stock_at_least(read_stock("3/4 sheet"), inches("9"))
    assert ripped == read_stock("3/4 sheet", inches("9"))


def test_an_actual_size_that_changes_its_width_changes_its_name():
    stock = actual_stock(inches("0.75"), inches("5.5"), Units.INCH)
    wider = same_stock_at_least(stock, inches("7"))
    assert wider == actual_stock(inches("0.75"), inches("7"), Units.INCH)


@pytest.mark.parametrize(
    ("thickness", "width", "units", "name"),
    [
        ("3/4", "11/2", Units.INCH, "3/4 x 5 1/2 in"),
        ("1", "6", Units.INCH, "1 x 6 in"),
        ("0.7", "1/3", Units.INCH, "0.7 x 0.333 in"),
        ("18", "140", Units.MILLIMETER, "18 x 140 mm"),
        ("12.5", "99.9", Units.MILLIMETER, "12.5 x 99.9 mm"),
    ],
)
def test_an_actual_size_is_named_by_its_size(thickness: str, width: str, units: Units, name: str):
    unit = Length.of_inches(units.inches_each)
    assert actual_stock(unit * Fraction(thickness), unit * Fraction(width), units).name == name


def test_widths_few_yards_keep_are_known():
    common = [board.name for board in boards_at_least(inches("0")) if is_common(board)]
    assert common == ["1x2", "1x3", "1x4", "1x6", "1x8", "1x10", "1x12"]
    assert is_common(read_stock("3/4 sheet"))
    assert is_common(actual_stock(inches("1"), inches("5"), Units.INCH))


def test_lumber_has_no_range_of_thickness():
    assert thickness_range(read_stock("1x6")) is None
