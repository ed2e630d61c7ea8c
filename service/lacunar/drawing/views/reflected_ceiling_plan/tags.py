"""Ids outside the plan: walls and wall beams in a row by each wall, beams and members beyond it.

Wall tags stand in the middle of coffers, where no extension line passes; beam tags stand on their
center lines, below the plan for crosswise beams and right of it for lengthwise ones.
"""

from lacunar.drawing import style
from lacunar.drawing.annotation import TAG_HEIGHT, Tag, TagsDoNotFit, dot, fitted
from lacunar.drawing.elements import Face, Group, Polyline
from lacunar.drawing.typeface import Typeface
from lacunar.drawing.views.reflected_ceiling_plan.frame import PlanFrame
from lacunar.layout.records import Beam, ElementKind, Layout, WallBeam
from lacunar.model.room import END_WALL, START_WALL, RunName

WALL_ROW = 7.0
BEAM_ROW = 11.0
TAG_GAP = 1.4
CLEAR = 0.7
LONGEST_NAME = 26.0


def tags_reach(layout: Layout, run: RunName, typeface: Typeface) -> float:
    """How far tags of beams across `run` stand out from the wall's finish face [mm]."""
    reach = BEAM_ROW
    for beam in layout.beams:
        if beam.on is run:
            tags = [Tag("beam", beam.id, beam.id)]
            if beam.member:
                tags.append(_member_tag(beam, beam.member.name, typeface))
            reach = max(reach, BEAM_ROW + sum(_depth(tag, run, typeface) + TAG_GAP for tag in tags))
    return reach


def _member_tag(beam: Beam, name: str, typeface: Typeface) -> Tag:
    """A member's tag; a long name is cut short here and told whole at the member's section."""
    shown = fitted(name, LONGEST_NAME, style.TEXT, typeface, Face.SEMIBOLD)
    return Tag("member", name, shown, key=beam.id)


def _depth(tag: Tag, run: RunName, typeface: Typeface) -> float:
    """A tag's extent away from the plan [mm]."""
    width, height = tag.size(typeface)
    return height if run is RunName.LENGTH else width


def beam_tags(frame: PlanFrame, typeface: Typeface) -> tuple[Group, ...]:
    """A tag on each beam's center line, and beyond it one for the member the beam cases."""
    tags: list[Group] = []
    for run in RunName:
        taken = float("-inf")
        for beam in (b for b in frame.layout.beams if b.on is run):
            drawn, taken = _beam_tags(frame, beam, typeface, taken)
            tags.extend(drawn)
    return tuple(tags)


def _beam_tags(
    frame: PlanFrame, beam: Beam, typeface: Typeface, taken: float
) -> tuple[list[Group], float]:
    """One beam's tags outward along its center line, and how far along the run they reach."""
    run = beam.on
    outward = -1.0 if run is RunName.LENGTH else 1.0
    wall = 0.0 if run is RunName.LENGTH else frame.span(RunName.LENGTH)
    along = frame.on_paper(beam.center.at_start.value)
    tags = [Tag("beam", beam.id, beam.id)]
    if beam.member:
        tags.append(_member_tag(beam, beam.member.name, typeface))
    wide = max((t.size(typeface)[0 if run is RunName.LENGTH else 1]) for t in tags) / 2
    if along - wide < taken + CLEAR:
        raise TagsDoNotFit(beam.id)
    drawn = []
    reached, edge = 0.0, BEAM_ROW
    for tag in tags:
        depth = _depth(tag, run, typeface)
        ends = (reached, edge)
        line = tuple(frame.along(run, along, wall + outward * out) for out in ends)
        center = frame.along(run, along, wall + outward * (edge + depth / 2))
        drawn.append(tag.drawn(center, typeface, Polyline(line, style.LEADER)))
        reached = edge + depth
        edge = reached + TAG_GAP
    return drawn, along + wide


def wall_tags(frame: PlanFrame, typeface: Typeface) -> tuple[Group, ...]:
    """For each wall its own tag and those of what stands at it, each over a coffer."""
    tags: list[Group] = []
    for run in RunName:
        for wall in (START_WALL[run], END_WALL[run]):
            beams = [beam for beam in frame.layout.wall_beams if beam.wall == wall]
            tags.extend(_wall_row(frame, run, wall, beams, typeface))
    return tuple(tags)


def _wall_row(
    frame: PlanFrame, run: RunName, wall: str, beams: list[WallBeam], typeface: Typeface
) -> list[Group]:
    """The tags by one wall. The wall lies across `run`, so its tags are spread along the other."""
    turned = run is RunName.LENGTH
    labels = [
        Tag("wall", wall, wall, round=True),
        *(Tag("beam", b.id, b.id, turned=turned) for b in beams),
    ]
    places = _spread(frame, run.other, labels, typeface)
    start = wall == START_WALL[run]
    face = 0.0 if start else frame.span(run)
    out = face - WALL_ROW if start else face + WALL_ROW
    drawn = []
    for tag, place, beam in zip(labels, places, [None, *beams], strict=True):
        center = frame.along(run, out, place)
        if beam is None:
            drawn.append(tag.drawn(center, typeface))
            continue
        middle = (beam.near.at_start.value + beam.far.at_start.value) / 2
        target = frame.along(run, frame.on_paper(middle), place)
        edge = out + (TAG_HEIGHT / 2 if start else -TAG_HEIGHT / 2)
        leader = Polyline((frame.along(run, edge, place), target), style.LEADER)
        drawn.append(tag.drawn(center, typeface, leader, dot(target)))
    return drawn


def _spread(frame: PlanFrame, run: RunName, tags: list[Tag], typeface: Typeface) -> list[float]:
    """A place along `run` for each tag: one to a coffer, or side by side in the middle one."""
    coffers = [e for e in frame.layout.run(run).elements if e.kind is ElementKind.COFFER]
    spaces = [
        (frame.on_paper(c.near.at_start.value), frame.on_paper(c.far.at_start.value))
        for c in coffers
    ]
    middle = (len(spaces) - 1) // 2
    if len(spaces) >= middle + len(tags):
        chosen = spaces[middle : middle + len(tags)]
        groups = [([tag], space) for tag, space in zip(tags, chosen, strict=True)]
    else:
        groups = [(tags, spaces[middle])]
    places: list[float] = []
    for group, (near, far) in groups:
        sizes = [tag.long_side(typeface) for tag in group]
        needed = sum(sizes) + TAG_GAP * (len(sizes) - 1)
        if needed + 2 * CLEAR > far - near:
            raise TagsDoNotFit(group[0].text)
        at = (near + far - needed) / 2
        for size in sizes:
            places.append(at + size / 2)
            at += size + TAG_GAP
    return places
