"""Words on the sheet."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from lacunar.drawing import style
from lacunar.drawing.annotation import fitted, wrapped
from lacunar.drawing.elements import Face
from lacunar.drawing.hatching import box_corners, diagonal_lines
from tests.drawing.test_dimensions import EVEN

words = st.text(alphabet="0123456789 ", max_size=120)


@given(words, st.floats(6, 60))
def test_wrapped_lines_fit_and_lose_no_letter(text, width):
    lines = wrapped(text, width, EVEN)
    assert all(EVEN.width(line, style.TEXT) <= width for line in lines)
    assert "".join("".join(lines).split()) == "".join(text.split())


def test_digits_that_a_thin_space_parts_stay_on_one_line():
    for width in range(20, 60):
        lines = wrapped("those of the room are 21\N{THIN SPACE}753 and so on", float(width), EVEN)
        assert any("21\N{THIN SPACE}753" in line for line in lines), lines


@pytest.mark.parametrize("width", range(12, 80))
def test_a_whole_number_and_its_fraction_stay_on_one_line(width):
    lines = wrapped('BACKING 10 1/2" x 7 3/4", 12 OF 3 1/4"', float(width), EVEN)
    for figure in ('10 1/2"', '7 3/4"', '3 1/4"'):
        if EVEN.width(figure + ",", style.TEXT) <= width:
            assert any(figure in line for line in lines), lines


def test_a_text_too_long_for_its_field_ends_in_an_ellipsis_at_full_height():
    shown = fitted("0123456789" * 5, 30.0, style.TEXT, EVEN, Face.REGULAR)
    assert shown.endswith("…")
    assert EVEN.width(shown, style.TEXT) <= 30.0


@given(st.floats(1, 80), st.floats(1, 80))
def test_hatching_stays_within_its_rectangle_at_45_degrees(width, height):
    for low, high in diagonal_lines(box_corners(10.0, 20.0, width, height), 1.8):
        for point in (low, high):
            assert 10 - 1e-9 <= point.x <= 10 + width + 1e-9
            assert 20 - 1e-9 <= point.y <= 20 + height + 1e-9
        assert abs((high.x - low.x) - (low.y - high.y)) < 1e-9
