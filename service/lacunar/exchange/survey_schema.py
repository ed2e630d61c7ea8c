"""The outline of a survey, and of how a grid lies in a crooked room."""

from lacunar.exchange import fields, survey_fields
from lacunar.exchange.schema_base import SpecSchema
from lacunar.model.survey import Wall


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

    control = fields.OneOf("The wall the grid is square to.", Wall)
    visible_taper = fields.Distance("From where on a taper at a wall is told as one that is seen.")
