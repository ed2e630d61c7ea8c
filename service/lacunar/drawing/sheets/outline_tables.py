"""Tables and notes of a room with other than four walls: its walls, and the coffers they cut."""

from collections.abc import Iterator

from lacunar.drawing.annotation import Block
from lacunar.drawing.sheets.survey_tables import bow_in_words
from lacunar.drawing.sheets.word_tables import TableSpace, WordColumn, in_blocks
from lacunar.drawing.wording import SheetWording
from lacunar.layout.names import first_few
from lacunar.layout.outline_records import OutlinedRoom, PartialCoffer, PartialSide
from lacunar.layout.records import Layout
from lacunar.measure.angle import Angle
from lacunar.measure.figure import LengthFigure
from lacunar.measure.length import ZERO

SQUARE = Angle.of_degrees(90)
_ENDS = {"mitred": "M", "coped": "C", "square": "S"}


def outline_tables(layout: Layout, space: TableSpace, wording: SheetWording) -> tuple[Block, ...]:
    """Walls, cut coffers and their corners; nothing in a room with four walls."""
    room = layout.outlined
    if room is None:
        return ()
    tables = [("outline-wall", "outline-walls", "WALLS", _walls(room, wording))]
    if room.partial_coffers:
        sides = [(coffer, side) for coffer in room.partial_coffers for side in coffer.all_sides]
        tables.append(("cut-side", "cut-sides", _cut_title(room), _sides(sides, wording)))
    if room.columns:
        tables.append(("column", "columns", "COLUMNS", _columns(room, wording)))
    if room.corners:
        tables.append(("cut-corner", "cut-corners", "CROWN AT THEIR CORNERS", _corners(room)))
    if room.angled_beams:
        columns = _angled(room, wording)
        tables.append(("angled-board", "angled-boards", "BOARDS AT ANGLED WALLS", columns))
    return tuple(block for table in tables for block in in_blocks(*table, space))


def _cut_title(room: OutlinedRoom) -> str:
    return "COFFERS CUT BY WALLS OR COLUMNS" if room.columns else "COFFERS CUT BY WALLS"


def _columns(room: OutlinedRoom, wording: SheetWording) -> list[WordColumn]:
    """Each column by its outermost faces, from the datum."""
    columns = room.columns
    return [
        WordColumn("COLUMN", tuple(column.name for column in columns)),
        *(
            _lengths(what.upper(), what, [getattr(each, what) for each in columns], wording)
            for what in ("left", "right", "lower", "upper")
        ),
    ]


def _walls(room: OutlinedRoom, wording: SheetWording) -> list[WordColumn]:
    """Each side of the room: how long it is, where it stands, the corner at its end."""
    walls = room.walls
    columns = [
        WordColumn("WALL", tuple(wall.wall for wall in walls)),
        _lengths("LENGTH", "length", [wall.length for wall in walls], wording),
        _lengths("AT", "at", [wall.at for wall in walls], wording),
        _lengths("FACE", "face", [wall.face for wall in walls], wording),
        WordColumn("CORNER", tuple(wall.corner.value.tenths for wall in walls)),
    ]
    if any(wall.taper is not None and wall.taper.value > ZERO for wall in walls):
        columns.append(_lengths("TAPER", "taper", [wall.taper for wall in walls], wording))
    if any(wall.bow for wall in walls):
        columns.append(WordColumn("BOW", tuple(bow_in_words(wall.bow, wording) for wall in walls)))
    return columns


def _lengths(
    head: str, name: str, figures: list[LengthFigure | None], wording: SheetWording
) -> WordColumn:
    """Lengths as they are marked; a dash where there is none."""
    return WordColumn(
        head,
        tuple(wording.length(figure.value) if figure else "-" for figure in figures),
        name,
        tuple(wording.exact(wording.rounded(f.value)) if f else "" for f in figures),
    )


def _sides(
    sides: list[tuple[PartialCoffer, PartialSide]], wording: SheetWording
) -> list[WordColumn]:
    """Each side of a cut coffer, counter-clockwise: what it lies against, and its crown."""
    columns = [
        WordColumn("SIDE", tuple(f"{coffer.id} {side.against}" for coffer, side in sides)),
        _lengths("LENGTH", "length", [side.length for _, side in sides], wording),
    ]
    if any(side.long_point is not None for _, side in sides):
        crown = [side.long_point for _, side in sides]
        columns.append(_lengths("CROWN", "crown", crown, wording))
        columns.append(WordColumn("ENDS", tuple(_ends(side) for _, side in sides)))
    elif any(_is_odd(side) for _, side in sides):
        columns.append(WordColumn("CORNER", tuple(side.corner.value.tenths for _, side in sides)))
    return columns


def _is_odd(side: PartialSide) -> bool:
    return side.corner.value != SQUARE


def _ends(side: PartialSide) -> str:
    """How the crown's ends are cut, left and right, and the corner at the left one if not square.

    A star where the piece is too short for the saw.
    """
    if side.left_end is None or side.right_end is None:
        return "-"
    cuts = _ENDS[side.left_end] + _ENDS[side.right_end] + ("*" if side.too_short else "")
    return f"{cuts} {side.corner.value.tenths}" if _is_odd(side) else cuts


def _corners(room: OutlinedRoom) -> list[WordColumn]:
    corners = room.corners
    settings = [corner.settings for corner in corners]
    return [
        WordColumn("CORNER", tuple(corner.corner.value.tenths for corner in corners)),
        WordColumn("JOINT", tuple(corner.joint.value.upper() for corner in corners)),
        WordColumn("NESTED", tuple(each.nested_miter.value.tenths for each in settings)),
        WordColumn("MITER", tuple(each.flat_miter.value.tenths for each in settings)),
        WordColumn("BEVEL", tuple(each.flat_bevel.value.tenths for each in settings)),
    ]


def _angled(room: OutlinedRoom, wording: SheetWording) -> list[WordColumn]:
    """Sides and bottoms of beams at angled walls, between their long points."""
    beams = room.angled_beams
    return [
        WordColumn("BEAM", tuple(beam.id for beam in beams)),
        _lengths("SIDE", "side", [beam.side_long for beam in beams], wording),
        _lengths("BOTTOM", "bottom", [beam.bottom_long for beam in beams], wording),
        WordColumn(
            "MITERS",
            tuple(
                f"{beam.start_miter.value.tenths} {beam.end_miter.value.tenths}" for beam in beams
            ),
        ),
    ]


def outline_notes(room: OutlinedRoom | None) -> Iterator[str]:
    """What the plan does not say by itself of a room with other than four walls."""
    if room is None:
        return
    yield (
        "Walls beyond W1 to W4 follow clockwise. AT is a wall's place along the run across it, from"
        " the datum, FACE that of what stands there; CORNER is the angle in the room at its end."
    )
    if room.partial_coffers:
        ids = first_few([coffer.id for coffer in room.partial_coffers], "coffers")
        yield (
            f"Cut by {'walls or columns' if room.columns else 'walls'}: {ids}. Their sides are"
            " listed counter-clockwise, about columns clockwise, crown between its"
            " points on the beam; ends, left and right, facing the side: M mitred, C coped, S"
            " square, * shorter than the shortest piece, and the angle of the corner to the left"
            " where that is not square."
        )
    if room.columns:
        yield (
            "Columns stand where their table says, by their outermost faces: LEFT and RIGHT along"
            " the length, LOWER and UPPER along the width, from the datum."
        )
    inside = [each for each in room.columns if each.stands_in]
    held = "; ".join(f"{each.name} in {', '.join(each.stands_in)}" for each in inside)
    if held:
        yield f"Beams go on about columns that stand in them: {held}."
    if room.beams_left_out:
        yield f"Beams of the grid that stand nowhere in the room: {', '.join(room.beams_left_out)}."
    crooked = [wall for wall in room.walls if wall.taper is not None and wall.taper.value > ZERO]
    if crooked:
        names = ", ".join(dict.fromkeys(wall.wall for wall in crooked))
        yield f"Taken at their innermost places: {names}. What stands there tapers to the wall."
    bowed = ", ".join(dict.fromkeys(wall.wall for wall in room.walls if wall.bow))
    if bowed:
        yield (
            f"BOW is how far the middle of {bowed} stands in or out of the room; the plan shows the"
            " walls straight. Scribe what stands there."
        )
