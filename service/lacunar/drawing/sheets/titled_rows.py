"""Rows in groups that go on over columns and pages: the title of a group stands in each of them."""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass

from lacunar.drawing import style
from lacunar.drawing.annotation import (
    GOING_ON,
    HEADING_HEIGHT,
    Block,
    ColumnSpace,
    headed_parts,
)
from lacunar.drawing.elements import Face, Polyline, Pt, Text

TITLE_HEIGHT = 6.4


@dataclass(frozen=True, slots=True)
class TitledRows:
    """A group of rows, and what stands over the first of them, `gap` [mm] off."""

    title: str
    rows: tuple[Block, ...]
    gap: float = 0.0


def grouped_parts(
    kind: str, title: str, groups: Sequence[TitledRows], space: ColumnSpace, top: Block
) -> tuple[Block, ...]:
    """Groups of rows under a heading, parted wherever they would be taller than the space.

    `top` stands under the heading of each part; a group that goes on in another part has its title
    there too.
    """
    rows = tuple(_with_titles(groups, HEADING_HEIGHT + top.height, space))
    return headed_parts(kind, title, rows, space, top)


def _with_titles(groups: Sequence[TitledRows], start: float, space: ColumnSpace) -> Iterator[Block]:
    """The rows, each that is the first of its group, or of its part, under the group's title."""
    y = start
    for group in groups:
        for number, row in enumerate(group.rows):
            drawn = _under_title(group.title, row, space.width, group.gap) if not number else row
            if y + drawn.height > space.height and y > start:
                y = start
                title = group.title + (GOING_ON if number else "")
                drawn = _under_title(title, row, space.width, group.gap)
            y += drawn.height
            yield drawn


def _under_title(title: str, row: Block, width: float, gap: float) -> Block:
    words = Text(Pt(0, TITLE_HEIGHT - 1.6), title, style.TEXT, Face.SEMIBOLD)
    rule = Polyline((Pt(0, TITLE_HEIGHT), Pt(width, TITLE_HEIGHT)), style.FINE)
    children = (words, rule, *row.at(0, TITLE_HEIGHT + gap))
    return Block(width, TITLE_HEIGHT + gap + row.height, children)
