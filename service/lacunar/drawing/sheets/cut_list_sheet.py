"""The cut list: every part with its mark, how many, its sizes, its ends, and where it goes.

The part list follows ISO 7573 in what it tells (reference, quantity, name, technical data,
remarks), and a cut list's usual order of sizes: thickness, width, length (common practice).
"""

from collections.abc import Iterator, Sequence
from dataclasses import replace
from itertools import groupby

from lacunar.drawing.lists import Lists
from lacunar.drawing.sheets.list_notes import assumed_texts, caution_texts, notes_beside
from lacunar.drawing.sheets.pages import Page, SheetSource
from lacunar.drawing.sheets.part_words import (
    KIND_TITLES,
    end_words,
    remarks,
    size_text,
    where_words,
)
from lacunar.drawing.sheets.wide_pages import as_placed, wide_pages, wide_space
from lacunar.drawing.sheets.wide_tables import WideCell, WideColumn, WideGroup, WideRow, WideTable
from lacunar.drawing.wording import SheetWording
from lacunar.measure.figure import LengthFigure
from lacunar.measure.length import ZERO, Length
from lacunar.model.ceiling import Assumption
from lacunar.model.take_off import TakeOff
from lacunar.takeoff.part_records import Part

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
_SHORT = WideColumn("L SHORT", "short_length")
_CUT = (WideColumn("CUT W", "cut_width"), WideColumn("CUT L", "cut_length"))
_REST = (
    WideColumn("LEFT END", "left", wraps=True, anchor="start"),
    WideColumn("RIGHT END", "right", wraps=True, anchor="start"),
    WideColumn("REMARKS", "remarks", wraps=True, anchor="start"),
    WideColumn("MATERIAL", "material", wraps=True, anchor="start"),
    WideColumn("GOES TO", "where", wraps=True, anchor="start"),
)


def cut_list_pages(source: SheetSource) -> tuple[Page, ...]:
    """The cut list of a ceiling on as many pages as it needs; none where there are no lists."""
    lists = source.lists
    if lists is None or not lists.taken.parts:
        return ()
    table = _table(lists.taken.parts, source.wording)
    space = wide_space(source, table.needs(source.typeface))
    told = (
        ("notes", "NOTES", _notes(lists, source.layout.ceiling.take_off, source.wording)),
        ("cautions", "CAUTIONS", caution_texts(lists.taken.cautions)),
        ("assumed", "ASSUMED", assumed_texts(_assumed(lists.assumptions), source.wording)),
    )
    notes = notes_beside(told, space.note, source.typeface)
    parts = table.blocks(space.part, source.typeface)
    unscaled = replace(source, fields=replace(source.fields, scale="NONE"))
    return wide_pages(unscaled, space, parts, notes, as_placed)


def _table(parts: Sequence[Part], wording: SheetWording) -> WideTable:
    short = any(part.short_length.value != part.length.value for part in parts)
    cut = any(_is_cut_larger(part) for part in parts)
    groups = (
        WideGroup(
            KIND_TITLES[kind],
            tuple(_row(part, wording, short=short, cut=cut) for part in of_kind),
        )
        for kind, of_kind in groupby(parts, key=lambda part: part.kind)
    )
    sizes = (*_NET, *((_SHORT,) if short else ()), *(_CUT if cut else ()))
    return WideTable("part", "CUT LIST", (_MARK, _NAME, *sizes, *_REST), tuple(groups))


def _is_cut_larger(part: Part) -> bool:
    wider = part.cut_width is not None and part.width is not None
    return part.cut_length.value != part.length.value or (
        wider and part.cut_width.value != part.width.value  # type: ignore[union-attr]
    )


def _row(part: Part, wording: SheetWording, *, short: bool, cut: bool) -> WideRow:
    return WideRow(part.mark, tuple(_cells(part, wording, short=short, cut=cut)))


def _cells(part: Part, wording: SheetWording, *, short: bool, cut: bool) -> Iterator[WideCell]:
    yield WideCell(part.mark)
    yield WideCell(part.name)
    yield WideCell(str(part.quantity))
    yield _size(part.thickness, wording)
    yield _size(part.width, wording)
    yield length_cell(part.length.value, wording)
    if short:
        yield length_cell(part.short_length.value, wording)
    if cut:
        yield _size(part.cut_width, wording)
        yield length_cell(part.cut_length.value, wording)
    yield WideCell(end_words(part.left, wording))
    yield WideCell(end_words(part.right, wording))
    yield WideCell(remarks(part))
    yield WideCell(part.material.name)
    yield WideCell(where_words(part))


def _size(figure: LengthFigure | None, wording: SheetWording) -> WideCell:
    size = None if figure is None else figure.value
    return WideCell(size_text(size, wording), "" if size is None else wording.exact(size))


def length_cell(length: Length, wording: SheetWording) -> WideCell:
    """A length as a cell that also tells it exactly."""
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
    if any(part.short_length.value != part.length.value for part in parts):
        yield "L is between the long points of mitred ends, L SHORT between their short points."
    yield (
        "Left and right are seen on the face that shows, its lower edge toward you; of the bottom"
        " of a wall beam, with the edge at the wall away from you."
    )
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
