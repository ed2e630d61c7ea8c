"""Boards across one opening: for a calculator, a spreadsheet, or a page."""

from fractions import Fraction

from lacunar.api.engine_names import ENGINE
from lacunar.api.media import BARE_VALUE, CSV, TEXT, table_or_value
from lacunar.api.operation import JSON, Answer, Asked, Media, Operation, Query
from lacunar.exchange.bare_value import bare_length
from lacunar.exchange.boards_answer import boards_to_csv, boards_to_json, boards_value
from lacunar.exchange.boards_query import BoardsQuery, BoardsValue
from lacunar.exchange.json_bytes import json_bytes
from lacunar.exchange.length_json import DECIMALS
from lacunar.exchange.query_schema import NumberForm
from lacunar.measure.length import Length
from lacunar.measure.writing import decimal_text
from lacunar.workflow.boards import AnsweredBoards, lay_boards


def boards_across(asked: Asked) -> Answer:
    """An opening's boards in the media type agreed on."""
    answered = lay_boards(asked.query)
    step = answered.mark_to
    if asked.media == TEXT:
        return Answer(_value(answered, asked.query).encode())
    if asked.media == CSV:
        return Answer(boards_to_csv(answered.boards, step), "boards.csv")
    trace = asked.query.get("trace", False)
    told = boards_to_json(answered.boards, answered.assumptions, step, trace=trace)
    return Answer(json_bytes({**told, "engine": dict(ENGINE)}))


def _value(answered: AnsweredBoards, query: Query) -> str:
    value = boards_value(answered.boards, query.get("field", BoardsValue.EDGE))
    if isinstance(value, Length):
        return bare_length(value, answered.mark_to, query.get("as", NumberForm.DECIMAL))
    return decimal_text(Fraction(value), DECIMALS)


OPERATIONS = (
    Operation(
        method="GET",
        path="/v1/boards",
        id="layBoards",
        tag="Calculator",
        summary="Lay boards across one opening",
        description=(
            "Lays tongue-and-groove or other boards side by side across an opening so that both"
            " edge boards are alike and over half a cover: how many courses, what the edge boards"
            " are ripped to, lineal feet beside the rule of coverage. Told what wood it is, how"
            " much the boards shrink and swell between the driest and the dampest air, held"
            " against the trim. As JSON, as a table, or one bare value for a spreadsheet's cell."
        ),
        media=(
            Media(JSON, {"$ref": "#/components/schemas/Boards"}, "The boards."),
            Media(
                CSV,
                {"type": "string"},
                "A row to each figure: name; count; exact text, inches, millimeters; the mark as"
                " read off a tape, in inches, in millimeters.",
            ),
            BARE_VALUE,
        ),
        statuses=(400, 406, 422),
        answer=boards_across,
        query=BoardsQuery(),
        chosen=table_or_value,
        errors_as_text=True,
        computes=True,
    ),
)
