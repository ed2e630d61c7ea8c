"""Quantities: published rules and hand-worked ceilings, each with its arithmetic beside it."""

from fractions import Fraction

import pytest

from lacunar.layout.records import Layout
from lacunar.measure.length import Length
from lacunar.model.stock import nominal_size, read_stock
from lacunar.model.take_off import Coverage, CoverageUnit
from lacunar.takeoff.quantities.quantity_records import (
    CUBIC_METERS_IN_BOARD_FOOT,
    Quantity,
    QuantityKind,
    UsedFor,
)
from lacunar.takeoff.quantities.stock_amounts import board_feet
from lacunar.takeoff.taken_off import take_off
from tests.layout.laying_out import Spec, box, inches, laid_out, room, run
from tests.takeoff.test_parts import EQUAL

FOOT = Length.of_feet(1)


def quantity(
    layout: Layout, kind: QuantityKind, used_for: UsedFor | None = None, of: str = ""
) -> Quantity:
    """The one quantity of a kind and use."""
    (only,) = (
        each
        for each in take_off([layout]).quantities
        if each.kind is kind and used_for in (None, each.used_for) and of in ("", each.of)
    )
    return only


@pytest.mark.parametrize(
    ("name", "per_foot"),
    [
        # Board feet to a lineal foot, as a guide to salvaged lumber tabulates them, recomputed from
        # T W / 12: .333, .5, .667, 1, .667, 1, 1.333, 1.667
        ("1x4", Fraction(1, 3)),
        ("1x6", Fraction(1, 2)),
        ("1x8", Fraction(2, 3)),
        ("1x12", Fraction(1)),
        ("2x4", Fraction(2, 3)),
        ("2x6", Fraction(1)),
        ("2x8", Fraction(4, 3)),
        ("2x10", Fraction(5, 3)),
    ],
)
def test_board_feet_of_a_foot_of_each_nominal_size(name: str, per_foot: Fraction):
    size = nominal_size(read_stock(name))
    assert size is not None
    assert board_feet(*size, FOOT).value == per_foot


@pytest.mark.parametrize(
    ("size", "feet", "expected"),
    [
        # The same rule for quarter stock, and its minimum of 1 in: 5/4 x 6 x 10 -> 6.25,
        # 6/4 x 8 x 10 -> 10, 1/2 x 6 x 8 -> 4 (a supplier's article quoting the NHLA rule)
        (("5/4", "6"), 10, Fraction(25, 4)),
        (("3/2", "8"), 10, Fraction(10)),
        (("1/2", "6"), 8, Fraction(4)),
    ],
)
def test_board_feet_of_quarter_stock(size: tuple[str, str], feet: int, expected: Fraction):
    thickness, width = (inches(each) for each in size)
    assert board_feet(thickness, width, Length.of_feet(feet)).value == expected


def test_a_board_foot_in_cubic_meters():
    # 144 * .0254**3, from the exact inch
    assert Fraction("0.002359737216") == CUBIC_METERS_IN_BOARD_FOOT


def test_full_sizes_are_not_dressed_ones():
    """The trap: a full 2x4 holds 8/5.25 of a dressed one, 52.4 percent more (a guide says 15)."""
    stock = read_stock("2x4")
    dressed = stock.thickness.inches * stock.width.inches
    assert round(Fraction(8) / dressed - 1, 3) == Fraction("0.524")


def test_coverage_in_both_units():
    # A public guide gives 350 to 400 square feet to a gallon as 8.59 to 9.82 square meters to a
    # liter: .09290304 * 350 / 3.785411784 = 8.5898
    metric = Coverage(Fraction("8.59"), CoverageUnit.SQUARE_METERS_PER_LITER)
    assert abs(metric.square_feet_per_gallon - 350) < Fraction(1, 50)
    metric = Coverage(Fraction("9.82"), CoverageUnit.SQUARE_METERS_PER_LITER)
    assert abs(metric.square_feet_per_gallon - 400) < Fraction(1, 5)


def test_crown_of_twelve_equal_coffers_in_feet():
    """48 pieces of 43 in are 172 ft; a published case added a tenth for waste."""
    layout = laid_out({**EQUAL, "crown": {"face": 4, "spring_from_wall": 45, "fit_total": 0}})
    crown = quantity(layout, QuantityKind.LINEAL, UsedFor.MOULDINGS)
    assert (crown.need.value, crown.waste.value) == (172, Fraction(172, 10))
    assert crown.with_waste.value == Fraction("189.2")
    assert crown.metric_need is not None
    assert crown.metric_need.value == 172 * Fraction("0.3048")
    # two rows, in each ceil(43/16) + 1 = 4 nails: 48 * 2 * 4
    nails = quantity(layout, QuantityKind.FASTENERS, UsedFor.CROWN)
    assert (nails.need.value, nails.waste.value) == (384, 0)


def test_a_painted_beam_of_14_feet():
    """A girth of 17 in, 6 + 2 * 5 1/2, over 14 ft is 19.83 square feet (by arithmetic).

    One beam across a bare room; 17 * 168 / 144 = 19.8333.
    """
    spec: Spec = {
        "room": room(120, 168),
        "beams": {"crosswise": {**box("1x6", "1x6"), "width": 6, "drop": "5 1/2"}},
        "grid": {"length": run(2), "width": run(1)},
        "panel": {"kind": "existing"},
        "take_off": {"finish": {"paint_coats": 2, "paint_coverage": "350 ft2/gal"}},
    }
    layout = laid_out(spec)
    beams = quantity(layout, QuantityKind.PAINTED_AREA, UsedFor.BEAMS)
    assert beams.need.value == Fraction(17 * 168, 144)
    # the ceiling beside it: (120 - 6) * 168 / 144 = 133; 152.8333 in all, twice over 350
    coffers = quantity(layout, QuantityKind.PAINTED_AREA, UsedFor.COFFERS)
    assert coffers.need.value == 133
    paint = quantity(layout, QuantityKind.PAINT)
    assert paint.need.value == (133 + Fraction(17 * 168, 144)) * 2 / 350
    # one coat of primer at 200, the lower end of what a public guide gives
    assert quantity(layout, QuantityKind.PRIMER).need.value == (133 + Fraction(17 * 168, 144)) / 200


def test_the_area_of_a_room_is_that_of_coffers_and_undersides():
    """168 x 144, 3 x 2 beams of 6: coffers 19800, undersides 4392, together 24192 square inches.

    12 coffers of 37 1/2 x 44; 3 * 6 * 144 + 2 * 6 * 168 - 6 * 36 = 4392 (inclusion and exclusion).
    """
    spec: Spec = {
        "room": room(168, 144),
        "beams": {"crosswise": {**box("1x6", "1x6"), "width": 6, "drop": "5 1/2"}},
        "grid": {"length": run(4), "width": run(3)},
        "panel": {"kind": "existing"},
        "take_off": {"insulation": "coffers"},
    }
    layout = laid_out(spec)
    insulated = quantity(layout, QuantityKind.INSULATION)
    assert insulated.need.value == Fraction(19800, 144)
    beams = quantity(layout, QuantityKind.PAINTED_AREA, UsedFor.BEAMS).need.value
    # bare walls have no side: each beam has two, 3 * 2 rows of 3 * 44 and 2 * 2 rows of 4 * 37.5
    sides = Fraction(3 * 2 * 3 * 44 + 2 * 2 * 4 * Fraction(75, 2)) * Fraction(11, 2)
    assert beams == (4392 + sides) / 144
    over_all = laid_out({**spec, "take_off": {"insulation": "room"}})
    assert quantity(over_all, QuantityKind.INSULATION).need.value == 168


def test_lengths_of_beams_by_hand():
    """The same room: through beams 3 of 144, cut-in pieces 8 of 37 1/2: 732 in of beam.

    So sides are twice that, and bottoms once: 122 ft and 61 ft. Wall-to-wall beams cross, so that
    the width's are cut in.
    """
    spec: Spec = {
        "room": room(168, 144),
        "beams": {
            "crosswise": {**box("1x6", "1x8"), "width": 6, "drop": "5 1/2"},
            "through": "crosswise",
        },
        "grid": {"length": run(4), "width": run(3)},
    }
    layout = laid_out(spec)
    sides = quantity(layout, QuantityKind.LINEAL, UsedFor.BEAMS, "1x6")
    assert sides.need.value == 122
    # in board feet: 122 * 1 * 6 / 12
    assert quantity(layout, QuantityKind.BOARD_FEET, UsedFor.BEAMS, "1x6").need.value == 61
    bottoms = quantity(layout, QuantityKind.LINEAL, UsedFor.BEAMS, "1x8")
    # between their sides they end at the sides that run through
    assert bottoms.need.value == 61


@pytest.mark.parametrize(
    ("board", "factor", "board_feet_factor"),
    [
        # Feet of board, and board feet, to a square foot of tongue-and-groove boards: WWPA coverage
        # estimator, as reproduced in a siding guide; rounded there to two places
        ("1x4", "3.84", "1.28"),
        ("1x6", "2.34", "1.17"),
        ("1x8", "1.75", "1.16"),
        ("1x10", "1.35", "1.13"),
    ],
)
def test_boards_by_cover_against_a_published_estimator(
    board: str, factor: str, board_feet_factor: str
):
    spec: Spec = {
        "room": room(120, 120),
        "grid": {"length": run(1), "width": run(1)},
        "panel": {"kind": "boards", "board": board, "gap": 0},
    }
    layout = laid_out(spec)
    area = quantity(layout, QuantityKind.BOARD_AREA)
    assert area.need.value == 100  # 10 ft by 10 ft
    coverage = quantity(layout, QuantityKind.BOARD_COVERAGE)
    assert abs(coverage.need.value / 100 - Fraction(factor)) <= Fraction(1, 200)
    # a tenth for waste, as the same estimator allows for square-laid boards
    assert coverage.waste.value == coverage.need.value / 10
    nominal = Length.of_inches(int(board.removeprefix("1x")))
    by_area = board_feet(inches("1"), nominal, FOOT * coverage.need.value).value / 100
    assert abs(by_area - Fraction(board_feet_factor)) <= Fraction(1, 200)


def test_nails_of_bottoms_every_20_inches():
    """A published case of prefinished bottoms nailed them every 20 in.

    One bottom of 168 in: ceil(168/20) + 1 = 10 in a row, two rows.
    """
    spec: Spec = {"room": room(120, 168), "grid": {"length": run(2), "width": run(1)}}
    bottoms = quantity(laid_out(spec), QuantityKind.FASTENERS, UsedFor.BOTTOMS)
    assert bottoms.need.value == 20
    closer = laid_out({**spec, "take_off": {"nail_spacing": {"bottoms": 8}}})
    # ceil(168/8) + 1 = 22
    assert quantity(closer, QuantityKind.FASTENERS, UsedFor.BOTTOMS).need.value == 44


def test_fasteners_of_backing_are_those_of_the_layout():
    joists = {"parallel_to": "length", "spacing": 16, "first": 8, "ceiling": "open"}
    spec: Spec = {**EQUAL, "room": room(192, 144, joists=joists)}
    layout = laid_out(spec)
    told = [
        piece.fasteners.value
        for line in layout.backing.lines
        for piece in line.pieces
        if piece.fasteners
    ]
    assert quantity(layout, QuantityKind.FASTENERS, UsedFor.BACKING).need.value == sum(told) > 0
    codes = [caution.code for caution in take_off([layout]).cautions]
    assert codes == []
    unknown = take_off([laid_out(EQUAL)])
    assert [caution.code for caution in unknown.cautions] == ["fasteners_not_counted"]


def test_adhesive_of_a_published_count():
    """24 panels of 24 x 48, 192 square feet, took 10 to 12 tubes (an owner's account).

    16 square feet to a tube, so with 30 ft of bead beads 6.4 in apart: 192 * 144 / 6.4 / 360 = 12.
    """
    spec: Spec = {
        "room": room(192, 144),
        "grid": {"length": run(1), "width": run(1)},
        "panel": {
            "kind": "sheet_goods",
            "gap": 0,
            "sheet": {"width": 24, "length": 48},
        },
        "take_off": {"adhesive": {"bead_spacing": "6.4", "bead_per_cartridge": "30 ft"}},
    }
    panels = quantity(laid_out(spec), QuantityKind.ADHESIVE, UsedFor.PANELS)
    assert panels.need.value == 12
    assert quantity(laid_out(spec), QuantityKind.SHEET_AREA).need.value == 192


def test_waste_is_as_the_spec_says_and_nothing_is_painted_where_nobody_paints():
    waste = {"beams": "0.15", "sheets": 0, "finish": "1/20"}
    spec: Spec = {**EQUAL, "take_off": {"waste": waste, "finish": {"kind": "none"}}}
    taken = take_off([laid_out(spec)])
    for each in taken.quantities:
        if each.used_for is UsedFor.BEAMS:
            assert each.waste.value == each.need.value * Fraction(15, 100)
    kinds = {each.kind for each in taken.quantities}
    assert kinds.isdisjoint({QuantityKind.PAINT, QuantityKind.PRIMER, QuantityKind.PAINTED_AREA})
    only_paint = take_off([laid_out({**EQUAL, "take_off": {"finish": {"kind": "paint"}}})])
    kinds = {each.kind for each in only_paint.quantities}
    assert QuantityKind.PAINT in kinds
    assert QuantityKind.PRIMER not in kinds


def test_allowances_are_needed_too():
    spec: Spec = {**EQUAL, "take_off": {"length_allowance": 1}}
    plain, longer = (take_off([laid_out(each)]) for each in (EQUAL, spec))
    pieces = sum(part.quantity for part in plain.parts if part.material.name == "1x6")
    needs = [
        next(each.need.value for each in taken.quantities if each.of == "1x6")
        for taken in (plain, longer)
    ]
    assert needs[1] - needs[0] == Fraction(pieces, 12)
