"""Story poles: where they are parted, where their numbers stand, and that they print true."""

import json
from fractions import Fraction
from itertools import pairwise

import pytest
from hypothesis import given
from hypothesis import strategies as st

from lacunar.drawing.full_size.pieces import CLEAR, OVERLAP, STEP, pieces_of
from lacunar.drawing.spreading import spread
from lacunar.measure.length import ZERO, Length
from lacunar.measure.units import Units
from lacunar.workflow.prepare import Prepared, prepare
from tests.drawing.printed import MM, lines_over_band, page_of

inch = Length.of_inches


@given(
    units=st.sampled_from(Units),
    length=st.integers(16, 16 * 1200),
    faces=st.lists(st.integers(0, 16 * 1200), max_size=60),
    longest=st.sampled_from([180, 254, 4846]),
)
def test_pieces_cover_a_pole_and_overlap(units: Units, length: int, faces: list[int], longest: int):
    of = inch(Fraction(length, 16))
    at = [inch(Fraction(face, 16)) for face in faces if face <= length]
    most = Length.of_millimeters(longest)
    pieces = pieces_of(of, at, most, units)
    assert (pieces[0].start, pieces[-1].end) == (ZERO, of)
    assert all(piece.end - piece.start <= most for piece in pieces)
    assert [(p.number, p.count) for p in pieces] == [
        (number, len(pieces)) for number in range(1, len(pieces) + 1)
    ]
    for one, other in pairwise(pieces):
        assert one.start < other.start
        assert one.end - other.start == OVERLAP[units]
        assert (other.start / STEP[units]).denominator == 1


@given(gaps=st.lists(st.integers(48, 900), min_size=1, max_size=30))
def test_no_seam_stands_at_a_face_where_faces_are_three_inches_apart(gaps: list[int]):
    faces, at = [], ZERO
    for gap in gaps:
        at = at + inch(Fraction(gap, 16))
        faces.append(at)
    for piece in pieces_of(at, faces, inch(10), Units.INCH)[1:]:
        end = piece.start + OVERLAP[Units.INCH]
        assert not any(piece.start - CLEAR < face < end + CLEAR for face in faces)


@given(
    places=st.lists(st.floats(0, 200), min_size=1, max_size=25).map(sorted),
    pitch=st.floats(0.5, 6),
)
def test_labels_keep_their_order_and_distance(places: list[float], pitch: float):
    found = spread(places, pitch, 0.0, 400.0)
    assert all(other - one >= pitch - 1e-9 for one, other in pairwise(found))
    assert min(found) >= 0.0
    apart = all(other - one >= pitch for one, other in pairwise(places))
    assert not apart or found == places


def hung(**drawing: object) -> Prepared:
    """A room with round figures: 3 coffers of 43 in and half beams 2 1/2 in wide at the walls."""
    document = {
        "room": {"length": 144, "width": 144, "height": 120},
        "beams": {"crosswise": {"sides": "1x6", "bottom": "1x4", "reveal": "1/4"}},
        "grid": {
            "length": {"coffers": 3, "start": "half", "end": "half"},
            "width": {"coffers": 3, "start": "half", "end": "half"},
        },
        "drawing": {"paper": "letter", **drawing},
    }
    return prepare(json.dumps(document).encode())


def test_lines_of_a_printed_pole_are_where_their_numbers_say_within_a_tenth_of_a_millimeter():
    """Faces at 2 1/2, 45 1/2, 50 1/2, 93 1/2, 98 1/2 and 141 1/2 in; walls at 0 and 144 in."""
    expected = [inch(Fraction(each)) for each in ("0", "5/2", "91/2", "101/2", "187/2", "197/2")]
    expected += [inch(Fraction(each)) for each in ("283/2", "144")]
    found = lines_over_band(hung(story_poles="roll"), "pole-length-1", 144 * MM)
    for place, at in zip(expected, found, strict=True):
        assert at == pytest.approx(float(place.millimeters), abs=0.1)


def test_500_millimeters_on_a_printed_pole_are_500_within_a_tenth():
    """Beams 200 wide and openings of 400: from the wall to the first beam's face, past a half."""
    box = {"sides": {"thickness": 18, "width": 140}, "bottom": {"thickness": 18, "width": 164}}
    document = {
        "units": "mm",
        "room": {"length": 1800, "width": 1800, "height": 2600},
        "beams": {"crosswise": {**box, "bottom_joint": "between", "width": 200}},
        "grid": {
            run: {"coffers": 3, "start": "half", "end": "half"} for run in ("length", "width")
        },
        "drawing": {"paper": "a3", "sheets": ["Z-701"], "story_poles": "roll"},
    }
    ceiling = prepare(json.dumps(document).encode())
    found = lines_over_band(ceiling, "pole-length-1", 1800)
    assert found == pytest.approx([0, 100, 500, 700, 1100, 1300, 1700, 1800], abs=0.1)


def test_tiles_are_on_paper_any_office_has_and_a_roll_is_as_long_as_its_strip():
    document, number, sheet = page_of(hung(story_poles="tiles", paper="arch_d"), "pole-length-1")
    assert document[number].get_size() == pytest.approx((11 * 72, 8.5 * 72), abs=0.01)
    assert sheet == "Z-701-2"
    document, number, _ = page_of(hung(story_poles="roll"), "pole-length-1")
    assert document[number].get_width() == pytest.approx((144 * MM + 30) * 72 / MM, abs=0.01)


def test_a_pole_longer_than_readers_show_is_parted_on_a_roll():
    """20 ft is more than 200 in, the page that many readers stop at: two pages, each shorter."""
    document = {
        "room": {"length": 240, "width": 120, "height": 108},
        "drawing": {"story_poles": "roll"},
    }
    sheets = page_of(prepare(json.dumps(document).encode()), "pole-length-2")[0]
    widths = [sheets[number].get_width() for number in range(len(sheets))]
    assert max(widths) <= 200 * 72
    assert sum(width > 1500 for width in widths) == 3
