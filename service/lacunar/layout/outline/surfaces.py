"""What is on a wall's framing and how it bows: lines moved into the room, and crossed anew."""

from collections.abc import Mapping, Sequence

from lacunar.layout.fault_gathering import refuse
from lacunar.measure.length import ZERO, Length
from lacunar.measure.plane import Spot, along, crossing, distance, moved_left, snapped
from lacunar.measure.polygon import Line, edges, is_simple
from lacunar.model.faults import Fault
from lacunar.model.outline import Outline
from lacunar.model.room import WALLS, MeasuredTo, Room

# What has more parts of an inch than this came from a root, and is snapped.
_MOST_PARTS = 10**8


def finishes(room: Room, outline: Outline, looks: Sequence[str]) -> dict[int, Length]:
    """The finish of each side by its number, where that is known.

    `looks` are the walls of W1 to W4 that sides look as; what was not told of a side is that one's.
    """
    usual = dict(zip(WALLS, room.wall_finish or (), strict=False))
    found = {}
    for side, look in enumerate(looks, start=1):
        own = outline.surface(side).finish
        finish = usual.get(look) if own is None else own
        if finish is not None:
            found[side] = finish
    return found


def bows(outline: Outline) -> dict[int, Length]:
    """What each side bows, by its number, where it does."""
    return {each.side: each.bow for each in outline.surfaces if each.side is not None and each.bow}


def finished(
    room: Room, corners: Sequence[Spot], finish: Mapping[int, Length]
) -> tuple[tuple[Spot, ...], bool]:
    """Turn corners as measured, clockwise, into those of the finished walls.

    Where the room was measured to its framing each line goes inward by its own finish. Also tells
    whether anything was snapped. Raises SpecRefused where that leaves nothing of a side.
    """
    if room.measured_to is MeasuredTo.FINISH or not any(finish.values()):
        return tuple(corners), False
    lines = list(edges(tuple(corners)))
    widths = [finish.get(side, ZERO) for side in range(1, len(lines) + 1)]
    found, rough = moved_inward(lines, widths)
    lost = [
        side
        for side, (line, face) in enumerate(zip(lines, edges(found), strict=True), start=1)
        if along(line[1] - line[0], face[1] - face[0]) <= 0
    ]
    if not lost and not is_simple(found):
        lost = [1]
    refuse([_nothing_left(side, widths[side - 1]) for side in lost])
    return found, rough


def _nothing_left(side: int, finish: Length) -> Fault:
    return Fault(
        code="outline_to_framing",
        pointer="/room/outline",
        message=f"With the finish taken off the framing nothing is left of side {side}, or the"
        " sides cross.",
        remedy="Look at the finish of that side and of those beside it, or measure to the finish.",
        figures={"side": side, "finish": finish},
    )


def moved_inward(lines: Sequence[Line], widths: Sequence[Length]) -> tuple[tuple[Spot, ...], bool]:
    """Move each line, clockwise, into the room by its width [length], and cross neighbors anew.

    Also tells whether the places had to be snapped.
    """
    moved, rough = [], False
    for line, width in zip(lines, widths, strict=True):
        rough = rough or bool(width and distance(*line).approximate)
        moved.append(moved_left(line, -width))
    met = [crossing(moved[number - 1], line) for number, line in enumerate(moved)]
    rough = rough or any(spot.x.inches.denominator > _MOST_PARTS for spot in met)
    return (tuple(snapped(spot) for spot in met) if rough else tuple(met)), rough
