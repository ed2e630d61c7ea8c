"""The outline of measured openings: every name they may have, what it means, its unit."""

from lacunar.exchange import fields
from lacunar.exchange.outline_schema import CheckDiagonalSchema
from lacunar.exchange.schema_base import SpecSchema
from lacunar.model import limits
from lacunar.model.openings import OutOfSquare


class MeasuredSidesSchema(SpecSchema):
    """The sides of a coffer as measured, by the wall each lies towards."""

    W1 = fields.Distance("The side towards wall W1.")
    W2 = fields.Distance("The side towards wall W2.")
    W3 = fields.Distance("The side towards wall W3.")
    W4 = fields.Distance("The side towards wall W4.")


class MeasuredDiagonalsSchema(SpecSchema):
    """The diagonals of a coffer as measured, as they lie on the plan."""

    rising = fields.Distance("From the corner of W4 and W1 to that of W2 and W3.")
    falling = fields.Distance("From the corner of W1 and W2 to that of W3 and W4.")


class CutSideSchema(SpecSchema):
    """What was measured along a side of a coffer that walls or columns cut."""

    needed = ("side", "length")

    side = fields.Count("Number of the side in the answer, 1 for the first.")
    length = fields.Distance("From corner to corner, between finished faces.")


class MeasuredCofferSchema(SpecSchema):
    """One coffer as measured; what was not measured is left out."""

    needed = ("coffer",)

    coffer = fields.Text("Its id, row letter and column number.", limits.COFFER_ID)
    sides = fields.ObjectOf(MeasuredSidesSchema, "Its sides between the beams' finished faces.")
    diagonals = fields.ObjectOf(
        MeasuredDiagonalsSchema, "Its diagonals: one tells its corners, both prove the tape."
    )
    cut_sides = fields.ListOf(
        fields.ObjectOf(CutSideSchema, "One side."),
        "Of a cut coffer, in place of sides and diagonals: what was measured along its sides.",
        limits.OUTLINE_SIDES,
    )
    cut_diagonals = fields.ListOf(
        fields.ObjectOf(CheckDiagonalSchema, "One diagonal."),
        "Of a cut coffer: what was measured from corner to corner, side 1 starting at corner 1.",
        limits.OUTLINE_SIDES,
    )


class MeasuredOpeningsSchema(SpecSchema):
    """Coffers measured once the beams are up: frames, panels and boards are cut from these."""

    needed = ("grid", "coffers")

    grid = fields.Text(
        "The grid they were measured in: the `grid_id` of the layout that was built.",
        limits.GRID_ID,
    )
    coffers = fields.ListOf(
        fields.ObjectOf(MeasuredCofferSchema, "One coffer."),
        "The coffers that were measured.",
        limits.COFFERS_IN_ALL,
    )
    out_of_square_limit = fields.Distance(
        "How far a side may stand off square at its other end for a square frame to be fitted."
    )
    closing_limit = fields.Distance("How far two diagonals of a coffer may contradict each other.")
    difference_limit = fields.Distance("From what difference between size and plan to caution.")
    out_of_square = fields.OneOf(
        "How crown goes into a coffer beyond that limit, in place of a square frame.", OutOfSquare
    )
