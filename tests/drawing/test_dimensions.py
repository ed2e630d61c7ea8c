"""Where the figures of a dimension string stand."""

from hypothesis import given
from hypothesis import strategies as st

from lacunar.drawing import style
from lacunar.drawing.dimensions import (
    LIFT,
    Axis,
    Segment,
    Stop,
    String,
    StringsDoNotFit,
    drawn_string,
    figure_places,
    place_strings,
)
from lacunar.drawing.elements import Face, Polyline, Text, walk
from lacunar.drawing.typeface import Typeface
from lacunar.measure.length import ZERO

# Every letter half an em wide, so that widths can be worked out by hand: a figure of n letters at
# 2.5 mm capitals and a capital height of 0.7 em is n * 0.5 * 2.5 / 0.7 mm wide.
EVEN = Typeface(
    family={face: face.value for face in Face},
    advances={face: dict.fromkeys("0123456789'\"-/ ", 0.5) for face in Face},
    cap_height=0.7,
    descent=0.2,
    digest="",
)


def string_of(*widths, text="12'-6\"", name="openings"):
    at, segments = 0.0, []
    for width in widths:
        start, end = Stop("a", at, ZERO, ZERO), Stop("b", at + width, ZERO, ZERO)
        segments.append(Segment(start, end, text, "", ""))
        at += width
    return String("length", name, tuple(segments))


def boxes_of(string):
    """Each figure's extent along the string and away from it [mm]."""
    for segment, place in zip(string.segments, figure_places(string, EVEN), strict=True):
        half = EVEN.width(segment.text, style.TEXT) / 2
        yield place.middle - half, place.middle + half, place.level


def test_a_figure_that_fits_stands_between_its_ticks():
    places = figure_places(string_of(40, 40), EVEN)
    assert [(p.middle, p.level, p.led_out) for p in places] == [(20, 0, False), (60, 0, False)]


def test_a_narrow_beam_between_two_openings_is_led_out_above_them():
    places = figure_places(string_of(40, 3, 40), EVEN)
    assert [p.level for p in places] == [0, 1, 0]
    assert places[1].led_out


def test_narrow_end_segments_carry_their_figures_outside_the_string():
    first, _, last = figure_places(string_of(2, 60, 2), EVEN)
    assert first.outside
    assert first.middle < 0
    assert last.outside
    assert last.middle > 64


def test_strings_stand_at_least_ten_from_the_object_and_six_apart():
    placed = place_strings([string_of(40, 3, 40), string_of(83, name="overall")], EVEN)
    assert placed[0].offset >= 10
    assert placed[1].offset - placed[0].offset >= 6


widths = st.lists(st.floats(1.5, 60), min_size=1, max_size=25)


@given(widths)
def test_no_two_figures_of_a_string_ever_meet(widths):
    try:
        boxes = list(boxes_of(string_of(*widths)))
    except StringsDoNotFit:
        return
    for n, (left, right, level) in enumerate(boxes):
        for other_left, other_right, other_level in boxes[n + 1 :]:
            assert level != other_level or right <= other_left or other_right <= left


@given(widths)
def test_no_leader_ever_meets_a_figure(widths):
    string = string_of(*widths)
    try:
        placed = place_strings([string], EVEN)[0]
    except StringsDoNotFit:
        return
    group = drawn_string(placed, Axis("x", 0.0, 0.0), 2.0)
    leaders = [
        e
        for e in walk((group,))
        if isinstance(e, Polyline) and e.pen is style.LEADER and e.points[0].x == e.points[1].x
    ]
    figures = [e for e in walk((group,)) if isinstance(e, Text)]
    for leader in leaders:
        x, top, bottom = leader.points[0].x, leader.points[1].y, leader.points[0].y
        for figure in figures:
            half = EVEN.width(figure.text, style.TEXT) / 2
            beside = not figure.at.x - half < x < figure.at.x + half
            above = figure.at.y <= top
            below = figure.at.y - style.TEXT >= bottom
            assert beside or above or below


def test_the_next_string_clears_lifted_figures():
    inner, outer = place_strings([string_of(40, 3, 40), string_of(83, name="overall")], EVEN)
    assert outer.offset > inner.offset + style.TEXT_ABOVE_LINE + LIFT + style.TEXT


def test_a_vertical_string_runs_up_the_sheet_and_reads_from_the_right():
    placed = place_strings([string_of(30, 30)], EVEN)[0]
    group = drawn_string(placed, Axis("y", 100.0, -200.0), 2.0)
    lines = [e for e in walk((group,)) if isinstance(e, Polyline)]
    assert [p.y for p in lines[0].points] == [200.0, 170.0]
    assert lines[0].points[0].x == 100.0 - placed.offset
    assert all(e.turned for e in walk((group,)) if isinstance(e, Text))
