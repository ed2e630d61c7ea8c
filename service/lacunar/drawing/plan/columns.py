"""Columns on a plan: their finished faces, hatched."""

from collections.abc import Iterator

from lacunar.drawing import style
from lacunar.drawing.elements import Element, Group, Polyline, Pt, Segments
from lacunar.drawing.hatching import diagonal_lines
from lacunar.drawing.plan.frame import PlanFrame
from lacunar.drawing.wording import decimal_mm
from lacunar.layout.records import Point

HATCH_PITCH = 1.2


def column_groups(frame: PlanFrame) -> Iterator[Group]:
    """Each column with its faces and its hatch."""
    room = frame.layout.outlined
    for number, column in enumerate(room.columns if room else (), start=1):
        corners = tuple(frame.point(Point(corner.x, corner.y)) for corner in column.corners)
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
