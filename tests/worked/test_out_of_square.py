"""Published and hand-worked figures of quadrilaterals, and of crown at corners that are not square.

Derived figures: the law of cosines and the parallelogram law are algebra; their sums stand in the
comments. The corner of 92 degrees is from a carpenters' forum ("Crown problem: walls and ceiling
not square"), its settings by the published formulas for sprung moulding.
"""

from fractions import Fraction

import pytest

from lacunar.layout.mouldings.saw_settings import saw_settings
from lacunar.layout.quadrilaterals import Quadrilateral, corner, lean
from lacunar.measure.angle import Angle, corner_of_triangles, hypotenuse
from lacunar.measure.figure import given
from lacunar.measure.length import Length
from tests.layout.laying_out import Spec, box, laid_out, room, run

inch = Length.of_inches


def sides(*numbers: object) -> tuple[Length, ...]:
    return tuple(inch(Fraction(str(number))) for number in numbers)


@pytest.mark.parametrize(
    ("one", "other", "across", "degrees"),
    [
        # Pythagoras: 9 + 16 = 25, and its multiples.
        (3, 4, 5, 90),
        (36, 48, 60, 90),
        (6, 8, 10, 90),
        # (25 + 64 - 49) / 80 = 1/2; (9 + 25 - 49) / 30 = -1/2; (49 + 64 - 169) / 112 = -1/2.
        (5, 8, 7, 60),
        (3, 5, 7, 120),
        (7, 8, 13, 120),
    ],
)
def test_triangles_with_known_angles(one: int, other: int, across: int, degrees: int):
    found = corner_of_triangles([(inch(one), inch(other), inch(across))])
    assert abs(found.degrees - degrees) <= Fraction(1, 10**9)


@pytest.mark.parametrize(
    ("length", "width", "diagonal"),
    [(144, 120, "187.446"), (168, 144, "221.269"), (192, 144, "240"), (240, 180, "300")],
)
def test_diagonals_of_square_openings(length: int, width: int, diagonal: str):
    """The square root of length squared and width squared."""
    found = hypotenuse(inch(length), inch(width))
    assert abs(found.inches - Fraction(diagonal)) <= Fraction(1, 1000)


@pytest.mark.parametrize(
    ("one", "other", "diagonal", "degrees"),
    [
        # What a quarter inch on the diagonal does: (1296 + 2304 - 60.25^2) / 3456 = -0.00870.
        (36, 48, "60.25", "90.498"),
        (36, 48, "59.75", "89.504"),
        # (20736 + 14400 - 188^2) / 34560 = -0.006019
        (144, 120, "188", "90.345"),
        (144, 120, "187", "89.723"),
    ],
)
def test_a_corner_by_the_diagonal_across_from_it(one: int, other: int, diagonal: str, degrees: str):
    shape = Quadrilateral((inch(one), inch(other), inch(one), inch(other)), None, *sides(diagonal))
    found = corner(shape, 0).angle.value
    assert abs(found.degrees - Fraction(degrees)) <= Fraction(1, 1000)


def test_a_parallelogram_whose_diagonals_differ_by_half_an_inch():
    """d1^2 + d2^2 = 2 (180^2 + 144^2) and d1 - d2 = 1/2 give 230.7623 and 230.2623."""
    falling, rising = sides("230.2623", "230.7623")
    shape = Quadrilateral((inch(180), inch(144), inch(180), inch(144)), rising, falling)
    angle = corner(shape, 0).angle.value
    # (180^2 + 144^2 - 230.2623^2) / (2 * 180 * 144) = 0.002224
    assert abs(angle.degrees - Fraction("89.8726")) <= Fraction(1, 2000)
    # Over the 144 in side it leans 144 cos 89.8726 = 0.320; over the longer one, 180 of it, 0.400.
    assert abs(lean(shape, 0, angle).value.inches - Fraction("0.400")) <= Fraction(1, 2000)


def test_saw_settings_at_a_corner_of_92_degrees():
    """Nested 90 - 92/2; flat atan(sin 38 / tan 46) = 30.7, asin(cos 38 cos 46) = 33.2."""
    angle = Angle.of_degrees
    found = saw_settings(given(angle(38)), angle(92), angle(50), angle(45))
    assert found.nested_miter.value == angle(44)
    assert (found.flat_miter.value.tenths, found.flat_bevel.value.tenths) == ("30.7°", "33.2°")


def four_corners_of_92_and_88() -> Spec:
    """One coffer of 48 x 36 in, leaning: at 92 degrees its falling diagonal is 61.008 in.

    sqrt(48^2 + 36^2 - 2 * 48 * 36 * cos 92) = sqrt(3600 + 120.614) = 60.9968
    """
    spec: Spec = {
        "room": room(62, 50),
        "beams": {"crosswise": box("1x8", "1x6")},
        "grid": {"length": run(1, "full"), "width": run(1, "full")},
        "crown": {"face": "3 1/4", "spring_from_wall": 38, "fit_total": "1/8"},
    }
    layout = laid_out(spec)
    [coffer] = layout.coffers
    assert (coffer.length.value, coffer.width.value) == (inch(48), inch(36))
    measured = {
        "coffer": "A1",
        "sides": {"W1": 36, "W2": 48, "W3": 36, "W4": 48},
        "diagonals": {"falling": "60.9968"},
    }
    spec["measured_openings"] = {"grid": layout.grid_id, "coffers": [measured]}
    return spec


def test_a_coffer_of_92_degrees_is_mitred_to_its_corners():
    spec = four_corners_of_92_and_88()
    spec["measured_openings"]["out_of_square"] = "mitred_to_corners"
    found = laid_out(spec)
    assert found.measured_openings is not None
    [crown] = found.measured_openings.crown
    corners = [cut.saw.corner.tenths for cut in crown.corners]
    assert corners == ["92°", "88°", "92°", "88°"]
    assert [cut.saw.nested_miter.value.tenths for cut in crown.corners] == [
        *("44°", "46°", "44°", "46°"),
    ]
    # Set in 1/16 at both ends: 1/16 (cot 46 + cot 44) = 1/16 (0.96569 + 1.03553) = 0.12508.
    pieces = {piece.toward[0]: piece for piece in crown.mitred}
    long_point = pieces["W4"].long_point.value.inches
    assert abs(long_point - (48 - Fraction("0.12508"))) < Fraction(1, 20000)
    # The projection, 3.25 sin 38 = 2.00090, takes 2.00090 * 2.00122 = 4.00424 more.
    short_point = pieces["W4"].short_point.value.inches
    assert abs(long_point - short_point - Fraction("4.00424")) < Fraction(1, 10000)


def test_four_sides_alone_do_not_fix_the_shape():
    """Any four sides can lean: what a diagonal would tell is listed, and nothing is guessed."""
    spec = four_corners_of_92_and_88()
    del spec["measured_openings"]["coffers"][0]["diagonals"]
    found = laid_out(spec).measured_openings
    assert found is not None
    [opening] = found.openings
    assert (opening.squareness, opening.corners) == ("unknown", ())
    assert opening.missing == ("a diagonal",)
