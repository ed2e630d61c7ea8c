"""The catalog of points, and the check of a set of sheets against all of them.

A point's number stands on every finding and keeps its meaning: new points take new numbers.
"""

from collections.abc import Callable, Iterator, Mapping, Sequence
from dataclasses import dataclass

from lacunar.drawing.checker import (
    backing_plans,
    columns,
    contrast,
    covers,
    crooked_rooms,
    crossings,
    crown_frames,
    crown_lines,
    cut_lists,
    cutting_diagrams,
    directions,
    document,
    figure_forms,
    figures,
    geometry,
    headroom,
    identities,
    items,
    joists,
    labels,
    laser_lines,
    leaders,
    legends,
    legibility,
    members,
    mock_ups,
    odd_rooms,
    openings_table,
    origin,
    panel_plans,
    pictorials,
    placement,
    poles,
    profiles,
    references,
    saw_pictures,
    scales,
    second_units,
    setting_out,
    tables,
    title_blocks,
    upright_views,
    wall_features,
)
from lacunar.drawing.checker.facts import read_facts
from lacunar.drawing.checker.list_facts import read_lists
from lacunar.drawing.checker.reading import NotASheet, read_sheet
from lacunar.drawing.checker.records import Finding
from lacunar.drawing.checker.reducing import as_composed
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
EVERY_SET, PLAN = "", "Z-101"

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
    Point(46, "Figures are written as a tape is read", figure_forms.figures_well_formed),
    Point(47, "Figures in second units are of one length", second_units.both_figures_agree),
    Point(43, "Areas are gray, and light enough for lines", contrast.areas_in_light_grays),
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
    Point(94, "A laser's lines stand off their walls as told", laser_lines.lasers_as_told),
    Point(93, "Lines to be snapped go through their marks", setting_out.lines_as_marked),
    Point(28, "Nothing is fixed in an item's zone unseen", backing_plans.zones_kept_out),
    Point(120, "Joists are drawn at their places", backing_plans.joists_at_their_places),
    Point(121, "Backing stands at its offset", backing_plans.backing_at_its_offset),
    Point(122, "Backing is dimensioned from the start wall", backing_plans.backing_dimensioned),
    Point(124, "Seams and joints lie as laid out", panel_plans.joints_as_laid_out),
    Point(126, "Each coffer bears its id on the panel plan", panel_plans.coffers_named),
    Point(127, "Boards start where it is shown", panel_plans.starts_shown),
    Point(128, "Sizes marked once are counted", panel_plans.sizes_counted),
    Point(130, "What is cut and seen lies as laid out", upright_views.cuts_as_laid_out),
    Point(
        131, "Heights are the layout's, walls as long as they are", upright_views.heights_as_stacked
    ),
    Point(132, "Wall features are in their elevations", upright_views.features_in_walls),
    Point(133, "Running marks over walls are the layout's", upright_views.marks_on_walls),
    Point(135, "Sections are cut where the plan marks them", references.sections_marked),
    Point(21, "A profile's parts add up to its width and drop", profiles.parts_sum_up),
    Point(42, "Parts that touch are hatched unlike", profiles.hatches_differ),
    Point(141, "A profile's boards are drawn as large as laid out", profiles.boards_as_large),
    Point(151, "Boards at crossings lie and end as laid out", crossings.boards_as_laid_out),
    Point(153, "Crown frames are drawn as they are laid out", crown_frames.frames_to_scale),
    Point(154, "Pieces lie on the saw as laid out", saw_pictures.pictures_as_laid_out),
    Point(110, "Lines of pictures lie on edges as laid out", pictorials.edges_as_laid_out),
    Point(62, "Ids and labels are those of the layout", identities.ids_as_in_layout),
    Point(170, "Sizes stated in data are those of the layout", identities.sizes_as_in_layout),
    Point(66, "The file gives nothing away and loads nothing", origin.nothing_given_away),
    Point(UNREADABLE, "All can be read, ids are unique", document.readable_and_named),
)

SET_POINTS: Mapping[str, tuple[SetPoint, ...]] = {
    EVERY_SET: (
        SetPoint(7, "Units and projection are told where views are", title_blocks.views_explained),
        SetPoint(4, "Every field of the title block is as put in", title_blocks.fields_filled),
        SetPoint(2, "All sheets are of one revision and one input", covers.same_on_all),
        SetPoint(3, "All sheets are of one paper", covers.one_page_size),
    ),
    "Z-001": (
        SetPoint(1, "The index lists the sheets as they are", covers.index_as_issued),
        SetPoint(111, "The cover tells the ceiling as laid out", covers.data_as_laid_out),
        SetPoint(112, "The key plan is whole and named", covers.key_plan_whole),
    ),
    PLAN: (
        SetPoint(6, "References hit their views, details are called", references.references_hit),
        SetPoint(5, "The legend explains what the plan has, and no more", legends.legend_as_used),
        SetPoint(78, "The joist arrow lies as joists do", joists.joists_shown),
        SetPoint(12, "The set's tables list every face and center", tables.every_face_listed),
        SetPoint(12, "The set has one plan, with its strings", tables.plan_in_set),
        SetPoint(29, "Each member is shown with what is built about it", members.members_cased),
        SetPoint(75, "The set lists and explains every ceiling item", items.items_listed),
        SetPoint(76, "The set lists every wall feature", wall_features.features_listed),
        SetPoint(83, "The set lists strips, survey and both ways", crooked_rooms.survey_listed),
        SetPoint(85, "The set lists coffers along the walls", crooked_rooms.coffer_sizes_listed),
        SetPoint(92, "The set lists walls, cut coffers and columns", odd_rooms.odd_rooms_listed),
        SetPoint(74, "The set lists every opening as measured", openings_table.openings_listed),
    ),
    "Z-103": (
        SetPoint(78, "So it does by the backing plan", joists.joists_shown_with_backing),
        SetPoint(123, "Tables tell backing as laid out", backing_plans.tables_tell_backing),
    ),
    "Z-104": (
        SetPoint(22, "Rips and covers fill each opening", panel_plans.rips_add_up),
        SetPoint(125, "Tables tell panels and boards", panel_plans.tables_tell_panels),
    ),
    "Z-201": (SetPoint(134, "Every wall has its elevation", upright_views.all_walls_seen),),
    "Z-301": (
        SetPoint(23, "Headroom is what is built leaves", headroom.headroom_as_built),
        SetPoint(134, "Each run has its section", upright_views.both_runs_cut),
        SetPoint(135, "Sections are cut where the plan marks them", references.marks_as_cut),
    ),
    "Z-501": (
        SetPoint(49, "Each balloon is in the list of parts and back", profiles.parts_listed),
        SetPoint(140, "Each profile is drawn, or said to be left out", profiles.profiles_drawn),
        SetPoint(142, "The list of parts tells sizes as laid out", profiles.sizes_listed),
    ),
    "Z-502": (SetPoint(150, "Every crossing is drawn and counted", crossings.crossings_drawn),),
    "Z-503": (
        SetPoint(24, "Saw angles match spring and corner", crown_frames.saw_matches_spring),
        SetPoint(24, "Long points are openings less their fit", crown_frames.long_points_fit),
        SetPoint(152, "The set lists every length of crown", crown_frames.lengths_listed),
    ),
    "Z-601": (
        SetPoint(50, "The cut list has each part, and as many of it", cut_lists.parts_listed),
        SetPoint(53, "The cut list is the take-off's JSON", cut_lists.parts_as_taken_off),
        SetPoint(54, "Parts that are the same have one mark", cut_lists.one_mark_each),
    ),
    "Z-602": (
        SetPoint(25, "What is longer than its stock is joined", cut_lists.joints_told),
        SetPoint(51, "What is drawn is the cut list", cutting_diagrams.pieces_as_listed),
        SetPoint(51, "Pieces lie a saw cut apart on their stock", cutting_diagrams.pieces_clear),
        SetPoint(160, "Sticks and sheets are to scale", cutting_diagrams.drawn_to_scale),
        SetPoint(161, "What is drawn is what is bought", cutting_diagrams.stock_as_bought),
        SetPoint(162, "Panels lie with the grain", cutting_diagrams.grain_as_asked),
        SetPoint(163, "Why nothing is planned is told", cut_lists.refusal_told),
    ),
    "Z-603": (
        SetPoint(52, "What is bought is enough", cut_lists.enough_bought),
        SetPoint(53, "The material list is its JSON", cut_lists.lines_as_planned),
        SetPoint(163, "Why nothing is planned is told", cut_lists.refusal_told),
    ),
    "Z-701": (
        SetPoint(26, "Tables of poles list what is marked", poles.tables_as_marked),
        SetPoint(27, "Strips of poles are whole, at full size, as marked", poles.strips_as_marked),
    ),
    "Z-702": (
        SetPoint(143, "Strips of a mock-up are as laid out, and whole", mock_ups.strips_as_wide),
    ),
    "Z-901": (SetPoint(113, "The exploded corner has its steps", covers.steps_as_laid_out),),
}
"""Points by the sheet that a set must have for them to hold."""


def check_set(
    svgs: Sequence[str],
    layout: Mapping[str, object],
    typeface: Typeface,
    lists: Mapping[str, object] | None = None,
) -> tuple[Finding, ...]:
    """What is wrong with a set of sheets: with each by itself, and with all together.

    Parameters: the SVG text of each sheet, the layout's JSON, the widths of the letters, and where
    sheets tell of parts and stock the JSON of the `take_off`, and of the `materials` or None.
    Errors: `UnexpectedJson` where any JSON is not what it should be.
    """
    facts = read_facts(layout)
    listed = None if lists is None else read_lists(lists, layout)
    findings: list[Finding] = []
    subjects: list[Subject] = []
    for svg in svgs:
        try:
            subjects.append(
                Subject(as_composed(read_sheet(svg, typeface)), facts, typeface, listed)
            )
        except NotASheet as error:
            findings.append(Finding(UNREADABLE, "", "", str(error)))
    for subject in subjects:
        findings.extend(check_sheet(subject))
    # A layout without its spec does not tell which sheets it is drawn on: then on a plan.
    held = (EVERY_SET, *(facts.issued or (PLAN,)))
    for point in (point for sheet in held if subjects for point in SET_POINTS.get(sheet, ())):
        findings.extend(point.check(subjects))
    return tuple(findings)


def check_sheet(subject: Subject) -> tuple[Finding, ...]:
    """What is wrong with one sheet by itself, point by point."""
    return tuple(finding for point in POINTS for finding in point.check(subject))
