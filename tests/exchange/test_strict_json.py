"""What is read as JSON, and what is refused before anything is built from it."""

import time
from decimal import Decimal

import pytest

from lacunar.exchange.strict_json import read_json
from lacunar.model import limits
from lacunar.model.faults import Fault, SpecRefused


def faults(document: bytes) -> tuple[Fault, ...]:
    """The faults a document is refused with, which must not take long."""
    started = time.monotonic()
    with pytest.raises(SpecRefused) as caught:
        read_json(document)
    assert time.monotonic() - started < 2
    return caught.value.faults


def only(document: bytes) -> Fault:
    """The one fault a document is refused with."""
    (fault,) = faults(document)
    return fault


@pytest.mark.parametrize(
    ("document", "value"),
    [
        (b"null", None),
        (b" true ", True),
        (b"[]", []),
        (b'{"a": [1, 2.50, -3e2, "x"]}', {"a": [1, Decimal("2.50"), Decimal("-3e2"), "x"]}),
        (b'"\\u00e9 \\ud83d\\ude00"', "\u00e9 \U0001f600"),
        (b'\xef\xbb\xbf{"a": 1}', {"a": 1}),  # a byte order mark, as some editors leave it
        (b'{"a{[": "}]\\"["}', {"a{[": '}]"['}),
        (b"0e999999999", Decimal(0)),
        (b"[" * limits.JSON_DEPTH + b"]" * limits.JSON_DEPTH, None),
    ],
)
def test_json_is_read_without_losing_a_digit(document: bytes, value: object):
    read = read_json(document)
    if value is not None:
        assert read == value


def test_a_fraction_is_never_a_float():
    assert isinstance(read_json(b"48.1"), Decimal)


@pytest.mark.parametrize(
    ("document", "line", "column"),
    [
        (b"", 1, 1),
        (b"{'a': 1}", 1, 2),
        (b'{"a": 1 "b"}', 1, 9),
        (b'{"a": 1\n "b": 2}', 2, 2),
        (b"{} {}", 1, 4),
        (b'{"a": "x\ny"}', 1, 9),
        (b'{"a": 01}', 1, 8),
        (b'"unfinished', 1, 1),
        (b'"\\"\\"\\', 1, 1),
    ],
)
def test_what_is_not_json_is_told_with_line_and_column(document: bytes, line: int, column: int):
    fault = only(document)
    assert (fault.code, fault.pointer) == ("not_json", "")
    assert (fault.figures["line"], fault.figures["column"]) == (line, column)


@pytest.mark.parametrize(
    "document", [b'{"a": "\xff"}', "{}".encode("utf-16"), b"\xed\xa0\x80", b"\n\n  \xc3"]
)
def test_only_utf8_is_read(document: bytes):
    assert only(document).code == "document_not_utf8"


def test_the_place_of_a_bad_byte_is_told():
    figures = only(b'{\n "a": "\xff"}').figures
    assert (figures["line"], figures["column"], figures["byte"]) == (2, 8, 9)


def test_the_size_of_a_document_is_limited():
    assert read_json(b" " * (limits.DOCUMENT_BYTES - 2) + b"{}") == {}
    assert only(b" " * (limits.DOCUMENT_BYTES - 1) + b"{}").code == "document_too_long"
    assert only(b'{"a": "' + b"x" * 10_000_000 + b'"}').code == "document_too_long"


@pytest.mark.parametrize("opening", [b"[", b'{"a":'])
def test_depth_is_limited_without_running_out_of_stack(opening: bytes):
    for depth in (limits.JSON_DEPTH + 1, 40_000):
        assert only(opening * depth).code == "document_too_deep"


@pytest.mark.parametrize("piece", [b'"', b'\\"', b'"\\', b"\\", b'"\\"'])
def test_no_pattern_of_quotes_is_slow_to_read(piece: bytes):
    faults(piece * (limits.DOCUMENT_BYTES // len(piece)))


@pytest.mark.parametrize(
    "number",
    [
        "1e308",
        "1e-308",
        "1e3000000",
        "9" * 5000,
        "-" + "9" * 5000,
        "0." + "1" * 5000,
        "1e" + "9" * 50,
    ],
)
def test_numbers_no_one_can_measure_are_refused_at_their_place(number: str):
    fault = only(b'{"room": [{"length": %s}]}' % number.encode())
    assert (fault.code, fault.pointer) == ("number_out_of_bounds", "/room/0/length")
    assert len(fault.message) < 200


@pytest.mark.parametrize("word", ["NaN", "Infinity", "-Infinity"])
def test_words_for_what_is_no_number_are_no_json(word: str):
    # RFC 8259 section 6: "Numeric values that cannot be represented in the grammar below (such as
    # Infinity and NaN) are not permitted."
    fault = only(b'{"room": [{"length": %s}]}' % word.encode())
    assert (fault.code, fault.pointer) == ("not_json", "/room/0/length")


def test_a_name_that_stands_twice_is_refused_whatever_its_values():
    fault = only(b'{"room": {"length": 1, "width": 2, "length": 1}}')
    assert (fault.code, fault.pointer) == ("name_doubled", "/room/length")


def test_half_a_surrogate_pair_is_refused():
    assert only(b'{"a": ["\\ud800"]}').pointer == "/a/0"
    assert only(b'["\\udc00\\ud800"]').code == "text_has_half_a_character"


@pytest.mark.parametrize("name", ["\\ud800", "\\u0000", "\\u202e", "", " a", "\\n", "x" * 200])
def test_names_that_cannot_be_shown_are_refused_without_showing_them(name: str):
    fault = only(b'{"room": {"%s": 1}}' % name.encode())
    assert (fault.code, fault.pointer) == ("name_not_readable", "/room")
    assert fault.message.isprintable()


def test_lists_and_objects_have_a_length_they_do_not_pass():
    assert only(b'{"a": [%s0]}' % (b"0," * limits.LIST_ITEMS)).code == "list_too_long"
    names = b",".join(b'"n%d": 0' % n for n in range(limits.OBJECT_MEMBERS + 1))
    assert only(b'{"a": {%s}}' % names).code == "object_too_large"


def test_all_faults_of_a_document_are_told_at_once():
    found = faults(b'{"a": NaN, "b": ["\\ud800", 1e99], "c": {"d": 1, "d": 2}}')
    assert [(fault.pointer, fault.code) for fault in found] == [
        ("/a", "not_json"),
        ("/b/0", "text_has_half_a_character"),
        ("/b/1", "number_out_of_bounds"),
        ("/c/d", "name_doubled"),
    ]
