"""What a sheet explains of itself: a sign as it looks on the plan, and its meaning."""

from collections.abc import Callable, Sequence
from dataclasses import dataclass

from lacunar.drawing import style
from lacunar.drawing.annotation import Block, ColumnSpace, headed_parts, wrapped
from lacunar.drawing.elements import Element, Group, Pt, Text
from lacunar.drawing.typeface import Typeface

SIGN_WIDTH = 16.0


@dataclass(frozen=True, slots=True)
class KeyEntry:
    """A sign, drawn about a point of its row, and its meaning."""

    name: str
    meaning: str
    sign: Callable[[Pt], tuple[Element, ...]]


def key_blocks(
    entries: Sequence[KeyEntry], column: ColumnSpace, typeface: Typeface
) -> tuple[Block, ...]:
    """The signs of a plan, each with its meaning."""
    rows = [key_row("key", entry, column.width, typeface) for entry in entries]
    return headed_parts("key", "KEY", rows, column, Block(column.width, 0.6, ()))


def key_row(kind: str, entry: KeyEntry, width: float, typeface: Typeface) -> Block:
    """One sign with its meaning in a row as wide as a column [mm]."""
    lines = wrapped(entry.meaning, width - SIGN_WIDTH - 2.0, typeface)
    height = max(6.8, style.LINE_PITCH * len(lines) + 1.0)
    middle = Pt(SIGN_WIDTH / 2 - 0.8, height / 2)
    first = middle.y - style.LINE_PITCH * (len(lines) - 1) / 2 + style.TEXT / 2
    words = tuple(
        Text(Pt(SIGN_WIDTH + 1.0, first + style.LINE_PITCH * n), line, style.TEXT)
        for n, line in enumerate(lines)
    )
    children = (*entry.sign(middle), *words)
    return Block(width, height, (Group(f"{kind}-row", children, data={"entry": entry.name}),))
