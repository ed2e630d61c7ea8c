"""Points 16, 18, 19 and 20: what is drawn elsewhere, or at another scale than it says, is found."""

from collections.abc import Callable

import pytest

from lacunar.drawing.checker.scales import PAPERS, scale_in_words
from lacunar.drawing.typeface import Typeface
from tests.drawing.checker.small_layout import small_layout
from tests.drawing.checker.spoiled import Spoiled, checked, findings, points

# Seen on paper, but a small part of a coffer.
A_LITTLE = 0.06


@pytest.mark.parametrize(
    "identity",
    [
        "coffer-B2",
        "beam-XB-1",
        "beam-LB-1",
        "wall-beam-WB-1",
        "member-S1",
        "wall-W2",
        "wall-W3",
    ],
)
def test_a_thing_drawn_elsewhere_is_found(svg: str, typeface: Typeface, identity: str) -> None:
    found = findings(svg, typeface, lambda sheet: sheet.move(identity, A_LITTLE, -A_LITTLE))
    assert {f.where for f in found if f.point == 16} == {identity}


@pytest.mark.parametrize("identity", ["coffer-B2", "beam-XB-1", "member-S1", "wall-beam-WB-1"])
def test_a_thing_left_out_is_found(svg: str, typeface: Typeface, identity: str) -> None:
    found = findings(svg, typeface, lambda sheet: sheet.remove(identity))
    assert {f.where for f in found if f.point == 16} == {identity}


def test_a_thing_the_layout_does_not_have_is_found(svg: str, typeface: Typeface) -> None:
    def spoil(sheet: Spoiled) -> None:
        sheet.group("beam-XB-2").set("data-id", "XB-3")

    found = findings(svg, typeface, spoil)
    assert {f.where for f in found if f.point == 16} == {"beam-XB-2", "beam-XB-3"}


def test_a_beam_with_one_edge_too_many_is_found(svg: str, typeface: Typeface) -> None:
    def spoil(sheet: Spoiled) -> None:
        line = sheet.part("beam-XB-1", "path").attrib["d"]
        sheet.add_line("beam-XB-1", line.replace("M", "M1"), "object", "0.35")

    found = findings(svg, typeface, spoil)
    assert "beam-XB-1" in {f.where for f in found if f.point == 16}


def test_a_center_line_off_the_center_is_found(svg: str, typeface: Typeface) -> None:
    """The center of XB-1 is 39 1/12" from W1: 41.363 mm of paper, so 131.363 mm."""

    def spoil(x: str) -> Callable[[Spoiled], None]:
        look = "center", "0.25"
        return lambda sheet: sheet.add_line("beam-XB-1", f"M{x} 190 L{x} 110", *look)

    for x, expected in (("131.363", set()), ("131.5", {"beam-XB-1"})):
        found = findings(svg, typeface, spoil(x))
        assert {f.where for f in found if f.point == 16} == expected


@pytest.mark.parametrize("axis", ["x", "y"])
def test_a_flipped_plan_is_found(svg: str, typeface: Typeface, axis: str) -> None:
    """Everything in the plan mirrored about its middle, as if seen from below."""

    def mirrored(d: str) -> str:
        words = []
        for turn, word in enumerate(word for word in d.split() if word != "Z"):
            letter = word[0] if word[0] in "ML" else ""
            number = float(word.removeprefix(letter))
            # The room's middle is at 90 + 127 / 2 and 200 - 101.6 / 2.
            if turn % 2 == 0 and axis == "x":
                number = 307.0 - number
            if turn % 2 and axis == "y":
                number = 298.4 - number
            words.append(f"{letter}{number:.3f}")
        return " ".join(words) + (" Z" if "Z" in d else "")

    def spoil(sheet: Spoiled) -> None:
        for path in sheet.parts("object-view-1", "path"):
            path.set("d", mirrored(path.attrib["d"]))

    assert 16 in points(findings(svg, typeface, spoil))


def test_rows_counted_from_the_top_are_found(svg: str, typeface: Typeface) -> None:
    def spoil(sheet: Spoiled) -> None:
        for column in "123":
            for row, other in (("A", "B"), ("B", "A")):
                sheet.group(f"coffer-{row}{column}").set("data-id", f"{other}{column}")

    found = findings(svg, typeface, spoil)
    assert len({f.where for f in found if f.point == 16}) == 6


@pytest.mark.parametrize("spoil", [lambda s: s.move("datum", 1, 0), lambda s: s.remove("datum")])
def test_a_datum_marked_elsewhere_is_found(
    svg: str, typeface: Typeface, spoil: Callable[[Spoiled], object]
) -> None:
    found = findings(svg, typeface, spoil)
    assert [(f.point, f.where) for f in found] == [(16, "datum")]


@pytest.mark.parametrize("value", ["922.9", "", "wide"])
def test_a_face_stated_other_than_the_layout_is_found(
    svg: str, typeface: Typeface, value: str
) -> None:
    """The near face of XB-1 is at 36 1/3", 922.866667 mm."""

    def spoil(sheet: Spoiled) -> None:
        group = sheet.group("beam-XB-1")
        assert group.get("data-near-mm") == "922.866667"
        group.set("data-near-mm", value)

    found = findings(svg, typeface, spoil)
    assert [(f.point, f.where) for f in found] == [(16, "beam-XB-1")]


def test_a_wall_not_drawn_is_found(svg: str, typeface: Typeface) -> None:
    assert 16 in points(findings(svg, typeface, lambda sheet: sheet.remove("wall-W1")))


def test_a_dimension_line_of_another_length_is_found(svg: str, typeface: Typeface) -> None:
    def spoil(sheet: Spoiled) -> None:
        line = sheet.part("dim-length-overall-1", "path")
        line.set("d", line.attrib["d"].replace("L217 ", "L217.1 "))

    found = findings(svg, typeface, spoil)
    assert {(f.point, f.where) for f in found} == {(18, "dim-length-overall-1")}


def test_a_string_drawn_beside_its_room_is_found(svg: str, typeface: Typeface) -> None:
    """Every line keeps its length, but none stops at its wall or face any more."""
    found = findings(svg, typeface, lambda sheet: sheet.move("string-length-openings", 0.2, 0))
    assert {f.point for f in found} == {18}
    assert {f.where for f in found} == {f"dim-length-openings-{number}" for number in range(1, 6)}


def test_a_dimension_drawn_towards_the_datum_is_found(svg: str, typeface: Typeface) -> None:
    def spoil(sheet: Spoiled) -> None:
        line = sheet.part("dim-width-overall-1", "path")
        start, end = line.attrib["d"].removeprefix("M").split(" L")
        line.set("d", f"M{end} L{start}")

    assert points(findings(svg, typeface, spoil)) == {18}


def test_a_figure_more_than_a_step_off_is_found(svg: str, typeface: Typeface) -> None:
    """At 1:24 an eighth is 0.13 mm of paper: no ruler tells, so the exact size does."""

    def spoil(sheet: Spoiled) -> None:
        for number, text, value in ((1, "3'-2 15/16\"", "623/16 in"), (2, "3'-6\"", "42 in")):
            dimension = f"dim-length-centers-{number}"
            sheet.part(dimension, "text").text = text
            sheet.group(dimension).set("data-value", value)

    found = findings(svg, typeface, spoil)
    assert {f.where for f in found if f.point == 18} == {
        "dim-length-centers-1",
        "dim-length-centers-2",
    }


@pytest.mark.parametrize("exact", ["", "nothing", "3048.5"])
def test_an_exact_size_missing_or_wrong_is_found(svg: str, typeface: Typeface, exact: str) -> None:
    def spoil(sheet: Spoiled) -> None:
        sheet.group("dim-length-overall-1").set("data-exact-mm", exact)

    # 0.5 mm of the room is 0.02 mm on paper, within a hair, and less than a step.
    expected = {(170, "dim-length-overall-1")}
    if exact != "3048.5":
        expected.add((18, "dim-length-overall-1"))
    found = findings(svg, typeface, spoil)
    assert {(f.point, f.where) for f in found} == expected


def test_a_dimension_without_a_line_is_found(svg: str, typeface: Typeface) -> None:
    def spoil(sheet: Spoiled) -> None:
        group = sheet.group("dim-length-overall-1")
        group.remove(sheet.part("dim-length-overall-1", "path"))

    found = findings(svg, typeface, spoil)
    assert "dim-length-overall-1" in {f.where for f in found if f.point == 18}


@pytest.mark.parametrize("kind", ["ticks", "extension-lines"])
def test_an_end_without_a_tick_or_an_extension_line_is_found(
    svg: str, typeface: Typeface, kind: str
) -> None:
    """The one between the second and the third of the centers is left out, then set aside."""

    def spoil(aside: bool) -> Callable[[Spoiled], None]:
        def change(sheet: Spoiled) -> None:
            groups = sheet.parts("string-length-centers", "g")
            (path,) = next(one for one in groups if one.get("class") == kind)
            pieces = path.attrib["d"].split(" M")
            x = f"{float(pieces[2].split(' ')[0]) + 0.1:.3f}"
            pieces[2] = " ".join((x, *pieces[2].split(" ")[1:2], f"L{x}", pieces[2].split(" ")[3]))
            path.set("d", " M".join(pieces if aside else pieces[:2] + pieces[3:]))

        return change

    for aside in (True, False):
        found = findings(svg, typeface, spoil(aside))
        assert {(f.point, f.where) for f in found} == {
            (18, "dim-length-centers-2"),
            (18, "dim-length-centers-3"),
        }


@pytest.mark.parametrize(
    ("words", "ratio"),
    [
        ('1/2" = 1\'-0"', 24.0),
        ('3/32" = 1\'-0"', 128.0),
        ('1 1/2" = 1\'-0"', 8.0),
        ("1:20", 20.0),
        ("FULL SIZE", 1.0),
        ("ABOUT HALF", None),
        ('0" = 1\'-0"', None),
    ],
)
def test_a_scale_in_words(words: str, ratio: float | None) -> None:
    assert scale_in_words(words) == ratio


@pytest.mark.parametrize(
    ("name", "value"), [("data-scale", "25"), ("data-scale", ""), ("data-scale-text", "1:25")]
)
def test_a_scale_stated_in_two_ways_is_found(
    svg: str, typeface: Typeface, name: str, value: str
) -> None:
    found = findings(svg, typeface, lambda sheet: sheet.group("view-1").set(name, value))
    assert "view-1" in {f.where for f in found if f.point == 19}


def test_a_view_without_a_scale_bar_is_found(svg: str, typeface: Typeface) -> None:
    found = findings(svg, typeface, lambda sheet: sheet.remove("scale-bar-view-1"))
    assert [(f.point, f.where) for f in found] == [(19, "view-1")]


def test_a_scale_bar_of_no_view_is_found(svg: str, typeface: Typeface) -> None:
    def spoil(sheet: Spoiled) -> None:
        sheet.group("scale-bar-view-1").set("data-view", "view-2")

    found = findings(svg, typeface, spoil)
    assert {f.where for f in found if f.point == 19} == {"view-1", "scale-bar-view-1"}


def test_a_scale_bar_that_is_not_true_is_found(svg: str, typeface: Typeface) -> None:
    def spoil(sheet: Spoiled) -> None:
        bar = sheet.part("scale-bar-view-1", "path")
        bar.set("d", bar.attrib["d"].replace("L140.8 ", "L140.9 "))

    found = findings(svg, typeface, spoil)
    assert [(f.point, f.where) for f in found] == [(19, "scale-bar-view-1")]


def test_a_scale_bar_with_the_wrong_words_is_found(svg: str, typeface: Typeface) -> None:
    def spoil(sheet: Spoiled) -> None:
        sheet.part("scale-bar-view-1", "text", 1).text = "5'"

    found = findings(svg, typeface, spoil)
    assert [(f.point, f.where) for f in found] == [(19, "scale-bar-view-1")]


@pytest.mark.parametrize("length", ["", "none"])
def test_a_scale_bar_that_states_no_length_is_found(
    svg: str, typeface: Typeface, length: str
) -> None:
    def spoil(sheet: Spoiled) -> None:
        sheet.group("scale-bar-view-1").set("data-length-mm", length)

    found = findings(svg, typeface, spoil)
    assert [(f.point, f.where) for f in found] == [(19, "scale-bar-view-1")]


@pytest.mark.parametrize(
    ("name", "value"),
    [
        ("data-paper", "a3"),
        ("data-paper", "napkin"),
        ("width", "431.8"),
        ("width", "1224pt"),
        ("height", "279.1mm"),
        ("viewBox", "0 0 431.8 279.1"),
        ("viewBox", "1 0 431.8 279.4"),
        ("viewBox", "0 0 17 11"),
    ],
)
def test_a_page_of_another_size_is_found(
    svg: str, typeface: Typeface, name: str, value: str
) -> None:
    sheet = Spoiled(svg)
    sheet.root.set(name, value)
    assert 20 in points(checked(sheet.svg, small_layout(), typeface))


def test_paper_sizes_halve() -> None:
    """ISO 216: each size is the next larger one halved, its short edge becoming the long one.

    The same holds from ANSI A to D (ANSI/ASME Y14.1), where A is letter and B is tabloid.
    """
    for small, large in (("a4", "a3"), ("a3", "a2"), ("a2", "a1"), ("letter", "tabloid")):
        assert PAPERS[small][0] == PAPERS[large][1]
        # Whole millimeters are halved downwards.
        assert PAPERS[small][1] == pytest.approx(PAPERS[large][0] / 2, abs=0.51)
    assert PAPERS["ansi_c"] == (PAPERS["ansi_d"][1], PAPERS["ansi_d"][0] / 2)
    for paper in ("letter", "tabloid", "ansi_c", "ansi_d", "arch_c", "arch_d"):
        inches = [size / 25.4 for size in PAPERS[paper]]
        assert inches == pytest.approx([round(size * 2) / 2 for size in inches])
