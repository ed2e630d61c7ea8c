"""Tables of running marks: of each run, and of both its ends where they differ."""

from collections.abc import Mapping, Sequence
from dataclasses import dataclass

from lacunar.drawing import style
from lacunar.drawing.annotation import GOING_ON, HEADING_HEIGHT, Block, fitted, heading
from lacunar.drawing.elements import Element, Face, Group, Pt, Text
from lacunar.drawing.run_ends import End, unlike, wall_at
from lacunar.drawing.sheets.tables import ROW_PITCH, Column, column_heads
from lacunar.drawing.sheets.word_tables import TableSpace
from lacunar.drawing.wording import SheetWording
from lacunar.layout.records import Layout, Mark, MarkKind, RunMarks
from lacunar.model.room import START_WALL, RunName

TOLD = (
    MarkKind.WALL,
    MarkKind.FACE,
    MarkKind.CENTER,
    MarkKind.MEMBER,
    MarkKind.MEMBER_CENTER,
)
"""What the tables tell; backing is worked back from faces."""
LEAST_MARK = 18.0
"""Room that a row's name leaves for its first mark at least [mm]."""
PITCH = 0.29
"""How far apart columns of marks end, of the table's width, where figures are no longer."""
MARK_GAP = 1.2
"""What is left between two figures at least [mm]."""


@dataclass(frozen=True, slots=True)
class MarkRow:
    """One beam's running marks, or those of the `member` in it: near face, center, far face.

    None where there is none.
    """

    of: str
    near: Mark | None
    center: Mark | None
    far: Mark | None
    member: str = ""


def mark_rows(marks: RunMarks, members: Mapping[str, str]) -> tuple[MarkRow, ...]:
    """The marks of finished faces, centers and members by what they belong to, from the datum.

    `members` are the names of members by the beams they are in.
    """
    found: dict[tuple[str, str], dict[str, Mark]] = {}
    for mark in marks.marks:
        if mark.kind in (MarkKind.FACE, MarkKind.CENTER):
            found.setdefault((mark.of, ""), {})[mark.side] = mark
        elif mark.kind in (MarkKind.MEMBER, MarkKind.MEMBER_CENTER):
            found.setdefault((mark.of, members[mark.of]), {})[mark.side] = mark
        elif mark.kind is MarkKind.WALL:
            # A room lies on the far side of its start wall and on the near side of its end wall.
            found.setdefault((mark.of, ""), {})["near" if mark.exact.value else "far"] = mark
    # A beam stands before its member, whichever is met first from the datum.
    order = {of: number for number, (of, _) in reversed(tuple(enumerate(found)))}
    rows = sorted(found.items(), key=lambda row: (order[row[0][0]], bool(row[0][1])))
    return tuple(
        MarkRow(of, sides.get("near"), sides.get("at"), sides.get("far"), member)
        for (of, member), sides in rows
    )


@dataclass(frozen=True, slots=True)
class MarkRows:
    """The rows of one run's marks that one block holds; long tables come in several parts.

    `at` is the wall they are told at, empty where they are alike at both.
    """

    run: RunName
    end: End
    at: str
    part: int
    rows: tuple[MarkRow, ...]


def marks_in_parts(layout: Layout, most: int) -> tuple[MarkRows, ...]:
    """The rows of both runs, and of both ends where these differ, in parts of `most` rows."""
    members = {beam.id: beam.member.name for beam in layout.beams if beam.member}
    parts: list[MarkRows] = []
    for marks in layout.marks:
        differ = unlike(layout, marks.run, TOLD)
        if marks.end == "start" or differ:
            rows = mark_rows(marks, members)
            at = wall_at(marks.run, marks.end) if differ else ""
            parts.extend(
                MarkRows(marks.run, marks.end, at, part, rows[start : start + most])
                for part, start in enumerate(range(0, len(rows), most), start=1)
            )
    return tuple(parts)


def marks_table(part: MarkRows, space: TableSpace, wording: SheetWording) -> Block:
    """Running marks of one run from its start wall, as a block."""
    width = space.width
    columns, longest = _columns(part.rows, space, wording)
    run = part.run
    title = f"MARKS ALONG {run.value.upper()} FROM {START_WALL[run]}"
    identity = f"marks-{run.value}"
    if part.at:
        # Two letters more would run out of a narrow column.
        title = f"MARKS FROM {START_WALL[run]} AT {part.at}"
    if part.end == "end":
        identity = f"{identity}-end"
    series = identity
    if part.part > 1:
        title, identity = title + GOING_ON, f"{identity}-{part.part}"
    y = HEADING_HEIGHT + 5.4
    drawn: list[Element] = []
    for row in part.rows:
        name = fitted(row.member, longest, style.TEXT, space.typeface, Face.SEMIBOLD) or row.of
        drawn.append(_mark_row(row, (name, columns), y, wording))
        y += ROW_PITCH
    children = (*heading(title, width), *column_heads(columns, width, HEADING_HEIGHT), *drawn)
    data = {"run": run.value, **({"end": part.end} if part.at else {})}
    group = Group("marks-table", children, id=identity, data=data)
    return Block(width, y, (group,), series)


def _columns(
    rows: Sequence[MarkRow], space: TableSpace, wording: SheetWording
) -> tuple[tuple[Column, ...], float]:
    """The table's columns, as far apart as their figures need, and how long names may be [mm]."""
    near, center, far = (
        max(_length(mark, space, wording) for mark in marks)
        for marks in zip(*((row.near, row.center, row.far) for row in rows), strict=True)
    )
    center_at = space.width - max(PITCH * space.width, far + MARK_GAP)
    near_at = center_at - max(PITCH * space.width, center + MARK_GAP)
    columns = (
        Column("MARK", 0.0, "start"),
        Column("NEAR FACE", near_at),
        Column("CENTER", center_at),
        Column("FAR FACE", space.width),
    )
    return columns, near_at - max(LEAST_MARK, near + MARK_GAP)


def _length(mark: Mark | None, space: TableSpace, wording: SheetWording) -> float:
    """How long a mark's figure is [mm]."""
    return 0.0 if mark is None else space.typeface.width(wording.length(mark.mark), style.TEXT)


def _mark_row(
    row: MarkRow, layout: tuple[str, Sequence[Column]], y: float, wording: SheetWording
) -> Group:
    name, columns = layout
    baseline = y + style.TEXT
    cells: list[Element] = [Text(Pt(0, baseline), name, style.TEXT, Face.SEMIBOLD)]
    for column, mark in zip(columns[1:], (row.near, row.center, row.far), strict=True):
        if mark is None:
            continue
        text = Text(Pt(column.at, baseline), wording.length(mark.mark), style.TEXT, anchor="end")
        data = {"kind": mark.kind.value, "side": mark.side, "value": wording.exact(mark.mark)}
        cells.append(Group("mark", (text,), data=data))
    told = {"member": row.member} if row.member else {}
    return Group("mark-row", tuple(cells), data={"of": row.of, **told})
