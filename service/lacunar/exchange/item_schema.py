"""The outline of ceiling items and wall features: every name, what it means, its unit."""

import re

from lacunar.exchange import fields
from lacunar.exchange.schema_base import SpecSchema
from lacunar.model import limits
from lacunar.model.ceiling_items import FeatureKind, ItemKind, ItemPattern, Mobility, Mounting
from lacunar.model.room import WALLS

WALL = re.compile("W[1-9][0-9]?")


class WallName(fields.SpecField[str]):
    """A wall by its name: W1 to W4, or one of an odd room's as the answer has it."""

    def read(self, value: object) -> str:
        """The name."""
        if not isinstance(value, str):
            raise fields.wrong_type(value, "text")
        if not WALL.fullmatch(value):
            raise fields.unknown_word(value, (*WALLS, "W5 and so on"))
        return value


class ItemSchema(SpecSchema):
    """Something in or below the ceiling that beams, mouldings and joists must keep clear of."""

    needed = ("kind",)

    kind = fields.OneOf("What it is.", ItemKind)
    name = fields.Text("What it is called on the sheets.", limits.LABEL)
    pattern = fields.OneOf("One of it, one in the middle of coffers, or a grid.", ItemPattern)
    x = fields.Distance(
        "Its center along the length run, from the datum as the room was measured; of a grid, of"
        " the item next the datum."
    )
    y = fields.Distance("Its center along the width run, likewise.")
    diameter = fields.Distance("Its size, if it is round: for a fan, the sweep of its blades.")
    length = fields.Distance("Its size along the length run, if it is not round.")
    width = fields.Distance("Its size along the width run, if it is not round.")
    clearance = fields.Distance(
        "Kept free on every side of it towards beams, mouldings, walls and other items."
    )
    mounting = fields.OneOf("Whether its body goes up between the joists.", Mounting)
    mobility = fields.OneOf("Whether it can still be moved.", Mobility)
    drop = fields.Distance("How far it hangs below the finished ceiling.")
    coffers = fields.ListOf(
        fields.Text("Id of a coffer, like A1.", limits.COFFER_ID),
        "The coffers that have one in the middle; left out, all of them.",
        limits.COFFERS_IN_ALL,
    )
    columns = fields.Count("How many there are along the length run, in a grid [count].")
    rows = fields.Count("How many there are along the width run, in a grid [count].")
    length_pitch = fields.Distance("From center to center along the length run, in a grid.")
    width_pitch = fields.Distance("From center to center along the width run, in a grid.")


class WallFeatureSchema(SpecSchema):
    """A door, window, fireplace or cabinet that beams should meet well."""

    needed = ("kind", "wall", "center", "width")

    kind = fields.OneOf("What it is.", FeatureKind)
    name = fields.Text("What it is called on the sheets.", limits.LABEL)
    wall = WallName("The wall it is at: W1 to W4, or beyond as the answer names them.")
    center = fields.Distance(
        "Its center along the wall, as the room was measured: from W1 on W2 and W4, from W4 on W1"
        " and W3; on any other wall from its finished corner next the datum, on an angled one from"
        " its start, going clockwise."
    )
    width = fields.Distance("Its width.")
    head = fields.Distance("Its upper edge above the finished floor.")
