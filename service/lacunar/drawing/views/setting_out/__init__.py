"""The setting-out plan: what is snapped on the floor, and how far each line is from the datum.

Faces are solid, centers chain lines, from wall to wall; running dimensions stand on all four sides,
each at the end of the run where it is taped, so that no error adds up.
"""

from collections.abc import Iterator, Sequence

from lacunar.drawing import style
from lacunar.drawing.annotation import Block, Tag
from lacunar.drawing.elements import Element, Group, Polyline, Pt
from lacunar.drawing.hatching import outside_box
from lacunar.drawing.paper import Scale
from lacunar.drawing.plan.clear_places import Occupied
from lacunar.drawing.plan.columns import column_groups
from lacunar.drawing.plan.control_line import control_line
from lacunar.drawing.plan.datum_mark import datum_mark
from lacunar.drawing.plan.frame import PlanFrame
from lacunar.drawing.plan.names import beam_tags, tag_box, wall_tags
from lacunar.drawing.plan.ordinates import (
    ENDS,
    Figure,
    FiguresDoNotFit,
    RunningPlan,
    Side,
    place_at_wall,
    running_plan,
)
from lacunar.drawing.plan.walls import wall_groups
from lacunar.drawing.run_ends import End
from lacunar.drawing.typeface import Typeface
from lacunar.drawing.views.setting_out.laser_lines import drawn_lasers, laser_words
from lacunar.drawing.views.setting_out.snap_lines import SnapLine, snap_lines
from lacunar.drawing.wording import SheetWording, decimal_mm
from lacunar.layout.records import Layout, MarkKind, Point
from lacunar.model.room import RunName

__all__ = ["FiguresDoNotFit", "setting_out", "setting_out_plan"]


def setting_out(
    layout: Layout, scale: Scale, wording: SheetWording, typeface: Typeface
) -> RunningPlan:
    """How large the plan is at a scale, found without drawing it."""
    bare = PlanFrame(layout, scale.ratio, Pt(0.0, 0.0))
    return running_plan(bare, scale, _sides, wording, typeface)


def _sides(frame: PlanFrame) -> Iterator[Side]:
    return (_side_of(frame, run, end) for run in RunName for end in ENDS)


def _side_of(frame: PlanFrame, run: RunName, end: End) -> Side:
    """All faces of a run and both its walls, at one end."""
    number = 0 if end == "start" else 1
    marks = next(each for each in frame.layout.marks if (each.run, each.end) == (run, end))
    told = [mark for mark in marks.marks if mark.kind is MarkKind.WALL]
    told += [line.marks[number] for line in snap_lines(frame, run, MarkKind.FACE)]
    found = [
        Figure.of_mark(mark, place_at_wall(frame, run, end, mark.exact.value)) for mark in told
    ]
    return Side(run, end, tuple(sorted(found, key=lambda figure: figure.exact)))


def setting_out_plan(
    plan: RunningPlan, number: int, wording: SheetWording, typeface: Typeface
) -> Block:
    """The plan drawn, as view `number`. Errors: `FiguresDoNotFit` at this scale."""
    frame = plan.frame
    placed = tuple(beam_tags(frame, typeface))
    about: tuple[Element, ...] = (
        Group("object", tuple(_object(frame, placed, typeface)), id=f"object-view-{number}"),
        *(tag.drawn(center, typeface) for tag, center in placed),
        *control_line(frame),
        *drawn_lasers(
            frame, wording.units, [tag_box(tag, center, typeface) for tag, center in placed]
        ),
        *plan.drawn_sides(wording),
    )
    about = (*about, *wall_tags(frame, about, typeface))
    about = (*about, *laser_words(frame, wording.units, Occupied(typeface, about), typeface))
    view = Group(
        "view",
        (*about, datum_mark(frame, about, typeface, crowded=True)),
        id=f"view-{number}",
        title="Setting-out plan",
        data={
            "view": "setting-out",
            "scale": str(plan.scale.ratio),
            "scale-text": plan.scale.text,
        },
    )
    return Block(plan.width, plan.height, (view,))


def _object(
    frame: PlanFrame, tags: Sequence[tuple[Tag, Pt]], typeface: Typeface
) -> Iterator[Group]:
    """Walls and all lines that are snapped, broken about ids."""
    boxes = [tag_box(tag, center, typeface) for tag, center in tags]
    yield from wall_groups(frame)
    yield from column_groups(frame)
    yield from _inner_faces(frame)
    for kind, pen in ((MarkKind.FACE, style.OBJECT), (MarkKind.CENTER, style.CENTER)):
        for run in RunName:
            for line in snap_lines(frame, run, kind):
                parts = line.parts
                for box in boxes:
                    parts = outside_box(parts, box)
                yield _line(line, kind, tuple(Polyline(part, pen) for part in parts))


def _inner_faces(frame: PlanFrame) -> Iterator[Group]:
    """Faces of what stands at inner and angled walls, which no mark of a run tells."""
    room = frame.layout.outlined
    marked = {mark.of for marks in frame.layout.marks for mark in marks.marks}
    for wall in room.walls if room else ():
        if wall.beam and wall.beam not in marked and wall.face_start and wall.face_end:
            ends = (wall.face_start, wall.face_end)
            line = tuple(frame.point(Point(spot.x, spot.y)) for spot in ends)
            yield Group("inner-face", (Polyline(line, style.OBJECT),), data={"of": wall.beam})


def _line(line: SnapLine, kind: MarkKind, drawn: tuple[Polyline, ...]) -> Group:
    start, end = line.marks
    data = {
        "of": line.of,
        "on": line.run.value,
        "kind": kind.value,
        "side": line.side,
        "start-mm": decimal_mm(start.exact.value),
        "end-mm": decimal_mm(end.exact.value),
    }
    return Group("snap-line", drawn, data=data)
