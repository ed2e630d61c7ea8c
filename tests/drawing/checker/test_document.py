"""Point 61: what cannot be read is said, not skipped; ids are unique and parts have titles."""

import pytest

from lacunar.drawing.checker import check_set
from lacunar.drawing.checker.json_node import UnexpectedJson, exact_millimeters
from lacunar.drawing.typeface import Typeface
from tests.drawing.checker.small_layout import small_layout
from tests.drawing.checker.spoiled import Spoiled, checked, findings, points


@pytest.mark.parametrize(
    "text",
    [
        "no drawing",
        "<svg",
        "<html/>",
        '<svg width="1mm"/>',
        '<!DOCTYPE svg [<!ENTITY a "b">]><svg xmlns="http://www.w3.org/2000/svg">&a;</svg>',
    ],
)
def test_what_is_no_sheet_is_one_finding(text: str, typeface: Typeface) -> None:
    assert points(check_set([text], small_layout(), typeface)) == {61}


@pytest.mark.parametrize(
    ("name", "attributes"),
    [
        ("rect", {"width": "10", "height": "10"}),
        ("image", {"href": "x.png"}),
        ("path", {"d": "M0 0 C1 1 2 2 3 3"}),
        ("path", {"d": "m1 1 l2 2"}),
        ("path", {"d": "10 10"}),
        ("path", {}),
        ("path", {"d": "M20 20 L30"}),
        ("path", {"d": "M20 20 L30 30", "style": "stroke: black"}),
        ("path", {"d": "M20 20 L30 30", "transform": "scale(2)"}),
        ("g", {"transform": "translate(1 1)"}),
        ("circle", {"cx": "20", "cy": "20"}),
        ("circle", {"cx": "20", "cy": "20", "r": "wide"}),
    ],
)
def test_what_cannot_be_read_is_found(
    svg: str, typeface: Typeface, name: str, attributes: dict[str, str]
) -> None:
    found = findings(svg, typeface, lambda sheet: sheet.add("view-1", name, **attributes))
    assert ("view-1", 61) in {(f.where, f.point) for f in found}


@pytest.mark.parametrize(
    ("name", "value"),
    [
        ("x", "here"),
        ("font-size", "large"),
        ("text-anchor", "left"),
        ("data-face", "italic"),
        ("transform", "skewX(10)"),
    ],
)
def test_text_that_cannot_be_read_is_found(
    svg: str, typeface: Typeface, name: str, value: str
) -> None:
    def spoil(sheet: Spoiled) -> None:
        sheet.part("title-block", "text").set(name, value)

    found = findings(svg, typeface, spoil)
    assert [(f.point, f.where) for f in found] == [(61, "title-block")]


def test_text_in_pieces_is_found(svg: str, typeface: Typeface) -> None:
    def spoil(sheet: Spoiled) -> None:
        sheet.part("title-block", "text").append(sheet.part("tag-coffer-B1", "text"))

    assert points(findings(svg, typeface, spoil)) == {61}


def test_a_style_sheet_may_name_fonts_and_no_more(svg: str, typeface: Typeface) -> None:
    style = "@font-face{font-family:a;src:url(data:font/woff2;base64,AA==)}svg{font-kerning:none}"
    for rule, expected in (("", set()), ("path{stroke-width:0.1}", {61})):
        changed = svg.replace("</desc>", f"</desc><defs><style>{style}{rule}</style></defs>", 1)
        assert points(checked(changed, small_layout(), typeface)) == expected


def test_an_id_given_twice_is_found(svg: str, typeface: Typeface) -> None:
    found = findings(
        svg, typeface, lambda sheet: sheet.group("tag-coffer-B1").set("id", "tag-coffer-B2")
    )
    assert [(f.point, f.where) for f in found] == [(61, "tag-coffer-B2")]


@pytest.mark.parametrize("identity", ["coffer-A1", "beam-XB-1"])
def test_a_part_without_a_title_is_found(svg: str, typeface: Typeface, identity: str) -> None:
    def spoil(sheet: Spoiled) -> None:
        group = sheet.group(identity)
        group.remove(next(one for one in group if one.tag.endswith("title")))

    found = findings(svg, typeface, spoil)
    assert [(f.point, f.where) for f in found] == [(61, identity)]


def test_a_sheet_without_a_description_is_found(svg: str, typeface: Typeface) -> None:
    def spoil(sheet: Spoiled) -> None:
        sheet.root.remove(next(one for one in sheet.root if one.tag.endswith("desc")))

    assert points(findings(svg, typeface, spoil)) == {61}


@pytest.mark.parametrize("name", ["data-sheet", "data-step", "data-digest"])
def test_a_sheet_of_another_origin_is_found(svg: str, typeface: Typeface, name: str) -> None:
    sheet = Spoiled(svg)
    layout = small_layout() | {"digest": "0" * 64}
    assert checked(svg, layout, typeface) == ()
    sheet.root.set(name, "another")
    assert points(checked(sheet.svg, layout, typeface)) == {61}


def test_whatever_is_missing_the_checker_goes_on(svg: str, typeface: Typeface) -> None:
    """Each attribute of every sixth element left out, one at a time: findings, never an error."""
    count = len(list(Spoiled(svg).root.iter()))
    for number in range(0, count, 6):
        names = list(list(Spoiled(svg).root.iter())[number].attrib)
        for name in names:
            sheet = Spoiled(svg)
            del list(sheet.root.iter())[number].attrib[name]
            check_set([sheet.svg], small_layout(), typeface)


@pytest.mark.parametrize(
    ("name", "value"),
    [
        ("beams", None),
        ("coffers", 3),
        ("ceiling", {"units": "in", "mark_to": "a hair"}),
        ("ceiling", {"units": 1, "mark_to": "1/16"}),
        ("runs", {"length": {"span": {}}}),
    ],
)
def test_json_that_is_no_layout_is_refused(
    svg: str, typeface: Typeface, name: str, value: object
) -> None:
    with pytest.raises(UnexpectedJson, match=f"/{name}"):
        checked(svg, small_layout() | {name: value}, typeface)


def test_exact_values_are_read() -> None:
    # 769/16 in of 25.4 mm.
    assert float(exact_millimeters("769/16 in")) == 1220.7875
    assert exact_millimeters("6096/5 mm") * 5 == 6096
    for text in ("12", "12 ft", "in", ""):
        with pytest.raises(ValueError, match=r"^.*$"):
            exact_millimeters(text)
