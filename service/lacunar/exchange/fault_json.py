"""Faults as JSON members and as lines for a terminal."""

from typing import Any

from lacunar.exchange.length_json import length_both_ways, length_to_json
from lacunar.measure.length import Length
from lacunar.measure.rounding import Step
from lacunar.model.fault_catalogue import FAULT_CODES
from lacunar.model.faults import Fault, FigureValue

WHOLE_DOCUMENT = "the whole document"
"""What the empty pointer is about; "/" would be a member whose name is empty."""


def fault_to_json(fault: Fault, step: Step) -> dict[str, Any]:
    """Turn a fault into one item of a problem's `errors` (RFC 9457 section 3.2).

    Its figures' lengths are written in the units of `step`, the marking step of the spec or, while
    that is not known, of its units.
    """
    return {
        "code": fault.code,
        "title": FAULT_CODES[fault.code].title,
        "pointer": fault.pointer,
        "message": fault.message,
        "figures": {
            name: length_to_json(value, step) if isinstance(value, Length) else value
            for name, value in fault.figures.items()
        },
        "remedy": fault.remedy,
    }


def fault_lines(fault: Fault) -> list[str]:
    """Turn a fault into lines for a terminal: place and sentence, figures, remedy.

    Lengths are told in inches and in millimeters, because a fault may be about the units.
    """
    lines = [f"{fault.pointer or WHOLE_DOCUMENT}: {fault.message} [{fault.code}]"]
    if fault.figures:
        told = (f"{_words(name)} {_figure(value)}" for name, value in fault.figures.items())
        lines.append(f"    {', '.join(told)}")
    lines.append(f"    {fault.remedy}")
    return lines


def _words(name: str) -> str:
    return name.replace("_", " ")


def _figure(value: FigureValue) -> str:
    return length_both_ways(value) if isinstance(value, Length) else str(value)
