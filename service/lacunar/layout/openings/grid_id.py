"""The name of a grid: the same for the same coffers at the same places, whatever goes into them."""

import hashlib
from collections.abc import Mapping, Sequence
from types import MappingProxyType

from lacunar.layout.records import Coffer, Point
from lacunar.measure.plane import Spot

CHARACTERS = 10

NONE_CUT: Mapping[str, Sequence[Spot]] = MappingProxyType({})


def grid_id(coffers: Sequence[Coffer], cut: Mapping[str, Sequence[Spot]] = NONE_CUT) -> str:
    """Turn coffers into ten hexadecimal digits that tell their grid from others.

    SHA-256 over every coffer's id and corners, exactly: all that decides where openings are and how
    large they are planned, and nothing of units, marks, paper, mouldings or panels. `cut` are the
    corners of those that walls or columns cut.
    """
    corners: dict[str, Sequence[Point | Spot]] = {coffer.id: coffer.corners for coffer in coffers}
    lines = (
        f"{name} " + " ".join(f"{corner.x.inches},{corner.y.inches}" for corner in found)
        for name, found in (*corners.items(), *cut.items())
    )
    return hashlib.sha256("\n".join(lines).encode()).hexdigest()[:CHARACTERS]
