"""One page of a PDF: a sheet's SVG drawn onto a surface that all pages share.

Imported only once cairo is known to be there. What it takes from inside cairosvg holds for the one
version that the project pins.
"""

from math import radians, tau
from typing import Any
from xml.etree import ElementTree

from cairosvg.colors import color
from cairosvg.parser import Tree
from cairosvg.surface import PDFSurface

_ANCHORS = {"start": 0.0, "middle": 0.5, "end": 1.0}
_QUARTER = radians(-90)
_MITER_LIMIT = 4
"""What SVG has unless told otherwise."""


class StockPage(PDFSurface):  # type: ignore[misc]
    """A page painted by cairosvg alone. Its `output` is the cairo surface that all pages share."""

    def __init__(self, document: "ElementTree.Element[str]", surface: Any, dpi: int) -> None:
        super().__init__(Tree(bytestring=ElementTree.tostring(document)), surface, dpi)

    def _create_surface(self, width: float, height: float) -> tuple[Any, float, float]:
        self.output.set_size(width, height)
        return self.output, width, height


class PlainPage(StockPage):
    """A page whose plain shapes and texts are drawn by a few calls each, as browsers draw them.

    Cairosvg sets the page up. Itself it looks at every element for all that SVG can have, which
    takes several times longer than to draw it, and it draws every letter alone, anchored by the ink
    of the letters, up to 0.3 mm from where the sheet was composed to have them.
    """

    def __init__(self, document: "ElementTree.Element[str]", surface: Any, dpi: int) -> None:
        self._shapes = document
        self._ink = self._dashes = ""
        self._draw = {
            "g": self._group,
            "path": self._path,
            "circle": self._circle,
            "text": self._text,
        }
        super().__init__(ElementTree.Element(document.tag, document.attrib), surface, dpi)

    def draw(self, node: Any) -> None:
        """Draw what is in the root of the SVG; `node` is that root as cairosvg has it."""
        self.context.set_miter_limit(_MITER_LIMIT)
        self._group(self._shapes)

    def _group(self, group: "ElementTree.Element[str]") -> None:
        draw = self._draw
        for element in group:
            if element.tag in draw:
                draw[element.tag](element)

    def _path(self, path: "ElementTree.Element[str]") -> None:
        context = self.context
        for line in path.attrib["d"].split("M")[1:]:
            numbers = line.replace("L", "").split()
            closed = numbers[-1] == "Z"
            if closed:
                del numbers[-1]
            context.move_to(float(numbers[0]), float(numbers[1]))
            for place in range(2, len(numbers), 2):
                context.line_to(float(numbers[place]), float(numbers[place + 1]))
            if closed:
                context.close_path()
        self._painted(path.attrib)

    def _circle(self, circle: "ElementTree.Element[str]") -> None:
        told = circle.attrib
        x, y, radius = (float(told[name]) for name in ("cx", "cy", "r"))
        self.context.new_sub_path()
        self.context.arc(x, y, radius, 0, tau)
        self._painted(told)

    def _painted(self, told: dict[str, str]) -> None:
        """Fill and stroke the path that has been traced."""
        context, fill = self.context, told["fill"]
        pen = told.get("stroke")
        if fill != "none":
            self._take(fill)
            context.fill_preserve() if pen else context.fill()
        if pen:
            self._take(pen)
            context.set_line_width(float(told["stroke-width"]))
            self._dash(told.get("stroke-dasharray", ""))
            context.stroke()

    def _take(self, ink: str) -> None:
        """Go on in a color."""
        if ink != self._ink:
            self.context.set_source_rgba(*color(ink))
            self._ink = ink

    def _dash(self, dashes: str) -> None:
        """Go on in dashes, or without."""
        if dashes != self._dashes:
            self.context.set_dash([float(dash) for dash in dashes.split()])
            self._dashes = dashes

    def _text(self, text: "ElementTree.Element[str]") -> None:
        words = (text.text or "").strip(" ")
        if not words:
            return
        context, told = self.context, text.attrib
        context.select_font_face(told["font-family"])
        context.set_font_size(float(told["font-size"]))
        self._take(told["fill"])
        shift = 0.0
        if told["text-anchor"] != "start":
            shift = context.text_extents(words)[4] * _ANCHORS[told["text-anchor"]]
        x, y = float(told["x"]), float(told["y"])
        if "transform" not in told:
            context.move_to(x - shift, y)
            context.show_text(words)
            return
        # Texts are turned by a quarter about their own place, or not at all.
        context.save()
        context.translate(x, y)
        context.rotate(_QUARTER)
        context.move_to(-shift, 0)
        context.show_text(words)
        context.restore()
