"""Measures what it takes to draw: time and bytes of a sheet and of a set, beside a floor.

python -m tests.bench.drawing_sheets                the examples named below
python -m tests.bench.drawing_sheets 500            memory, while so many sets are drawn in a row

The floor is the same elements drawn straight with cairo, without an SVG between: what no painter
that goes by SVG can be below. All figures are CPU seconds of one process on one core, the least of
a few tries, in the same run.
"""

import resource
import sys
import time
from collections.abc import Callable, Sequence
from io import BytesIO
from math import tau
from pathlib import Path
from typing import Any

from lacunar.drawing.elements import (
    Circle,
    Element,
    Fill,
    Group,
    Pen,
    Polyline,
    Pt,
    Segments,
    Sheet,
    Text,
    walk,
)
from lacunar.drawing.painters.cairo_letters import lettering_cairo
from lacunar.drawing.painters.dxf import paint_dxf
from lacunar.drawing.painters.pdf import PdfRecord, paint_pdf
from lacunar.drawing.painters.png import paint_png
from lacunar.drawing.painters.svg import paint_svg
from lacunar.drawing.typeface import Typeface
from lacunar.workflow.draw import compose_sheets, painted_pdf, painted_svg
from lacunar.workflow.prepare import prepare

CEILINGS = Path(__file__).parents[2] / "examples" / "ceilings"
TIMED = ("music_room", "attic_study", "assembly_hall")
"""Twelve coffers; nine that taper; a large hall."""
TRIES = 5
POINTS = 72 / 25.4
GRAYS = {Fill.WHITE: 1.0, Fill.TINT: 0xEC / 255, Fill.BLACK: 0.0}
ANCHORS = {"start": 0.0, "middle": 0.5, "end": 1.0}
RECORD = PdfRecord("Bench", "", "")


def least(work: Callable[[], object], tries: int = TRIES) -> float:
    """The least CPU seconds that some work takes."""
    took = []
    for _ in range(tries):
        start = time.process_time()
        work()
        took.append(time.process_time() - start)
    return min(took)


def floor(sheets: Sequence[Sheet], typeface: Typeface, cairo: Any) -> bytes:
    """The sheets as a PDF of the same elements, each drawn by a few calls of cairo."""
    target = BytesIO()
    surface = cairo.PDFSurface(target, 1, 1)
    for sheet in sheets:
        surface.set_size(sheet.width * POINTS, sheet.height * POINTS)
        context = cairo.Context(surface)
        context.scale(POINTS, POINTS)
        for element in walk(sheet.children):
            draw(context, element, typeface)
        context.show_page()
    surface.finish()
    return target.getvalue()


def draw(context: Any, element: Element, typeface: Typeface) -> None:
    """One element, straight."""
    match element:
        case Polyline():
            trace(context, element.points)
            if element.closed:
                context.close_path()
            fill_and_stroke(context, element.fill, element.pen)
        case Segments():
            for line in element.lines:
                trace(context, line)
            fill_and_stroke(context, Fill.NONE, element.pen)
        case Circle():
            context.new_sub_path()
            context.arc(element.center.x, element.center.y, element.radius, 0, tau)
            fill_and_stroke(context, element.fill, element.pen)
        case Text():
            letter(context, element, typeface)
        case Group():
            pass


def trace(context: Any, points: Sequence[Pt]) -> None:
    """A line from point to point."""
    context.move_to(points[0].x, points[0].y)
    for point in points[1:]:
        context.line_to(point.x, point.y)


def fill_and_stroke(context: Any, fill: Fill, pen: Pen | None) -> None:
    """Fill what is traced, and draw its outline."""
    if fill is not Fill.NONE:
        context.set_source_rgb(*[GRAYS[fill]] * 3)
        context.fill_preserve()
    if pen is not None:
        context.set_source_rgb(0, 0, 0)
        context.set_line_width(pen.width)
        context.set_dash(pen.dashes)
        context.stroke_preserve()
    context.new_path()


def letter(context: Any, text: Text, typeface: Typeface) -> None:
    """A text in one piece."""
    context.save()
    context.select_font_face(typeface.family[text.face])
    context.set_font_size(typeface.font_size(text.height))
    context.set_source_rgb(0, 0, 0)
    context.translate(text.at.x, text.at.y)
    if text.turned:
        context.rotate(-tau / 4)
    context.move_to(-typeface.width(text.text, text.height, text.face) * ANCHORS[text.anchor], 0)
    context.show_text(text.text)
    context.restore()


def tell(what: str, took: float, size: int, beside: float = 0.0) -> None:
    """One line of the table."""
    ratio = f"{took / beside:5.2f} x" if beside else ""
    print(f"  {what:34}{took * 1000:9.1f} ms {size / 1000:9.1f} kB  {ratio}")


def measure(name: str, cairo: Any) -> None:
    """Tell what each way of painting an example takes."""
    document = (CEILINGS / f"{name}.json").read_bytes()
    prepared = prepare(document)
    sheet_set, typeface = compose_sheets(prepared)
    sheets = sheet_set.sheets
    print(f"{name}: {len(sheets)} sheets, {len(prepared.layout.coffers)} coffers")
    ground = least(lambda: floor(sheets, typeface, cairo))
    tell("set straight with cairo (floor)", ground, len(floor(sheets, typeface, cairo)))
    pdf = paint_pdf(sheets, typeface, RECORD)
    tell("set as PDF", least(lambda: paint_pdf(sheets, typeface, RECORD)), len(pdf), ground)
    for sheet in sheets:
        one = (sheet,)
        below = least(lambda one=one: floor(one, typeface, cairo))
        size = len(paint_pdf(one, typeface, RECORD))
        took = least(lambda one=one: paint_pdf(one, typeface, RECORD))
        tell(f"{sheet.id} as PDF", took, size, below)
    first = sheets[0]
    svg = painted_svg(first, typeface)
    tell(f"{first.id} as SVG with fonts", least(lambda: painted_svg(first, typeface)), len(svg))
    bare = paint_svg(first, typeface, fonts=None)
    tell(
        f"{first.id} as SVG without",
        least(lambda: paint_svg(first, typeface, fonts=None)),
        len(bare),
    )
    drawing = paint_dxf(first, typeface)
    tell(f"{first.id} as DXF", least(lambda: paint_dxf(first, typeface)), len(drawing))
    picture = paint_png(pdf, 150)
    tell(f"{first.id} as PNG, from the PDF", least(lambda: paint_png(pdf, 150)), len(picture))

    def whole() -> bytes:
        anew = prepare(document)
        composed, letters = compose_sheets(anew)
        return painted_pdf(anew, composed.sheets, letters)

    tell("from the spec's bytes to the PDF", least(whole, 3), len(pdf))
    print()


def memory() -> float:
    """The most memory this process has had so far [MB]."""
    return resource.getrusage(resource.RUSAGE_SELF).ru_maxrss / 1024


def endure(count: int) -> None:
    """Paint so many sets in a row, and tell how memory grows."""
    document = (CEILINGS / f"{TIMED[0]}.json").read_bytes()
    at: dict[int, float] = {}
    for number in range(1, count + 1):
        prepared = prepare(document)
        composed, letters = compose_sheets(prepared)
        painted_pdf(prepared, composed.sheets, letters)
        for sheet in composed.sheets:
            painted_svg(sheet, letters)
            paint_dxf(sheet, letters)
        at[number] = memory()
        if number in (1, 50, count):
            print(f"  memory after set {number}: {at[number]:.1f} MB")


def main() -> None:
    """Measure and tell."""
    if sys.argv[1:]:
        endure(int(sys.argv[1]))
        return
    prepared = prepare((CEILINGS / f"{TIMED[0]}.json").read_bytes())
    _, typeface = compose_sheets(prepared)
    cairo = lettering_cairo(typeface)
    for name in TIMED:
        measure(name, cairo)


if __name__ == "__main__":
    main()
