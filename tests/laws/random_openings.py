"""Openings as they might be measured in a layout: near the plan, some crooked, some half told."""

import math
from random import Random

from lacunar.layout.records import Coffer, Layout

Spec = dict[str, object]


def measured(layout: Layout, random: Random, *, crooked: float = 0.5) -> Spec:
    """A section of measured openings for some coffers of a layout, in sixty-fourths of an inch."""
    coffers = [
        _coffer(coffer, random, crooked) for coffer in layout.coffers if random.random() < 0.7
    ]
    section: Spec = {"grid": layout.grid_id, "coffers": coffers}
    if random.random() < 0.5:
        section["out_of_square"] = random.choice(("coped_in_place", "mitred_to_corners"))
    if random.random() < 0.3:
        section["out_of_square_limit"] = random.choice(('1/16"', '1/4"', "5 mm"))
    return section


def _coffer(coffer: Coffer, random: Random, crooked: float) -> Spec:
    off = 0.75 if random.random() < crooked else 0.05
    points = [
        complex(float(corner.x.inches), float(corner.y.inches))
        + complex(random.uniform(-off, off), random.uniform(-off, off))
        for corner in coffer.corners
    ]
    names = ("W4", "W3", "W2", "W1")
    sides = {
        name: _taped(abs(points[(number + 1) % 4] - points[number]))
        for number, name in enumerate(names)
    }
    diagonals = {
        "rising": _taped(abs(points[2] - points[0])),
        "falling": _taped(abs(points[3] - points[1])),
    }
    told: Spec = {"coffer": coffer.id}
    if random.random() < 0.15:
        del sides[random.choice(names)]
    told["sides"] = sides
    kept = random.choice((("rising",), ("falling",), ("rising", "falling"), ()))
    if kept:
        told["diagonals"] = {name: diagonals[name] for name in kept}
    return told


def _taped(inches: float) -> str:
    """As read off a tape, to 1/64 in."""
    whole, part = divmod(math.floor(inches * 64 + 0.5), 64)
    return f'{whole} {part}/64"' if part else f'{whole}"'
