"""Ids of walls and of what stands at them in a room with other than four walls.

Wherever there is room by the wall: outside the room first, where nothing of the ceiling is, else in
the coffers within.
"""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from itertools import pairwise
from math import dist, hypot, inf

from lacunar.drawing import style
from lacunar.drawing.annotation import Tag, TagsDoNotFit, dot
from lacunar.drawing.elements import Group, Polyline, Pt
from lacunar.drawing.plan.clear_places import Box, Occupied, lines_cross
from lacunar.drawing.plan.frame import PlanFrame
from lacunar.drawing.plan.walls import WallOnPaper, walls_of
from lacunar.drawing.typeface import Typeface
from lacunar.drawing.views.reflected_ceiling_plan.broken_lines import Line, tag_boxes
from lacunar.layout.outline_records import OutlineWall

NEAREST = 7.0
STEP = 1.5
OUT = tuple(NEAREST + STEP * number for number in range(16))
WITHIN = tuple(-NEAREST - STEP * number for number in range(24))
SHARES = tuple(sorted((number / 20 for number in range(1, 20)), key=lambda share: abs(share - 0.5)))
CLEAR = 0.7
SHORTEST = 1.2
"""A leader to a tag is at least so long [mm]."""


@dataclass(frozen=True, slots=True)
class _About:
    """The leaders and the outlines of tags that stand already."""

    leaders: list[Line]
    boxes: list[Box]


def inner_tags(
    frame: PlanFrame, tags: Sequence[Group], busy: Occupied, typeface: Typeface
) -> tuple[Group, ...]:
    """A tag for each wall and for each beam at one; nothing in a room with four walls.

    `tags` are those that stand already, whose leaders are not crossed, `busy` all that is drawn;
    what is placed is added to it. Errors: `TagsDoNotFit` where one finds no place at this scale.
    """
    placed: list[Group] = []
    about = _About(
        [line for tag in tags for line in _leaders(tag)],
        [box for tag in tags for box in tag_boxes(tag)],
    )
    walls = walls_of(frame)
    for side, wall in _longest(frame):
        others = [each for each in walls if each.name != wall.name]
        upright = abs(wall.outward.x) > abs(wall.outward.y)
        for tag, behind in _labels(frame, side, turned=upright):
            places = _places(tag, (wall, others), behind, typeface)
            group = next((each for each in places if _clear(each, about, busy)), None)
            if group is None:
                raise TagsDoNotFit(tag.text)
            busy.add((group,))
            about.leaders.extend(_leaders(group))
            about.boxes.extend(tag_boxes(group))
            placed.append(group)
    return tuple(placed)


def _longest(frame: PlanFrame) -> Iterator[tuple[OutlineWall, WallOnPaper]]:
    """Each wall by the longest of the sides that it has, the shortest walls first.

    These have the least room for their tags.
    """
    room = frame.layout.outlined
    found: dict[str, tuple[OutlineWall, WallOnPaper]] = {}
    for side, wall in zip(room.walls if room else (), walls_of(frame), strict=False):
        if side.wall not in found or wall.span > found[side.wall][1].span:
            found[side.wall] = side, wall
    yield from sorted(found.values(), key=lambda pair: pair[1].span)


def _labels(frame: PlanFrame, side: OutlineWall, *, turned: bool) -> Iterator[tuple[Tag, float]]:
    """The wall's own tag, and that of what stands there; each points so far into the room [mm]."""
    yield Tag("wall", side.wall, side.wall, round=True), 0.0
    if side.beam is not None:
        yield Tag("beam", side.beam, side.beam, turned=turned), _depth(frame, side) / 2
    for soffit in frame.layout.wall_beams:
        if soffit.wall == side.wall and soffit.id != side.beam:
            yield (
                Tag("beam", soffit.id, soffit.id, turned=turned),
                frame.on_paper(soffit.width.value) / 2,
            )


def _depth(frame: PlanFrame, side: OutlineWall) -> float:
    """How far what stands at a wall reaches into the room [mm of paper]."""
    room = frame.layout
    beam = next((each for each in room.wall_beams if each.id == side.beam), None)
    if beam is not None:
        return frame.on_paper(beam.width.value)
    angled = room.outlined.angled_beams if room.outlined else ()
    return next(frame.on_paper(each.width.value) for each in angled if each.id == side.beam)


def _places(
    tag: Tag, by: tuple[WallOnPaper, Sequence[WallOnPaper]], behind: float, typeface: Typeface
) -> Iterator[Group]:
    """A tag at every place it may stand at, the best first: by its wall, then further off it.

    `by` are its wall and all others: a wall's tag needs no leader where it stands nearest its own.
    """
    size, (wall, others) = tag.size(typeface), by
    for out in (*OUT, *WITHIN):
        for share in SHARES:
            at = wall.span * share
            center, target = wall.point(at, out), wall.point(at, -behind)
            nearest = min((_off(other, center) for other in others), default=inf)
            if tag.round and out == NEAREST < nearest:
                yield tag.drawn(center, typeface)
            elif not Box.about(target, 0, 0).within(Box.about(center, *size).grown(SHORTEST)):
                leader = _edge(tag, center, target, size), target
                yield tag.drawn(center, typeface, Polyline(leader, style.LEADER), dot(target))


def _off(wall: WallOnPaper, at: Pt) -> float:
    """How far a place lies from a wall's face [mm]."""
    x, y = wall.end.x - wall.start.x, wall.end.y - wall.start.y
    share = ((at.x - wall.start.x) * x + (at.y - wall.start.y) * y) / (x * x + y * y)
    share = max(0.0, min(1.0, share))
    return dist((at.x, at.y), (wall.start.x + x * share, wall.start.y + y * share))


def _clear(group: Group, about: _About, busy: Occupied) -> bool:
    """Whether a tag stands clear of everything, and its leader of words, tags and leaders."""
    (box,) = tag_boxes(group)
    if not busy.is_free(box.grown(CLEAR)) or any(box.is_passed_by(*each) for each in about.leaders):
        return False
    return not any(
        busy.crosses_text(line)
        or any(lines_cross(line, other) for other in about.leaders)
        or any(other.is_passed_by(*line) for other in about.boxes)
        for line in _leaders(group)
    )


def _leaders(group: Group) -> list[Line]:
    return [
        line
        for part in group.children
        if isinstance(part, Polyline) and part.pen == style.LEADER and not part.closed
        for line in pairwise(part.points)
    ]


def _edge(tag: Tag, center: Pt, target: Pt, size: tuple[float, float]) -> Pt:
    """Where the way from a tag's middle to its target leaves the tag's outline."""
    x, y = target.x - center.x, target.y - center.y
    if tag.round:
        share = min(size[0] / 2 / hypot(x, y), 1.0)
    else:
        ways = [half / abs(way) for half, way in ((size[0] / 2, x), (size[1] / 2, y)) if way]
        share = min([*ways, 1.0])
    return center.moved(x * share, y * share)
