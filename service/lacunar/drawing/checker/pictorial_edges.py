"""The edges that lines of a picture may lie on: in plan, and at which heights [mm of the room]."""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from fractions import Fraction
from functools import cached_property
from math import dist

from lacunar.drawing.checker.facts import BeamFacts, LayoutFacts
from lacunar.drawing.checker.pictorial_facts import Line, PictorialFacts, Place

STRIP = 300.0
"""How much further down than the deepest beam walls are shown [mm of the room]."""

Corner = tuple[Fraction, Fraction]


@dataclass(frozen=True)
class EdgeBook:
    """The edges of everything in one layout, by kind and id."""

    facts: LayoutFacts
    known: PictorialFacts

    def heights(self, kind: str, of: str) -> tuple[float, ...]:
        """Where something has edges; below the ceiling is below zero."""
        known = self.known
        if kind in ("beam", "wall-beam"):
            profile = known.profiles.get(of)
            return (-known.panel, *(-level for level in profile.levels)) if profile else ()
        if kind == "crown":
            return -known.panel, -known.panel - known.crown_drop
        # Walls and columns are cut off where the picture ends, below all beams.
        return -known.panel, -known.deepest - STRIP

    def lines(self, kind: str, of: str, level: float) -> Sequence[Line]:
        """The lines in plan that edges of something may lie along, at a height."""
        if kind == "crown":
            return list(self._crown(of, level))
        if kind == "column":
            columns = self.facts.outline_facts.columns if self.facts.outline_facts else ()
            return [line for each in columns if each.name == of for line in _ring(each.corners)]
        if kind == "wall":
            return list(_ring(self.facts.outline))
        return self._of_beams.get(of, ())

    @cached_property
    def _of_beams(self) -> dict[str, tuple[Line, ...]]:
        """Of each beam its own faces and ends, and all that it can end at."""
        beams = (*self.facts.beams, *self.facts.wall_beams)
        faces = {beam.id: tuple(self._faces(beam)) for beam in beams}
        runs = {beam.id: beam.on for beam in beams}
        across = {
            run: [line for of, lines in faces.items() if runs[of] != run for line in lines]
            for run in ("length", "width")
        }
        built = tuple(self._built())
        found = {
            beam.id: (*faces[beam.id], *self._ends(beam), *across[beam.on], *built)
            for beam in beams
        }
        for beam in self.facts.angled_beams:
            found[beam.id] = built
        return found

    def _faces(self, beam: BeamFacts) -> Iterator[Line]:
        """Both faces of a beam, set in by each of its boards, and as they lie along walls."""
        yield from self.known.aslant.get(beam.id, ())
        other = "width" if beam.on == "length" else "length"
        reach = float(self.facts.spans[other].at_start)
        profile = self.known.profiles.get(beam.id)
        for inset in profile.insets if profile else ():
            for face, by in ((beam.near, inset), (beam.far, -inset)):
                start, end = float(face.at_start) + by, float(face.at_end) + by
                yield _across(beam, (start, 0.0), (end, reach))

    def _ends(self, beam: BeamFacts) -> Iterator[Line]:
        """The ends of a beam's pieces: square, or slanted as told where an angled wall stops it."""
        odd = self.facts.outline_facts
        near, far = float(beam.near.at_start), float(beam.far.at_start)
        for end in (end for stretch in beam.pieces for end in stretch):
            longer, by = odd.slants.get((beam.id, end), ("", 0)) if odd else ("", 0)
            past = float(end + by)
            at_near, at_far = (past if longer == side else float(end) for side in ("near", "far"))
            yield _across(beam, (near, at_near), (far, at_far))

    def _built(self) -> Iterator[Line]:
        """Walls, columns, and the faces and miters of what stands at walls of odd rooms."""
        yield from _ring(self.facts.outline)
        odd = self.facts.outline_facts
        for side in odd.sides if odd else ():
            if side.face is not None:
                face, wall = [_float(at) for at in side.face], [_float(at) for at in side.ends]
                yield from ((face[0], face[1]), *zip(face, wall, strict=True))
        for column in odd.columns if odd else ():
            yield from _ring(column.corners)

    def _crown(self, of: str, level: float) -> Iterator[Line]:
        """The edges of a coffer's ring set in by as much as crown stands out at a height."""
        facts, known = self.facts, self.known
        share = (level + known.panel + known.crown_drop) / known.crown_drop
        behind = float(facts.crown_reach) - known.crown_out
        inward = behind + known.crown_out * share
        rings: list[Sequence[Corner]] = [each.corners for each in facts.coffers if each.id == of]
        odd = facts.outline_facts
        rings += (
            [hole for each in odd.coffers if each.id == of for hole in each.holes] if odd else []
        )
        for ring in rings:
            for (ax, ay), (bx, by) in _ring(ring):
                long = dist((ax, ay), (bx, by))
                in_x, in_y = (ay - by) / long * inward, (bx - ax) / long * inward
                yield (ax + in_x, ay + in_y), (bx + in_x, by + in_y)


def _across(beam: BeamFacts, start: Place, end: Place) -> Line:
    """A line told along the run that a beam is measured on, and along the other."""
    return (start, end) if beam.on == "length" else (start[::-1], end[::-1])


def _float(corner: Corner) -> Place:
    return float(corner[0]), float(corner[1])


def _ring(corners: Sequence[Corner]) -> Iterator[Line]:
    spots = [_float(corner) for corner in corners]
    yield from zip(spots, (*spots[1:], spots[0]), strict=True)
