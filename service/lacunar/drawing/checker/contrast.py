"""The point on areas: gray, and light enough for black lines, so that every copier keeps them.

The measure of contrast is that of the Web Content Accessibility Guidelines 2.1 (relative luminance,
and 3:1 for what is drawn, success criterion 1.4.11; from memory).
"""

from collections.abc import Iterator

from lacunar.drawing.checker.legibility import BLACK
from lacunar.drawing.checker.records import Finding
from lacunar.drawing.checker.subject import Subject

LEAST_CONTRAST = 3.0
UNFILLED = "none"
WHITE = "white"

_DIGITS = 6
_FLARE = 0.05
_LINEAR_BELOW = 0.04045


def areas_in_light_grays(subject: Subject) -> Iterator[Finding]:
    """Point 43: an area is black, or a gray on which black lines stand out; it needs no color."""
    sheet = subject.sheet
    areas = dict.fromkeys((path.group, path.fill) for path in sheet.paths)
    areas |= dict.fromkeys((ring.group, ring.fill) for ring in sheet.rings)
    for group, fill in areas:
        if fill in (UNFILLED, *BLACK):
            continue
        shares = _shares(fill)
        if shares is None or len(set(shares)) > 1:
            yield sheet.finding(43, sheet.place(group), f"an area in {fill}, which is no gray")
        elif contrast_of_black(shares[0]) < LEAST_CONTRAST:
            message = f"an area in {fill}, on which black lines drown"
            yield sheet.finding(43, sheet.place(group), message)


def contrast_of_black(share: float) -> float:
    """How black stands out from a gray of so much of each color (0 to 1).

    >>> contrast_of_black(1.0), contrast_of_black(0.0)
    (21.0, 1.0)
    """
    luminance = share / 12.92 if share <= _LINEAR_BELOW else ((share + 0.055) / 1.055) ** 2.4
    return round((luminance + _FLARE) / _FLARE, 6)


def _shares(fill: str) -> tuple[float, ...] | None:
    """How much red, green and blue a written color has (0 to 1); None for what is not read."""
    if fill == WHITE:
        return (1.0, 1.0, 1.0)
    digits = fill.removeprefix("#")
    if len(digits) != _DIGITS or digits == fill:
        return None
    try:
        return tuple(int(digits[place : place + 2], 16) / 255 for place in (0, 2, 4))
    except ValueError:
        return None
