"""The name of a grid: the same for the same coffers at the same places, whatever goes into them."""

import hashlib
from collections.abc import Sequence

from lacunar.layout.records import Coffer

CHARACTERS = 10


def grid_id(coffers: Sequence[Coffer]) -> str:
    """Turn coffers into ten hexadecimal digits that tell their grid from others.

    SHA-256 over every coffer's id and corners, exactly: all that decides where openings are and how
    large they are planned, and nothing of units, marks, paper, mouldings or panels.
    """
    lines = (
        f"{coffer.id} "
        + " ".join(f"{corner.x.inches},{corner.y.inches}" for corner in coffer.corners)
        for coffer in coffers
    )
    return hashlib.sha256("\n".join(lines).encode()).hexdigest()[:CHARACTERS]
