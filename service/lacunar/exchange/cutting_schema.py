"""The outline of a cutting problem: every name it may have, what it means, its unit."""

from decimal import Decimal
from fractions import Fraction
from re import compile as pattern

from lacunar.exchange import fields
from lacunar.exchange.fields import SpecField, refusal, wrong_type
from lacunar.exchange.json_pointer import shown
from lacunar.exchange.schema_base import SpecSchema
from lacunar.measure.units import Units
from lacunar.model import cutting_limits as limits
from lacunar.takeoff.cutting.asked import EffortWord, Grain, SecondAim, Section

MONEY = r"[0-9]{1,7}(\.[0-9]{1,2})?"
"""How an amount is written as text."""

_MONEY = pattern(MONEY + r"\Z")
_MATERIAL = (
    "Cross-section and material, such as 1x6 poplar, in your own words; pieces are cut only from"
    " stock of the same one. Left out, it is one material without a name."
)


class Money(SpecField[int]):
    """An amount of money, in whole cents or hundredths."""

    def __init__(self, description: str) -> None:
        super().__init__(f"{description} A number, or text such as 11.49, of at most 2 decimals.")

    def read(self, value: object) -> int:
        """Cents, exactly as written."""
        if isinstance(value, str) and _MONEY.match(value):
            value = Decimal(value)
        if isinstance(value, bool) or not isinstance(value, int | Decimal):
            raise wrong_type(value, "an amount, as a number or as text such as 11.49")
        cents = Fraction(value) * 100
        if not 0 <= cents <= limits.MONEY_CENTS or cents % 1:
            raise refusal(
                "money_not_readable",
                f"{shown(str(value))} is no amount of at most two decimals up to"
                f" {limits.MONEY_CENTS // 100}.",
                "Write an amount with at most two decimals.",
            )
        return int(cents)


class YesNo(SpecField[bool]):
    """true or false."""

    def read(self, value: object) -> bool:
        """A bool."""
        if not isinstance(value, bool):
            raise wrong_type(value, "true or false")
        return value


class StockLengthSchema(SpecSchema):
    """A length of stock that can be bought."""

    needed = ("length",)

    id = fields.Text("What it is called in the plan; left out, S1 and so on.", limits.CUT_ID)
    material = fields.Text(_MATERIAL, limits.MATERIAL_NAME)
    length = fields.Distance("How long it is sold.")
    price = Money("What one costs. Left out throughout, as little length as can be is bought.")
    supply = fields.Count("How many there are; left out, as many as wanted.")


class OffcutSchema(SpecSchema):
    """Lengths on hand, which need not be bought."""

    needed = ("length",)

    id = fields.Text("What it is called in the plan; left out, S1 and so on.", limits.CUT_ID)
    material = fields.Text(_MATERIAL, limits.MATERIAL_NAME)
    length = fields.Distance("How long it is.")
    quantity = fields.Count("How many there are; left out, one.")
    salvage_value = Money("What one is worth if it is kept for another job.")


class CutPieceSchema(SpecSchema):
    """Pieces of one length that are wanted."""

    needed = ("length", "quantity")

    id = fields.Text("What it is called in the plan; left out, P1 and so on.", limits.CUT_ID)
    material = fields.Text(_MATERIAL, limits.MATERIAL_NAME)
    length = fields.Distance("How long each is, along its longest edge.")
    quantity = fields.Count("How many are wanted.")


class MaterialSchema(SpecSchema):
    """How the pieces of a material are cut at their ends, where that is not square."""

    needed = ("name",)

    name = fields.Text("The material, as pieces and stock name it.", limits.MATERIAL_NAME)
    section = fields.OneOf(
        "square: a stick may be turned over; sprung: as crown, it may not.", Section
    )
    miter = fields.Degrees(
        "How far both ends of every piece are turned from a square cut; the saw cut is longer."
    )
    width = fields.Distance("The face that the miter goes across.")
    nested = YesNo(
        "Every other piece is turned over, so that two pieces share one mitred cut. Only for square"
        " sections whose faces are alike."
    )


class StockSheetSchema(SpecSchema):
    """A sheet that can be bought; its grain lies along its length."""

    needed = ("length", "width")

    id = fields.Text("What it is called in the plan; left out, SH1 and so on.", limits.CUT_ID)
    material = fields.Text(_MATERIAL, limits.MATERIAL_NAME)
    length = fields.Distance("Its edge along the grain.")
    width = fields.Distance("Its edge across the grain.")
    price = Money("What one costs. Left out throughout, as little area as can be is bought.")
    supply = fields.Count("How many there are; left out, as many as wanted.")


class CutPanelSchema(SpecSchema):
    """Panels of one size that are wanted."""

    needed = ("length", "width", "quantity")

    id = fields.Text("What it is called in the plan; left out, N1 and so on.", limits.CUT_ID)
    material = fields.Text(_MATERIAL, limits.MATERIAL_NAME)
    length = fields.Distance("One of its edges.")
    width = fields.Distance("Its other edge.")
    quantity = fields.Count("How many are wanted.")
    grain = fields.OneOf("The edge that lies along the sheet's grain; free: either.", Grain)


class CuttingSchema(SpecSchema):
    """A cutting problem: pieces and the stock they are cut from, panels and sheets, or both."""

    units = fields.OneOf("What a number without a unit counts.", Units)
    mark_to = fields.MarkStep("The step that texts of lengths are rounded to, like 1/16 or 1 mm.")
    stock = fields.ListOf(
        fields.ObjectOf(StockLengthSchema, "A length that can be bought."),
        "Lengths that can be bought.",
        limits.STOCK_ENTRIES,
    )
    offcuts = fields.ListOf(
        fields.ObjectOf(OffcutSchema, "Lengths on hand."),
        "Lengths on hand, used where that is cheaper.",
        limits.OFFCUT_ENTRIES,
    )
    pieces = fields.ListOf(
        fields.ObjectOf(CutPieceSchema, "Pieces of one length."),
        "Pieces that are wanted.",
        limits.PIECE_ENTRIES,
    )
    materials = fields.ListOf(
        fields.ObjectOf(MaterialSchema, "How one material is cut."),
        "Materials whose ends are not square.",
        limits.MATERIAL_ENTRIES,
    )
    sheets = fields.ListOf(
        fields.ObjectOf(StockSheetSchema, "A sheet that can be bought."),
        "Sheets that can be bought.",
        limits.STOCK_ENTRIES,
    )
    panels = fields.ListOf(
        fields.ObjectOf(CutPanelSchema, "Panels of one size."),
        "Panels that are wanted.",
        limits.PIECE_ENTRIES,
    )
    kerf = fields.Distance("What the saw takes at each cut.")
    end_trim = fields.Distance("What comes off each end of every stick first, saw cut included.")
    edge_trim = fields.Distance("What comes off each edge of every sheet first, saw cut included.")
    usable_offcut = fields.Distance("What is left is told as usable from this length on.")
    most_lengths = fields.Count(
        "Of each material at most so many different lengths are bought; left out, any number."
        f" At most {limits.MOST_LENGTHS}."
    )
    second_aim = fields.OneOf("What decides between plans that cost the same.", SecondAim)
    effort = fields.OneOf("How much is tried: more takes longer, and proves more.", EffortWord)
