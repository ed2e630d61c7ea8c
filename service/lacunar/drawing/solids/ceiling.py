"""A whole ceiling as bodies: beams to their drop, crown as slopes, far walls, columns.

Beams are as the layout divides them: each clear piece of each, between finished faces. Near walls
are left away, for the view looks in where they stand; of the others a strip is shown.
"""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from fractions import Fraction

from lacunar.drawing.elements import Pt
from lacunar.drawing.plan.cut_coffers import seen_rings
from lacunar.drawing.plan.faces import face_ends
from lacunar.drawing.plan.frame import PlanFrame
from lacunar.drawing.plan.rings import on_paper, rings_on_paper, set_in
from lacunar.drawing.plan.walls import walls_of
from lacunar.drawing.solids.layers import Layer, inset_at, layers
from lacunar.drawing.solids.space import Place, Solid, lone_face, prism
from lacunar.layout.followed_records import FollowedFace
from lacunar.layout.panel_stack import panel_stack
from lacunar.layout.records import Beam, BeamPiece, ElementKind, Layout, WallBeam
from lacunar.measure.length import ZERO
from lacunar.model.moulding import CrownMethod, FlatPlace
from lacunar.model.room import END_WALL, START_WALL, RunName

STRIP = 300.0
"""How much further down than the deepest beam walls are shown [mm]."""

Ring = tuple[tuple[float, float], ...]
Line = tuple[Pt, Pt]


@dataclass(frozen=True, slots=True)
class Detail:
    """What is small enough to be left out: steps in a beam below `least` [mm], and all crown."""

    least: float
    crown: bool


def ceiling_solids(layout: Layout, detail: Detail) -> tuple[Solid, ...]:
    """Turn a layout into bodies: those whose edges are to be told by a beam come first."""
    made = _Builder(layout, detail)
    return (
        *made.beams(),
        *made.wall_beams(),
        *made.columns(),
        *(made.crown() if detail.crown else ()),
        *made.walls(),
    )


def panels_at(layout: Layout) -> float:
    """The height of the panels' underside [mm]."""
    return -float(panel_stack(layout.ceiling.panel).thickness.millimeters)


def lowest_shown(layout: Layout) -> float:
    """How far down walls are shown: below the deepest beam [mm]."""
    drops = [-float(profile.drop.value.millimeters) for profile in layout.profiles]
    return min(drops, default=panels_at(layout)) - STRIP


class _Builder:
    """Places of a layout in millimeters of the room, and its heights."""

    def __init__(self, layout: Layout, detail: Detail) -> None:
        self._layout = layout
        self._frame = PlanFrame(layout, Fraction(1), Pt(0.0, 0.0))
        self.top, self.low = panels_at(layout), lowest_shown(layout)
        self._layers = {
            beam: layers(profile, self.top, detail.least)
            for beam, profile in layout.profile_of.items()
        }

    def beams(self) -> Iterator[Solid]:
        """Each piece of each beam, those that run through first."""
        for beam in sorted(self._layout.beams, key=lambda each: not each.through):
            for layer in self._layers[beam.id]:
                for ring in self._pieces(beam, layer):
                    yield prism((beam.id, "beam"), ring, layer.low, layer.high)

    def _pieces(self, beam: Beam, layer: Layer) -> Iterator[Ring]:
        followed = self._followed(beam.id)
        for near, far in followed:
            yield self._ring(
                self._in(near, beam.on, layer.inset), self._in(far, beam.on, -layer.inset)
            )
        for piece in () if followed else beam.pieces:
            lines = [
                self._frame.stretch(face, beam.on, self._longer(ends, beam, piece, layer))
                for face, ends in zip(
                    (beam.near, beam.far), face_ends(self._frame, beam, piece), strict=True
                )
            ]
            near, far = (
                self._in(line, beam.on, inset)
                for line, inset in zip(lines, (layer.inset, -layer.inset), strict=True)
            )
            yield self._ring(near, far)

    def _longer(
        self, ends: tuple[float, float], beam: Beam, piece: BeamPiece, layer: Layer
    ) -> tuple[float, float]:
        """The ends of a layer, on to what is set in, or back from what stands out, there."""
        start, end = ends
        for other in self._layout.beams:
            if other.on is beam.on:
                continue
            inset = inset_at(self._layers[other.id], layer)
            if other.far.at_start.value == piece.start.value:
                start -= inset
            if other.near.at_start.value == piece.end.value:
                end += inset
        return start, end

    def wall_beams(self) -> Iterator[Solid]:
        """What stands at the walls, soffits too."""
        room = self._layout.outlined
        for wall in room.walls if room else ():
            if wall.beam is not None and wall.face_start is not None and wall.face_end is not None:
                spots = (wall.start, wall.end, wall.face_end, wall.face_start)
                ring = tuple(
                    (float(spot.x.millimeters), float(spot.y.millimeters)) for spot in spots
                )
                low = min(layer.low for layer in self._layers[wall.beam])
                yield prism((wall.beam, "wall-beam"), ring, low, self.top)
        for beam in () if room else self._layout.wall_beams:
            for layer in self._layers[beam.id]:
                for ring in self._at_wall(beam, layer.inset):
                    yield prism((beam.id, "wall-beam"), ring, layer.low, layer.high)

    def _at_wall(self, beam: WallBeam, inset: float) -> Iterator[Ring]:
        """Its pieces; where two stand in a corner, those across the length run go on into it."""
        starts = beam.looks_as == START_WALL[beam.on]
        followed = self._followed(beam.id)
        pairs = [(far, near) if starts else (near, far) for near, far in followed]
        pairs = pairs or list(self._along_wall(beam))
        first, *others = self._layout.run(beam.on.other).elements
        last = others[-1] if others else first
        if pairs and beam.on is RunName.LENGTH:
            if first.kind is not ElementKind.COFFER:
                pairs[0] = self._on_to(START_WALL[RunName.WIDTH], pairs[0], 0)
            if last.kind is not ElementKind.COFFER:
                pairs[-1] = self._on_to(END_WALL[RunName.WIDTH], pairs[-1], 1)
        by = -inset if starts else inset
        for face, back in pairs:
            yield self._ring(self._in(face, beam.on, by), back)

    def _on_to(self, wall: str, pair: tuple[Line, Line], end: int) -> tuple[Line, Line]:
        """Both lines with one end moved on to where they meet a wall."""
        corners = tuple(self._frame.point(corner) for corner in self._frame.wall_ends(wall))
        one, other = (
            (at, line[1]) if end == 0 else (line[0], at)
            for line in pair
            for at in [_meeting(line, corners)]
        )
        return one, other

    def _along_wall(self, beam: WallBeam) -> Iterator[tuple[Line, Line]]:
        """The face of each piece, and its back: at the wall, or where a soffit before it ends."""
        frame = self._frame
        starts = beam.looks_as == START_WALL[beam.on]
        face, back = (beam.far, beam.near) if starts else (beam.near, beam.far)
        edge = ZERO if starts else frame.clear(beam.on)
        for piece in beam.pieces:
            ends = frame.piece_ends(beam.on, face, piece)
            behind = frame.stretch(back, beam.on, ends)
            if back.at_start.value == edge:
                places = (frame.face_at(beam.looks_as, beam.on, end) for end in ends)
                one, other = (
                    frame.along(beam.on, place, end)
                    for place, end in zip(places, ends, strict=True)
                )
                behind = one, other
            yield frame.stretch(face, beam.on, ends), behind

    def _followed(self, beam: str) -> tuple[tuple[Line, Line], ...]:
        """The faces of a beam's pieces in a grid along the walls; none in others."""
        followed = self._layout.followed
        return tuple(
            (self._face(piece.near), self._face(piece.far))
            for own in (followed.beams if followed else ())
            if own.id == beam
            for piece in own.pieces
        )

    def _face(self, face: FollowedFace) -> Line:
        return on_paper(self._frame, face.start), on_paper(self._frame, face.end)

    @staticmethod
    def _in(line: Line, on: RunName, by: float) -> Line:
        x, y = (by, 0.0) if on is RunName.LENGTH else (0.0, -by)
        return line[0].moved(x, y), line[1].moved(x, y)

    @staticmethod
    def _ring(near: Line, far: Line) -> Ring:
        return _in_room((near[0], near[1], far[1], far[0]))

    def columns(self) -> Iterator[Solid]:
        """Columns, cut off as far down as walls are."""
        room = self._layout.outlined
        for column in room.columns if room else ():
            ring = _in_room([on_paper(self._frame, corner) for corner in column.corners])
            yield prism((column.name, "column"), ring, self.low, self.top)

    def crown(self) -> Iterator[Solid]:
        """The slopes of the crown in every coffer, whole or cut."""
        layout, frame = self._layout, self._frame
        section = layout.mouldings.crown
        if section is None:
            return
        low = self.top - float(section.drop.value.millimeters)
        behind = self._behind_crown()
        out = behind + float(section.projection.value.millimeters)
        for coffer in layout.coffers:
            corners = tuple(frame.point(point) for point in coffer.corners)
            yield from _slopes(
                coffer.id, (set_in(corners, behind), low), (set_in(corners, out), self.top)
            )
        for cut in layout.outlined.partial_coffers if layout.outlined else ():
            rings = rings_on_paper(frame, cut)
            for ring, seen in zip(rings, seen_rings(frame, cut) or ((),) * len(rings), strict=True):
                if seen:
                    yield from _slopes(cut.id, (set_in(ring, behind), low), (seen, self.top))

    def _behind_crown(self) -> float:
        """How far from the sides the crown's lower edge stands: what is behind it, half its fit."""
        ceiling = self._layout.ceiling
        flats = sum(
            float(flat.thickness.millimeters)
            for flat in ceiling.flat_mouldings
            if flat.at is FlatPlace.CEILING
        )
        framed = ceiling.crown is not None and ceiling.crown.method is CrownMethod.BENCH_FRAME
        fit = float(ceiling.crown.fit_total.millimeters) / 2 if ceiling.crown and framed else 0.0
        return flats + fit

    def walls(self) -> Iterator[Solid]:
        """A strip of each wall, faced into the room, and the line it meets the panels in."""
        for wall in walls_of(self._frame):
            (x, y), (end_x, end_y) = _in_room((wall.end, wall.start))
            corners = (
                Place(x, y, self.low),
                Place(x, y, self.top),
                Place(end_x, end_y, self.top),
                Place(end_x, end_y, self.low),
            )
            yield Solid(wall.name, "wall", corners, ((0, 1, 2, 3),), ((1, 2),))


def _slopes(
    coffer: str, lower: tuple[Sequence[Pt], float], upper: tuple[Sequence[Pt], float]
) -> Iterator[Solid]:
    """A face from each edge of a ring up to the same edge of another, faced inward and down."""
    rings = [[Place(x, y, height) for x, y in _in_room(ring)] for ring, height in (lower, upper)]
    count = len(rings[0])
    for at in range(count):
        after = (at + 1) % count
        corners = (rings[0][at], rings[1][at], rings[1][after], rings[0][after])
        yield lone_face((coffer, "crown"), corners)


def _meeting(line: Line, other: Sequence[Pt]) -> Pt:
    """Where a line meets another, both gone on as far as need be."""
    (start, end), (low, high) = line, other
    way_x, way_y = end.x - start.x, end.y - start.y
    to_x, to_y = high.x - low.x, high.y - low.y
    share = ((low.x - start.x) * to_y - (low.y - start.y) * to_x) / (way_x * to_y - way_y * to_x)
    return start.moved(way_x * share, way_y * share)


def _in_room(points: Sequence[Pt]) -> Ring:
    """Places of a plan at full size, whose y goes down the sheet, as places of the room."""
    return tuple((point.x, -point.y) for point in points)
