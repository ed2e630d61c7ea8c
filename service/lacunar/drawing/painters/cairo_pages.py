"""One page of a PDF: cairosvg drawing a sheet's SVG onto a surface that all pages share.

Imported only once cairo is known to be there. What it takes from inside cairosvg holds for the one
version that the project pins.
"""

from typing import Any

from cairosvg.helpers import transform
from cairosvg.surface import PDFSurface

_ANCHORS = {"start": 0.0, "middle": 0.5, "end": 1.0}


class StockPage(PDFSurface):  # type: ignore[misc]
    """A page painted by cairosvg alone. Its `output` is the cairo surface that all pages share."""

    def _create_surface(self, width: float, height: float) -> tuple[Any, float, float]:
        self.output.set_size(width, height)
        return self.output, width, height


class WholeTextPage(StockPage):
    """A page whose texts are each drawn in one piece and anchored by advance, as browsers do.

    Cairosvg itself draws every letter alone, three times slower, and anchors by the ink of the
    letters, up to 0.3 mm from where the sheet was composed to have them.
    """

    def draw(self, node: Any) -> None:
        """Draw a node of the SVG and what is in it, as cairosvg does, but for texts."""
        if node.tag != "text":
            super().draw(node)
        elif node.text:
            self._draw_text(node)

    def _draw_text(self, node: Any) -> None:
        context = self.context
        context.save()
        transform(self, node.get("transform"))
        context.select_font_face(node["font-family"])
        context.set_font_size(float(node["font-size"]))
        context.set_source_rgba(*self.map_color(node["fill"]))
        shift = context.text_extents(node.text)[4] * _ANCHORS[node["text-anchor"]]
        context.move_to(float(node["x"]) - shift, float(node["y"]))
        context.show_text(node.text)
        context.restore()
