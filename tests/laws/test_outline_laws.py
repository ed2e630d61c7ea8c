"""Laws of rooms with other than four walls, on random ones; areas are held against shapely."""

import json
from fractions import Fraction
from itertools import combinations
from typing import Any

import pytest
import shapely

from lacunar.exchange.layout_json import layout_to_json
from lacunar.exchange.spec_json import read_spec
from lacunar.layout.ceiling_layout import lay_out
from lacunar.layout.outline_records import OutlinedRoom, PartialCoffer
from lacunar.layout.records import Layout
from lacunar.measure.length import ZERO
from lacunar.measure.plane import Spot
from lacunar.model.assumptions import resolve
from lacunar.model.faults import SpecRefused
from lacunar.model.room import RunName
from tests.laws.random_outlines import random_outlines
from tests.layout.laying_out import figures_in
from tests.rule_evaluation import contradictions

ROOMS = 60
SEED = 21
REFUSED_AT_MOST = 0.1
CLOSE = 1e-3

Spec = dict[str, Any]


def laid(spec: Spec) -> Layout | None:
    try:
        return lay_out(resolve(read_spec(json.dumps(spec).encode())).ceiling)
    except SpecRefused:
        return None


@pytest.fixture(scope="module")
def layouts() -> list[tuple[Spec, Layout]]:
    found = [(spec, laid(spec)) for spec in random_outlines(ROOMS, SEED)]
    kept = [(spec, layout) for spec, layout in found if layout is not None]
    assert len(kept) > ROOMS * (1 - REFUSED_AT_MOST)
    return kept


def outlined(layout: Layout) -> OutlinedRoom:
    assert layout.outlined is not None
    return layout.outlined


def polygon(corners: tuple[Spot, ...]) -> shapely.Polygon:
    return shapely.Polygon([(float(at.x.inches), float(at.y.inches)) for at in corners])


def room_of(layout: Layout) -> shapely.Polygon:
    """The room between its walls, without its columns."""
    walls = shapely.Polygon([(float(p.x.inches), float(p.y.inches)) for p in layout.outline])
    return walls.difference(columns(layout))


def coffers(layout: Layout) -> list[shapely.Polygon]:
    whole = [
        shapely.Polygon([(float(p.x.inches), float(p.y.inches)) for p in coffer.corners])
        for coffer in layout.coffers
    ]
    return [*whole, *(cut_coffer(coffer) for coffer in outlined(layout).partial_coffers)]


def cut_coffer(coffer: PartialCoffer) -> shapely.Polygon:
    holes = [polygon(hole.corners) for hole in coffer.holes]
    return polygon(coffer.corners).difference(shapely.union_all(holes))


def columns(layout: Layout) -> shapely.Polygon:
    return shapely.union_all([polygon(column.corners) for column in outlined(layout).columns])


def standing(layout: Layout) -> shapely.Polygon:
    """All that stands in the room: what is at walls, and beams as far as their spans reach."""
    room = outlined(layout)
    parts = [
        shapely.Polygon(
            [
                (float(at.x.inches), float(at.y.inches))
                for at in (wall.start, wall.end, wall.face_end, wall.face_start)
            ]
        )
        for wall in room.walls
        if wall.face_start is not None and wall.face_end is not None
    ]
    across = {beam.id: (beam.near.at_start.value, beam.far.at_start.value) for beam in layout.beams}
    for span in room.spans:
        if span.beam not in across:
            continue
        near, far = (float(place.inches) for place in across[span.beam])
        start, end = float(span.start.value.inches), float(span.end.value.inches)
        start -= float(span.start_slant.value.inches) if span.start_slant else 0
        end += float(span.end_slant.value.inches) if span.end_slant else 0
        sides = (near, start, far, end) if span.on is RunName.LENGTH else (start, near, end, far)
        box = shapely.box(*sides)
        # A slanted end at the face of a turned column is what that leaves of the box.
        slanted = span.start_slant or span.end_slant
        parts.append(box.difference(columns(layout)) if slanted else box)
    walls = shapely.Polygon([(float(p.x.inches), float(p.y.inches)) for p in layout.outline])
    return shapely.union_all(parts).intersection(walls)


def test_coffers_and_what_stands_fill_the_room(layouts: list[tuple[Spec, Layout]]):
    """The room's area is that of its coffers and of what stands in it, which do not overlap."""
    for spec, layout in layouts:
        inside = coffers(layout)
        beams = standing(layout)
        total = sum(each.area for each in inside) + beams.difference(columns(layout)).area
        whole = room_of(layout).area
        # A wall that bows in is taken at its innermost place, and leaves a gap behind it.
        gaps = sum(
            float((wall.bow * 2).inches * wall.length.value.inches)
            for wall in outlined(layout).walls
            if wall.bow > ZERO
        )
        assert whole * (1 - 1e-5) - gaps <= total <= whole * (1 + 1e-5), spec
        for each in inside:
            assert each.is_valid
            assert each.intersection(beams).area == pytest.approx(0, abs=0.5), spec


def test_no_two_coffers_overlap_and_all_lie_in_the_room(layouts: list[tuple[Spec, Layout]]):
    for spec, layout in layouts:
        inside, around = coffers(layout), room_of(layout).buffer(CLOSE)
        assert all(around.contains(each) for each in inside), spec
        assert all(
            one.intersection(other).area == pytest.approx(0, abs=CLOSE)
            for one, other in combinations(inside, 2)
        ), spec


def test_told_areas_are_those_of_the_corners(layouts: list[tuple[Spec, Layout]]):
    for spec, layout in layouts:
        room = outlined(layout)
        assert float(room.area.value) * 144 == pytest.approx(room_of(layout).area, rel=1e-6), spec
        for coffer in room.partial_coffers:
            told = float(coffer.area.value) * 144
            assert told == pytest.approx(cut_coffer(coffer).area, rel=1e-6), coffer.id


def test_corners_of_a_cut_coffer_turn_once_round(layouts: list[tuple[Spec, Layout]]):
    """The angles inside a polygon of n corners make n - 2 half turns."""
    for _, layout in layouts:
        for coffer in outlined(layout).partial_coffers:
            angles = sum(side.corner.value.degrees for side in coffer.sides)
            assert float(angles) == pytest.approx((len(coffer.sides) - 2) * 180, abs=0.01)
            for hole in coffer.holes:  # seen from the coffer, corners are those outside it
                angles = sum(side.corner.value.degrees for side in hole.sides)
                assert float(angles) == pytest.approx((len(hole.sides) + 2) * 180, abs=0.01)


def test_beams_end_inside_the_room(layouts: list[tuple[Spec, Layout]]):
    """No piece of a beam is longer than its stretch in the room, and none is empty."""
    for spec, layout in layouts:
        lengths: dict[str, Fraction] = {}
        for span in outlined(layout).spans:
            length = (span.end.value - span.start.value).inches
            lengths[span.beam] = lengths.get(span.beam, Fraction(0)) + length
        for beam in layout.beams:
            pieces = [piece.length.value.inches for piece in beam.pieces]
            assert all(piece > 0 for piece in pieces), spec
            assert sum(pieces) <= lengths[beam.id], spec


def test_beams_go_round_columns_or_end_at_them(layouts: list[tuple[Spec, Layout]]):
    """What a column takes of a beam is nothing, or the column stands in it as a whole."""
    for spec, layout in layouts:
        beams = standing(layout)
        for column in outlined(layout).columns:
            taken = polygon(column.corners)
            shared = taken.intersection(beams).area
            wanted = taken.area if column.stands_in else 0
            assert shared == pytest.approx(wanted, abs=0.01), spec


def test_traces_of_odd_rooms_say_what_holds(layouts: list[tuple[Spec, Layout]]):
    for _, layout in layouts[::6]:
        found = [line for figure in figures_in(layout) for line in contradictions(figure)]
        assert found == []


def test_a_rectangle_told_as_an_outline_is_the_rectangle():
    """The same coffers, beams, pieces and marks, whichever way the room is told."""
    points = [{"x": x, "y": y} for x, y in [(0, 0), (0, 160), (221, 160), (221, 0)]]
    for walls in ("half", "none", "full"):
        ends = {"start": walls, "end": walls}
        grid = {"length": {"coffers": 4, **ends}, "width": {"coffers": 3, **ends}}
        common = {"grid": grid, "crown": {"face": "2 1/2"}, "panel": {"kind": "sheet_goods"}}
        square = laid({"room": {"length": 221, "width": 160, "height": 108}, **common})
        odd = laid({"room": {"height": 108, "outline": {"points": points}}, **common})
        assert square is not None
        assert odd is not None
        one, other = (layout_to_json(each, (), trace=False) for each in (square, odd))
        for name in ("coffers", "beams", "wall_beams", "profiles", "pieces", "marks", "mouldings"):
            assert one[name] == other[name], (walls, name)
        for name in ("panel", "crossings", "headroom", "grid_id", "fitting"):
            assert one[name] == other[name], (walls, name)
        counts = [each["backing"]["forms"]["in_all"] for each in (one, other)]
        assert counts[0] == counts[1]
        assert outlined(odd).partial_coffers == ()


def mirror_image(room: Spec) -> Spec | None:
    """A room turned about its middle line; None where no corner would be at the datum."""
    outline = room["outline"]
    corners = [(each["x"], each["y"]) for each in outline["points"]]
    reach, count = max(x for x, _ in corners), len(corners)
    mirrored = [(reach - x, y) for x, y in reversed(corners)]
    if (0, 0) not in mirrored:
        return None
    first = mirrored.index((0, 0))
    turned = [*mirrored[first:], *mirrored[:first]]
    # Side s went from corner s to the next: in reverse it starts where it ended.
    surfaces = [
        {**each, "side": (count - 1 - each["side"] - first) % count + 1}
        for each in outline.get("surfaces", ())
    ]
    finish = room.get("wall_finish")
    columns = [_mirrored(column, reach) for column in room.get("columns", ())]
    swapped = {"W1": "W3", "W3": "W1"}
    if isinstance(finish, dict):
        finish = {swapped.get(wall, wall): each for wall, each in finish.items()}
    points = [{"x": x, "y": y} for x, y in turned]
    return {
        **room,
        **({"wall_finish": finish} if finish else {}),
        **({"columns": columns} if columns else {}),
        "outline": {"points": points, **({"surfaces": surfaces} if surfaces else {})},
    }


def _mirrored(column: Spec, reach: float) -> Spec:
    if "points" in column:
        return {"points": [{"x": reach - at["x"], "y": at["y"]} for at in column["points"]]}
    return {**column, "x": reach - column["x"]}


def test_a_room_and_its_mirror_image_have_the_same_coffers(layouts: list[tuple[Spec, Layout]]):
    """Turned about its middle line, columns run the other way and nothing else changes."""
    for spec, layout in layouts[::4]:
        room = mirror_image(spec["room"])
        if room is None:
            continue
        length = spec["grid"]["length"]
        other = laid(
            {
                **spec,
                "room": room,
                "grid": {
                    **spec["grid"],
                    "length": {**length, "start": length["end"], "end": length["start"]},
                },
            }
        )
        assert other is not None
        one = sorted(round(each.area, 2) for each in coffers(layout))
        assert sorted(round(each.area, 2) for each in coffers(other)) == pytest.approx(one, abs=0.1)
