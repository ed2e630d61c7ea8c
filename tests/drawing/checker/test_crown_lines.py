"""Point 68: crown drawn elsewhere, left out, doubled or without a miter is found."""

from copy import deepcopy

from lacunar.drawing.typeface import Typeface
from tests.drawing.checker.small_layout import small_layout
from tests.drawing.checker.spoiled import NAMESPACE, Spoiled, checked, findings

# Seen on paper, but a small part of a coffer.
A_LITTLE = 0.06


def places(found: list) -> set[str]:
    return {finding.where for finding in found if finding.point == 68}


def test_crown_drawn_elsewhere_is_found(svg: str, typeface: Typeface) -> None:
    found = findings(svg, typeface, lambda sheet: sheet.move("crown-B2", A_LITTLE, -A_LITTLE))
    assert places(found) == {"crown-B2"}


def test_crown_left_out_is_found(svg: str, typeface: Typeface) -> None:
    assert places(findings(svg, typeface, lambda sheet: sheet.remove("crown-A3"))) == {"crown-A3"}


def test_crown_drawn_twice_is_found(svg: str, typeface: Typeface) -> None:
    def spoil(sheet: Spoiled) -> None:
        again = deepcopy(sheet.group("crown-A1"))
        again.set("id", "crown-A1-2")
        sheet.group("object-view-1").append(again)

    assert places(findings(svg, typeface, spoil)) == {"crown-A1"}


def test_a_miter_that_misses_its_corner_is_found(svg: str, typeface: Typeface) -> None:
    def spoil(sheet: Spoiled) -> None:
        group = sheet.group("crown-B1")
        miters = [p for p in group.iter(f"{{{NAMESPACE}}}path") if "Z" not in p.get("d", "")]
        miters[0].set("d", miters[0].get("d", "").replace("M", "M1", 1))

    assert places(findings(svg, typeface, spoil)) == {"crown-B1"}


def test_crown_the_layout_does_not_have_is_found(svg: str, typeface: Typeface) -> None:
    layout = {**small_layout(), "mouldings": {"crown": None, "coffers": []}}
    found = list(checked(svg, layout, typeface))
    assert len(places(found)) == 6
