"""The division of one run: for a calculator, a spreadsheet, or a page."""

from lacunar.api.engine_names import ENGINE
from lacunar.api.media import BARE_VALUE, CSV, TEXT, table_or_value
from lacunar.api.operation import JSON, Answer, Asked, Media, Operation, Query
from lacunar.exchange.bare_value import bare_length
from lacunar.exchange.division_answer import division_to_csv, division_to_json, value_of
from lacunar.exchange.json_bytes import json_bytes
from lacunar.exchange.query_schema import DivisionQuery, DivisionValue, NumberForm
from lacunar.workflow.division import Division, divide


def divide_run(asked: Asked) -> Answer:
    """A run's division in the media type agreed on."""
    division = divide(asked.query)
    if asked.media == TEXT:
        return Answer(_value(division, asked.query).encode())
    if asked.media == CSV:
        return Answer(division_to_csv(division.run, division.mark_to), "division.csv")
    trace = asked.query.get("trace", False)
    told = division_to_json(division.run, division.assumptions, division.mark_to, trace=trace)
    return Answer(json_bytes({**told, "engine": dict(ENGINE)}))


def _value(division: Division, query: Query) -> str:
    field = query.get("field", DivisionValue.OPENING)
    value = value_of(division.run, field, query.get("number", 1), division.mark_to)
    if isinstance(value, int):
        return str(value)
    return bare_length(value, division.mark_to, query.get("as", NumberForm.DECIMAL))


OPERATIONS = (
    Operation(
        method="GET",
        path="/v1/division",
        id="divideRun",
        tag="Calculator",
        summary="Divide one run",
        description=(
            "Divides a run between finished wall faces into coffers between beams of one width:"
            " clear total, openings, both faces and the center of every beam, and running marks"
            " from the datum. As JSON, as a table, or one bare value for a spreadsheet's cell."
            " What is left out is assumed as it is for a ceiling: half beams at both walls, and"
            " openings near 48 in (1200 mm)."
        ),
        media=(
            Media(JSON, {"$ref": "#/components/schemas/Division"}, "The division."),
            Media(
                CSV,
                {"type": "string"},
                "A row to each size and mark: kind, of, side; exact text, inches, millimeters; the"
                " mark as read off a tape, in inches, in millimeters.",
            ),
            BARE_VALUE,
        ),
        statuses=(400, 406, 422),
        answer=divide_run,
        query=DivisionQuery(),
        chosen=table_or_value,
        errors_as_text=True,
        computes=True,
    ),
)
