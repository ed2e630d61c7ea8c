"""Columns on the plan: their finished faces, hatched, with their names where there is room."""

from collections.abc import Iterator

from lacunar.drawing import style
from lacunar.drawing.annotation import fitted
from lacunar.drawing.elements import Element, Face, Group, Polyline, Pt, Segments
from lacunar.drawing.hatching import diagonal_lines
from lacunar.drawing.plan.clear_places import (
    Box,
    Label,
    Occupied,
    place_label,
)
from lacunar.drawing.plan.frame import PlanFrame
from lacunar.drawing.typeface import Typeface
from lacunar.drawing.views.reflected_ceiling_plan.cut_coffers import on_paper
from lacunar.drawing.views.reflected_ceiling_plan.items import room_on_paper
from lacunar.drawing.wording import decimal_mm
from lacunar.layout.outline_records import RoomColumn

HATCH_PITCH = 1.2
LONGEST_NAME = 20.0


def column_groups(frame: PlanFrame) -> Iterator[Group]:
    """Each column with its faces and its hatch."""
    room = frame.layout.outlined
    for number, column in enumerate(room.columns if room else (), start=1):
        corners = tuple(on_paper(frame, corner) for corner in column.corners)
        yield Group(
            "column",
            column_sign(corners),
            id=f"column-{number}",
            title=f"Column {column.name}",
            data={
                "id": column.name,
                "left-mm": decimal_mm(column.left.value),
                "right-mm": decimal_mm(column.right.value),
                "lower-mm": decimal_mm(column.lower.value),
                "upper-mm": decimal_mm(column.upper.value),
            },
        )


def column_sign(corners: tuple[Pt, ...]) -> tuple[Element, ...]:
    """A column's faces and its hatch, by its corners on paper."""
    hatch = Segments(diagonal_lines(corners, HATCH_PITCH), style.HATCH)
    return hatch, Polyline(corners, style.WALL, closed=True)


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
