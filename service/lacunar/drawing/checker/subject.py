"""What the points look at: one sheet as read, and the layout and typeface it is held against."""

from dataclasses import dataclass
from functools import cached_property

from lacunar.drawing.checker.facts import LayoutFacts
from lacunar.drawing.checker.list_facts import ListFacts
from lacunar.drawing.checker.overlaps import BoxGrid
from lacunar.drawing.checker.records import SheetRead
from lacunar.drawing.typeface import Typeface


@dataclass(frozen=True)
class Subject:
    """One sheet under the checker's eyes; `lists` is None where none came with the layout."""

    sheet: SheetRead
    facts: LayoutFacts
    typeface: Typeface
    lists: ListFacts | None = None

    @cached_property
    def boxes(self) -> BoxGrid:
        """The boxes of the sheet's texts, numbered as its `letterings`."""
        return BoxGrid([lettering.box for lettering in self.sheet.letterings])
