"""A query for saw settings: its names and values to values of the model, or every fault."""

from collections.abc import Mapping
from typing import Any

from marshmallow import ValidationError

from lacunar.exchange import fields
from lacunar.exchange.fields import reading_in
from lacunar.exchange.spec_json import faults_from
from lacunar.exchange.spec_schema import SpecSchema
from lacunar.measure.units import Units
from lacunar.model.faults import SpecRefused


class SawQuery(SpecSchema):
    """A corner and a crown, and the saw they are cut on."""

    spring_from_wall = fields.Degrees(
        "The angle between the crown's flat back and the wall: of crown sold as 38/52, 38."
    )
    corner = fields.Degrees(
        "The angle between the walls, measured inside the room: 90 is square, past 180 an outside"
        " corner."
    )
    face = fields.Distance("Width across the crown's face, for its drop and projection.")
    most_miter = fields.Degrees("How far the saw's table turns from a square cut.")
    most_bevel = fields.Degrees("How far the saw's blade tilts from upright.")
    units = fields.OneOf("The units of bare numbers, and of the answer.", Units)
    mark_to = fields.MarkStep("The step lengths are rounded to in words, like 1/16 or 1 mm.")


_SCHEMA = SawQuery()


def read_saw_query(values: Mapping[str, str]) -> Mapping[str, Any]:
    """Turn what was asked, as text by name, into what the schema reads.

    Raises `SpecRefused` with every fault; pointers are into the query seen as one object.
    """
    named = values.get("units", Units.INCH)
    units = Units(named) if named in tuple(Units) else Units.INCH
    try:
        with reading_in(units):
            read: Mapping[str, Any] = _SCHEMA.load(dict(values))
    except ValidationError as error:
        raise SpecRefused(faults_from(error.messages)) from None
    return read
