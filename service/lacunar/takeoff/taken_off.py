"""Takes off one ceiling or several pooled: the one function of this folder that others call."""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from itertools import chain

from lacunar.layout.names import first_few
from lacunar.layout.outline_records import OutlineWall, PartialCoffer
from lacunar.layout.records import Caution, Layout
from lacunar.measure.length import ZERO, Length
from lacunar.model.ceiling import StockRules
from lacunar.model.panel import SheetSize
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
    cut = layout.outlined.partial_coffers if layout.outlined else ()
    sheet = layout.ceiling.panel.sheet
    large = [coffer.id for coffer in cut if _is_larger(coffer, sheet)]
    if large:
        yield Caution(
            code="cut_panels_larger_than_sheet",
            text=f"Panels of cut coffers are larger than a sheet: {first_few(large)}. Part them"
            " where a joist or a strip of backing carries the seam.",
            figures={"ceiling": number, "panels": len(large)},
        )
    if layout.followed is not None:
        yield Caution(
            code="ends_aslant_not_taken_off",
            text="Boards of beams that follow the walls are taken off as long as their longer edge,"
            " with square ends: leave them long, and take the angle of each end at its place.",
            figures={"ceiling": number, "beams": len(layout.followed.beams)},
        )
    tapering = [wall for wall in layout.outlined.walls if _tapers(wall)] if layout.outlined else []
    if tapering:
        names = list(dict.fromkeys(wall.wall for wall in tapering))
        yield Caution(
            code="tapers_not_taken_off",
            text="In a room with other than four walls, what stands at walls that are out of square"
            f" or bow is taken off as wide as its straight face asks: {first_few(names, 'walls')}."
            " The layout tells the board to start from at each wall, under outlined.",
            figures={"ceiling": number, "walls": len(names)},
        )


def _tapers(wall: OutlineWall) -> bool:
    """Whether what stands at a wall takes a wider board than its straight face asks."""
    if wall.beam is None:
        return False
    return wall.bow < ZERO or (wall.taper is not None and wall.taper.value > ZERO)


def _is_larger(coffer: PartialCoffer, sheet: SheetSize) -> bool:
    """Whether the piece a cut coffer's panel is cut from fits a sheet neither way."""
    if coffer.panel_length is None or coffer.panel_width is None:
        return False
    sizes = sorted((coffer.panel_length.value, coffer.panel_width.value))
    return sizes[0] > min(sheet.width, sheet.length) or sizes[1] > max(sheet.width, sheet.length)


def _is_longer(part: Part, stock: StockRules) -> bool:
    longest: Length | None = part.material.length
    if longest is None or part.material.kind is not MaterialKind.SHEET:
        longest = stock.longest_board
    return part.cut_length.value > longest
