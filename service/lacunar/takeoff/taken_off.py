"""Takes off one ceiling or several pooled: the one function of this folder that others call."""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from itertools import chain

from lacunar.layout.names import first_few
from lacunar.layout.records import Caution, Layout
from lacunar.measure.length import Length
from lacunar.model.ceiling import StockRules
from lacunar.takeoff.part_records import MaterialKind, Part
from lacunar.takeoff.parts import parts_from, pieces_of
from lacunar.takeoff.quantities.ceiling_quantities import (
    pooled_quantities,
    quantities,
    quantity_cautions,
)
from lacunar.takeoff.quantities.quantity_records import Quantity

PARTS_LONGER = "parts_longer_than_stock"


@dataclass(frozen=True, slots=True)
class TakenCeiling:
    """A ceiling of a take-off: its number, by which places name it, and how many coffers it has."""

    number: int
    name: str
    coffers: int


@dataclass(frozen=True, slots=True)
class TakenOff:
    """All ceilings of a take-off, their parts under common marks, quantities, and advice."""

    ceilings: tuple[TakenCeiling, ...]
    parts: tuple[Part, ...]
    quantities: tuple[Quantity, ...]
    cautions: tuple[Caution, ...]


def take_off(layouts: Sequence[Layout]) -> TakenOff:
    """Turn one layout or several into a take-off.

    Ceilings are counted from 1 in their order. Parts that are alike in different ceilings are one
    part under one mark. Quantities are those of each ceiling, by what its own spec says, added up.
    """
    pieces = [pieces_of(layout, number) for number, layout in enumerate(layouts, start=1)]
    parts = parts_from(chain.from_iterable(pieces))
    each = (
        quantities(layout, parts_from(own)) for layout, own in zip(layouts, pieces, strict=True)
    )
    return TakenOff(
        ceilings=tuple(
            TakenCeiling(number, layout.ceiling.name, len(layout.coffers))
            for number, layout in enumerate(layouts, start=1)
        ),
        parts=parts,
        quantities=pooled_quantities(each),
        cautions=tuple(_cautions(layouts, parts)),
    )


def _cautions(layouts: Sequence[Layout], parts: Sequence[Part]) -> Iterator[Caution]:
    """Advice about parts that nobody sells material for in one length, and what is not counted."""
    for number, layout in enumerate(layouts, start=1):
        in_it = [part for part in parts if any(place.ceiling == number for place in part.places)]
        too_long = [part for part in in_it if _is_longer(part, layout.ceiling.stock)]
        if too_long:
            longest = max(too_long, key=lambda part: part.cut_length.value)
            yield Caution(
                code=PARTS_LONGER,
                text="Parts are longer than their stock, and nothing says where they may be parted."
                " Get longer stock, or choose where they are joined.",
                figures={
                    "ceiling": number,
                    "parts": ", ".join(part.mark for part in too_long),
                    "longest": longest.cut_length.value,
                    "longest_board": layout.ceiling.stock.longest_board,
                },
            )
        yield from quantity_cautions(number, layout)
        yield from _at_walls(number, layout)


def _at_walls(number: int, layout: Layout) -> Iterator[Caution]:
    """What walls that are not square, or other than four, ask for and parts do not tell."""
    room = layout.outlined
    if room is not None and (room.partial_coffers or room.angled_beams):
        ids = [coffer.id for coffer in room.partial_coffers]
        ids += [beam.id for beam in room.angled_beams]
        yield Caution(
            code="cut_coffers_not_taken_off",
            text="Crown, panels and boards of coffers that walls cut, and boards of beams at angled"
            f" walls, are not among the parts: {first_few(ids)}. The layout has their sizes, under"
            " outlined.",
            figures={"ceiling": number, "left_out": len(ids)},
        )
    if layout.crooked is not None and not layout.crooked.square:
        yield Caution(
            code="tapers_not_taken_off",
            text="What stands at walls that are out of square is taken off as wide as its straight"
            " face asks; the layout tells the board to start from at each wall, under crooked.",
            figures={"ceiling": number},
        )


def _is_longer(part: Part, stock: StockRules) -> bool:
    longest: Length | None = part.material.length
    if longest is None or part.material.kind is not MaterialKind.SHEET:
        longest = stock.longest_board
    return part.cut_length.value > longest
