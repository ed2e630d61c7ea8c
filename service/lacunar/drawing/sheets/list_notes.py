"""What stands beside lists: notes, what was assumed, and what to heed."""

from collections.abc import Iterable, Sequence
from dataclasses import replace

from lacunar.drawing.annotation import Block, ColumnSpace, paragraph_blocks
from lacunar.drawing.sheets.pages import Page, SheetSource, table_pages
from lacunar.drawing.sheets.placing import column_width
from lacunar.drawing.typeface import Typeface
from lacunar.drawing.wording import SheetWording
from lacunar.layout.records import Caution
from lacunar.measure.length import Length
from lacunar.model.ceiling import Assumption
from lacunar.model.faults import Fault

_PART_HEIGHT = 84.0
_LONGEST = 900
"""More letters of one assumption, which names all that it is for, are not told."""
_MOST_FAULTS = 12
_ELSEWHERE = "The cut list has all parts. A material list can be planned from stock that is told."


def notes_beside(
    told: Sequence[tuple[str, str, Sequence[str]]], column: ColumnSpace, typeface: Typeface
) -> tuple[Block, ...]:
    """Lists of sentences, each with the name and the title it goes by; empty ones are left out.

    They come in parts that also fit what tables leave of a page.
    """
    column = replace(column, height=min(column.height, _PART_HEIGHT))
    return tuple(
        block
        for kind, title, texts in told
        if texts
        for block in paragraph_blocks(kind, title, texts, column, typeface)
    )


def caution_texts(cautions: Iterable[Caution]) -> list[str]:
    """What to heed, each once."""
    return list(dict.fromkeys(caution.text for caution in cautions))


def assumed_texts(assumptions: Iterable[Assumption], wording: SheetWording) -> list[str]:
    """What was assumed, in sentences: what, what was taken for it, and why."""
    return [_assumed(each, wording) for each in assumptions]


def _assumed(made: Assumption, wording: SheetWording) -> str:
    _, _, *names = made.pointer.split("/")
    what = ", ".join(names).replace("_", " ").capitalize()
    value = made.value
    told = wording.detail(value) if isinstance(value, Length) else str(value).replace("_", " ")
    sentence = f"{what} {told}: {made.reason}."
    return sentence if len(sentence) <= _LONGEST else f"{sentence[:_LONGEST]}…"


def fault_texts(faults: Iterable[Fault], wording: SheetWording) -> list[str]:
    """Why parts cannot be cut from stock: what is wrong, in which figures, and the way out."""
    found = tuple(faults)
    told = [
        f"{fault.message} {_figures(fault, wording)}{fault.remedy}"
        for fault in found[:_MOST_FAULTS]
    ]
    more = len(found) - _MOST_FAULTS
    return [*told, f"And {more} more like these."] if more > 0 else told


def _figures(fault: Fault, wording: SheetWording) -> str:
    told = [
        f"{name.replace('_', ' ')} {wording.detail(each) if isinstance(each, Length) else each}"
        for name, each in fault.figures.items()
    ]
    return f"({', '.join(told)}) " if told else ""


def refused_pages(source: SheetSource, texts: Sequence[str]) -> tuple[Page, ...]:
    """A sheet that says why it cannot show what it is for."""
    space = ColumnSpace(column_width(source.size), _PART_HEIGHT)
    title = "NOT CUT FROM STOCK"
    blocks = paragraph_blocks("refusal", title, (*texts, _ELSEWHERE), space, source.typeface)
    return table_pages(source, blocks, 1)
