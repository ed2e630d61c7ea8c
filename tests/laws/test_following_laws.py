"""Laws of grids along walls out of square, on random rooms; geometry is held against shapely."""

import json
import math
import random
from typing import Any

import pytest
import shapely
from shapely.affinity import scale

from lacunar.exchange.ceiling_json import ceiling_to_json, digest
from lacunar.exchange.layout_json import layout_to_json
from lacunar.exchange.spec_json import read_spec
from lacunar.layout.records import Layout
from lacunar.layout.survey_records import CrookedMode
from lacunar.measure.plane import Spot
from lacunar.model.assumptions import resolve
from lacunar.model.room import RunName
from lacunar.takeoff.taken_off import take_off
from tests.laws.test_survey_laws import (
    WALLS,
    Places,
    mirrored,
    places,
    points,
    taped,
)
from tests.layout.laying_out import Spec, decided, figures_in, laid_out, run
from tests.rule_evaluation import contradictions

FOLLOW = {"mode": "follow_walls"}
GRID = {"length": run(4, "half"), "width": {"coffers": 3, "start": "full", "end": "none"}}
# What snapping to 1/8000 mm may come to, once or twice [in].
HAIR = 2e-5


def spec(survey: Spec, grid: Spec | None = None, **more: Any) -> Spec:
    crooked = more.pop("crooked", FOLLOW)
    room = {"survey": survey, "height": 108, "crooked": crooked}
    return {"room": {**room, **more.pop("room", {})}, "grid": grid or GRID, **more}


def rooms(count: int, seed: int) -> list[tuple[Places, Spec]]:
    """Rooms whose grid follows the walls, with whatever goes into coffers that taper."""
    chance = random.Random(seed)
    found = []
    for number in range(count):
        corners = places(chance)
        more: Spec = {"crown": {"face": "2 1/2"}}
        if number % 3 == 0:
            more["panel"] = {"kind": "boards", "cover": 5}
            more["crooked"] = {**FOLLOW, "out_of_square": "mitred_to_corners"}
        elif number % 3 == 1:
            more["panel"] = {"kind": "sheet_goods", "seat": "between_sides"}
            more["room"] = {"members": [{"on": "length", "center": 70, "width": 3, "drop": 3}]}
            more["beams"] = {"crosswise": {"sides": "1x8", "bottom": "1x10"}, "lengthwise": "same"}
            more["grid"] = {"length": run([1, 2], "half"), "width": run(2, "full")}
        else:
            soffit = {"soffit": 9, "then": "half"}
            more["grid"] = {"length": {"coffers": 3, "end": soffit}, "width": run(3, "half")}
            more["room"] = {"joists": {"parallel_to": "width", "first": 8}}
        found.append((corners, spec(points(corners) if number % 2 else taped(corners), **more)))
    return found


def chosen(layout: Layout) -> CrookedMode:
    assert layout.crooked is not None
    return next(mode for mode in layout.crooked.modes if mode.chosen)


def xy(spot: Spot) -> tuple[float, float]:
    return float(spot.x.inches), float(spot.y.inches)


def outline(layout: Layout) -> list[tuple[float, float]]:
    return [(float(corner.x.inches), float(corner.y.inches)) for corner in layout.outline]


def test_every_figure_is_what_its_rule_gives():
    for _, given in rooms(9, seed=1):
        layout = laid_out(given)
        assert layout.followed is not None
        assert [each for f in figures_in(layout) for each in contradictions(f)] == []


def test_a_resolved_spec_read_again_assumes_nothing_and_keeps_its_digest():
    for _, given in rooms(9, seed=2):
        ceiling = decided(given)
        again = resolve(read_spec(json.dumps(ceiling_to_json(ceiling)).encode()))
        assert again.assumptions == ()
        assert again.ceiling == ceiling
        assert digest(again.ceiling) == digest(ceiling)


def told(layout: Layout) -> Spec:
    """What a layout says of sizes and places, and of both ways to lay out."""
    answer = layout_to_json(layout, (), trace=False)
    modes = answer["crooked"]["modes"]
    for mode in modes:
        del mode["chosen"]
    for name in ("ceiling", "crooked"):
        del answer[name]
    return {**answer, "modes": modes}


@pytest.mark.parametrize("finish", ["finish", "framing"])
@pytest.mark.parametrize("end", ["none", "half", "full"])
def test_in_a_square_room_both_ways_are_the_same_to_the_last_digit(finish: str, end: str):
    """30, 40 and 50 ft: a room with right angles, and thirds of an inch in its coffers."""
    sides = {"W1": "30 ft", "W3": "30 ft", "W2": "40 ft", "W4": "40 ft"}
    survey = {"sides": sides, "diagonals": {"rising": "50 ft"}}
    member = {"on": "length", "center": 130, "center_at_end": 131, "width": 3, "drop": 3}
    given = spec(
        survey,
        {"length": {"coffers": [2, 3], "end": end}, "width": run(3, end)},
        room={"measured_to": finish, "members": [member]},
        beams={"crosswise": {"sides": "1x8", "bottom": "1x12"}, "lengthwise": "same"},
        crown={"face": "2 1/2"},
    )
    along = laid_out(given)
    square = laid_out({**given, "room": {**given["room"], "crooked": {"mode": "keep_square"}}})
    assert along.followed is None
    assert told(along) == told(square)
    kept, followed = told(along)["modes"]
    assert {**kept, "mode": ""} == {**followed, "mode": ""}


def test_each_wall_is_divided_by_itself():
    """Half beams at both walls: the middle of beam k stands at k parts of n of its own wall."""
    chance = random.Random(3)
    for _ in range(6):
        corners = places(chance)
        layout = laid_out(
            spec(points(corners), {"length": run(4, "half"), "width": run(3, "half")})
        )
        ends = {
            ("length", "start"): (0, 1, 4),
            ("length", "end"): (3, 2, 4),
            ("width", "start"): (0, 3, 3),
            ("width", "end"): (1, 2, 3),
        }
        for marks in layout.marks:
            one, other, count = ends[str(marks.run), marks.end]
            long = math.dist(corners[one], corners[other])
            centers = [float(m.exact.value.inches) for m in marks.marks if m.kind == "center"]
            wanted = [long * k / count for k in range(1, count)]
            assert centers == pytest.approx(wanted, abs=HAIR)


def test_coffers_lie_where_lines_between_both_walls_cross():
    """Each coffer's corners against shapely: lines through marks on opposite walls, crossed."""
    for _, given in rooms(9, seed=4):
        layout = laid_out(given)
        room = [shapely.Point(at) for at in outline(layout)]
        lines = {run_name: coffer_lines(layout, room, run_name) for run_name in ("length", "width")}
        for coffer in chosen(layout).coffers:
            found = next(each for each in layout.coffers if each.id == coffer.id)
            left, right = lines["length"][found.column - 1]
            low, high = lines["width"][found.row - 1]
            crossed = [left & low, right & low, right & high, left & high]
            for corner, at in zip(coffer.corners, crossed, strict=True):
                assert math.dist(xy(corner.at), (at.x, at.y)) < 20 * HAIR
            polygon = shapely.Polygon([xy(corner.at) for corner in coffer.corners])
            assert shapely.Polygon(room).buffer(HAIR).contains(polygon)
            angles = [float(corner.angle.value.degrees) for corner in coffer.corners]
            assert angles == pytest.approx(angles_of(polygon), abs=1e-4)
            assert sum(angles) == pytest.approx(360, abs=1e-4)


def coffer_lines(
    layout: Layout, room: list[shapely.Point], of: str
) -> list[tuple[shapely.LineString, shapely.LineString]]:
    """Both sides of each coffer across a run, between marks on the walls along it."""
    walls = {"length": ((0, 1), (3, 2)), "width": ((0, 3), (1, 2))}[of]
    faces = []
    for end, (start, stop) in zip(("start", "end"), walls, strict=True):
        (marks,) = (m.marks for m in layout.marks if (m.run, m.end) == (of, end))
        long = shapely.LineString([room[start], room[stop]])
        at = sorted(float(m.exact.value.inches) for m in marks if m.kind in ("face", "wall"))
        faces.append([long.interpolate(place) for place in at])
    # A corner may lie at a line's very end, where nothing crosses but for rounding.
    joined = [scale(shapely.LineString(pair), 1.1, 1.1) for pair in zip(*faces, strict=True)]
    kinds = [element.kind for element in layout.run(RunName(of)).elements]
    return [(joined[at], joined[at + 1]) for at, kind in enumerate(kinds) if str(kind) == "coffer"]


def angles_of(polygon: shapely.Polygon) -> list[float]:
    spots = list(polygon.exterior.coords)[:-1]
    found = []
    for number, (x, y) in enumerate(spots):
        (ax, ay), (bx, by) = spots[number - 1], spots[(number + 1) % 4]
        before, after = complex(ax - x, ay - y), complex(bx - x, by - y)
        found.append(math.degrees(abs(math.atan2((before / after).imag, (before / after).real))))
    return found


def test_areas_are_those_of_the_polygons():
    for _, given in rooms(6, seed=5):
        layout = laid_out(given)
        assert layout.followed is not None
        room = shapely.Polygon(outline(layout)).area / 144
        coffers = sum(
            shapely.Polygon([xy(corner.at) for corner in coffer.corners]).area / 144
            for coffer in chosen(layout).coffers
        )
        assert float(layout.followed.room.value) == pytest.approx(room, abs=1e-6)
        assert float(layout.followed.openings.value) == pytest.approx(coffers, abs=1e-6)


def test_sides_and_diagonals_are_the_distances_of_the_corners():
    for _, given in rooms(6, seed=6):
        for coffer in chosen(laid_out(given)).coffers:
            at = [xy(corner.at) for corner in coffer.corners]
            pairs = [(3, 0), (2, 3), (1, 2), (0, 1), (0, 2), (1, 3)]
            found = [*coffer.sides, coffer.rising, coffer.falling]
            for figure, (one, other) in zip(found, pairs, strict=True):
                assert float(figure.value.inches) == pytest.approx(
                    math.dist(at[one], at[other]), abs=HAIR
                )


def test_pieces_of_beams_end_where_others_begin():
    """No piece shares space with another or with a coffer, and each face is as long as told."""
    for _, given in rooms(6, seed=7):
        layout = laid_out(given)
        assert layout.followed is not None
        coffers = [
            shapely.Polygon([xy(corner.at) for corner in coffer.corners])
            for coffer in chosen(layout).coffers
        ]
        pieces = []
        for beam in layout.followed.beams:
            for piece in beam.pieces:
                near, far = (piece.near.start, piece.near.end), (piece.far.end, piece.far.start)
                pieces.append(shapely.Polygon([xy(spot) for spot in (*near, *far)]))
                for face in (piece.near, piece.far):
                    assert float(face.length.value.inches) == pytest.approx(
                        math.dist(xy(face.start), xy(face.end)), abs=HAIR
                    )
        for number, one in enumerate(pieces):
            for other in (*pieces[number + 1 :], *coffers):
                assert one.intersection(other).area < 0.01
        assert all(piece.is_valid for piece in pieces)


def test_boards_of_beams_reach_as_far_as_their_longer_face():
    for _, given in rooms(3, seed=8):
        layout = laid_out(given)
        assert layout.followed is not None
        longest = max(
            max(piece.near.length.value, piece.far.length.value)
            for beam in layout.followed.beams
            if beam.id.startswith("XB")
            for piece in beam.pieces
        )
        bottoms = [
            piece
            for piece in layout.pieces
            if piece.part == "bottom" and any(p.beam.startswith("XB") for p in piece.places)
        ]
        assert max(piece.length.value for piece in bottoms) >= longest


def test_a_mirrored_room_has_mirrored_coffers():
    """Within what snapping leaves: the mirrored room is turned another way before it."""
    swap = {"W1": "W3", "W2": "W2", "W3": "W1", "W4": "W4"}
    chance = random.Random(9)
    grid = {"length": run(4, "half"), "width": {"coffers": 3, "start": "full", "end": "half"}}
    for _ in range(6):
        corners = places(chance)
        one = laid_out(spec(points(corners), grid))
        other = laid_out(spec(points(mirrored(corners)), grid))
        for coffer in chosen(one).coffers:
            column = 5 - int(coffer.id[1:])
            twin = next(c for c in chosen(other).coffers if c.id == f"{coffer.id[0]}{column}")
            sides = dict(zip(WALLS, twin.sides, strict=True))
            for wall, side in zip(WALLS, coffer.sides, strict=True):
                assert abs((side.value - sides[swap[wall]].value).inches) < 20 * HAIR
            assert abs((coffer.rising.value - twin.falling.value).inches) < 20 * HAIR
            for number, corner in enumerate(coffer.corners):
                mirror = twin.corners[(1, 0, 3, 2)[number]].angle.value
                assert abs(float((corner.angle.value - mirror).degrees)) < 1e-4


def test_a_take_off_has_all_that_a_tapering_ceiling_is_made_of():
    for _, given in rooms(3, seed=12):
        layout = laid_out(given)
        taken = take_off([layout])
        assert taken.parts
        assert "ends_aslant_not_taken_off" in [caution.code for caution in taken.cautions]
