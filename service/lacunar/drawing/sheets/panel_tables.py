"""Tables beside the panel plan: panels, seams and boards, those alike together and counted."""

from collections.abc import Iterator, Sequence

from lacunar.drawing.annotation import Block
from lacunar.drawing.sheets.word_tables import (
    TableSpace,
    WordColumn,
    counts_column,
    in_blocks,
    lengths_column,
)
from lacunar.drawing.wording import SheetWording
from lacunar.layout.board_records import BoardLayout
from lacunar.layout.opening_records import TaperedField
from lacunar.layout.outline_records import PartialCoffer
from lacunar.layout.records import Layout, PanelFit, SeamBearing
from lacunar.layout.tapering import tapered_boards_of, tapered_panels_of
from lacunar.measure.length import Length
from lacunar.model.room import RunName

MOST_ROWS = 90
"""Tables are cut there; the cut list has a sheet of its own."""
WALLS = ("W1", "W2", "W3", "W4")


def panel_tables(layout: Layout, space: TableSpace, wording: SheetWording) -> Iterator[Block]:
    """All tables of the sheet that the layout has something for."""
    cut = layout.outlined.coffers_as_cut if layout.outlined else ()
    yield from _panels(layout.panels, space, wording)
    yield from _seams(layout.panels, space, wording)
    yield from _tapered_panels(layout, space, wording)
    yield from _cut_panels(cut, space, wording)
    if layout.boards is not None:
        yield from _boards(layout.boards, space, wording)
    yield from _tapered_boards(tuple(tapered_boards_of(layout)), space, wording)
    yield from _cut_boards(cut, space, wording)


def _in(coffers: Sequence[str]) -> str:
    """The first coffer of those alike, and how many more there are."""
    more = len(coffers) - 1
    return f"{coffers[0]} + {more}" if more else coffers[0]


def _panels(fits: Sequence[PanelFit], space: TableSpace, wording: SheetWording) -> Iterator[Block]:
    """Panels that are alike: how long, how wide, how many, with how many seams."""
    shown = fits[:MOST_ROWS]
    if shown:
        seams = [fit.seams.value for fit in shown]
        columns = (
            WordColumn("IN", tuple(_in(fit.coffers) for fit in shown)),
            lengths_column("LENGTH", "length", [fit.length.value for fit in shown], wording),
            lengths_column("WIDTH", "width", [fit.width.value for fit in shown], wording),
            counts_column("PANELS", "panels", [len(fit.coffers) for fit in shown]),
            *((counts_column("SEAMS", "seams", seams),) if any(seams) else ()),
        )
        yield from in_blocks("panel-size", "panel-sizes", "PANELS", columns, space)


def _seams(fits: Sequence[PanelFit], space: TableSpace, wording: SheetWording) -> Iterator[Block]:
    """Where each seam lies from its panel's edge next the datum, and what it rests on."""
    rows: list[tuple[str, RunName, Length, str]] = []
    for fit in fits:
        resting = {(each.along, each.place.value): each for each in fit.seam_bearings}
        for run, seams in (
            (RunName.LENGTH, fit.seams_along_length),
            (RunName.WIDTH, fit.seams_along_width),
        ):
            for seam in seams:
                on = _rests(resting.get((run, seam.value)), wording)
                rows.append((_in(fit.coffers), run, seam.value, on))
    shown = rows[:MOST_ROWS]
    if shown:
        columns = (
            WordColumn("IN", tuple(row[0] for row in shown)),
            WordColumn("ALONG", tuple(row[1].upper() for row in shown)),
            lengths_column("AT", "at", [row[2] for row in shown], wording),
            WordColumn("RESTS ON", tuple(row[3] for row in shown)),
        )
        yield from in_blocks("panel-seam", "panel-seams", "SEAMS", columns, space)


def _rests(bearing: SeamBearing | None, wording: SheetWording) -> str:
    if bearing is None:
        return "-"
    if bearing.backing is None:
        return "JOIST"
    return f"STRIP {wording.length(bearing.backing.value)}"


def _tapered_panels(layout: Layout, space: TableSpace, wording: SheetWording) -> Iterator[Block]:
    """The sides of panels that are no rectangles, by the wall each lies toward."""
    shown = tuple(tapered_panels_of(layout))[:MOST_ROWS]
    if shown:
        columns = (
            WordColumn("COFFER", tuple(panel.coffer for panel in shown)),
            *(
                lengths_column(wall, wall.lower(), [each.sides[n].value for each in shown], wording)
                for n, wall in enumerate(WALLS)
            ),
        )
        title = "SIDES OF PANELS, TOWARD"
        yield from in_blocks("panel-side", "panel-sides", title, columns, space)


def _cut_panels(
    cut: Sequence[PartialCoffer], space: TableSpace, wording: SheetWording
) -> Iterator[Block]:
    """Panels of coffers that walls cut: what each is cut from, and how many corners it has."""
    found = [
        (each.id, each.panel_length.value, each.panel_width.value, len(each.panel_corners))
        for each in cut
        if each.panel_length and each.panel_width
    ][:MOST_ROWS]
    if found:
        columns = (
            WordColumn("COFFER", tuple(row[0] for row in found)),
            lengths_column("LENGTH", "length", [row[1] for row in found], wording),
            lengths_column("WIDTH", "width", [row[2] for row in found], wording),
            counts_column("CORNERS", "corners", [row[3] for row in found]),
        )
        title = "CUT PANELS, CUT FROM"
        yield from in_blocks("cut-panel", "cut-panels", title, columns, space)


def _boards(boards: BoardLayout, space: TableSpace, wording: SheetWording) -> Iterator[Block]:
    """Fields of boards that are alike: courses, length, both rips, and all their boards."""
    shown = boards.fields[:MOST_ROWS]
    if shown:
        laid = [field.courses for field in shown]
        columns = (
            WordColumn("IN", tuple(_in(field.coffers) for field in shown)),
            counts_column("FIELDS", "fields", [field.fields.value for field in shown]),
            counts_column("COURSES", "courses", [each.courses.value for each in laid]),
            counts_column("BOARDS", "boards", [field.boards.value for field in shown]),
            lengths_column("LENGTH", "length", [field.length.value for field in shown], wording),
            lengths_column("ACROSS", "across", [each.across.value for each in laid], wording),
            lengths_column("EDGES", "edge", [each.edge.value for each in laid], wording),
            lengths_column(
                "FIRST RIP", "first-rip", [each.first_rip.value for each in laid], wording
            ),
            lengths_column("LAST RIP", "last-rip", [each.last_rip.value for each in laid], wording),
        )
        yield from in_blocks("board-field", "board-fields", "BOARDS", columns, space)


def _tapered_boards(
    fields: Sequence[TaperedField], space: TableSpace, wording: SheetWording
) -> Iterator[Block]:
    """What the edge boards of tapering coffers show at both ends."""
    edges = [(field.coffer, edge) for field in fields for edge in field.edges][:MOST_ROWS]
    if edges:
        columns = (
            WordColumn("COFFER", tuple(coffer for coffer, _ in edges)),
            WordColumn("TOWARD", tuple(edge.toward for _, edge in edges)),
            lengths_column("START", "start", [edge.start.value for _, edge in edges], wording),
            lengths_column("END", "end", [edge.end.value for _, edge in edges], wording),
        )
        title = "EDGE BOARDS THAT TAPER"
        yield from in_blocks("board-taper", "board-tapers", title, columns, space)


def _cut_boards(
    cut: Sequence[PartialCoffer], space: TableSpace, wording: SheetWording
) -> Iterator[Block]:
    """Boards of coffers that walls cut: edge boards, and how many there are of each length."""
    laid = [(each.id, each.laid) for each in cut if each.laid is not None][:MOST_ROWS]
    if laid:
        columns = (
            WordColumn("COFFER", tuple(coffer for coffer, _ in laid)),
            counts_column("COURSES", "courses", [each.courses.value for _, each in laid]),
            lengths_column("ACROSS", "across", [each.across.value for _, each in laid], wording),
            lengths_column("EDGES", "edge", [each.edge.value for _, each in laid], wording),
        )
        title = "BOARDS OF CUT COFFERS"
        yield from in_blocks("cut-board-field", "cut-board-fields", title, columns, space)
    yield from _cut_lengths(cut, space, wording)


def _cut_lengths(
    cut: Sequence[PartialCoffer], space: TableSpace, wording: SheetWording
) -> Iterator[Block]:
    rows = [(each.id, course) for each in cut for course in each.courses][:MOST_ROWS]
    if rows:
        columns = (
            WordColumn("COFFER", tuple(coffer for coffer, _ in rows)),
            lengths_column(
                "LENGTH", "length", [course.length.value for _, course in rows], wording
            ),
            counts_column("BOARDS", "boards", [course.boards for _, course in rows]),
        )
        title = "THEIR LENGTHS"
        yield from in_blocks("cut-board", "cut-boards", title, columns, space)
