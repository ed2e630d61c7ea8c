"""Laws of control lines by a member, and of excess shared to both ends, on random rooms."""

import math
import random
from fractions import Fraction

import pytest

from tests.laws.test_following_laws import HAIR, outline, spec
from tests.laws.test_survey_laws import WALLS, mirrored, places, points
from tests.layout.laying_out import laid_out


@pytest.mark.parametrize("control", WALLS)
def test_shared_excess_adds_up_to_what_the_room_has_beyond_its_clear_lines(control: str):
    """At each end both strips have their own widths and all the excess; the widest are alike."""
    chance = random.Random(10)
    for _ in range(4):
        survey = points(places(chance))
        wide = {"soffit": 12, "then": "half"}
        grid = {name: {"coffers": 3, "start": wide, "end": wide} for name in ("length", "width")}
        plain, split = (
            laid_out(spec(survey, grid, crooked={"control": control, "excess": excess}))
            for excess in ("end", "split")
        )
        assert plain.crooked is not None
        assert split.crooked is not None
        after = {wall.wall: wall for wall in split.crooked.walls}
        for one, other in (("W1", "W3"), ("W4", "W2")):
            widest = [max(after[w].at_start.value, after[w].at_end.value) for w in (one, other)]
            assert abs((widest[0] - widest[1]).inches) < HAIR
        beams = {beam.id: beam.width.value for beam in split.wall_beams}
        for now, then in zip(split.crooked.runs, plain.crooked.runs, strict=True):
            assert now.clear.value == then.clear.value
            walls = [after[w] for w in (("W1", "W3") if now.run == "length" else ("W4", "W2"))]
            own = beams[walls[0].strip or ""] + beams[walls[1].strip or ""]
            for end, span in (("at_start", now.span_at_start), ("at_end", now.span_at_end)):
                widths = [getattr(wall, end).value for wall in walls]
                assert widths[0] + widths[1] == own + span.value - now.clear.value
        assert [c.length.value for c in split.coffers] == [c.length.value for c in plain.coffers]


def test_a_grid_square_to_a_member_has_it_at_one_place():
    """However the member wanders, in the grid it does not, and its casing is no wider for it."""
    chance = random.Random(11)
    for _ in range(6):
        at_end = 70 + Fraction(chance.randint(-32, 32), 16)
        member = {"name": "S1", "on": "length", "center": 70, "center_at_end": f"{at_end} in"}
        layout = laid_out(
            spec(
                points(places(chance)),
                {"length": {"coffers": [1, 2]}, "width": {"coffers": 2}},
                crooked={"control": "S1", "visible_taper": 12},
                room={"members": [{**member, "width": 3, "drop": 3}]},
                beams={"crosswise": {"sides": "1x8", "bottom": "1x10"}, "lengthwise": "same"},
            )
        )
        assert layout.crooked is not None
        assert (layout.crooked.control, layout.crooked.control_by) == ("S1", "member")
        (beam,) = (each for each in layout.beams if each.member)
        assert beam.member is not None
        assert not beam.member.skew.value
        assert beam.member.near.at_start.value == beam.member.near.at_end.value
        # Where it was taped along W4, it lies in the room.
        corners = outline(layout)
        along = complex(*corners[1]) - complex(*corners[0])
        spot = complex(*corners[0]) + along / abs(along) * 70
        middle = (
            float((beam.member.near.at_start.value + beam.member.far.at_start.value).inches) / 2
        )
        assert middle == pytest.approx(spot.real, abs=10 * HAIR)


def test_a_mirrored_room_with_its_excess_shared_has_mirrored_strips():
    swap = {"W1": "W3", "W2": "W2", "W3": "W1", "W4": "W4"}
    chance = random.Random(13)
    wide = {"soffit": 12, "then": "half"}
    grid = {name: {"coffers": 3, "start": wide, "end": wide} for name in ("length", "width")}
    crooked = {"control": "W4", "excess": "split"}
    for _ in range(4):
        corners = places(chance)
        one = laid_out(spec(points(corners), grid, crooked=crooked))
        other = laid_out(spec(points(mirrored(corners)), grid, crooked=crooked))
        assert one.crooked is not None
        assert other.crooked is not None
        twins = {wall.wall: wall for wall in other.crooked.walls}
        for wall in one.crooked.walls:
            twin = twins[swap[wall.wall]]
            ends = twin.at_start.value, twin.at_end.value
            first, last = ends if wall.wall in ("W1", "W3") else ends[::-1]
            assert abs((wall.at_start.value - first).inches) < 20 * HAIR
            assert abs((wall.at_end.value - last).inches) < 20 * HAIR


def test_a_mirrored_room_kept_square_to_its_member_is_the_same_room():
    """The member's centers are then taped from the other wall: what is left of W4 and of W2."""
    chance = random.Random(14)
    for _ in range(4):
        corners = places(chance)
        long = [math.dist(corners[a], corners[b]) for a, b in ((0, 1), (3, 2))]
        taken = [70.0, 70 + chance.uniform(-2, 2)]
        found = []
        for room, ends in (
            (corners, taken),
            (mirrored(corners), [whole - at for whole, at in zip(long, taken, strict=True)]),
        ):
            center, at_end = (f"{at:.9f} in" for at in ends)
            member = {"name": "S1", "on": "length", "center": center, "center_at_end": at_end}
            layout = laid_out(
                spec(
                    points(room),
                    {"length": {"coffers": [1, 1]}, "width": {"coffers": 2}},
                    crooked={"control": "S1", "visible_taper": 12},
                    room={"members": [{**member, "width": 3, "drop": 3}]},
                    beams={"crosswise": {"sides": "1x8", "bottom": "1x10"}, "lengthwise": "same"},
                )
            )
            assert layout.crooked is not None
            found.append(layout.crooked)
        one, other = found
        for mine, its in zip(one.runs, other.runs, strict=True):
            assert abs((mine.clear.value - its.clear.value).inches) < 20 * HAIR
        tapers = [
            sorted(float(wall.taper.value.inches) for wall in crooked.walls) for crooked in found
        ]
        assert tapers[0] == pytest.approx(tapers[1], abs=20 * HAIR)
