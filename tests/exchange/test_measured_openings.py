"""Measured openings as they are sent and sent back."""

from fractions import Fraction

from lacunar.exchange.ceiling_json import ceiling_to_json
from lacunar.exchange.spec_json import read_spec
from lacunar.measure.length import Length
from tests.exchange.documents import LEAST, Document, as_bytes, codes_at, resolved, with_changes

COFFER: Document = {
    "coffer": "A1",
    "sides": {"W1": "36 1/4", "W3": "3 ft", "W4": "914.4 mm"},
    "diagonals": {"falling": "51 1/16"},
}
MEASURED: Document = {
    **LEAST,
    "measured_openings": {"grid": "0123456789", "coffers": [COFFER, {"coffer": "A2"}]},
}


def test_what_was_measured_is_read_and_what_was_not_stays_open():
    openings = read_spec(as_bytes(MEASURED)).measured_openings
    assert openings is not None
    assert openings.coffers is not None
    first, second = openings.coffers
    inch = Length.of_inches
    assert first.sides == (inch(Fraction("36.25")), None, inch(36), inch(36))
    assert (first.rising, first.falling) == (None, inch(Fraction("51.0625")))
    assert second.sides == (None, None, None, None)


def test_limits_are_assumed_and_the_spec_that_tells_them_assumes_nothing():
    resolution = resolved(MEASURED)
    assumed = {each.pointer for each in resolution.assumptions}
    places = ("out_of_square_limit", "closing_limit", "difference_limit")
    assert {f"/measured_openings/{place}" for place in places} <= assumed
    # There is no crown to be fitted one way or another.
    assert "/measured_openings/out_of_square" not in assumed
    told = ceiling_to_json(resolution.ceiling)
    assert resolved(told).assumptions == ()
    assert resolved(told).ceiling == resolution.ceiling
    assert told["measured_openings"]["coffers"][1] == {"coffer": "A2"}


def test_how_frames_go_in_is_assumed_where_frames_are_asked_for():
    framed = resolved({**MEASURED, "crown": {"face": "3 1/4", "method": "bench_frame"}})
    pointers = {each.pointer for each in framed.assumptions}
    assert "/measured_openings/out_of_square" in pointers


def test_without_a_grid_or_a_coffer_nothing_can_be_told():
    place = "/measured_openings"
    assert codes_at({**LEAST, "measured_openings": {}}) == {
        f"{place}/grid": {"name_missing"},
        f"{place}/coffers": {"name_missing"},
    }
    nameless = with_changes(MEASURED, {"measured_openings.coffers.0": {"sides": {"W1": 36}}})
    assert codes_at(nameless) == {f"{place}/coffers/0/coffer": {"name_missing"}}


def test_every_misfit_is_told_at_its_place():
    place = "/measured_openings/coffers"
    spoiled = with_changes(
        MEASURED,
        {
            "measured_openings.coffers.0.sides.W5": 36,
            "measured_openings.coffers.0.diagonals.falling": "3 or 4",
            "measured_openings.coffers.1": {"coffer": "A1", "sides": {"W1": 9999}},
            "measured_openings.closing_limit": 9,
        },
    )
    assert codes_at(spoiled) == {
        f"{place}/0/sides/W5": {"name_unknown"},
        f"{place}/0/diagonals/falling": {"length_not_readable"},
        f"{place}/1/sides/W1": {"length_out_of_bounds"},
        "/measured_openings/closing_limit": {"length_out_of_bounds"},
    }


def test_a_coffer_is_measured_once():
    doubled = with_changes(MEASURED, {"measured_openings.coffers.1.coffer": "A1"})
    assert codes_at(doubled) == {
        "/measured_openings/coffers/1/coffer": {"coffer_measured_twice"},
    }
