"""The point on openings as measured: each is listed once, as it was measured and planned."""

from collections.abc import Iterator, Sequence
from fractions import Fraction

from lacunar.drawing.checker.opening_facts import OpeningFacts
from lacunar.drawing.checker.records import Finding, GroupRead, SheetRead
from lacunar.drawing.checker.strings import printed
from lacunar.drawing.checker.subject import Subject

_CELLS = 4
# A row as read: its sheet, its group, whose side or diagonal it tells.
_Row = tuple[SheetRead, GroupRead, tuple[str, str]]


def openings_listed(subjects: Sequence[Subject]) -> Iterator[Finding]:
    """Point 74: the set's tables list all that was measured once, with sizes as printed."""
    facts = subjects[0].facts
    rows = [row for subject in subjects for row in _rows(subject.sheet)]
    known = {(each.coffer, each.what): each for each in facts.openings}
    told = [key for _, _, key in rows]
    for key in sorted({*known, *told}):
        wanted = 1 if key in known else 0
        if told.count(key) != wanted:
            message = f"{key[0]} {key[1]} is listed {told.count(key)} times, and not {wanted}"
            yield subjects[0].sheet.finding(74, "openings", message)
    for sheet, group, key in rows:
        if key in known:
            yield from _row(sheet, group, known[key], facts.step)


def _rows(sheet: SheetRead) -> Iterator[_Row]:
    for row in sheet.of_kind("opening-row"):
        yield sheet, row, (row.data.get("of", ""), row.data.get("what", ""))


def _row(
    sheet: SheetRead, group: GroupRead, fact: OpeningFacts, step: Fraction
) -> Iterator[Finding]:
    """A row's figures: both sizes are the layout's within half a step, and differ as it says."""
    cells = [lettering.text for lettering in sheet.letterings_in(group)]
    if len(cells) != _CELLS or cells[0].partition(" ")[0] != fact.coffer:
        yield sheet.finding(74, fact.coffer, f"a row reads {' '.join(cells)}")
        return
    planned, measured = (printed(cell, sheet) for cell in cells[1:3])
    difference = _signed(cells[3], sheet)
    if planned is None or measured is None or difference is None:
        yield sheet.finding(74, fact.coffer, f"{fact.what} has no readable figures")
        return
    for name, figure, exact in (
        ("planned", planned, fact.planned),
        ("measured", measured, fact.measured),
    ):
        if abs(figure - exact) > step / 2:
            message = f"{fact.what} is told as {name} {float(figure):.4f} mm"
            yield sheet.finding(74, fact.coffer, message)
    if difference != measured - planned:
        yield sheet.finding(74, fact.coffer, f"{fact.what} does not differ by what it says")


def _signed(text: str, sheet: SheetRead) -> Fraction | None:
    sign = -1 if text[:1] in "-\N{MINUS SIGN}" else 1
    size = printed(text.lstrip("+-\N{MINUS SIGN}"), sheet)
    return None if size is None else sign * size
