"""The names of columns on the plan, where there is room."""

from lacunar.drawing import style
from lacunar.drawing.annotation import fitted
from lacunar.drawing.elements import Face, Group
from lacunar.drawing.plan.clear_places import (
    Box,
    Label,
    Occupied,
    place_label,
)
from lacunar.drawing.plan.cut_coffers import on_paper
from lacunar.drawing.plan.frame import PlanFrame
from lacunar.drawing.typeface import Typeface
from lacunar.drawing.views.reflected_ceiling_plan.items import room_on_paper
from lacunar.layout.outline_records import RoomColumn

LONGEST_NAME = 20.0


def column_names(frame: PlanFrame, busy: Occupied, typeface: Typeface) -> tuple[Group, ...]:
    """The name of each column that has room for it. What is placed is added to `busy`."""
    room = frame.layout.outlined
    found = []
    for number, column in enumerate(room.columns if room else (), start=1):
        shown = fitted(column.name, LONGEST_NAME, style.TEXT, typeface, Face.MEDIUM)
        label = Label(shown, _box(frame, column), False, room_on_paper(frame))
        words = place_label(label, busy, typeface)
        if words:
            busy.add(words)
            data = {"of": column.name}
            found.append(Group("column-name", words, id=f"column-name-{number}", data=data))
    return tuple(found)


def _box(frame: PlanFrame, column: RoomColumn) -> Box:
    corners = [on_paper(frame, corner) for corner in column.corners]
    xs, ys = [at.x for at in corners], [at.y for at in corners]
    return Box(min(xs), min(ys), max(xs), max(ys))
