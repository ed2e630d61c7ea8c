"""Measured openings as the part of a spec that tells them again."""

from collections.abc import Callable
from typing import Any

from lacunar.exchange.outline_json import diagonals_json
from lacunar.measure.length import Length
from lacunar.model.openings import MeasuredCoffer, Openings
from lacunar.model.room import WALLS

Json = dict[str, Any]
Write = Callable[[Length], str]


def openings_to_json(openings: Openings, write: Write) -> Json:
    """Turn measured openings into their section of a spec; `write` writes a length."""
    return {
        "grid": openings.grid,
        "coffers": [_coffer(each, write) for each in openings.coffers],
        "out_of_square_limit": write(openings.out_of_square_limit),
        "closing_limit": write(openings.closing_limit),
        "difference_limit": write(openings.difference_limit),
        "out_of_square": str(openings.out_of_square),
    }


def _coffer(measured: MeasuredCoffer, write: Write) -> Json:
    """What was not measured is left out, and an object of which nothing was."""
    sides = dict(zip(WALLS, measured.sides, strict=True))
    diagonals = {"rising": measured.rising, "falling": measured.falling}
    told = {
        name: {each: write(length) for each, length in lengths.items() if length is not None}
        for name, lengths in (("sides", sides), ("diagonals", diagonals))
    }
    cut = {
        "cut_sides": [
            {"side": each.side, "length": write(each.length)}
            for each in measured.cut_sides
            if each.length is not None
        ],
        "cut_diagonals": diagonals_json(measured.cut_diagonals, write),
    }
    parts = {**told, **cut}
    return {"coffer": measured.coffer, **{name: each for name, each in parts.items() if each}}
