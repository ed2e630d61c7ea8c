"""How the boards of one beam end where another beam stops or meets it.

Boards meet where they are at one height. So each board is known by the stretch of heights it takes
up below the ceiling, and by where its edge lies off the beam's finished face.
"""

from collections.abc import Iterator
from dataclasses import dataclass
from typing import Literal

from lacunar.layout.beams.angled_ends import at_angled_corner, at_slant
from lacunar.layout.beams.lines import Line, Meeting, RowLimit, Stop
from lacunar.layout.crossing_records import BoardCut, BoardEnd, BoardPart, EndsAt
from lacunar.layout.records import BeamProfile
from lacunar.measure.angle import angle_of_legs
from lacunar.measure.figure import LengthFigure, Rule
from lacunar.measure.length import ZERO, Length
from lacunar.model.beams import BottomJoint
from lacunar.model.look import JointLook, Look, SideLook

AT_FACE = Rule("a board that ends at the face", "0")
TO_EDGE = Rule("a board that ends at another's edge, off the face", "-edge")
TO_WALL = Rule("a board that runs on to the wall behind the other beam", "other_width")
BEHIND_END = Rule("a side that runs on behind the end of the other", "other_side")
SIDE_POINT = Rule("a side mitred in a corner: its back is longer by the other's", "other_side")
TO_MIDDLE = Rule("a bottom that runs to a point in the middle of the crossing", "other_width / 2")
AROUND = Rule(
    "a board that runs round a corner that juts in: to the other's edge past the wall's corner",
    "other_width + edge",
)
BEHIND = Rule("a board that ends behind the other, at a corner that juts in", "reach - taken")
CORNER_POINT = Rule("a bottom mitred in a corner: past its inner edge", "inner + other_bottom")


@dataclass(frozen=True, slots=True)
class Level:
    """The heights a board takes up below the ceiling, and its edge off the finished face."""

    part: BoardPart
    top: Length
    bottom: Length
    edge: Length

    def meets(self, other: "Level") -> Length:
        """How much of their height two boards have in common [length]; zero or less for none."""
        return min(self.bottom, other.bottom) - max(self.top, other.top)


def levels(profile: BeamProfile) -> tuple[Level, ...]:
    """Turn a beam's profile into the levels of its boards, as far as they are seen or met.

    Formula: sides from the ceiling down to the drop, or to a bottom under them; a bottom between
    the sides up by its reveal, its edge a side's thickness behind the face; a bottom under them its
    overhang past the face, or its reveal short of it.
    """
    drop, parts = profile.drop.value, {part.name: part for part in profile.parts}
    if "bottom" not in parts:
        return ()
    thickness = parts["bottom"].thickness.value
    lowest = drop - thickness
    if "side" not in parts:
        return tuple(_flat_levels(profile, lowest))
    if profile.bottom_joint is BottomJoint.BETWEEN:
        lower = drop - profile.reveal
        side = parts["side"].thickness.value
        return (
            Level("side", ZERO, drop, ZERO),
            Level("bottom", lower - thickness, lower, -side),
        )
    if profile.bottom_joint is BottomJoint.UNDER:
        edge = profile.overhang - profile.reveal
        return Level("side", ZERO, lowest, ZERO), Level("bottom", lowest, drop, edge)
    return Level("side", ZERO, drop, ZERO), Level("bottom", lowest, drop, ZERO)


def _flat_levels(profile: BeamProfile, lowest: Length) -> Iterator[Level]:
    yield Level("bottom", lowest, profile.drop.value, -profile.reveal)
    if any(part.name == "upper_board" for part in profile.parts):
        yield Level("upper_board", ZERO, lowest, -profile.overhang)


def level_of(line: Line, part: BoardPart) -> Level:
    """The level of one board of a beam."""
    return next(level for level in levels(line.profile) if level.part == part)


def behind_face(line: Line, part: BoardPart) -> tuple[Length, Length]:
    """How far the two edges of a wall beam's board lie behind its face [length]."""
    edge = level_of(line, part).edge
    thickness, width = size_of(line, part)
    return -edge, -edge + (thickness if part == "side" else width)


def across(
    line: Line, part: BoardPart, side: Literal["near", "far"] | None
) -> tuple[Length, Length]:
    """Where the two edges of a board lie across its beam, from its near face [length]."""
    edge = level_of(line, part).edge
    if part != "side":
        return -edge, line.width + edge
    thickness = size_of(line, part)[0]
    return (ZERO, thickness) if side == "near" else (line.width - thickness, line.width)


def size_of(line: Line, part: BoardPart) -> tuple[Length, Length]:
    """Thickness and width of one board of a beam [length]."""
    board = next(each for each in line.profile.parts if each.name == part)
    return board.thickness.value, board.width.value


@dataclass(frozen=True, slots=True)
class EndRules:
    """Decides how boards end, by who runs through and by the look."""

    meeting: Meeting
    look: Look

    def cuts_sides(self, line: Line, crossing: Line) -> bool:
        """Whether a crossing cuts the sides of a line that it does not stop."""
        return self.look.sides is SideLook.PER_COFFER and self.meeting.level(crossing, line)

    def pointed(self, line: Line, crossing: Line) -> bool:
        """Whether the bottoms of two lines are all cut to points where they cross."""
        if self.look.bottoms is not JointLook.MITRED or line.wall or crossing.wall:
            return False
        return self.meeting.level(crossing, line) and _bottoms_meet(line, crossing)

    def cuts(self, line: Line, part: BoardPart, crossing: Line) -> bool:
        """Whether a crossing cuts a board of a line that it does not stop."""
        if part == "side":
            return self.cuts_sides(line, crossing)
        return part == "bottom" and self.pointed(line, crossing)

    def end(
        self,
        line: Line,
        part: BoardPart,
        stop: Stop,
        side: Literal["near", "far"] | None = None,
    ) -> BoardEnd:
        """How a board of a line ends at a stop; `side` where it is one of two."""
        other = stop.line
        if other is None:
            return self._at_limit(line, part, stop.limit, side)
        if part == "side":
            return self._side(line, other)
        return self._board(line, part, other)

    def _at_limit(
        self,
        line: Line,
        part: BoardPart,
        limit: RowLimit,
        side: Literal["near", "far"] | None,
    ) -> BoardEnd:
        if limit.kind == "outside":
            return self._outside(line, part, limit.round_it)
        if limit.corner is not None:
            return at_angled_corner(behind_face(line, part), limit.corner)
        if limit.slant is not None:
            return at_slant(across(line, part, side), line.width, limit.slant)
        return _square(EndsAt.WALL if limit.kind == "wall" else EndsAt.SOFFIT)

    def _outside(self, line: Line, part: BoardPart, other: Line | None) -> BoardEnd:
        """A board at a corner that juts into the room, measured from the corner of the walls."""
        if other is None:
            return _square(EndsAt.OPEN_CORNER)
        met = next((level for level in levels(other.profile) if level.part == part), None)
        boxes = self.meeting.level(other, line)
        if met is None or not boxes:
            past = AROUND.gives(other.width, other_width=other.width, edge=ZERO)
            whole = self.meeting.stops(line, other)
            return (
                BoardEnd(BoardCut.SQUARE, EndsAt.OPEN_CORNER, past, past)
                if whole
                else (_square(EndsAt.WALL_BEHIND))
            )
        reach = AROUND.gives(other.width + met.edge, other_width=other.width, edge=met.edge)
        thick, wide = size_of(other, part)
        taken = thick if part == "side" else wide
        short = BEHIND.gives(reach.value - taken, reach=reach.value, taken=taken)
        if self.look.corners is JointLook.MITRED:
            mine = size_of(line, part)
            angle = angle_of_legs(taken, mine[0] if part == "side" else mine[1])
            return BoardEnd(BoardCut.MITRED, EndsAt.BOARD_END, reach, short, angle)
        past = reach if self.meeting.stops(line, other) else short
        ends_at = EndsAt.BOARD_END if past is reach else EndsAt.BOARD_EDGE
        return BoardEnd(BoardCut.SQUARE, ends_at, past, past)

    def _side(self, line: Line, other: Line) -> BoardEnd:
        corner = bool(line.wall and other.wall) or self.cuts_sides(line, other)
        if corner and self.meeting.level(other, line):
            behind = size_of(other, "side")[0]
            if self.look.corners is JointLook.MITRED:
                angle = angle_of_legs(behind, size_of(line, "side")[0])
                point = SIDE_POINT.gives(behind, other_side=behind)
                return BoardEnd(BoardCut.MITRED, EndsAt.BOARD_END, point, _at_face(), angle)
            if self.meeting.stops(line, other):
                return self._runs_on(line, other, BEHIND_END.gives(behind, other_side=behind))
        if self.meeting.stops(line, other):
            return _to_wall(other)
        return _notched(line, other)

    def _runs_on(self, line: Line, other: Line, behind: LengthFigure) -> BoardEnd:
        """The longer side of a butted corner: on to the wall, or just behind the other's end."""
        if line.wall and other.wall and self.look.sides is SideLook.CONTINUOUS:
            return _to_wall(other)
        return BoardEnd(BoardCut.SQUARE, EndsAt.BOARD_END, behind, behind)

    def _board(self, line: Line, part: BoardPart, other: Line) -> BoardEnd:
        """A bottom, or a board of a flat beam."""
        if part == "bottom" and self.pointed(line, other):
            return _pointed(line, other)
        if line.wall and other.wall:
            mitred = self.look.corners is JointLook.MITRED and self.meeting.level(other, line)
            if part == "bottom" and mitred and _bottoms_meet(line, other):
                return _mitred(line, other)
            if self.meeting.stops(line, other):
                return _to_wall(other)
        return self._butted(line, part, other)

    def _butted(self, line: Line, part: BoardPart, other: Line) -> BoardEnd:
        """A board that ends at whatever of the other beam is first in its way."""
        mine = level_of(line, part)
        met = [level for level in levels(other.profile) if mine.meets(level) > ZERO]
        if self._passes_cut_sides(line, mine, other):
            met = [level for level in met if level.part != "side"]
        first = max(met, key=lambda level: level.edge, default=None)
        if first is None or not first.edge:
            ends_at = EndsAt.SIDE if first is None or first.part == "side" else EndsAt.BOARD_EDGE
            return _square(ends_at)
        past = _at_edge(first.edge)
        return BoardEnd(BoardCut.SQUARE, EndsAt.BOARD_EDGE, past, past)

    def _passes_cut_sides(self, line: Line, board: Level, other: Line) -> bool:
        """Whether a board passes between sides that are cut at a crossing.

        They go on behind the ends of the others, so that only what lies between those passes.
        """
        corner = line.wall and other.wall
        if corner or not self.cuts_sides(line, other):
            return False
        return board.edge <= -size_of(line, "side")[0]


def _bottoms_meet(line: Line, other: Line) -> bool:
    """Whether two bottoms lie at one height, face to face."""
    mine, its = level_of(line, "bottom"), level_of(other, "bottom")
    return (mine.top, mine.bottom) == (its.top, its.bottom)


def _at_face() -> LengthFigure:
    return AT_FACE.gives(ZERO)


def _at_edge(edge: Length) -> LengthFigure:
    return TO_EDGE.gives(-edge, edge=edge) if edge else _at_face()


def _square(ends_at: EndsAt) -> BoardEnd:
    return BoardEnd(BoardCut.SQUARE, ends_at, _at_face(), _at_face())


def _to_wall(other: Line) -> BoardEnd:
    past = TO_WALL.gives(other.width, other_width=other.width)
    return BoardEnd(BoardCut.SQUARE, EndsAt.WALL_BEHIND, past, past)


def _notched(line: Line, other: Line) -> BoardEnd:
    """A side that ends at another's face; its corner is taken out for a bottom that stands out."""
    mine = level_of(line, "side")
    for level in levels(other.profile):
        up = mine.meets(level)
        if level.edge > ZERO and up > ZERO:
            return BoardEnd(
                BoardCut.NOTCHED,
                EndsAt.SIDE,
                _at_face(),
                _at_face(),
                notch_along=level.edge,
                notch_up=up,
            )
    return _square(EndsAt.SIDE)


def _pointed(line: Line, other: Line) -> BoardEnd:
    """A bottom cut from both edges to the middle of the crossing."""
    angle = angle_of_legs(size_of(other, "bottom")[1], size_of(line, "bottom")[1])
    point = TO_MIDDLE.gives(other.width / 2, other_width=other.width)
    short = _at_edge(level_of(other, "bottom").edge)
    return BoardEnd(BoardCut.POINTED, EndsAt.BOARD_END, point, short, angle)


def _mitred(line: Line, other: Line) -> BoardEnd:
    """A bottom mitred in the corner of a room, longer at the wall than at its inner edge."""
    edge, across = level_of(other, "bottom").edge, size_of(other, "bottom")[1]
    angle = angle_of_legs(across, size_of(line, "bottom")[1])
    long = CORNER_POINT.gives(across - edge, inner=-edge, other_bottom=across)
    return BoardEnd(BoardCut.MITRED, EndsAt.BOARD_END, long, _at_edge(edge), angle)
