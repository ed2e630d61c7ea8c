"""Take-offs: what one ceiling or several are made of."""

from lacunar.api import take_off_examples
from lacunar.api.media import CSV, XLSX, table_or_book
from lacunar.api.operation import JSON, Answer, Asked, Media, Operation
from lacunar.exchange.json_bytes import json_bytes
from lacunar.exchange.query_schema import TakeOffQuery
from lacunar.exchange.take_off_tables import TakeOffTable
from lacunar.workflow.take_off import (
    prepare_take_off,
    take_off_answer,
    take_off_csv,
    take_off_xlsx,
)


def take_off(asked: Asked) -> Answer:
    """One ceiling or several as their take-off."""
    query = asked.query
    prepared = prepare_take_off(asked.document, query.get("units"))
    if asked.media == CSV:
        which = query.get("table", TakeOffTable.PARTS)
        return Answer(take_off_csv(prepared, which), f"take-off-{which}.csv")
    if asked.media == XLSX:
        return Answer(take_off_xlsx(prepared), "take-off.xlsx")
    trace = query.get("trace", False)
    return Answer(json_bytes(take_off_answer(prepared, trace=trace)))


OPERATIONS = (
    Operation(
        method="POST",
        path="/v1/take-offs",
        id="createTakeOff",
        tag="Ceilings",
        summary="Take off one ceiling or several",
        description=(
            "Takes a ceiling's spec, or several that are pooled, and answers with what they are"
            " made of: every part under a mark that all ceilings share, with material, net size and"
            " size to be cut, ends, hand, face and grain, how many there are and where each goes."
            " Beside the parts stand quantities: feet, board feet and areas of stock, fasteners,"
            " adhesive, insulation if asked for, primer and paint, each by its rule with waste"
            " apart; the spec's take_off section says what they go by."
            " How many sticks and sheets are to be bought follows from how parts are laid out in"
            " them, and is not told here. Nothing is stored."
        ),
        media=(
            Media(JSON, {"$ref": "#/components/schemas/TakeOff"}, "The take-off."),
            Media(
                CSV,
                {"type": "string"},
                "One table, a row to each part if `table` says nothing else. Lengths stand as a"
                " tape reads them, in inches and in millimeters.",
            ),
            Media(XLSX, {"type": "string", "format": "binary"}, "All tables, a sheet to each."),
        ),
        statuses=(400, 406, 409, 413, 415, 422),
        answer=take_off,
        query=TakeOffQuery(),
        chosen=table_or_book,
        document="CeilingPool",
        examples=take_off_examples.EXAMPLES,
    ),
)
