"""Laws of boards: whatever is to be filled, it is filled exactly, and with equal edges."""

from fractions import Fraction
from itertools import pairwise

from hypothesis import given, settings
from hypothesis import strategies as st

from lacunar.layout.panels.courses import lay_courses
from lacunar.layout.panels.seams import lay_sheets
from lacunar.layout.panels.sheet_rips import strips_from, widest_strip
from lacunar.measure.figure import given as as_given
from lacunar.measure.length import Length
from lacunar.measure.units import Units
from lacunar.model.assuming import Assuming
from lacunar.model.boards import CenteredOn
from lacunar.model.defaults import DEFAULTS
from lacunar.model.panel import Panel, SeamPlaces, SheetSize
from lacunar.model.panel_assumptions import decide_panel
from lacunar.model.room import RunName
from lacunar.model.spec import PanelSpec
from tests.rule_evaluation import contradictions

inch = Length.of_inches
LENGTHS = st.builds(Fraction, st.integers(1, 20_000), st.sampled_from([1, 3, 7, 16, 64])).map(inch)
COVERS = st.builds(Fraction, st.integers(8, 200), st.sampled_from([3, 8, 16])).map(inch)
CENTERS = st.sampled_from([None, *CenteredOn])


@given(across=LENGTHS, cover=COVERS, centered_on=CENTERS)
def test_law_edges_and_covers_fill_the_opening_exactly(
    across: Length, cover: Length, centered_on: CenteredOn | None
):
    laid = lay_courses(as_given(across), cover, inch(Fraction(1, 4)), centered_on)
    count, edge = laid.courses.value, laid.edge.value
    if count == 1:
        assert edge == across
        assert laid.first_rip.value == laid.last_rip.value == across
    else:
        assert edge * 2 + cover * (count - 2) == across
        assert laid.first_rip.value == edge + inch(Fraction(1, 4))
        assert laid.last_rip.value == edge
    assert inch(0) < edge <= cover


@given(across=LENGTHS, cover=COVERS)
def test_law_edge_boards_are_over_half_a_cover_and_no_board_is_spared(
    across: Length, cover: Length
):
    laid = lay_courses(as_given(across), cover, inch(0), None)
    count = laid.courses.value
    assert cover * (count - 1) < across <= cover * count
    if count > 1:
        assert cover / 2 < laid.edge.value <= cover


@given(across=LENGTHS, cover=COVERS, centered_on=st.sampled_from(CenteredOn))
def test_law_what_was_asked_for_lies_on_the_middle_line(
    across: Length, cover: Length, centered_on: CenteredOn
):
    laid = lay_courses(as_given(across), cover, inch(0), centered_on)
    assert laid.centered_on is centered_on
    # The middle is a joint if a whole number of boards lies on each side of it.
    half_way = laid.edge.value + cover * (Fraction(laid.courses.value - 2) / 2)
    steps = (across / 2 - laid.edge.value) / cover
    assert half_way == across / 2 or laid.courses.value == 1
    if laid.courses.value > 1:
        on_joint = steps.denominator == 1
        assert on_joint is (centered_on is CenteredOn.JOINT)


@given(across=LENGTHS, cover=COVERS, centered_on=CENTERS)
def test_law_every_figure_of_courses_is_what_its_rule_gives(
    across: Length, cover: Length, centered_on: CenteredOn | None
):
    laid = lay_courses(as_given(across), cover, inch(1), centered_on)
    figures = (laid.courses, laid.edge, laid.first_rip, laid.last_rip)
    assert [line for figure in figures for line in contradictions(figure)] == []


@given(
    sheet=COVERS.map(lambda cover: cover * 6),
    strip=COVERS,
    kerf=st.integers(0, 4).map(lambda n: inch(Fraction(n, 16))),
)
def test_law_strips_and_their_kerfs_fit_the_sheet_and_one_more_does_not(
    sheet: Length, strip: Length, kerf: Length
):
    count = strips_from(sheet, strip, kerf).value
    if count:
        assert strip * count + kerf * (count - 1) <= sheet
    assert strip * (count + 1) + kerf * count > sheet
    widest = widest_strip(sheet, count + 1, kerf)
    assert widest.value * (count + 1) + kerf * count == sheet
    assert widest.value < strip
    assert contradictions(widest) == []


def sheeted(places: SeamPlaces, grain: RunName | None) -> Panel:
    said = PanelSpec(sheet=SheetSize(inch(48), inch(96)), seams=places, grain=grain)
    return decide_panel(said, RunName.LENGTH, DEFAULTS[Units.INCH], Assuming())


@settings(max_examples=60)
@given(
    size=st.tuples(LENGTHS, LENGTHS),
    places=st.sampled_from(SeamPlaces),
    grain=st.sampled_from([None, *RunName]),
)
def test_law_as_many_seams_are_placed_as_are_counted_and_no_piece_exceeds_the_sheet(
    size: tuple[Length, Length], places: SeamPlaces, grain: RunName | None
):
    lay = lay_sheets(size, sheeted(places, grain))
    assert len(lay.along_length) + len(lay.along_width) == lay.seams.value
    edges = (inch(96), inch(48)) if lay.long_edge is RunName.LENGTH else (inch(48), inch(96))
    for whole, edge, seams in zip(size, edges, (lay.along_length, lay.along_width), strict=True):
        stops = [inch(0), *(seam.value for seam in seams), whole]
        pieces = [far - near for near, far in pairwise(stops)]
        assert all(inch(0) < piece <= edge for piece in pieces)
        if places is SeamPlaces.EQUAL:
            assert len(set(pieces)) == 1
        assert [line for seam in seams for line in contradictions(seam)] == []
    if grain is not None:
        assert lay.long_edge is grain
    assert contradictions(lay.seams) == []
