"""A survey out of the parts of a spec, and back as the part that says everything."""

from collections.abc import Callable, Mapping
from typing import Any

from lacunar.measure.length import ZERO, Length
from lacunar.model.room import WALLS
from lacunar.model.survey import (
    CORNERS,
    Crooked,
    CrookedSpec,
    DiagonalsSpec,
    GridMode,
    Survey,
    SurveySpec,
)

Json = dict[str, Any]
Write = Callable[[Length], str]


def surveyed(parts: Mapping[str, Any]) -> Json:
    """Turn the parts of a room into its survey, and what is said of the grid in it."""
    found: Json = {}
    if "survey" in parts:
        survey = parts["survey"]
        diagonals = DiagonalsSpec(**survey["diagonals"]) if "diagonals" in survey else None
        found["survey"] = SurveySpec(**{**survey, "diagonals": diagonals})
    if "crooked" in parts:
        found["crooked"] = CrookedSpec(**parts["crooked"])
    return found


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
            wall: bow_json(bow, write) for wall, bow in zip(WALLS, survey.bows, strict=True) if bow
        },
    }
    return {
        **{name: part for name, part in parts.items() if part},
        "tolerance": write(survey.tolerance),
    }


def bow_json(bow: Length, write: Write) -> Json:
    """Turn what a wall bows, above zero into the room, into what it was read from."""
    return {"in" if bow > ZERO else "out": write(abs(bow))}


def crooked_json(crooked: Crooked, write: Write) -> Json:
    """Turn what holds of the grid in a surveyed room into what it is read from."""
    of_the_mode = {"control": crooked.control, "excess": str(crooked.excess)}
    if crooked.mode is GridMode.FOLLOW_WALLS:
        of_the_mode = {
            "out_of_square": str(crooked.out_of_square),
            "out_of_square_limit": write(crooked.out_of_square_limit),
        }
    return {
        "mode": str(crooked.mode),
        **of_the_mode,
        "visible_taper": write(crooked.visible_taper),
    }
