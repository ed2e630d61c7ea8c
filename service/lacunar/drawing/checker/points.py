"""The catalog of points, and the check of a set of sheets against all of them.

A point's number stands on every finding and keeps its meaning: new points take new numbers.
"""

from collections.abc import Callable, Iterator, Mapping, Sequence
from dataclasses import dataclass

from lacunar.drawing.checker import (
    columns,
    crooked_rooms,
    crown_lines,
    directions,
    document,
    figures,
    geometry,
    items,
    joists,
    labels,
    leaders,
    legends,
    legibility,
    mock_ups,
    odd_rooms,
    openings_table,
    placement,
    poles,
    profiles,
    scales,
    setting_out,
    tables,
    title_blocks,
    wall_features,
)
from lacunar.drawing.checker.facts import read_facts
from lacunar.drawing.checker.reading import NotASheet, read_sheet
from lacunar.drawing.checker.records import Finding
from lacunar.drawing.checker.subject import Subject
from lacunar.drawing.typeface import Typeface


@dataclass(frozen=True, slots=True)
class Point:
    """One point: its number, what holds where it is kept, and the check of one sheet."""

    number: int
    title: str
    check: Callable[[Subject], Iterator[Finding]]


@dataclass(frozen=True, slots=True)
class SetPoint:
    """A point that one sheet need not keep alone, but a set of sheets must."""

    number: int
    title: str
    check: Callable[[Sequence[Subject]], Iterator[Finding]]


UNREADABLE = 61
EVERY_SET = ""

POINTS = (
    Point(9, "Each string is a chain and sums to its overall as printed", figures.strings_sum_up),
    Point(10, "The overall is the finished span", figures.overall_is_span),
    Point(11, "Marks table, layout marks and segments agree", figures.marks_agree),
    Point(12, "Each run has its strings, to both faces of every beam", figures.faces_from_datum),
    Point(13, "Each string goes from wall to wall", figures.strings_wall_to_wall),
    Point(14, "Each coffer bears its id", labels.coffers_labelled),
    Point(15, "Each beam, member and wall bears its id", labels.parts_labelled),
    Point(16, "The plan lies as it is laid out, never flipped", geometry.plan_as_laid_out),
    Point(18, "Dimension lines are as long as they say", scales.dimensions_to_scale),
    Point(19, "Each view's scale is stated and its bar is true", scales.scale_bars_true),
    Point(20, "The page has the size of its paper", scales.page_of_named_size),
    Point(31, "Capitals are at least 2.5 mm tall", legibility.capitals_tall_enough),
    Point(32, "Lines are at least 0.18 mm wide, of a listed width", legibility.lines_wide_enough),
    Point(33, "No text lies on another", legibility.texts_apart),
    Point(34, "No line crosses a text", legibility.texts_clear_of_lines),
    Point(35, "All is in the frame, the title block to itself", placement.everything_in_its_place),
    Point(36, "Figures fit their lines or are led out", placement.figures_fit),
    Point(37, "Dimension lines keep their distance", placement.dimension_lines_apart),
    Point(38, "Only listed pens and dashes are used", legibility.pens_as_listed),
    Point(39, "Dimension figures are of one height", legibility.one_dimension_height),
    Point(40, "Text is read from the bottom or the right", legibility.texts_upright_or_turned),
    Point(41, "Leaders cross neither leaders nor dimension lines", leaders.leaders_apart),
    Point(43, "Lines and letters are black", legibility.ink_is_black),
    Point(67, "Arrows lie as boards or grain do", directions.arrows_as_laid_out),
    Point(68, "Crown ends where it is laid out", crown_lines.crown_as_laid_out),
    Point(75, "Ceiling items are drawn where they are laid out", items.items_as_laid_out),
    Point(76, "Wall features are drawn in their walls", wall_features.features_as_laid_out),
    Point(77, "Ids of items stand by them", items.items_named),
    Point(79, "The walls close about the layout's outline", crooked_rooms.outline_as_laid_out),
    Point(80, "Strips taper as laid out", crooked_rooms.tapers_as_laid_out),
    Point(81, "Unlike ends of a run are both dimensioned", crooked_rooms.both_ends_dimensioned),
    Point(82, "The control line lies along its wall", crooked_rooms.control_line_drawn),
    Point(84, "Each tag's leader begins at its outline", leaders.leaders_begin_at_tags),
    Point(90, "Columns are drawn where they are laid out", columns.columns_as_laid_out),
    Point(91, "Crown goes round cut coffers as laid out", odd_rooms.cut_crown_as_laid_out),
    Point(11, "Running dimensions are the marks at both ends", setting_out.running_as_marked),
    Point(17, "Diagonals and right angle are true", setting_out.checks_add_up),
    Point(93, "Lines to be snapped go through their marks", setting_out.lines_as_marked),
    Point(21, "A profile's parts add up to its width and drop", profiles.parts_sum_up),
    Point(42, "Parts that touch are hatched unlike", profiles.hatches_differ),
    Point(141, "A profile's boards are drawn as large as laid out", profiles.boards_as_large),
    Point(UNREADABLE, "All can be read, ids are unique", document.readable_and_named),
)

SET_POINTS: Mapping[str, tuple[SetPoint, ...]] = {
    EVERY_SET: (
        SetPoint(4, "Every field of the title block is as put in", title_blocks.fields_filled),
    ),
    "Z-101": (
        SetPoint(5, "The legend explains what the plan has, and no more", legends.legend_as_used),
        SetPoint(78, "The joist arrow lies as joists do", joists.joists_shown),
        SetPoint(12, "The set's tables list every face and center", tables.every_face_listed),
        SetPoint(12, "The set has one plan, with its strings", tables.plan_in_set),
        SetPoint(75, "The set lists and explains every ceiling item", items.items_listed),
        SetPoint(76, "The set lists every wall feature", wall_features.features_listed),
        SetPoint(83, "The set lists strips, survey and both ways", crooked_rooms.survey_listed),
        SetPoint(85, "The set lists coffers along the walls", crooked_rooms.coffer_sizes_listed),
        SetPoint(92, "The set lists walls, cut coffers and columns", odd_rooms.odd_rooms_listed),
        SetPoint(74, "The set lists every opening as measured", openings_table.openings_listed),
    ),
    "Z-501": (
        SetPoint(49, "Each balloon is in the list of parts and back", profiles.parts_listed),
        SetPoint(140, "Each profile is drawn, or said to be left out", profiles.profiles_drawn),
        SetPoint(142, "The list of parts tells sizes as laid out", profiles.sizes_listed),
    ),
    "Z-701": (
        SetPoint(26, "Tables of poles list what is marked", poles.tables_as_marked),
        SetPoint(27, "Strips of poles are whole, at full size, as marked", poles.strips_as_marked),
    ),
    "Z-702": (
        SetPoint(143, "Strips of a mock-up are as laid out, and whole", mock_ups.strips_as_wide),
    ),
}
"""Points by the sheet that a set must have for them to hold."""


def check_set(
    svgs: Sequence[str], layout: Mapping[str, object], typeface: Typeface
) -> tuple[Finding, ...]:
    """What is wrong with a set of sheets: with each by itself, and with all together.

    Parameters: the SVG text of each sheet, the layout's JSON, and the widths of the letters.
    Errors: `UnexpectedJson` where the layout's JSON is not one.
    """
    facts = read_facts(layout)
    findings: list[Finding] = []
    subjects: list[Subject] = []
    for svg in svgs:
        try:
            subjects.append(Subject(read_sheet(svg, typeface), facts, typeface))
        except NotASheet as error:
            findings.append(Finding(UNREADABLE, "", "", str(error)))
    for subject in subjects:
        findings.extend(check_sheet(subject))
    # A layout without its spec does not tell which sheets it is drawn on: then on all.
    held = (EVERY_SET, *facts.issued) if facts.issued else tuple(SET_POINTS)
    for point in (point for sheet in held if subjects for point in SET_POINTS.get(sheet, ())):
        findings.extend(point.check(subjects))
    return tuple(findings)


def check_sheet(subject: Subject) -> tuple[Finding, ...]:
    """What is wrong with one sheet by itself, point by point."""
    return tuple(finding for point in POINTS for finding in point.check(subject))
