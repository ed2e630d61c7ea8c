"""Lumber and sheets by their trade names, with the published sizes behind the names."""

import re
from collections.abc import Iterator, Sequence
from dataclasses import dataclass, replace
from enum import StrEnum
from fractions import Fraction

from lacunar.measure.length import Length
from lacunar.measure.units import Units
from lacunar.measure.writing import decimal_text
from lacunar.model import stock_tables

# Sizes finer than the finest division of a common rule are named by decimals.
FINEST_FRACTION = 64


class StockKind(StrEnum):
    """Which published list a size comes from; `actual` is a size given by the caller."""

    BOARD = "board"
    DIMENSION = "dimension"
    QUARTER = "quarter"
    SHEET = "sheet"
    ACTUAL = "actual"


SOFTWOOD = (StockKind.BOARD, StockKind.DIMENSION)


@dataclass(frozen=True, slots=True)
class Stock:
    """A board as bought: its trade name, its real thickness and the real width it can give.

    One size has one name (`1-1/4x6` becomes `5/4x6`), so that equal stock is equal.
    """

    name: str
    kind: StockKind
    thickness: Length
    width: Length


class StockNameError(ValueError):
    """A name that is in no published list, or that does not say enough; with the way out."""

    def __init__(self, reason: str, remedy: str) -> None:
        super().__init__(f"{reason} {remedy}")
        self.reason = reason
        self.remedy = remedy


_LUMBER = re.compile(r"(?P<thickness>[1-4](?:[- ]1/[24])?|[56]/4)x(?P<width>[0-9]{1,2})\Z")
_SHEET = re.compile(r"(?P<category>[0-9 /-]{1,8}) sheet\Z")


# How wide a sheet known by its category is.
SHEET_WIDTH = Length.of_inches(stock_tables.SHEET_WIDTH)


def read_stock(name: str, width: Length | None = None) -> Stock:
    """Turn a trade name into stock with its published size.

    Parameters: `name`, such as `1x8`, `5/4x6` or `2x4` (softwood boards and dimension, dressed
    dry), `4/4` to `16/4` (hardwood surfaced two sides) or `23/32 sheet` (structural plywood by
    performance category, taken at the category's figure); `width` [length], which hardwood of
    random width needs and a strip of sheet may have (otherwise the sheet's whole 48 in).

    Raises `StockNameError`, with a reason and a remedy. Sources: see `stock_tables`.

    >>> read_stock("1x8").width == Length.of_inches(Fraction("7.25"))
    True
    """
    plain = _plain(name)
    if plain in stock_tables.QUARTER_THICKNESS:
        return _quarter(plain, width)
    if lumber := _LUMBER.match(plain):
        return _lumber(plain, lumber["thickness"], lumber["width"], width)
    if sheet := _SHEET.match(plain):
        return _sheet(sheet["category"], width)
    raise StockNameError(
        "That is no name of stock with a published size.",
        "Names are like 1x8, 5/4x6, 2x4, 4/4 (with a width) or 3/4 sheet;"
        " for anything else give its real thickness and width.",
    )


def actual_stock(thickness: Length, width: Length, units: Units) -> Stock:
    """Stock of a size given by the caller, named by its exact size in `units`.

    >>> actual_stock(Length.of_millimeters(18), Length.of_millimeters(140), Units.MILLIMETER).name
    '18 x 140 mm'
    """
    return Stock(size_name((thickness, width), units), StockKind.ACTUAL, thickness, width)


def size_name(sizes: Sequence[Length], units: Units) -> str:
    """Turn exact sizes [length] into the name of what has them.

    >>> size_name((Length.of_feet(4), Length.of_feet(8)), Units.INCH)
    '48 x 96 in'
    """
    unit = Length.of_inches(units.inches_each)
    finest = FINEST_FRACTION if units is Units.INCH else 1
    return f"{' x '.join(_counted(size / unit, finest) for size in sizes)} {units}"


def nominal_size(stock: Stock) -> tuple[Length, Length] | None:
    """Turn stock into the thickness and width its trade name says; None where it says none.

    Hardwood of random width has the width it was given.

    >>> nominal_size(read_stock("5/4x6"))
    (Length(5/4 in), Length(6 in))
    """
    thickness, _, width = stock.name.partition("x")
    if stock.kind in SOFTWOOD:
        nominal = stock_tables.QUARTERS_OF_BOARD.get(thickness) or _mixed(thickness)
        return _length(nominal), _length(Fraction(width))
    if stock.kind is StockKind.QUARTER:
        return _length(Fraction(stock.name)), stock.width
    return None


def is_common(stock: Stock) -> bool:
    """Whether a board is of a width that most yards keep; true of all that is not softwood."""
    nominal_width = stock.name.partition("x")[2]
    return stock.kind not in SOFTWOOD or nominal_width not in stock_tables.UNCOMMON_WIDTHS


def boards_at_least(width: Length, like: Stock | None = None) -> tuple[Stock, ...]:
    """Published boards at least this wide, the narrowest first; none if none is wide enough.

    Parameters: `width` [length]; `like`, a board or dimension whose thickness is kept (nominal 1
    in boards if left out, or if `like` is not softwood).
    """
    if like is None or like.kind not in SOFTWOOD:
        like = read_stock("1x2")
    thickness_name = like.name.partition("x")[0]
    return tuple(board for board in _boards_of(thickness_name, like.kind) if board.width >= width)


def same_stock_at_least(stock: Stock, width: Length) -> Stock | None:
    """Stock of the same list and thickness, at least this wide; None if there is none.

    Softwood gives the narrowest published width that will do; hardwood, strips of sheet and actual
    sizes give the width itself.
    """
    if stock.kind in SOFTWOOD:
        return next(iter(boards_at_least(width, stock)), None)
    if stock.kind is StockKind.SHEET and width > SHEET_WIDTH:
        return None
    if stock.kind is StockKind.ACTUAL:
        metric = stock.name.endswith(Units.MILLIMETER)
        return actual_stock(stock.thickness, width, Units.MILLIMETER if metric else Units.INCH)
    return replace(stock, width=width)


def thickness_range(stock: Stock) -> tuple[Length, Length] | None:
    """The least and the greatest thickness a sheet of this category may have; None for lumber.

    Formula: category plus or minus 1/32 in, from 13/16 in on plus or minus 5 percent. Valid for
    unsanded, touch-sanded and overlaid panels. Source: PS 1, Structural Plywood.
    """
    if stock.kind is not StockKind.SHEET:
        return None
    if stock.thickness <= _length(stock_tables.SHEET_TOLERANCE_UP_TO):
        play = _length(stock_tables.SHEET_TOLERANCE)
    else:
        play = stock.thickness * stock_tables.SHEET_TOLERANCE_SHARE
    return stock.thickness - play, stock.thickness + play


def _plain(name: str) -> str:
    words = " ".join(name.strip().lower().replace("\u00d7", "x").split())
    return re.sub(r" ?x ?", "x", words)


def _length(inches: Fraction) -> Length:
    return Length.of_inches(inches)


def _quarter(name: str, width: Length | None) -> Stock:
    if width is None:
        raise StockNameError(
            f"Hardwood such as {name} is sold in random widths, so its name gives no width.",
            f'Give the width it can be ripped to, as {{"nominal": "{name}", "width": ...}}.',
        )
    thickness = stock_tables.QUARTER_THICKNESS[name]
    return Stock(name, StockKind.QUARTER, _length(thickness), width)


def _lumber(name: str, thickness: str, nominal_width: str, width: Length | None) -> Stock:
    nominal = stock_tables.QUARTERS_OF_BOARD.get(thickness) or _mixed(thickness)
    kind, actual = _dressed_thickness(nominal)
    face = stock_tables.FACE_WIDTH.get(Fraction(nominal_width))
    if actual is None or face is None:
        raise StockNameError(
            f"No dressed size is published for {name}.",
            f"Thicknesses are {', '.join(_thickness_names())} and widths"
            f" {', '.join(str(known) for known in stock_tables.FACE_WIDTH)};"
            " for anything else give its real thickness and width.",
        )
    if width is not None:
        raise StockNameError(
            f"The width of {name} is published, and another is given with it.",
            "Leave the width out, or give the real thickness and width instead of the name.",
        )
    return Stock(f"{spelled(nominal)}x{nominal_width}", kind, _length(actual), _length(face))


def _dressed_thickness(nominal: Fraction) -> tuple[StockKind, Fraction | None]:
    board = stock_tables.BOARD_THICKNESS.get(nominal)
    if board is not None:
        return StockKind.BOARD, board
    return StockKind.DIMENSION, stock_tables.DIMENSION_THICKNESS.get(nominal)


def _sheet(category_name: str, width: Length | None) -> Stock:
    category = _mixed(category_name)
    whole = SHEET_WIDTH
    if category not in stock_tables.SHEET_CATEGORIES:
        known = ", ".join(spelled(each) for each in stock_tables.SHEET_CATEGORIES)
        raise StockNameError(
            "There is no such performance category of sheet.",
            f"Categories are {known}; for anything else give its real thickness and width.",
        )
    if width is not None and width > whole:
        raise StockNameError(
            "No strip of a sheet is wider than the sheet, 48 in.",
            "Give a width of at most 48 in, or the real thickness and width of what is used.",
        )
    name = f"{spelled(category)} sheet"
    return Stock(name, StockKind.SHEET, _length(category), whole if width is None else width)


def _boards_of(thickness_name: str, kind: StockKind) -> Iterator[Stock]:
    for nominal_width in stock_tables.FACE_WIDTH:
        board = read_stock(f"{thickness_name}x{nominal_width}")
        assert board.kind is kind
        yield board


def _thickness_names() -> Iterator[str]:
    for table in (stock_tables.BOARD_THICKNESS, stock_tables.DIMENSION_THICKNESS):
        yield from (spelled(nominal) for nominal in table)


def _counted(number: Fraction, finest: int) -> str:
    """A number as it stands in a size: mixed where a rule is divided so finely, else decimal."""
    whole, part = divmod(number, 1)
    if finest % part.denominator:
        return decimal_text(number, places=3)
    return " ".join(str(each) for each in (whole, part) if each) or "0"


def _mixed(text: str) -> Fraction:
    """`2-1/2` as a fraction; zero, which nothing is as thick as, where it is none."""
    try:
        return sum((Fraction(part) for part in re.split("[ -]", text)), Fraction(0))
    except (ValueError, ZeroDivisionError):
        return Fraction(0)


def spelled(nominal: Fraction) -> str:
    """A nominal thickness as it stands in a trade name."""
    for name, quarters in stock_tables.QUARTERS_OF_BOARD.items():
        if nominal == quarters:
            return name
    whole, rest = divmod(nominal, 1)
    return "-".join(str(part) for part in (whole, rest) if part)
