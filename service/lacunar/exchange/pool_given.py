"""The shapes of documents with one ceiling or several, as JSON Schema."""

from lacunar.exchange.answer_schema import Json, reference
from lacunar.exchange.estimate_request import ALTERNATES, PRICES
from lacunar.exchange.stock_json import STOCK
from lacunar.exchange.strict_json import NAME
from lacunar.exchange.take_off_request import ONE, SEVERAL
from lacunar.model import limits, price_limits

CHANGES, VALUE = "ChangesGiven", "ChangedValue"
"""The names of the schemas of changes, and of what they can set."""


def ceiling_pool(ceiling: Json, beside: Json | None = None) -> Json:
    """One ceiling or several, as a take-off is asked for with; what may stand beside them."""
    several = _several(ceiling)
    one = {**ceiling, "description": "One ceiling."}
    named = ({ONE: one}, {SEVERAL: several})
    objects = [
        {
            "type": "object",
            "additionalProperties": False,
            "required": list(properties),
            "properties": {**properties, **(beside or {})},
        }
        for properties in named
    ]
    return {
        "description": "A bare spec; or an object with one ceiling or several; or a bare list.",
        "oneOf": [ceiling, *objects, several],
    }


def changes_given() -> dict[str, Json]:
    """Changes to a document, and what they can set: any JSON that is read at all, by name."""
    plain = {"type": ["null", "boolean", "number", "string"]}
    listed = {"type": "array", "items": reference(VALUE), "maxItems": limits.LIST_ITEMS}
    return {
        CHANGES: {
            "type": "object",
            "description": "Changes to a document as a JSON Merge Patch (RFC 7396).",
            "propertyNames": {"pattern": f"^{NAME}$", "maxLength": limits.NAME_CHARACTERS},
            "maxProperties": limits.OBJECT_MEMBERS,
            "additionalProperties": reference(VALUE),
        },
        VALUE: {
            "description": "What a name is set to: a list or a plain value whole, an object name by"
            " name; null takes the name out.",
            "anyOf": [plain, listed, reference(CHANGES)],
        },
    }


def _several(ceiling: Json) -> Json:
    return {
        "type": "array",
        "items": ceiling,
        "minItems": 1,
        "maxItems": limits.POOLED_CEILINGS,
        "description": "Ceilings that are pooled.",
    }


def estimate_asked(ceiling: Json, stock: Json, beside: tuple[Json, Json]) -> Json:
    """One ceiling or several, stock if any is told, a price list, and alternates.

    Parameters: schemas of one `ceiling` and of `stock`; `beside`, of a price list and of an
    alternate.
    """
    prices, alternate = beside
    shared = {
        STOCK: stock,
        PRICES: {**prices, "description": "The price list, with labor rates."},
        ALTERNATES: {
            "type": "array",
            "items": alternate,
            "maxItems": price_limits.ALTERNATES,
            "description": f"Other ways to do or to buy it. At most {price_limits.ALTERNATES}.",
        },
    }
    named = ({ONE: {**ceiling, "description": "One ceiling."}}, {SEVERAL: _several(ceiling)})
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
