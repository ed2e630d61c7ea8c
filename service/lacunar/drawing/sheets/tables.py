"""Tables on the sheet: running marks from the datum, and beam profiles."""

from collections.abc import Sequence
from dataclasses import dataclass
from typing import Literal

from lacunar.drawing import style
from lacunar.drawing.annotation import GOING_ON, HEADING_HEIGHT, Block, heading
from lacunar.drawing.elements import Element, Face, Group, Polyline, Pt, Text
from lacunar.drawing.wording import SheetWording
from lacunar.layout.records import BeamProfile, Mark, MarkKind, RunMarks
from lacunar.model.room import START_WALL, RunName

ROW_PITCH = 4.6


@dataclass(frozen=True, slots=True)
class Column:
    """A table column: its words at the top, where it stands [mm], and which edge text keeps to."""

    words: str
    at: float
    anchor: Literal["start", "end"] = "end"


def column_heads(columns: Sequence[Column], width: float, top: float) -> tuple[Element, ...]:
    """The columns' words with a rule under them."""
    words = tuple(
        Text(Pt(c.at, top + style.TEXT), c.words, style.TEXT, Face.MEDIUM, c.anchor)
        for c in columns
    )
    rule = Polyline((Pt(0, top + 4.2), Pt(width, top + 4.2)), style.FINE)
    return (*words, rule)


def rows_that_fit(height: float) -> int:
    """How many table rows a block of `height` [mm] holds under its heading and column heads."""
    return int((height - HEADING_HEIGHT - 5.4) // ROW_PITCH)


@dataclass(frozen=True, slots=True)
class MarkRow:
    """One beam's running marks: near face, center, far face; None where there is none."""

    of: str
    near: Mark | None
    center: Mark | None
    far: Mark | None


def mark_rows(marks: RunMarks) -> tuple[MarkRow, ...]:
    """The marks of finished faces and centers grouped by what they belong to, from the datum."""
    found: dict[str, dict[str, Mark]] = {}
    for mark in marks.marks:
        if mark.kind in (MarkKind.FACE, MarkKind.CENTER):
            found.setdefault(mark.of, {})[mark.side] = mark
        elif mark.kind is MarkKind.WALL:
            # A room lies on the far side of its start wall and on the near side of its end wall.
            found.setdefault(mark.of, {})["near" if mark.exact.value else "far"] = mark
    return tuple(
        MarkRow(of, sides.get("near"), sides.get("at"), sides.get("far"))
        for of, sides in found.items()
    )


@dataclass(frozen=True, slots=True)
class MarkRows:
    """The rows of one run's marks that one block holds; long tables come in several parts."""

    run: RunName
    part: int
    rows: tuple[MarkRow, ...]


def marks_in_parts(marks: RunMarks, most: int) -> tuple[MarkRows, ...]:
    """A run's rows cut into parts of at most `most` rows."""
    rows = mark_rows(marks)
    return tuple(
        MarkRows(marks.run, part, rows[start : start + most])
        for part, start in enumerate(range(0, len(rows), most), start=1)
    )


def marks_table(part: MarkRows, width: float, wording: SheetWording) -> Block:
    """Running marks of one run from the datum, as a block."""
    columns = (
        Column("MARK", 0.0, "start"),
        Column("NEAR FACE", width * 0.42),
        Column("CENTER", width * 0.71),
        Column("FAR FACE", width),
    )
    run = part.run
    title = f"MARKS ALONG {run.value.upper()} FROM {START_WALL[run]}"
    identity = f"marks-{run.value}"
    if part.part > 1:
        title, identity = title + GOING_ON, f"{identity}-{part.part}"
    y = HEADING_HEIGHT + 5.4
    drawn: list[Element] = []
    for row in part.rows:
        drawn.append(_mark_row(row, columns, y, wording))
        y += ROW_PITCH
    children = (*heading(title, width), *column_heads(columns, width, HEADING_HEIGHT), *drawn)
    group = Group("marks-table", children, id=identity, data={"run": run.value})
    return Block(width, y, (group,), f"marks-{run.value}")


def _mark_row(row: MarkRow, columns: Sequence[Column], y: float, wording: SheetWording) -> Group:
    baseline = y + style.TEXT
    cells: list[Element] = [Text(Pt(0, baseline), row.of, style.TEXT, Face.SEMIBOLD)]
    for column, mark in zip(columns[1:], (row.near, row.center, row.far), strict=True):
        if mark is None:
            continue
        text = Text(Pt(column.at, baseline), wording.length(mark.mark), style.TEXT, anchor="end")
        data = {"kind": mark.kind.value, "side": mark.side, "value": wording.exact(mark.mark)}
        cells.append(Group("mark", (text,), data=data))
    return Group("mark-row", tuple(cells), data={"of": row.of})


def profile_table(profiles: Sequence[BeamProfile], width: float, wording: SheetWording) -> Block:
    """Every beam profile: its finished width, drop, backing and which beams have it."""
    columns = (
        Column("ID", 0.0, "start"),
        Column("WIDTH", width * 0.30),
        Column("DROP", width * 0.50),
        Column("BACKING", width * 0.76),
        Column("BEAMS", width),
    )
    y = HEADING_HEIGHT + 5.4
    drawn: list[Element] = []
    for profile in profiles:
        backing = next((p.width.value for p in profile.parts if p.name == "backing"), None)
        cells = (
            profile.id,
            wording.detail(profile.finished_width.value),
            wording.detail(profile.drop.value),
            wording.detail(backing) if backing else "-",
            _used_by(profile),
        )
        row = tuple(
            Text(Pt(c.at, y + style.TEXT), words, style.TEXT, anchor=c.anchor)
            for c, words in zip(columns, cells, strict=True)
        )
        drawn.append(Group("profile-row", row, data={"profile": profile.id}))
        y += ROW_PITCH
    children = (
        *heading("BEAM PROFILES", width),
        *column_heads(columns, width, HEADING_HEIGHT),
        *drawn,
    )
    return Block(width, y, (Group("profile-table", children, id="profile-table"),))


def _used_by(profile: BeamProfile) -> str:
    """The beams of a profile: the one, or how many."""
    return profile.used_by[0] if len(profile.used_by) == 1 else f"{len(profile.used_by)}x"
