"""The setting-out plan: what is snapped on the floor, and how far each line is from the datum.

Faces are solid, centers chain lines, from wall to wall; running dimensions stand on all four sides,
each at the end of the run where it is taped, so that no error adds up.
"""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from itertools import pairwise

from lacunar.drawing import style
from lacunar.drawing.annotation import Block, Tag
from lacunar.drawing.elements import Element, Group, Polyline, Pt
from lacunar.drawing.hatching import box_corners, outside_box
from lacunar.drawing.paper import Scale
from lacunar.drawing.plan.clear_places import Box, Occupied
from lacunar.drawing.plan.columns import column_groups
from lacunar.drawing.plan.control_line import control_line
from lacunar.drawing.plan.datum_mark import datum_mark
from lacunar.drawing.plan.frame import PlanFrame
from lacunar.drawing.plan.walls import wall_groups, walls_of
from lacunar.drawing.typeface import Typeface
from lacunar.drawing.views.setting_out.ordinates import (
    FiguresDoNotFit,
    Side,
    depth,
    drawn_side,
    side_of,
)
from lacunar.drawing.views.setting_out.snap_lines import ENDS, SnapLine, snap_lines
from lacunar.drawing.wording import SheetWording, decimal_mm
from lacunar.layout.records import ElementKind, Layout, MarkKind, Point
from lacunar.model.room import RunName

MARGIN = 1.0
OVER_CORNER = 9.0
"""How far figures may stand beyond the room's corners, clear of those of the next side [mm]."""
OFF_TAG = 0.8
WITHIN = (6.0, 7.5, 9.0, 11.0, 14.0, 18.0, 24.0)
SHARES = tuple(sorted((number / 24 for number in range(1, 24)), key=lambda share: abs(share - 0.5)))
"""Where a wall's name may stand: so far from its face [mm], at such a share of its length."""

__all__ = ["FiguresDoNotFit", "SettingOut", "setting_out", "setting_out_plan"]


@dataclass(frozen=True, slots=True)
class SettingOut:
    """A setting-out plan at a scale before it is drawn: its size [mm], frame and four sides."""

    scale: Scale
    width: float
    height: float
    frame: PlanFrame
    sides: tuple[Side, ...]


def setting_out(
    layout: Layout, scale: Scale, wording: SheetWording, typeface: Typeface
) -> SettingOut:
    """How large the plan is at a scale, found without drawing it."""
    bare = PlanFrame(layout, scale.ratio, Pt(0.0, 0.0))
    depths = {
        (run, end): depth(side_of(bare, run, end), wording, typeface) + MARGIN
        for run in RunName
        for end in ENDS
    }
    (left, right), (low, high) = (bare.reach(run) for run in RunName)
    before = max(depths[RunName.WIDTH, "start"], OVER_CORNER)
    after = max(depths[RunName.WIDTH, "end"], OVER_CORNER)
    above = max(depths[RunName.LENGTH, "end"], OVER_CORNER)
    below = max(depths[RunName.LENGTH, "start"], OVER_CORNER)
    frame = PlanFrame(layout, scale.ratio, Pt(before - left, above + high))
    sides = tuple(side_of(frame, run, end) for run in RunName for end in ENDS)
    return SettingOut(
        scale, before + right - left + after, above + high - low + below, frame, sides
    )


def setting_out_plan(
    plan: SettingOut, number: int, wording: SheetWording, typeface: Typeface
) -> Block:
    """The plan drawn, as view `number`. Errors: `FiguresDoNotFit` at this scale."""
    frame = plan.frame
    placed = tuple(_beam_tags(frame, typeface))
    about: tuple[Element, ...] = (
        Group("object", tuple(_object(frame, placed, typeface)), id=f"object-view-{number}"),
        *(tag.drawn(center, typeface) for tag, center in placed),
        *control_line(frame),
        *(drawn_side(frame, side, wording, _room(plan, side)) for side in plan.sides),
    )
    about = (*about, *_wall_tags(frame, about, typeface))
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


def _room(plan: SettingOut, side: Side) -> tuple[float, float]:
    """From where to where along its run a side's figures may stand on paper [mm]."""
    low, high = plan.frame.reach(side.run)
    origin = plan.frame.origin
    if side.run is RunName.LENGTH:
        return origin.x + low - OVER_CORNER, origin.x + high + OVER_CORNER
    return origin.y - high - OVER_CORNER, origin.y - low + OVER_CORNER


def _object(
    frame: PlanFrame, tags: Sequence[tuple[Tag, Pt]], typeface: Typeface
) -> Iterator[Group]:
    """Walls and all lines that are snapped, broken about ids."""
    boxes = [_box(tag, center, typeface) for tag, center in tags]
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


def _box(tag: Tag, center: Pt, typeface: Typeface) -> tuple[Pt, ...]:
    width, height = (size + 2 * OFF_TAG for size in tag.size(typeface))
    return box_corners(center.x - width / 2, center.y - height / 2, width, height)


def _beam_tags(frame: PlanFrame, typeface: Typeface) -> Iterator[tuple[Tag, Pt]]:
    """The id of each beam on its center, in the middle of a coffer it passes.

    Clear of columns and of other ids; the coffer nearest the beam's middle that is. An id without
    room is left out: the reflected ceiling plan has them all.
    """
    busy = Occupied(typeface, tuple(column_groups(frame)))
    crowded = _crowded(frame, typeface)
    for beam in frame.layout.beams:
        stretches = frame.stretches(beam)
        first, last = max(stretches, key=lambda ends: ends[1] - ends[0])
        middle = (first + last) / 2
        openings = [
            (frame.on_paper(each.near.at_start.value) + frame.on_paper(each.far.at_start.value)) / 2
            for each in frame.layout.run(beam.on.other).elements
            if each.kind is ElementKind.COFFER
        ]
        turned = crowded and beam.on is RunName.LENGTH
        tag = Tag("beam", beam.id, beam.id, turned=turned, bare=crowded)
        centers = [
            frame.line_at(beam.center, beam.on, across)
            for across in sorted(openings, key=lambda place: abs(place - middle))
            if first < across < last
        ]
        clear = (
            at for at in centers if busy.is_free(Box.about(at, *tag.size(typeface)).grown(OFF_TAG))
        )
        center = next(clear, None)
        if center is not None:
            busy.add((tag.drawn(center, typeface),))
            yield tag, center


def _crowded(frame: PlanFrame, typeface: Typeface) -> bool:
    """Whether ids of neighboring beams across the length run would meet side by side.

    Then they stand upright, and all ids have no outline.
    """
    beams = [beam for beam in frame.layout.beams if beam.on is RunName.LENGTH]
    places = sorted(frame.on_paper(beam.center.at_start.value) for beam in beams)
    widest = max((Tag("beam", b.id, b.id).size(typeface)[0] for b in beams), default=0.0)
    return any(other - one < widest + 2 * OFF_TAG for one, other in pairwise(places))


def _wall_tags(frame: PlanFrame, about: tuple[Element, ...], typeface: Typeface) -> Iterator[Group]:
    """The name of each wall inside the room, by the middle of the wall where there is room."""
    busy = Occupied(typeface, about)
    named: set[str] = set()
    for wall in sorted(walls_of(frame), key=lambda each: -each.span):
        if wall.name in named:
            continue
        tag = Tag("wall", wall.name, wall.name, round=True)
        width, height = tag.size(typeface)
        for within in WITHIN:
            centers = (wall.point(wall.span * share, -within) for share in SHARES)
            free = (at for at in centers if busy.is_free(Box.about(at, width + 1, height + 1)))
            center = next(free, None)
            if center is not None:
                drawn = tag.drawn(center, typeface)
                busy.add((drawn,))
                named.add(wall.name)
                yield drawn
                break
