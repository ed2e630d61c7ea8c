"""A decided survey as the part of a spec that says everything."""

from collections.abc import Callable
from typing import Any

from lacunar.measure.length import ZERO, Length
from lacunar.model.room import WALLS
from lacunar.model.survey import CORNERS, Crooked, Survey

Json = dict[str, Any]
Write = Callable[[Length], str]


def survey_json(survey: Survey, write: Write) -> Json:
    """Turn a survey into what it was read from; `write` gives a length in the spec's units."""
    diagonals = {
        name: write(length)
        for name in ("rising", "falling")
        if (length := getattr(survey.diagonals, name)) is not None
    }
    sides = dict(zip(WALLS, survey.sides or (), strict=False))
    angles = dict(zip(CORNERS, survey.angles or (), strict=False))
    points = dict(zip(CORNERS, survey.points or (), strict=False))
    parts: Json = {
        "sides": {wall: write(side) for wall, side in sides.items()},
        "diagonals": diagonals,
        "angles": {corner: angle.number for corner, angle in angles.items()},
        "points": {
            corner: {"x": write(spot.x), "y": write(spot.y)} for corner, spot in points.items()
        },
        "bows": {
            wall: {"in" if bow > ZERO else "out": write(abs(bow))}
            for wall, bow in zip(WALLS, survey.bows, strict=True)
            if bow
        },
    }
    return {
        **{name: part for name, part in parts.items() if part},
        "tolerance": write(survey.tolerance),
    }


def crooked_json(crooked: Crooked, write: Write) -> Json:
    """Turn what holds of the grid in a surveyed room into what it is read from."""
    return {"control": str(crooked.control), "visible_taper": write(crooked.visible_taper)}
