"""A question about the boards of one opening: every name it may have, and how it is read."""

from collections.abc import Mapping
from typing import Any, ClassVar

from marshmallow import ValidationError

from lacunar.exchange import fields, panel_fields
from lacunar.exchange.fields import reading_in
from lacunar.exchange.spec_json import faults_from
from lacunar.exchange.spec_schema import MovementSchema, SpecSchema
from lacunar.measure.units import Units
from lacunar.model.boards import BoardName, CenteredOn
from lacunar.model.faults import Fault, SpecRefused

_MOVEMENT = MovementSchema()


class BoardsQuery(SpecSchema):
    """One opening and the boards across it; what moves them stands flat beside the rest."""

    needed: ClassVar[tuple[str, ...]] = ("opening",)

    opening = fields.Distance("What the courses lie across, between the faces they end at.")
    length = fields.Distance("How long each board is.")
    board = fields.OneOf("A nominal size whose face cover is published.", BoardName)
    cover = fields.Distance("The face that one board covers.")
    tongue = fields.Distance("What a board is wider than it covers.")
    gap = fields.Distance("Left open at both edges.")
    centered_on = fields.OneOf(
        "What lies on the middle line; left out, whichever gives wider edge boards.", CenteredOn
    )
    species = _MOVEMENT.declared_fields["species"]
    cut = _MOVEMENT.declared_fields["cut"]
    coefficient = _MOVEMENT.declared_fields["coefficient"]
    fastening = _MOVEMENT.declared_fields["fastening"]
    now = panel_fields.WoodMoisture("Moisture of the boards when they go up.")
    driest = panel_fields.WoodMoisture("Their least moisture in the years to come.")
    dampest = panel_fields.WoodMoisture("Their greatest moisture in the years to come.")
    trim_cover = fields.Distance("How far the trim reaches over the boards from where they end.")
    units = fields.OneOf("The units of bare numbers, and of the answer.", Units)
    mark_to = fields.MarkStep("The step that texts are rounded to, like 1/16 or 1 mm.")


_SCHEMA = BoardsQuery()
DESCRIPTIONS: Mapping[str, str] = {
    name: field.metadata["description"] for name, field in _SCHEMA.fields.items()
}


def read_boards_query(values: Mapping[str, str]) -> Mapping[str, Any]:
    """Turn the texts of a question into what its schema reads.

    Raises `SpecRefused` with every fault; pointers are into the question seen as one object.
    """
    faults = [
        Fault(
            code="name_missing",
            pointer=f"/{name}",
            message=f"{name} is not given, and cannot be assumed.",
            remedy=f"Give {name}.",
        )
        for name in BoardsQuery.needed
        if name not in values
    ]
    units = values.get("units", "")
    read: Mapping[str, Any] = {}
    with reading_in(Units(units) if units in tuple(Units) else Units.INCH):
        try:
            read = _SCHEMA.load(dict(values))
        except ValidationError as error:
            faults.extend(faults_from(error.messages))
    if faults:
        raise SpecRefused(faults)
    return read
