"""Decides what an outline leaves open."""

from lacunar.measure.angle import Angle, stride
from lacunar.measure.length import Length
from lacunar.measure.plane import ORIGIN, Spot
from lacunar.measure.polygon import extent
from lacunar.measure.units import Units
from lacunar.model.assuming import Assuming
from lacunar.model.outline import Outline, OutlineSpec, Side
from lacunar.model.spec import RoomSpec
from lacunar.model.survey_assumptions import TOLERANCE

SQUARE = Angle.of_degrees(90)
HALF_TURN = Angle.of_degrees(180)


def decide_outline(room: RoomSpec, units: Units, assuming: Assuming) -> Outline | None:
    """Turn an outline that has passed the rules into a decided one."""
    said = room.outline
    if said is None:
        return None
    sides = _sides(said)
    if any(side.corner is None for side in said.sides or ()):
        assuming.note("/room/outline/sides", SQUARE.text, "a corner without an angle is square")
    return Outline(
        sides=sides,
        points=said.points or (),
        diagonals=said.diagonals,
        tolerance=assuming.settle(
            said.tolerance,
            "/room/outline/tolerance",
            TOLERANCE[units],
            "a gap up to here is shared out, a larger one is measured again",
        ),
        walls=said.walls,
        surfaces=said.surfaces,
    )


def _sides(said: OutlineSpec) -> tuple[Side, ...]:
    return tuple(
        Side(side.length, side.corner or SQUARE)
        for side in said.sides or ()
        if side.length is not None
    )


def walked(sides: tuple[Side, ...]) -> list[Spot]:
    """Go round sides clockwise, the first straight up: where each of them ends."""
    at, heading, found = ORIGIN, SQUARE, []
    for side in sides:
        x, y = stride(side.length, heading)
        at = at + Spot(x, y)
        found.append(at)
        heading = heading - (HALF_TURN - side.corner)
    return found


def rough_sizes(outline: OutlineSpec) -> tuple[Length, Length]:
    """Turn an outline into what the room is called by: how far it reaches either way [length]."""
    low, high = extent(outline.points or walked(_sides(outline)))
    return high.x - low.x, high.y - low.y
