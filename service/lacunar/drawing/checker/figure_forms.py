"""The point on how figures are written: as a tape is read, and no other way.

Imperial: feet from 12 in up, inches below 12 after them, zero inches written, fractions reduced and
of a tape's divisions (architectural practice; inches alone below a foot). Metric: whole or half
millimeters, thousands parted by a thin space (SI Brochure, 5.4.4).
"""

import re
from collections.abc import Iterator
from math import gcd

from lacunar.drawing.checker.records import Finding, GroupRead, SheetRead
from lacunar.drawing.checker.strings import THIN_SPACE
from lacunar.drawing.checker.subject import Subject

KINDS = ("dimension", "running-figure", "mark")
"""What holds figures of lengths and nothing else."""
FINEST = 64
FOOT = 12
_FEET = re.compile(r"(?:(\d+)'-)?(\d+)?(?:(?:(?<=\d) )?(\d+)/(\d+))?\"")
_METRIC = re.compile(rf"\d{{1,3}}(?:{THIN_SPACE}\d{{3}})*(?:\.5)?")


def figures_well_formed(subject: Subject) -> Iterator[Finding]:
    """Point 46: every figure of a length is written as its units are."""
    sheet = subject.sheet
    for kind in KINDS:
        for group in sheet.of_kind(kind):
            for lettering in sheet.letterings_in(group):
                for message in _faults(lettering.text, group, sheet):
                    where = group.id or sheet.place(lettering.group)
                    yield sheet.finding(46, where, f"“{lettering.text}” {message}")


def _faults(text: str, group: GroupRead, sheet: SheetRead) -> Iterator[str]:
    """What is wrong with a figure, and with the one in brackets behind it, if there is one."""
    if text == group.data.get("of"):
        return  # A place whose figure is told elsewhere has its name alone.
    # Some figures have the name before them of what they are of.
    figure = text.rpartition(": ")[2]
    first, bracket, second = figure.partition(" [")
    yield from filter(None, (_fault(first, sheet.data.get("units", "")),))
    if bracket:
        units = sheet.data.get("second-units", "")
        yield from filter(None, (_fault(second.removesuffix("]"), units),))


def _fault(text: str, units: str) -> str:
    """What is wrong with how a figure is written; empty where nothing is."""
    if units == "mm":
        return "" if _METRIC.fullmatch(text) else "is not written as millimeters are"
    parts = _FEET.fullmatch(text)
    if parts is None:
        return "is not written as feet and inches are"
    return _feet_fault(*(int(part) if part else None for part in parts.groups()))


def _feet_fault(
    feet: int | None, inches: int | None, numerator: int | None, denominator: int | None
) -> str:
    if feet is not None and inches is None:
        return "leaves its inches out"
    if inches is not None and inches >= FOOT:
        return "has a foot and more in its inches"
    if numerator is None or denominator is None:
        return "" if inches is not None else "says nothing"
    if gcd(numerator, denominator) != 1 or numerator >= denominator:
        return "has a fraction that is not reduced"
    if FINEST % denominator:
        return "has a fraction that no tape is divided in"
    return ""
