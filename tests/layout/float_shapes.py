"""Quadrilaterals in floating point, by coordinates: another way to what the layout does by angles.

A point is a complex number; corners go counter-clockwise from the lower left one.
"""

import cmath
import math
from collections.abc import Sequence

Points = Sequence[complex]


def placed(sides: Sequence[float], rising: float) -> list[complex]:
    """The corners of four sides and the rising diagonal, by crossing circles."""
    bottom, right, top, left = sides
    lower_left, lower_right = complex(0, 0), complex(bottom, 0)
    upper_right = _crossing(lower_left, rising, lower_right, right, up=True)
    upper_left = _crossing(lower_left, left, upper_right, top, up=True)
    return [lower_left, lower_right, upper_right, upper_left]


def _crossing(
    one: complex, from_one: float, other: complex, from_other: float, *, up: bool
) -> complex:
    """Where two circles cross, to the left of the way from the first center to the second."""
    way = other - one
    apart = abs(way)
    along = (from_one**2 - from_other**2 + apart**2) / (2 * apart)
    aside = math.sqrt(max(from_one**2 - along**2, 0))
    return one + way / apart * complex(along, aside if up else -aside)


def corners(points: Points) -> list[float]:
    """The angles inside, in degrees."""
    found = []
    for number, point in enumerate(points):
        after, before = points[(number + 1) % 4] - point, points[number - 1] - point
        found.append(math.degrees(cmath.phase(before / after)) % 360)
    return found


def lengths(points: Points) -> list[float]:
    """The sides, from the lower one on."""
    return [abs(points[(number + 1) % 4] - point) for number, point in enumerate(points)]


def inset(points: Points, distance: float) -> list[complex]:
    """The quadrilateral whose sides lie so far inside, by crossing the moved lines."""
    lines = []
    for number, point in enumerate(points):
        way = points[(number + 1) % 4] - point
        lines.append((point + way / abs(way) * complex(0, distance), way))
    return [_meeting(lines[number - 1], lines[number]) for number in range(4)]


def _meeting(one: tuple[complex, complex], other: tuple[complex, complex]) -> complex:
    """Where two lines meet, each a point and a way."""
    (at, way), (at_other, way_other) = one, other
    turned = way_other.conjugate()
    part = ((at_other - at) * turned).imag / (way * turned).imag
    return at + way * part


def clipped(points: Points, low: float, high: float) -> list[complex]:
    """What of a polygon lies between two heights."""
    found = list(points)
    for height, keep_above in ((low, True), (high, False)):
        kept: list[complex] = []
        for number, point in enumerate(found):
            after = found[(number + 1) % len(found)]
            inside, next_inside = (
                (each.imag >= height) is keep_above or each.imag == height
                for each in (point, after)
            )
            if inside:
                kept.append(point)
            if inside is not next_inside:
                part = (height - point.imag) / (after.imag - point.imag)
                kept.append(point + (after - point) * part)
        found = kept
    return found


def width_at(points: Points, height: float) -> float:
    """How wide a polygon is at a height."""
    crossed = []
    for number, point in enumerate(points):
        after = points[(number + 1) % len(points)]
        if (point.imag - height) * (after.imag - height) < 0:
            part = (height - point.imag) / (after.imag - point.imag)
            crossed.append((point + (after - point) * part).real)
    return max(crossed) - min(crossed)
