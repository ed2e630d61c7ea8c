"""Rows of lists as read off sheets, cell by cell."""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from fractions import Fraction

from lacunar.drawing.checker.json_node import exact_millimeters
from lacunar.drawing.checker.records import Finding, GroupRead, SheetRead
from lacunar.drawing.checker.subject import Subject


@dataclass(frozen=True, slots=True)
class CellRead:
    """What a cell prints, and what it says that it tells exactly."""

    text: str
    value: str

    @property
    def length(self) -> Fraction | None:
        """The exact length that it says it tells [mm]; None where it tells none."""
        try:
            return exact_millimeters(self.value)
        except ValueError:
            return None


@dataclass(frozen=True, slots=True)
class RowRead:
    """A row of a list: the sheet it stands on, what it is of, its cells by name."""

    sheet: SheetRead
    of: str
    cells: dict[str, CellRead]

    def finding(self, point: int, message: str) -> Finding:
        """A finding about this row."""
        return self.sheet.finding(point, self.of, message)


def list_rows(subjects: Sequence[Subject], kind: str) -> tuple[RowRead, ...]:
    """All rows of a kind in a set."""
    return tuple(
        RowRead(subject.sheet, row.data.get("of", ""), dict(_cells(subject.sheet, row)))
        for subject in subjects
        for row in subject.sheet.of_kind(kind)
    )


def _cells(sheet: SheetRead, row: GroupRead) -> Iterator[tuple[str, CellRead]]:
    for cell in sheet.of_kind("cell", row):
        text = " ".join(lettering.text for lettering in sheet.letterings_in(cell))
        yield cell.data.get("name", ""), CellRead(text, cell.data.get("value", ""))


def sentences(subjects: Sequence[Subject]) -> Iterator[str]:
    """All sentences of notes and the like in a set, without their numbers."""
    for subject in subjects:
        sheet = subject.sheet
        for sentence in sheet.of_kind("sentence"):
            texts = [lettering.text for lettering in sheet.letterings_in(sentence)]
            yield " ".join(texts[1:])
