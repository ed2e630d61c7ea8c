"""Profiles on their own sheet: what they add up to, and what is drawn of every kind of beam.

The box of 1x6 and 1x4 is the one that a trade article on box beams builds: 5 wide and 5 1/2 deep,
reveal 1/4, its block 3 1/2 by 4 1/2. A crown of 3 1/4 in milled to 38 degrees comes 2 9/16 down and
2 out (sizes common in the trade, from memory).
"""

import json
from xml.etree import ElementTree
from xml.etree.ElementTree import Element

import pytest

from lacunar.drawing.painters.fonts import load_typeface
from lacunar.drawing.painters.svg import paint_svg
from lacunar.drawing.paper import PAPER_SIZES
from lacunar.drawing.sheet_set import compose, title_fields
from lacunar.drawing.sheets.pages import SheetSource
from lacunar.drawing.sheets.profile_sheet import profile_pages
from lacunar.workflow.check import check_drawings
from lacunar.workflow.prepare import Prepared, prepare

SVG = "{http://www.w3.org/2000/svg}"
ARTICLE = {"sides": "1x6", "bottom": "1x4", "bottom_joint": "between", "reveal": "1/4"}
JOISTS = {"parallel_to": "width", "spacing": 16, "first": 8, "existing_finish": "1/2"}


def ceiling(box: dict[str, object], **more: object) -> Prepared:
    document = {
        "room": {"length": 192, "width": 144, "height": 108},
        "beams": {"crosswise": box},
        "panel": {"kind": "existing"},
        "drawing": {"paper": "tabloid", "sheets": ["Z-501"]},
        **more,
    }
    return prepare(json.dumps(document).encode())


def groups(prepared: Prepared, kind: str) -> list[Element]:
    typeface = load_typeface()
    sheets = compose(prepared.layout, prepared.digest, typeface).sheets
    roots = [ElementTree.fromstring(paint_svg(sheet, typeface, fonts=None)) for sheet in sheets]
    return [g for root in roots for g in root.iter(f"{SVG}g") if g.get("class") == kind]


def figures(view: Element, string: str) -> list[str]:
    """What is printed of a string of a view."""
    found = [g for g in view.iter(f"{SVG}g") if g.get("data-string") == string]
    return [text.text or "" for group in found for text in group.iter(f"{SVG}text")]


def first_view(prepared: Prepared) -> Element:
    return next(v for v in groups(prepared, "view") if v.get("data-profile") == "P1")


def listed(prepared: Prepared) -> dict[str, str]:
    """The size told of each part, by its name."""
    rows = groups(prepared, "balloon-row")
    return {
        row.attrib["data-part"]: [t.text or "" for t in row.iter(f"{SVG}text")][2]
        for row in reversed(rows)
    }


def test_the_article_s_box_adds_up():
    view = first_view(ceiling(ARTICLE))
    assert figures(view, "across") == ['3/4"', '3 1/2"', '3/4"']
    assert figures(view, "finished-width") == ['5"']
    assert figures(view, "down") == ['1/4"', '3/4"', '4 1/2"']
    assert figures(view, "drop") == ['5 1/2"']


def test_the_article_s_parts_are_listed_thickness_by_width():
    found = listed(ceiling(ARTICLE))
    assert found["side"] == '3/4" x 5 1/2"'
    assert found["bottom"] == '3/4" x 3 1/2"'
    assert found["backing"] == '4 1/2" x 3 1/2"'
    assert found["reveal"] == '1/4"'


def test_crown_is_dimensioned_by_its_drop_and_its_projection():
    crowned = ceiling(ARTICLE, crown={"face": "3 1/4", "spring_from_wall": 38})
    view = first_view(crowned)
    assert figures(view, "mouldings") == ['2"']
    # 5 1/2 of side, less the crown's drop.
    assert figures(view, "seen") == ['2 15/16"', '2 9/16"']
    row = next(r for r in groups(crowned, "balloon-row") if r.get("data-part") == "crown")
    assert "envelope" in " ".join(row.itertext())


def test_below_a_panel_the_net_depth_is_told():
    panel = {"kind": "sheet_goods", "thickness": "1/4", "seat": "between_sides"}
    assert figures(first_view(ceiling(ARTICLE, panel=panel)), "net-depth") == ['5 1/4"', '1/4"']


@pytest.mark.parametrize(
    ("sides", "paper", "scale"),
    [("1x6", "tabloid", "1"), ("1x6", "letter", "2"), ("1x12", "letter", "4")],
)
def test_the_largest_scale_is_taken_that_fits(sides: str, paper: str, scale: str):
    """5 1/2 in are 140 mm: half of that is less than letter holds, all of it is more."""
    box = {**ARTICLE, "sides": sides}
    view = first_view(ceiling(box, drawing={"paper": paper, "sheets": ["Z-501"]}))
    assert view.get("data-scale") == scale


def test_all_kinds_of_beams_are_drawn_and_pass_the_checker():
    """A clad member that leans and ends short, a soffit with a half beam, flat beams, mouldings."""
    member = {
        "on": "length",
        "center": 96,
        "center_at_end": "96 3/4",
        "width": "3 1/2",
        "drop": 4,
        "drop_at_end": "4 1/2",
        "cladding": "1/2",
        "clearance": "1/4",
        "cleat": "3/4",
        "starts_at": 36,
    }
    room = {"length": 192, "width": 144, "height": 108, "members": [member], "joists": JOISTS}
    box = {"sides": "1x8", "bottom": "1x10", "bottom_joint": "between", "reveal": "1/4", "width": 7}
    prepared = ceiling(
        box,
        room=room,
        beams={"crosswise": box, "lengthwise": {"profile": "flat", "bottom": "1x6"}},
        grid={"length": {"coffers": [2, 2], "start": {"soffit": 9, "then": "half"}}},
        flat_mouldings=[{"at": "bottom_edge", "thickness": "1/4", "width": "1/2"}],
    )
    parts = {g.attrib["data-part"] for g in groups(prepared, "profile-part")}
    assert parts >= {"joist", "ceiling", "member", "cladding", "cleat", "flat-moulding", "backing"}
    titles = " ".join("".join(g.itertext()) for g in groups(prepared, "view-title"))
    for words in (
        "BOX BEAM",
        "CASED BEAM",
        "FLAT BEAM",
        "SOFFIT",
        "HALF BEAM",
        "BEYOND THE MEMBER",
    ):
        assert words in titles
    assert check_drawings(prepared) == ()


def test_views_go_by_their_profiles_for_other_sheets():
    prepared = ceiling(ARTICLE)
    size = PAPER_SIZES[prepared.layout.ceiling.drawing.paper]
    fields = title_fields(prepared.layout.ceiling, prepared.digest, size)
    pages = profile_pages(SheetSource(prepared.layout, size, fields, load_typeface()))
    names = [view.name for page in pages for view in page.views]
    assert names == [f"profile-{profile.id}" for profile in prepared.layout.profiles]


def test_more_casings_than_are_drawn_are_told():
    members = [
        {
            "on": "length",
            "center": 60 + 48 * n,
            "width": 3 + n / 16,
            "drop": 4,
            "casing": "centered",
        }
        for n in range(18)
    ]
    room = {"length": 1000, "width": 144, "height": 108, "members": members}
    prepared = ceiling(ARTICLE, room=room, drawing={"paper": "arch_d", "sheets": ["Z-501"]})
    assert len(groups(prepared, "view")) == 16
    words = " ".join("".join(g.itertext()) for g in groups(prepared, "notes"))
    assert "left out" in words
    assert check_drawings(prepared) == ()
