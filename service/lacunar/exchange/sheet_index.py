"""The index of a set of sheets as JSON: what is drawn, and what is to be heeded of it."""

from collections.abc import Mapping
from dataclasses import dataclass
from typing import Any

from lacunar.drawing.sheet_set import SheetEntry
from lacunar.exchange.board_answer_words import Words
from lacunar.exchange.layout_json import RecordWriter
from lacunar.layout.records import Caution
from lacunar.measure.rounding import Step
from lacunar.model.ceiling import Assumption

SHEET_WORDS: Words = {
    "SheetEntry": {
        "number": "The sheet's number, by which it can be asked for.",
        "title": "What is drawn on it.",
        "page": "Its page and how many there are in the set.",
        "paper": "The paper it is drawn on; null for a page of a roll, as long as what is on it.",
        "scale": "Its scale, as the sheet says it: AS NOTED where there are several, NONE for"
        " tables, FULL SIZE for strips.",
    },
    "SetIndex": {
        "sheets": "The sheets that are sent, in order.",
        "cautions": "Advice about safety, code or craft, and about what could not be drawn.",
        "assumptions": "What the spec left open.",
        "digest": "Hash of all that decides sizes, 64 hexadecimal digits; its first 12 stand on"
        " every sheet.",
    },
}


@dataclass(frozen=True, slots=True)
class SetIndex:
    """The sheets, the cautions of layout and drawing, what was assumed, and the input's digest."""

    sheets: tuple[SheetEntry, ...]
    cautions: tuple[Caution, ...]
    assumptions: tuple[Assumption, ...]
    digest: str


def index_to_json(index: SetIndex, step: Step) -> Mapping[str, Any]:
    """An index as JSON values; `step` is what lengths in cautions' figures are rounded to."""
    return RecordWriter(step, trace=False).record(index)
