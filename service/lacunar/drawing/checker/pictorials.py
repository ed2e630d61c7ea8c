"""Points on pictures: every line lies on an edge of what is laid out, at that edge's height."""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from fractions import Fraction
from math import dist, hypot

from lacunar.drawing.checker.facts import BeamFacts, LayoutFacts
from lacunar.drawing.checker.pictorial_facts import Line, PictorialFacts, Place
from lacunar.drawing.checker.records import Finding, GroupRead
from lacunar.drawing.checker.shapes import Spot
from lacunar.drawing.checker.subject import Subject

OFF = 0.04
"""How far a line may lie off its edge on paper [mm]: coordinates are written to a thousandth."""
LEVEL = 0.01
"""Heights are written to a thousandth of a millimeter of the room."""

STRIP = 300.0
"""How much further down than the deepest beam walls are shown [mm of the room]."""

Corner = tuple[Fraction, Fraction]


@dataclass(frozen=True, slots=True)
class _Picture:
    """Where the datum stands, and how far a millimeter along each axis goes on paper."""

    datum: Spot
    length: Place
    width: Place
    height: Place

    def place(self, spot: Spot, level: float) -> Place:
        """Where in the room a spot of the picture lies, at a height."""
        right = spot.x - self.datum.x - self.height[0] * level
        down = spot.y - self.datum.y - self.height[1] * level
        (a, c), (b, d) = self.length, self.width
        whole = a * d - b * c
        return (right * d - b * down) / whole, (a * down - right * c) / whole

    @property
    def size(self) -> float:
        """The most that a millimeter of the room is on paper."""
        return max(hypot(*self.length), hypot(*self.width))


def edges_as_laid_out(subject: Subject) -> Iterator[Finding]:
    """Point 110: each line of the ceiling from below lies on an edge of what it says it is of.

    That is at a height where the beam, coffer, wall or column has edges, and along one of these.
    """
    sheet, known = subject.sheet, subject.facts.pictorial
    for view in sheet.of_kind("pictorial"):
        picture = _picture(subject, view)
        groups = list(sheet.of_kind("edges", view))
        if picture is None or known is None or not groups:
            yield sheet.finding(110, view.id, "has no axes, no datum or no lines to go by")
            continue
        for group in groups:
            message = _fault(subject, known, picture, group)
            if message:
                yield sheet.finding(110, group.id, f"{group.data.get('of')}: {message}")
        shown = {group.data.get("of") for group in groups}
        for beam in (*subject.facts.beams, *subject.facts.wall_beams):
            if beam.id not in shown:
                yield sheet.finding(110, view.id, f"nothing of {beam.id} is to be seen")


def _picture(subject: Subject, view: GroupRead) -> _Picture | None:
    rings = [
        ring
        for group in subject.sheet.of_kind("datum", view)
        for ring in subject.sheet.rings_in(group)
    ]
    try:
        axes = [_pair(view.data[f"{name}-axis"]) for name in ("length", "width", "height")]
    except (KeyError, ValueError):
        return None
    return _Picture(rings[0].center, *axes) if len(rings) == 1 else None


def _pair(text: str) -> Place:
    right, down = (float(number) for number in text.split())
    return right, down


def _fault(subject: Subject, known: PictorialFacts, picture: _Picture, group: GroupRead) -> str:
    """What is wrong with a group of lines; empty where they lie as they should."""
    try:
        low, high = (float(group.data[name]) for name in ("low-mm", "high-mm"))
    except (KeyError, ValueError):
        return "does not say at which heights its lines are"
    of, kind = group.data.get("of", ""), group.data.get("kind", "")
    heights = _heights(known, kind, of)
    level = abs(high - low) <= LEVEL
    if not heights or not min(heights) - LEVEL <= low <= high <= max(heights) + LEVEL:
        return f"its lines are at {low} to {high} mm, beyond where that is"
    if level and min(abs(low - each) for each in heights) > LEVEL:
        return f"its lines are at {low} mm, where that has no edge"
    for path in subject.sheet.paths_in(group):
        ends = list(zip((path.spots[0], path.spots[-1]), (low, high), strict=True))
        places = [picture.place(spot, z) for spot, z in ends]
        if level:
            own = [_lines(subject.facts, known, (kind, of), low)]
            together = [places]
        else:
            own = [_lines(subject.facts, known, (kind, of), z) for z in (low, high)]
            together = [[place] for place in places]
        if not all(
            _along_one(lines, group_of, picture)
            for lines, group_of in zip(own, together, strict=True)
        ):
            return f"a line at {low} to {high} mm lies on none of its edges"
    return ""


def _along_one(lines: Sequence[Line], places: Sequence[Place], picture: _Picture) -> bool:
    """Whether all places lie on one of the lines, as far as can be seen on paper."""
    return any(all(_off(line, at) * picture.size <= OFF for at in places) for line in lines)


def _heights(known: PictorialFacts, kind: str, of: str) -> tuple[float, ...]:
    """Where something has edges, below the ceiling as below zero."""
    if kind in ("beam", "wall-beam"):
        profile = known.profiles.get(of)
        return (-known.panel, *(-level for level in profile.levels)) if profile else ()
    if kind == "crown":
        return -known.panel, -known.panel - known.crown_drop
    # Walls and columns are cut off where the picture ends, below all beams.
    return -known.panel, -known.deepest - STRIP


def _lines(
    facts: LayoutFacts, known: PictorialFacts, named: tuple[str, str], level: float
) -> list[Line]:
    """The lines in plan that edges of something may lie along, at a height."""
    kind, of = named
    if kind == "crown":
        return list(_crown_lines(facts, known, of, level))
    if kind == "column":
        columns = facts.outline_facts.columns if facts.outline_facts else ()
        return [line for each in columns if each.name == of for line in _ring(each.corners)]
    walls = list(_ring(facts.outline))
    if kind == "wall":
        return walls
    return [*walls, *_beam_lines(facts, known, of)]


def _beam_lines(facts: LayoutFacts, known: PictorialFacts, of: str) -> Iterator[Line]:
    """The faces of a beam and of all that it can end at."""
    yield from known.aslant.get(of, ())
    for other in (*facts.beams, *facts.wall_beams):
        profile = known.profiles.get(other.id)
        for inset in profile.insets if profile else ():
            yield from _faces(facts, other, inset)
        if other.id == of:
            yield from _ends(facts, other)
    odd = facts.outline_facts
    for side in odd.sides if odd else ():
        if side.face is not None:
            face, wall = [_float(at) for at in side.face], [_float(at) for at in side.ends]
            yield from ((face[0], face[1]), *zip(face, wall, strict=True))
    for column in odd.columns if odd else ():
        yield from _ring(column.corners)


def _ends(facts: LayoutFacts, beam: BeamFacts) -> Iterator[Line]:
    """The ends of a beam's pieces: square, or slanted as told where an angled wall stops it."""
    odd = facts.outline_facts
    near, far = float(beam.near.at_start), float(beam.far.at_start)
    for stretch in beam.pieces:
        for end in stretch:
            longer, by = odd.slants.get((beam.id, end), ("", 0)) if odd else ("", 0)
            past = float(end + by)
            at_near, at_far = (past if longer == side else float(end) for side in ("near", "far"))
            yield _across(beam, (near, at_near), (far, at_far))


def _faces(facts: LayoutFacts, beam: BeamFacts, inset: float) -> Iterator[Line]:
    """Both faces of a beam, set in, from one end of the other run to the other."""
    reach = float(facts.spans["width" if beam.on == "length" else "length"].at_start)
    for face, by in ((beam.near, inset), (beam.far, -inset)):
        yield _across(beam, (float(face.at_start) + by, 0.0), (float(face.at_end) + by, reach))


def _across(beam: BeamFacts, start: Place, end: Place) -> Line:
    """A line told along the run that a beam is measured on, and along the other."""
    return (start, end) if beam.on == "length" else (start[::-1], end[::-1])


def _float(corner: Corner) -> Place:
    return float(corner[0]), float(corner[1])


def _crown_lines(
    facts: LayoutFacts, known: PictorialFacts, of: str, level: float
) -> Iterator[Line]:
    """The edges of a coffer's ring set in by as much as crown stands out at a height."""
    share = (level + known.panel + known.crown_drop) / known.crown_drop
    behind = float(facts.crown_reach) - known.crown_out
    inward = behind + known.crown_out * share
    rings: list[Sequence[Corner]] = [each.corners for each in facts.coffers if each.id == of]
    odd = facts.outline_facts
    rings += [hole for each in odd.coffers if each.id == of for hole in each.holes] if odd else []
    for ring in rings:
        for (ax, ay), (bx, by) in _ring(ring):
            long = dist((ax, ay), (bx, by))
            in_x, in_y = (ay - by) / long * inward, (bx - ax) / long * inward
            yield (ax + in_x, ay + in_y), (bx + in_x, by + in_y)


def _ring(corners: Sequence[Corner]) -> Iterator[Line]:
    spots = [_float(corner) for corner in corners]
    yield from zip(spots, (*spots[1:], spots[0]), strict=True)


def _off(line: Line, at: Place) -> float:
    """How far a place lies off a line that goes on at both ends [mm]."""
    (ax, ay), (bx, by) = line
    long = dist((ax, ay), (bx, by))
    return (
        abs((bx - ax) * (at[1] - ay) - (by - ay) * (at[0] - ax)) / long
        if long
        else dist(at, line[0])
    )
