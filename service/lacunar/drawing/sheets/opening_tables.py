"""Tables of openings as measured, and of the saw at corners that are not square."""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass

from lacunar.drawing import style
from lacunar.drawing.annotation import GOING_ON, HEADING_HEIGHT, Block, heading
from lacunar.drawing.elements import Element, Face, Group, Pt, Text
from lacunar.drawing.sheets.tables import ROW_PITCH, Column, column_heads
from lacunar.drawing.wording import SheetWording
from lacunar.layout.opening_records import CornerCut, MeasuredOpening, OutOfSquareCrown
from lacunar.layout.outline_records import OutlinedRoom
from lacunar.measure.length import ZERO, Length
from lacunar.model.openings import OutOfSquare

# A wall or, of the diagonals, a letter: there is no room for more beside figures in 1/64 in.
_DIAGONALS = {"rising": "R", "falling": "F"}


@dataclass(frozen=True, slots=True)
class OpeningRow:
    """One side, by its wall, or one diagonal of a coffer, that was measured."""

    coffer: str
    what: str
    planned: Length
    measured: Length


def cut_rows(room: OutlinedRoom | None) -> Iterator[OpeningRow]:
    """A row for all that was measured of cut coffers: sides by number, diagonals by corners."""
    for coffer in room.measured if room else ():
        for side in coffer.sides:
            if side.measured is not None:
                sizes = side.planned.value, side.measured.value
                yield OpeningRow(coffer.coffer, str(side.side), *sizes)
        for each in coffer.diagonals:
            what = f"{each.from_corner}-{each.to_corner}"
            yield OpeningRow(coffer.coffer, what, each.planned.value, each.measured.value)


def opening_rows(openings: Sequence[MeasuredOpening]) -> Iterator[OpeningRow]:
    """A row for all that was measured, coffer by coffer."""
    for opening in openings:
        for side in opening.sides:
            if side.measured is not None:
                yield OpeningRow(
                    opening.coffer, side.toward, side.planned.value, side.measured.value
                )
        for each in opening.diagonals:
            if each.measured is not None:
                yield OpeningRow(opening.coffer, each.name, each.planned.value, each.measured.value)


def openings_tables(
    rows: Sequence[OpeningRow], width: float, most: int, wording: SheetWording
) -> tuple[Block, ...]:
    """The table, in parts of at most `most` rows; nothing where nothing was measured."""
    return tuple(
        _part(rows[start : start + most], part, width, wording)
        for part, start in enumerate(range(0, len(rows), most), start=1)
    )


def _part(rows: Sequence[OpeningRow], part: int, width: float, wording: SheetWording) -> Block:
    columns = (
        Column("SIDE", 0.0, "start"),
        Column("PLANNED", width * 0.46),
        Column("MEASURED", width * 0.76),
        Column("DIFF.", width),
    )
    title, identity = "OPENINGS AS MEASURED", "openings"
    if part > 1:
        title, identity = title + GOING_ON, f"openings-{part}"
    y = HEADING_HEIGHT + 5.4
    drawn: list[Element] = []
    for row in rows:
        drawn.append(_row(row, columns, y, wording))
        y += ROW_PITCH
    children = (*heading(title, width), *column_heads(columns, width, HEADING_HEIGHT), *drawn)
    return Block(width, y, (Group("openings-table", children, id=identity),))


def _row(row: OpeningRow, columns: Sequence[Column], y: float, wording: SheetWording) -> Group:
    """A row whose difference is that of the two sizes as they are printed in it."""
    planned, measured = wording.rounded(row.planned), wording.detailed(row.measured)
    difference = measured - planned
    sign = "+" if difference > ZERO else ""
    words = (
        f"{row.coffer} {_DIAGONALS.get(row.what, row.what)}",
        wording.length(row.planned),
        wording.detail(row.measured),
        f"{sign}{wording.detail(difference)}" if difference else "0",
    )
    faces = (Face.SEMIBOLD, *[Face.REGULAR] * (len(words) - 1))
    cells = tuple(
        Text(Pt(column.at, y + style.TEXT), each, style.TEXT, face, column.anchor)
        for column, each, face in zip(columns, words, faces, strict=True)
    )
    data = {
        "of": row.coffer,
        "what": row.what,
        "planned": wording.exact(row.planned),
        "measured": wording.exact(row.measured),
    }
    return Group("opening-row", cells, data=data)


def corner_tables(crowns: Sequence[OutOfSquareCrown], width: float, most: int) -> tuple[Block, ...]:
    """The saw at the corners of frames that are mitred to them, in parts of `most` rows."""
    rows = tuple(
        (crown.coffer, cut)
        for crown in crowns
        if crown.chosen is OutOfSquare.MITRED_TO_CORNERS
        for cut in crown.corners
    )
    return tuple(
        _corner_part(rows[start : start + most], part, width)
        for part, start in enumerate(range(0, len(rows), most), start=1)
    )


def _corner_part(rows: Sequence[tuple[str, CornerCut]], part: int, width: float) -> Block:
    columns = (
        Column("CORNER", 0.0, "start"),
        Column("ANGLE", width * 0.45),
        Column("NESTED", width * 0.65),
        Column("MITER", width * 0.83),
        Column("BEVEL", width),
    )
    title, identity = "SAW FOR CROWN CORNERS", "corner-cuts"
    if part > 1:
        title, identity = title + GOING_ON, f"{identity}-{part}"
    y = HEADING_HEIGHT + 5.4
    drawn: list[Element] = []
    for coffer, cut in rows:
        saw = cut.saw
        words = (
            f"{coffer} {'-'.join(cut.between)}",
            saw.corner.tenths,
            saw.nested_miter.value.tenths,
            saw.flat_miter.value.tenths,
            saw.flat_bevel.value.tenths,
        )
        cells = tuple(
            Text(Pt(column.at, y + style.TEXT), each, style.TEXT, anchor=column.anchor)
            for column, each in zip(columns, words, strict=True)
        )
        data = {"of": coffer, "between": " ".join(cut.between)}
        drawn.append(Group("corner-row", cells, data=data))
        y += ROW_PITCH
    children = (*heading(title, width), *column_heads(columns, width, HEADING_HEIGHT), *drawn)
    return Block(width, y, (Group("corners-table", children, id=identity),))
