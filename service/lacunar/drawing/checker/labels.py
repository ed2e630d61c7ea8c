"""Points on names: every coffer, beam and wall bears its own, where a reader takes it for its."""

from collections.abc import Iterator
from fractions import Fraction
from math import dist

from lacunar.drawing.checker.facts import WALLS_OF_RUN, BeamFacts
from lacunar.drawing.checker.geometry import TOLERANCE
from lacunar.drawing.checker.naming import says
from lacunar.drawing.checker.plan_frame import PlanFrame, plan_frames, side_faces, wall_face
from lacunar.drawing.checker.records import Finding, GroupRead
from lacunar.drawing.checker.shapes import Box, Spot, extent, nearest
from lacunar.drawing.checker.subject import Subject

# Farther than any room is long [mm].
BEYOND = Fraction(10**6)


def coffers_labelled(subject: Subject) -> Iterator[Finding]:
    """Point 14: each coffer bears its id once, in its opening."""
    sheet = subject.sheet
    for frame in plan_frames(subject):
        for coffer in sheet.of_kind("coffer", frame.view):
            identity = coffer.data.get("id", "")
            openings = [path.around for path in sheet.own_paths(coffer) if path.closed]
            tags = [
                lettering
                for tag in sheet.of_kind("tag", coffer)
                for lettering in sheet.letterings_in(tag)
            ]
            if [tag.text for tag in tags] != [identity]:
                message = f"is labelled {[tag.text for tag in tags]}"
                yield sheet.finding(14, coffer.id, message)
            elif not (openings and openings[0].holds(tags[0].box)):
                yield sheet.finding(14, coffer.id, "is labelled outside its opening")


def parts_labelled(subject: Subject) -> Iterator[Finding]:
    """Point 15: each beam, member and wall bears its id, and the label points at what it names."""
    sheet, facts = subject.sheet, subject.facts
    for frame in plan_frames(subject):
        for beam in (*facts.beams, *facts.wall_beams):
            tag = _tag(subject, frame, "beam", beam.id)
            if tag is None:
                yield sheet.finding(15, f"beam-{beam.id}", "does not bear its id")
            elif not _points_at(subject, tag, _strip(subject, frame, beam)):
                message = f"the label {beam.id} does not lead to that beam"
                yield sheet.finding(15, tag.id, message)
        for member in facts.members:
            if _tag(subject, frame, "member", member.id) is None:
                yield sheet.finding(15, f"member-{member.id}", "does not bear its name")
        yield from _walls_labelled(subject, frame)


def _tag(subject: Subject, frame: PlanFrame, kind: str, of: str) -> GroupRead | None:
    """The label of something on a plan, if there is one and its text is the id."""
    sheet = subject.sheet
    for tag in sheet.of_kind("tag", frame.view):
        if (tag.data.get("kind"), tag.data.get("of")) == (kind, of):
            texts = [lettering.text for lettering in sheet.letterings_in(tag)]
            return tag if len(texts) == 1 and says(texts[0], of) else None
    return None


def _strip(subject: Subject, frame: PlanFrame, beam: BeamFacts) -> Box:
    """The stretch of paper between a beam's faces, from wall to wall and far beyond."""
    across = (-BEYOND, BEYOND)
    sides = [beam.near.at_start, beam.near.at_end, beam.far.at_start, beam.far.at_end]
    followed = subject.facts.followed
    if followed is not None and beam.id in followed.centers:
        # A beam aslant goes on past the edges that its faces are told at, to the walls.
        sides += [end[0 if beam.on == "length" else 1] for end in followed.centers[beam.id]]
    corners = [frame.on(beam.on, side, end) for side in sides for end in across]
    return extent(corners).grown(TOLERANCE)


def _points_at(subject: Subject, tag: GroupRead, strip: Box) -> bool:
    """Whether a leader of the tag ends on a stretch of paper."""
    return any(
        nearest(strip, spot) == 0
        for path in subject.sheet.paths_in(tag)
        if path.pen and path.pen.name == "leader"
        for spot in path.spots
    )


def _walls_labelled(subject: Subject, frame: PlanFrame) -> Iterator[Finding]:
    """Each wall's label stands nearest to that wall."""
    sheet = subject.sheet
    odd = subject.facts.outline_facts
    walls = [wall for run in WALLS_OF_RUN.values() for wall in run]
    if odd is not None:
        walls = list(dict.fromkeys(side.wall for side in odd.sides))
        yield from _leading_tags(subject, frame, walls)
        return
    faces = {wall: wall_face(sheet, frame.view, wall) for wall in walls}
    boxes = {wall: extent(face) for wall, face in faces.items() if face}
    for wall in walls:
        tag = _tag(subject, frame, "wall", wall)
        if tag is None:
            yield sheet.finding(15, f"wall-{wall}", "does not bear its id")
        elif _nearest_wall(boxes, sheet.letterings_in(tag)[0].box.middle) != wall:
            yield sheet.finding(15, f"wall-{wall}", "bears its id at another wall")


def _leading_tags(subject: Subject, frame: PlanFrame, walls: list[str]) -> Iterator[Finding]:
    """Each wall's label stands nearest to that wall, or leads to it."""
    sheet = subject.sheet
    faces = [(group.data.get("wall", ""), face) for group, face in side_faces(sheet, frame.view)]
    for wall in walls:
        tag = _tag(subject, frame, "wall", wall)
        if tag is None:
            yield sheet.finding(15, f"wall-{wall}", "does not bear its id")
            continue
        spots = [
            path.spots[-1]
            for path in sheet.paths_in(tag)
            if path.pen and path.pen.name == "leader" and path.spots
        ] or [sheet.letterings_in(tag)[0].box.middle]
        nearest_to = min(faces, key=lambda face: _off(face[1], spots[0]), default=("", ()))[0]
        if nearest_to != wall:
            yield sheet.finding(15, f"wall-{wall}", "bears its id at another wall")


def _off(line: tuple[Spot, ...], spot: Spot) -> float:
    """How far a place lies from a straight line."""
    (x1, y1), (x2, y2) = line[0], line[-1]
    long = (x2 - x1) ** 2 + (y2 - y1) ** 2
    share = max(0.0, min(1.0, ((spot.x - x1) * (x2 - x1) + (spot.y - y1) * (y2 - y1)) / long))
    return dist(spot, (x1 + (x2 - x1) * share, y1 + (y2 - y1) * share))


def _nearest_wall(boxes: dict[str, Box], spot: Spot) -> str:
    return min(boxes, key=lambda wall: nearest(boxes[wall], spot))
