"""Published and hand-worked figures of boards: coverage, movement, and what a saw takes."""

from fractions import Fraction

import pytest

from lacunar.layout.panels.courses import board_foot_factor, lineal_factor
from lacunar.layout.panels.sheet_rips import strips_from, widest_strip
from lacunar.layout.panels.wood_movement import board_movement
from lacunar.measure.length import ZERO, Length
from lacunar.model.board_tables import PUBLISHED_BOARDS, movement_coefficient
from lacunar.model.boards import BoardName, BoardSpecies, Cut, Fastening, Moisture, Movement
from tests.layout.laying_out import inches

FLAT, QUARTER = Cut.FLATSAWN, Cut.QUARTERSAWN


def shrinkage(
    width: str, coefficient: str, now: int, driest: int, fastening: Fastening = Fastening.NAILED
) -> float:
    """How much a width shrinks [inches]."""
    return moved(width, coefficient, (Fraction(now), Fraction(driest), Fraction(now)), fastening)[0]


def moved(
    width: str,
    coefficient: str,
    moistures: tuple[Moisture, Moisture, Moisture],
    fastening: Fastening = Fastening.NAILED,
) -> tuple[float, float]:
    """Shrinkage and swelling of a width [inches]."""
    now, driest, dampest = moistures
    movement = Movement(
        None, FLAT, Fraction(coefficient), fastening, now, driest, dampest, trim_cover=None
    )
    found = board_movement(movement, inches(width), ZERO, inches(width))
    assert found.shrink is not None
    assert found.swell is not None
    return float(found.shrink.value.inches), float(found.swell.value.inches)


# Coverage ---------------------------------------------------------------------------------------


@pytest.mark.parametrize(
    ("name", "lineal", "board_feet"),
    # Western Wood Products Association, coverage estimator, tongue and groove (two reproductions)
    [
        (BoardName.ONE_BY_FOUR, 3.84, 1.28),
        (BoardName.ONE_BY_SIX, 2.34, 1.17),
        (BoardName.ONE_BY_EIGHT, 1.75, 1.16),
        (BoardName.ONE_BY_TEN, 1.35, 1.13),
    ],
)
def test_coverage_of_published_boards(name: BoardName, lineal: float, board_feet: float):
    board = PUBLISHED_BOARDS[name]
    assert float(lineal_factor(board.cover).value) == pytest.approx(lineal, abs=0.005)
    found = board_foot_factor(board.nominal_width, board.cover).value
    assert float(found) == pytest.approx(board_feet, abs=0.005)


@pytest.mark.parametrize(
    ("nominal", "face", "lineal", "board_feet"),
    [
        # the same estimator, bevel siding
        (4, "2 1/2", 4.8, 1.60),
        (6, "4 1/2", 2.67, 1.33),
        (8, "6 1/4", 1.92, 1.28),
        (10, "8 1/4", 1.45, 1.21),
        # the same, rabbeted bevel siding; only board feet are printed
        (6, "5", None, 1.2),
        (8, "6 3/4", None, 1.19),
        (10, "8 3/4", None, 1.14),
        (12, "10 3/4", None, 1.12),
        # a dealer's table with another face for the same nominal boards
        (6, "5", 2.4, None),
        (8, "6 3/4", 1.78, None),
    ],
)
def test_coverage_is_the_same_rule_for_any_face(
    nominal: int, face: str, lineal: float | None, board_feet: float | None
):
    if lineal is not None:
        assert float(lineal_factor(inches(face)).value) == pytest.approx(lineal, abs=0.006)
    if board_feet is not None:
        found = board_foot_factor(Length.of_inches(nominal), inches(face)).value
        assert float(found) == pytest.approx(board_feet, abs=0.006)


@pytest.mark.parametrize(
    ("money", "feet", "face", "per_square_foot"),
    [
        # A house owner compared 1x6 boards 12 ft long at 9.12 with six 3 1/2 in boards 8 ft long at
        # 8.77 by their nominal width; by the face they cover it is 9.12/12 * 12/5.125 = 1.78 and
        # 8.77/48 * 12/3.125 = 0.70.
        ("9.12", 12, "5 1/8", 1.78),
        ("8.77", 48, "3 1/8", 0.70),
    ],
)
def test_what_a_square_foot_of_boards_costs(
    money: str, feet: int, face: str, per_square_foot: float
):
    found = Fraction(money) / feet * lineal_factor(inches(face)).value
    assert float(found) == pytest.approx(per_square_foot, abs=0.005)


# Movement ---------------------------------------------------------------------------------------


@pytest.mark.parametrize(
    ("species", "radial", "tangential"),
    # Wood Handbook (Forest Products Laboratory, FPL-GTR-190), Table 13-5
    [
        (BoardSpecies.CHERRY, "0.00126", "0.00248"),
        (BoardSpecies.RED_MAPLE, "0.00137", "0.00289"),
        (BoardSpecies.SILVER_MAPLE, "0.00102", "0.00252"),
        (BoardSpecies.SUGAR_MAPLE, "0.00165", "0.00353"),
        (BoardSpecies.RED_OAK, "0.00158", "0.00369"),
        (BoardSpecies.WHITE_OAK, "0.00180", "0.00365"),
        (BoardSpecies.BLACK_WALNUT, "0.00190", "0.00274"),
        (BoardSpecies.WHITE_ASH, "0.00169", "0.00274"),
        (BoardSpecies.BEECH, "0.00190", "0.00431"),
    ],
)
def test_published_coefficients(species: BoardSpecies, radial: str, tangential: str):
    assert movement_coefficient(species, QUARTER) == Fraction(radial)
    assert movement_coefficient(species, FLAT) == Fraction(tangential)


@pytest.mark.parametrize(
    ("species", "radial", "tangential"),
    # The same table. The flatsawn figures of Douglas-fir and both of eastern white pine were seen
    # in two articles that quote the Department of Agriculture; the others are from memory.
    [
        (BoardSpecies.YELLOW_POPLAR, "0.00158", "0.00289"),
        (BoardSpecies.DOUGLAS_FIR, "0.00165", "0.00267"),
        (BoardSpecies.WESTERN_HEMLOCK, "0.00144", "0.00274"),
        (BoardSpecies.EASTERN_WHITE_PINE, "0.00071", "0.00212"),
        (BoardSpecies.PONDEROSA_PINE, "0.00133", "0.00216"),
    ],
)
def test_coefficients_of_softwoods_and_poplar(species: BoardSpecies, radial: str, tangential: str):
    assert movement_coefficient(species, QUARTER) == Fraction(radial)
    assert movement_coefficient(species, FLAT) == Fraction(tangential)


@pytest.mark.parametrize(
    ("species", "radial", "tangential"),
    # Green to oven-dry shrinkage in percent, the same handbook, Table 4-3. At 10 percent moisture
    # its equation 13-3 turns shrinkage S into the coefficient (S/30)/(100 - 20 S/30), which gives
    # back what is printed in Table 13-5.
    [
        (BoardSpecies.YELLOW_POPLAR, "4.6", "8.2"),
        (BoardSpecies.CHERRY, "3.7", "7.1"),
        (BoardSpecies.SUGAR_MAPLE, "4.8", "9.9"),
        (BoardSpecies.WESTERN_HEMLOCK, "4.2", "7.8"),
        (BoardSpecies.DOUGLAS_FIR, "4.8", "7.6"),
    ],
)
def test_coefficients_come_back_from_shrinkage(species: BoardSpecies, radial: str, tangential: str):
    for cut, percent in ((QUARTER, Fraction(radial)), (FLAT, Fraction(tangential))):
        regenerated = (percent / 30) / (100 - 20 * percent / 30)
        assert abs(movement_coefficient(species, cut) - regenerated) <= Fraction(1, 100_000)


def test_the_handbooks_worked_example():
    # Wood Handbook, equation 13-2: white fir, flatsawn, 9.15 in (232 mm) wide, swells by 1.7 mm
    # (0.067 in) on its way to 11 percent; start at 8 and coefficient .00245 from memory.
    _, swell = moved("183/20", "0.00245", (Fraction(8), Fraction(8), Fraction(11)))
    assert swell * 25.4 == pytest.approx(1.7, abs=0.05)
    assert 9.15 + swell == pytest.approx(9.217, abs=0.002)


@pytest.mark.parametrize(
    ("width", "coefficient", "points", "expected"),
    [
        # by hand: 5.5 * .00289 * 5; 11.25 * .00369 * 4; 24 * .00289 * 3
        ("11/2", "0.00289", 5, 0.0795),
        ("45/4", "0.00369", 4, 0.1661),
        ("24", "0.00289", 3, 0.2081),
        # a flooring article after Agriculture Handbook 72: 5 in, .00129, 6 to 9 percent
        ("5", "0.00129", 3, 0.019),
        # a builder's rule of thumb: 5 1/2 in plain-sawn red oak, 4 points: 0.08
        ("11/2", "0.00369", 4, 0.081),
    ],
)
def test_worked_movements(width: str, coefficient: str, points: int, expected: float):
    found = shrinkage(width, coefficient, 6 + points, 6)
    assert found == pytest.approx(expected, abs=0.0005)


def test_gaps_of_half_an_inch_are_more_than_a_board_can_shrink():
    # 2x8 fir boards, face 6 3/4 in, nailed up at 14 percent and dried to 8: each moves .108 in.
    # Gaps near 1/2 in would take 28 points at this coefficient, so that several boards moved as one
    # or the wood was soaked.
    found = shrinkage("6 3/4", "0.00267", 14, 8)
    assert found == pytest.approx(0.108, abs=0.0005)
    assert 0.5 / (found / 6) == pytest.approx(27.7, abs=0.1)


# What a saw takes -------------------------------------------------------------------------------


def test_two_24_in_strips_do_not_come_from_a_48_in_sheet():
    kerf = inches("1/8")
    assert strips_from(inches("48"), inches("24"), kerf).value == 1
    assert widest_strip(inches("48"), 2, kerf).value == inches("23 15/16")
    assert strips_from(inches("48"), inches("23 15/16"), kerf).value == 2
    assert strips_from(inches("48"), inches("24"), ZERO).value == 2


def test_eight_rips_lose_seven_kerfs():
    # Planks of 6 in from 48 in sheets: seven at 6, or eight at (48 - 7/8)/8 = 5.89.
    kerf = inches("1/8")
    assert strips_from(inches("48"), inches("6"), kerf).value == 7
    eight = widest_strip(inches("48"), 8, kerf).value
    assert float(eight.inches) == pytest.approx(5.89, abs=0.005)
    assert eight * 8 + kerf * 7 == inches("48")
