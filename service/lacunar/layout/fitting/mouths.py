"""What passes the mouths of coffers: panels and boards between the sides, and bench frames."""

from collections.abc import Iterable, Iterator, Mapping
from dataclasses import dataclass
from itertools import pairwise
from typing import Literal

from lacunar.layout.coffer_surroundings import SidePair, surroundings
from lacunar.layout.fitting_records import Passing, Stage
from lacunar.layout.moulding_records import CofferTrim
from lacunar.layout.mouldings.pieces import CROWN
from lacunar.layout.records import Layout, PanelFit
from lacunar.layout.tapering import tapered_panels_of
from lacunar.measure.figure import LengthFigure, Rule
from lacunar.measure.length import ZERO, Length
from lacunar.model.panel import Seat
from lacunar.model.room import RunName

BETWEEN_BOTTOMS = Rule(
    "between the bottoms: the opening less what they stand out on both sides",
    "opening - near_overhang - far_overhang",
)
LARGEST_PIECE = Rule("largest piece of a panel, from seam to seam", "far - near")

Sizes = Mapping[RunName, LengthFigure]


@dataclass(frozen=True, slots=True)
class _Lifted:
    """Something to be lifted into a coffer, with its two sizes."""

    piece: Literal["panel", "board", "crown_frame"]
    sizes: Sizes


def passings(layout: Layout) -> Iterator[Passing]:
    """Hold whatever goes up after the sides against the mouths, alike coffers together.

    A piece passes that is no larger than the mouth either way: it is lifted in level, neither
    turned nor tilted, because a frame would rack and a panel would have to be turned back above.
    """
    runs = {name: layout.run(name) for name in RunName}
    taken = layout.measured_openings.openings if layout.measured_openings else ()
    measured = {opening.coffer: opening for opening in taken}
    around = {
        found.coffer.id: found for found in surroundings(runs, layout.profile_of, layout.coffers)
    }
    for trim in layout.mouldings.coffers:
        for lifted, coffers in _lifted(layout, trim):
            first = around[coffers[0]]
            opening = measured.get(coffers[0])
            openings = {
                RunName.LENGTH: opening.fit_length if opening else first.coffer.length,
                RunName.WIDTH: opening.fit_width if opening else first.coffer.width,
            }
            bottoms = {run: _between(openings[run], first.across(run)) for run in RunName}
            yield _passing(lifted, coffers, trim, bottoms)


def _between(opening: LengthFigure, sides: SidePair) -> LengthFigure:
    near, far = sides.near.overhang, sides.far.overhang
    if near == far == ZERO:
        return opening
    return BETWEEN_BOTTOMS.gives(
        opening.value - near - far,
        opening=opening.value,
        near_overhang=near,
        far_overhang=far,
    )


def _lifted(layout: Layout, trim: CofferTrim) -> Iterator[tuple[_Lifted, tuple[str, ...]]]:
    if layout.ceiling.panel.seat is Seat.BETWEEN_SIDES:
        tapered = dict(_tapered(layout))
        for panel in layout.panels:
            if inside := _both(trim.coffers, panel.coffers):
                sizes = tapered.get(inside[0]) or largest_piece(panel)
                yield _Lifted("panel", sizes), inside
        yield from _boards(layout, trim)
    if trim.frame_passes_mouth is not None:
        crown = [piece for piece in trim.pieces if piece.moulding == CROWN]
        sizes = {
            run: _shorter(piece.long_point for piece in crown if piece.along is run)
            for run in RunName
        }
        yield _Lifted("crown_frame", sizes), trim.coffers


def _tapered(layout: Layout) -> Iterator[tuple[str, Sizes]]:
    """Panels cut to a coffer out of square, by shorter sides: the mouth tapers as they do."""
    for panel in tapered_panels_of(layout):
        left, upper, right, lower = panel.sides
        shorter = {RunName.LENGTH: (upper, lower), RunName.WIDTH: (left, right)}
        yield panel.coffer, {run: _shorter(sides) for run, sides in shorter.items()}


def _shorter(sizes: Iterable[LengthFigure]) -> LengthFigure:
    return min(sizes, key=lambda figure: figure.value)


def _boards(layout: Layout, trim: CofferTrim) -> Iterator[tuple[_Lifted, tuple[str, ...]]]:
    boards = layout.boards
    if boards is None:
        return
    for field in boards.fields:
        if inside := _both(trim.coffers, field.coffers):
            along = boards.parallel_to
            yield _Lifted("board", {along: field.length, along.other: boards.overall_width}), inside


def _both(some: tuple[str, ...], others: tuple[str, ...]) -> tuple[str, ...]:
    return tuple(each for each in some if each in others)


def largest_piece(panel: PanelFit) -> dict[RunName, LengthFigure]:
    """Turn a panel with its seams into the two sizes of the largest piece of it [length]."""
    return {
        RunName.LENGTH: _largest(panel.length, panel.seams_along_length),
        RunName.WIDTH: _largest(panel.width, panel.seams_along_width),
    }


def _largest(size: LengthFigure, seams: tuple[LengthFigure, ...]) -> LengthFigure:
    if not seams:
        return size
    places: list[Length] = [ZERO, *(seam.value for seam in seams), size.value]
    near, far = max(pairwise(places), key=lambda piece: piece[1] - piece[0])
    return LARGEST_PIECE.gives(far - near, far=far, near=near)


def _passing(
    lifted: _Lifted, coffers: tuple[str, ...], trim: CofferTrim, bottoms: Sizes
) -> Passing:
    mouth = {RunName.LENGTH: trim.mouth_length, RunName.WIDTH: trim.mouth_width}
    too_small = None
    if not _passes(lifted.sizes, bottoms):
        too_small = Stage.BOTTOMS
    elif not _passes(lifted.sizes, mouth):
        too_small = Stage.EDGE_MOULDINGS
    return Passing(
        piece=lifted.piece,
        coffers=coffers,
        length=lifted.sizes[RunName.LENGTH],
        width=lifted.sizes[RunName.WIDTH],
        between_bottoms_length=bottoms[RunName.LENGTH],
        between_bottoms_width=bottoms[RunName.WIDTH],
        mouth_length=trim.mouth_length,
        mouth_width=trim.mouth_width,
        too_small_after=too_small,
    )


def _passes(piece: Sizes, mouth: Sizes) -> bool:
    return all(piece[run].value <= mouth[run].value for run in RunName)
