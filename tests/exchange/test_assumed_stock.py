"""Law: whatever stock is assumed can make the beams it is assumed for."""

from typing import Any

from hypothesis import given, settings
from hypothesis import strategies as st

from lacunar.layout.ceiling_layout import lay_out
from lacunar.model.faults import SpecRefused
from tests.exchange.documents import Document, resolved

SIZES = {"in": ("2 13/16", "4 in", "6.3 in", "9 7/8", "13 in"), "mm": ("70 mm", "111 mm", "333 mm")}


@st.composite
def half_said(draw: st.DrawFn) -> Document:
    """A room with deep or wide members, and beams of which anything but stock may be said."""
    units = draw(st.sampled_from(["in", "mm"]))
    size = st.sampled_from(SIZES[units])
    member = st.fixed_dictionaries({"center": st.just("12 ft"), "width": size, "drop": size})
    box: st.SearchStrategy[Any] = st.fixed_dictionaries(
        {},
        optional={
            "bottom_joint": st.sampled_from(["between", "under", "mitred"]),
            "width": size,
            "drop": size,
        },
    )
    runs = draw(st.sets(st.sampled_from(["length", "width"])))
    return {
        "units": units,
        "room": {
            "length": "24 ft",
            "width": "26 ft",
            "height": "12 ft",
            "members": [{"on": run, **draw(member)} for run in sorted(runs)],
        },
        "beams": {
            "depth": draw(st.sampled_from(["equal", "stepped"])),
            **draw(st.fixed_dictionaries({}, optional={"crosswise": box, "lengthwise": box})),
        },
        "grid": {"width": draw(st.sampled_from([{}, {"fixed_beams": [{"center": "6 ft"}]}]))},
    }


@settings(max_examples=150)
@given(document=half_said())
def test_law_stock_that_is_assumed_makes_every_part_it_is_assumed_for(document: Document):
    assert "stock_too_narrow" not in layout_faults(document)


def layout_faults(document: Document) -> set[str]:
    """The codes a sound spec is refused with when it is set out."""
    ceiling = resolved(document).ceiling
    try:
        lay_out(ceiling)
    except SpecRefused as refused:
        return {fault.code for fault in refused.faults}
    return set()


def test_stock_that_is_given_can_be_too_narrow():
    deep = {"on": "length", "center": "12 ft", "width": 4, "drop": 9}
    room = {"length": "24 ft", "width": "26 ft", "height": "12 ft", "members": [deep]}
    said: Document = {"room": room, "beams": {"crosswise": {"sides": "1x6"}}}
    assert layout_faults(said) == {"stock_too_narrow"}
