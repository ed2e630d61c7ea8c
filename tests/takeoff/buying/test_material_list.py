"""Material lists: published and hand-worked jobs, each with its arithmetic beside it."""

from fractions import Fraction

import pytest

from lacunar.model import cutting_limits
from lacunar.model.faults import SpecRefused
from lacunar.takeoff.material_records import LineKind
from tests.takeoff.buying.listing import bought, cut_pieces, line, listed, lost, on_sticks
from tests.takeoff.cutting.checking import proven_bound

SIDES = {"sides": "1x6", "bottom": "1x6", "bottom_joint": "between", "reveal": "1/4"}
BEAMS = {"crosswise": SIDES, "lengthwise": "same"}


def room(length, width, columns, rows, **more):
    """A room with beams of 5 1/2 and two 3/4 in, half ones at its walls."""
    walls = {"start": "half", "end": "half"}
    return {
        "room": {"length": length, "width": width, "height": 108},
        "beams": BEAMS,
        "grid": {"length": {"coffers": columns, **walls}, "width": {"coffers": rows, **walls}},
        "panel": {"kind": "existing"},
        **more,
    }


def coffers(columns, rows, opening, other=None, **more):
    """So many coffers with this opening between beams; half beams at the walls: n (o + W)."""
    beam = Fraction(7)
    length, width = (columns * (opening + beam), rows * ((other or opening) + beam))
    return room(f"{length} in", f"{width} in", columns, rows, **more)


CROWN = {"crown": {"face": "2 1/2", "spring_from_wall": 45, "fit_total": "0"}}


def test_twenty_coffers_of_45_in_take_twenty_sticks_of_crown():
    # A carpenter's weekly log of 2013: over 300 ft of crown. Twenty coffers of 45 in have 80 pieces
    # of 45 in = 300 ft; a 16 ft stick gives four (4 x 45 + 3 saw cuts = 181 in of 192), so 20
    # sticks, 320 ft, 6.7 % over (arithmetic).
    sticks = [{"material": "Crown", "length": "16 ft", "price": 30}]
    prepared = listed(coffers(5, 4, 45, **CROWN), lengths=sticks)
    crown = line(prepared, "Crown")
    assert bought(prepared, "Crown") == {"16'-0\"": 20}
    assert (crown.need.value, crown.amount.value) == (300, 320)
    assert (crown.waste.value, crown.left_over.value) == (20, 0)
    assert crown.waste.value / crown.need.value == Fraction(1, 15)
    assert (crown.plan.cost, crown.plan.lower_bound) == ("600.00", "600.00")
    assert crown.plan.proven_best


def test_twenty_four_panels_come_from_six_sheets():
    # A published log: 24 panels of 24 x 48 in from 6 sheets of 48 x 96; with a saw cut of 1/8 in
    # two strips of a sheet are at most 23 15/16 in wide, (48 - 1/8) / 2 (arithmetic).
    panel = {
        "kind": "sheet_goods",
        "seat": "between_sides",
        "gap": "1/16",
        "sheet": {"width": "48", "length": "96"},
    }
    ceiling = coffers(6, 4, Fraction(48), Fraction(24), panel=panel)
    prepared = listed(ceiling)
    (sheets,) = (each for each in prepared.listed.materials.lines if each.kind is LineKind.SHEET)
    # 24 panels of 47 7/8 by 23 7/8 in
    assert sheets.need.value == Fraction(24 * 383 * 191, 64 * 144)
    assert [each.quantity for each in sheets.bought] == [6]
    assert sheets.plan.proven_best
    # Of 24 by 48 in themselves, two strips do not come from one width: panels then lie across it,
    # three of them with their saw cuts (72 1/4 in) to a sheet; a fourth would need 96 3/8 in.
    whole = coffers(6, 4, Fraction(385, 8), Fraction(193, 8), panel=panel)
    (sheets,) = (
        each for each in listed(whole).listed.materials.lines if each.kind is LineKind.SHEET
    )
    assert [each.quantity for each in sheets.bought] == [8]


def test_one_length_is_compared_with_the_mix():
    # Eight pieces of 45 in and eight of 94: without prices as little as can be is bought.
    prepared = listed(coffers(2, 2, 45, 94, **CROWN))
    crown = line(prepared, "Crown")
    # 8 pieces of 45 and 8 of 94 in: 8 ft holds one of 94, or two of 45; 12 ft holds 94 and 45.
    assert crown.need.value == Fraction(8 * 45 + 8 * 94, 12)
    alone = {one.length.inches: one for one in crown.plan.one_length}
    assert set(alone) == {96, 120, 144, 168, 192}
    assert alone[96].quantity == 12  # 8 + 8 / 2
    assert alone[192].quantity == 6  # two of 94 or four of 45 to a stick: 4 + 2
    least = min(one.quantity * one.length.inches for one in alone.values())
    assert crown.amount.value * 12 <= least


def test_board_feet_are_of_what_is_bought():
    # 1x6 is half a board foot to the foot.
    prepared = listed(coffers(3, 2, 40))
    boards = line(prepared, "1x6")
    assert boards.board_feet.value == boards.amount.value / 2


def test_boards_both_ways_are_what_the_other_spec_buys():
    one, other = (
        listed(
            coffers(
                3, 2, 50, 64, panel={"kind": "boards", "board": "1x6", "parallel_to": parallel_to}
            )
        )
        for parallel_to in ("length", "width")
    )
    (compared,), (back,) = one.listed.materials.directions, other.listed.materials.directions
    assert compared.material == "1x6 boards"
    assert compared.amount.value == line(one, "1x6 boards").amount.value
    assert compared.other_amount.value == line(other, "1x6 boards").amount.value
    assert (back.amount, back.other_amount) == (compared.other_amount, compared.amount)
    assert line(one, "1x6 boards").kind is LineKind.BOARD


def test_boards_of_all_coffers_are_cut_together():
    # Six coffers of 50 in clear along the boards, 64 across, 1/8 in gap at each edge: boards of
    # 49 3/4 in, three to a stick of 14 ft (3 x 49 3/4 + 2 x 1/8 = 149 1/2 in), in each coffer
    # courses of 5 1/8 in cover.
    panel = {"kind": "boards", "board": "1x6", "parallel_to": "length", "gap": "1/8"}
    lengths = [{"material": "1x6 boards", "length": "14 ft"}]
    prepared = listed(coffers(3, 2, 50, 64, panel=panel), lengths=lengths)
    pieces = sum(part.quantity for part in line(prepared, "1x6 boards").parts)
    assert pieces % 6 == 0
    assert bought(prepared, "1x6 boards") == {"14'-0\"": -(-pieces // 3)}


def test_offcuts_on_hand_are_used_and_not_bought():
    offcuts = [{"material": "crown", "length": "16 ft", "quantity": 3}]
    sticks = [{"material": "CROWN", "length": "16 ft", "price": 30}]
    prepared = listed(coffers(5, 4, 45, **CROWN), lengths=sticks, offcuts=offcuts)
    crown = line(prepared, "Crown")
    assert bought(prepared, "Crown") == {"16'-0\"": 17}
    assert (crown.on_hand.value, crown.amount.value) == (48, 272)
    assert lost(prepared) == []


def test_what_is_left_and_long_enough_is_left_over_and_not_waste():
    # Two coffers of 60 in: 8 pieces of crown; a 16 ft stick holds three and leaves under a foot,
    # the last holds two and leaves 72 in less two saw cuts of 3/16 in (1/8 over cos 45, to 1/64).
    sticks = [{"material": "Crown", "length": "16 ft"}]
    spec = coffers(2, 1, 60, **CROWN)
    prepared = listed(spec, lengths=sticks, usable_offcut="24")
    crown = line(prepared, "Crown")
    assert bought(prepared, "Crown") == {"16'-0\"": 3}
    assert crown.left_over.value == Fraction(72 * 8 - 3, 8 * 12)
    assert line(listed(spec, lengths=sticks, usable_offcut="72"), "Crown").left_over.value == 0


def test_saw_cuts_are_as_wide_as_miters_make_them():
    # Four pieces of 47 7/8 in and three saw cuts of 1/8 / cos 45 = 0.1768 in are 192.03 in: one too
    # many for 16 ft, though square cuts would do (191 7/8 in), and mitred ones of a thinner blade.
    sticks = [{"material": "Crown", "length": "16 ft"}]
    spec = coffers(2, 2, Fraction(383, 8), **CROWN)
    assert bought(listed(spec, lengths=sticks), "Crown") == {"16'-0\"": 6}
    thin = listed(spec, lengths=sticks, kerf="1/16")
    assert bought(thin, "Crown") == {"16'-0\"": 4}


def test_crown_longer_than_stock_is_joined():
    # One coffer of 250 in by 40: its long pieces take two sticks of 16 ft each, joined with a scarf
    # through the thickness: (250 + 9/16) / 2 in.
    spec = coffers(1, 1, 250, 40, crown={**CROWN["crown"], "thickness": "9/16"})
    prepared = listed(spec)
    crown = line(prepared, "Crown")
    assert sorted((part.quantity, part.pieces_each) for part in crown.parts) == [(2, 1), (2, 2)]
    (plan,) = (each for each in prepared.planned.lengths.plans if each.material == "Crown")
    lengths = {piece.length.inches for stick in plan.sticks for piece in stick.pieces}
    # 125 9/32 in, as taped
    assert lengths == {Fraction(250 * 16 + 9, 32), 40}
    cautions = [c for c in prepared.listed.materials.cautions if c.code == "parts_joined"]
    assert [c.figures["joints"] for c in cautions if "Crown" in c.text] == [2]
    assert lost(prepared) == []


def test_at_most_so_many_lengths_are_bought():
    spec = coffers(3, 3, 37, 52, **CROWN)
    prepared = listed(spec, most_lengths=1)
    for each in prepared.listed.materials.lines:
        if each.kind is LineKind.STICK:
            assert len(each.bought) == 1


def test_packs_are_whole_and_what_is_over_is_told():
    prepared = listed(
        coffers(5, 4, 45, **CROWN),
        packs=[
            {"of": "Finish nail", "holds": "500"},
            {"of": "paint", "holds": "10 L"},
            {"of": "primer", "holds": "1 gal"},
        ],
    )
    nails = line(prepared, "finish nail")
    assert nails.amount.value == -(-nails.need.value // 500) * 500
    assert nails.left_over.value == nails.amount.value - nails.need.value
    paint = line(prepared, "paint")
    # A US gallon is 231 cubic inches, so 3.785411784 L exactly.
    assert paint.bought[0].holds.value == 10 / Fraction("3.785411784")
    assert paint.bought[0].name == "10 L"
    assert paint.metric_amount.value == 10 * paint.bought[0].quantity
    assert line(prepared, "primer").bought[0].name == "1 gal"
    assert lost(prepared) == []


def test_every_bound_of_a_priced_list_can_be_worked_out_again():
    lengths = [
        {"material": name, "length": f"{feet} ft", "price": price}
        for name in ("1x6", "Crown")
        for feet, price in ((8, 11.49), (12, 17.49), (16, 23.49))
    ]
    prepared = listed(coffers(4, 3, 41, 37, **CROWN), lengths=lengths, end_trim="1/4")
    for plan in prepared.planned.lengths.plans:
        proven_bound(plan.certificate)
    assert prepared.listed.materials.cost is None  # backing has no prices


def test_a_list_costs_what_its_lines_cost():
    names = ("1x6", "Crown", "framing 4 1/2 x 2 3/4 in", "framing 4 1/2 x 5 1/2 in", "Nailer")
    lengths = [{"material": name, "length": "16 ft", "price": "20.10"} for name in names]
    prepared = listed(coffers(4, 3, 41, 37, **CROWN), lengths=lengths)
    sticks = sum(sum(bought(prepared, name).values()) for name in names)
    assert prepared.listed.materials.cost == f"{sticks * 2010 / 100:.2f}"


def test_two_materials_of_one_name_are_told_apart():
    other = {"crown": {"face": "4 1/4", "spring_from_wall": 45}}
    prepared = listed(coffers(2, 2, 45, **CROWN), coffers(2, 2, 45, **other))
    names = {each.name for each in prepared.listed.materials.lines if "Crown" in each.name}
    assert names == {"Crown 1.768 x 1.768 in", "Crown 3.005 x 3.005 in"}
    assert lost(prepared) == []


def test_stock_of_nothing_is_told():
    prepared = listed(
        coffers(2, 2, 45),
        lengths=[{"material": "1x66", "length": 96}],
        packs=[{"of": "bread", "holds": "1"}],
    )
    (caution,) = (c for c in prepared.listed.materials.cautions if c.code == "stock_not_used")
    assert "1x66, bread" in caution.text


def test_large_jobs_are_planned_with_little_effort_and_said_so(monkeypatch):
    spec = coffers(2, 2, 45, 40, **CROWN)
    monkeypatch.setattr(cutting_limits, "MANY_KINDS", 1)
    assumed = {each.pointer: each.value for each in listed(spec).listed.assumptions}
    assert assumed["/stock/effort"] == "quick"
    told = listed(spec, effort="usual")
    assert "/stock/effort" not in {each.pointer for each in told.listed.assumptions}
    monkeypatch.setattr(cutting_limits, "POOLED_KINDS", 1)
    with pytest.raises(SpecRefused) as refused:
        listed(spec)
    assert {fault.code for fault in refused.value.faults} == {"too_many_pieces"}


def test_two_rips_that_fit_in_one_board_are_told():
    # Between sides of 3/4 in, a bottom of 3 1/2 in: twice that and a saw cut are 7 1/8 in, less
    # than the 7 1/4 in of a 1x8; of a 1x6 with 5 1/2 in there is one.
    def beams(bottom):
        return {"crosswise": {**SIDES, "bottom": bottom, "width": "5"}, "lengthwise": "same"}

    run = {"coffers": 2, "start": "full", "end": "full"}
    spec = {**coffers(2, 2, 45), "grid": {"length": run, "width": run}}
    told = listed({**spec, "beams": beams("1x8")})
    (caution,) = (c for c in told.listed.materials.cautions if c.code == "rips_side_by_side")
    bottoms = [part for part in told.pooled.taken.parts if part.mark.startswith("BT")]
    half = [part.mark for part in bottoms if part.width.value.inches == Fraction(7, 2)]
    assert half
    assert f"side by side: {', '.join(half)}." in caution.text
    # Against a wall there is one side: 4 1/4 in, of which there is one in a board.
    assert {part.width.value.inches for part in bottoms} == {Fraction(7, 2), Fraction(17, 4)}
    wide = listed({**spec, "beams": beams("1x6")})
    assert not [c for c in wide.listed.materials.cautions if c.code == "rips_side_by_side"]


def test_priced_sheets_are_chosen_by_what_they_cost():
    # 24 panels of 47 7/8 by 23 7/8 in: four to a sheet of 48 x 96, two to one of 48 x 48.
    panel = {"kind": "sheet_goods", "seat": "between_sides", "gap": "1/16"}
    spec = coffers(6, 4, Fraction(48), Fraction(24), panel=panel)
    sold = [
        {"id": "whole", "length": 96, "width": 48, "price": 60},
        {"id": "half", "length": 48, "width": 48, "price": "29.50"},
    ]
    named = [{"material": "sheet 1/2 x 48 x 96 in", **each} for each in sold]
    sheets = line(listed(spec, sheets=named), "sheet 1/2 x 48 x 96 in")
    # Twelve halves at 29.50 are 354; six wholes would be 360.
    assert [(each.stock, each.quantity) for each in sheets.bought] == [("half", 12)]
    assert (sheets.plan.cost, sheets.plan.proven_best) == ("354.00", True)


def test_what_no_yard_keeps_is_told():
    prepared = listed(coffers(2, 2, 45, **CROWN))
    (caution,) = (c for c in prepared.listed.materials.cautions if c.code == "built_on_site")
    assert "framing 4 1/2 x 5 1/2 in" in caution.text
    assert "Nailer" in caution.text
    backed = {"crosswise": {**SIDES, "bottom": "1x4", "backing": "2x4"}, "lengthwise": "same"}
    told = listed({**coffers(2, 2, 45), "beams": backed})
    assert not [c for c in told.listed.materials.cautions if c.code == "built_on_site"]


def test_plans_cut_parts_by_their_marks():
    prepared = listed(coffers(2, 2, 45, **CROWN))
    pieces, plans = cut_pieces(prepared)
    assert set(plans.values()) == {1}
    assert pieces == {part.mark: part.quantity for part in prepared.pooled.taken.parts}
    sticks, cut, _ = on_sticks(prepared, "Crown")
    assert sticks >= cut


@pytest.mark.parametrize(
    ("stock", "told"),
    [
        ({"end_trim": "24", "lengths": [{"material": "Crown", "length": 48}]}, "lengths/0/length"),
        ({"lengths": [{"material": "Crown", "length": 96, "price": 1}] * 2}, None),
        (
            {
                "lengths": [
                    {"material": "Crown", "length": 96, "price": 1},
                    {"material": "Crown", "length": 120},
                ]
            },
            "lengths/1",
        ),
        (
            {"lengths": [{"material": "Crown", "length": 96, "supply": 1}]},
            "lengths",
        ),
        ({"packs": [{"of": "paint", "holds": "100 ft2"}]}, "packs/0/holds"),
        ({"packs": [{"of": "paint", "holds": "0"}]}, "packs/0/holds"),
        ({"packs": [{"of": "paint", "holds": "1 gal"}] * 2}, "packs/1/of"),
    ],
)
def test_stock_that_cannot_be_is_refused_where_it_is_said(stock, told):
    spec = coffers(2, 2, 45, **CROWN)
    if told is None:
        assert lost(listed(spec, **stock)) == []
        return
    with pytest.raises(SpecRefused) as refused:
        listed(spec, **stock)
    assert [fault.pointer for fault in refused.value.faults] == [f"/stock/{told}"]
    assert all(fault.remedy for fault in refused.value.faults)
