"""Elements of a sheet as entities of a DXF drawing: lines, circles, texts, measuring dimensions.

Each pen has a layer of its own. Areas without an outline go on a layer that is not printed, where
they can be measured and snapped to; what hangs on no pen but is black is filled.
"""

from collections.abc import Mapping, Sequence
from dataclasses import dataclass, field
from math import sqrt
from typing import TYPE_CHECKING

from lacunar.drawing.elements import Circle, Element, Face, Fill, Group, Pen, Polyline, Pt, Text
from lacunar.drawing.elements import Segments as Lines
from lacunar.drawing.painters.attributes import printable
from lacunar.drawing.painters.dxf_measures import (
    Measure,
    dist_of,
    measures_of,
    rises_along,
    wall_of,
)

if TYPE_CHECKING:
    from ezdxf.entities.dxfgfx import DXFGraphic
    from ezdxf.layouts.base import BaseLayout

AREAS = "area"
FILLED = "filled"
LETTERS = "lettering"
MEASURED = "dimension"
STYLES: Mapping[Face, str] = {
    Face.REGULAR: "letters",
    Face.MEDIUM: "letters",
    Face.SEMIBOLD: "letters-bold",
}

_ANCHORS = {"start": 0, "middle": 1, "end": 2}
_BY_ITSELF = 160
"""Of a dimension's type: its block is its own, its figure stands where it was put."""
_MIDDLE_CENTER = 5
_DIGITS = 9
_ALIGNED = 1
_HAIR = 1e-6
"""How far an exact size may be off its six decimals [mm]."""

XY = tuple[float, float]


def dashes_of(pen: Pen) -> str:
    """The name of a pen's kind of line."""
    return f"{pen.name}-dashes" if pen.dashes else "CONTINUOUS"


def plain(text: str) -> str:
    """A text that a reader of DXF takes as it stands: no codes for signs or control characters.

    >>> plain("50%%d ^J")
    '50% %d ^ J'
    """
    return printable(text).replace("%%", "% %").replace("^", "^ ")


@dataclass(frozen=True, slots=True)
class Place:
    """Where paper lies in a space: `origin` of the paper at `at`, a millimeter `unit` long there.

    `scale` is how much smaller than the space the paper is.
    """

    origin: Pt
    at: XY
    unit: float
    scale: float = 1.0

    def length(self, size: float) -> float:
        """A length on paper [mm] as one in the space."""
        return round(size * self.scale * self.unit, _DIGITS)

    def spot(self, point: Pt) -> XY:
        """A point on paper as one in the space, where y goes up."""
        grown = self.scale * self.unit
        x = (point.x - self.origin.x) * grown + self.at[0]
        y = (self.origin.y - point.y) * grown + self.at[1]
        return round(x, _DIGITS), round(y, _DIGITS)


@dataclass
class Drafter:
    """Draws elements into one space, and notes by id what belongs together."""

    space: "BaseLayout"
    place: Place
    dimension_style: str
    named: dict[str, list["DXFGraphic"]] = field(default_factory=dict)
    slopes: dict[str, bool] = field(default_factory=dict)

    def draw(self, elements: Sequence[Element], name: str = "") -> None:
        """Draw elements; what is in a group with an id is noted under the innermost one."""
        for element in elements:
            match element:
                case Group():
                    self._group(element, element.id or name)
                case Polyline():
                    self._polyline(element, name)
                case Lines():
                    for line in element.lines:
                        self._line(line, element.pen, name)
                case Circle():
                    self._circle(element, name)
                case Text():
                    self._noted(self._text(element, self.space), name)

    def _noted(self, entity: "DXFGraphic", name: str) -> None:
        if name:
            self.named.setdefault(name, []).append(entity)

    def _look(self, pen: Pen | None) -> dict[str, object]:
        if pen is None:
            return {"layer": AREAS}
        if not pen.dashes:
            return {"layer": pen.name}
        return {"layer": pen.name, "ltscale": self.place.scale}

    def _line(self, line: tuple[Pt, Pt], pen: Pen | None, name: str) -> None:
        start, end = (self.place.spot(point) for point in line)
        self._noted(self.space.add_line(start, end, dxfattribs=self._look(pen)), name)

    def _polyline(self, line: Polyline, name: str) -> None:
        spots = [self.place.spot(point) for point in line.points]
        if line.fill is Fill.BLACK:
            filled = self.space.add_hatch(color=7, dxfattribs={"layer": FILLED})
            filled.paths.add_polyline_path(spots, is_closed=True)
            self._noted(filled, name)
        if line.pen is None and line.fill is Fill.BLACK:
            return
        if len(spots) == len(("start", "end")) and not line.closed:
            self._line((line.points[0], line.points[1]), line.pen, name)
            return
        look = self._look(line.pen)
        drawn = self.space.add_lwpolyline(spots, close=line.closed, dxfattribs=look)
        self._noted(drawn, name)

    def _circle(self, circle: Circle, name: str) -> None:
        (x, y), radius = self.place.spot(circle.center), self.place.length(circle.radius)
        if circle.fill is Fill.BLACK:
            filled = self.space.add_hatch(color=7, dxfattribs={"layer": FILLED})
            # Two half circles: a bulge of 1 turns by half a circle to the next corner.
            halves = [(x - radius, y, 1.0), (x + radius, y, 1.0)]
            filled.paths.add_polyline_path(halves, is_closed=True)
            self._noted(filled, name)
        if circle.pen is not None or circle.fill is not Fill.BLACK:
            look = self._look(circle.pen)
            self._noted(self.space.add_circle((x, y), radius, dxfattribs=look), name)

    def _text(self, text: Text, space: "BaseLayout") -> "DXFGraphic":
        at = self.place.spot(text.at)
        anchor = _ANCHORS[text.anchor]
        attributes = {
            "layer": LETTERS,
            "style": STYLES[text.face],
            "height": self.place.length(text.height),
            "rotation": 90.0 if text.turned else 0.0,
            "insert": at,
            "halign": anchor,
            **({"align_point": at} if anchor else {}),
        }
        return space.add_text(plain(text.text), dxfattribs=attributes)

    def _group(self, group: Group, name: str) -> None:
        measures = measures_of(group) if group.kind == "dimension-string" else ()
        if not measures:
            self.draw(group.children, name)
            return
        rises = rises_along(group, measures)
        if rises is not None:
            self.slopes.setdefault(wall_of(group), rises)
        rises = self.slopes.get(wall_of(group), True)
        for measure in measures:
            self._dimension(measure, rises, measure.group.id or name)

    def _dimension(self, measure: Measure, rises: bool, name: str) -> None:
        """A dimension that measures for itself; its figure stays as it is printed on the sheet."""
        block = self.space.doc.blocks.new_anonymous_block(type_char="D")
        within = Drafter(block, self.place, self.dimension_style)
        within.draw(measure.drawn)
        start, end = (self.place.spot(point) for point in measure.line)
        near, far = (self.place.spot(point) for point in measure.origins)
        level = abs(end[0] - start[0]) > abs(end[1] - start[1])
        aslant = self._rise(measure)
        if aslant:
            rise = aslant if rises else -aslant
            along_x, along_y = (far[0], near[1] + rise), (near[0] - rise, far[1])
            far = along_x if level else along_y
        self._noted(
            self.space.new_entity(
                "DIMENSION",
                {
                    "layer": MEASURED,
                    "geometry": block.name,
                    "dimstyle": self.dimension_style,
                    "dimtype": _BY_ITSELF + (_ALIGNED if aslant else 0),
                    "defpoint": end,
                    "defpoint2": near,
                    "defpoint3": far,
                    "angle": 0.0 if level else 90.0,
                    "text": plain(measure.figure.text),
                    "text_midpoint": self.place.spot(measure.middle),
                    "attachment_point": _MIDDLE_CENTER,
                    "text_rotation": 90.0 if measure.figure.turned else 0.0,
                    "actual_measurement": measure.exact * self.place.unit,
                },
            ),
            name,
        )
        self.draw(measure.others, name)

    def _rise(self, measure: Measure) -> float:
        """How far a wall aslant goes sideways between what is measured along it; 0 where level.

        A string stands level beside such a wall, while its figures are taken along the wall.
        """
        drawn = self.place.scale * dist_of(measure.line)
        if measure.exact - drawn <= _HAIR:
            return 0.0
        return sqrt(measure.exact**2 - drawn**2) * self.place.unit
