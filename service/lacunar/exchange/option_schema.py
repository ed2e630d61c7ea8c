"""The outline of a search for options: within which limits a ceiling may be varied."""

from lacunar.choosing.records import Criterion
from lacunar.exchange import fields, shaped_fields
from lacunar.exchange.schema_base import SpecSchema
from lacunar.model import choosing_limits as limits
from lacunar.model.beams import Through
from lacunar.model.limits import LABEL


class CountLimitsSchema(SpecSchema):
    """How many coffers are tried along a run."""

    fewest = fields.Count("The fewest [count]; left out, one to each zone.")
    most = fields.Count("The most [count]; left out, as many as openings allow.")


def _weight(of: str) -> fields.Ratio:
    return fields.Ratio(f"Of {of} [ratio]; left out, none.")


class OptionWeightsSchema(SpecSchema):
    """How much each criterion counts; with any, options are ranked by their score."""

    squareness = _weight("how square the coffers are")
    seams = _weight("seams of sheets in panels")
    joints = _weight("joints")
    cuts = _weight("cuts")
    crown_left = _weight("crown that is bought and not used")
    cost = _weight("what is to be paid, if prices are given")
    headroom = _weight("the height left below the lowest beam")
    between_joists = _weight("backing along the joists that lies on none")
    conflicts = _weight("conflicts with ceiling items and wall features")
    off_center = _weight("how far off the features lie that are to be centered on")


assert tuple(OptionWeightsSchema().fields) == tuple(Criterion), "every criterion can be weighed"


class ChoicesSchema(SpecSchema):
    """Within which limits a ceiling may be varied.

    What the ceiling tells is kept unless it is named here; what it leaves open is varied.
    """

    length_coffers = fields.ObjectOf(
        CountLimitsSchema,
        "How many coffers are tried along the length run, also where the ceiling tells a number.",
    )
    width_coffers = fields.ObjectOf(
        CountLimitsSchema,
        "How many coffers are tried along the width run, also where the ceiling tells a number.",
    )
    smallest_opening = fields.Distance("No smaller clear opening is tried.")
    largest_opening = fields.Distance("No larger clear opening is tried.")
    walls = fields.ListOf(
        shaped_fields.StandsOnSoffit("What stands at both walls of a run."),
        "What is tried at the walls, both of a run alike, also where the ceiling tells it; a soffit"
        " stays, and this stands on its face.",
        limits.WALL_CONDITIONS,
    )
    beam_widths = fields.ListOf(
        fields.Distance("Finished width between side faces."),
        "Widths of all beams that are tried, whatever the ceiling tells [length].",
        limits.BEAM_WIDTHS,
    )
    through = fields.ListOf(
        fields.OneOf("Which beams run through at crossings.", Through),
        "Which beams are tried to run through at crossings.",
        limits.WAYS_THROUGH,
    )
    center_on = fields.ListOf(
        fields.Text("Name of a wall feature.", LABEL),
        "Wall features that a coffer or beam should be centered on; left out, fireplaces.",
        limits.CENTERED_FEATURES,
    )
    crown_lengths = fields.ListOf(
        fields.Distance("How long a stick of crown is."),
        "Lengths crown is sold in [length]; left out, that of the longest board.",
        limits.CROWN_LENGTHS,
    )
    weights = fields.ObjectOf(OptionWeightsSchema, "How much each criterion counts.")
    most_laid_out = fields.Count(
        f"How many combinations are laid out in full, at most {limits.LAID_OUT} [count]; left out,"
        f" {limits.USUALLY_LAID_OUT}."
    )
    nudges_of = fields.Count(
        "Number of the option for which small changes are tried [count]; left out, of none."
    )
