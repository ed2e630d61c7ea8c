"""The cut list: every part with its mark, how many, its sizes, its ends, and where it goes.

The part list follows ISO 7573 in what it tells (reference, quantity, name, technical data,
remarks), and a cut list's usual order of sizes: thickness, width, length (common practice).
"""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass, replace
from itertools import groupby

from lacunar.drawing.lists import Lists
from lacunar.drawing.sheets.list_notes import assumed_texts, caution_texts, notes_beside
from lacunar.drawing.sheets.pages import NO_SCALE, Page, SheetSource
from lacunar.drawing.sheets.part_words import (
    KIND_TITLES,
    end_words,
    remarks,
    size_text,
    where_words,
)
from lacunar.drawing.sheets.wide_pages import (
    fitted_table,
    wide_pages,
)
from lacunar.drawing.sheets.wide_tables import WideCell, WideColumn, WideGroup, WideRow, WideTable
from lacunar.drawing.wording import SheetWording
from lacunar.measure.figure import LengthFigure
from lacunar.measure.length import ZERO, Length
from lacunar.model.ceiling import Assumption
from lacunar.model.take_off import TakeOff
from lacunar.takeoff.part_records import EndCut, Part

_OF_PARTS = ("length_allowance", "width_allowance", "blocking", "cleat_width")
"""What a take-off assumes that sizes of parts come from."""

_MARK = WideColumn("MARK", "mark", anchor="start")
_NAME = WideColumn("PART", "name", wraps=True, anchor="start")
_NET = (
    WideColumn("QTY", "quantity"),
    WideColumn("T", "thickness"),
    WideColumn("W", "width"),
    WideColumn("L", "length"),
)
_SHORT = WideColumn("SHORT", "short_length")
_CUT = (WideColumn("CUT W", "cut_width"), WideColumn("CUT L", "cut_length"))
_ENDS = (
    WideColumn("LEFT", "left", wraps=True, anchor="start"),
    WideColumn("RIGHT", "right", wraps=True, anchor="start"),
)
_REMARKS = WideColumn("REMARKS", "remarks", wraps=True, anchor="start")
_REST = (
    WideColumn("MATERIAL", "material", wraps=True, anchor="start"),
    WideColumn("GOES TO", "where", wraps=True, anchor="start"),
)


def cut_list_pages(source: SheetSource) -> tuple[Page, ...]:
    """The cut list of a ceiling on as many pages as it needs; none where there are no lists."""
    lists = source.lists
    if lists is None or not lists.taken.parts:
        return ()
    table, space = fitted_table(source, _table(lists.taken.parts, source.wording))
    told = (
        ("notes", "NOTES", tuple(_notes(lists, source.layout.ceiling.take_off, source.wording))),
        ("cautions", "CAUTIONS", caution_texts(lists.taken.cautions)),
        ("assumed", "ASSUMED", assumed_texts(_assumed(lists.assumptions), source.wording)),
    )
    notes = notes_beside(told, space.note, source.typeface)
    parts = table.blocks(space.part, source.typeface)
    unscaled = replace(source, fields=replace(source.fields, scale=NO_SCALE))
    return wide_pages(unscaled, space, parts, notes)


@dataclass(frozen=True, slots=True)
class _Told:
    """Which columns a cut list has only where its parts have something to say there."""

    short: bool
    cut: bool
    remarks: bool

    @property
    def columns(self) -> tuple[WideColumn, ...]:
        return (
            *(_MARK, _NAME, *_NET),
            *((_SHORT,) if self.short else ()),
            *(_CUT if self.cut else ()),
            *_ENDS,
            *((_REMARKS,) if self.remarks else ()),
            *_REST,
        )


def _table(parts: Sequence[Part], wording: SheetWording) -> WideTable:
    told = _Told(
        short=any(_has_short(part) for part in parts),
        cut=any(_is_cut_larger(part) for part in parts),
        remarks=any(remarks(part) for part in parts),
    )
    groups = (
        WideGroup(KIND_TITLES[kind], tuple(_row(part, told, wording) for part in of_kind))
        for kind, of_kind in groupby(parts, key=lambda part: part.kind)
    )
    return WideTable("part", "CUT LIST", told.columns, tuple(groups), (_NAME.name,))


def _has_short(part: Part) -> bool:
    return part.short_length.value != part.length.value


def _is_cut_larger(part: Part) -> bool:
    net = (part.length.value, None if part.width is None else part.width.value)
    cut = (part.cut_length.value, None if part.cut_width is None else part.cut_width.value)
    return net != cut


def _row(part: Part, told: _Told, wording: SheetWording) -> WideRow:
    return WideRow(part.mark, tuple(_cells(part, told, wording)))


def _cells(part: Part, told: _Told, wording: SheetWording) -> Iterator[WideCell]:
    yield WideCell(part.mark)
    yield WideCell(part.name)
    yield WideCell(str(part.quantity))
    yield _size(part.thickness, wording)
    yield _size(part.width, wording)
    yield _length(part.length.value, wording)
    if told.short:
        yield _short(part, wording)
    if told.cut:
        yield _size(part.cut_width, wording)
        yield _length(part.cut_length.value, wording)
    yield WideCell(end_words(part.left, wording))
    yield WideCell(end_words(part.right, wording))
    if told.remarks:
        yield WideCell(remarks(part) or "-")
    yield WideCell(part.material.name)
    yield WideCell(where_words(part))


def _size(figure: LengthFigure | None, wording: SheetWording) -> WideCell:
    size = None if figure is None else figure.value
    return WideCell(size_text(size, wording), "" if size is None else wording.exact(size))


def _short(part: Part, wording: SheetWording) -> WideCell:
    """The length between short points, where there are any; where miters meet first, a point."""
    cell = _length(part.short_length.value, wording)
    if not _has_short(part):
        return replace(cell, text="-")
    return cell if part.short_length.value > ZERO else replace(cell, text="point")


def _length(length: Length, wording: SheetWording) -> WideCell:
    return WideCell(wording.detail(length), wording.exact(length))


def _notes(lists: Lists, asked: TakeOff, wording: SheetWording) -> Iterator[str]:
    parts = lists.taken.parts
    count = sum(part.quantity for part in parts)
    yield (
        f"{count} parts under {len(parts)} marks. Parts that are the same on the bench bear one"
        " mark, here, on the cutting diagrams and in the material list."
    )
    yield (
        "Thickness T, width W and length L in that order; L lies along the grain."
        f" {_allowance(asked, wording)}"
    )
    if any(_has_short(part) for part in parts):
        yield "L is between the long points of mitred ends, SHORT between their short points."
    yield (
        "LEFT and RIGHT are the ends, seen on the face that shows with its lower edge toward you;"
        " of the bottom of a wall beam, with the edge at the wall away from you."
    )
    if any(end.cut is EndCut.ANGLED for part in parts for end in (part.left, part.right)):
        yield "Angled ends are told off square; above zero, the edge toward the datum is set back."
    yield "Check the first piece of each mark in its place before cutting the rest."


def _allowance(asked: TakeOff, wording: SheetWording) -> str:
    longer, wider = asked.length_allowance, asked.width_allowance
    if longer == ZERO and wider == ZERO:
        return "Sizes are net, without any allowance."
    return (
        f"These are net; CUT L is {wording.detail(longer)} longer and CUT W"
        f" {wording.detail(wider)} wider, where parts are trimmed to fit."
    )


def _assumed(assumptions: Sequence[Assumption]) -> Iterator[Assumption]:
    return (each for each in assumptions if each.pointer.rpartition("/")[2] in _OF_PARTS)
