"""The shape of what an estimate is asked for with, as JSON Schema."""

from lacunar.exchange.answer_schema import Json
from lacunar.exchange.estimate_request import ALTERNATES, PRICES
from lacunar.exchange.stock_json import STOCK
from lacunar.exchange.take_off_request import ONE, SEVERAL
from lacunar.model import price_limits as limits


def estimate_asked(ceiling: Json, several: Json, stock: Json, beside: tuple[Json, Json]) -> Json:
    """One ceiling or several, stock if any is told, a price list, and alternates.

    Parameters: schemas of one `ceiling`, of `several`, of `stock`; `beside`, of a price list and of
    an alternate.
    """
    prices, alternate = beside
    shared = {
        STOCK: {**stock, "description": "What is sold and on hand; left out, usual stock."},
        PRICES: {**prices, "description": "The price list, with labor rates."},
        ALTERNATES: {
            "type": "array",
            "items": alternate,
            "maxItems": limits.ALTERNATES,
            "description": f"Other ways to do or to buy it. At most {limits.ALTERNATES}.",
        },
    }
    named = ({ONE: {**ceiling, "description": "One ceiling."}}, {SEVERAL: several})
    return {
        "description": "One ceiling or several that are pooled, with prices.",
        "oneOf": [
            {
                "type": "object",
                "additionalProperties": False,
                "required": [*properties, PRICES],
                "properties": {**properties, **shared},
            }
            for properties in named
        ],
    }
