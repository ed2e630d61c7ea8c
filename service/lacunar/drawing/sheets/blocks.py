"""The blocks beside the plan: legend as used, notes and cautions."""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass

from lacunar.drawing import style
from lacunar.drawing.annotation import (
    Block,
    ColumnSpace,
    Tag,
    headed_parts,
    paragraph_blocks,
)
from lacunar.drawing.elements import Circle, Element, Fill, Polyline, Pt, Segments
from lacunar.drawing.hatching import box_corners, diagonal_lines
from lacunar.drawing.plan.columns import column_sign
from lacunar.drawing.plan.directions import direction_of, double_arrow
from lacunar.drawing.sheets.board_notes import board_notes, tapered_notes
from lacunar.drawing.sheets.item_legend import item_entries, item_symbol
from lacunar.drawing.sheets.level_tables import level_notes
from lacunar.drawing.sheets.moulding_notes import crown_notes
from lacunar.drawing.sheets.outline_tables import outline_notes
from lacunar.drawing.sheets.plan_key import KeyEntry, key_row
from lacunar.drawing.sheets.survey_tables import survey_notes
from lacunar.drawing.typeface import Typeface
from lacunar.drawing.views.reflected_ceiling_plan.stations import cross
from lacunar.drawing.wording import SheetWording
from lacunar.layout.records import Layout
from lacunar.layout.tapering import tapered_boards_of
from lacunar.measure.length import ZERO
from lacunar.measure.units import Units
from lacunar.model.room import RunName

LISTED = 4
# More sizes than these are a list, which belongs in a table.
LISTED_SIZES = 3


@dataclass(frozen=True, slots=True)
class LegendEntry:
    """A symbol used on the sheet, drawn about a point of its row, and its meaning."""

    name: str
    meaning: str


def _entries(layout: Layout) -> tuple[LegendEntry, ...]:
    """What the plan uses, and nothing else."""
    entries = [
        LegendEntry("wall", "Wall: heavy line is the finished face; its thickness is not shown"),
        LegendEntry("wall-tag", "Wall, counted clockwise from the left"),
        LegendEntry("coffer-tag", "Coffer: row letter, column number, A1 at the datum"),
    ]
    entries.extend(_room_entries(layout))
    if layout.mouldings.crown:
        entries.append(
            LegendEntry("crown", "Crown: the line it ends at on the ceiling, its miters")
        )
    if any(beam.on is RunName.LENGTH for beam in layout.beams):
        entries.append(LegendEntry("crosswise", "Crosswise beam, on its center line"))
    if any(beam.on is RunName.WIDTH for beam in layout.beams):
        entries.append(LegendEntry("lengthwise", "Lengthwise beam, on its center line"))
    if layout.wall_beams:
        entries.append(LegendEntry("wall-beam", "Wall beam or soffit"))
    if any(beam.member for beam in layout.beams):
        entries.append(LegendEntry("member", "Structural member inside a cased beam"))
    if direction_of(layout) is not None:
        what = "Boards lie" if layout.boards else "Sheets' grain lies"
        entries.append(LegendEntry("direction", f"{what} this way, in all coffers"))
    if layout.levels is not None:
        entries.append(
            LegendEntry("station", "Station of the ceiling; one under an id is in the table alone")
        )
    entries.extend(LegendEntry(*entry) for entry in item_entries(layout))
    entries.append(LegendEntry("datum", "Datum: both runs are measured from this corner"))
    return tuple(entries)


def _room_entries(layout: Layout) -> Iterator[LegendEntry]:
    """What only some rooms have."""
    if layout.outlined is not None and layout.outlined.columns:
        yield LegendEntry("column", "Column, between its finished faces")
    crooked = layout.crooked
    if crooked is not None and not crooked.square and crooked.control_by == "wall":
        meaning = f"Control line: the grid is square to {crooked.control}"
        yield LegendEntry("control-line", meaning)


def legend(layout: Layout, column: ColumnSpace, typeface: Typeface) -> tuple[Block, ...]:
    """Symbols as used on the plan, each with its meaning."""
    rows = [_legend_row(entry, layout, column.width, typeface) for entry in _entries(layout)]
    return headed_parts("legend", "LEGEND", rows, column, Block(column.width, 0.6, ()))


def _legend_row(entry: LegendEntry, layout: Layout, width: float, typeface: Typeface) -> Block:
    def sign(middle: Pt) -> tuple[Element, ...]:
        return _symbol(entry.name, middle, layout, typeface)

    return key_row("legend", KeyEntry(entry.name, entry.meaning, sign), width, typeface)


def _symbol(name: str, middle: Pt, layout: Layout, typeface: Typeface) -> tuple[Element, ...]:
    """A legend symbol about the middle of its place, drawn as on the plan."""
    drawn = item_symbol(name, middle, layout) or _sign(name, middle, layout)
    drawn = drawn or _line_symbol(name, middle)
    return drawn or _sample_tag(name, layout).drawn(middle, typeface).children


def _line_symbol(name: str, middle: Pt) -> tuple[Element, ...]:
    """A symbol of lines as they look on the plan; nothing for others."""
    left, right = middle.x - 6.0, middle.x + 6.0
    if name == "wall":
        lines = diagonal_lines(box_corners(left, middle.y - 1.4, 12.0, 2.5), 1.8)
        face = Polyline((Pt(left, middle.y + 1.1), Pt(right, middle.y + 1.1)), style.WALL)
        return (Segments(lines, style.HATCH), face)
    if name == "control-line":
        return (Polyline((Pt(left - 1.0, middle.y), Pt(right + 1.0, middle.y)), style.CONTROL),)
    if name == "member":
        ends = tuple((Pt(left, middle.y + d), Pt(right, middle.y + d)) for d in (-0.9, 0.9))
        return tuple(Polyline(pair, style.HIDDEN) for pair in ends)
    if name == "crown":
        corner = (Pt(right, middle.y - 2.0), Pt(left, middle.y - 2.0), Pt(left, middle.y + 2.0))
        seen = tuple(spot.moved(2.0, 2.0) for spot in corner[:2])
        inner = (seen[0].moved(-2.0, 0), seen[1], seen[1].moved(0, 2.0))
        miter = Segments(((corner[1], seen[1]),), style.FINE)
        return (Polyline(corner, style.OBJECT), Polyline(inner, style.FINE), miter)
    if name == "datum":
        at = middle.moved(-2.0, 1.6)
        corner = (at.moved(0, -4.0), at, at.moved(6.0, 0))
        return (Polyline(corner, style.WALL), Circle(at, 1.6, style.LEADER, Fill.NONE))
    return ()


def _sign(name: str, middle: Pt, layout: Layout) -> tuple[Element, ...]:
    """A symbol that the plan has for one place: a cross or an arrow; nothing for others."""
    run = direction_of(layout)
    if name == "direction" and run is not None:
        return double_arrow(middle, 10.0 if run is RunName.LENGTH else 5.6, run)
    if name == "column":
        return column_sign(box_corners(middle.x - 2.2, middle.y - 2.2, 4.4, 4.4))
    return (cross(middle),) if name == "station" else ()


def _sample_tag(name: str, layout: Layout) -> Tag:
    """The first tag of its kind on the plan."""
    if name == "wall-tag":
        return Tag("sample", "", "W1", round=True)
    if name == "coffer-tag":
        ids = [coffer.id for coffer in layout.coffers]
        ids += [each.id for each in layout.outlined.partial_coffers] if layout.outlined else []
        return Tag("sample", "", ids[0])
    if name == "wall-beam":
        return Tag("sample", "", layout.wall_beams[0].id)
    run = RunName.LENGTH if name == "crosswise" else RunName.WIDTH
    return Tag("sample", "", next(beam.id for beam in layout.beams if beam.on is run))


def notes(
    layout: Layout, column: ColumnSpace, wording: SheetWording, typeface: Typeface
) -> tuple[Block, ...]:
    """What the figures mean and what was decided, as numbered sentences."""
    return paragraph_blocks("notes", "NOTES", _note_texts(layout, wording), column, typeface)


def _note_texts(layout: Layout, wording: SheetWording) -> list[str]:
    """The notes of a plan, in order of use."""
    ceiling = layout.ceiling
    step = f"{wording.step.text} in" if wording.units is Units.INCH else wording.step.text
    texts = [
        "Dimensions are to finished faces. Written dimensions govern over scaled ones.",
        f"Marks are rounded once, from the datum, to {step}. Lay out from the marks; "
        "do not add up segments.",
        "Finished beam width governs; backing is worked back from it.",
        f"Ceiling height {wording.length(ceiling.room.height)} above the finished floor.",
        *level_notes(layout.levels, wording),
        *survey_notes(layout.crooked, wording),
        *outline_notes(layout.outlined),
    ]
    texts.extend(_opening_notes(layout, wording))
    through = [beam.id for beam in layout.beams if beam.through]
    if through and len(through) < len(layout.beams):
        texts.append(f"Run through at crossings: {listed(through)}. The others are cut between.")
    texts.extend(_panel_notes(layout, wording))
    texts.extend(crown_notes(layout.mouldings, layout.ceiling.crown, wording))
    if layout.boards:
        texts.extend(board_notes(layout.boards, wording))
    texts.extend(_casing_notes(layout, wording))
    texts.extend(_measured_notes(layout, wording))
    return texts


def _measured_notes(layout: Layout, wording: SheetWording) -> Iterator[str]:
    """That coffers were measured, and where boards taper for it."""
    if layout.measured_openings is not None:
        yield (
            "The plan is dimensioned as planned. Trim, panels and boards of coffers that were"
            " measured follow the table of openings as measured; in it, R is the diagonal that"
            " rises to the right on the plan, F the one that falls."
        )
    yield from tapered_notes(tuple(tapered_boards_of(layout)), wording)


def _opening_notes(layout: Layout, wording: SheetWording) -> list[str]:
    """That coffers are equal, and how large they are before marks are rounded."""
    sizes = {(coffer.length.value, coffer.width.value) for coffer in layout.coffers}
    if len(sizes) != 1:
        return []
    length, width = sizes.pop()
    which = "All whole coffers" if layout.outlined is not None else "All coffers"
    return [
        f"{which} are equal: {wording.length(length)} x {wording.length(width)} clear. Segments"
        " between rounded marks may differ from this by one step."
    ]


def listed(ids: Sequence[str]) -> str:
    """Ids in a row; where that is long, each family by its first and last."""
    if len(ids) <= LISTED:
        return ", ".join(ids)
    families: dict[str, list[str]] = {}
    for one in ids:
        families.setdefault(one.split("-", maxsplit=1)[0], []).append(one)
    return ", ".join(
        family[0] if len(family) == 1 else f"{family[0]} to {family[-1]}"
        for family in families.values()
    )


def _panel_notes(layout: Layout, wording: SheetWording) -> list[str]:
    """One sentence a panel size: how large, in how many coffers, with how many seams."""
    texts = []
    for panel in layout.panels[:LISTED_SIZES]:
        size = f"{wording.length(panel.length.value)} x {wording.length(panel.width.value)}"
        seams = panel.seams.value
        joined = "without a seam" if not seams else f"with {seams} seam{'s' if seams > 1 else ''}"
        count = len(panel.coffers)
        texts.append(f"Panel {size}, {joined}, in {count} coffer{'s' if count > 1 else ''}.")
    more = len(layout.panels) - LISTED_SIZES
    if more > 0:
        texts.append(f"Panels of {more} more sizes: see the panel plan.")
    return texts


def _casing_notes(layout: Layout, wording: SheetWording) -> list[str]:
    """Where casings stand off their members."""
    return [
        f"Casing {beam.id} stands {wording.length(abs(beam.member.shift.value))} off the center "
        f"of {beam.member.name}, {'away from' if beam.member.shift.value > ZERO else 'towards'} "
        "the datum."
        for beam in layout.beams
        if beam.member and beam.member.shift.value
    ]


def cautions(layout: Layout, column: ColumnSpace, typeface: Typeface) -> tuple[Block, ...]:
    """The layout's cautions as numbered sentences."""
    texts = [caution.text for caution in layout.cautions]
    return paragraph_blocks("cautions", "CAUTIONS", texts, column, typeface)
