"""Every size of stock that has a published name, listed."""

from collections.abc import Iterator
from dataclasses import dataclass
from enum import StrEnum

from lacunar.measure.length import Length
from lacunar.model import stock_tables
from lacunar.model.stock import (
    Stock,
    is_common,
    read_stock,
    spelled,
    thickness_range,
)


class PublishedKind(StrEnum):
    """Which published list a size is in."""

    BOARD = "board"
    DIMENSION = "dimension"
    QUARTER = "quarter"
    SHEET = "sheet"


@dataclass(frozen=True, slots=True)
class PublishedSize:
    """A trade name with its real size; `width` is None for hardwood, sold in random widths.

    `least` and `most` are what a sheet's thickness may be, None for lumber; `common` tells whether
    most yards keep it.
    """

    name: str
    kind: PublishedKind
    thickness: Length
    width: Length | None
    least: Length | None
    most: Length | None
    common: bool


def published_sizes() -> Iterator[PublishedSize]:
    """Every published size: boards, dimension, hardwood by quarters, sheets, each by thickness.

    >>> [size.name for size in published_sizes() if size.kind is PublishedKind.QUARTER]
    ['4/4', '5/4', '6/4', '8/4', '12/4', '16/4']
    """
    for table in (stock_tables.BOARD_THICKNESS, stock_tables.DIMENSION_THICKNESS):
        for nominal in table:
            for width in stock_tables.FACE_WIDTH:
                yield _size(read_stock(f"{spelled(nominal)}x{width}"))
    for name in stock_tables.QUARTER_THICKNESS:
        yield _random_width(name)
    for category in stock_tables.SHEET_CATEGORIES:
        yield _size(read_stock(f"{spelled(category)} sheet"))


def published_size(name: str) -> PublishedSize:
    """The size of one trade name. Raises `StockNameError`, with a reason and a remedy.

    >>> published_size("2 x 4").width == Length.of_inches(3) + Length.of_inches(1) / 2
    True
    """
    plain = "".join(name.split())
    if plain in stock_tables.QUARTER_THICKNESS:
        return _random_width(plain)
    return _size(read_stock(name))


def _random_width(name: str) -> PublishedSize:
    thickness = Length.of_inches(stock_tables.QUARTER_THICKNESS[name])
    return PublishedSize(name, PublishedKind.QUARTER, thickness, None, None, None, common=True)


def _size(stock: Stock) -> PublishedSize:
    bounds = thickness_range(stock)
    least, most = bounds or (None, None)
    return PublishedSize(
        name=stock.name,
        kind=PublishedKind(stock.kind.value),
        thickness=stock.thickness,
        width=stock.width,
        least=least,
        most=most,
        common=is_common(stock),
    )
