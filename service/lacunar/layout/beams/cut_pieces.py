"""The boards that beams are cut from: how long each is, how it ends, and where it goes."""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass, replace
from functools import partial
from typing import Literal

from lacunar.layout.beams.board_ends import AT_FACE, EndRules, levels, size_of
from lacunar.layout.beams.lines import Line, Stretch
from lacunar.layout.beams.splices import Reach, at_joints, with_scarfs
from lacunar.layout.crossing_records import (
    BoardCut,
    BoardEnd,
    BoardPart,
    CutPiece,
    EndsAt,
    PiecePlace,
)
from lacunar.layout.fault_gathering import refuse
from lacunar.measure.figure import LengthFigure, Rule
from lacunar.measure.length import ZERO, Length
from lacunar.model.ceiling import StockRules
from lacunar.model.faults import Fault
from lacunar.model.look import Splices
from lacunar.model.room import RunName
from lacunar.model.stock_length import longest_of

LONG_POINTS = Rule(
    "length of a board: the clear length and what it reaches past the faces, at its long points",
    "clear + past_start + past_end",
)
SHORT_POINTS = Rule(
    "length of a board: the clear length and what it reaches past the faces, at its short points",
    "clear + past_start + past_end",
)
SPLICED = Rule("length of a board between the joints that part it", "end - start")
SPLICED_SHORT = Rule(
    "length of a parted board at its short points: each scarf or miter takes off its slant",
    "long_length - off_start - off_end",
)

Side = Literal["near", "far"]
SIDES: tuple[Side, ...] = ("near", "far")


@dataclass(frozen=True, slots=True)
class _Board:
    """One board in its place, whole or as one part of a longer one."""

    line: Line
    part: BoardPart
    side: Side | None
    reach: Reach
    length: LengthFigure
    short_length: LengthFigure
    ends: tuple[BoardEnd, BoardEnd]

    @property
    def key(self) -> tuple[object, ...]:
        """Equal for boards that are the same on the bench."""
        cuts = [(end.cut, end.angle, end.notch_along, end.notch_up) for end in self.ends]
        sizes = self.length.value, self.short_length.value
        return self.part, self.line.profile.id, sizes, *cuts

    @property
    def place(self) -> PiecePlace:
        """Where it goes."""
        return PiecePlace(self.line.id, self.side, self.reach.start, self.reach.end)


def cut_pieces(rules: EndRules, stock: StockRules) -> tuple[CutPiece, ...]:
    """Turn beams into the boards they are cut from, alike ones together.

    Formula: clear length + what the board reaches past the faces at both ends. A board longer than
    its stock is parted: a side behind the middle of a beam that ends at it, a bottom or a flat
    beam's board at the face line of one; where that does not
    reach, with scarfs if these are allowed.

    Raises SpecRefused where a board is longer than its stock and cannot be parted out of sight.
    """
    alike: dict[tuple[object, ...], list[_Board]] = {}
    faults: dict[tuple[str, str], Fault] = {}
    for name in RunName:
        for line in rules.meeting.rows[name].lines:
            for board in _whole(rules, line):
                parts = _parted(rules, board, stock)
                if parts is None:
                    faults.setdefault((line.profile.id, board.part), _fault(board, stock))
                for part in parts or ():
                    alike.setdefault(part.key, []).append(part)
    refuse(list(faults.values()))
    return tuple(_piece(group) for group in alike.values())


def _piece(group: Sequence[_Board]) -> CutPiece:
    board = group[0]
    return CutPiece(
        part=board.part,
        profile=board.line.profile.id,
        quantity=len(group),
        length=board.length,
        short_length=board.short_length,
        start=board.ends[0],
        end=board.ends[1],
        places=tuple(each.place for each in group),
    )


def _whole(rules: EndRules, line: Line) -> Iterator[_Board]:
    """The boards of a line before any is parted for want of length."""
    for level in levels(line.profile):
        cuts = partial(rules.cuts, line, level.part)
        for stretch in rules.meeting.stretches(line, cuts):
            if level.part != "side":
                yield _board(rules, line, level.part, stretch)
                continue
            sides: tuple[Side, ...] = SIDES
            if line.wall:
                # The one side of a wall beam is the one away from its wall.
                sides = ("far",) if line.wall == "start" else ("near",)
            yield from (_board(rules, line, level.part, stretch, side) for side in sides)


def _board(
    rules: EndRules,
    line: Line,
    part: BoardPart,
    stretch: Stretch,
    side: Side | None = None,
) -> _Board:
    start, end = (rules.end(line, part, stop, side) for stop in (stretch.start, stretch.end))
    piece = stretch.beside(side)
    clear = piece.length.value
    long, short = (
        (rule.approximates if piece.length.approximate else rule.gives)(
            clear + first + last, clear=clear, past_start=first, past_end=last
        )
        for rule, first, last in (
            (LONG_POINTS, start.past.value, end.past.value),
            (SHORT_POINTS, start.past_short.value, end.past_short.value),
        )
    )
    reach = Reach(piece.start.value - start.past.value, piece.end.value + end.past.value)
    return _Board(line, part, side, reach, long, short, (start, end))


def _parted(rules: EndRules, board: _Board, stock: StockRules) -> tuple[_Board, ...] | None:
    """A board in parts no longer than its stock; itself where it is not."""
    longest = _longest(board, stock)[1]
    if board.reach.length <= longest:
        return (board,)
    parts = at_joints(board.reach, list(_joints(rules, board)), longest)
    if parts is not None or rules.look.splices is Splices.AT_CROSSINGS:
        return None if parts is None else _in_parts(board, parts, BoardCut.SQUARE)
    # A scarf at 45 degrees through the thickness laps by the thickness.
    parts = with_scarfs(board.reach, size_of(board.line, board.part)[0], longest)
    return None if parts is None else _in_parts(board, parts, BoardCut.SCARFED)


def _longest(board: _Board, stock: StockRules) -> tuple[str, Length]:
    made_of = next(part.stock for part in board.line.profile.parts if part.name == board.part)
    return longest_of(None if made_of is None else made_of.kind, stock)


def _joints(rules: EndRules, board: _Board) -> Iterator[Length]:
    """Where a joint is not seen: behind the beams that end at a board, or in line with a face."""
    line = board.line
    met = {each.id: each for row in rules.meeting.rows_across(line) for each in row.lines}
    for crossing in met.values():
        if crossing.wall or not rules.meeting.stops(line, crossing):
            continue
        if board.part != "side":
            yield from (crossing.near.value, crossing.far.value)
        elif crossing.center is not None:
            yield crossing.center.value


def _in_parts(board: _Board, parts: Sequence[Reach], cut: BoardCut) -> tuple[_Board, ...]:
    """A board as several: the outer ends stay its own."""
    zero = AT_FACE.gives(ZERO)
    joint = BoardEnd(cut, EndsAt.SPLICE, zero, zero)
    last = len(parts) - 1
    return tuple(
        _part(
            board,
            reach,
            (board.ends[0] if number == 0 else joint, board.ends[1] if number == last else joint),
        )
        for number, reach in enumerate(parts)
    )


def _part(board: _Board, reach: Reach, ends: tuple[BoardEnd, BoardEnd]) -> _Board:
    long = SPLICED.gives(reach.length, end=reach.end, start=reach.start)
    off = [_slant(board, end) for end in ends]
    short = SPLICED_SHORT.gives(
        reach.length - off[0] - off[1],
        long_length=reach.length,
        off_start=off[0],
        off_end=off[1],
    )
    return replace(board, reach=reach, length=long, short_length=short, ends=ends)


def _slant(board: _Board, end: BoardEnd) -> Length:
    if end.cut is BoardCut.SCARFED:
        return size_of(board.line, board.part)[0]
    return end.past.value - end.past_short.value


def _fault(board: _Board, stock: StockRules) -> Fault:
    field, longest = _longest(board, stock)
    what = board.part.replace("_", " ")
    return Fault(
        code="board_longer_than_stock",
        pointer=f"/stock/{field}",
        message=f"The {what} of {board.line.id} is longer than its stock, and there is no place to"
        " part it out of sight.",
        remedy='Give longer stock, or allow scarfs, with beams.look.splices "scarfed".',
        figures={"length": board.reach.length, field: longest, "beam": board.line.id},
    )
