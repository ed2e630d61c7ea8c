"""What is paid for of materials: how much of each, by every measure a price can be for."""

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass
from decimal import Decimal
from fractions import Fraction

from lacunar.measure.figure import NumberFigure, Rule
from lacunar.measure.length import Length
from lacunar.takeoff.estimate.words import MaterialPer
from lacunar.takeoff.material_records import Bought, LineKind, MaterialLine, MaterialList
from lacunar.takeoff.part_records import Material
from lacunar.takeoff.quantities.quantity_records import (
    Quantity,
    QuantityKind,
    QuantityUnit,
    in_metric,
)

BOUGHT = Rule("sticks, sheets or packs of one size, as they are planned", "bought")

# What the amounts of a line are told in: by its unit, and in metric units where there are any.
_PER: Mapping[QuantityUnit, tuple[MaterialPer, MaterialPer | None]] = {
    QuantityUnit.FOOT: (MaterialPer.FOOT, MaterialPer.METER),
    QuantityUnit.SQUARE_FOOT: (MaterialPer.SQUARE_FOOT, MaterialPer.SQUARE_METER),
    QuantityUnit.GALLON: (MaterialPer.GALLON, MaterialPer.LITER),
    QuantityUnit.COUNT: (MaterialPer.EACH, None),
    QuantityUnit.CARTRIDGE: (MaterialPer.EACH, None),
}
_SIZES: Mapping[LineKind, MaterialPer] = {
    LineKind.STICK: MaterialPer.PIECE,
    LineKind.BOARD: MaterialPer.PIECE,
    LineKind.SHEET: MaterialPer.SHEET,
}


@dataclass(frozen=True, slots=True)
class BoughtSize:
    """So many sticks of a length, sheets of a size, or packs.

    `price` is what one costs by the stock it was planned from, None where that has no prices.
    """

    name: str
    per: MaterialPer
    length: Length | None
    quantity: NumberFigure
    price: Decimal | None


@dataclass(frozen=True, slots=True)
class Need:
    """One material (None of what no part is cut from), its name, and the marks behind it.

    `amounts` are what is bought by each measure; `sizes` the same piece by piece.
    """

    name: str
    material: Material | None
    amounts: Mapping[MaterialPer, NumberFigure]
    sizes: tuple[BoughtSize, ...]
    source: tuple[str, ...]


def needs_of(materials: MaterialList, quantities: Sequence[Quantity]) -> tuple[Need, ...]:
    """Turn a material list into what is paid for: all that is bought, whatever is left of it.

    Boards are also told by the area they cover, with its waste, where there is but one product of
    them: of several, the take-off does not tell which covers what.
    """
    boards = [line for line in materials.lines if line.kind is LineKind.BOARD]
    covered = [each for each in quantities if each.kind is QuantityKind.BOARD_AREA]
    area = covered[0].with_waste if len(boards) == len(covered) == 1 else None
    return tuple(
        Need(
            name=line.name,
            material=line.material,
            amounts=dict(_amounts(line, area)),
            sizes=tuple(_size(line, bought) for bought in line.bought),
            source=tuple(part.mark for part in line.parts),
        )
        for line in materials.lines
    )


def _amounts(
    line: MaterialLine, covered: NumberFigure | None
) -> Iterator[tuple[MaterialPer, NumberFigure]]:
    yield from _both_ways(line.amount, line.unit)
    if line.board_feet is not None:
        yield MaterialPer.BOARD_FOOT, line.board_feet
    if line.kind is LineKind.BOARD and covered is not None:
        yield from _both_ways(covered, QuantityUnit.SQUARE_FOOT)


def _both_ways(
    amount: NumberFigure, unit: QuantityUnit
) -> Iterator[tuple[MaterialPer, NumberFigure]]:
    own, metric = _PER[unit]
    yield own, amount
    told = in_metric(unit, amount)
    if metric is not None and told is not None:
        yield metric, told


def _size(line: MaterialLine, bought: Bought) -> BoughtSize:
    count = Fraction(bought.quantity)
    cost = None if bought.cost is None else Decimal(bought.cost) / bought.quantity
    return BoughtSize(
        name=bought.name,
        per=_SIZES.get(line.kind, MaterialPer.PACK),
        length=bought.length,
        quantity=BOUGHT.gives(count, bought=count),
        price=cost,
    )
