"""Points on cut lists and material lists: whatever they print is what the JSON of both says."""

from collections import Counter
from collections.abc import Iterator, Sequence
from fractions import Fraction

from lacunar.drawing.checker.list_facts import (
    AMOUNTS,
    SIZES,
    LineFacts,
    ListFacts,
    PartFacts,
)
from lacunar.drawing.checker.list_rows import RowRead, list_rows, sentences
from lacunar.drawing.checker.records import Finding
from lacunar.drawing.checker.strings import printed
from lacunar.drawing.checker.subject import Subject

_ROUNDED = Fraction(1, 200)
"""How far a number told to two places may be off."""
_OPTIONAL = ("short_length", "cut_width", "cut_length")


def parts_listed(subjects: Sequence[Subject]) -> Iterator[Finding]:
    """Point 50: the cut list has each part once, as many of it as are taken off."""
    lists = subjects[0].lists
    if lists is None:
        return
    rows = list_rows(subjects, "part-row")
    told = Counter(row.of for row in rows)
    known = {part.mark: part for part in lists.parts}
    for mark in sorted({*told, *known}):
        wanted = 1 if mark in known else 0
        if told[mark] != wanted:
            message = f"{mark} is listed {told[mark]} times, and not {wanted}"
            yield subjects[0].sheet.finding(50, "part-table", message)
    for row in rows:
        quantity = row.cells["quantity"].text if "quantity" in row.cells else ""
        if row.of in known and quantity != str(known[row.of].quantity):
            yield row.finding(50, f"{quantity} listed, {known[row.of].quantity} taken off")


def parts_as_taken_off(subjects: Sequence[Subject]) -> Iterator[Finding]:
    """Point 53: marks, sizes and materials on the cut list are those of the take-off's JSON."""
    lists = subjects[0].lists
    if lists is None:
        return
    known = {part.mark: part for part in lists.parts}
    for row in list_rows(subjects, "part-row"):
        if row.of not in known:
            continue
        for name, text in (("mark", row.of), ("material", known[row.of].material)):
            cell = row.cells.get(name)
            if cell is None or _letters(cell.text) != _letters(text):
                yield row.finding(53, f"its {name} reads “{cell.text if cell else ''}”")
        for name in SIZES:
            for message in _size(row, name, known[row.of], subjects[0].facts.step):
                yield row.finding(53, message)


def _letters(text: str) -> str:
    """A text without its spaces, which are lost where it is wrapped."""
    return "".join(text.split())


def _size(row: RowRead, name: str, part: PartFacts, step: Fraction) -> Iterator[str]:
    """What is wrong with a size: a dash is for none, or for short points that are the long ones.

    Where miters meet before they come to another edge, there is a point in place of short ones.
    """
    cell, size = row.cells.get(name), part.sizes[name]
    if cell is None:
        if name not in _OPTIONAL or size != part.sizes[name.rpartition("_")[2]]:
            yield f"tells no {name}"
        return
    dash = size is None or (name == "short_length" and size == part.sizes["length"])
    if dash and cell.text == "-":
        return
    if name == "short_length" and size is not None and size <= 0 and cell.text == "point":
        return
    told = printed(cell.text, row.sheet)
    if size is None or told is None or abs(told - size) > step / 2 or cell.length != size:
        yield f"its {name} reads “{cell.text}”, {float(size or 0):.4f} mm is taken off"


def one_mark_each(subjects: Sequence[Subject]) -> Iterator[Finding]:
    """Point 54: parts that are the same have one mark, and a mark stands for one part."""
    lists = subjects[0].lists
    if lists is None:
        return
    marks: dict[str, str] = {}
    for part in lists.parts:
        other = marks.setdefault(part.shape, part.mark)
        if other != part.mark:
            yield subjects[0].sheet.finding(54, part.mark, f"is the same part as {other}")
    for mark, count in Counter(part.mark for part in lists.parts).items():
        if count > 1:
            yield subjects[0].sheet.finding(54, mark, f"stands for {count} parts")


def lines_as_planned(subjects: Sequence[Subject]) -> Iterator[Finding]:
    """Point 53: lines of the material list are those of its JSON, number by number."""
    lists = subjects[0].lists
    if lists is None:
        return
    rows = list_rows(subjects, "material-row")
    told = Counter(row.of for row in rows)
    known = {line.number: line for line in lists.lines or ()}
    for number in sorted({*told, *known}):
        wanted = 1 if number in known else 0
        if told[number] != wanted:
            message = f"line {number} is listed {told[number]} times, and not {wanted}"
            yield subjects[0].sheet.finding(53, "material-table", message)
    for row in rows:
        if row.of in known:
            for message in _line(row, known[row.of], lists):
                yield row.finding(53, message)


def _line(row: RowRead, line: LineFacts, lists: ListFacts) -> Iterator[str]:
    for name in AMOUNTS:
        due = line.amounts[name] * (line.metric if lists.metric and line.metric else 1)
        cell = row.cells.get(name)
        told = _number(cell.text) if cell else None
        if told is None or abs(told - due) > _ROUNDED:
            yield f"its {name} reads “{cell.text if cell else ''}”, {float(due):.4f} is planned"
    order = row.cells["order"].text if "order" in row.cells else ""
    due_order = ", ".join(f"{each.quantity} x {each.name}" for each in line.bought) or "nothing"
    if _letters(order) != _letters(due_order):
        yield f"orders {order}, {due_order} is planned"


def _number(text: str) -> Fraction | None:
    try:
        return Fraction(text)
    except ValueError:
        return None


def enough_bought(subjects: Sequence[Subject]) -> Iterator[Finding]:
    """Point 52: what is bought, and on hand, is need, waste and what is left over, as printed."""
    lists = subjects[0].lists
    if lists is None:
        return
    for row in list_rows(subjects, "material-row"):
        values = {name: _exact(row, name) for name in AMOUNTS}
        there = values["amount"] + values["on_hand"]
        used = values["need"] + values["waste"]
        if there < used or there != used + values["left_over"]:
            message = f"{float(there):.3f} for {float(used):.3f} and what is left over"
            yield row.finding(52, message)
    for line in lists.lines or ():
        bought = sum((each.quantity * each.holds for each in line.bought), Fraction(0))
        if bought != line.amounts["amount"]:
            yield subjects[0].sheet.finding(52, line.number, "orders another amount than it says")


def _exact(row: RowRead, name: str) -> Fraction:
    cell = row.cells.get(name)
    return (_number(cell.value) if cell else None) or Fraction(0)


def refusal_told(subjects: Sequence[Subject]) -> Iterator[Finding]:
    """Point 163: where parts cannot be cut from stock, sheets say so; and only there."""
    lists = subjects[0].lists
    if lists is None:
        return
    told = any(True for subject in subjects for _ in subject.sheet.of_kind("refusal"))
    if told != (lists.lines is None):
        message = "says that nothing is planned" if told else "does not say why nothing is planned"
        yield subjects[0].sheet.finding(163, "refusal", message)


def joints_told(subjects: Sequence[Subject]) -> Iterator[Finding]:
    """Point 25: parts longer than their stock are told as joined, of how many pieces each."""
    lists = subjects[0].lists
    if lists is None or lists.lines is None:
        return
    words = " ".join(sentences(subjects))
    parts = {part.mark: part.sizes["cut_length"] or Fraction(0) for part in lists.parts}
    for line in lists.lines:
        lengths = [each.length for each in line.bought if each.length is not None]
        for mark, pieces in line.pieces.items() if line.cut and lengths else ():
            long = parts.get(mark, Fraction(0)) > max(lengths)
            if long and (pieces == 1 or f"{mark} of {pieces}" not in words):
                message = "is longer than its stock, and no joint is told"
                yield subjects[0].sheet.finding(25, mark, message)
