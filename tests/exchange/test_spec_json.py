"""How a spec is spelled, and what is said of one that is spelled otherwise."""

import json
import time
from decimal import Decimal
from fractions import Fraction
from typing import Any

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from lacunar.exchange.spec_json import read_spec
from lacunar.measure.length import Length
from lacunar.measure.units import Units
from lacunar.model import limits
from lacunar.model.fault_catalogue import FAULT_CODES
from lacunar.model.grid import WallCondition
from lacunar.model.spec import BoxSpec, CeilingSpec
from lacunar.model.stock import StockKind, read_stock
from lacunar.model.wall_kind import WallKind
from tests.exchange.documents import FULL, LEAST, as_bytes, codes_at, faults_of, with_changes


def inches(amount: str | int) -> Length:
    return Length.of_inches(Fraction(amount))


def read(changes: dict[str, Any]) -> CeilingSpec:
    return read_spec(as_bytes(with_changes(LEAST, changes)))


def test_three_numbers_are_a_spec():
    room = read_spec(as_bytes(LEAST)).room
    assert (room.length, room.width, room.height) == (inches(240), inches(180), inches(108))
    assert room.members == ()


def test_everything_a_spec_can_say_is_read():
    spec = read_spec(as_bytes(FULL))
    assert spec.name == "Reading room"
    assert spec.mark_to is not None
    assert spec.mark_to.text == "1/32"
    finishes = spec.room.wall_finish
    assert finishes == (inches("1/2"), inches("5/8"), inches("1/2"), inches("5/8"))
    assert spec.room.members[0].clearance == inches("3/8")
    assert spec.beams.crosswise is not None
    assert spec.beams.crosswise.bottom == read_stock("4/4", inches("19/2"))
    assert spec.beams.lengthwise is not None
    assert spec.beams.lengthwise.sides is not None
    assert spec.beams.lengthwise.sides.kind is StockKind.ACTUAL
    assert spec.grid.length.coffers == (2, 1, 2)
    assert spec.grid.length.start == WallCondition(WallKind.SOFFIT, inches(12), WallKind.HALF)
    assert spec.grid.length.fixed_beams[0].width == inches("15/2")
    assert spec.grid.width.weights == (1, Fraction(3, 2), Fraction(3, 2))
    assert spec.panel is not None
    assert spec.panel.sheet is not None
    assert spec.panel.sheet.length == inches(120)
    assert spec.stock.kerf == inches("3/32")
    assert spec.drawing.date == "2026-09-30"


def test_numbers_are_lengths_in_the_units_of_the_spec():
    spec = read({"units": "mm", "room.length": 6200, "room.height": 2743.2})
    assert spec.units is Units.MILLIMETER
    assert spec.room.length == Length.of_millimeters(6200)
    assert spec.room.height == Length.of_millimeters(Decimal("2743.2")) == inches(108)
    assert spec.room.width == inches(180)  # text with a unit is what it says


def test_a_decimal_is_what_was_written_and_not_the_float_next_to_it():
    document = b'{"room": {"length": 48.1, "width": 60, "height": 96}}'
    assert read_spec(document).room.length == inches("481/10")


def test_one_wall_finish_stands_for_all_walls():
    assert read({"room.wall_finish": "5/8"}).room.wall_finish == (inches("5/8"),) * 4


def test_walls_take_a_word_or_a_soffit():
    assert read({"grid.width.end": "full"}).grid.width.end == WallCondition(WallKind.FULL)
    soffit = read({"grid.width.end": {"soffit": 10}}).grid.width.end
    assert soffit == WallCondition(WallKind.SOFFIT, inches(10), WallKind.NONE)


def test_a_count_may_be_written_with_a_point():
    assert read({"grid.length.coffers": 4.0}).grid.length.coffers == 4
    assert read({"grid.length.coffers": [4.0]}).grid.length.coffers == (4,)


def test_same_is_a_family_like_the_other_and_left_out_is_open():
    box = {"sides": "1x8"}
    same = read({"beams": {"crosswise": box, "lengthwise": "same"}}).beams
    assert same.lengthwise == same.crosswise == BoxSpec(sides=read_stock("1x8"))
    assert read({"beams": {"crosswise": box}}).beams.lengthwise is None
    assert read({"beams": {"lengthwise": "same"}}).beams.lengthwise == BoxSpec()


def test_text_is_trimmed():
    assert read({"name": "  Den "}).name == "Den"


@pytest.mark.parametrize(
    ("path", "value", "pointer", "code"),
    [
        ("units", "cm", "/units", "unknown_word"),
        ("units", 1, "/units", "wrong_type"),
        ("mark_to", "1/10", "/mark_to", "step_not_known"),
        ("mark_to", "1 mm", "/mark_to", "step_not_known"),
        ("name", 5, "/name", "wrong_type"),
        ("name", "x" * 81, "/name", "text_too_long"),
        ("name", "a\tb", "/name", "text_not_printable"),
        ("name", "a\u202eb", "/name", "text_not_printable"),
        ("name", "a\u2066b", "/name", "text_not_printable"),
        ("name", "a\u2028b", "/name", "text_not_printable"),
        ("name", "\u0085", "/name", "text_not_printable"),
        ("name", "\ufffe", "/name", "text_not_printable"),
        ("name", "\U0001f600", "/name", "text_not_printable"),
        ("room.length", "20' 14\"", "/room/length", "length_not_readable"),
        ("room.length", "-5", "/room/length", "length_not_readable"),
        ("room.length", "9" * 100, "/room/length", "length_not_readable"),
        ("room.length", True, "/room/length", "wrong_type"),
        ("room.length", [240], "/room/length", "wrong_type"),
        ("room.length", None, "/room/length", "null_given"),
        ("room", None, "/room", "null_given"),
        ("room", [], "/room", "wrong_type"),
        ("room.members", {}, "/room/members", "wrong_type"),
        ("room.members", [{}] * 21, "/room/members", "too_many"),
        ("room.members", ["S1"], "/room/members/0", "wrong_type"),
        ("room.wall_finish", {"W1": 1, "W2": 1, "W3": 1}, "/room/wall_finish/W4", "name_missing"),
        ("room.wall_finish", {"W5": 1}, "/room/wall_finish/W5", "name_unknown"),
        ("room.wall_finish", True, "/room/wall_finish", "wrong_type"),
        ("beams.crosswise.profile", "cased", "/beams/crosswise/profile", "unknown_word"),
        ("beams.crosswise.sides", "1x13", "/beams/crosswise/sides", "stock_name_unknown"),
        ("beams.crosswise.sides", "4/4", "/beams/crosswise/sides", "stock_name_unknown"),
        ("beams.crosswise.sides", "1x8\x1b[2J", "/beams/crosswise/sides", "text_not_printable"),
        ("beams.crosswise.sides", "x" * 99, "/beams/crosswise/sides", "text_too_long"),
        ("beams.crosswise.sides", 8, "/beams/crosswise/sides", "wrong_type"),
        ("beams.crosswise.sides", {"width": 8}, "/beams/crosswise/sides/thickness", "name_missing"),
        (
            "beams.crosswise.sides",
            {"nominal": "1x8", "width": 7},
            "/beams/crosswise/sides",
            "stock_name_unknown",
        ),
        (
            "beams.crosswise.sides",
            {"nominal": "4/4", "thickness": 1},
            "/beams/crosswise/sides/thickness",
            "name_unknown",
        ),
        ("beams.lengthwise", "alike", "/beams/lengthwise", "wrong_type"),
        ("grid.length.coffers", 2.5, "/grid/length/coffers", "wrong_type"),
        ("grid.length.coffers", "4", "/grid/length/coffers", "wrong_type"),
        ("grid.length.coffers", [1, True], "/grid/length/coffers/1", "wrong_type"),
        ("grid.length.coffers", [1] * 50, "/grid/length/coffers", "too_many"),
        ("grid.length.weights", [1, "x"], "/grid/length/weights/1", "wrong_type"),
        ("grid.length.weights", [1, "1/0"], "/grid/length/weights/1", "wrong_type"),
        ("grid.length.weights", [1] * 61, "/grid/length/weights", "too_many"),
        ("grid.length.start", "soft", "/grid/length/start", "unknown_word"),
        ("grid.length.start", 3, "/grid/length/start", "wrong_type"),
        ("grid.length.start", {"soffit": "x"}, "/grid/length/start/soffit", "length_not_readable"),
        (
            "grid.length.start",
            {"soffit": 12, "then": "soffit"},
            "/grid/length/start/then",
            "unknown_word",
        ),
        ("grid.length.start", {"soffit": 12, "then": 1}, "/grid/length/start/then", "wrong_type"),
        ("panel.sheet", {"width": 48}, "/panel/sheet/length", "name_missing"),
        ("panel.sheet", "4x8", "/panel/sheet", "wrong_type"),
        ("drawing.date", "2026-02-30", "/drawing/date", "not_a_date"),
        ("drawing.date", "20260302", "/drawing/date", "not_a_date"),
        ("drawing.date", "2026-W10-1", "/drawing/date", "not_a_date"),
        ("drawing.paper", "a5", "/drawing/paper", "unknown_word"),
        ("room.joists", {"every": 16}, "/room/joists/every", "name_unknown"),
        ("room.joists", {}, "/room/joists/first", "name_missing"),
        ("room.joists", 16, "/room/joists", "wrong_type"),
        ("fixing.size", 10, "/fixing/size", "wrong_type"),
        ("fixing.trim", {"gravity": "heavy"}, "/fixing/trim/gravity", "wrong_type"),
        ("fixing.trim", {"moisture": 0.0123456789}, "/fixing/trim/moisture", "ratio_too_fine"),
        ("crowns", {}, "/crowns", "name_unknown"),
        ("crown.spring", 38, "/crown/spring", "name_unknown"),
        ("crown.spring_from_wall", "about 38", "/crown/spring_from_wall", "wrong_type"),
        ("crown.spring_from_wall", -38, "/crown/spring_from_wall", "wrong_type"),
        ("crown.spring_from_wall", [], "/crown/spring_from_wall", "wrong_type"),
        ("crown.spring_from_wall", True, "/crown/spring_from_wall", "wrong_type"),
        ("crown.most_miter", 1e20, "/crown/most_miter", "wrong_type"),
        ("crown.most_miter", 45.0000000001, "/crown/most_miter", "angle_too_fine"),
        ("crown.method", "glued", "/crown/method", "unknown_word"),
        ("flat_mouldings", {}, "/flat_mouldings", "wrong_type"),
        ("flat_mouldings", [{"at": "top"}], "/flat_mouldings/0/at", "unknown_word"),
        ("a/b~c", 1, "/a~1b~0c", "name_unknown"),
        ("_schema", 1, "", "name_unknown"),
    ],
)
def test_what_does_not_fit_is_told_at_its_place(path: str, value: object, pointer: str, code: str):
    found = codes_at(with_changes(LEAST, {path: value}))
    assert code in found.get(pointer, set())


def test_an_unknown_name_is_answered_with_the_nearest_known_one():
    (fault,) = faults_of(with_changes(LEAST, {"room.headrom": 80}))
    assert "headroom" in fault.remedy
    assert "members" in str(fault.figures["known"])


def test_a_length_that_cannot_be_read_is_told_by_its_character():
    (fault,) = faults_of(with_changes(LEAST, {"room.headroom": "7' and 2"}))
    assert fault.figures["character"] == 4


def test_every_fault_is_told_at_once_with_the_rules_on_what_is_sound():
    document = {
        "units": "in",
        "nmae": "x",
        "room": {"length": "2 in", "height": "x", "members": [{"on": "up"}, 7, {"on": "width"}]},
        "grid": {"length": {"coffers": 4, "wished_opening": 40}, "width": {"weights": [0, 1]}},
        "drawing": {"paper": "a9"},
    }
    found = codes_at(document)
    assert found.keys() == {
        "/nmae",
        "/room/length",  # readable, but out of bounds
        "/room/width",  # not there, and cannot be assumed
        "/room/height",  # not readable, and nothing more is said of it
        "/room/members/0/on",
        "/room/members/0/center",
        "/room/members/0/width",
        "/room/members/0/drop",
        "/room/members/1",
        "/room/members/2/center",
        "/room/members/2/width",
        "/room/members/2/drop",
        "/grid/length/wished_opening",
        "/grid/width/weights/0",
        "/drawing/paper",
    }
    assert found["/room/height"] == {"length_not_readable"}


def test_while_the_units_are_not_known_no_number_is_judged():
    document = with_changes(LEAST, {"units": "furlong", "mark_to": "1 mm", "room.length": 1})
    assert codes_at(document) == {"/units": {"unknown_word"}}


@pytest.mark.parametrize("document", [b"[]", b'"x"', b"7", b"null", b"true", b"1.5"])
def test_a_spec_is_an_object(document: bytes):
    (fault,) = faults_of(document)
    assert (fault.code, fault.pointer) == ("wrong_type", "")


@pytest.mark.parametrize(
    "document",
    [
        b"",
        b"[" * 100_000,
        b'{"room":' * 50_000,
        b'{"room": {"length": ' + b"9" * 5000 + b"}}",
        b'{"room": {"length": 1e308, "width": 1e-308, "height": NaN}}',
        b'{"room": {"length": 99999999999999999999999999999}}',
        b'{"room": {"length": "' + b"9" * 200_000 + b'"}}',
        b'{"room": {"length": "' + b"1/" * 100_000 + b'"}}',
        b'{"name": "' + b"\\u0001" * 40_000 + b'"}',
        b'{"name": "\\ud800"}',
        b'{"room": {}, "room": {}}',
        b" " * 10_000_000,
        b"{" + b",".join(b'"n%d":{}' % n for n in range(20_000)) + b"}",
        b'{"grid": {"length": {"weights": [' + b"-1," * 60_000 + b"0]}}}",
        b'{"room": {"members": [' + b"{}," * 60_000 + b"{}]}}",
        b"\x00" * 1000,
        b"\xff\xfe{\x00}\x00",
    ],
)
def test_hostile_documents_are_refused_quickly(document: bytes):
    started = time.monotonic()
    faults = faults_of(document)
    assert time.monotonic() - started < 2
    assert faults
    assert len(faults) < 1000


VALUES = st.recursive(
    st.none()
    | st.booleans()
    | st.integers(-(10**40), 10**40)
    | st.floats(allow_nan=False, allow_infinity=False)
    | st.text(max_size=12)
    | st.sampled_from(
        ["half", "1x8", "48 1/16", "12' 3\"", "same", "1/0 in", "\u202e", "3/4 sheet"]
    ),
    lambda inner: (
        st.lists(inner, max_size=3)
        | st.dictionaries(
            st.sampled_from(
                ["soffit", "then", "W1", "nominal", "width", "thickness", "on", "\x00"]
            ),
            inner,
            max_size=3,
        )
    ),
    max_leaves=6,
)


def paths_of(value: object, way: str = "") -> list[str]:
    """The paths of every place in a document."""
    below = value.items() if isinstance(value, dict) else enumerate(value)  # type: ignore[call-overload]
    found = []
    for step, part in below:
        found.append(f"{way}{step}")
        if isinstance(part, dict | list):
            found += paths_of(part, f"{way}{step}.")
    return found


@settings(max_examples=400)
@given(path=st.sampled_from(paths_of(FULL)), value=VALUES)
def test_any_value_anywhere_is_read_or_refused_with_known_codes(path: str, value: object):
    for fault in faults_of(with_changes(FULL, {path: value})):
        assert fault.code in FAULT_CODES
        assert fault.message.isprintable()
        assert fault.remedy.isprintable()
        assert fault.pointer == "" or fault.pointer.startswith("/")


def test_the_longest_spec_that_can_be_laid_out_fits_the_document():
    # The bound on the document must not be what stops a ceiling that all other bounds allow.
    member = {"name": "N" * limits.LABEL, "on": "length", "center": "1" * 40, "width": "1" * 40}
    box = dict.fromkeys(("sides", "bottom", "backing", "reveal", "width", "drop"), "1" * 40)
    run = {
        "weights": ["123456789/123456789"] * limits.COFFERS_PER_RUN,
        "fixed_beams": [member] * limits.FIXED_BEAMS_PER_RUN,
    }
    document = {
        "name": "\u00e9" * limits.CEILING_NAME,
        "room": {"members": [member] * limits.MEMBERS},
        "beams": {"crosswise": box, "lengthwise": box},
        "grid": {"length": run, "width": run},
    }
    assert len(json.dumps(document, indent=4)) < limits.DOCUMENT_BYTES
