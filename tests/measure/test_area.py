from fractions import Fraction

import pytest

from lacunar.measure.area import Area, area
from lacunar.measure.length import Length


def test_a_square_foot_is_144_square_inches():
    square_foot = area(Length.of_feet(1), Length.of_feet(1))
    assert square_foot.square_inches == 12 * 12
    assert square_foot.square_feet == 1


def test_a_square_meter_is_a_million_square_millimeters():
    side = Length.of_millimeters(1000)
    assert area(side, side).square_meters == 1


def test_a_square_foot_in_square_meters():
    # 0.3048 m squared: NIST SP 811 gives 9.290 304 E-02, exact (from memory).
    assert Area(Fraction(144)).square_meters == Fraction(9290304, 10**8)


def test_areas_add_and_are_in_order_of_size():
    small, large = Area(Fraction(1)), Area(Fraction(3))
    assert small + small + small == large
    assert small < large


def test_an_area_and_a_number_do_not_add():
    with pytest.raises(TypeError):
        Area(Fraction(1)) + 1
