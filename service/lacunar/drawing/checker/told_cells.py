"""Cells of tables as they are told: whose they are, what they say, and whether that is laid out."""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from fractions import Fraction

from lacunar.drawing.checker.records import GroupRead
from lacunar.drawing.checker.strings import printed, stated
from lacunar.drawing.checker.subject import Subject

Told = Fraction | str | None


@dataclass(frozen=True, slots=True)
class RowTold:
    """One row of a table: whose it is, and its cells by their names."""

    of: str
    cells: dict[str, Told]


def cell_told(subject: Subject, cell: GroupRead) -> Fraction | str | None:
    """What a cell prints, if that is what it states; nothing for a dash."""
    texts = [one.text for one in subject.sheet.letterings_in(cell)]
    if texts == ["-"]:
        return None
    figure = printed(texts[0], subject.sheet) if len(texts) == 1 else None
    return figure if figure is not None and figure == stated(cell) else " ".join(texts)


def told_rows(subjects: Sequence[Subject], kind: str) -> Iterator[RowTold]:
    """All rows of a kind on a set of sheets; those of one table's parts side by side are one."""
    parts: dict[tuple[str, int], dict[str, Told]] = {}
    seen: dict[tuple[str, str], int] = {}
    for subject in subjects:
        for row in subject.sheet.of_kind(f"{kind}-row"):
            of = row.data.get("of", "")
            for cell in subject.sheet.of_kind("cell", row):
                name = cell.data.get("name", "")
                number = seen.get((of, name), 0)
                seen[of, name] = number + 1
                parts.setdefault((of, number), {})[name] = cell_told(subject, cell)
    return (RowTold(of, cells) for (of, _), cells in parts.items())


def same_rows(
    told: Sequence[RowTold], wanted: Sequence[RowTold], slack: Fraction, most: int
) -> bool:
    """Whether rows are those wanted, each once, lengths as near as `slack` [mm]; `most` of them."""
    left = list(wanted)
    for row in told:
        found = next((each for each in left if _same(row, each, slack)), None)
        if found is None:
            return False
        left.remove(found)
    return len(told) >= min(len(wanted), most)


def _same(told: RowTold, wanted: RowTold, slack: Fraction) -> bool:
    if told.of != wanted.of or told.cells.keys() != wanted.cells.keys():
        return False
    return all(_near(told.cells[name], figure, slack) for name, figure in wanted.cells.items())


def _near(one: Told, other: Told, slack: Fraction) -> bool:
    if isinstance(one, Fraction) and isinstance(other, Fraction):
        return abs(one - other) <= slack
    return one == other
