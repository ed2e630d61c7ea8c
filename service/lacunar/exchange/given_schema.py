"""The shape of what may be sent, specs and queries, as JSON Schema, taken from their outlines."""

from collections.abc import Callable, Iterator
from typing import Any

from marshmallow import Schema
from marshmallow import fields as marshmallow_fields

from lacunar.exchange import (
    cutting_schema,
    fields,
    item_schema,
    option_schema,
    panel_fields,
    price_schema,
    query_reading,
    shaped_fields,
    stock_json,
    stock_schema,
    survey_fields,
    survey_given,
    take_off_schema,
)
from lacunar.exchange.answer_schema import Json, reference
from lacunar.exchange.options_schema import options_asked_schema
from lacunar.exchange.pool_given import CHANGES, ceiling_pool, changes_given, estimate_asked
from lacunar.exchange.schema_base import SpecSchema
from lacunar.exchange.spec_schema import CeilingSchema
from lacunar.measure.notation import MOST_CHARACTERS
from lacunar.model import limits
from lacunar.model.room import WALLS
from lacunar.model.wall_kind import WallKind

Field = marshmallow_fields.Field[Any]

# `format` tells a reader, and the tests' generator of requests, what the text is; what exactly is
# read stands in the description. A text that is not so read is refused with 422.
LENGTH_FORMAT = "length"
STEP_FORMAT = "marking-step"
STOCK_FORMAT = "stock-name"

_LENGTH_TEXT = {
    "type": "string",
    "format": LENGTH_FORMAT,
    "minLength": 1,
    "maxLength": MOST_CHARACTERS,
    "examples": ["12'-0 3/16\"", "48 1/16", "1220.8 mm"],
}
_WHOLE = {"type": "integer", "minimum": 1}
_SHARE_TEXT = {"type": "string", "pattern": f"^{fields.RATIO}$", "examples": ["3/2"]}
_DEGREES_NUMBER = {"type": "number", "minimum": 0, "maximum": fields.FULL_TURN}
_DEGREES_TEXT = {"type": "string", "pattern": f"^{fields.DEGREES}$", "examples": ["38", "67.5"]}
_ON_SOFFIT = [kind.value for kind in WallKind if kind is not WallKind.SOFFIT]
_DATE = {
    "anyOf": [
        {"type": "string", "format": "date", "examples": ["2026-03-02"]},
        {"type": "string", "maxLength": 0},
    ]
}
_SHARES = f"^{fields.RATIO}(,{fields.RATIO}){{0,{limits.COFFERS_PER_RUN - 1}}}$"
_SHEET_IDS = f"^{query_reading.SHEET}(,{query_reading.SHEET})*$"

_MONEY_TEXT = {"type": "string", "pattern": f"^{cutting_schema.MONEY}$", "examples": ["11.49"]}
_UNIT_PRICE_TEXT = {
    "type": "string",
    "pattern": f"^{price_schema.UNIT_PRICE}$",
    "examples": ["2.85"],
}
_NUMBER_TEXT = {"type": "string", "pattern": f"^{panel_fields.NUMBER}$", "examples": ["0.00369"]}
_MOISTURE_TEXT = {
    "type": "string",
    "pattern": f"^({panel_fields.PERCENT}|{panel_fields.AIR})$",
    "examples": ["8", "45 % at 70 F"],
}

_LENGTH: Json = {
    "description": "A length [length]: text in any usual notation, or a number in the spec's units"
    " (in or mm). What could be two lengths is refused, never guessed.",
    "oneOf": [{"type": "number"}, _LENGTH_TEXT],
}
_STOCK: Json = {
    "description": "Stock: a trade name; a trade name with the width it is ripped to; a real size.",
    "oneOf": [
        {
            "type": "string",
            "format": STOCK_FORMAT,
            "maxLength": limits.STOCK_NAME,
            "pattern": f"^{fields.PRINTABLE}$",
            "examples": ["1x8", "5/4x6", "2x4", "23/32 sheet"],
        },
        {
            "type": "object",
            "additionalProperties": False,
            "required": ["nominal"],
            "properties": {
                "nominal": {
                    "type": "string",
                    "format": STOCK_FORMAT,
                    "maxLength": limits.STOCK_NAME,
                    "pattern": f"^{fields.PRINTABLE}$",
                    "description": "A trade name, such as 4/4.",
                },
                "width": {**reference("LengthGiven"), "description": "Its width [length]."},
            },
        },
        {
            "type": "object",
            "additionalProperties": False,
            "required": ["thickness", "width"],
            "properties": {
                "thickness": {
                    **reference("LengthGiven"),
                    "description": "Real thickness [length].",
                },
                "width": {**reference("LengthGiven"), "description": "Real width [length]."},
            },
        },
    ],
}


def given_schemas() -> dict[str, Json]:
    """The schema of a spec and of every object in it, by name."""
    found = {"LengthGiven": _LENGTH, "StockGiven": _STOCK, **changes_given()}
    ceiling = _add_object(CeilingSchema(), found)
    found["CeilingPool"] = ceiling_pool(ceiling)
    stock = {
        **_add_object(stock_schema.StockOfferSchema(), found),
        "description": "What is sold and on hand for all of them.",
    }
    found["StockedCeilings"] = ceiling_pool(ceiling, {stock_json.STOCK: stock})
    prices = _add_object(price_schema.PriceListSchema(), found)
    alternate = _add_object(price_schema.AlternateSchema(), found)
    found["EstimateAsked"] = estimate_asked(ceiling, stock, (prices, alternate))
    cutting = _add_object(cutting_schema.CuttingSchema(), found)
    found["CuttingAsked"] = {
        "description": "A bare problem of pieces and stock; or ceilings, with stock or without.",
        "oneOf": [cutting, *found["StockedCeilings"]["oneOf"]],
    }
    choices = _add_object(option_schema.ChoicesSchema(), found)
    found["OptionsAsked"] = options_asked_schema(ceiling, choices, (prices, stock))
    return found


def query_parameters(schema: SpecSchema) -> Iterator[Json]:
    """Each name a query may have, as an OpenAPI parameter."""
    for name, field in schema.fields.items():
        told = dict(_in_query(field))
        words = told.pop("description")
        needed = name in schema.needed
        place = {"name": name, "in": "query", "required": needed}
        yield {**place, "description": words, "schema": told}


def _in_query(field: Field) -> Json:
    """A field's schema where it stands in a query: there, a length or an angle is always text."""
    if isinstance(field, fields.Distance):
        return {**_LENGTH_TEXT, "description": field.metadata["description"]}
    if isinstance(field, fields.Degrees):
        return {**_DEGREES_TEXT, "description": field.metadata["description"]}
    if isinstance(field, panel_fields.Number):
        return {**_NUMBER_TEXT, "description": field.metadata["description"]}
    if isinstance(field, panel_fields.WoodMoisture):
        return {**_MOISTURE_TEXT, "description": field.metadata["description"]}
    return _of_field(field)


def _add_object(schema: Schema, found: dict[str, Json]) -> Json:
    """Put an object's schema under its name, and give a reference to it."""
    name = type(schema).__name__.removesuffix("Schema") + "Spec"
    if name not in found:
        found[name] = {}  # holds its place before what it consists of
        found[name] = {
            "type": "object",
            "description": type(schema).__doc__,
            "additionalProperties": False,
            **_required(schema),
            "properties": {each: _inside(field, found) for each, field in schema.fields.items()},
        }
    return reference(name)


def _required(schema: Schema) -> Json:
    if not isinstance(schema, SpecSchema):
        return {}
    needed: Json = {"required": list(schema.needed)} if schema.needed else {}
    if schema.needed_sets:
        needed["anyOf"] = [{"required": list(names)} for names in schema.needed_sets]
    return needed


def _inside(field: Field, found: dict[str, Json]) -> Json:
    """A field's schema; objects it holds are put under their names."""
    words = {"description": field.metadata["description"]}
    match field:
        case shaped_fields.SameOrObject():
            same = {"type": "string", "const": shaped_fields.SAME}
            return {"oneOf": [same, _add_object(field.schema, found)], **words}
        case fields.ObjectOf():
            return {**_add_object(field.schema, found), **words}
        case fields.ListOf():
            return {**_list(field, found), **words}
    return _of_field(field)


def _list(field: fields.ListOf, found: dict[str, Json]) -> Json:
    inner = _inside(field.inner, found)
    least = {"minItems": 1} if isinstance(field.inner, fields.Weight) else {}
    return {"type": "array", "items": inner, "maxItems": field.most, **least}


def _of_field(field: Field) -> Json:
    """The schema of a field that holds no object of the outline."""
    for kind, schema in _KINDS:
        if isinstance(field, kind):
            return {**schema(field), "description": field.metadata["description"]}
    raise TypeError(f"a {type(field).__name__} has no schema")


def _stands(field: Any) -> Json:
    """What can stand at a wall, but for a soffit."""
    del field
    return {"type": "string", "enum": [k.value for k in WallKind if k is not WallKind.SOFFIT]}


def _words(field: Any) -> Json:
    return {"type": "string", "enum": [word.value for word in field.words]}


def _text(field: Any) -> Json:
    return {"type": "string", "maxLength": field.most, "pattern": f"^{fields.PRINTABLE}$"}


def _counts(field: Any) -> Json:
    del field
    listed = {"type": "array", "items": _WHOLE, "minItems": 1, "maxItems": shaped_fields.MOST_ZONES}
    return {"oneOf": [_WHOLE, listed]}


def _wall_finish(field: Any) -> Json:
    del field
    walls = {
        wall: {**reference("LengthGiven"), "description": f"At wall {wall} [length]."}
        for wall in WALLS
    }
    each = {
        "type": "object",
        "additionalProperties": False,
        "required": list(WALLS),
        "properties": walls,
    }
    return {"oneOf": [reference("LengthGiven"), each]}


def _at_wall(field: Any) -> Json:
    del field
    soffit = {
        "type": "object",
        "additionalProperties": False,
        "required": ["soffit"],
        "properties": {
            "soffit": {**reference("LengthGiven"), "description": "Width of a soffit [length]."},
            "then": {
                "type": "string",
                "enum": _ON_SOFFIT,
                "description": "What stands on its face.",
            },
        },
    }
    return {"oneOf": [{"type": "string", "enum": _ON_SOFFIT}, soffit]}


def _sheet_edges(field: Any) -> Json:
    del field
    return {
        "type": "object",
        "additionalProperties": False,
        "required": ["width", "length"],
        "properties": {
            "width": {**reference("LengthGiven"), "description": "Its short edge [length]."},
            "length": {**reference("LengthGiven"), "description": "Its long edge [length]."},
        },
    }


def _moisture(field: Any) -> Json:
    del field
    humidity = {"type": "string", "pattern": f"^{panel_fields.PERCENT}$", "examples": ["45 %"]}
    temperature = {"type": "string", "pattern": f"^{panel_fields.DEGREES}$", "examples": ["70 F"]}
    air = {
        "type": "object",
        "additionalProperties": False,
        "required": ["humidity", "temperature"],
        "properties": {
            "humidity": {
                "oneOf": [{"type": "number"}, humidity],
                "description": "Relative humidity [percent].",
            },
            "temperature": {
                "oneOf": [{"type": "number"}, temperature],
                "description": "Temperature [degrees Fahrenheit or Celsius].",
            },
        },
    }
    return {"oneOf": [{"type": "number"}, _MOISTURE_TEXT, air]}


def _plainly(schema: Json) -> Callable[[Any], Json]:
    return lambda field: schema


# The first kind a field is of decides.
_KINDS: tuple[tuple[type, Callable[[Any], Json]], ...] = (
    (fields.OneOf, _words),
    (fields.IsoDate, _plainly(_DATE)),
    (survey_fields.ControlLine, survey_given.control_line),
    (fields.Text, _text),
    (fields.Distance, _plainly(reference("LengthGiven"))),
    (
        fields.MarkStep,
        _plainly({"type": "string", "format": STEP_FORMAT, "examples": ["1/16", "1 mm"]}),
    ),
    (query_reading.NumberFrom1, _plainly(_WHOLE)),
    (
        query_reading.Dpi,
        _plainly({**_WHOLE, "minimum": limits.LEAST_DPI, "maximum": limits.MOST_DPI}),
    ),
    (query_reading.CountText, _plainly(_WHOLE)),
    (
        query_reading.WeightList,
        _plainly({"type": "string", "pattern": _SHARES, "examples": ["1,3/2,1"]}),
    ),
    (
        query_reading.SheetIds,
        _plainly({"type": "string", "pattern": _SHEET_IDS, "examples": ["Z-101"]}),
    ),
    (fields.Count, _plainly(_WHOLE)),
    (cutting_schema.Money, _plainly({"oneOf": [{"type": "number"}, _MONEY_TEXT]})),
    (price_schema.UnitPrice, _plainly({"oneOf": [{"type": "number"}, _UNIT_PRICE_TEXT]})),
    (price_schema.Changes, _plainly(reference(CHANGES))),
    (cutting_schema.YesNo, _plainly({"type": "boolean"})),
    (
        fields.Degrees,
        _plainly({"oneOf": [_DEGREES_NUMBER, _DEGREES_TEXT]}),
    ),
    (fields.Weight, _plainly({"oneOf": [{"type": "number"}, _SHARE_TEXT]})),
    (panel_fields.Number, _plainly({"oneOf": [{"type": "number"}, _NUMBER_TEXT]})),
    (panel_fields.WoodMoisture, _moisture),
    (
        take_off_schema.CoverageText,
        _plainly(
            {
                "type": "string",
                "pattern": f"^{take_off_schema.COVERAGE}$",
                "examples": ["350 ft2/gal", "9 m2/L"],
            }
        ),
    ),
    (
        stock_schema.PackText,
        _plainly(
            {
                "type": "string",
                "pattern": f"^{stock_schema.PACK}$",
                "examples": ["1000", "1 gal", "2.5 L"],
            }
        ),
    ),
    (shaped_fields.CofferCounts, _counts),
    (shaped_fields.WallFinish, _wall_finish),
    (shaped_fields.AtWall, _at_wall),
    (shaped_fields.SheetEdges, _sheet_edges),
    (survey_fields.WallLengths, survey_given.wall_lengths),
    (survey_fields.CornerAngles, survey_given.corner_angles),
    (survey_fields.CornerPoint, survey_given.corner_point),
    (survey_fields.CornerPoints, survey_given.corner_points),
    (shaped_fields.StandsOnSoffit, _stands),
    (survey_fields.Bow, survey_given.bow),
    (
        item_schema.WallName,
        _plainly(
            {
                "anyOf": [
                    {"enum": list(WALLS)},
                    {"type": "string", "pattern": f"^{item_schema.WALL.pattern}$"},
                ]
            }
        ),
    ),
    (survey_fields.WallBows, survey_given.wall_bows),
    (shaped_fields.StockPiece, _plainly(reference("StockGiven"))),
)
