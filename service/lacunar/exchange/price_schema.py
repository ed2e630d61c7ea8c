"""The outline of a price list: every name it may have, what it means, its unit."""

from decimal import Decimal
from fractions import Fraction
from re import compile as pattern
from typing import Any

from lacunar.exchange import fields
from lacunar.exchange.cutting_schema import YesNo
from lacunar.exchange.fields import SpecField, refusal, wrong_type
from lacunar.exchange.json_pointer import shown
from lacunar.exchange.schema_base import SpecSchema
from lacunar.measure.units import Units
from lacunar.model import price_limits as limits
from lacunar.model.cutting_limits import MATERIAL_NAME
from lacunar.takeoff.estimate.said import TaxedOn
from lacunar.takeoff.estimate.words import LaborPer, MaterialPer, OtherPer, Work
from lacunar.takeoff.part_records import MaterialKind

UNIT_PRICE = r"[0-9]{1,8}(\.[0-9]{1,4})?"
"""How the price of one is written as text."""

_UNIT_PRICE = pattern(UNIT_PRICE + r"\Z")
_FINEST = 10**limits.PRICE_DECIMALS
_TAXED = "Whether tax is worked out on it too."


class UnitPrice(SpecField[Decimal]):
    """What one costs, in the list's currency."""

    def __init__(self, description: str) -> None:
        super().__init__(
            f"{description} [currency] A number, or text such as 2.85, of at most"
            f" {limits.PRICE_DECIMALS} decimals."
        )

    def read(self, value: object) -> Decimal:
        """An amount, exactly as written."""
        if isinstance(value, str) and _UNIT_PRICE.match(value):
            value = Decimal(value)
        if isinstance(value, bool) or not isinstance(value, int | Decimal):
            raise wrong_type(value, "an amount, as a number or as text such as 2.85")
        if not 0 <= value <= limits.PRICE or Fraction(value) * _FINEST % 1:
            raise refusal(
                "money_not_readable",
                f"{shown(str(value))} is no price of at most {limits.PRICE_DECIMALS} decimals up to"
                f" {limits.PRICE}.",
                f"Write a price with at most {limits.PRICE_DECIMALS} decimals.",
            )
        return Decimal(value)


class Changes(SpecField[dict[str, Any]]):
    """Changes to a document, as RFC 7396 has them."""

    def read(self, value: object) -> dict[str, Any]:
        """An object, whatever is in it."""
        if not isinstance(value, dict):
            raise wrong_type(value, "an object")
        return value


def _share(of: str) -> fields.Ratio:
    return fields.Ratio(f"{of} [ratio], like 0.1 for ten percent.")


class MaterialPriceSchema(SpecSchema):
    """What one of a material costs. It is told by its name, by its kind, or by both."""

    needed = ("per", "price")

    of = fields.Text(
        "Its name as the material list tells it, such as 1x8, Crown or finish nail, however spaced"
        " and capitalized. A name goes before a kind.",
        MATERIAL_NAME,
    )
    kind = fields.OneOf("What parts are cut from it, whatever its name.", MaterialKind)
    per = fields.OneOf(
        "What the price is for: a stick (piece), a sheet or a pack as bought, each of what is"
        " counted, or so much of what is bought.",
        MaterialPer,
    )
    length = fields.Distance(
        "By the piece or sheet: the length of the size it is the price of; left out, of any."
    )
    price = UnitPrice("What one costs.")
    taxed = YesNo(_TAXED)


class WorkSchema(SpecSchema):
    """What some work costs: a price for one, or the hours one takes."""

    needed = ("per",)

    name = fields.Text("What it is called in the estimate.", limits.NAME)
    per = fields.OneOf(
        "What it is paid by: net feet or meters of parts, pieces, joints, coffers, settings of a"
        " saw; or so many hours.",
        LaborPer,
    )
    of = fields.ListOf(
        fields.OneOf("A kind of part, of joint, or of setting.", Work),
        "What is counted: by foot, meter and piece, kinds of parts; by joint, of joints; by set_up,"
        " of settings; left out, all of these. Long edges that are mitred (mitred_edge) go by foot"
        " and meter, where they are named. By coffer and hour, the parts that are paid for.",
        limits.WORK_WORDS,
    )
    price = UnitPrice("What one costs.")
    hours = fields.Ratio("How long one takes [hours].")
    rate = UnitPrice("What an hour of it costs, if not the rate of all labor.")
    quantity = fields.Ratio("By the hour: how many [hours].")
    taxed = YesNo(_TAXED)


class LaborSchema(SpecSchema):
    """Labor rates."""

    rate = UnitPrice("What an hour costs.")
    frame_share = fields.Ratio(
        "What crown as bench frames takes of the time, or price, of coping it in place, joint by"
        " joint [ratio]. Where only one of crown_cope and crown_miter is priced by the joint, it"
        " gives the other; left out, half, which is listed as assumed."
    )
    work = fields.ListOf(
        fields.ObjectOf(WorkSchema, "Some work."), "What work costs.", limits.WORK_ROWS
    )


class OtherSchema(SpecSchema):
    """What else the job costs."""

    needed = ("name", "per", "price")

    name = fields.Text("What it is called in the estimate.", limits.NAME)
    per = fields.OneOf("What the price is for.", OtherPer)
    price = UnitPrice("What one costs.")
    quantity = fields.Ratio("By each and by the hour: how many [number of per].")
    taxed = YesNo(_TAXED)


class TaxSchema(SpecSchema):
    """Tax on the lines that say they are taxed; what is taxed is a matter of local law."""

    needed = ("rate",)

    rate = _share("What is taken of what is taxable")
    on = fields.OneOf(
        "cost: of lines as they cost; price: with their share of all that is added to direct cost.",
        TaxedOn,
    )


class PriceListSchema(SpecSchema):
    """Prices, labor rates, and what is added to them. Nothing is priced that stands in none."""

    needed = ("currency",)

    currency = fields.Text("Its ISO 4217 code, such as USD.", limits.CURRENCY)
    units = fields.OneOf("What a length without a unit counts.", Units)
    materials = fields.ListOf(
        fields.ObjectOf(MaterialPriceSchema, "A price."),
        "Prices of materials.",
        limits.MATERIAL_PRICES,
    )
    labor = fields.ObjectOf(LaborSchema, "Labor rates.")
    others = fields.ListOf(
        fields.ObjectOf(OtherSchema, "Something else."),
        "What else the job costs: delivery, disposal, protection, other trades.",
        limits.OTHER_ROWS,
    )
    overhead = _share("What is added to direct cost")
    contingency = _share("What is then added to direct cost and overhead")
    markup = _share("What is then added to cost, as a share of cost")
    margin = _share("What is then earned, as a share of the price; in place of markup")
    tax = fields.ObjectOf(TaxSchema, "Tax on flagged lines, added last.")


class AlternateSchema(SpecSchema):
    """Another way to do or to buy it: changes to every ceiling, to stock, to the price list."""

    needed = ("name",)

    name = fields.Text("What it is called.", limits.NAME)
    changes = Changes(
        "Laid over each ceiling's spec as a JSON Merge Patch (RFC 7396): objects name by name, all"
        " else whole; null takes a name out."
    )
    stock = Changes("Laid over what is said of stock in the same way.")
    prices = Changes("Laid over the price list in the same way.")
