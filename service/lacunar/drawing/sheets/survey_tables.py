"""Tables and notes of a crooked room: walls as surveyed, strips at walls, both ways to lay out."""

from collections.abc import Iterator, Sequence
from fractions import Fraction

from lacunar.drawing.annotation import Block
from lacunar.drawing.run_ends import RunEnd
from lacunar.drawing.sheets.word_tables import TableSpace, WordColumn, in_blocks
from lacunar.drawing.wording import SheetWording
from lacunar.layout.records import Layout, WallBeam
from lacunar.layout.runs.wall_strips import run_of_wall
from lacunar.layout.survey_records import CrookedMode, CrookedRoom, CrookedWall, SurveyReport
from lacunar.measure.angle import Angle
from lacunar.measure.length import ZERO, Length
from lacunar.measure.units import Units
from lacunar.measure.writing import decimal_text
from lacunar.model.room import START_WALL, WALLS
from lacunar.model.survey import CORNERS

SHARED_PLACES = 4
DIAGONALS = ("rising", "falling")


def survey_tables(layout: Layout, space: TableSpace, wording: SheetWording) -> tuple[Block, ...]:
    """What was surveyed, what stands at the walls, and both ways; nothing in a square room."""
    crooked = layout.crooked
    if crooked is None or crooked.square:
        return ()
    blocks = [
        *_at_walls(layout, crooked, space, wording),
        *in_blocks(
            "wall-length",
            "wall-lengths",
            "WALLS AS SURVEYED",
            _walls(crooked.survey, wording),
            space,
        ),
        *in_blocks("corner", "corners", "CORNERS AS SURVEYED", _corners(crooked.survey), space),
    ]
    if len(crooked.modes) > 1:
        title = "SQUARE GRID OR ALONG WALLS"
        blocks.extend(in_blocks("mode", "modes", title, _modes(crooked.modes, wording), space))
    return tuple(blocks)


def _at_walls(
    layout: Layout, crooked: CrookedRoom, space: TableSpace, wording: SheetWording
) -> Iterator[Block]:
    """The strips that taper; where the grid follows the walls, the coffers that do."""
    if layout.followed is None:
        title, columns = "STRIPS AT WALLS", _strips(layout, crooked, wording)
        yield from in_blocks("strip", "strips", title, columns, space)
        return
    mode = next(each for each in crooked.modes if each.chosen)
    columns = _coffers(mode, wording)
    yield from in_blocks("coffer-size", "coffer-sizes", "SIZES OF COFFERS", columns, space)


def _coffers(mode: CrookedMode, wording: SheetWording) -> list[WordColumn]:
    """A row to each coffer: its sides by the wall they lie toward, its diagonals, its corners."""
    coffers = mode.coffers
    columns = [WordColumn("COFFER", tuple(coffer.id for coffer in coffers))]
    for number, wall in enumerate(WALLS):
        columns.append(_sizes(wall, [coffer.sides[number].value for coffer in coffers], wording))
    for name in DIAGONALS:
        sizes = [getattr(coffer, name).value for coffer in coffers]
        columns.append(_sizes(name.upper(), sizes, wording))
    for number, corner in enumerate(CORNERS):
        cells = tuple(angle_text(coffer.corners[number].angle.value) for coffer in coffers)
        columns.append(WordColumn(corner, cells))
    return columns


def _sizes(head: str, sizes: Sequence[Length], wording: SheetWording) -> WordColumn:
    cells = tuple(wording.length(size) for size in sizes)
    values = tuple(wording.exact(wording.rounded(size)) for size in sizes)
    return WordColumn(head, cells, head, values)


def _walls(survey: SurveyReport, wording: SheetWording) -> list[WordColumn]:
    """Each wall and diagonal between finished faces, what was shared out, and bows."""
    lengths = {wall.wall: wall.length.value for wall in survey.walls}
    lengths |= {name.upper(): getattr(survey, name).value for name in DIAGONALS}
    bows = {wall.wall: wall.bow for wall in survey.walls}
    shared = {each.of.upper(): each.adjusted.value - each.measured for each in survey.lengths}
    columns = [
        WordColumn("OF", tuple(lengths)),
        WordColumn(
            "LENGTH",
            tuple(wording.length(length) for length in lengths.values()),
            "length",
            tuple(wording.exact(wording.rounded(length)) for length in lengths.values()),
        ),
    ]
    if any(shared.values()):
        cells = (_signed(shared[of], wording) if of in shared else "-" for of in lengths)
        columns.append(WordColumn("SHARED OUT", tuple(cells)))
    if any(bows.values()):
        columns.append(
            WordColumn("BOW", tuple(bow_in_words(bows.get(of), wording) for of in lengths))
        )
    return columns


def bow_in_words(bow: Length | None, wording: SheetWording) -> str:
    """How far a wall's middle stands in or out of the room; a dash where it does not."""
    if not bow:
        return "-"
    return f"{wording.detail(abs(bow))} {'IN' if bow > ZERO else 'OUT'}"


def _signed(change: Length, wording: SheetWording) -> str:
    if not change:
        return "0"
    return ("+" if change > ZERO else "-") + _finely(abs(change), wording)


def _finely(length: Length, wording: SheetWording) -> str:
    """A small length in decimals: what is shared out is mostly less than a tape shows."""
    if wording.units is Units.INCH:
        return decimal_text(length.inches, 3) + '"'
    return decimal_text(length.millimeters, 1)


def _corners(survey: SurveyReport) -> list[WordColumn]:
    """Each corner's angle, and what was shared out of it."""
    shared = {each.of: each.adjusted.value - each.measured for each in survey.angles}
    columns = [
        WordColumn("CORNER", tuple(corner.id for corner in survey.corners)),
        WordColumn("ANGLE", tuple(angle_text(corner.angle.value) for corner in survey.corners)),
    ]
    if any(shared.values()):
        cells = (_turned(shared[each.id]) if each.id in shared else "-" for each in survey.corners)
        columns.append(WordColumn("SHARED OUT", tuple(cells)))
    return columns


def _turned(change: Angle) -> str:
    if not change:
        return "0"
    # Finer than angles are told: what is shared out is a quarter of what a gauge shows.
    turned = decimal_text(abs(change).degrees, SHARED_PLACES)
    return ("+" if change.degrees > 0 else "-") + f"{turned}°"


def angle_text(angle: Angle) -> str:
    """An angle to a hundredth of a degree: 1/16 in over 30 ft."""
    whole, part = divmod(round(angle.degrees * 100), 100)
    return f"{whole}.{part:02d}°"


NO_BOARD = "-"
STRIP_ROWS = ("STRIP", "AT W4/W1", "AT W2/W3", "TAPER", "SCRIBE", "BOARD")


def _strips(layout: Layout, crooked: CrookedRoom, wording: SheetWording) -> list[WordColumn]:
    """A column to each wall: its strip at both ends, as strings show it, and the board for it."""
    columns = [WordColumn("", STRIP_ROWS)]
    for wall in crooked.walls:
        start, end = _at_ends(layout, wall, wording)
        board = _started_from(wall, wording)
        lengths = (start, end, abs(end - start), wall.scribe.value, board)
        shown = [wording.detailed(length) for length in lengths]
        strip = wall.strip or "GAP"
        cells = [strip, *(wording.detail(length) for length in shown)]
        values = [strip, *(wording.exact(length) for length in shown)]
        if wall.strip is None:
            # A gap is not made of a board.
            cells[-1] = values[-1] = NO_BOARD
        columns.append(WordColumn(wall.wall, tuple(cells), wall.wall, tuple(values)))
    return columns


def _at_ends(layout: Layout, wall: CrookedWall, wording: SheetWording) -> tuple[Length, Length]:
    """A strip's width at the start and at the end of the run along its wall: between marks."""
    run = run_of_wall(wall.wall)
    at_start = wall.wall == START_WALL[run]
    place = _inner_face(layout, wall, at_start=at_start)
    widths = []
    for end in ("start", "end"):
        at = RunEnd.of(layout, run, "start" if end == "start" else "end")
        face = wording.rounded(place + at.before)
        widths.append(face if at_start else wording.rounded(at.span) - face)
    return widths[0], widths[1]


def _inner_face(layout: Layout, wall: CrookedWall, *, at_start: bool) -> Length:
    """Where along its run a wall's strip ends; the clear line at a bare wall."""
    strip: WallBeam | None = next((b for b in layout.wall_beams if b.id == wall.strip), None)
    if strip is not None:
        return (strip.far if at_start else strip.near).at_start.value
    return ZERO if at_start else layout.run(run_of_wall(wall.wall)).span.at_start.value


def _started_from(wall: CrookedWall, wording: SheetWording) -> Length:
    """The least whole number of marking steps that holds the strip's widest place."""
    step = wording.step.size
    return step * Fraction(-(-(wall.widest.value / step) // 1))


def _modes(modes: Sequence[CrookedMode], wording: SheetWording) -> list[WordColumn]:
    """The least and the largest coffer sides of each way, and how far corners are off square."""
    names = ("OFF SQUARE", "SHORTEST", "LONGEST", "NARROWEST", "WIDEST")
    columns = [WordColumn("COFFERS", names)]
    heads = {"keep_square": "SQUARE", "follow_walls": "ALONG WALLS"}
    for mode in modes:
        sides = (mode.shortest, mode.longest, mode.narrowest, mode.widest)
        cells = (
            angle_text(mode.out_of_square.value),
            *(wording.length(side.value) for side in sides),
        )
        values = (
            mode.out_of_square.value.number,
            *(wording.exact(wording.rounded(side.value)) for side in sides),
        )
        columns.append(WordColumn(heads[mode.mode], cells, mode.mode.replace("_", "-"), values))
    return columns


def survey_notes(crooked: CrookedRoom | None, wording: SheetWording) -> tuple[str, ...]:
    """How the grid lies and how to check it, and how well the survey closed."""
    if crooked is None or crooked.square:
        return ()
    told = _followed_notes() if crooked.mode == "follow_walls" else _square_notes(crooked, wording)
    return (*told, *_survey_notes(crooked, wording))


def _followed_notes() -> Iterator[str]:
    yield (
        "The grid follows the walls: each wall's length is divided by itself, and each beam joins"
        " its marks at both its ends. Strings and marks are along the wall they are told for, from"
        " W1 or W4, so that they differ at both ends of a run."
    )
    yield (
        "Coffers taper: the table of their sizes has each side by the wall it lies toward, the"
        " diagonals, and the corners by the walls that their sides lie toward. Measure before"
        " cutting what goes into them."
    )


def _square_notes(crooked: CrookedRoom, wording: SheetWording) -> Iterator[str]:
    """What the grid is square to and how to check it, and what stands at the walls."""
    survey = crooked.survey
    rising, falling, grid = (
        wording.length(figure.value)
        for figure in (survey.rising, survey.falling, crooked.grid_diagonal)
    )
    what = "member " if crooked.control_by == "member" else ""
    yield (
        f"Control line: {what}{crooked.control}. The grid is square to it; to check, both diagonals"
        f" of the clear rectangle, between the innermost places of the walls, are {grid}. Those of"
        f" the room are {rising}, rising to the right on the plan, and {falling}."
    )
    yield (
        "Strings and marks are from W1 or W4 as it lies at the end they are told for. Next to the"
        " walls they show each strip's width there; its face is straight, the wall side tapers."
        " Beams that end at a wall are cut to it. The table of strips has both ends of each, the"
        " one at W4 or W1 first, and the board that holds its widest place."
    )
    if any(run.moved.value for run in crooked.runs):
        yield (
            "What the room has beyond its clear lines is shared to both ends of a run, so that"
            " strips are narrower somewhere than what is to stand there."
        )
    bare = [wall for wall in crooked.walls if wall.strip is None and wall.widest.value]
    if bare:
        most = max(wall.widest.value for wall in bare)
        names = " and ".join(wall.wall for wall in bare)
        yield (
            f"Nothing stands at {names}: the gap of up to {wording.detail(most)} there is counted"
            " with the openings beside it."
        )


def _survey_notes(crooked: CrookedRoom, wording: SheetWording) -> Iterator[str]:
    """How well the survey closed, and that there is another way to lay out."""
    survey = crooked.survey
    if survey.closing_error is not None:
        error = _finely(abs(survey.closing_error.value), wording)
        shared = any(each.adjusted.value != each.measured for each in survey.lengths)
        shared = shared or any(each.adjusted.value != each.measured for each in survey.angles)
        then = "; it was shared out as the tables show" if shared else ""
        yield f"The survey closes to {error}{then}."
    if len(crooked.modes) > 1 and crooked.mode == "keep_square":
        yield (
            "The grid is drawn square. Along the walls, with each wall's length divided by itself,"
            " coffers would be as the table says: out of square, and unlike each other."
        )
