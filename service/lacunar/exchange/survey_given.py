"""The shape of a survey's values, as JSON Schema."""

from collections.abc import Sequence
from typing import Any

from lacunar.exchange import fields
from lacunar.exchange.answer_schema import Json, reference
from lacunar.model.room import WALLS
from lacunar.model.survey import CORNERS

_LENGTH = reference("LengthGiven")


def _each(names: Sequence[str], schema: Json, words: str) -> Json:
    return {name: {**schema, "description": words.format(name)} for name in names}


def _object(properties: Json, **more: object) -> Json:
    return {
        "type": "object",
        "additionalProperties": False,
        "properties": properties,
        **more,
    }


def control_line(field: Any) -> Json:
    """A wall, or the name of a member."""
    name = {
        "type": "string",
        "maxLength": field.most,
        "pattern": f"^{fields.PRINTABLE}$",
        "description": "The name of a member.",
    }
    return {"anyOf": [{"type": "string", "enum": list(WALLS)}, name]}


def wall_lengths(field: Any) -> Json:
    """A length for each wall."""
    del field
    sides = _each(WALLS, _LENGTH, "Length of wall {} [length].")
    return _object(sides, required=list(WALLS))


def corner_angles(field: Any) -> Json:
    """An angle for each corner."""
    del field
    text = {"type": "string", "pattern": f"^{fields.DEGREES}$", "examples": ["90.5"]}
    number = {"type": "number", "minimum": 0, "maximum": fields.FULL_TURN}
    angles = _each(CORNERS, {"oneOf": [number, text]}, "Angle between {}, inside [degrees].")
    return _object(angles, required=list(CORNERS))


def corner_point(field: Any) -> Json:
    """A place by x and y."""
    del field
    ways = {
        "x": {**_LENGTH, "description": "To the right on the plan [length]."},
        "y": {**_LENGTH, "description": "Up the plan [length]."},
    }
    return _object(ways, required=["x", "y"])


def corner_points(field: Any) -> Json:
    """A place for each corner."""
    point = corner_point(field)
    return _object(_each(CORNERS, point, "Where {} meet."), required=list(CORNERS))


def bow(field: Any) -> Json:
    """What a wall bows, in or out."""
    del field
    ways = {
        "in": {**_LENGTH, "description": "Into the room [length]."},
        "out": {**_LENGTH, "description": "Away from the room [length]."},
    }
    return _object(ways)


def wall_bows(field: Any) -> Json:
    """What each wall bows, in or out."""
    return _object(
        _each(
            WALLS,
            bow(field),
            "The middle of wall {} off the line between its ends.",
        )
    )
