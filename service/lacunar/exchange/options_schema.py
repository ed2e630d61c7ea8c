"""The shape of what options are asked for with, and of the answer."""

from lacunar.exchange.answer_schema import Json, reference
from lacunar.exchange.estimate_request import PRICES
from lacunar.exchange.option_request import CHOICES
from lacunar.exchange.stock_json import STOCK
from lacunar.exchange.take_off_request import ONE
from lacunar.measure.rounding import STEPS
from lacunar.measure.units import Units


def options_asked_schema(ceiling: Json, choices: Json, buying: tuple[Json, Json]) -> Json:
    """One ceiling, alone or with the limits within which it may be varied, prices and stock.

    Parameters: schemas of a `ceiling` and of `choices`; `buying`, of a price list and of stock.
    """
    prices, stock = buying
    properties = {
        ONE: {**ceiling, "description": "The ceiling."},
        CHOICES: {**choices, "description": "Within which limits it may be varied."},
        PRICES: {**prices, "description": "The price list that tells what options cost."},
        STOCK: {**stock, "description": "What is sold and on hand; only with prices."},
    }
    both = {
        "type": "object",
        "additionalProperties": False,
        "required": [ONE],
        "properties": properties,
    }
    return {
        "description": "A bare spec; or an object with the ceiling, its choices, and prices.",
        "oneOf": [ceiling, both],
    }


def options_schema(option: Json, engine: Json) -> Json:
    """The whole answer.

    Parameters: `option`, the schema of its record; `engine`, the member that names the engine.
    """
    properties = {
        "units": {
            "type": "string",
            "enum": list(Units),
            "description": "The units texts and exact values are told in.",
        },
        "mark_to": {
            "type": "string",
            "enum": [step.text for step in STEPS],
            "description": "The step texts of lengths are rounded to.",
        },
        "counts": {**reference("SearchCounts"), "description": "What was looked at."},
        "options": {
            "type": "array",
            "items": _told(option),
            "description": "Those worth considering, in their order.",
        },
        "nudges": {
            "anyOf": [reference("Nudges"), {"type": "null"}],
            "description": "What small changes of one option come to; null where none is named.",
        },
        "not_searched": _list("NotSearched", "What the search leaves out."),
        "assumptions": _list("Assumption", "What was left open, of the search and of the options."),
        "digest": {
            "type": "string",
            "pattern": "^[0-9a-f]{64}$",
            "description": "Hash of the ceiling as it was sent, with nothing left open.",
        },
        **engine,
    }
    words = "Layouts of a ceiling that are worth considering, and what was not searched."
    return {
        "type": "object",
        "description": words,
        "required": list(properties),
        "properties": properties,
    }


def _told(option: Json) -> Json:
    """An option with its sentences and the ceiling it asks for."""
    more = {
        "why": {
            "type": "array",
            "items": {"type": "string"},
            "description": "In two or three sentences: what it is, what it is best in, and where it"
            " comes off worst.",
        },
        "ceiling": {
            **reference("CeilingSpec"),
            "description": "The spec it asks for, with nothing left open.",
        },
    }
    return {
        **option,
        "required": [*option["required"], *more],
        "properties": option["properties"] | more,
    }


def _list(name: str, words: str) -> Json:
    return {"type": "array", "items": reference(name), "description": words}
