"""Saw settings for crown at one corner: for a calculator, a spreadsheet, or a page."""

from lacunar.api.engine_names import ENGINE
from lacunar.api.media import BARE_VALUE, CSV, TEXT, table_or_value
from lacunar.api.operation import JSON, Answer, Asked, Media, Operation, Query
from lacunar.exchange.bare_value import bare_angle, bare_length
from lacunar.exchange.json_bytes import json_bytes
from lacunar.exchange.query_schema import NumberForm, SawQuery, SawValue
from lacunar.exchange.saw_answer import saw_sheet_to_csv, saw_sheet_to_json, value_of
from lacunar.measure.angle import Angle
from lacunar.workflow.saw_settings import SawAnswer, settings_for


def set_saw(asked: Asked) -> Answer:
    """Saw settings in the media type agreed on."""
    answer = settings_for(asked.query)
    if asked.media == TEXT:
        return Answer(_value(answer, asked.query).encode())
    if asked.media == CSV:
        return Answer(saw_sheet_to_csv(answer.sheet, answer.mark_to), "saw-settings.csv")
    trace = asked.query.get("trace", False)
    told = saw_sheet_to_json(answer.sheet, answer.assumptions, answer.mark_to, trace=trace)
    return Answer(json_bytes({**told, "engine": dict(ENGINE)}))


def _value(answer: SawAnswer, query: Query) -> str:
    value = value_of(answer.sheet, query.get("field", SawValue.FLAT_MITER))
    form = query.get("as", NumberForm.DECIMAL)
    if isinstance(value, Angle):
        return bare_angle(value, form)
    return bare_length(value, answer.mark_to, form)


OPERATIONS = (
    Operation(
        method="GET",
        path="/v1/saw-settings",
        id="setSaw",
        tag="Calculator",
        summary="Set a saw for crown at a corner",
        description=(
            "Miter and bevel for crown (sprung moulding) at a corner of any angle: nested as it"
            " stands, and flat on its back; for both ends of a piece which edge goes to the fence,"
            " which way the table turns and which side is kept; with the width of its face, its"
            " drop and projection and what its ceiling edge is shorter or longer by. The spring"
            " angle is measured from the wall. As JSON, as a table, or one bare value for a"
            " spreadsheet's cell."
        ),
        media=(
            Media(JSON, {"$ref": "#/components/schemas/SawAnswer"}, "The settings."),
            Media(
                CSV,
                {"type": "string"},
                "A row to each setting and size, as exact text, in degrees or in inches and"
                " millimeters; then a row to each cut.",
            ),
            BARE_VALUE,
        ),
        statuses=(400, 406, 422),
        answer=set_saw,
        query=SawQuery(),
        chosen=table_or_value,
        errors_as_text=True,
        computes=True,
    ),
)
