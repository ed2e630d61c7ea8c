"""What a sheet is made of: immutable elements in millimeters of paper, x to the right, y down.

Views emit these, composition places them, painters paint them and nothing else. A number here is
a position on paper, so it is a float; the value behind it stays exact in the text and `data`.

Every group leaves as `<g id= class=kind data-*= >` with its title, so that a reader of the SVG
finds the same ids as in the JSON. `data` names are lower case with hyphens, values are plain text.
"""

from collections.abc import Iterator, Mapping
from dataclasses import dataclass, field, replace
from enum import StrEnum
from types import MappingProxyType
from typing import Literal

_NO_DATA: Mapping[str, str] = MappingProxyType({})


@dataclass(frozen=True, slots=True)
class Pt:
    """A point on paper [mm]."""

    x: float
    y: float

    def moved(self, dx: float, dy: float) -> "Pt":
        """This point moved by dx, dy [mm]."""
        return Pt(self.x + dx, self.y + dy)


@dataclass(frozen=True, slots=True)
class Pen:
    """A line weight [mm] with one meaning, and its dashes [mm on paper] (empty: continuous)."""

    name: str
    width: float
    dashes: tuple[float, ...] = ()


class Face(StrEnum):
    """The three cuts of the project's typeface."""

    REGULAR = "regular"
    MEDIUM = "medium"
    SEMIBOLD = "semibold"


class Fill(StrEnum):
    """What an area is filled with. Meaning never hangs on it."""

    NONE = "none"
    WHITE = "white"
    TINT = "tint"
    BLACK = "black"


@dataclass(frozen=True, slots=True)
class Polyline:
    """Straight lines from point to point; `closed` joins the last to the first."""

    points: tuple[Pt, ...]
    pen: Pen | None
    closed: bool = False
    fill: Fill = Fill.NONE


@dataclass(frozen=True, slots=True)
class Segments:
    """Several separate straight lines of one pen: ticks, hatching, extension lines."""

    lines: tuple[tuple[Pt, Pt], ...]
    pen: Pen


@dataclass(frozen=True, slots=True)
class Circle:
    """A full circle."""

    center: Pt
    radius: float
    pen: Pen | None
    fill: Fill = Fill.NONE


@dataclass(frozen=True, slots=True)
class Text:
    """One line of text. `height` is the capital height [mm]; `at` lies on the baseline.

    `turned` text reads from the right edge of the sheet (a quarter turn counter-clockwise).
    """

    at: Pt
    text: str
    height: float
    face: Face = Face.REGULAR
    anchor: Literal["start", "middle", "end"] = "start"
    turned: bool = False


@dataclass(frozen=True, slots=True)
class Group:
    """Elements that are one thing: `kind` becomes the class, `id` is unique or empty."""

    kind: str
    children: tuple["Element", ...]
    id: str = ""
    title: str = ""
    data: Mapping[str, str] = field(default_factory=lambda: _NO_DATA)


Element = Polyline | Segments | Circle | Text | Group


@dataclass(frozen=True, slots=True)
class Sheet:
    """One finished drawing page: its paper [mm], what is on it, and what describes it."""

    id: str
    title: str
    description: str
    width: float
    height: float
    children: tuple[Element, ...]
    data: Mapping[str, str] = field(default_factory=lambda: _NO_DATA)


def moved(element: Element, dx: float, dy: float) -> Element:
    """The element moved by dx, dy [mm]."""
    if dx == 0 and dy == 0:
        return element
    match element:
        case Polyline():
            return replace(element, points=tuple(p.moved(dx, dy) for p in element.points))
        case Segments():
            lines = tuple((a.moved(dx, dy), b.moved(dx, dy)) for a, b in element.lines)
            return replace(element, lines=lines)
        case Circle():
            return replace(element, center=element.center.moved(dx, dy))
        case Text():
            return replace(element, at=element.at.moved(dx, dy))
        case Group():
            return replace(element, children=tuple(moved(c, dx, dy) for c in element.children))


def walk(elements: tuple[Element, ...]) -> Iterator[Element]:
    """Every element and, for groups, everything inside them, in painting order."""
    for element in elements:
        yield element
        if isinstance(element, Group):
            yield from walk(element.children)
