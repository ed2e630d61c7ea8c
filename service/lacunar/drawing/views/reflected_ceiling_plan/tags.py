"""Ids outside the plan: walls and wall beams in a row by each wall, beams and members beyond it.

Wall tags stand in the middle of coffers, where no extension line passes; beam tags stand on their
center lines, below the plan for crosswise beams and right of it for lengthwise ones. Tags lie along
their wall; where they would be too long there they stand out from it, and all beyond moves out.
"""

from dataclasses import replace
from itertools import pairwise

from lacunar.drawing import style
from lacunar.drawing.annotation import TAG_HEIGHT, Tag, TagsDoNotFit, dot, fitted
from lacunar.drawing.elements import Face, Group, Polyline, Pt
from lacunar.drawing.plan.frame import PlanFrame
from lacunar.drawing.typeface import Typeface
from lacunar.drawing.views.reflected_ceiling_plan.following import followed_centers
from lacunar.layout.records import Beam, ElementKind, WallBeam
from lacunar.layout.runs.wall_strips import run_of_wall
from lacunar.model.room import END_WALL, START_WALL, RunName

WALL_ROW = 7.0
BEAM_ROW = 11.0
TAG_GAP = 1.4
CLEAR = 0.7
LONGEST_NAME = 26.0
ROW_EDGE = WALL_ROW - TAG_HEIGHT / 2


def tags_reach(frame: PlanFrame, run: RunName, typeface: Typeface) -> float:
    """How far tags of beams across `run` stand out from the wall's finish face [mm]."""
    first = BEAM_ROW + row_deepened(frame, run.other, typeface)
    return max(
        (
            first + sum(_depth(tag, run, typeface) + TAG_GAP for tag in tags)
            for _, tags in _beams_with_tags(frame, run, typeface)
        ),
        default=first,
    )


def row_deepened(frame: PlanFrame, run: RunName, typeface: Typeface) -> float:
    """How much farther than usual tags of the walls across `run` reach out [mm].

    Nothing while they lie along their walls, and where they fit neither way.
    """
    walls = (START_WALL[run], END_WALL[run])
    if frame.layout.outlined is not None:
        return 0.0
    if all(_fit(frame, run, wall, typeface) for wall in walls):
        return 0.0
    standing = [tag for wall in walls for tag in _standing(frame, run, wall)]
    depths = [_depth(tag, run.other, typeface) for tag in standing if not tag.round]
    return max(depths, default=TAG_HEIGHT) - TAG_HEIGHT


def _member_tag(beam: Beam, name: str, typeface: Typeface) -> Tag:
    """A member's tag; a long name is cut short here and told whole at the member's section."""
    shown = fitted(name, LONGEST_NAME, style.TEXT, typeface, Face.SEMIBOLD)
    return Tag("member", name, shown, key=beam.id)


def _depth(tag: Tag, run: RunName, typeface: Typeface) -> float:
    """A tag's extent away from the plan [mm]."""
    width, height = tag.size(typeface)
    return height if run is RunName.LENGTH else width


def _beams_with_tags(
    frame: PlanFrame, run: RunName, typeface: Typeface
) -> list[tuple[Beam, list[Tag]]]:
    """The beams across a run, each with its tags from the plan outward.

    Tags are read from the bottom; those below the plan from the right where they would meet.
    """
    beams = [beam for beam in frame.layout.beams if beam.on is run]
    found = []
    for beam in beams:
        tags = [Tag("beam", beam.id, beam.id)]
        if beam.member:
            tags.append(_member_tag(beam, beam.member.name, typeface))
        found.append((beam, tags))
    if run is RunName.LENGTH and any(
        _too_near(frame, one, other, typeface) for one, other in pairwise(found)
    ):
        return [(beam, [replace(tag, turned=True) for tag in tags]) for beam, tags in found]
    return found


def _too_near(
    frame: PlanFrame, one: tuple[Beam, list[Tag]], other: tuple[Beam, list[Tag]], typeface: Typeface
) -> bool:
    """Whether the tags of two neighboring beams would meet."""
    apart = _center_of(frame, other[0]) - _center_of(frame, one[0])
    run = one[0].on
    return apart < _half(one[1], run, typeface) + _half(other[1], run, typeface) + CLEAR


def _center_of(frame: PlanFrame, beam: Beam) -> float:
    """Where a beam's center line is along its run at its tag's end [mm of paper]."""
    ends = followed_centers(frame, beam)
    if ends:
        # Crosswise beams have their tags where they start, lengthwise ones where they end.
        return (
            ends[0][0].x - frame.origin.x
            if beam.on is RunName.LENGTH
            else (frame.origin.y - ends[0][1].y)
        )
    return frame.on_paper(beam.center.at_start.value)


def _half(tags: list[Tag], run: RunName, typeface: Typeface) -> float:
    """Half of what a beam's tags take along the run [mm]."""
    return max(_depth(tag, run.other, typeface) for tag in tags) / 2


def beam_tags(frame: PlanFrame, typeface: Typeface) -> tuple[Group, ...]:
    """A tag on each beam's center line, and beyond it one for the member the beam cases."""
    tags: list[Group] = []
    for run in RunName:
        rows = _beams_with_tags(frame, run, typeface)
        for one, other in pairwise(rows):
            if _too_near(frame, one, other, typeface):
                raise TagsDoNotFit(other[0].id)
        first = BEAM_ROW + row_deepened(frame, run.other, typeface)
        for beam, of_beam in rows:
            tags.extend(_drawn_outward(frame, beam, of_beam, first, typeface))
    return tuple(tags)


def _drawn_outward(
    frame: PlanFrame, beam: Beam, tags: list[Tag], first: float, typeface: Typeface
) -> list[Group]:
    """One beam's tags outward along its center line, the nearest with its edge at `first` [mm]."""
    run = beam.on
    start = run is RunName.LENGTH
    outward = -1.0 if start else 1.0
    wall = frame.reach(run.other)[0 if start else 1]
    along = _center_of(frame, beam)
    stops = [end for stretch in frame.stretches(beam) for end in stretch]
    for one, other in followed_centers(frame, beam):
        x, y = frame.origin.x, frame.origin.y
        stops = [one.x - x, other.x - x] if run is RunName.WIDTH else [y - one.y, y - other.y]
    face = min(stops) if start else max(stops)
    drawn = []
    reached, edge = outward * (face - wall), first
    for tag in tags:
        depth = _depth(tag, run, typeface)
        ends = (reached, edge)
        line = tuple(frame.along(run, along, wall + outward * out) for out in ends)
        center = frame.along(run, along, wall + outward * (edge + depth / 2))
        drawn.append(tag.drawn(center, typeface, Polyline(line, style.LEADER)))
        reached = edge + depth
        edge = reached + TAG_GAP
    return drawn


def wall_tags(frame: PlanFrame, typeface: Typeface) -> tuple[Group, ...]:
    """For each wall its own tag and those of what stands at it, each over a coffer.

    In a room with other than four walls these are placed last, wherever there is room.
    """
    tags: list[Group] = []
    if frame.layout.outlined is not None:
        return ()
    for run in RunName:
        lie = row_deepened(frame, run, typeface) == 0
        for wall in (START_WALL[run], END_WALL[run]):
            of_wall = _lying(frame, run, wall) if lie else _standing(frame, run, wall)
            tags.extend(_wall_row(frame, run, wall, of_wall, typeface))
    return tuple(tags)


def _lying(frame: PlanFrame, run: RunName, wall: str) -> list[Tag]:
    """A wall's tag and those of the beams at it, along the wall. The wall lies across `run`."""
    turned = run is RunName.LENGTH
    beams = _at_wall(frame, wall)
    return [
        Tag("wall", wall, wall, round=True),
        *(Tag("beam", b.id, b.id, turned=turned) for b in beams),
    ]


def _standing(frame: PlanFrame, run: RunName, wall: str) -> list[Tag]:
    """The same tags standing out from the wall, where they take less of its length."""
    return [
        tag if tag.round else replace(tag, turned=not tag.turned)
        for tag in _lying(frame, run, wall)
    ]


def _at_wall(frame: PlanFrame, wall: str) -> list[WallBeam]:
    return [beam for beam in frame.layout.wall_beams if beam.wall == wall]


def _wall_row(
    frame: PlanFrame, run: RunName, wall: str, labels: list[Tag], typeface: Typeface
) -> list[Group]:
    """The tags by one wall, spread along the run it does not lie across."""
    places = _spread(frame, wall, labels, typeface)
    start = wall == START_WALL[run]
    face = frame.reach(run)[0 if start else 1]
    outward = -1.0 if start else 1.0
    drawn = [labels[0].drawn(frame.along(run, face + outward * WALL_ROW, places[0]), typeface)]
    for tag, place, beam in zip(labels[1:], places[1:], _at_wall(frame, wall), strict=True):
        out = ROW_EDGE + _depth(tag, run.other, typeface) / 2
        center = frame.along(run, face + outward * out, place)
        target = _middle_of(frame, run, beam, place)
        edge = frame.along(run, face + outward * ROW_EDGE, place)
        leader = Polyline((edge, target), style.LEADER)
        drawn.append(tag.drawn(center, typeface, leader, dot(target)))
    return drawn


def _middle_of(frame: PlanFrame, run: RunName, beam: WallBeam, place: float) -> Pt:
    """The middle between the faces of what stands at a wall, so far along that [mm of paper]."""
    if frame.layout.followed is None:
        middle = (beam.near.at_start.value + beam.far.at_start.value) / 2
        return frame.along(run, frame.on_paper(middle), place)
    near, far = (frame.line_at(face, run, place) for face in (beam.near, beam.far))
    return Pt((near.x + far.x) / 2, (near.y + far.y) / 2)


def _fit(frame: PlanFrame, run: RunName, wall: str, typeface: Typeface) -> bool:
    """Whether tags of a wall across `run`, lying along it, have room over coffers."""
    try:
        _spread(frame, wall, _lying(frame, run, wall), typeface)
    except TagsDoNotFit:
        return False
    return True


def _spaces(frame: PlanFrame, wall: str) -> list[tuple[float, float]]:
    """The coffers along a wall, as they lie there."""
    run, ends = run_of_wall(wall).other, wall in END_WALL.values()
    coffers = [e for e in frame.layout.run(run).elements if e.kind is ElementKind.COFFER]
    faces = (
        (c.near.at_end, c.far.at_end) if ends else (c.near.at_start, c.far.at_start)
        for c in coffers
    )
    return [(frame.on_paper(near.value), frame.on_paper(far.value)) for near, far in faces]


def _spread(frame: PlanFrame, wall: str, tags: list[Tag], typeface: Typeface) -> list[float]:
    """A place along a wall for each tag: one to a coffer, or side by side in the middle one."""
    run, spaces = run_of_wall(wall).other, _spaces(frame, wall)
    middle = (len(spaces) - 1) // 2
    if len(spaces) >= middle + len(tags):
        chosen = spaces[middle : middle + len(tags)]
        groups = [([tag], space) for tag, space in zip(tags, chosen, strict=True)]
    else:
        groups = [(tags, spaces[middle])]
    places: list[float] = []
    for group, (near, far) in groups:
        sizes = [_depth(tag, run.other, typeface) for tag in group]
        needed = sum(sizes) + TAG_GAP * (len(sizes) - 1)
        if needed + 2 * CLEAR > far - near:
            raise TagsDoNotFit(group[0].text)
        at = (near + far - needed) / 2
        for size in sizes:
            places.append(at + size / 2)
            at += size + TAG_GAP
    return places
