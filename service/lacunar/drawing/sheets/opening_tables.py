"""The table of openings as measured: planned, measured, and what they differ by."""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass

from lacunar.drawing import style
from lacunar.drawing.annotation import HEADING_HEIGHT, Block, heading
from lacunar.drawing.elements import Element, Face, Group, Pt, Text
from lacunar.drawing.sheets.tables import ROW_PITCH, Column, column_heads
from lacunar.drawing.wording import SheetWording
from lacunar.layout.opening_records import MeasuredOpening
from lacunar.measure.length import ZERO, Length

_DIAGONALS = {"rising": "RISE", "falling": "FALL"}


@dataclass(frozen=True, slots=True)
class OpeningRow:
    """One side, by its wall, or one diagonal of a coffer, that was measured."""

    coffer: str
    what: str
    planned: Length
    measured: Length


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
    openings: Sequence[MeasuredOpening], width: float, most: int, wording: SheetWording
) -> tuple[Block, ...]:
    """The table, in parts of at most `most` rows; nothing where nothing was measured."""
    rows = tuple(opening_rows(openings))
    return tuple(
        _part(rows[start : start + most], part, width, wording)
        for part, start in enumerate(range(0, len(rows), most), start=1)
    )


def _part(rows: Sequence[OpeningRow], part: int, width: float, wording: SheetWording) -> Block:
    columns = (
        Column("COFFER", 0.0, "start"),
        Column("SIDE", width * 0.21, "start"),
        Column("PLANNED", width * 0.57),
        Column("MEASURED", width * 0.82),
        Column("DIFF.", width),
    )
    title, identity = "OPENINGS AS MEASURED", "openings"
    if part > 1:
        title, identity = f"{title}, GOING ON", f"openings-{part}"
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
        row.coffer,
        _DIAGONALS.get(row.what, row.what),
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
