"""The control line of a crooked room: a chain line outside the wall that its grid is square to."""

from lacunar.drawing import style
from lacunar.drawing.elements import Group, Polyline
from lacunar.drawing.plan.frame import WALL_BAND, PlanFrame
from lacunar.drawing.plan.walls import walls_of

OFF_WALL = WALL_BAND + 0.65


def control_line(frame: PlanFrame) -> tuple[Group, ...]:
    """The line along its wall; none in a square room, and none where that is a member's."""
    crooked = frame.layout.crooked
    if crooked is None or crooked.square or crooked.control_by != "wall":
        return ()
    wall = next(each for each in walls_of(frame) if each.name == crooked.control)
    ends = (wall.point(0.0, OFF_WALL), wall.point(wall.span, OFF_WALL))
    return (
        Group(
            "control-line",
            (Polyline(ends, style.CONTROL),),
            id="control-line",
            title=f"Control line: the grid is square to {wall.name}",
            data={"wall": wall.name},
        ),
    )
