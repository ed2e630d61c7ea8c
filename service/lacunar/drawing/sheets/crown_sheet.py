"""Sheet Z-503: crown, its section, how it lies on the saw, and every frame with its pieces."""

from collections.abc import Iterator, Sequence

from lacunar.drawing.annotation import Block, paragraph_blocks, wrapped
from lacunar.drawing.paper import NOT_TO_SCALE, Scale
from lacunar.drawing.sheets.crossing_sheet import not_drawn
from lacunar.drawing.sheets.crown_tables import (
    MOST_ROWS,
    CornerRow,
    corner_rows,
    length_rows,
    lengths_tables,
    saw_table,
)
from lacunar.drawing.sheets.pages import Page, SheetSource, stacked
from lacunar.drawing.sheets.placing import column_space
from lacunar.drawing.sheets.scale_bar import scale_bar, view_title
from lacunar.drawing.sheets.tables import rows_that_fit
from lacunar.drawing.sheets.view_pages import VIEW_GAP, TitledView, view_area, view_pages
from lacunar.drawing.sheets.word_tables import TableSpace
from lacunar.drawing.views.crown_frame import frame_view
from lacunar.drawing.views.crown_frame.frames import CrownFrame, crown_frames, millimeters
from lacunar.drawing.views.crown_frame.saw_pictures import saw_pictures
from lacunar.drawing.views.crown_frame.section import crown_section_view
from lacunar.drawing.wording import SheetWording
from lacunar.layout.moulding_records import SawSettings
from lacunar.layout.names import first_few
from lacunar.layout.records import Layout
from lacunar.measure.angle import Angle
from lacunar.model.moulding import Crown, CrownMethod

COFFERS_TOLD = 12
"""How many coffers are told under a frame: where there are more, a list has all."""
MOST_FRAMES = 16
"""How many frames are drawn: the others are alike but for their lengths."""
TALLEST_SECTION = 78.0
TALLEST_FRAME = 112.0
"""How tall they may be where there is room [mm]: larger, they are no clearer."""
MOST_FRAME = 0.5
"""How much of the height of the views a frame may take, so that two stand over each other."""
HALF_GAP = VIEW_GAP / 2
NARROWEST_SAW = 128.0
"""What pictures of the saw take across, two beside each other [mm]."""
SMALLEST_SECTION, SMALLEST_FRAME = 16, 200
TITLE_GAP, BAR_GAP = 4.0, 2.0
BAR = 40.0
TITLE_WIDTH = 125.0
_STRAIGHT = Angle.of_degrees(180)


def crown_pages(source: SheetSource) -> tuple[Page, ...]:
    """The crown's section and saw pictures, then its frames; nothing where there is no crown.

    A frame that fits at no scale, or is one too many, is told of in the notes.
    """
    frames = crown_frames(source.layout)
    if not frames or source.layout.mouldings.crown is None:
        return ()
    corners = corner_rows(source.layout, frames)
    section = tuple(_section(source, 1))
    views = (*section, *_saw(source, corners, section))
    drawn, left_out = _frames(source, frames, 3)
    return view_pages(source, (*views, *drawn), _blocks(source, frames, corners, left_out))


def _section(source: SheetSource, number: int) -> Iterator[TitledView]:
    area = view_area(source)
    for scale in source.scales(smallest=SMALLEST_SECTION, largest=1):
        drawn = crown_section_view(source.layout, number, scale, source.wording, source.typeface)
        if drawn.height <= TALLEST_SECTION and drawn.width <= area.width:
            title = _title(source, number, "SECTION OF THE CROWN", scale, ())
            yield TitledView("crown-section", number, scale, stacked((drawn, title), TITLE_GAP))
            return


def _saw(
    source: SheetSource, corners: Sequence[CornerRow], beside: Sequence[TitledView]
) -> Iterator[TitledView]:
    """How pieces lie for a square corner, or the first there is, and for an outside one."""
    number = 2
    inside = [row.saw for row in corners if row.saw.cuts and row.saw.corner < _STRAIGHT]
    outside = [row.saw for row in corners if row.saw.cuts and row.saw.corner > _STRAIGHT]
    shown: list[tuple[str, SawSettings]] = []
    for name, saws in (("INSIDE", inside), ("OUTSIDE", outside)):
        shown += [(f"{name} {saws[0].corner.tenths}", saws[0])] if saws else []
    if not shown:
        return
    area = view_area(source)
    left_over = area.width - sum(view.block.width + VIEW_GAP for view in beside)
    width = left_over if left_over >= NARROWEST_SAW else area.width
    pictures = saw_pictures(shown, width, source.typeface)
    notes = ("SEEN FROM ABOVE, THE FENCE AT THE BACK",)
    title = view_title(number, "HOW PIECES LIE ON THE SAW", NOT_TO_SCALE, notes, source.typeface)
    block = stacked((pictures, title), TITLE_GAP)
    if block.width <= area.width and block.height <= area.height:
        yield TitledView("crown-saw", number, None, block)


def _frames(
    source: SheetSource, frames: Sequence[CrownFrame], first: int
) -> tuple[list[TitledView], list[CrownFrame]]:
    """Frames as views, and those that are not drawn."""
    views: list[TitledView] = []
    left_out = list(frames[MOST_FRAMES:])
    for number, frame in enumerate(frames[:MOST_FRAMES], start=first):
        view = _frame(source, frame, number)
        if view is None:
            left_out.append(frame)
        else:
            views.append(view)
    return views, left_out


def _frame(source: SheetSource, frame: CrownFrame, number: int) -> TitledView | None:
    """At the largest scale at which two stand over each other, or else one by itself."""
    crown = source.layout.mouldings.crown
    assert crown is not None
    area = view_area(source)
    lettering = source.wording, source.typeface
    for most in (min(MOST_FRAME * area.height - HALF_GAP, TALLEST_FRAME), area.height):
        for scale in source.scales(smallest=SMALLEST_FRAME, largest=2):
            face = millimeters(crown.face.value)
            drawn = frame_view(frame, face, scale, number, lettering)
            title = _title(
                source, number, f"FRAME {frame.name}", scale, tuple(_told(source, frame))
            )
            block = stacked((drawn, title), TITLE_GAP)
            if block.width <= area.width and block.height <= most:
                return TitledView(f"crown-{frame.name}", number, scale, block)
    return None


def _title(
    source: SheetSource, number: int, name: str, scale: Scale, notes: Sequence[str]
) -> Block:
    lines = tuple(line for note in notes for line in wrapped(note, TITLE_WIDTH, source.typeface))
    title = view_title(number, name, scale, lines, source.typeface)
    bar = scale_bar(number, scale.ratio, source.wording.units, BAR)
    return stacked((title, bar), BAR_GAP)


def _told(source: SheetSource, frame: CrownFrame) -> Iterator[str]:
    """Which coffers a frame is of, and what is seen inside it."""
    count = len(frame.coffers)
    coffers = f"COFFER{'S' if count > 1 else ''}"
    told = ", ".join(frame.coffers[:COFFERS_TOLD])
    more = count - COFFERS_TOLD
    yield f"{count}x, {coffers} {told}{f', AND {more} MORE' if more > 0 else ''}"
    if frame.seen is not None:
        wording = source.wording
        seen = " x ".join(wording.length(each.value) for each in frame.seen)
        yield f"SEEN OPENING {seen}"
    if frame.bare:
        yield f"NO ROOM FOR CROWN AT SIDE {', '.join(frame.bare)}"
    if frame.meets:
        yield "TWO RUNS OF CROWN WOULD TAKE THE SAME PLACE: SEE CAUTIONS"


def _blocks(
    source: SheetSource,
    frames: Sequence[CrownFrame],
    corners: Sequence[CornerRow],
    left_out: Sequence[CrownFrame],
) -> tuple[Block, ...]:
    column = column_space(source.size)
    width = column.width
    space = TableSpace(width, rows_that_fit(column.height), source.typeface)
    rows = length_rows(source.layout, frames)
    notes = list(_notes(source.layout, corners, source.wording))
    if left_out:
        notes.append(f"{not_drawn([frame.name for frame in left_out])} The table has them.")
    if any(len(own) > MOST_ROWS for own in (*rows.values(), corners)):
        notes.append(f"Tables stop after {MOST_ROWS} lines; all pieces are in the cut list.")
    return (
        *saw_table(corners, space),
        *lengths_tables(rows, source.wording, space),
        *paragraph_blocks("frames", "FRAMES", _members(frames), column, source.typeface),
        *paragraph_blocks("notes", "NOTES", notes, column, source.typeface),
    )


def _members(frames: Sequence[CrownFrame]) -> list[str]:
    """Every frame with all its coffers, where there are some that have more than are told."""
    if all(len(frame.coffers) <= COFFERS_TOLD for frame in frames):
        return []
    return [
        f"{frame.name}, {len(frame.coffers)}x: {', '.join(frame.coffers)}."
        for frame in frames[:MOST_ROWS]
    ]


def _notes(layout: Layout, corners: Sequence[CornerRow], wording: SheetWording) -> Iterator[str]:
    asked = layout.ceiling.crown
    assert asked is not None
    yield (
        "Long points are at the edge on the beam, the heavy line; at corners that jut in the other"
        " edge goes further."
    )
    yield "Left and right: to someone who faces the piece from inside the coffer."
    yield from _method(asked, wording)
    yield (
        "Miters are from a square cut, bevels from upright, spring from the wall, that is the side"
        " of the beam. Cut a pair from scrap first."
    )
    for way, within in (("nested", 0), ("flat", 1)):
        beyond = [
            f"{row.of} {row.saw.corner.tenths}"
            for row in corners
            if not (row.saw.nested_within_limits, row.saw.flat_within_limits)[within]
        ]
        if beyond:
            told = first_few(list(dict.fromkeys(beyond)))
            yield f"With the crown {way}, the saw does not reach these corners: {told}."
    yield "Clamp short pieces: hands stay clear of the blade."


def _method(asked: Crown, wording: SheetWording) -> Iterator[str]:
    if asked.method is CrownMethod.BENCH_FRAME:
        fit = wording.size(asked.fit_total)
        yield f"Frames are made up on the bench, {fit} smaller than the opening in all, each way."
    else:
        allowance = wording.size(asked.sprung_allowance)
        yield (
            "Pieces go up in the order of their numbers. Square ends butt against the beam; coped"
            f" ones are mitred, then cut along their face to lie against the piece before them."
            f" Each is {allowance} longer than its opening, and sprung in."
        )
