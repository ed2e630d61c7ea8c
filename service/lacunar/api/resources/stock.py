"""Stock: trade names and the published sizes behind them."""

from lacunar.api.engine_names import ENGINE
from lacunar.api.media import BARE_VALUE, CSV, TEXT, table_or_value
from lacunar.api.operation import JSON, Answer, Asked, Media, Operation
from lacunar.exchange.bare_value import bare_length
from lacunar.exchange.json_bytes import json_bytes
from lacunar.exchange.query_schema import NumberForm, StockQuery, StockValue
from lacunar.exchange.stock_answer import sizes_to_csv, sizes_to_json, value_of
from lacunar.measure.units import Units
from lacunar.model.defaults import DEFAULTS
from lacunar.workflow.stock import stock_listed


def list_stock(asked: Asked) -> Answer:
    """Published sizes in the media type agreed on."""
    units = asked.query.get("units", Units.INCH)
    step = DEFAULTS[units].mark_to
    sizes = stock_listed(asked.query)
    if asked.media == TEXT:
        value = value_of(sizes, asked.query.get("field", StockValue.THICKNESS))
        return Answer(bare_length(value, step, asked.query.get("as", NumberForm.DECIMAL)).encode())
    if asked.media == CSV:
        return Answer(sizes_to_csv(sizes, units), "stock.csv")
    return Answer(json_bytes({"sizes": sizes_to_json(sizes, step), "engine": dict(ENGINE)}))


OPERATIONS = (
    Operation(
        method="GET",
        path="/v1/stock",
        id="listStock",
        tag="Calculator",
        summary="List published sizes of stock",
        description=(
            "Softwood boards and dimension, hardwood by quarters and structural plywood by the"
            " names they are sold under, with the real sizes behind the names."
        ),
        media=(
            Media(JSON, {"$ref": "#/components/schemas/StockList"}, "The sizes."),
            Media(
                CSV,
                {"type": "string"},
                "A row to each size: name, kind, common; thickness and width, each as exact text,"
                " in inches, in millimeters.",
            ),
            BARE_VALUE,
        ),
        statuses=(400, 406, 422),
        answer=list_stock,
        query=StockQuery(),
        chosen=table_or_value,
        errors_as_text=True,
        computes=True,
    ),
)
