"""From the SVG text of a sheet to flat records.

The checker knows the plain SVG that the sheets are painted in: groups, paths of straight lines,
circles, lines of text. Whatever else it meets it does not skip in silence but notes as a trouble:
what was not read was not checked.
"""

import re
from collections.abc import Callable, Mapping, Sized
from xml.etree import ElementTree

from lacunar.drawing.checker.lettering import Look, text_box, turned
from lacunar.drawing.checker.records import (
    GroupRead,
    Lettering,
    Path,
    PenSeen,
    Ring,
    SheetRead,
    Stretch,
)
from lacunar.drawing.checker.shapes import Box, Spot, extent
from lacunar.drawing.elements import Face
from lacunar.drawing.typeface import Typeface

INHERITED = frozenset(
    {
        "fill",
        "stroke",
        "stroke-width",
        "stroke-dasharray",
        "font-size",
        "font-family",
        "text-anchor",
        "data-pen",
        "data-face",
    }
)
_NAMESPACE = "{http://www.w3.org/2000/svg}"
_ROTATION = re.compile(r"rotate\(\s*(\S+?)[\s,]+(\S+?)[\s,]+(\S+?)\s*\)")

_RULES = re.compile(r"\{[^{}]*\}")
# Rules for the root element can still be overruled by each element's own attributes.
_HARMLESS = frozenset({"@font-face", "svg"})

Attributes = Mapping[str, str]


class NotASheet(Exception):
    """The text is no SVG document at all."""


def read_sheet(svg: str, typeface: Typeface) -> SheetRead:
    """Everything that the SVG text of a sheet draws, as records.

    Errors: `NotASheet` where the text is not well-formed XML, has a document type, or is no SVG.
    """
    # A document type could define entities that swell without end, and a sheet needs none.
    if "<!DOCTYPE" in svg or "<!ENTITY" in svg:
        raise NotASheet("a document type or an entity")
    try:
        root = ElementTree.fromstring(svg)
    except ElementTree.ParseError as error:
        raise NotASheet(f"not well-formed XML: {error}") from error
    if root.tag != _NAMESPACE + "svg":
        raise NotASheet(f"the root element is {root.tag}")
    sheet = _Reader(root, typeface).sheet
    if "<!--" in svg:
        sheet.troubles.append((sheet.id, "a comment"))
    return sheet


def _numbers(text: str) -> list[float]:
    return [float(number) for number in text.replace(",", " ").split()]


def _data(attributes: Attributes) -> dict[str, str]:
    return {name[5:]: value for name, value in attributes.items() if name.startswith("data-")}


class _Reader:
    """Walks the document once, in painting order."""

    def __init__(self, root: ElementTree.Element, typeface: Typeface) -> None:
        self._typeface = typeface
        self._pens: dict[tuple[str, ...], PenSeen] = {}
        self._order = 0
        self._draw: dict[str, Callable[[ElementTree.Element, Attributes, int], None]] = {
            "g": self._group,
            "path": self._path,
            "circle": self._circle,
            "defs": self._defs,
            "text": self._text,
        }
        self.sheet = SheetRead(
            root.get("id", ""),
            _data(root.attrib),
            stated_width=root.get("width", ""),
            stated_height=root.get("height", ""),
            titles=(self._child_text(root, "title"), self._child_text(root, "desc")),
        )
        self._view_box(root)
        own = {name: value for name, value in root.attrib.items() if name in INHERITED}
        self._children(root, own, -1)

    def _view_box(self, root: ElementTree.Element) -> None:
        try:
            x, y, width, height = _numbers(root.get("viewBox", ""))
        except ValueError:
            self.sheet.troubles.append((self.sheet.id, "no view box of four numbers"))
            return
        self.sheet.page = Box(x, y, x + width, y + height)

    @staticmethod
    def _child_text(element: ElementTree.Element, name: str) -> str:
        return (element.findtext(_NAMESPACE + name) or "").strip()

    def _children(self, element: ElementTree.Element, given: Attributes, group: int) -> None:
        for child in element:
            name = str(child.tag).removeprefix(_NAMESPACE)
            if name in {"title", "desc"}:
                continue
            draw = self._draw.get(name)
            if draw is None:
                self._trouble(group, f"a {name} element")
                continue
            self._order += 1
            own = child.attrib
            if "style" in own or ("transform" in own and name != "text"):
                self._trouble(group, f"a {name} with a style or transform of its own")
            try:
                draw(child, given, group)
            except (ValueError, KeyError) as error:
                self._trouble(group, f"a {name} that cannot be read ({error!r})")

    def _trouble(self, group: int, what: str) -> None:
        self.sheet.troubles.append((self.sheet.place(group), what))

    def _group(self, element: ElementTree.Element, given: Attributes, around: int) -> None:
        sheet, own = self.sheet, element.attrib
        group = GroupRead(
            len(sheet.groups),
            own.get("class", ""),
            own.get("id", ""),
            self._child_text(element, "title"),
            _data(own),
            None if around < 0 else around,
        )
        sheet.groups.append(group)
        lists: tuple[Sized, ...] = (sheet.groups, sheet.paths, sheet.rings, sheet.letterings)
        first = [len(one) for one in lists]
        passed_on = {name: value for name, value in own.items() if name in INHERITED}
        self._children(element, {**given, **passed_on} if passed_on else given, group.number)
        group.groups, group.paths, group.rings, group.letterings = (
            Stretch(start, len(one)) for start, one in zip(first, lists, strict=True)
        )

    def _defs(self, element: ElementTree.Element, given: Attributes, group: int) -> None:
        """Nothing is drawn here; a style sheet may name fonts but must not change what is drawn."""
        for child in element:
            selectors = _RULES.sub(" ", child.text or "").split()
            self.sheet.style += child.text or ""
            if child.tag != _NAMESPACE + "style" or not _HARMLESS.issuperset(selectors):
                raise ValueError(f"{child.tag} {selectors}")

    def _pen(self, own: Attributes, given: Attributes) -> PenSeen | None:
        def value(name: str, otherwise: str) -> str:
            return own.get(name) or given.get(name, otherwise)

        # SVG draws no outline where none is asked for.
        color = value("stroke", "none")
        if color == "none":
            return None
        name, width = value("data-pen", ""), value("stroke-width", "1")
        dashes = value("stroke-dasharray", "none")
        key = (name, width, dashes, color)
        if key not in self._pens:
            lengths = () if dashes == "none" else tuple(_numbers(dashes))
            self._pens[key] = PenSeen(name, float(width), lengths, color)
        return self._pens[key]

    @staticmethod
    def _fill(own: Attributes, given: Attributes) -> str:
        # SVG fills with black where nothing is said.
        return own.get("fill") or given.get("fill", "black")

    def _path(self, element: ElementTree.Element, given: Attributes, group: int) -> None:
        own = element.attrib
        pen, fill = self._pen(own, given), self._fill(own, given)
        before, *pieces = own["d"].split("M")
        if before.strip():
            raise ValueError(own["d"])
        for piece in pieces:
            open_piece = piece.rstrip(" Z")
            numbers = iter(_numbers(open_piece.replace("L", " ")))
            spots = tuple(Spot(x, y) for x, y in zip(numbers, numbers, strict=True))
            closed = "Z" in piece
            path = Path(spots, extent(spots), closed, pen, fill, group, self._order)
            self.sheet.paths.append(path)

    def _circle(self, element: ElementTree.Element, given: Attributes, group: int) -> None:
        own = element.attrib
        center = Spot(float(own["cx"]), float(own["cy"]))
        pen, fill = self._pen(own, given), self._fill(own, given)
        ring = Ring(center, float(own["r"]), pen, fill, group, self._order)
        self.sheet.rings.append(ring)

    def _text(self, element: ElementTree.Element, given: Attributes, group: int) -> None:
        own = {**given, **element.attrib}
        if len(element):
            raise ValueError("text with elements inside")
        text = element.text or ""
        if not text.strip():
            return
        at, size = Spot(float(own["x"]), float(own["y"])), float(own["font-size"])
        face = own.get("data-face", Face.REGULAR)
        look = Look(Face(face), size, own.get("text-anchor", "start"))
        box, angle = text_box(text, at, look, self._typeface), 0.0
        if "transform" in own:
            rotation = _ROTATION.fullmatch(own["transform"])
            if rotation is None:
                raise ValueError(own["transform"])
            angle, x, y = (float(number) for number in rotation.groups())
            box = turned(box, angle, Spot(x, y))
        lettering = Lettering(
            text,
            box,
            size * self._typeface.cap_height,
            own.get("data-height", ""),
            face,
            own.get("font-family", ""),
            self._fill(own, given),
            angle,
            group,
            self._order,
        )
        self.sheet.letterings.append(lettering)
