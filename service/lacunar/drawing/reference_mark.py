"""The mark that leads from one sheet to a view on another: its number over its sheet's, in a ring.

The split circle is common drafting practice (no source).
"""

from dataclasses import dataclass
from math import hypot

from lacunar.drawing import style
from lacunar.drawing.elements import Circle, Face, Fill, Group, Pt, Segments, Text
from lacunar.drawing.typeface import Typeface

_PAD = 1.2
_LEAST = 5.0


@dataclass(frozen=True, slots=True)
class Reference:
    """Where a view stands: its name among all of a set, its number, and its sheet's number."""

    name: str
    number: int
    sheet: str


def mark_radius(reference: Reference, typeface: Typeface) -> float:
    """How large the ring is about both numbers [mm]."""
    half = max(
        typeface.width(text, style.TEXT, Face.MEDIUM) / 2
        for text in (reference.sheet, str(reference.number))
    )
    # The corners of the lower line lie farthest out.
    lowest = style.TEXT + 2 * _PAD
    return max(_LEAST, hypot(half, lowest) + 0.4)


def reference_mark(reference: Reference, center: Pt, typeface: Typeface) -> Group:
    """The ring with the view's number over that of its sheet."""
    radius = mark_radius(reference, typeface)
    across = (center.moved(-radius, 0.0), center.moved(radius, 0.0))
    return Group(
        "reference",
        (
            Circle(center, radius, style.OBJECT, Fill.WHITE),
            Segments((across,), style.FINE),
            _line(center.moved(0.0, -_PAD), str(reference.number)),
            _line(center.moved(0.0, _PAD + style.TEXT), reference.sheet),
        ),
        id=f"reference-{reference.name}",
        title=f"See view {reference.number} on {reference.sheet}",
        data={
            "name": reference.name,
            "view": str(reference.number),
            "sheet": reference.sheet,
        },
    )


def _line(at: Pt, text: str) -> Text:
    return Text(at, text, style.TEXT, Face.MEDIUM, anchor="middle")
