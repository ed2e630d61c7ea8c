"""Laws of surveyed rooms, on random ones."""

import json
import math
import random
from collections.abc import Iterator, Sequence
from fractions import Fraction
from typing import Any

import pytest
from scipy.optimize import least_squares as least_squares_fit

from lacunar.exchange.ceiling_json import ceiling_to_json, digest
from lacunar.exchange.layout_json import layout_to_json
from lacunar.exchange.spec_json import read_spec
from lacunar.layout.records import Layout
from lacunar.layout.survey.quadrilateral import NAMES, closing_change, least_squares
from lacunar.model.assumptions import resolve
from tests.layout.laying_out import Spec, decided, figures_in, laid_out, run
from tests.rule_evaluation import contradictions

CORNERS = ("W4-W1", "W3-W4", "W2-W3", "W1-W2")
GRID = {"length": run(4, "half"), "width": run(3, "full")}
WALLS = ("W1", "W2", "W3", "W4")

Places = list[tuple[Fraction, Fraction]]


def places(chance: random.Random) -> Places:
    """Corners of a room up to 6 in out, in sixteenths, counter-clockwise from the datum."""

    def off() -> Fraction:
        return Fraction(chance.randint(-48, 48), 16)

    length, width = chance.randint(150, 300), chance.randint(130, 250)
    square = [(0, 0), (length, 0), (length, width), (0, width)]
    return [(x + off(), y + off()) for x, y in square]


def points(corners: Places) -> Spec:
    named = zip(CORNERS, corners, strict=True)
    return {"points": {name: {"x": f"{x} in", "y": f"{y} in"} for name, (x, y) in named}}


def distances(corners: Places) -> dict[str, float]:
    pairs = {"W1": (3, 0), "W2": (2, 3), "W3": (1, 2), "W4": (0, 1)}
    pairs |= {"rising": (0, 2), "falling": (1, 3)}
    return {name: math.dist(corners[a], corners[b]) for name, (a, b) in pairs.items()}


def taped(corners: Places) -> Spec:
    """Four sides and both diagonals as a tape gives them, to a sixteenth."""
    read = {name: f"{round(each * 16)}/16 in" for name, each in distances(corners).items()}
    diagonals = {name: read.pop(name) for name in ("rising", "falling")}
    return {"sides": read, "diagonals": diagonals}


def spec(survey: Spec, control: str = "W1", **more: Any) -> Spec:
    crooked = {"control": control}
    return {"room": {"survey": survey, "height": 108, "crooked": crooked, **more}, "grid": GRID}


def rooms(count: int, seed: int) -> Iterator[Spec]:
    chance = random.Random(seed)
    for number in range(count):
        corners = places(chance)
        survey = points(corners) if number % 2 else taped(corners)
        if number % 3 == 0:
            survey["bows"] = {chance.choice(WALLS): {chance.choice(("in", "out")): "3/8"}}
        given = spec(survey, chance.choice(WALLS))
        if number % 4 == 1:
            member = {"on": "length", "center": 70, "width": 4, "drop": 5}
            joists = {"parallel_to": "width", "first": "1/16"}
            given["room"] |= {"members": [member], "joists": joists}
            given["grid"] = {**GRID, "width": {"coffers": 3, "fixed_beams": [{"center": 60}]}}
        yield given


def test_every_figure_is_what_its_rule_gives():
    for given in rooms(16, seed=5):
        assert [each for f in figures_in(laid_out(given)) for each in contradictions(f)] == []


def test_a_resolved_spec_read_again_assumes_nothing_and_keeps_its_digest():
    for given in rooms(24, seed=6):
        ceiling = decided(given)
        again = resolve(read_spec(json.dumps(ceiling_to_json(ceiling)).encode()))
        assert again.assumptions == ()
        assert again.ceiling == ceiling
        assert digest(again.ceiling) == digest(ceiling)


def told(layout: Layout) -> Spec:
    """What a layout says of sizes and places."""
    answer = layout_to_json(layout, (), trace=False)
    for name in ("ceiling", "crooked", "cautions"):
        del answer[name]
    return answer


@pytest.mark.parametrize("finish", ["finish", "framing"])
@pytest.mark.parametrize(
    "survey",
    [
        {"diagonals": {"rising": "50 ft"}},
        {"diagonals": {"falling": "600"}},
        {"diagonals": {"rising": 600, "falling": 600}},
        {"angles": dict.fromkeys(CORNERS, 90)},
    ],
)
@pytest.mark.parametrize("control", WALLS)
def test_a_square_survey_gives_exactly_the_rectangles_answer(
    survey: Spec, control: str, finish: str
):
    """3-4-5 of 10 ft and thirds of a foot are exact, so that not a digit differs."""
    sides = {"W1": "30 ft", "W3": "30 ft", "W2": "40 ft", "W4": "40 ft"}
    surveyed = spec({"sides": sides, **survey}, control, measured_to=finish)
    plain = {"room": {"length": 480, "width": 360, "height": 108, "measured_to": finish}}
    layout = laid_out(surveyed)
    assert layout.crooked is not None
    assert layout.crooked.square
    assert told(layout) == told(laid_out({**plain, "grid": GRID}))


def test_both_ways_agree_in_a_square_room():
    corners = [(Fraction(x), Fraction(y)) for x, y in ((0, 0), (200, 0), (200, 150), (0, 150))]
    layout = laid_out(spec(points(corners), joists={"parallel_to": "width", "first": 8}))
    assert layout.crooked is not None
    square, following = layout.crooked.modes
    for one, other in zip(square.coffers, following.coffers, strict=True):
        for wall in WALLS:
            name = f"towards_{wall.lower()}"
            assert getattr(one, name).value == getattr(other, name).value
        assert not one.out_of_square.value
        assert not other.out_of_square.value


def test_strips_and_clear_lines_make_up_the_room():
    """At every end of every run: gap, clear line and gap are the way from wall to wall."""
    for given in rooms(24, seed=7):
        layout = laid_out(given)
        assert layout.crooked is not None
        corners = [(float(p.x.inches), float(p.y.inches)) for p in layout.outline]
        ends = {"W1": (0, 3), "W2": (3, 2), "W3": (1, 2), "W4": (0, 1)}
        clear = {run.run: float(run.clear.value.inches) for run in layout.crooked.runs}
        beams = {beam.id: float(beam.width.value.inches) for beam in layout.wall_beams}
        for wall in layout.crooked.walls:
            (x1, y1), (x2, y2) = (corners[place] for place in ends[wall.wall])
            own = beams[wall.strip] if wall.strip else 0.0
            upright = wall.wall in ("W1", "W3")
            edge = {"W1": 0.0, "W4": 0.0, "W3": clear["length"], "W2": clear["width"]}[wall.wall]
            for at, width in (
                (0.0, wall.at_start),
                (clear["width" if upright else "length"], wall.at_end),
            ):
                share = (at - (y1 if upright else x1)) / ((y2 - y1) if upright else (x2 - x1))
                place = x1 + (x2 - x1) * share if upright else y1 + (y2 - y1) * share
                outward = edge - place if wall.wall in ("W1", "W4") else place - edge
                assert outward > -1e-4
                assert abs(float(width.value.inches) - own - outward) < 1e-4


def mirrored(corners: Places) -> Places:
    """The room as seen from above it: left and right exchanged."""
    flipped = [(-x, y) for x, y in corners]
    return [flipped[1], flipped[0], flipped[3], flipped[2]]


def test_a_mirrored_room_has_mirrored_strips():
    """Exactly so where the control wall lies along an axis, so that nothing is rounded."""
    swap = {"W1": "W3", "W2": "W2", "W3": "W1", "W4": "W4"}
    chance = random.Random(8)
    for _ in range(12):
        corners = places(chance)
        corners[1] = (corners[1][0], corners[0][1])
        one = laid_out(spec(points(corners), "W4"))
        other = laid_out(spec(points(mirrored(corners)), "W4"))
        assert one.crooked is not None
        assert other.crooked is not None
        found = {wall.wall: wall for wall in other.crooked.walls}
        for wall in one.crooked.walls:
            twin = found[swap[wall.wall]]
            ends = (wall.at_start.value, wall.at_end.value)
            turned = (twin.at_start.value, twin.at_end.value)
            assert ends == (turned if wall.wall in ("W1", "W3") else turned[::-1])


def test_a_room_told_in_millimeters_is_the_same_room():
    chance = random.Random(9)
    for _ in range(8):
        survey = points(places(chance))
        one = laid_out(spec(survey, "W3"))
        metric = {
            name: {way: f"{Fraction(at.split()[0]) * Fraction('25.4')} mm" for way, at in p.items()}
            for name, p in survey["points"].items()
        }
        other = laid_out(spec({"points": metric}, "W3"))
        assert one.outline == other.outline
        assert one.crooked is not None
        assert other.crooked is not None
        assert one.crooked.walls == other.crooked.walls


ENDS = {
    **{"W1": (3, 0), "W2": (2, 3), "W3": (1, 2), "W4": (0, 1)},
    **{"rising": (0, 2), "falling": (1, 3)},
}
"""The corners that each side and diagonal joins."""


def best_corners(measured: dict[str, float]) -> list[tuple[float, float]]:
    """The corners whose distances fit the measured ones best, as SciPy finds them.

    Unknown are the x of the corner of W3 and W4, and both coordinates of the two corners above.
    """

    def spots(at: Sequence[float]) -> list[tuple[float, float]]:
        return [(0.0, 0.0), (at[0], 0.0), (at[1], at[2]), (at[3], at[4])]

    def off(at: Sequence[float]) -> list[float]:
        corners = spots(at)
        return [math.dist(corners[a], corners[b]) - measured[n] for n, (a, b) in ENDS.items()]

    length, width = measured["W4"], measured["W1"]
    start = [length, length, width, 0.0, width]
    exactly = {"xtol": 1e-15, "ftol": 1e-15, "gtol": 1e-15}
    return spots(least_squares_fit(off, start, method="lm", **exactly).x)


def spread(measured: dict[str, float]) -> dict[str, float]:
    """The distances of the corners that fit best."""
    spots = best_corners(measured)
    return {name: math.dist(spots[a], spots[b]) for name, (a, b) in ENDS.items()}


def test_corners_of_a_room_are_those_that_fit_best():
    """All six distances taped to a sixteenth, so that they contradict each other a little."""
    chance = random.Random(21)
    for _ in range(15):
        survey = taped(places(chance))
        layout = laid_out(spec(survey, chance.choice(WALLS)))
        read = {**survey["sides"], **survey["diagonals"]}
        best = best_corners({name: float(Fraction(each.split()[0])) for name, each in read.items()})
        found = [complex(float(p.x.inches), float(p.y.inches)) for p in layout.outline]
        wanted = [complex(*spot) for spot in best]
        # SciPy has W4 along an axis; the layout has the control wall so.
        way = (found[1] - found[0]) / abs(found[1] - found[0])
        for one, other in zip(found, wanted, strict=True):
            assert abs(one - found[0] - other * way) < 1e-3


def test_what_is_shared_out_is_the_least_squares_solution():
    chance = random.Random(10)
    for _ in range(25):
        true = distances(places(chance))
        read = {n: Fraction(round(true[n] * 16) + chance.randint(-3, 3), 16) for n in NAMES}
        found = least_squares(read).distances
        expected = spread({name: float(read[name]) for name in NAMES})
        for name in NAMES:
            assert abs(float(found[name]) - expected[name]) < 1e-6


def test_each_single_change_closes_the_survey():
    chance = random.Random(11)
    for _ in range(25):
        true = distances(places(chance))
        read = {n: Fraction(round(true[n] * 16), 16) for n in NAMES}
        spoiled = chance.choice(NAMES)
        read[spoiled] += chance.choice((-12, -6, 6, 12))
        for name in NAMES:
            change = closing_change(read, name)
            if change is None:
                continue
            mended = {**read, name: read[name] + change}
            left = spread({each: float(mended[each]) for each in NAMES})
            assert all(abs(left[each] - float(mended[each])) < 1e-4 for each in NAMES)
        back = closing_change(read, spoiled)
        assert back is not None
        assert abs(float(read[spoiled] + back) - true[spoiled]) < 0.5


TURNED = {"W1": "W4", "W2": "W1", "W3": "W2", "W4": "W3"}
"""Where each wall comes to lie when a plan is turned a quarter, counter-clockwise."""
REVERSED = ("W1", "W3")
"""Walls whose start comes to lie at their end."""


def turned(corners: Places) -> Places:
    """The room a quarter turned: what was on the left is below, the corner above left the datum."""
    spots = [(-y, x) for x, y in corners]
    return [spots[3], spots[0], spots[1], spots[2]]


def quarter(given: Spec, survey: Spec) -> Spec:
    """A spec turned with its room: the length run becomes the width run, that the length run."""
    runs = given["grid"]
    backwards = {**runs["width"], "start": runs["width"]["end"], "end": runs["width"]["start"]}
    control = TURNED[given["room"]["crooked"]["control"]]
    room = {**given["room"], "survey": survey, "crooked": {"control": control}}
    return {"room": room, "grid": {"length": backwards, "width": runs["length"]}}


def apart_most(one: Layout, other: Layout) -> Fraction:
    """By how much the strips, spans and diagonals of a turned room differ at most [in]."""
    assert one.crooked is not None
    assert other.crooked is not None
    found = {wall.wall: wall for wall in other.crooked.walls}
    pairs = [(one.crooked.grid_diagonal, other.crooked.grid_diagonal)]
    pairs.append((one.crooked.survey.rising, other.crooked.survey.falling))
    pairs.append((one.crooked.survey.falling, other.crooked.survey.rising))
    for wall in one.crooked.walls:
        twin = found[TURNED[wall.wall]]
        ends = (twin.at_start, twin.at_end)
        first, last = ends[::-1] if wall.wall in REVERSED else ends
        pairs += [(wall.at_start, first), (wall.at_end, last), (wall.taper, twin.taper)]
        pairs.append((wall.widest, twin.widest))
    (length, width), (new_length, new_width) = one.crooked.runs, other.crooked.runs
    pairs += [(length.clear, new_width.clear), (width.clear, new_length.clear)]
    for mode, twin_mode in zip(one.crooked.modes, other.crooked.modes, strict=True):
        pairs += [(mode.shortest, twin_mode.narrowest), (mode.widest, twin_mode.longest)]
    return max(abs((a.value - b.value).inches) for a, b in pairs)


GRIDDED = {"length": run(4, "half"), "width": {"coffers": 3, "start": "full", "end": "half"}}


def test_a_room_turned_a_quarter_has_the_same_strips_at_walls_of_other_names():
    """Exactly so where the control wall lies along an axis, so that nothing is rounded."""
    chance = random.Random(12)
    for _ in range(12):
        corners = places(chance)
        corners[1] = (corners[1][0], corners[0][1])
        given = {**spec(points(corners), "W4"), "grid": GRIDDED}
        one, other = laid_out(given), laid_out(quarter(given, points(turned(corners))))
        assert apart_most(one, other) == 0


GRID_OF_CORNERS = Fraction(1, 8000) / Fraction("25.4")
"""What a corner that is snapped may be off by, in inches; a figure rests on a few of them."""


def test_whichever_way_a_room_is_taped_only_the_snapping_of_corners_differs():
    chance = random.Random(13)
    for number in range(16):
        corners = places(chance)
        control = chance.choice(WALLS)
        kind = points if number % 2 else taped
        given = {**spec(kind(corners), control), "grid": GRIDDED}
        other = laid_out(quarter(given, kind(turned(corners))))
        assert apart_most(laid_out(given), other) <= 8 * GRID_OF_CORNERS


def test_sides_and_diagonals_told_in_millimeters_are_the_same_room():
    chance = random.Random(14)
    for _ in range(8):
        survey = taped(places(chance))
        metric = {
            part: {
                name: f"{Fraction(each.split()[0]) * Fraction('25.4')} mm"
                for name, each in survey[part].items()
            }
            for part in ("sides", "diagonals")
        }
        one, other = laid_out(spec(survey, "W2")), laid_out(spec(metric, "W2"))
        assert one.outline == other.outline
        assert one.crooked is not None
        assert other.crooked is not None
        assert one.crooked.walls == other.crooked.walls
