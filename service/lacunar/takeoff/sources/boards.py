"""Boards that fill coffers as pieces: the first and the last ripped, all between them whole."""

from collections.abc import Iterator

from lacunar.layout.board_records import BoardField, BoardLayout
from lacunar.layout.opening_records import TaperedField
from lacunar.layout.panels.boards import OVERALL
from lacunar.layout.tapering import tapered_boards_of
from lacunar.measure.figure import LengthFigure, Rule
from lacunar.measure.length import Length
from lacunar.model.boards import BoardRun
from lacunar.takeoff.part_records import (
    SQUARE_END,
    EndCut,
    Face,
    PartEnd,
    PartKind,
    PartPlace,
    Pieces,
    Shape,
)
from lacunar.takeoff.sources.source import Source, lying

WIDER_END = Rule("width of a tapering board: its face at its wider end", "max(start, end)")
WIDER_END_WITH_TONGUE = Rule(
    "width of a tapering board: its face at its wider end, and the tongue, which is kept",
    "max(start, end) + tongue",
)

FIRST, WHOLE, LAST, ONLY = "First board", "Board", "Last board", "Only board"


def board_pieces(source: Source) -> Iterator[Pieces]:
    """Turn a layout's boards into pieces, as many as each field has courses.

    In a coffer that tapers, each course is a part by itself, as long as what it is cut from.
    """
    boards = source.layout.boards
    if boards is None:
        return
    tapered = {field.coffer: field for field in tapered_boards_of(source.layout)}
    for field in boards.fields:
        tapers = tapered.get(field.coffers[0])
        if tapers is not None:
            yield from _tapered(source, boards, tapers)
        else:
            yield from _field(source, boards, field)


def overall_width(source: Source) -> LengthFigure:
    """The width of a whole board with its tongue, also where no coffer is whole."""
    layout, boards = source.layout, source.layout.ceiling.panel.boards
    if layout.boards is not None:
        return layout.boards.overall_width
    if boards is None:
        raise ValueError("nothing is filled with boards")
    return OVERALL.gives(boards.cover + boards.tongue, cover=boards.cover, tongue=boards.tongue)


def _field(source: Source, boards: BoardLayout, field: BoardField) -> Iterator[Pieces]:
    courses = field.courses
    count = courses.courses.value
    if count == 1:
        named = [(ONLY, courses.first_rip, 1)]
    else:
        named = [(FIRST, courses.first_rip, 1), (LAST, courses.last_rip, 1)]
    if count > len(named):
        named.append((WHOLE, boards.overall_width, count - len(named)))
    for name, width, quantity in named:
        shape = board_shape(source, name, (field.length, width))
        yield lying(shape, *_places(source, boards, field, quantity))


def _places(
    source: Source, boards: BoardLayout, field: BoardField, quantity: int
) -> Iterator[PartPlace]:
    """Each coffer for itself; fields that run through lie over all of theirs."""
    if boards.run is BoardRun.THROUGH:
        yield source.place(*field.coffers, quantity=quantity * field.fields.value)
        return
    for coffer in field.coffers:
        yield source.place(coffer, quantity=quantity)


def board_shape(
    source: Source,
    name: str,
    size: tuple[LengthFigure, LengthFigure],
    ends: tuple[PartEnd, PartEnd] = (SQUARE_END, SQUARE_END),
) -> Shape:
    """A board by its length and width."""
    length, width = size
    panel = source.layout.ceiling.panel
    nominal = panel.boards.nominal if panel.boards else None
    return Shape(
        kind=PartKind.BOARD,
        name=name,
        material=source.boards(nominal, panel.thickness, overall_width(source).value),
        thickness=source.panel_thickness,
        width=width,
        length=length,
        short_length=length,
        left=ends[0],
        right=ends[1],
        face=Face.DOWN,
        tapered=ends != (SQUARE_END, SQUARE_END),
        length_allowance=source.take_off.length_allowance,
        width_allowance=source.take_off.width_allowance,
    )


def _tapered(source: Source, boards: BoardLayout, field: TaperedField) -> Iterator[Pieces]:
    ends = (
        PartEnd(EndCut.ANGLED, field.start_cut.value),
        PartEnd(EndCut.ANGLED, field.end_cut.value),
    )
    count = len(field.courses)
    for course in field.courses:
        name = _name(course.number, count)
        width = _width(field, name, boards)
        shape = board_shape(source, name, (course.cut_from, width), ends)
        yield lying(shape, source.place(field.coffer, at=str(course.number)))


def _name(number: int, count: int) -> str:
    if count == 1:
        return ONLY
    return {1: FIRST, count: LAST}.get(number, WHOLE)


def _width(field: TaperedField, name: str, boards: BoardLayout) -> LengthFigure:
    if name == WHOLE:
        return boards.overall_width
    rip = field.edges[1] if name == LAST else field.edges[0]
    start, end = rip.start.value, rip.end.value
    if name != FIRST:
        return WIDER_END.approximates(max(start, end), start=start, end=end)
    tongue: Length = boards.tongue
    return WIDER_END_WITH_TONGUE.approximates(
        max(start, end) + tongue, start=start, end=end, tongue=tongue
    )
