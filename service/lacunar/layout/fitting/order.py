"""Puts the steps of fitting in an order in which none blocks another."""

from collections.abc import Iterator, Mapping
from dataclasses import dataclass

from lacunar.layout.fitting.mouths import passings
from lacunar.layout.fitting.parts import parts_of
from lacunar.layout.fitting_records import Because, Fitting, FittingStep, Passing, Stage, Wait
from lacunar.layout.records import Layout
from lacunar.model.panel import Seat

# Where nothing else decides, this is the order (common practice, no source): what is seen and
# easily marred goes up last.
USUAL_ORDER = tuple(Stage)

_FILLS = (Stage.PANELS, Stage.BOARDS)
_HELD = (Stage.BACKING, Stage.CASING_CLEATS)
_FACES = (Stage.SIDES, Stage.FOLDED_BEAMS)
_CROWN = (Stage.CROWN_FRAMES, Stage.COPED_CROWN)

# What waits for what on every ceiling, and why.
_ALWAYS: tuple[tuple[tuple[Stage, ...], tuple[Stage, ...], Because], ...] = (
    ((Stage.SNAP_LINES,), (Stage.SKIN,), Because.LINES_GO_ON_SKIN),
    ((Stage.BLOCKING, *_HELD, *_FACES), (Stage.SNAP_LINES,), Because.PLACED_BY_LINES),
    (_HELD, (Stage.BLOCKING,), Because.FASTENED_TO_IT),
    (_FILLS, (Stage.BLOCKING,), Because.CLOSED_OFF_AFTER),
    (_FACES, _HELD, Because.FASTENED_TO_IT),
    ((Stage.BOTTOMS,), (Stage.SIDES,), Because.FASTENED_TO_IT),
    ((Stage.EDGE_MOULDINGS,), (*_FACES, Stage.BOTTOMS), Because.LIES_AGAINST_IT),
    (
        (Stage.CEILING_MOULDINGS, Stage.CROWN_NAILERS, *_CROWN),
        (*_FACES, *_FILLS),
        Because.LIES_AGAINST_IT,
    ),
    ((Stage.CROWN_NAILERS, *_CROWN), (Stage.CEILING_MOULDINGS,), Because.LIES_AGAINST_IT),
    (_CROWN, (Stage.CROWN_NAILERS,), Because.FASTENED_TO_IT),
)

_BY_SEAT: Mapping[Seat, tuple[tuple[tuple[Stage, ...], tuple[Stage, ...], Because], ...]] = {
    Seat.ABOVE_BACKING: (
        (_FILLS, (Stage.SNAP_LINES,), Because.PLACED_BY_LINES),
        (_HELD, _FILLS, Because.FIXED_THROUGH_IT),
        (_FACES, _FILLS, Because.COVERS_ITS_EDGE),
    ),
    Seat.BETWEEN_BACKING: (
        (_FILLS, _HELD, Because.FITS_BETWEEN),
        (_FACES, _FILLS, Because.COVERS_ITS_EDGE),
    ),
    Seat.BETWEEN_SIDES: ((_FILLS, _FACES, Because.FITS_BETWEEN),),
}

_LIFTED = {"panel": Stage.PANELS, "board": Stage.BOARDS, "crown_frame": Stage.CROWN_FRAMES}


@dataclass(frozen=True, slots=True)
class _Edge:
    """One stage that waits for another."""

    waits: Stage
    first: Stage
    because: Because
    coffers: tuple[str, ...] = ()


def fitting(layout: Layout) -> Fitting:
    """Turn a ceiling that is set out into its steps of fitting, each after all that it waits for.

    Of the steps that wait for nothing more, the one that usually comes first is next. What does not
    pass the mouth goes up before what would narrow it: bottoms, or the mouldings at their edges.
    """
    parts = parts_of(layout)
    passing = tuple(passings(layout))
    edges = [edge for edge in _edges(layout, passing) if {edge.waits, edge.first} <= set(parts)]
    order = _in_order(list(parts), edges)
    number = {stage: place for place, stage in enumerate(order, start=1)}
    steps = tuple(
        FittingStep(
            number=number[stage],
            stage=stage,
            of=parts[stage],
            needs=tuple(
                Wait(number[edge.first], edge.first, edge.because, edge.coffers)
                for edge in sorted(edges, key=lambda edge: number[edge.first])
                if edge.waits is stage
            ),
        )
        for stage in order
    )
    return Fitting(steps, passing)


def _edges(layout: Layout, passing: tuple[Passing, ...]) -> Iterator[_Edge]:
    for waiting, first, because in (*_ALWAYS, *_BY_SEAT[layout.ceiling.panel.seat]):
        for waits in waiting:
            for each in first:
                yield _Edge(waits, each, because)
    blocked: dict[tuple[Stage, Stage], list[str]] = {}
    for passed in passing:
        if passed.too_small_after is not None:
            pair = passed.too_small_after, _LIFTED[passed.piece]
            blocked.setdefault(pair, []).extend(passed.coffers)
    for (narrows, lifted), coffers in blocked.items():
        yield _Edge(narrows, lifted, Because.MOUTH_TOO_SMALL, tuple(dict.fromkeys(coffers)))


def _in_order(stages: list[Stage], edges: list[_Edge]) -> list[Stage]:
    left = sorted(stages, key=USUAL_ORDER.index)
    order: list[Stage] = []
    while left:
        ready = [
            stage for stage in left if not any(e.waits is stage and e.first in left for e in edges)
        ]
        order.append(ready[0])
        left.remove(ready[0])
    return order
