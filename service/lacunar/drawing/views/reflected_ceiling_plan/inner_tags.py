"""Ids of walls beyond W1 to W4 and of what stands at them, wherever there is room by the wall.

Outside the room first, where nothing of the ceiling is, else in the coffers within.
"""

from collections.abc import Iterator, Sequence
from itertools import pairwise

from lacunar.drawing import style
from lacunar.drawing.annotation import Tag, TagsDoNotFit, dot
from lacunar.drawing.elements import Group, Polyline, Pt
from lacunar.drawing.typeface import Typeface
from lacunar.drawing.views.reflected_ceiling_plan.broken_lines import Line, tag_boxes
from lacunar.drawing.views.reflected_ceiling_plan.clear_places import Occupied
from lacunar.drawing.views.reflected_ceiling_plan.frame import PlanFrame
from lacunar.drawing.views.reflected_ceiling_plan.walls import WallOnPaper, walls_of
from lacunar.layout.outline_records import OutlineWall
from lacunar.model.room import WALLS

NEAREST = 7.0
STEP = 1.5
OUT = tuple(NEAREST + STEP * number for number in range(16))
WITHIN = tuple(-NEAREST - STEP * number for number in range(12))
SHARES = tuple(sorted((number / 20 for number in range(1, 20)), key=lambda share: abs(share - 0.5)))
CLEAR = 0.7


def inner_tags(
    frame: PlanFrame, tags: Sequence[Group], busy: Occupied, typeface: Typeface
) -> tuple[Group, ...]:
    """A tag for each wall beyond W1 to W4 and for each beam there. What is placed is added.

    `tags` are those that stand already, whose leaders are not crossed, `busy` all that is drawn.

    Errors: `TagsDoNotFit` where one finds no place at this scale.
    """
    room = frame.layout.outlined
    placed: list[Group] = []
    led = [line for tag in tags for line in _leaders(tag)]
    for side, wall in zip(room.walls if room else (), walls_of(frame), strict=False):
        if side.wall in WALLS:
            continue
        for tag, behind in _labels(frame, side):
            places = _places(tag, wall, behind, typeface)
            group = next((each for each in places if _clear(each, tag, led, busy, typeface)), None)
            if group is None:
                raise TagsDoNotFit(tag.text)
            busy.add((group,))
            led += _leaders(group)
            placed.append(group)
    return tuple(placed)


def _labels(frame: PlanFrame, side: OutlineWall) -> Iterator[tuple[Tag, float]]:
    """The wall's own tag, and that of what stands there; each points so far into the room [mm]."""
    yield Tag("wall", side.wall, side.wall, round=True), 0.0
    if side.beam is not None:
        yield Tag("beam", side.beam, side.beam), _depth(frame, side) / 2


def _depth(frame: PlanFrame, side: OutlineWall) -> float:
    """How far what stands at a wall reaches into the room [mm of paper]."""
    room = frame.layout
    beam = next((each for each in room.wall_beams if each.id == side.beam), None)
    if beam is not None:
        return frame.on_paper(beam.width.value)
    angled = room.outlined.angled_beams if room.outlined else ()
    return next(frame.on_paper(each.width.value) for each in angled if each.id == side.beam)


def _places(tag: Tag, wall: WallOnPaper, behind: float, typeface: Typeface) -> Iterator[Group]:
    """A tag at every place it may stand at, the best first: by its wall, then further off it."""
    size = tag.size(typeface)
    for out in (*OUT, *WITHIN):
        for share in SHARES:
            at = wall.span * share
            center, target = wall.point(at, out), wall.point(at, -behind)
            if tag.round and out == NEAREST:
                yield tag.drawn(center, typeface)
            else:
                leader = _edge(center, target, size), target
                yield tag.drawn(center, typeface, Polyline(leader, style.LEADER), dot(target))


def _clear(group: Group, tag: Tag, led: Sequence[Line], busy: Occupied, typeface: Typeface) -> bool:
    """Whether a tag stands clear of everything, and its leader of words and other leaders."""
    (box,) = tag_boxes(group)
    if not busy.is_free(box.grown(CLEAR)):
        return False
    return not any(
        busy.crosses_text(line) or any(_cross(line, other) for other in led)
        for line in _leaders(group)
    )


def _leaders(group: Group) -> list[Line]:
    return [
        line
        for part in group.children
        if isinstance(part, Polyline) and part.pen == style.LEADER and not part.closed
        for line in pairwise(part.points)
    ]


def _cross(one: Line, other: Line) -> bool:
    """Whether two lines pass through each other."""
    return _aside(one, other[0]) * _aside(one, other[1]) < 0 and (
        _aside(other, one[0]) * _aside(other, one[1]) < 0
    )


def _aside(line: Line, spot: Pt) -> float:
    start, end = line
    return (end.x - start.x) * (spot.y - start.y) - (end.y - start.y) * (spot.x - start.x)


def _edge(center: Pt, target: Pt, size: tuple[float, float]) -> Pt:
    """Where the way from a tag's middle to its target leaves the tag."""
    x, y = target.x - center.x, target.y - center.y
    ways = [half / abs(way) for half, way in ((size[0] / 2, x), (size[1] / 2, y)) if way]
    share = min([*ways, 1.0])
    return center.moved(x * share, y * share)
