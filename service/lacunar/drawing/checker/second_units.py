"""Points on figures in second units: they tell the same length as those before them."""

from collections.abc import Iterator
from fractions import Fraction

from lacunar.drawing.checker.json_node import MILLIMETERS
from lacunar.drawing.checker.records import Finding
from lacunar.drawing.checker.strings import in_words, printed, read_in
from lacunar.drawing.checker.subject import Subject

# What figures for comparison are rounded to.
STEPS = {"in": MILLIMETERS["in"] / 16, "mm": MILLIMETERS["mm"]}


def both_figures_agree(subject: Subject) -> Iterator[Finding]:
    """Point 47: each dimension has its figure in the second units, and both are of one length."""
    sheet = subject.sheet
    second = sheet.data.get("second-units", "")
    for dimension in sheet.of_kind("dimension"):
        for lettering in sheet.letterings_in(dimension):
            if second and " [" not in lettering.text:
                yield sheet.finding(47, dimension.id, "has no figure in the second units")
    for lettering in sheet.letterings:
        first, bracket, last = lettering.text.partition(" [")
        told = printed(first, sheet)
        if told is not None and bracket:
            yield from _disagreeing(subject, told, last.removesuffix("]"))


def _disagreeing(subject: Subject, told: Fraction, last: str) -> Iterator[Finding]:
    sheet = subject.sheet
    second = sheet.data.get("second-units", "")
    compared = read_in(last, second)
    if compared is None or abs(compared - told) > STEPS[second] / 2:
        message = f"“{last}” in brackets is not {in_words(told)}"
        yield sheet.finding(47, "", message)
