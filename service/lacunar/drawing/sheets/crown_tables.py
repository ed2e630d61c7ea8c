"""Tables of crown and what goes with it: lengths of all pieces, and how a saw is set for them."""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass

from lacunar.drawing import style
from lacunar.drawing.annotation import GOING_ON, Block, fitted
from lacunar.drawing.elements import Face
from lacunar.drawing.sheets.word_tables import TableSpace, WordColumn, in_blocks
from lacunar.drawing.views.crown_frame.frames import CrownFrame
from lacunar.drawing.wording import SheetWording
from lacunar.layout.moulding_records import CofferTrim, SawSettings
from lacunar.layout.mouldings.pieces import CROWN
from lacunar.layout.opening_records import OutOfSquareCrown
from lacunar.layout.outline_records import NAILER, PartialCoffer
from lacunar.layout.records import Layout
from lacunar.layout.tapering import crown_out_of_square
from lacunar.measure.figure import LengthFigure
from lacunar.model.openings import OutOfSquare
from lacunar.model.room import RunName

MOST_ROWS = 600
"""How many lengths a table holds: more are in the cut list alone."""
SQUARE = "SQUARE"
_ALONG = {RunName.LENGTH: "LENGTH", RunName.WIDTH: "WIDTH"}


@dataclass(frozen=True, slots=True)
class LengthRow:
    """A piece in a table: its frame, toward which sides it goes, how often, and its lengths.

    `frame` has its coffer too where it is of one alone; `short` is None for what is cut square.
    """

    frame: str
    sides: str
    quantity: int
    long: LengthFigure
    short: LengthFigure | None


@dataclass(frozen=True, slots=True)
class CornerRow:
    """A corner in the saw table: where it is, and the settings for it."""

    of: str
    saw: SawSettings


def length_rows(layout: Layout, frames: Sequence[CrownFrame]) -> dict[str, list[LengthRow]]:
    """The pieces of all frames by moulding: crown first, then flat mouldings, then nailers."""
    rows: dict[str, list[LengthRow]] = {CROWN: []}
    for frame in frames:
        for moulding, row in (*_crown_rows(frame), *_other_rows(layout, frame)):
            rows.setdefault(moulding, []).append(row)
    return rows


def row_name(frame: CrownFrame) -> str:
    """A frame as tables name it: with its coffer, where that is the only one."""
    return f"{frame.name} {frame.coffers[0]}" if len(frame.coffers) == 1 else frame.name


def _crown_rows(frame: CrownFrame) -> Iterator[tuple[str, LengthRow]]:
    for piece in frame.pieces:
        sides = ", ".join(piece.sides)
        yield (
            CROWN,
            LengthRow(row_name(frame), sides, piece.quantity, piece.long_point, piece.short_point),
        )


def _other_rows(layout: Layout, frame: CrownFrame) -> Iterator[tuple[str, LengthRow]]:
    """Flat mouldings and nailers of a frame's coffers."""
    for trim in layout.mouldings.coffers:
        if trim.coffers[0] == frame.coffers[0]:
            yield from _trim_rows(row_name(frame), trim)
    room = layout.outlined
    for coffer in room.coffers_as_cut if room else ():
        if coffer.id == frame.coffers[0]:
            yield from _strip_rows(row_name(frame), coffer)


def _trim_rows(frame: str, trim: CofferTrim) -> Iterator[tuple[str, LengthRow]]:
    for piece in trim.pieces:
        if piece.moulding != CROWN:
            sides = ", ".join(piece.toward)
            lengths = piece.long_point, piece.short_point
            yield piece.moulding, LengthRow(frame, sides, piece.quantity, *lengths)
    for nailer in trim.nailers:
        along = _ALONG[nailer.along]
        yield NAILER, LengthRow(frame, along, nailer.quantity, nailer.length, None)


def _strip_rows(frame: str, coffer: PartialCoffer) -> Iterator[tuple[str, LengthRow]]:
    for number, side in enumerate(coffer.all_sides, start=1):
        for strip in (each for each in side.strips if each.has_room):
            lengths = strip.long_point, strip.short_point
            yield strip.moulding, LengthRow(frame, str(number), 1, *lengths)


def lengths_tables(
    rows: dict[str, list[LengthRow]], wording: SheetWording, space: TableSpace
) -> Iterator[Block]:
    """A table for each moulding, frame by frame."""
    for number, (moulding, own) in enumerate(rows.items(), start=1):
        shown = own[:MOST_ROWS]
        if shown:
            columns = tuple(_length_columns(shown, wording))
            title = _lengths_title(moulding, space)
            yield from in_blocks("length", f"lengths-{number}", title, columns, space)


def _lengths_title(moulding: str, space: TableSpace) -> str:
    """What a moulding's table is called; a long name is cut so that all of its parts have room."""
    words, face = ": LENGTHS", Face.SEMIBOLD
    room = space.width - space.typeface.width(words + GOING_ON, style.HEADING, face)
    return fitted(moulding.upper(), room, style.HEADING, space.typeface, face) + words


def _length_columns(rows: Sequence[LengthRow], wording: SheetWording) -> Iterator[WordColumn]:
    yield WordColumn("FRAME", tuple(row.frame for row in rows))
    sides = tuple(row.sides for row in rows)
    yield WordColumn("SIDES", sides, "sides", sides)
    counts = tuple(str(row.quantity) for row in rows)
    yield WordColumn("NO.", counts, "quantity", counts)
    yield _figures("LONG", "long", [row.long for row in rows], wording)
    if any(row.short is not None for row in rows):
        yield _figures("SHORT", "short", [row.short for row in rows], wording)


def _figures(
    head: str, name: str, figures: Sequence[LengthFigure | None], wording: SheetWording
) -> WordColumn:
    return WordColumn(
        head,
        tuple(wording.detail(each.value) if each else "-" for each in figures),
        name,
        tuple(wording.exact(wording.detailed(each.value)) if each else "" for each in figures),
    )


def corner_rows(layout: Layout, frames: Sequence[CrownFrame]) -> tuple[CornerRow, ...]:
    """Every corner that crown turns: the square one, those out of square, those of cut coffers.

    Crown that is coped at corners out of square is first mitred as for a square one.
    """
    rows = []
    crown = layout.mouldings.crown
    coped = any(out.chosen is OutOfSquare.COPED_IN_PLACE for out in crown_out_of_square(layout))
    if crown is not None and (coped or any(frame.size for frame in frames)):
        rows.append(CornerRow(SQUARE, crown.saw))
    for out in crown_out_of_square(layout):
        rows.extend(_out_of_square(out))
    known = {(row.of, row.saw.corner.tenths) for row in rows}
    for corner in layout.outlined.corners if layout.outlined else ():
        row = CornerRow("OUTSIDE" if corner.juts_in else "INSIDE", corner.settings)
        if row.saw.corner.tenths == "90°" and rows:
            continue
        if (row.of, row.saw.corner.tenths) not in known:
            known.add((row.of, row.saw.corner.tenths))
            rows.append(row)
    return tuple(rows)


def _out_of_square(out: OutOfSquareCrown) -> Iterator[CornerRow]:
    """Corners of a frame that is mitred to them; what is coped is fitted by eye."""
    if out.chosen is OutOfSquare.MITRED_TO_CORNERS:
        for cut in out.corners:
            yield CornerRow(f"{out.coffer} {'-'.join(cut.between)}", cut.saw)


def saw_table(rows: Sequence[CornerRow], space: TableSpace) -> Iterator[Block]:
    """Miters and bevels to a tenth of a degree, nested and flat, corner by corner."""
    shown = rows[:MOST_ROWS]
    saws = [row.saw for row in shown]
    columns = (
        WordColumn("CORNER", tuple(row.of for row in shown)),
        _angles("ANGLE", "angle", [saw.corner.tenths for saw in saws]),
        _angles("NESTED", "nested", [saw.nested_miter.value.tenths for saw in saws]),
        _angles("MITER", "miter", [saw.flat_miter.value.tenths for saw in saws]),
        _angles("BEVEL", "bevel", [saw.flat_bevel.value.tenths for saw in saws]),
    )
    yield from in_blocks("saw", "saws", "SAW, NESTED AND FLAT", columns, space)


def _angles(head: str, name: str, texts: Sequence[str]) -> WordColumn:
    return WordColumn(head, tuple(texts), name, tuple(texts))
