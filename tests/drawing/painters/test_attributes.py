import math
import re
from xml.etree import ElementTree

import pytest
from hypothesis import given
from hypothesis import strategies as st

from lacunar.drawing.painters.attributes import data_name, name, number, positive, printable

# The characters an XML 1.0 document may hold: W3C, Extensible Markup Language 1.0 (fifth edition),
# production 2.
XML_TEXT = re.compile("[\t\n\r\x20-\ud7ff\ue000-\ufffd\U00010000-\U0010ffff]*")


@given(st.floats(min_value=-9999.9, max_value=9999.9))
def test_a_written_number_is_within_half_a_thousandth(value: float) -> None:
    text = number(value)
    assert re.fullmatch(r"-?\d+(\.\d{1,3})?", text)
    assert abs(float(text) - value) <= 0.0005 + 1e-9
    assert text != "-0"


@pytest.mark.parametrize("value", [math.nan, math.inf, -math.inf, 10_000.0, -10_000.0, 1e300])
def test_a_number_that_is_no_place_on_paper_is_refused(value: float) -> None:
    with pytest.raises(ValueError, match="not a position or a size on paper"):
        number(value)


@pytest.mark.parametrize("value", [0.0, -1.0, 0.0004, math.nan])
def test_a_size_that_would_vanish_is_refused(value: float) -> None:
    with pytest.raises(ValueError, match="on paper"):
        positive(value)


@given(st.text(st.characters()))
def test_any_text_becomes_one_that_xml_can_carry(text: str) -> None:
    made = printable(text)
    assert XML_TEXT.fullmatch(made)
    element = ElementTree.Element("text")
    element.text = made
    parsed = ElementTree.fromstring(ElementTree.tostring(element, encoding="utf-8"))
    assert (parsed.text or "") == made


@given(st.text(st.characters()))
def test_a_printable_text_is_left_as_it_is(text: str) -> None:
    assert printable(printable(text)) == printable(text)


@pytest.mark.parametrize(
    ("text", "expected"),
    [
        ("a\tb\r\n c", "a b c"),
        ("a\x00\x1b[31mb", "a[31mb"),
        ("a\ud800b\ufffe\uffff", "ab"),
        ("12\u202e34\u2066", "1234"),
        ("line\u2028break", "line break"),
        ("12\u2009000\u00a0mm", "12\u2009000\u00a0mm"),
    ],
)
def test_what_no_drawing_can_carry_is_left_out(text: str, expected: str) -> None:
    assert printable(text) == expected


@pytest.mark.parametrize("text", ["", "1st", "two words", 'quote"', "é", "a/b"])
def test_an_id_must_be_one_plain_word(text: str) -> None:
    with pytest.raises(ValueError, match="id or a class"):
        name(text)


@pytest.mark.parametrize("text", ["", "Width", "cut_length", "-a", "a-", "a b"])
def test_a_data_name_must_be_lower_case_with_hyphens(text: str) -> None:
    with pytest.raises(ValueError, match="data attribute"):
        data_name(text)
