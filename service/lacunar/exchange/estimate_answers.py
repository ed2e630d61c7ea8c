"""The shape of an estimate as JSON Schema, put together from those of its records."""

from lacunar.exchange.answer_schema import Json, reference
from lacunar.measure.units import Units


def estimate_answer(record: Json, ceilings: Json, engine: Json) -> Json:
    """Turn the schema of an estimate's record into that of the whole answer.

    Parameters: `record`; `ceilings`, the list of a take-off's ceilings; `engine`, what every answer
    ends with.
    """
    priced = {**record["properties"], **_assumed(ceilings)}
    alternate = {
        "name": {"type": "string", "description": "What it is called."},
        "comparison": {
            **reference("Comparison"),
            "description": "What it differs by from what was asked for.",
        },
        **priced,
    }
    return _object(
        {
            "units": {
                "type": "string",
                "enum": list(Units),
                "description": "The units texts and exact lengths are told in.",
            },
            "rounding": {"type": "string", "description": "How amounts are rounded."},
            **priced,
            "alternates": {
                "type": "array",
                "items": _object(alternate, "An alternate, estimated by itself."),
                "description": "Other ways to do or to buy it, each beside what was asked for.",
            },
            **engine,
        },
        "What one ceiling or several cost, by the prices that were sent.",
    )


def _assumed(ceilings: Json) -> Json:
    listed = {"type": "array", "items": reference("Assumption")}
    return {
        "ceilings": ceilings,
        "stock_assumptions": {
            **listed,
            "description": "What was assumed of stock and packs; pointers are into stock.",
        },
        "price_assumptions": {
            **listed,
            "description": "What the price list left open; pointers are into it. No price is ever"
            " assumed.",
        },
    }


def _object(properties: Json, words: str) -> Json:
    return {
        "type": "object",
        "description": words,
        "required": list(properties),
        "properties": properties,
    }
