"""DXF sheets, read back with the library's own reader: what measures, measures the real thing.

The layout's JSON is what the drawing is held against: its exact figures, never what was drawn.
"""

import re
from collections.abc import Iterator, Mapping
from dataclasses import replace
from functools import cache
from io import StringIO
from pathlib import Path
from typing import Any, NamedTuple

import ezdxf
import pytest
from ezdxf.document import Drawing

from lacunar.drawing import style
from lacunar.drawing.checker.facts import LayoutFacts, read_facts
from lacunar.drawing.elements import Circle, Fill, Group, Polyline, Pt, Segments, Sheet, Text, walk
from lacunar.drawing.painters.dxf import paint_dxf
from lacunar.drawing.painters.fonts import load_typeface
from lacunar.drawing.typeface import Typeface
from lacunar.workflow.draw import compose_sheets
from lacunar.workflow.prepare import layout_answer, prepare
from tests.drawing.painters.fresh_process import run
from tests.drawing.painters.sample_sheets import sample_sheet

CEILINGS = sorted((Path(__file__).parents[3] / "examples" / "ceilings").glob("*.json"))
SQUARE_GRIDS = [path for path in CEILINGS if path.stem != "attic_study"]
MOST_OFF = 1e-6
"""How far a figure may be from the layout's [mm]."""


class Drawn(NamedTuple):
    """An example's sheets, the same as DXF read back, and the layout's JSON."""

    sheets: tuple[Sheet, ...]
    documents: tuple[Drawing, ...]
    facts: LayoutFacts


@cache
def drawn(path: Path) -> Drawn:
    prepared = prepare(path.read_bytes())
    sheet_set, typeface = compose_sheets(prepared)
    sheets = tuple(s for s in sheet_set.sheets if s.id in {"Z-101", "Z-102", "Z-701"})
    documents = tuple(read_back(paint_dxf(sheet, typeface)) for sheet in sheets)
    return Drawn(sheets, documents, read_facts(layout_answer(prepared, trace=False)))


def read_back(content: bytes) -> Drawing:
    return ezdxf.read(StringIO(content.decode("utf-8")))


def millimeters(document: Drawing) -> float:
    """The length of a drawing's unit [mm], by what the format says its codes mean."""
    return {1: 25.4, 4: 1.0}[document.header["$INSUNITS"]]


def named(document: Drawing, name: str, kind: str) -> list[Any]:
    """The entities of a kind and a layer in a named group."""
    entity, layer = kind.split("/")
    members = document.groups.get(name)
    return [one for one in members if (one.dxftype(), one.dxf.layer) == (entity, layer)]


def outline(entity: Any, unit: float) -> list[tuple[float, float]]:
    return [(x * unit, y * unit) for x, y in entity.get_points("xy")]


@pytest.mark.parametrize("path", CEILINGS, ids=lambda path: path.stem)
def test_nothing_is_to_be_mended(path: Path) -> None:
    for document in drawn(path).documents:
        audit = document.audit()
        assert (audit.errors, audit.fixes) == ([], [])


@pytest.mark.parametrize("path", CEILINGS, ids=lambda path: path.stem)
def test_every_dimension_measures_the_exact_size_and_says_the_printed_one(path: Path) -> None:
    count = 0
    for sheet, document in zip(drawn(path).sheets, drawn(path).documents, strict=True):
        for group in walk(sheet.children):
            if isinstance(group, Group) and group.kind == "dimension":
                (entity,) = named(document, group.id, "DIMENSION/dimension")
                measured = entity.get_measurement() * millimeters(document)
                assert measured == pytest.approx(float(group.data["exact-mm"]), abs=MOST_OFF)
                assert entity.dxf.actual_measurement * millimeters(document) == pytest.approx(
                    measured, abs=MOST_OFF
                )
                assert entity.dxf.text == group.title
                count += 1
    assert count >= 8  # three strings each way, of at least two parts where there is a beam


@pytest.mark.parametrize("path", CEILINGS, ids=lambda path: path.stem)
def test_coffers_are_where_and_as_large_as_the_layout_has_them(path: Path) -> None:
    """In a square room from the datum itself, else all of them moved alike."""
    facts, document = drawn(path).facts, drawn(path).documents[0]
    unit, moved = millimeters(document), set()
    assert facts.coffers
    for coffer in facts.coffers:
        (shape,) = named(document, f"coffer-{coffer.id}", "LWPOLYLINE/area")
        assert shape.closed
        corners = sorted(outline(shape, unit))
        due = sorted((float(x), float(y)) for x, y in coffer.corners)
        offs = [(x - x2, y - y2) for (x, y), (x2, y2) in zip(corners, due, strict=True)]
        moved.update((round(x, 5), round(y, 5)) for x, y in offs)
        assert max(abs(a - b) for one in offs for a, b in zip(one, offs[0], strict=True)) < MOST_OFF
    assert len(moved) == 1 or max(spread(moved)) < 3e-5
    if facts.crooked is None and facts.outline_facts is None:
        assert moved == {(0.0, 0.0)}


def spread(places: set[tuple[float, float]]) -> list[float]:
    return [max(side) - min(side) for side in zip(*places, strict=True)]


@pytest.mark.parametrize("path", SQUARE_GRIDS, ids=lambda path: path.stem)
def test_a_beam_measures_its_real_width(path: Path) -> None:
    """Between its two faces; where a grid goes along walls they are held by its coffers."""
    facts, document = drawn(path).facts, drawn(path).documents[0]
    unit = millimeters(document)
    assert facts.followed is None
    for beam in facts.beams:
        across = 0 if beam.on == "length" else 1
        faces = {
            round(end[across] * unit, 5)
            for line in named(document, f"beam-{beam.id}", "LINE/object")
            for end in (line.dxf.start, line.dxf.end)
        }
        width = float(beam.far.at_start - beam.near.at_start)
        assert len(faces) == 2
        assert max(faces) - min(faces) == pytest.approx(width, abs=2e-5)


@pytest.mark.parametrize("path", CEILINGS[:3], ids=lambda path: path.stem)
def test_windows_show_each_view_at_its_scale_where_it_stands_on_the_paper(path: Path) -> None:
    for sheet, document in zip(drawn(path).sheets, drawn(path).documents, strict=True):
        views = [g for g in walk(sheet.children) if isinstance(g, Group) and g.kind == "view"]
        paper = document.paperspace(sheet.id)
        windows = [w for w in paper.query("VIEWPORT") if w.dxf.id != 1]
        scales = [w.dxf.view_height / w.dxf.height for w in windows]
        assert scales == pytest.approx([float(v.data["scale"]) for v in views if "scale" in v.data])
        for window in windows:
            left, low = (window.dxf.center[n] - size / 2 for n, size in enumerate(sizes(window)))
            assert left >= 0 <= low
        limits = paper.get_paper_limits()[1]
        unit = millimeters(document)
        assert (limits.x * unit, limits.y * unit) == pytest.approx((sheet.width, sheet.height))
        assert document.header["$TILEMODE"] == 0


def sizes(window: Any) -> tuple[float, float]:
    return window.dxf.width, window.dxf.height


def test_the_plans_datum_is_the_origin_and_other_views_lie_to_the_right() -> None:
    path = next(path for path in CEILINGS if path.stem == "music_room")
    document = drawn(path).documents[0]
    datum = named(document, "datum", "CIRCLE/leader")[0]
    assert tuple(datum.dxf.center) == (0.0, 0.0, 0.0)
    rightmost = max(x for x, _ in outline(named(document, "coffer-A4", "LWPOLYLINE/area")[0], 1.0))
    (width,) = named(document, "dim-section-2-finished-width-1", "DIMENSION/dimension")
    assert width.dxf.defpoint2.x > rightmost
    assert width.get_measurement() == 7.0  # beams of music_room.json: 5 1/2 between two of 3/4


def sheet_of(*children: Any, **data: str) -> Sheet:
    return replace(sample_sheet(), children=children, data={"units": "mm", **data})


def entities(sheet: Sheet) -> Mapping[str, list[Any]]:
    document = read_back(paint_dxf(sheet, load_typeface()))
    found: dict[str, list[Any]] = {}
    for one in document.paperspace(sheet.id):
        found.setdefault(one.dxftype(), []).append(one)
    return found


def test_each_pen_has_its_layer_as_wide_and_dashed_as_it_is(typeface: Typeface) -> None:
    document = read_back(paint_dxf(sample_sheet(), typeface))
    for pen in style.PENS:
        layer = document.layers.get(pen.name)
        assert layer.dxf.lineweight == round(pen.width * 100)
        pattern = document.linetypes.get(layer.dxf.linetype).simplified_line_pattern()
        assert tuple(abs(one) for one in pattern) == pytest.approx(pen.dashes)


def test_what_is_in_no_view_is_as_large_as_on_paper_and_black_areas_are_filled() -> None:
    line = Polyline((Pt(30, 40), Pt(130, 40)), style.OBJECT)
    dot = Circle(Pt(10, 10), 0.5, None, Fill.BLACK)
    bar = Polyline((Pt(0, 0), Pt(5, 0), Pt(5, 1)), None, closed=True, fill=Fill.BLACK)
    found = entities(sheet_of(line, dot, bar, Segments(((Pt(1, 1), Pt(2, 1)),), style.TICK)))
    first = found["LINE"][0]
    assert (first.dxf.end - first.dxf.start).magnitude == 100.0
    assert first.dxf.start.y == sample_sheet().height - 40
    assert len(found["HATCH"]) == 2
    assert {one.dxf.layer for one in found["HATCH"]} == {"filled"}
    assert "LWPOLYLINE" not in found


def test_dashes_of_a_view_are_as_long_as_on_paper() -> None:
    center = Polyline((Pt(30, 40), Pt(130, 40)), style.CENTER)
    view = Group("view", (center,), id="view-1", data={"scale": "20"})
    document = read_back(paint_dxf(sheet_of(view), load_typeface()))
    (line,) = document.modelspace().query("LINE")
    assert line.dxf.ltscale == 20.0
    assert (line.dxf.end - line.dxf.start).magnitude == pytest.approx(2000.0)


def test_a_view_at_no_scale_stays_on_the_paper() -> None:
    view = Group("view", (Polyline((Pt(30, 40), Pt(130, 40)), style.CUT),), data={"scale": "none"})
    assert len(entities(sheet_of(view))["LINE"]) == 1


@pytest.mark.parametrize(
    ("text", "read"),
    [("50%%d of ^J", "50% %d of ^J"), ("Łukasz ⌀12", "Łukasz ⌀12"), ("two\nlines", "two lines")],
)
def test_texts_are_read_as_they_are_printed(text: str, read: str) -> None:
    (entity,) = entities(sheet_of(Text(Pt(20, 20), text, 2.5)))["TEXT"]
    assert entity.plain_text().replace("^ J", "^J") == read
    assert entity.dxf.height == 2.5


def test_a_number_that_is_no_place_is_refused(typeface: Typeface) -> None:
    for bad in (float("nan"), float("inf"), 1e9):
        line = Polyline((Pt(0, 0), Pt(bad, 0)), style.OBJECT)
        with pytest.raises(ValueError, match="sheet 'Z-101' cannot be painted"):
            paint_dxf(sheet_of(line), typeface)


def strings(document: Drawing) -> Iterator[str]:
    for entity in document.entitydb.values():
        for _, value in entity.dxf.all_existing_dxf_attribs().items():
            if isinstance(value, str):
                yield value


def test_it_tells_no_path_host_or_person(typeface: Typeface) -> None:
    content = paint_dxf(sample_sheet(), typeface).decode()
    document = read_back(content.encode())
    telling = re.compile(r"\\|/\w+/|\w@\w|://")
    assert not [one for one in strings(document) if telling.search(one)]
    assert document.header["$LASTSAVEDBY"].startswith("Lacunar ")
    assert ".pc3" not in content
    assert "http" not in content


PRINT_DXF = """
import sys
from lacunar.drawing.painters.fonts import load_typeface
from lacunar.workflow.draw import compose_sheets, paint_dxf
from lacunar.workflow.prepare import prepare
prepared = prepare(open(sys.argv[1], "rb").read())
sheets, typeface = compose_sheets(prepared)
sys.stdout.buffer.write(paint_dxf(sheets.sheets[0], typeface))
"""


def test_the_same_sheet_gives_the_same_bytes_in_every_process() -> None:
    path = next(path for path in CEILINGS if path.stem == "attic_study")
    script = PRINT_DXF.replace("sys.argv[1]", repr(str(path)))
    first = run(script, PYTHONHASHSEED="1")
    assert run(script, PYTHONHASHSEED="2") == first
    assert len(first) > 100_000
