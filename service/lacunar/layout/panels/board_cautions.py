"""Cautions about boards: what the wood will do, edges that read as slivers, boards too long."""

from collections.abc import Iterator, Sequence

from lacunar.layout.board_records import BoardLayout, BoardMovement, Courses, SheetRip
from lacunar.layout.records import Caution, Layout
from lacunar.measure.length import Length
from lacunar.measure.writing import decimal_text
from lacunar.model.board_tables import LEAST_MOISTURE, MOST_MOISTURE
from lacunar.model.boards import Fastening
from lacunar.model.faults import FigureValue
from lacunar.model.stock import SHEET_WIDTH

# The longest boards most yards keep (common practice, no source).
LONGEST_BOARD = Length.of_feet(16)

_MOVEMENT = "/panel/movement"


def board_cautions(layout: Layout) -> Iterator[Caution]:
    """Cautions about the boards of a layout, and about strips that a saw kerf takes."""
    boards = layout.boards
    if boards is not None:
        yield _standing()
        yield from edge_cautions([field.courses for field in boards.fields], boards.cover)
        yield from _long_boards(boards)
        if boards.movement is not None:
            yield from movement_cautions(boards.movement, boards.gap)
    for rip in layout.sheet_rips:
        yield from _lost_strip(rip)


def _standing() -> Caution:
    return Caution(
        code="boards_follow_the_air",
        text="Boards put up wet open at their joints, boards put up dry close them: let them lie in"
        " the heated room first, measure their moisture, and finish them before they go up.",
        figures={},
        pointer="/panel",
    )


def edge_cautions(fields: Sequence[Courses], cover: Length) -> Iterator[Caution]:
    """A caution of edge boards that show less than half a cover, because so it was asked for."""
    narrowest = min(fields, key=lambda laid: laid.edge.value)
    if narrowest.courses.value > 1 and narrowest.edge.value < cover / 2:
        yield Caution(
            code="narrow_edge_boards",
            text="Edge boards show less than half a cover. Left to itself the layout centers on"
            " whichever of joint and board leaves them wider.",
            figures={"edge": narrowest.edge.value, "cover": cover},
            pointer="/panel/centered_on",
        )


def _long_boards(boards: BoardLayout) -> Iterator[Caution]:
    longest = max(field.length.value for field in boards.fields)
    if longest > LONGEST_BOARD:
        yield Caution(
            code="boards_longer_than_stock",
            text="There are boards longer than most yards keep. Plan end joints over framing, no"
            " two beside each other in neighboring courses.",
            figures={"length": longest, "usual_stock": LONGEST_BOARD},
            pointer="/panel/run",
        )


def movement_cautions(movement: BoardMovement, gap: Length) -> Iterator[Caution]:
    """Cautions about what boards will do, against what the trim covers and the gap leaves open."""
    if movement.shrink is None or movement.swell is None:
        yield _not_worked_out(movement)
        return
    shrink, swell = movement.shrink.value, movement.swell.value
    whole = movement.fastening is Fastening.FLOATING
    moving = "the whole field" if whole else "one board"
    if movement.lap is not None and shrink > movement.lap.value:
        yield Caution(
            code="shrinkage_past_trim",
            text=f"When {moving} shrinks, all of it may come out at one edge, and that is more than"
            " the trim laps over the boards beside the gap. Use wider trim, or narrower, drier or"
            " quartersawn boards.",
            figures={"shrink": shrink, "lap": movement.lap.value},
            pointer=f"{_MOVEMENT}/trim_cover",
        )
    if whole and swell > gap * 2:
        yield Caution(
            code="swelling_past_gaps",
            text="When the whole field swells, it needs more room than the gaps at its two edges"
            " leave, and buckles or pushes the beams' sides.",
            figures={"swell": swell, "gaps": gap * 2},
            pointer="/panel/gap",
        )


def _not_worked_out(movement: BoardMovement) -> Caution:
    percents: dict[str, FigureValue] = {
        name: decimal_text(moisture.percent.value)
        for name, moisture in (
            ("now", movement.now),
            ("driest", movement.driest),
            ("dampest", movement.dampest),
        )
    }
    return Caution(
        code="movement_not_worked_out",
        text=f"Published coefficients hold from {LEAST_MOISTURE} to {MOST_MOISTURE} percent of"
        " moisture. Outside of that no movement is given: wood that wet or that dry must come"
        " nearer to what the room will hold before it goes up.",
        figures={**percents, "least": str(LEAST_MOISTURE), "most": str(MOST_MOISTURE)},
        pointer=_MOVEMENT,
    )


def _lost_strip(rip: SheetRip) -> Iterator[Caution]:
    """Strips that would fill the sheet to its edge, were it not for the kerfs between them."""
    if rip.width.value * (rip.strips.value + 1) <= SHEET_WIDTH:
        yield Caution(
            code="strip_lost_to_kerf",
            text=f"The {rip.part} of {', '.join(rip.profiles)} would come out of a sheet once more,"
            " were it not for the saw's kerfs. A slightly narrower one would.",
            figures={
                "width": rip.width.value,
                "strips": rip.strips.value,
                "one_more_at": rip.one_more.value,
            },
            pointer="/beams",
        )
