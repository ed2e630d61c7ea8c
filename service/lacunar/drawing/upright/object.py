"""What an upright cut looks like: boards that are cut, what is beyond, ceiling, walls and floor."""

from collections.abc import Iterator, Sequence
from itertools import pairwise

from lacunar.drawing import style
from lacunar.drawing.elements import Element, Fill, Group, Polyline, Pt, Segments
from lacunar.drawing.hatching import box_corners, diagonal_lines, falling_lines
from lacunar.drawing.section.boards import backing_outline, board_outlines, rectangle_of
from lacunar.drawing.section.records import Outline
from lacunar.drawing.upright.cut import Behind, CutBeam, CutColumn, UprightCut
from lacunar.drawing.upright.paper import (
    BAND,
    CEILING_BAND,
    JOIST_BAND,
    UprightPaper,
    across,
)
from lacunar.drawing.upright.trim import cut_mouldings, section_of, seen_edges
from lacunar.drawing.wording import decimal_mm
from lacunar.layout.panel_stack import panel_stack
from lacunar.measure.length import ZERO, Length

THIN = 2.0
"""What is cut and thinner than this on paper [mm] is black, since its hatch could not be read."""
GRAIN_PITCH = 1.3
MEMBER_PITCH = 1.6
BAND_PITCH = 1.8
SEEN = 0.3
"""Edges in view nearer than this on paper [mm] are one line."""


class DrawnCut:
    """An upright cut at a scale, part by part, each a group that says what it is of."""

    def __init__(self, cut: UprightCut, paper: UprightPaper, number: int) -> None:
        self.cut = cut
        self.paper = paper
        self.number = number

    def object(self) -> Group:
        """All that is built and seen, in painting order."""
        children = (
            *self._beyond(),
            *self._panels(),
            *self._mouldings(),
            *(self._beam(beam) for beam in self.cut.beams),
            *(self._column(column) for column in self.cut.columns),
            self._ceiling(),
            *self._walls(),
            self._floor(),
        )
        return Group("object", children, id=f"object-view-{self.number}")

    @property
    def top(self) -> float:
        """How far above the finished ceiling the object is drawn [mm]."""
        return JOIST_BAND if self.cut.layout.backing.joists is not None else CEILING_BAND

    def reach(self) -> tuple[float, float]:
        """How far left and right of the view's ends the object is drawn [mm]."""
        left, right = (BAND if end.wall else 0.0 for end in self.cut.ends)
        return left, right

    def _spot(self, along: Length, down: Length) -> Pt:
        return self.paper.at(along, self.cut.height - down)

    def _id(self, kind: str, of: str) -> str:
        return f"view-{self.number}-{kind}-{of}"

    def _beam(self, beam: CutBeam) -> Group:
        """A beam or wall beam with its boards, and the member in it."""
        of, member = section_of(self.cut.layout, beam.profile), beam.member
        children: list[Element] = []
        backing = backing_outline(of)
        if backing is not None and member is None:
            corners = self._outline(beam, backing)
            cross = ((corners[0], corners[2]), (corners[1], corners[3]))
            children.append(Polyline(corners, style.OBJECT, closed=True))
            children.append(Segments(cross, style.HATCH))
        if beam.profile.kind == "soffit":
            width, drop = beam.profile.finished_width.value, beam.profile.drop.value
            block = self._outline(beam, rectangle_of(ZERO, ZERO, width, drop))
            children.append(Segments(falling_lines(block, MEMBER_PITCH), style.HATCH))
            children.append(Polyline(block, style.CUT, closed=True))
        for board in (each for found in board_outlines(of).values() for each in found):
            children.extend(cut_board(self._outline(beam, board)))
        children.extend(self._member(beam))
        data = {
            "id": beam.id,
            "profile": beam.profile.id,
            "near-mm": decimal_mm(beam.near),
            "far-mm": decimal_mm(beam.far),
            "left": beam.sides[0],
            **({"at-wall": beam.at_wall} if beam.at_wall else {}),
            "under-mm": decimal_mm(self.cut.height - beam.profile.drop.value),
            **({"member": member.name} if member is not None else {}),
        }
        kind = "cut-wall-beam" if beam.at_wall else "cut-beam"
        title = f"{beam.id}, cut"
        return Group(kind, tuple(children), id=self._id("cut", beam.id), title=title, data=data)

    def _outline(self, beam: CutBeam, outline: Outline) -> tuple[Pt, ...]:
        return tuple(self._spot(across(beam, x), down) for x, down in outline)

    def _member(self, beam: CutBeam) -> Iterator[Element]:
        """The structural member in its casing, what is on it already in hidden lines."""
        member = beam.member
        if member is None:
            return
        corners = (
            self._spot(member.near, ZERO),
            self._spot(member.far, ZERO),
            self._spot(member.far, member.drop),
            self._spot(member.near, member.drop),
        )
        yield Segments(diagonal_lines(corners, MEMBER_PITCH), style.HATCH)
        yield Polyline(corners, style.OBJECT, closed=True)
        if member.clad:
            low = member.drop + member.clad
            near, far = member.near - member.clad, member.far + member.clad
            spots = ((near, ZERO), (near, low), (far, low), (far, ZERO))
            yield Polyline(tuple(self._spot(*spot) for spot in spots), style.HIDDEN)

    def _column(self, column: CutColumn) -> Group:
        """A column from the floor to the ceiling, or to the beam that goes on about it."""
        within = [
            beam.profile.drop.value
            for beam in self.cut.beams
            if beam.near <= column.near and column.far <= beam.far
        ]
        top = max(within, default=ZERO)
        corners = (
            self._spot(column.near, top),
            self._spot(column.far, top),
            self.paper.at(column.far, ZERO),
            self.paper.at(column.near, ZERO),
        )
        hatch = Segments(falling_lines(corners, MEMBER_PITCH * 2), style.HATCH)
        data = {
            "id": column.name,
            "near-mm": decimal_mm(column.near),
            "far-mm": decimal_mm(column.far),
        }
        number = self.cut.columns.index(column) + 1
        outline = Polyline(corners, style.CUT, closed=True)
        return Group(
            "cut-column",
            (hatch, outline),
            id=self._id("column", str(number)),
            title=f"Column {column.name}, cut",
            data=data,
        )

    def _mouldings(self) -> Iterator[Group]:
        """Crown and flat mouldings where they are cut, at both ends of every space."""
        for number, bay in enumerate(self.cut.bays, start=1):
            children: list[Element] = []
            for moulding in cut_mouldings(self.cut, bay):
                children.extend(cut_board(tuple(self._spot(*spot) for spot in moulding.corners)))
            if children:
                yield Group("cut-mouldings", tuple(children), id=self._id("trim", str(number)))

    def _panels(self) -> Iterator[Group]:
        """The underside of the panel in each space, where there is one."""
        thick = panel_stack(self.cut.layout.ceiling.panel).thickness
        if not thick:
            return
        for number, bay in enumerate(self.cut.bays, start=1):
            line = Polyline((self._spot(bay.near, thick), self._spot(bay.far, thick)), style.CUT)
            data = {"under-mm": decimal_mm(self.cut.height - thick)}
            yield Group("cut-panel", (line,), id=self._id("panel", str(number)), data=data)

    def _beyond(self) -> Iterator[Group]:
        """The edges of what is beyond each space, and of what hangs lower than a beam before it."""
        for number, behind in enumerate(self.cut.behind, start=1):
            lines = [
                (self._spot(behind.near, down), self._spot(behind.far, down))
                for down in self._distinct(seen_edges(self.cut, behind))
            ]
            if number < len(self.cut.behind):
                lines.extend(self._under(behind, self.cut.behind[number]))
            if not lines:
                continue
            data = {"of": behind.id}
            if behind.profile is not None:
                data["profile"] = behind.profile.id
                data["under-mm"] = decimal_mm(self.cut.height - behind.profile.drop.value)
            drawn = tuple(Polyline(line, style.FINE) for line in lines[:-1])
            lowest = Polyline(lines[-1], style.OBJECT)
            identity = self._id("beyond", str(number))
            yield Group("beyond", (*drawn, lowest), id=identity, title=behind.id, data=data)

    def _distinct(self, edges: Sequence[Length]) -> Iterator[Length]:
        """Edges that are told apart on paper, from the top down; the lowest always."""
        for edge, lower in pairwise(edges):
            if self.paper.on_paper(lower - edge) > SEEN:
                yield edge
        yield from edges[-1:]

    def _under(self, one: Behind, other: Behind) -> Iterator[tuple[Pt, Pt]]:
        """The lower edge of what is beyond, seen below a beam that is cut before it."""
        if one.id != other.id or one.profile is None:
            return
        drop = one.profile.drop.value
        before = [
            beam.profile.drop.value
            for beam in self.cut.beams
            if one.far <= beam.near and beam.far <= other.near
        ]
        if before and drop > max(before):
            yield self._spot(one.far, drop), self._spot(other.near, drop)

    def _ceiling(self) -> Group:
        """The finished ceiling as it is, and what is known of what is above it."""
        start, end = (self._spot(each.at, ZERO) for each in self.cut.ends)
        line = Polyline((start, end), style.CUT)
        joists = tuple(self._joists()) or self._hatched(start, end)
        return Group("existing-ceiling", (*joists, line), id=self._id("ceiling", "existing"))

    def _hatched(self, start: Pt, end: Pt) -> tuple[Element, ...]:
        box = box_corners(start.x, start.y - CEILING_BAND, end.x - start.x, CEILING_BAND)
        return (Segments(diagonal_lines(box, BAND_PITCH), style.HATCH),)

    def _joists(self) -> Iterator[Element]:
        """Joists where they are cut, or the lower edge of one that lies along the plane.

        How tall they are is not known, so they are left open above.
        """
        lines, room = self.cut.layout.backing.joists, self.cut.layout.ceiling.room
        if lines is None or room.joists is None:
            return
        finish = room.joists.existing_finish
        start, end = (self._spot(each.at, -finish) for each in self.cut.ends)
        if finish:
            yield Polyline((start, end), style.OBJECT)
        if lines.on is not self.cut.run:
            return
        upper = start.y - JOIST_BAND + self.paper.on_paper(finish) + 0.4
        for joist in lines.joists:
            near, far = (
                self._along(joist.center.value + lines.width * half / 2) for half in (-1, 1)
            )
            if start.x < min(near, far) and max(near, far) < end.x:
                spots = (Pt(near, upper), Pt(near, start.y), Pt(far, start.y), Pt(far, upper))
                yield Polyline(spots, style.OBJECT)

    def _along(self, place: Length) -> float:
        """Where a place along the run lies across the sheet [mm]."""
        return self.paper.at(self.cut.along(place), ZERO).x

    def _walls(self) -> Iterator[Group]:
        """Walls where the plane ends at them; just a line where the view goes no further."""
        for number, end in enumerate(self.cut.ends):
            upper, lower = self._spot(end.at, ZERO), self.paper.at(end.at, ZERO)
            if not end.wall:
                edge = Polyline((upper, lower), style.OBJECT)
                yield Group("view-end", (edge,), id=self._id("end", str(number + 1)))
                continue
            top, high = upper.y - self.top, lower.y + BAND
            left = upper.x - BAND if number == 0 else upper.x
            hatch = diagonal_lines(box_corners(left, top, BAND, high - top), BAND_PITCH)
            face = Polyline((upper, lower), style.WALL)
            yield Group(
                "cut-wall",
                (Segments(hatch, style.HATCH), face),
                id=self._id("wall", end.wall),
                title=f"Wall {end.wall}, cut",
                data={"wall": end.wall, "at-mm": decimal_mm(end.at)},
            )

    def _floor(self) -> Group:
        """The finished floor."""
        start, end = (self.paper.at(each.at, ZERO) for each in self.cut.ends)
        box = box_corners(start.x, start.y, end.x - start.x, BAND)
        return Group(
            "floor-line",
            (
                Segments(diagonal_lines(box, BAND_PITCH), style.HATCH),
                Polyline((start, end), style.WALL),
            ),
            id=self._id("floor", "line"),
            title="Finished floor",
            data={
                "start-mm": decimal_mm(self.cut.ends[0].at),
                "end-mm": decimal_mm(self.cut.ends[1].at),
            },
        )


def cut_board(corners: tuple[Pt, ...]) -> Iterator[Element]:
    """A board or moulding that is cut: hatched with its grain, or black where it is thin."""
    xs, ys = [at.x for at in corners], [at.y for at in corners]
    if min(max(xs) - min(xs), max(ys) - min(ys)) < THIN:
        yield Polyline(corners, style.HATCH, closed=True, fill=Fill.BLACK)
        return
    lines = diagonal_lines(corners, GRAIN_PITCH)
    if lines:
        yield Segments(lines, style.HATCH)
    yield Polyline(corners, style.CUT, closed=True)
