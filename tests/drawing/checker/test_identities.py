"""Points 62 and 170: what groups say of themselves in ids and numbers is the layout's."""

import pytest

from lacunar.drawing.typeface import Typeface
from tests.drawing.checker.spoiled import Spoiled, findings, points


def renamed(sheet: Spoiled, old: str, new: str) -> None:
    sheet.group(old).set("id", new)


@pytest.mark.parametrize(
    ("old", "new"),
    [
        ("coffer-B2", "coffer-B7"),
        ("beam-XB-1", "beam-1"),
        ("wall-beam-WB-1", "beam-WB-1"),
        ("dim-length-openings-2", "dim-length-openings-9"),
        ("dim-width-overall-1", "dim-length-overall-7"),
        ("string-length-centers", "string-of-centers"),
    ],
)
def test_an_id_of_something_else_is_found(svg: str, typeface: Typeface, old: str, new: str) -> None:
    assert points(findings(svg, typeface, lambda sheet: renamed(sheet, old, new))) == {62}


@pytest.mark.parametrize(("tag", "kind"), [("tag-coffer-A1", "coffer"), ("tag-beam-XB-1", "beam")])
def test_a_balloon_of_what_the_layout_lacks_is_found(
    svg: str, typeface: Typeface, tag: str, kind: str
) -> None:
    found = findings(svg, typeface, lambda sheet: sheet.group(tag).set("data-of", "XB-9"))
    assert (62, tag) in {(one.point, one.where) for one in found}
    assert any(f"names {kind} XB-9" in one.message for one in found)


@pytest.mark.parametrize(
    ("identity", "name", "value"),
    [
        ("coffer-A1", "data-length-mm", "922.866668"),  # 36 1/3 in are 922.8667 mm
        ("coffer-A1", "data-width-mm", ""),
        ("dim-length-openings-2", "data-exact-mm", "139.700003"),  # 5 1/2 in are 139.7 mm
        ("dim-width-overall-1", "data-exact-mm", "no length"),
    ],
)
def test_a_stated_size_other_than_the_layouts_is_found(
    svg: str, typeface: Typeface, identity: str, name: str, value: str
) -> None:
    found = findings(svg, typeface, lambda sheet: sheet.group(identity).set(name, value))
    assert (170, identity) in {(one.point, one.where) for one in found}
