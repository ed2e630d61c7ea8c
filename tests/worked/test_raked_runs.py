"""A level run of crown that meets a raked one, held against lines and planes in space.

There is no published table of these; the vectors below are worked here, apart from the code. The
corner of the walls is the origin, z is up. The level run goes along one wall, x away from the
corner; the raked one along the other wall. The room lies between the two.
"""

import math
from fractions import Fraction

import pytest

from lacunar.layout.moulding_records import Rake, RakedMeeting
from lacunar.layout.mouldings.crown import SawAsked, saw_sheet
from lacunar.layout.mouldings.raked_run import raked_meeting
from lacunar.layout.mouldings.saw_settings import saw_settings
from lacunar.measure.angle import Angle
from lacunar.measure.figure import given
from lacunar.measure.length import Length
from tests.rule_evaluation import contradictions

degrees = Angle.of_degrees
inch = Length.of_inches
Vector = tuple[float, float, float]

FACE = 4.625
# Lengths are snapped to 1/8000 mm, 0.000005 in; drop and projection before, and what is multiplied
# by them passes it on up to 1 / tan 22.5 as coarse.
SNAP = 4e-5

CORNERS = (45, 60, 90, 120, 157, 203, 240, 270, 300)
SLOPES = (5, 18, 33, 45, 60)
SPRINGS = (30, 38, 45, 52)


def add(one: Vector, other: Vector) -> Vector:
    return (one[0] + other[0], one[1] + other[1], one[2] + other[2])


def times(vector: Vector, number: float) -> Vector:
    return (vector[0] * number, vector[1] * number, vector[2] * number)


def dot(one: Vector, other: Vector) -> float:
    return one[0] * other[0] + one[1] * other[1] + one[2] * other[2]


def cross(one: Vector, other: Vector) -> Vector:
    return (
        one[1] * other[2] - one[2] * other[1],
        one[2] * other[0] - one[0] * other[2],
        one[0] * other[1] - one[1] * other[0],
    )


class Run:
    """A straight run of moulding: which way it goes, out of its wall, and square up its wall."""

    def __init__(self, along: Vector, out: Vector) -> None:
        self.along, self.out = along, out
        self.up = cross(along, out)
        if self.up[2] < 0:
            self.up = times(self.up, -1)

    def line(self, out: float, up: float) -> tuple[Vector, Vector]:
        """A line of the moulding, by its place in a section square to the run."""
        return add(times(self.out, out), times(self.up, up)), self.along


def runs(corner: float, slope: float, rake: Rake) -> tuple[Run, Run]:
    turn, rise = math.radians(corner), math.radians(slope if rake is Rake.CLIMBS else -slope)
    level = Run((1.0, 0.0, 0.0), (0.0, 1.0, 0.0))
    way = (math.cos(turn), math.sin(turn), 0.0)
    along = add(times(way, math.cos(rise)), (0.0, 0.0, math.sin(rise)))
    return level, Run(along, (way[1], -way[0], 0.0))


def passing(one: tuple[Vector, Vector], other: tuple[Vector, Vector]) -> tuple[Vector, Vector]:
    """The points of two lines that are one above the other."""
    (p, u), (q, v) = one, other
    plan = u[0] * v[1] - u[1] * v[0]
    off = (q[0] - p[0], q[1] - p[1])
    s = (off[0] * v[1] - off[1] * v[0]) / plan
    t = (off[0] * u[1] - off[1] * u[0]) / plan
    return add(p, times(u, s)), add(q, times(v, t))


def found(spring: float, corner: float, slope: float, rake: Rake) -> RakedMeeting:
    whole, bend = degrees(Fraction(spring)), degrees(Fraction(corner))
    settings = saw_settings(given(whole), bend, degrees(50), degrees(45))
    asked = SawAsked(face=given(inch(Fraction(FACE))), slope=degrees(Fraction(slope)), rake=rake)
    raked = saw_sheet(given(whole), settings, asked).raked
    assert raked is not None
    return raked


def sizes(spring: float) -> tuple[float, float]:
    s = math.radians(spring)
    return FACE * math.cos(s), FACE * math.sin(s)


@pytest.mark.parametrize("rake", Rake)
@pytest.mark.parametrize("corner", CORNERS)
def test_edges_pass_each_other_as_lines_in_space_do(corner: int, rake: Rake):
    for slope in SLOPES:
        level, raked = runs(corner, slope, rake)
        for spring in SPRINGS:
            drop, projection = sizes(spring)
            low, high = passing(level.line(projection, drop), raked.line(projection, drop))
            assert low[:2] == pytest.approx(high[:2], abs=1e-9)
            told = found(spring, corner, slope, rake)
            assert not told.meets
            assert told.raked_height is not None
            assert told.apart is not None
            assert float(told.raked_height.value.inches) == pytest.approx(high[2], abs=SNAP)
            assert float(told.apart.value.inches) == pytest.approx(abs(high[2] - low[2]), abs=SNAP)


@pytest.mark.parametrize("rake", Rake)
@pytest.mark.parametrize("corner", CORNERS)
def test_a_profile_run_for_the_rake_has_its_edges_on_those_of_the_level_run(
    corner: int, rake: Rake
):
    for slope in SLOPES:
        level, raked = runs(corner, slope, rake)
        for spring in SPRINGS:
            drop, projection = sizes(spring)
            told = found(spring, corner, slope, rake)
            # Where the level run's edge passes the bisector, read in the raked run's own section.
            edge, _ = passing(level.line(projection, drop), raked.line(projection, drop))
            assert dot(edge, raked.out) == pytest.approx(projection, abs=1e-9)
            square = dot(edge, raked.up)
            if told.run_drop is None:
                assert square < SNAP
                continue
            assert told.run_face is not None
            assert told.wider is not None
            face = math.hypot(square, projection)
            assert float(told.run_drop.value.inches) == pytest.approx(square, abs=SNAP)
            assert float(told.run_face.value.inches) == pytest.approx(face, abs=SNAP)
            assert float(told.wider.value.inches) == pytest.approx(face - FACE, abs=SNAP)


@pytest.mark.parametrize("rake", Rake)
@pytest.mark.parametrize(("corner", "slope"), [(90, 18), (135, 30), (270, 45)])
def test_no_raked_section_meets_at_all_its_points(corner: int, slope: int, rake: Rake):
    """The verdict: among points of any moulded section, square to it, some lines always miss."""
    level, raked = runs(corner, slope, rake)
    apart = []
    for out, up in ((0.0, 1.0), (1.0, 0.0), (1.0, 1.0), (0.5, 2.0)):
        low, high = passing(level.line(out, up), raked.line(out, up))
        apart.append(abs(high[2] - low[2]))
    assert max(apart) > 0.01
    assert not raked_meeting(None, degrees(corner), degrees(slope), rake).meets


@pytest.mark.parametrize("corner", [60, 90, 150, 270])
def test_level_runs_meet_in_the_plane_half_way(corner: int):
    """Without a slope every line of the section meets its like, at any corner."""
    one, other = runs(corner, 0, Rake.CLIMBS)
    for out, up in ((0.0, 1.0), (1.0, 0.0), (2.0, 3.0)):
        low, high = passing(one.line(out, up), other.line(out, up))
        assert low == pytest.approx(high, abs=1e-9)
    assert raked_meeting(None, degrees(corner), degrees(0), Rake.CLIMBS).meets


@pytest.mark.parametrize("rake", Rake)
@pytest.mark.parametrize("slope", SLOPES)
def test_along_one_wall_the_two_meet_in_the_plane_half_way_between(slope: int, rake: Rake):
    """Mirrored in that plane, every line of the one run is the like line of the other."""
    level, raked = runs(180, slope, rake)
    normal = add(level.along, times(raked.along, -1))
    unit = times(normal, 1 / math.sqrt(dot(normal, normal)))

    def mirrored(vector: Vector) -> Vector:
        return add(vector, times(unit, -2 * dot(vector, unit)))

    assert mirrored(level.along) == pytest.approx(raked.along, abs=1e-9)
    for out, up in ((0.0, 1.0), (1.0, 0.0), (2.0, 3.0)):
        assert mirrored(level.line(out, up)[0]) == pytest.approx(raked.line(out, up)[0], abs=1e-9)
    assert raked_meeting(None, degrees(180), degrees(slope), rake).meets


def test_a_square_corner_by_hand():
    """A 6 in 12 rake, 26.565 degrees, its sine 1, cosine 2 and tangent 1 over sqrt 5, sqrt 5 and 2;
    a face of 4 at 45: drop and projection 2.8284. Climbing 3.1623 + 1.4142 = 4.5765; run for the
    rake its drop is 2.5298 - 1.2649 = 1.2649, its face sqrt(1.6 + 8) = 3.0984."""
    spring = given(degrees(45))
    settings = saw_settings(spring, degrees(90), degrees(50), degrees(45))
    slope = degrees(Fraction("26.565051177"))
    told = saw_sheet(spring, settings, SawAsked(face=given(inch(4)), slope=slope)).raked
    assert told is not None
    worked = {"raked_height": 4.5765, "apart": 1.7481, "run_drop": 1.2649, "run_face": 3.0984}
    for name, value in {**worked, "wider": -0.9016}.items():
        assert float(getattr(told, name).value.inches) == pytest.approx(value, abs=1e-4)


@pytest.mark.parametrize("rake", Rake)
@pytest.mark.parametrize("corner", [60, 90, 225])
def test_every_figure_is_what_its_rule_gives(corner: int, rake: Rake):
    told = found(38, corner, 20, rake)
    figures = (told.raked_height, told.apart, told.run_drop, told.run_face, told.wider)
    for figure in figures:
        assert figure is not None
        assert contradictions(figure) == []
