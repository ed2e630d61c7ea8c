"""Where else the set shows something: every named view of later sheets, in a table of words."""

from collections.abc import Iterable, Iterator, Mapping, Sequence
from itertools import groupby

from lacunar.drawing import style
from lacunar.drawing.annotation import Block, ColumnSpace, headed_parts, wrapped
from lacunar.drawing.elements import Face, Group, Pt, Text
from lacunar.drawing.reference_mark import Reference
from lacunar.drawing.sheets.pages import SheetSource
from lacunar.drawing.typeface import Typeface

KINDS: Mapping[str, str] = {
    "section": "SECTION ALONG THE",
    "zone": "CEILING ZONE ALONG THE",
    "elevation": "WALL",
    "profile": "BEAM PROFILE",
    "crossing": "CROSSING",
    "crown": "CROWN",
}
"""What views are called by the first word of their names; others go by that word itself."""
LISTED = 4
"""More than so many in a row are told by the first and the last."""
GAP = 3.0


def references_block(source: SheetSource, column: ColumnSpace) -> tuple[Block, ...]:
    """All named views of later sheets: what they show, their numbers and their sheet.

    Whatever has no mark of its own is called here; a set that has no such views has no table.
    """
    rows = [
        _row(group, column.width, source.typeface) for group in _grouped(source.references.values())
    ]
    return headed_parts("references", "SHOWN ON OTHER SHEETS", rows, column) if rows else ()


def _grouped(references: Iterable[Reference]) -> Iterator[list[Reference]]:
    """Views of one kind that stand on one sheet, in their order."""
    for _, group in groupby(references, key=lambda each: (_kind(each.name), each.sheet)):
        yield list(group)


def profile_words(name: str) -> str:
    """What a view of a profile is called by its name: `P2`, its second view `P2 (2)`.

    >>> profile_words("profile-P2"), profile_words("profile-P2-2")
    ('P2', 'P2 (2)')
    """
    _, profile, *further = name.split("-")
    return f"{profile} ({further[0]})" if further else profile


def _kind(name: str) -> str:
    return name.partition("-")[0]


def _id(name: str) -> str:
    """What a view is of; a wall in parts, and a profile's second view, are titled so."""
    kind, _, of = name.partition("-")
    if kind == "profile":
        return profile_words(name)
    return of.replace("-", " PART " if kind == "elevation" else " ")


def _row(group: Sequence[Reference], width: float, typeface: Typeface) -> Block:
    """What is shown, wrapped on the left; view and sheet at the right edge."""
    kind = _kind(group[0].name)
    ids = [_id(each.name) for each in group]
    words = f"{KINDS.get(kind, kind)} {_in_row(ids, ', ')}".upper()
    where = f"{_in_row([str(each.number) for each in group], ', ')} / {group[0].sheet}"
    room = width - typeface.width(where, style.TEXT, Face.MEDIUM) - GAP
    lines = wrapped(words, room, typeface)
    texts = [
        Text(Pt(0.0, style.LINE_PITCH * number + style.TEXT), line, style.TEXT)
        for number, line in enumerate(lines)
    ]
    texts.append(Text(Pt(width, style.TEXT), where, style.TEXT, Face.MEDIUM, "end"))
    data = {
        "names": " ".join(each.name for each in group),
        "views": " ".join(str(each.number) for each in group),
        "sheet": group[0].sheet,
    }
    row = Group("reference-row", tuple(texts), data=data)
    return Block(width, style.LINE_PITCH * len(lines) + 0.8, (row,))


def _in_row(words: Sequence[str], between: str) -> str:
    """Words in a row; where there are many, the first and the last."""
    if len(words) <= LISTED:
        return between.join(words)
    return f"{words[0]} to {words[-1]}"
