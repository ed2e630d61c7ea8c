"""The outline of what is sold and on hand for a whole take-off: names, meanings, units."""

import re
from fractions import Fraction

from lacunar.exchange import fields
from lacunar.exchange.cutting_schema import (
    OffcutSchema,
    StockLengthSchema,
    StockSheetSchema,
)
from lacunar.exchange.fields import SpecField, wrong_type
from lacunar.exchange.schema_base import SpecSchema
from lacunar.measure.units import Units
from lacunar.model import cutting_limits as limits
from lacunar.takeoff.buying.said import PackSize, PackUnit
from lacunar.takeoff.cutting.asked import EffortWord, SecondAim

PACK = r"[0-9]{1,7}(\.[0-9]{1,4})?( ?(count|cartridge|gal|L|ft2|m2))?"
"""How what a pack holds is written."""

_PACK = re.compile(r"(?P<amount>[0-9.]+) ?(?P<unit>[A-Za-z][A-Za-z0-9]*)?")
_WHOLE = re.compile(PACK)


class PackText(SpecField[PackSize]):
    """How much a pack holds, with its unit."""

    def __init__(self, description: str) -> None:
        super().__init__(
            f"{description} [US gallons, liters, square feet, square meters, cartridges, or a"
            ' number] Text such as "1 gal", "2.5 L", "40 ft2" or "1000".'
        )

    def read(self, value: object) -> PackSize:
        """A pack, exactly as written; a number without a unit is a count."""
        if isinstance(value, str) and _WHOLE.fullmatch(value):
            match = _PACK.fullmatch(value)
            assert match is not None, value
            unit = PackUnit(match["unit"] or PackUnit.COUNT)
            return PackSize(Fraction(match["amount"]), unit)
        raise wrong_type(value, 'what a pack holds, as text such as "1000" or "2.5 L"')


class PackSchema(SpecSchema):
    """In what packs something is sold that is counted, spread or poured."""

    needed = ("of", "holds")

    of = fields.Text("What it is, as material lists name it, such as paint.", limits.MATERIAL_NAME)
    holds = PackText("How much one pack holds.")


class StockOfferSchema(SpecSchema):
    """What is sold and on hand, and how it is cut; what is not told is usual stock."""

    units = fields.OneOf("What a number without a unit counts; if not the first ceiling's.", Units)
    lengths = fields.ListOf(
        fields.ObjectOf(StockLengthSchema, "A length that can be bought."),
        "Lengths that can be bought, by the names that material lists have for materials.",
        limits.STOCK_ENTRIES,
    )
    offcuts = fields.ListOf(
        fields.ObjectOf(OffcutSchema, "Lengths on hand."),
        "Lengths on hand, used where that is cheaper.",
        limits.OFFCUT_ENTRIES,
    )
    sheets = fields.ListOf(
        fields.ObjectOf(StockSheetSchema, "A sheet that can be bought."),
        "Sheets that can be bought, by the names that material lists have for materials.",
        limits.STOCK_ENTRIES,
    )
    packs = fields.ListOf(
        fields.ObjectOf(PackSchema, "A pack."),
        "Packs of fasteners, adhesive, insulation, primer, paint and plywood skins.",
        limits.PACK_ENTRIES,
    )
    kerf = fields.Distance("What the saw takes at each cut, if not what the ceilings say.")
    end_trim = fields.Distance("What comes off each end of every stick first, saw cut included.")
    edge_trim = fields.Distance("What comes off each edge of every sheet first, saw cut included.")
    usable_offcut = fields.Distance("What is left counts as kept from this length on.")
    most_lengths = fields.Count(
        "Of each material at most so many different lengths are bought; left out, any number."
        f" At most {limits.MOST_LENGTHS}."
    )
    second_aim = fields.OneOf("What decides between plans that cost the same.", SecondAim)
    effort = fields.OneOf("How much is tried: more takes longer, and proves more.", EffortWord)
