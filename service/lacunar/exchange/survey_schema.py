"""The outline of a survey, and of how a grid lies in a crooked room."""

from lacunar.exchange import fields, survey_fields
from lacunar.exchange.schema_base import SpecSchema
from lacunar.model import limits
from lacunar.model.openings import OutOfSquare
from lacunar.model.survey import Excess, GridMode


class DiagonalsSchema(SpecSchema):
    """What was measured from corner to corner."""

    rising = fields.Distance("From the corner of W4 and W1, the datum, to that of W2 and W3.")
    falling = fields.Distance("From the corner of W1 and W2 to that of W3 and W4.")


class SurveySchema(SpecSchema):
    """A room with four walls as it was measured: sides with diagonals or angles, or points."""

    needed_sets = (("sides",), ("points",))

    sides = survey_fields.WallLengths(
        "The four sides [length], an object with W1 to W4. Alone they do not fix the shape: give a"
        " diagonal, both, or the angles."
    )
    diagonals = fields.ObjectOf(
        DiagonalsSchema, "Diagonals: one fixes the shape of four sides, a second one checks it."
    )
    angles = survey_fields.CornerAngles(
        "The four corner angles inside the room [degrees], an object named by the walls that meet."
    )
    points = survey_fields.CornerPoints(
        "The four corners by x and y [length], an object named by the walls that meet there."
    )
    bows = survey_fields.WallBows(
        "How far the middle of a wall stands off the line between its ends [length], an object with"
        " those walls that bow, each in or out."
    )
    tolerance = fields.Distance("The largest closing error that is shared out.")


class CrookedSchema(SpecSchema):
    """How the grid lies in a surveyed room."""

    mode = fields.OneOf(
        "keep_square: equal coffers, square to a control line; follow_walls: each wall's line"
        " divided by itself, so that coffers taper.",
        GridMode,
    )
    control = survey_fields.ControlLine(
        "What the grid is square to: a wall, or a member by its name. With keep_square alone.",
        limits.LABEL,
    )
    excess = fields.OneOf(
        "What the room has beyond its clear lines: at the end where it lies, or split, half to"
        " each end. With keep_square alone.",
        Excess,
    )
    visible_taper = fields.Distance("From where on a taper at a wall is told as one that is seen.")
    out_of_square = fields.OneOf(
        "How crown goes into coffers that are out of square. With follow_walls alone.",
        OutOfSquare,
    )
    out_of_square_limit = fields.Distance(
        "Up to where a coffer takes square frames and panels all the same: how far a side stands"
        " off square at its other end. With follow_walls alone."
    )
