"""Words on the sheet: wrapped paragraphs, tags in their outlines, leaders and arrows.

Everything here measures text by the typeface record and gives back elements with their extent, so
that composition can keep texts clear of each other before anything is painted.
"""

import re
from collections.abc import Sequence
from dataclasses import dataclass

from lacunar.drawing import style
from lacunar.drawing.elements import (
    Circle,
    Element,
    Face,
    Fill,
    Group,
    Polyline,
    Pt,
    Text,
    moved,
)
from lacunar.drawing.typeface import Typeface

TAG_HEIGHT = 5.2
TAG_PADDING = 1.3
BARE_PADDING = 0.2
ROUND_TAG = 6.4
ROUND_PADDING = 0.65

# Between words, but not within a figure: 7 3/4 is read wrong where its 7 ends a line, and so is
# 21 753, whose digits a thin space parts.
_BREAK = re.compile(r"(?<!\d)\s+|(?!\N{THIN SPACE})\s+(?!\d+/\d)")


@dataclass(frozen=True, slots=True)
class Block:
    """A placed piece of sheet: elements drawn from its own upper left corner, and its size [mm].

    Blocks of one `series` are parts of one thing and stand in their order.
    """

    width: float
    height: float
    children: tuple[Element, ...]
    series: str = ""

    def at(self, x: float, y: float) -> tuple[Element, ...]:
        """The block's elements with its upper left corner at x, y [mm]."""
        return tuple(moved(child, x, y) for child in self.children)


def wrapped(text: str, width: float, typeface: Typeface, face: Face = Face.REGULAR) -> list[str]:
    """The text in lines no wider than `width` [mm]; a word that is wider is cut up."""
    lines: list[str] = []
    line = ""
    for word in _breakable(text, width, typeface, face):
        longer = f"{line} {word}" if line else word
        if typeface.width(longer, style.TEXT, face) <= width or not line:
            line = longer
        else:
            lines.append(line)
            line = word
    return [*lines, line] if line else lines


def _breakable(text: str, width: float, typeface: Typeface, face: Face) -> list[str]:
    """The words of the text, those wider than a line cut into pieces that fit one."""
    words: list[str] = []
    for word in _BREAK.split(text.strip()):
        piece = ""
        for letter in word:
            if piece and typeface.width(piece + letter, style.TEXT, face) > width:
                words.append(piece)
                piece = ""
            piece += letter
        words.append(piece)
    return words


def fitted(text: str, width: float, height: float, typeface: Typeface, face: Face) -> str:
    """The text, or as much of it as `width` [mm] holds with an ellipsis: never a smaller letter."""
    if typeface.width(text, height, face) <= width:
        return text
    while text and typeface.width(text + "…", height, face) > width:
        text = text[:-1]
    return text.rstrip() + "…"


class TagsDoNotFit(Exception):
    """At this scale ids cannot be kept apart."""


@dataclass(frozen=True, slots=True)
class Tag:
    """A label in an outline: a circle (`round`) for walls and views, none if `bare`, or a box.

    `of` is the id of what is labelled, `kind` what that is: a member and a coffer may both be G1.
    `key` stands in the tag's own id where `of` is a name, which may hold any letter.
    """

    kind: str
    of: str
    text: str
    round: bool = False
    turned: bool = False
    key: str = ""
    bare: bool = False

    def long_side(self, typeface: Typeface) -> float:
        """The tag's extent along its text [mm]."""
        if self.round:
            width = typeface.width(self.text, style.TEXT, Face.SEMIBOLD)
            return max(ROUND_TAG, width + 2 * ROUND_PADDING)
        if self.bare:
            return typeface.width(self.text, style.TEXT, Face.SEMIBOLD) + 2 * BARE_PADDING
        return max(7.0, typeface.width(self.text, style.TEXT, Face.SEMIBOLD) + 2 * TAG_PADDING)

    def short_side(self) -> float:
        """The tag's extent across its text [mm]."""
        if self.bare:
            return style.TEXT + 2 * BARE_PADDING
        return TAG_HEIGHT

    def size(self, typeface: Typeface) -> tuple[float, float]:
        """Width and height on the sheet [mm]."""
        along = self.long_side(typeface)
        across = along if self.round else self.short_side()
        return (across, along) if self.turned else (along, across)

    def drawn(self, center: Pt, typeface: Typeface, *extra: Element) -> Group:
        """The tag about its center, with `extra` (its leader) in the same group."""
        outline = () if self.bare else (self._outline(center, typeface),)
        half = style.TEXT / 2
        at = Pt(center.x + half, center.y) if self.turned else Pt(center.x, center.y + half)
        text = Text(at, self.text, style.TEXT, Face.SEMIBOLD, "middle", self.turned)
        return Group(
            "tag",
            (*extra, *outline, text),
            id=f"tag-{self.kind}-{self.key or self.of}",
            data={"kind": self.kind, "of": self.of},
            title=self.text,
        )

    def _outline(self, center: Pt, typeface: Typeface) -> Element:
        if self.round:
            return Circle(center, self.long_side(typeface) / 2, style.FINE, Fill.WHITE)
        width, height = self.size(typeface)
        left, top = center.x - width / 2, center.y - height / 2
        return rectangle(left, top, width, height, fill=Fill.WHITE)


def rectangle(
    left: float, top: float, width: float, height: float, *, fill: Fill = Fill.NONE
) -> Polyline:
    """A closed rectangle in the fine pen."""
    corners = (
        Pt(left, top),
        Pt(left + width, top),
        Pt(left + width, top + height),
        Pt(left, top + height),
    )
    return Polyline(corners, style.FINE, closed=True, fill=fill)


def heading(text: str, width: float) -> tuple[Element, ...]:
    """A block's heading with the rule under it, from the block's upper left corner."""
    words = Text(Pt(0, style.HEADING), text, style.HEADING, Face.SEMIBOLD)
    rule = Polyline((Pt(0, HEADING_RULE), Pt(width, HEADING_RULE)), style.RULE)
    return (words, rule)


HEADING_RULE = 5.4
HEADING_HEIGHT = 7.0


@dataclass(frozen=True, slots=True)
class ColumnSpace:
    """How much room blocks have in a column of the sheet: its width and its full height [mm]."""

    width: float
    height: float


GOING_ON = ", CONTINUED"
"""What the title of a block's second and later parts ends in."""


def paragraph_blocks(
    kind: str, title: str, items: Sequence[str], column: ColumnSpace, typeface: Typeface
) -> tuple[Block, ...]:
    """A headed list of sentences, numbered and wrapped, in as many parts as the column needs."""
    rows = [
        _sentence(number, item, column.width, typeface)
        for number, item in enumerate(items, start=1)
    ]
    return headed_parts(kind, title, rows, column)


def headed_parts(
    kind: str, title: str, rows: Sequence[Block], column: ColumnSpace, top: Block | None = None
) -> tuple[Block, ...]:
    """Rows under a heading, parted wherever they would be taller than the column.

    `top` stands under the heading of each part: the heads of a table. The first part bears `kind`
    as its id, those after it their number too.
    """
    top = top or Block(column.width, 0.0, ())
    start = HEADING_HEIGHT + top.height
    parts: list[tuple[float, list[Element]]] = []
    for row in rows:
        if not parts or parts[-1][0] + row.height > column.height:
            parts.append((start, []))
        y, children = parts[-1]
        parts[-1] = (y + row.height, [*children, *row.at(0, y)])
    blocks = []
    for number, (height, children) in enumerate(parts, start=1):
        words, identity = (title, kind) if number == 1 else (title + GOING_ON, f"{kind}-{number}")
        elements = (*heading(words, column.width), *top.at(0, HEADING_HEIGHT), *children)
        blocks.append(Block(column.width, height, (Group(kind, elements, id=identity),), kind))
    return tuple(blocks)


def _sentence(number: int, text: str, width: float, typeface: Typeface) -> Block:
    """One sentence with its number, wrapped to `width` [mm]."""
    indent = 5.0
    first = Text(Pt(0, style.TEXT), f"{number}", style.TEXT, Face.MEDIUM)
    lines = wrapped(text, width - indent, typeface)
    words = tuple(
        Text(Pt(indent, style.LINE_PITCH * n + style.TEXT), line, style.TEXT)
        for n, line in enumerate(lines)
    )
    height = style.LINE_PITCH * len(lines) + 0.8
    return Block(width, height, (Group("sentence", (first, *words)),))


def dot(at: Pt) -> Circle:
    """The end of a leader inside an area."""
    return Circle(at, 0.55, None, Fill.BLACK)


def arrow(tip: Pt, toward: Pt, length: float = 2.4) -> Polyline:
    """A filled arrowhead with its tip on an edge, lying on the line that goes on to `toward`."""
    dx, dy = toward.x - tip.x, toward.y - tip.y
    reach = (dx * dx + dy * dy) ** 0.5
    ux, uy = dx / reach, dy / reach
    base = tip.moved(ux * length, uy * length)
    half = length / 3
    left = base.moved(-uy * half, ux * half)
    right = base.moved(uy * half, -ux * half)
    return Polyline((tip, left, right), None, closed=True, fill=Fill.BLACK)
