"""Points 14 and 15: a thing without its name, or under another's, is found."""

import pytest

from lacunar.drawing.typeface import Typeface
from tests.drawing.checker.spoiled import Spoiled, findings


def swap(sheet: Spoiled, one: str, other: str) -> None:
    """Exchange what two tags say."""
    first, second = sheet.part(one, "text"), sheet.part(other, "text")
    first.text, second.text = second.text, first.text


def test_coffers_with_exchanged_ids_are_found(svg: str, typeface: Typeface) -> None:
    found = findings(svg, typeface, lambda s: swap(s, "tag-coffer-A1", "tag-coffer-B1"))
    assert [(f.point, f.where) for f in found] == [(14, "coffer-A1"), (14, "coffer-B1")]


def test_a_coffer_without_its_id_is_found(svg: str, typeface: Typeface) -> None:
    found = findings(svg, typeface, lambda sheet: sheet.remove("tag-coffer-A2"))
    assert [(f.point, f.where) for f in found] == [(14, "coffer-A2")]


def test_a_coffer_labelled_outside_is_found(svg: str, typeface: Typeface) -> None:
    found = findings(svg, typeface, lambda sheet: sheet.move("tag-coffer-A2", 0, 30))
    assert (14, "coffer-A2") in {(f.point, f.where) for f in found}


@pytest.mark.parametrize(
    ("tag", "where"),
    [
        ("tag-beam-XB-1", "beam-XB-1"),
        ("tag-beam-WB-1", "beam-WB-1"),
        ("tag-member-S1", "member-S1"),
        ("tag-wall-W2", "wall-W2"),
    ],
)
def test_a_part_without_its_id_is_found(svg: str, typeface: Typeface, tag: str, where: str) -> None:
    found = findings(svg, typeface, lambda sheet: sheet.remove(tag))
    assert [(f.point, f.where) for f in found] == [(15, where)]


def test_beams_with_exchanged_ids_are_found(svg: str, typeface: Typeface) -> None:
    """The words only, and the whole tags with their ids and leaders."""
    found = findings(svg, typeface, lambda s: swap(s, "tag-beam-XB-1", "tag-beam-XB-2"))
    assert [(f.point, f.where) for f in found] == [(15, "beam-XB-1"), (15, "beam-XB-2")]

    def spoil(sheet: Spoiled) -> None:
        # XB-2 stands 41 5/6" further on, 44.274 mm of paper.
        sheet.move("tag-beam-XB-1", 44.274, 0)
        sheet.move("tag-beam-XB-2", -44.274, 0)

    found = findings(svg, typeface, spoil)
    assert [(f.point, f.where) for f in found] == [(15, "tag-beam-XB-1"), (15, "tag-beam-XB-2")]


def test_walls_with_exchanged_ids_are_found(svg: str, typeface: Typeface) -> None:
    def spoil(sheet: Spoiled) -> None:
        # From 6 mm inside W1 to 6 mm inside W3, 127 mm apart, and back.
        sheet.move("tag-wall-W1", 115, 0)
        sheet.move("tag-wall-W3", -115, 0)

    found = findings(svg, typeface, spoil)
    assert [(f.point, f.where) for f in found] == [(15, "wall-W1"), (15, "wall-W3")]
