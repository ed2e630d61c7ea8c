"""Parts: every piece of a layout once, alike ones under one mark, each with all it is made by."""

import json
from pathlib import Path

import pytest

from lacunar.layout.names import row_letters
from lacunar.measure.angle import Angle
from lacunar.measure.length import Length
from lacunar.model.limits import COFFERS_PER_RUN
from lacunar.takeoff.marks import LETTERS
from lacunar.takeoff.part_records import EndCut, Face, Grain, MaterialKind, PartKind
from lacunar.takeoff.parts import parts_from, pieces_of
from tests.layout.laying_out import Spec, box, inches, laid_out, room, run
from tests.layout.test_traces import SPECS
from tests.takeoff.reconciling import backing_of, unlike
from tests.takeoff.taking_off import counted, parts_of, taken_off

EXAMPLES = sorted((Path(__file__).parents[2] / "examples" / "ceilings").glob("*.json"))

# 192 x 144, 4 x 3 coffers, half beams of 5 at the walls: openings 192/4 - 5 = 43, 144/3 - 5 = 43.
EQUAL: Spec = {
    "room": room(192, 144),
    "beams": {"crosswise": box(backing="2x4"), "lengthwise": "same"},
    "grid": {"length": run(4, "half"), "width": run(3, "half")},
    "panel": {"kind": "existing"},
}


@pytest.mark.parametrize("path", EXAMPLES, ids=lambda path: path.stem)
def test_every_piece_of_an_example_is_a_part_once(path: Path):
    layout = laid_out(json.loads(path.read_text(encoding="utf-8")))
    assert unlike(layout, parts_from(pieces_of(layout))) == []


@pytest.mark.parametrize("name", SPECS)
def test_every_piece_of_a_layout_is_a_part_once(name: str):
    spec = SPECS[name]
    layout = laid_out(spec)
    parts = parts_from(pieces_of(layout))
    assert unlike(layout, parts) == []
    backing = [part for part in parts if part.kind in (PartKind.BACKING, PartKind.CLEAT)]
    told = sum((part.length.value * part.quantity for part in backing), Length.of_inches(0))
    assert told == backing_of(layout if layout.ceiling.fixing else laid_out({**spec, "fixing": {}}))


def test_a_piece_left_out_or_counted_twice_would_be_found():
    layout = laid_out(EQUAL)
    pieces = pieces_of(layout)
    assert unlike(layout, parts_from(pieces[1:])) != []
    assert unlike(layout, parts_from((*pieces, pieces[0]))) != []


def test_crown_of_twelve_equal_coffers():
    """A published story: a 3 x 4 grid, coffers of 43 in, has 48 pieces, 172 ft, 96 cuts.

    12 coffers of 4 pieces; 48 * 43 = 2064 in = 172 ft; each piece has two ends. Here a frame fits
    without play, so that its pieces are as long as the opening.
    """
    crown = {"face": "3 1/4", "spring_from_wall": 38, "fit_total": 0}
    (part,) = parts_of(laid_out({**EQUAL, "crown": crown}), PartKind.CROWN)
    assert part.quantity == 48
    assert part.length.value * part.quantity == Length.of_feet(172)
    ends = [end.cut for end in (part.left, part.right)]
    assert part.quantity * ends.count(EndCut.MITRED) == 96
    assert {end.corner for end in (part.left, part.right)} == {Angle.of_degrees(90)}
    # each of the four sides of every coffer, once
    assert len({(place.of, place.at) for place in part.places}) == 48


def test_boards_of_beams_are_ripped_from_their_stock():
    """A box of 1x6 sides and a 1x4 bottom between them: 3 1/2 + 2 * 3/4 = 5 wide, 5 1/2 deep.

    The common detail of box beams (trade articles): sides 5 1/2, bottom 3 1/2, both 3/4 thick.
    """
    sides = parts_of(laid_out(EQUAL), PartKind.SIDE)
    assert {(part.thickness.value, part.width.value) for part in sides if part.width} == {
        (inches("3/4"), inches("5 1/2"))
    }
    assert {part.material.name for part in sides} == {"1x6"}
    assert {(p.material.nominal_thickness, p.material.nominal_width) for p in sides} == {
        (inches("1"), inches("6"))
    }
    bottoms = parts_of(laid_out(EQUAL), PartKind.BOTTOM)
    # between the sides, at the walls half of it: 5/2 - 3/4 = 1 3/4
    assert {part.width.value for part in bottoms if part.width} == {
        inches("3 1/2"),
        inches("1 3/4"),
    }
    assert {part.face for part in sides} == {Face.OUT}
    assert {part.face for part in bottoms} == {Face.DOWN}


def test_alike_parts_of_unlike_beams_share_a_mark():
    # Sides of each coffer by itself, mitred: all openings are 43, so all 48 sides are one part.
    look = {"sides": "per_coffer", "corners": "mitred"}
    spec = {**EQUAL, "beams": {**EQUAL["beams"], "look": look}}
    (part,) = parts_of(laid_out(spec), PartKind.SIDE)
    assert (part.mark, part.quantity) == ("SD1", 48)
    assert {beam[:2] for place in part.places for beam in place.of} == {"XB", "LB", "WB"}


def test_marks_number_the_longest_first():
    parts = parts_of(laid_out(SPECS["joists across, open"]))
    by_kind: dict[str, list[Length]] = {}
    for part in parts:
        assert part.mark == f"{LETTERS[part.kind]}{len(by_kind.get(part.kind, [])) + 1}"
        by_kind.setdefault(part.kind, []).append(part.length.value)
    assert all(lengths == sorted(lengths, reverse=True) for lengths in by_kind.values())
    assert len({part.mark for part in parts}) == len(parts)


def test_no_mark_is_the_id_of_anything_on_a_plan():
    rows = {row_letters(row) for row in range(1, COFFERS_PER_RUN + 1)}
    assert rows.isdisjoint(LETTERS.values())
    assert len(set(LETTERS.values())) == len(PartKind)


def test_a_wall_beam_mitred_at_one_end_has_a_hand_and_its_side_has_none():
    """The bottoms of two walls across from each other, mitred in one corner each, are mirrored."""
    spec: Spec = {
        "room": room(300, 144),
        "beams": {"crosswise": box(), "lengthwise": "same", "look": {"corners": "mitred"}},
        "grid": {"length": run(6, "half"), "width": run(3, "half")},
    }
    layout = laid_out(spec)
    bottoms = [
        part
        for part in parts_of(layout, PartKind.BOTTOM)
        if {part.left.cut, part.right.cut} == {EndCut.MITRED, EndCut.SQUARE}
    ]
    at = {
        place.of[0]: part for part in bottoms for place in part.places if place.start == inches("0")
    }
    # W4 (WB of the bottom wall) has its start to the left, W2 to the right: see `sources.beams`
    walls = {beam.id: beam.wall for beam in layout.wall_beams}
    hands = {walls[beam]: part.left.cut for beam, part in at.items()}
    assert hands == {"W4": EndCut.MITRED, "W2": EndCut.SQUARE}
    sides = [
        part
        for part in parts_of(layout, PartKind.SIDE)
        if {part.left.cut, part.right.cut} == {EndCut.MITRED, EndCut.SQUARE}
    ]
    assert sides
    # one order of ends for both hands
    assert {(part.left.cut, part.right.cut) for part in sides} == {(EndCut.MITRED, EndCut.SQUARE)}


def test_sides_of_a_folded_beam_have_a_hand_as_seen_from_their_coffer():
    """Wall beams along W1 and W4 alone, mitred in the corner where both runs start.

    Their lower edges are mitred too, so that none can be turned. Who looks at W1 has W4, and so the
    corner, to the left; who looks at W4 has W1 to the right.
    """
    folded = {"sides": "1x6", "bottom": "1x6", "bottom_joint": "mitred"}
    alone = {"coffers": 1, "start": "half", "end": "none"}
    spec: Spec = {
        "room": room(120, 96),
        "beams": {"crosswise": folded, "lengthwise": "same", "look": {"corners": "mitred"}},
        "grid": {"length": alone, "width": alone},
    }
    layout = laid_out(spec)
    walls = {beam.id: beam.wall for beam in layout.wall_beams}
    hands = {
        walls[place.of[0]]: (part.left.cut, part.right.cut, part.mitred_edges)
        for part in parts_of(layout, PartKind.SIDE)
        for place in part.places
    }
    assert hands == {
        "W1": (EndCut.MITRED, EndCut.SQUARE, 1),
        "W4": (EndCut.SQUARE, EndCut.MITRED, 1),
    }


def test_panels_are_cut_at_their_seams_with_the_grain():
    # one coffer of 120 x 60 between bare walls, no gap; sheet 48 x 96, grain along the length:
    # 120/96 -> 2 pieces of 60 along, 60/48 -> 2 pieces of 30 up
    spec: Spec = {
        "room": room(120, 60),
        "grid": {"length": run(1), "width": run(1)},
        "panel": {"kind": "sheet_goods", "grain": "length", "gap": 0},
    }
    (part,) = parts_of(laid_out(spec), PartKind.PANEL)
    assert part.width is not None
    assert (part.quantity, part.length.value, part.width.value) == (4, inches("60"), inches("30"))
    assert part.grain is Grain.LENGTHWISE
    assert {place.at for place in part.places} == {"1.1", "1.2", "2.1", "2.2"}
    turned = {**spec, "panel": {**spec["panel"], "grain": "width"}}
    # along the width 60/96 -> 1 piece of 60, along the length 120/48 -> 3 pieces of 40
    (part,) = parts_of(laid_out(turned), PartKind.PANEL)
    assert part.width is not None
    assert (part.quantity, part.length.value, part.width.value) == (3, inches("60"), inches("40"))


def test_boards_are_whole_but_for_the_first_and_the_last():
    # 41 across, cover 5, tongue 1/4: nine courses, 3 in at both edges (41 - 7 * 5 = 6)
    spec: Spec = {
        "room": room(100, 41),
        "grid": {"length": run(1), "width": run(1)},
        "panel": {
            "kind": "boards",
            "cover": 5,
            "tongue": "1/4",
            "gap": 0,
            "parallel_to": "length",
        },
    }
    parts = {part.name: part for part in parts_of(laid_out(spec), PartKind.BOARD)}
    assert {name: part.quantity for name, part in parts.items()} == {
        "First board": 1,
        "Board": 7,
        "Last board": 1,
    }
    widths = {name: part.width.value for name, part in parts.items() if part.width}
    assert widths == {
        "First board": inches("3 1/4"),
        "Board": inches("5 1/4"),
        "Last board": inches("3"),
    }
    assert all(part.material.kind is MaterialKind.BOARDS for part in parts.values())


def test_backing_longer_than_its_stock_is_butted_where_it_is_fixed():
    # joists at 8, 24, 40, ... across a beam of 178 in; boards up to 96 in: the last joist within
    # 96 is at 88, the rest of 90 is one piece
    spec: Spec = {
        "room": room(
            60, 178, joists={"parallel_to": "length", "spacing": 16, "first": 8, "ceiling": "open"}
        ),
        "beams": {"crosswise": box(backing="2x4")},
        "grid": {"length": run(2), "width": run(1)},
        "stock": {"longest_board": 96},
    }
    backing = parts_of(laid_out(spec), PartKind.BACKING)
    assert sorted(part.length.value for part in backing) == [inches("88"), inches("90")]


def test_parts_longer_than_their_stock_are_cautioned():
    spec: Spec = {
        "room": room(240, 60),
        "grid": {"length": run(1), "width": run(1)},
        "panel": {"kind": "boards", "cover": 5, "parallel_to": "length"},
    }
    taken = taken_off(spec)
    assert [caution.code for caution in taken.cautions] == ["parts_longer_than_stock"]
    assert taken.cautions[0].figures["ceiling"] == 1
    assert "parts_longer_than_stock" not in {each.code for each in taken_off(EQUAL).cautions}


def test_allowances_are_told_beside_net_sizes():
    # sides are 5 1/2 of 1x6: ripped to no more than the board has; bottoms 3 1/2 of 1x4 as well;
    # at the walls 1 3/4 + 1/8
    spec = {**EQUAL, "take_off": {"length_allowance": "1/2", "width_allowance": "1/8"}}
    plain = {part.mark: part for part in parts_of(laid_out(EQUAL))}
    for part in parts_of(laid_out(spec)):
        net = plain[part.mark]
        assert part.length.value == net.length.value
        assert part.cut_length.value == net.length.value + inches("1/2")
        assert part.cut_width is not None
        assert part.material.width is not None
        assert part.cut_width.value <= part.material.width
        if part.width is not None and part.width.value == inches("1 3/4"):
            assert part.cut_width.value == inches("1 7/8")


def test_a_scribed_side_is_as_wide_as_its_tallest_place():
    layout = laid_out(SPECS["a ceiling that sags, sides up to it"])
    assert layout.levels is not None
    boards = {level.beam: level.board.value for level in layout.levels.beams}
    widths = {
        place.of[0]: part.width.value
        for part in parts_of(layout, PartKind.SIDE)
        for place in part.places
        if part.width
    }
    assert boards
    assert {beam: widths[beam] for beam in boards} == boards


def test_mouldings_of_a_coffer_out_of_square_meet_its_own_corners():
    path = next(path for path in EXAMPLES if path.stem == "map_room")
    layout = laid_out(json.loads(path.read_text(encoding="utf-8")))
    assert layout.measured_openings is not None
    (coffer,) = [panel.coffer for panel in layout.measured_openings.crown]
    opening = next(o for o in layout.measured_openings.openings if o.coffer == coffer)
    told = sorted(corner.angle.value for corner in opening.corners)
    crown = [
        part
        for part in parts_of(layout, PartKind.CROWN)
        if any(place.of == (coffer,) for place in part.places)
    ]
    met = [end.corner for part in crown for end in (part.left, part.right)]
    assert sorted(corner for corner in met if corner) == sorted(2 * told)


def test_pooled_ceilings_share_marks_and_each_place_names_its_own():
    wider = {**EQUAL, "room": room(192, 189)}  # 189/3 - 5 = 58: other sides, the same half beams
    taken = taken_off(EQUAL, wider)
    assert [ceiling.number for ceiling in taken.ceilings] == [1, 2]
    both = [part for part in taken.parts if {p.ceiling for p in part.places} == {1, 2}]
    assert both
    one, two = (parts_of(laid_out(spec)) for spec in (EQUAL, wider))
    assert counted(list(taken.parts)) == counted(one) + counted(two)
