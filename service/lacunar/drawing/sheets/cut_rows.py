"""Sticks and sheets as rows under the name of what they are of, each way of cutting once."""

from collections.abc import Callable, Hashable, Iterable, Iterator, Mapping, Sequence
from dataclasses import dataclass
from typing import TypeVar

from lacunar.drawing import style
from lacunar.drawing.annotation import Block, fitted
from lacunar.drawing.elements import Face
from lacunar.drawing.lists import Stocked
from lacunar.drawing.paper import Scale
from lacunar.drawing.sheets.titled_rows import TitledRows
from lacunar.drawing.typeface import Typeface
from lacunar.drawing.views.sheet_cuts import DrawnSheet, sheet_cuts
from lacunar.drawing.views.sheet_cuts.look import SheetLook
from lacunar.drawing.views.stick_bars import BarLook, DrawnStick, stick_bar
from lacunar.drawing.wording import SheetWording
from lacunar.measure.length import ZERO, Length
from lacunar.measure.writing import decimal_text
from lacunar.takeoff.cutting.plan_records import MaterialPlan, Stick
from lacunar.takeoff.cutting.sheet_records import CutSheet, SheetPlan
from lacunar.takeoff.material_records import MaterialLine
from lacunar.takeoff.part_records import Part

Way = TypeVar("Way")

_UNDER_TITLE = 3.0
_GOING_ON = 24.0
"""What a title leaves free for the words that it goes on [mm]."""


@dataclass(frozen=True, slots=True)
class CutRows:
    """What rows are drawn from: plans and parts, the scale, and how wide a row is [mm]."""

    stocked: Stocked
    parts: tuple[Part, ...]
    scale: Scale
    width: float
    wording: SheetWording
    typeface: Typeface

    def sticks(self) -> Iterator[TitledRows]:
        """A row to each way in which a stick is cut, material by material."""
        plans = self.stocked.planned.lengths
        look = BarLook(self.scale.ratio, self.width, self._longest(), self.wording, self.typeface)
        count = 0
        for plan in plans.plans if plans else ():
            lengths = self._whole_lengths(plan.material)
            rows: list[Block] = []
            for stick, times in _ways(plan.sticks, _way_of_stick):
                count += 1
                drawn = DrawnStick(count, plan.material, stick, times, lengths)
                rows.append(stick_bar(drawn, look))
            yield TitledRows(self._title(plan), tuple(rows), _UNDER_TITLE)

    def sheets(self) -> Iterator[TitledRows]:
        """Rows to each way in which a sheet is cut, material by material."""
        plans, asked = self.stocked.planned.sheets, self.stocked.planned.asked.sheets
        if plans is None or asked is None:
            return
        look = SheetLook(self.scale.ratio, asked.terms.kerf, self.wording, self.typeface)
        sizes = {
            part.mark: (part.cut_length.value, part.cut_width.value)
            for part in self.parts
            if part.cut_width is not None
        }
        count = 0
        for plan in plans.plans:
            rows: list[Block] = []
            for sheet, times in _ways(plan.sheets, _way_of_sheet):
                count += 1
                drawn = DrawnSheet(count, plan.material, sheet, times, sizes)
                rows.extend(sheet_cuts(drawn, look, self.width))
            packed = tuple(_beside_each_other(rows, self.width))
            yield TitledRows(self._title(plan), packed, _UNDER_TITLE)

    def _longest(self) -> float:
        plans = self.stocked.planned.lengths
        lengths = [stick.length for plan in (plans.plans if plans else ()) for stick in plan.sticks]
        return float(max(lengths, default=ZERO).millimeters) / self.scale.ratio

    def _whole_lengths(self, material: str) -> Mapping[str, Length]:
        """The lengths that the cut list tells, of parts that are cut in one piece."""
        whole = {each.mark for each in self._line(material).parts if each.pieces_each == 1}
        return {part.mark: part.cut_length.value for part in self.parts if part.mark in whole}

    def _line(self, material: str) -> MaterialLine:
        lines = self.stocked.listed.materials.lines
        return next(each for each in lines if each.plan is not None and each.name == material)

    def _title(self, plan: MaterialPlan | SheetPlan) -> str:
        line = self._line(plan.material)
        words = f"{line.name}: {order_words(line)}{_yield(line)}"
        room = self.width - _GOING_ON
        return fitted(words, room, style.TEXT, self.typeface, Face.SEMIBOLD)


def _beside_each_other(blocks: Sequence[Block], width: float) -> Iterator[Block]:
    """Blocks in rows, as many beside each other as a row of this width [mm] holds."""
    row: list[Block] = []
    for block in blocks:
        if row and sum(each.width for each in row) + block.width > width:
            yield _one_row(row, width)
            row = []
        row.append(block)
    if row:
        yield _one_row(row, width)


def _one_row(blocks: Sequence[Block], width: float) -> Block:
    lefts = [sum(each.width for each in blocks[:place]) for place in range(len(blocks))]
    children = (e for left, each in zip(lefts, blocks, strict=True) for e in each.at(left, 0))
    return Block(width, max(each.height for each in blocks), tuple(children))


def order_words(line: MaterialLine) -> str:
    """What is bought of a line: `4 x 12'-0", 8 x 16'-0"`."""
    return ", ".join(f"{each.quantity} x {each.name}" for each in line.bought)


def _yield(line: MaterialLine) -> str:
    """How much of what is cut ends up in parts."""
    if line.plan is None:
        return ""
    return f"; {decimal_text(line.plan.yield_percent.value, 0)} % goes into parts"


def _ways(each: Iterable[Way], key: Callable[[Way], Hashable]) -> Iterator[tuple[Way, int]]:
    """Each way of cutting with how often it is cut so, in order."""
    found: dict[Hashable, list[Way]] = {}
    for one in each:
        found.setdefault(key(one), []).append(one)
    for alike in found.values():
        yield alike[0], len(alike)


def _way_of_stick(stick: Stick) -> Hashable:
    return stick.stock, tuple((piece.piece, piece.start) for piece in stick.pieces)


def _way_of_sheet(sheet: CutSheet) -> Hashable:
    return sheet.sheet, sheet.pattern, tuple(panel.panel for panel in sheet.panels)
