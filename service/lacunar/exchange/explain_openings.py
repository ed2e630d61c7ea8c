"""Measured openings in sentences: differences, corners, and what follows out of square."""

from collections.abc import Callable, Iterator
from typing import Any

from lacunar.exchange.explain_mouldings import piece_in_words
from lacunar.layout.opening_records import (
    MeasuredOpening,
    MeasuredOpenings,
    OutOfSquareCrown,
    TaperedField,
    TaperedPanel,
)
from lacunar.measure.figure import Figure
from lacunar.model.room import WALLS

Lines = Iterator[str]
Tell = Callable[[str, Figure[Any]], str]


def explain_openings(found: MeasuredOpenings, tell: Tell) -> Lines:
    """Turn measured openings into lines; `tell` words one figure with its label."""
    yield f"Measured in grid {found.grid}."
    for opening in found.openings:
        yield from _opening(opening, tell)
    for crown in found.crown:
        yield from explain_crown(crown, tell)
    for panel in found.panels:
        yield from explain_panel(panel, tell)
    for field in found.boards:
        yield from explain_field(field, tell)
    if found.not_measured:
        yield f"Not measured, and sized by the plan: {', '.join(found.not_measured)}."


def _opening(opening: MeasuredOpening, tell: Tell) -> Lines:
    name = opening.coffer
    yield from _differences(opening, tell)
    yield tell(f"{name}, what fits along the length", opening.fit_length)
    yield tell(f"{name}, what fits along the width", opening.fit_width)
    for label, figure in (
        (f"{name}, closing error", opening.closing_error),
        *_corners(opening),
        (f"{name}, out of square", opening.out_of_square),
    ):
        if figure is not None:
            yield tell(label, figure)
    yield f"{name}: square or not: {opening.squareness.replace('_', ' ')}."
    if opening.missing:
        yield f"{name}: not measured: {', '.join(opening.missing)}."


def _differences(opening: MeasuredOpening, tell: Tell) -> Lines:
    name = opening.coffer
    for side in opening.sides:
        if side.measured is not None and side.difference is not None:
            yield tell(f"{name} toward {side.toward}", side.measured)
            yield tell(f"{name} toward {side.toward}, off the plan", side.difference)
    for each in opening.diagonals:
        if each.measured is not None and each.difference is not None:
            yield tell(f"{name}, {each.name} diagonal", each.measured)
            yield tell(f"{name}, {each.name} diagonal as planned", each.planned)
            yield tell(f"{name}, {each.name} diagonal, off the plan", each.difference)


def _corners(opening: MeasuredOpening) -> Iterator[tuple[str, Figure[Any] | None]]:
    for corner in opening.corners:
        label = f"{opening.coffer}, corner of {' and '.join(corner.between)}"
        yield f"{label}, by the rising diagonal", corner.by_rising
        yield f"{label}, by the falling diagonal", corner.by_falling
        yield label, corner.angle
        yield f"{label}, off square", corner.lean


def explain_crown(crown: OutOfSquareCrown, tell: Tell) -> Lines:
    """Crown of a coffer out of square in sentences: both ways, and the saw at its corners."""
    yield f"Crown of {crown.coffer} goes in {crown.chosen.replace('_', ' ')}."
    for way, pieces in (("coped", crown.coped), ("mitred to its corners", crown.mitred)):
        for piece in pieces:
            label = f"{crown.coffer} {way}: {piece_in_words(piece)}"
            yield tell(f"{label}, long point", piece.long_point)
            yield tell(f"{label}, short point", piece.short_point)
    for cut in crown.corners:
        label = f"Saw at {crown.coffer}, corner of {' and '.join(cut.between)}"
        yield tell(f"{label}, crown nested, miter", cut.saw.nested_miter)
        yield tell(f"{label}, crown flat, miter", cut.saw.flat_miter)
        yield tell(f"{label}, crown flat, bevel", cut.saw.flat_bevel)


def explain_panel(panel: TaperedPanel, tell: Tell) -> Lines:
    """A tapered panel in sentences."""
    name = f"Tapered panel of {panel.coffer}"
    for wall, side in zip(WALLS, panel.sides, strict=True):
        yield tell(f"{name}, toward {wall}", side)
    yield tell(f"{name}, cut from a length of", panel.length)
    yield tell(f"{name}, cut from a width of", panel.width)
    for corner in panel.corners:
        label = f"{name}, corner of {' and '.join(corner.between)}"
        yield tell(f"{label}, along", corner.along)
        yield tell(f"{label}, up", corner.up)


def explain_field(field: TaperedField, tell: Tell) -> Lines:
    """Tapered boards of a coffer in sentences."""
    name = f"Tapered boards of {field.coffer}"
    yield tell(f"{name}, turned", field.turned)
    yield tell(f"{name}, end cut at the start", field.start_cut)
    yield tell(f"{name}, end cut at the end", field.end_cut)
    for edge in field.edges:
        yield tell(f"{name}, edge board toward {edge.toward}, start", edge.start)
        yield tell(f"{name}, edge board toward {edge.toward}, end", edge.end)
    for course in field.courses:
        label = f"{name}, course {course.number}"
        yield tell(f"{label}, near edge", course.near_edge)
        yield tell(f"{label}, far edge", course.far_edge)
        yield tell(f"{label}, cut from", course.cut_from)
