"""Rooms as `random_specs` gives them, surveyed and out of square: the same ones on every run.

The rooms are those of the plain specs with another seed, so that what is in them is what comes in
elsewhere too; only length and width give way to what was taped of four crooked walls.
"""

from collections.abc import Iterator
from fractions import Fraction
from math import acos, degrees, dist, hypot
from random import Random
from typing import Any

from tests.laws.random_specs import Spec, random_specs

CORNERS = ("W4-W1", "W3-W4", "W2-W3", "W1-W2")
WALLS = ("W1", "W2", "W3", "W4")
MOST_SKEW = Fraction(2, 240)
"""How far a corner is off, of the room's longer way: 2 in in 20 ft."""

Places = list[tuple[float, float]]


def random_surveys(count: int, seed: int) -> Iterator[Spec]:
    """So many specs of surveyed rooms, always the same ones for a seed."""
    for number, spec in enumerate(random_specs(count, seed)):
        _survey(spec, Random(f"survey {seed}:{number}"))
        _lie(spec, Random(f"crooked {seed}:{number}"))
        yield spec


def _lie(spec: dict[str, Any], chance: Random) -> None:
    """Lay the grid along the walls, or square to a member, or share the excess, now and then.

    By a chance of its own, so that the surveys of a seed stay what they were.
    """
    room = spec["room"]
    way = chance.random()
    if way < 0.4:
        room["crooked"] = {"mode": "follow_walls"}
        if chance.random() < 0.5:
            room["crooked"]["out_of_square"] = "mitred_to_corners"
        for run in spec["grid"].values():
            # A bare wall takes part in a grid along the walls like any other.
            if chance.random() < 0.2:
                run[chance.choice(("start", "end"))] = "none"
    elif way < 0.6:
        room.setdefault("crooked", {})["excess"] = "split"
    elif way < 0.8 and room.get("members"):
        member = chance.choice(room["members"])
        member.setdefault("name", "M1")
        room.setdefault("crooked", {})["control"] = member["name"]


def _survey(spec: dict[str, Any], chance: Random) -> None:
    """Put a survey in place of a room's length and width."""
    room, metric = spec["room"], spec["units"] == "mm"
    sizes = [_inches(room.pop(run), metric=metric) for run in ("length", "width")]
    corners = _corners(sizes, chance)
    survey: Spec = chance.choice((_taped, _taped, _angled, _plotted))(corners, chance, metric)
    if chance.random() < 0.3:
        way = chance.choice(("in", "out"))
        survey["bows"] = {chance.choice(WALLS): {way: _tape(chance.randint(1, 6) / 16, metric)}}
    room["survey"] = survey
    if chance.random() < 0.7:
        room["crooked"] = {"control": chance.choice(WALLS)}
    for run in spec["grid"].values():
        for end in ("start", "end"):
            # Nothing at a wall takes up what is crooked there, so that most such rooms are refused.
            if run.get(end) == "none" and chance.random() < 0.9:
                run[end] = "half"


def _inches(length: object, *, metric: bool) -> float:
    """A length in any of the notations that the plain specs write it in."""
    if not isinstance(length, str):
        return float(str(length)) / (25.4 if metric else 1)
    if length.endswith("m"):
        number, unit = length.split()
        return float(number) * (1000 if unit == "m" else 1) / 25.4
    feet, _, inches = length.rpartition("'")
    parts = inches.strip(' -"').split()
    return float(feet or 0) * 12 + float(sum(Fraction(part) for part in parts))


def _corners(sizes: list[float], chance: Random) -> Places:
    """The corners counter-clockwise from the datum, each up to so much off."""
    length, width = sizes
    most = float(MOST_SKEW) * max(sizes) * chance.choice((0.2, 0.5, 1.0))
    square = ((0.0, 0.0), (length, 0.0), (length, width), (0.0, width))
    return [(x + chance.uniform(-most, most), y + chance.uniform(-most, most)) for x, y in square]


def _tape(inches: float, metric: bool) -> object:
    """What a tape shows: sixteenths, or millimeters."""
    return f"{round(inches * 25.4)} mm" if metric else f"{Fraction(round(inches * 16), 16)} in"


def _sides(corners: Places, metric: bool) -> dict[str, object]:
    pairs = {"W1": (3, 0), "W2": (2, 3), "W3": (1, 2), "W4": (0, 1)}
    return {wall: _tape(dist(corners[a], corners[b]), metric) for wall, (a, b) in pairs.items()}


def _taped(corners: Places, chance: Random, metric: bool) -> Spec:
    """Four sides with a diagonal, or both."""
    diagonals = {"rising": dist(corners[0], corners[2]), "falling": dist(corners[1], corners[3])}
    for name in chance.choice(((), ("rising",), ("falling",))):
        del diagonals[name]
    read = {name: _tape(each, metric) for name, each in diagonals.items()}
    return {"sides": _sides(corners, metric), "diagonals": read}


def _angled(corners: Places, chance: Random, metric: bool) -> Spec:
    """Four sides with the angles of their corners, to a hundredth of a degree."""
    return {
        "sides": _sides(corners, metric),
        "angles": {name: round(_angle(corners, at), 2) for at, name in enumerate(CORNERS)},
    }


def _angle(corners: Places, at: int) -> float:
    here, before, after = corners[at], corners[at - 1], corners[(at + 1) % 4]
    one = (before[0] - here[0], before[1] - here[1])
    other = (after[0] - here[0], after[1] - here[1])
    inner = one[0] * other[0] + one[1] * other[1]
    return degrees(acos(inner / (hypot(*one) * hypot(*other))))


def _plotted(corners: Places, chance: Random, metric: bool) -> Spec:
    """Four places by their distances from two lines square to each other."""
    low = [min(corner[axis] for corner in corners) for axis in (0, 1)]
    return {
        "points": {
            name: {"x": _tape(x - low[0], metric), "y": _tape(y - low[1], metric)}
            for name, (x, y) in zip(CORNERS, corners, strict=True)
        }
    }
