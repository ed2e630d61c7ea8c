"""The resolved spec: it reads back as the same ceiling, and its digest tells ceilings apart."""

import hashlib
import json
import subprocess
import sys
from typing import Any

import pytest
from hypothesis import assume, given, settings
from hypothesis import strategies as st

from lacunar.exchange.ceiling_json import canonical_bytes, ceiling_to_json, digest
from lacunar.exchange.spec_json import read_spec
from lacunar.model.assumptions import resolve
from lacunar.model.faults import SpecRefused
from tests.exchange.documents import FULL, LEAST, Document, as_bytes, resolved, with_changes

# Lengths in every spelling a spec can have, so that all of them are written and read again.
PLACES = st.one_of(
    st.integers(20, 260),
    st.integers(2000, 26_000).map(lambda n: f"{n / 100} in"),
    st.tuples(st.integers(2, 20), st.integers(0, 63)).map(lambda t: f"{t[0]}' 3 {t[1]}/64 in"),
    st.integers(500, 6000).map(lambda n: f"{n}.123456789012 mm"),
    st.integers(1, 9999).map(lambda n: f"{99990 + n}/997 in"),
)
WIDTHS = st.sampled_from([7, "25/3 in", "160 mm", "9.5 in"])
DROPS = st.sampled_from(["4 in", "111.1 mm", "14 1/2 in", "17 in"])
BOARD_WIDTHS = st.sampled_from(["4 in", "111.1 mm", "14 1/2 in", "140/3 in"])
SMALL = st.sampled_from([0, "1/4 in", "5 mm", 0.7, "1/3 in"])
STOCK = st.one_of(
    st.sampled_from(["1x6", "5/4x8", "1-1/4x4", "2x10", "3/4 sheet", "2 1/2x6"]),
    st.builds(
        lambda t, w: {"thickness": t, "width": w}, st.sampled_from(["1 in", "18 mm"]), BOARD_WIDTHS
    ),
    st.builds(lambda w: {"nominal": "6/4", "width": w}, BOARD_WIDTHS),
    st.builds(lambda w: {"nominal": "23/32 sheet", "width": w}, BOARD_WIDTHS),
)
DETAIL = st.one_of(
    st.fixed_dictionaries(
        {}, optional={"bottom_joint": st.just("between"), "reveal": SMALL, "allowance": SMALL}
    ),
    st.fixed_dictionaries({"bottom_joint": st.just("under")}, optional={"overhang": SMALL}),
    st.fixed_dictionaries({"bottom_joint": st.just("under"), "reveal": SMALL}),
    st.fixed_dictionaries({"overhang": SMALL}),
    st.just({"bottom_joint": "mitred"}),
)
SIZE = st.one_of(
    st.fixed_dictionaries({}, optional={"sides": STOCK, "bottom": STOCK, "drop": DROPS}),
    st.fixed_dictionaries({"width": WIDTHS}, optional={"sides": STOCK, "drop": DROPS}),
    st.fixed_dictionaries({"backing": STOCK}, optional={"sides": STOCK, "drop": DROPS}),
)
BOX = st.builds(lambda detail, size: {**detail, **size}, DETAIL, SIZE)
AT_WALL = st.one_of(
    st.sampled_from(["none", "half", "full"]),
    st.builds(lambda w, t: {"soffit": w, "then": t}, WIDTHS, st.sampled_from(["none", "half"])),
    st.builds(lambda w: {"soffit": w}, WIDTHS),
)
FIXED = st.fixed_dictionaries({"center": PLACES}, optional={"width": WIDTHS})
RUN = st.fixed_dictionaries(
    {},
    optional={
        "start": AT_WALL,
        "end": AT_WALL,
        "fixed_beams": st.lists(FIXED, max_size=2),
    },
)
COUNT = st.one_of(
    st.just({}),
    st.integers(4, 20).map(lambda n: {"coffers": n}),
    st.lists(st.integers(1, 5), min_size=1, max_size=2).map(lambda n: {"coffers": n}),
    st.builds(
        lambda name, opening, parity: {name: opening, **parity},
        st.sampled_from(["largest_opening", "wished_opening"]),
        st.sampled_from([20, "100/3 in", "123/10 in", "1.0001 m"]),
        st.sampled_from([{}, {"parity": "odd"}, {"parity": "even"}]),
    ),
    st.lists(st.sampled_from([1, 1.5, "4/3"]), min_size=5, max_size=7).map(
        lambda weights: {"weights": weights}
    ),
    st.just({"held": "3 ft"}),
    st.just({"held": "1 m", "coffers": 4}),
)
MEMBER = st.fixed_dictionaries(
    {
        "on": st.sampled_from(["length", "width"]),
        "center": PLACES,
        "width": st.sampled_from(["3 1/2 in", "9 in"]),
        "drop": st.sampled_from(["1 in", "6 in", "22 in"]),
    },
    optional={
        "casing": st.sampled_from(["centered", "shift_to_equal"]),
        "clearance": SMALL,
        "cased_width": st.just("12 in"),
    },
)

CROWN = st.one_of(
    st.just({}),
    st.fixed_dictionaries(
        {"face": st.sampled_from(["3 1/4 in", "82.5 mm"])},
        optional={
            "spring_from_wall": st.sampled_from([38, 45, "40.25", 38.123456789]),
            "method": st.sampled_from(["bench_frame", "coped_in_place"]),
            "fit_total": SMALL,
            "most_miter": st.sampled_from([45, "60"]),
        },
    ),
    st.fixed_dictionaries(
        {"drop": st.just("65 mm"), "projection": st.just("2 in")},
        optional={"spring_from_wall": st.just(38), "land": st.just("1/2 in")},
    ),
    st.just({"face": "4 in", "drop": "3 in", "spring_from_wall": 41}),
)
FLAT = st.fixed_dictionaries(
    {"thickness": st.sampled_from(["1/4 in", "5.1 mm"]), "width": st.just("3 1/2 in")},
    optional={"name": st.just("Frieze"), "at": st.sampled_from(["ceiling", "bottom_edge"])},
)


MOISTURE = st.one_of(
    st.sampled_from([8, 8.5, "9 %", "17/2", "25/3"]),
    st.sampled_from(["45 % at 70 F", {"humidity": "99/2", "temperature": 21.5}]),
    st.builds(
        lambda humidity, degrees, scale: f"{humidity} at {degrees / 10} {scale}",
        st.integers(30, 60),
        st.integers(320, 600),
        st.sampled_from("CF"),
    ),
)
MOVEMENT = st.fixed_dictionaries(
    {},
    optional={
        "cut": st.sampled_from(["flatsawn", "quartersawn"]),
        "fastening": st.sampled_from(["nailed", "floating"]),
        "now": MOISTURE,
        "trim_cover": SMALL,
    },
).flatmap(
    lambda rest: st.sampled_from([{"species": "beech"}, {"coefficient": 0.002123456}]).map(
        lambda wood: {**rest, **wood}
    )
)
BOARDS = st.fixed_dictionaries(
    {"kind": st.just("boards")},
    optional={
        "board": st.sampled_from(["1x4", "1x10"]),
        "cover": st.sampled_from(["97 mm", "13/3 in"]),
        "tongue": SMALL,
        "gap": SMALL,
        "thickness": st.sampled_from(["3/4 in", "14.3 mm"]),
        "parallel_to": st.sampled_from(["length", "width"]),
        "run": st.sampled_from(["through", "per_coffer"]),
        "centered_on": st.sampled_from(["joint", "board"]),
        "movement": MOVEMENT,
    },
)
RATIO = st.sampled_from([0.5, "1/3", "0.12345678"])
WOOD = st.fixed_dictionaries(
    {},
    optional={
        "species": st.sampled_from(["cherry", "hem_fir"]),
        "gravity": RATIO,
        "moisture": RATIO,
    },
)
JOISTS = st.fixed_dictionaries(
    {"parallel_to": st.sampled_from(["length", "width"]), "first": st.just("5 in")},
    optional={
        "spacing": st.just("19.2 in"),
        "kind": st.sampled_from(["lumber", "truss"]),
        "ceiling": st.just("open"),
        "existing_finish": SMALL,
        "species": st.just("southern_pine"),
        "gravity": RATIO,
    },
)
FIXING = st.fixed_dictionaries(
    {},
    optional={
        "between_joists": st.sampled_from(["blocking", "skin", "anchors"]),
        "fastener": st.sampled_from(["wood_screw", "lag_screw", "nail"]),
        "length": st.just("4 in"),
        "shim": SMALL,
        "service": st.just("wet"),
        "trim": WOOD,
        "backing": WOOD,
        "panel_gravity": RATIO,
    },
)


STATIONS = st.one_of(
    st.just({}),
    st.fixed_dictionaries(
        {
            "stations": st.permutations(
                [
                    {"length": "2 ft", "width": "1.0001 m", "above_line": "12 1/64 in"},
                    {"name": "H1", "length": 5, "width": 0, "above_line": "300 mm"},
                    {"length": "25 ft", "width": "7 m", "above_line": "1 ft"},
                ]
            )
        },
        optional={
            "leveling": st.fixed_dictionaries(
                {},
                optional={
                    "panels": st.sampled_from(["to_plane", "to_ceiling"]),
                    "reach": SMALL,
                },
            )
        },
    ),
    st.just({"height": "3.0001 m", "stations": [{"length": 5, "width": 5, "height": "3.0001 m"}]}),
)


@st.composite
def documents(draw: st.DrawFn) -> Document:
    """Specs that say this and leave that open, most of them sound."""
    units = draw(st.sampled_from(["in", "mm"]))
    runs = {name: {**draw(RUN), **draw(COUNT)} for name in ("length", "width")}
    document: Document = {
        "units": units,
        "room": {
            "length": draw(st.sampled_from(["30 ft", "9150 mm", "25' 4 3/64\""])),
            "width": "7.0123 m",
            "height": "10 ft",
            "members": draw(st.lists(MEMBER, max_size=2)),
            **draw(st.fixed_dictionaries({}, optional={"joists": JOISTS})),
        },
        "grid": runs,
    }
    document["room"].update(draw(STATIONS))
    beams = {"crosswise": BOX, "lengthwise": st.one_of(BOX, st.just("same"))}
    optional: dict[str, st.SearchStrategy[Any]] = {
        "beams": st.fixed_dictionaries(
            {}, optional={**beams, "depth": st.sampled_from(["equal", "stepped"])}
        ),
        "panel": st.fixed_dictionaries(
            {}, optional={"kind": st.sampled_from(["existing", "sheet_goods"]), "gap": SMALL}
        )
        | BOARDS
        | st.fixed_dictionaries(
            {"grain": st.sampled_from(["length", "width"])},
            optional={"seams": st.sampled_from(["equal", "sheet_edge"])},
        ),
        "mark_to": st.sampled_from({"in": ["1/8", "1/64"], "mm": ["1 mm", "0.5 mm"]}[units]),
        "fixing": FIXING,
        "name": st.sampled_from(["Den", "Speisesaal \u00e9"]),
        "drawing": st.just({"paper": "a2", "revision": "B"}),
        "crown": CROWN,
        "flat_mouldings": st.lists(FLAT, max_size=2),
    }
    return {**document, **draw(st.fixed_dictionaries({}, optional=optional))}


@settings(max_examples=150)
@given(document=documents())
def test_law_a_resolved_spec_read_again_assumes_nothing_and_is_the_same_ceiling(
    document: Document,
):
    try:
        first = resolved(document)
    except SpecRefused:
        assume(False)
    again = resolve(read_spec(canonical_bytes(ceiling_to_json(first.ceiling))))
    assert again.assumptions == ()
    assert again.ceiling == first.ceiling
    assert digest(again.ceiling) == digest(first.ceiling)


@pytest.mark.parametrize(
    "sections",
    [
        # A cover below the board's by more than any tongue is wide.
        {"panel": {"kind": "boards", "board": "1x8", "cover": "3 7/8"}},
        # One flat board beside two: only the two have edges between them.
        {
            "beams": {
                "crosswise": {"profile": "flat", "bottom": "1x6", "upper_board": "1x8"},
                "lengthwise": {"profile": "flat", "bottom": "1x6"},
            }
        },
    ],
)
def test_so_is_one_of_unlike_boards(sections: dict[str, Any]):
    first = resolve(read_spec(as_bytes({**LEAST, **sections})))
    again = resolve(read_spec(canonical_bytes(ceiling_to_json(first.ceiling))))
    assert (again.assumptions, again.ceiling) == ((), first.ceiling)


def test_the_law_is_held_by_ceilings_and_not_by_refusals():
    made = 0

    @settings(max_examples=300)
    @given(document=documents())
    def count(document: Document) -> None:
        nonlocal made
        try:
            resolved(document)
        except SpecRefused:
            return
        made += 1

    count()
    assert made >= 120


def test_an_assumption_given_as_a_value_makes_the_same_ceiling():
    # What was assumed, said, is no longer assumed; nothing else changes.
    first = resolved(LEAST)
    headroom = next(each for each in first.assumptions if each.pointer == "/room/headroom")
    said = resolved(with_changes(LEAST, {"room.headroom": "7'"}))
    assert said.ceiling == first.ceiling
    assert set(said.assumptions) == set(first.assumptions) - {headroom}


@pytest.mark.parametrize(
    "changes",
    [
        {"name": "Den"},
        {"units": "mm", "mark_to": "1 mm", "room.length": 6096},
        {"mark_to": "1/32"},
        {"room.length": "20' 0 1/64\""},
        {"room.measured_to": "framing"},
        {"beams.crosswise.sides": "1x8"},
        {"beams.through": "lengthwise"},
        {"grid.length.coffers": 5},
        {"grid.width.start": "none"},
        {"stock.kerf": "5/64"},
        {"panel.gap": 0},
        {"room.code_edition": "2018"},
        {"room.joists": {"parallel_to": "width", "first": 8}},
        {"room.stations": [{"length": 9, "width": 8, "above_line": 7}]},
        {"fixing": {"block_spacing": 20}},
        {"crown": {}},
        {"flat_mouldings": [{"thickness": "1/2", "width": 3}]},
    ],
)
def test_whatever_is_built_otherwise_has_another_digest(changes: dict[str, object]):
    assert digest(resolved(with_changes(LEAST, changes)).ceiling) != digest(resolved(LEAST).ceiling)


@pytest.mark.parametrize(
    "changes",
    [
        {"room.length": "20'-0\""},
        {"room.width": 180.0},
        {"units": "in"},
        {"beams.lengthwise": "same"},
        {"beams.crosswise.profile": "box"},
        {"drawing.revision": "F", "drawing.date": "2031-01-01", "drawing.paper": "a1"},
    ],
)
def test_another_spelling_or_another_issue_has_the_same_digest(changes: dict[str, object]):
    assert digest(resolved(with_changes(LEAST, changes)).ceiling) == digest(resolved(LEAST).ceiling)


def test_a_digest_is_the_sha256_of_the_canonical_spec_of_what_is_built():
    ceiling = resolved(FULL).ceiling
    spec = ceiling_to_json(ceiling)
    del spec["drawing"], spec["take_off"]
    text = json.dumps(spec, sort_keys=True, separators=(",", ":"), ensure_ascii=False)
    assert digest(ceiling) == hashlib.sha256(text.encode()).hexdigest()


def test_regression_the_digest_of_the_least_spec_is_the_same_in_every_process():
    program = (
        "from tests.exchange.documents import LEAST, resolved;"
        "from lacunar.exchange.ceiling_json import digest;"
        "print(digest(resolved(LEAST).ceiling))"
    )
    seen = {
        subprocess.run(
            [sys.executable, "-c", program],
            check=True,
            capture_output=True,
            text=True,
            env={"PYTHONPATH": "service:.", "PYTHONHASHSEED": seed},
        ).stdout.strip()
        for seed in ("0", "7")
    }
    assert seen == {digest(resolved(LEAST).ceiling)}


def test_canonical_bytes_do_not_depend_on_the_order_of_names():
    assert canonical_bytes({"b": 1, "a": [{"d": 2, "c": 3}]}) == b'{"a":[{"c":3,"d":2}],"b":1}'


def test_as_bytes_of_a_resolved_spec_is_within_what_is_read():
    assert read_spec(as_bytes(ceiling_to_json(resolved(FULL).ceiling)))
