"""The outline of a room's outline: sides or points, and what stands at the walls."""

from lacunar.exchange import fields, shaped_fields, survey_fields
from lacunar.exchange.schema_base import SpecSchema
from lacunar.model import limits


class OutlineSideSchema(SpecSchema):
    """One side of a room."""

    needed = ("length",)

    length = fields.Distance("From corner to corner, at what the room was measured to.")
    corner = fields.Degrees(
        "The angle inside the room at the end of this side: 90 if left out, 270 at a corner that"
        " juts into the room."
    )


class CheckDiagonalSchema(SpecSchema):
    """What was measured from one corner to another."""

    needed = ("from_corner", "to_corner", "length")

    from_corner = fields.Count("Corner 1 is where the first side starts, corner 2 its end.")
    to_corner = fields.Count("The corner it was measured to.")
    length = fields.Distance("As it was measured.")


class OutlineWallSchema(SpecSchema):
    """What stands at one of the walls beyond W1 to W4."""

    needed = ("wall", "stands")

    wall = fields.Text("The wall: W5, W6 and so on, as the answer names them.", limits.WALL_NAME)
    stands = shaped_fields.StandsOnSoffit("What stands at it: none, half or full.")


class SurfaceSchema(SpecSchema):
    """What is known of one side beyond its line."""

    needed = ("side",)

    side = fields.Count("Number of the side, 1 for the first.")
    finish = fields.Distance(
        "What is on its framing; the wall_finish of the wall of W1 to W4 that looks the same way if"
        " left out."
    )
    bow = survey_fields.Bow(
        "How far its middle stands off the line between its corners; straight if left out."
    )


class OutlineSchema(SpecSchema):
    """A room with other than four walls, or with walls that jut in, as it was measured."""

    needed_sets = (("sides",), ("points",))

    sides = fields.ListOf(
        fields.ObjectOf(OutlineSideSchema, "One side."),
        "The sides clockwise from the corner at the lower left; the first goes up the plan.",
        limits.OUTLINE_SIDES,
    )
    points = fields.ListOf(
        survey_fields.CornerPoint("A corner by x and y [length]."),
        "The corners clockwise from the one at the lower left, x to the right and y up the plan; in"
        " place of sides.",
        limits.OUTLINE_SIDES,
    )
    diagonals = fields.ListOf(
        fields.ObjectOf(CheckDiagonalSchema, "One check."),
        "What was measured from corner to corner, to check the sides by.",
        limits.OUTLINE_SIDES,
    )
    tolerance = fields.Distance("The largest gap that is shared out over the sides.")
    walls = fields.ListOf(
        fields.ObjectOf(OutlineWallSchema, "One wall."),
        "What stands at walls from W5 on, where it is not what stands at the wall of W1 to W4 that"
        " looks the same way.",
        limits.OUTLINE_SIDES,
    )
    surfaces = fields.ListOf(
        fields.ObjectOf(SurfaceSchema, "One side."),
        "Finish and bow of sides.",
        limits.OUTLINE_SIDES,
    )
