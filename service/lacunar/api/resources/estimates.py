"""Estimates: what one ceiling or several cost, by the prices that are sent."""

from lacunar.api import estimate_examples
from lacunar.api.media import CSV, XLSX, table_or_book
from lacunar.api.operation import JSON, Answer, Asked, Media, Operation
from lacunar.exchange.estimate_tables import EstimateTable
from lacunar.exchange.json_bytes import json_bytes
from lacunar.exchange.query_schema import EstimateQuery
from lacunar.workflow.estimate import (
    estimate_answer,
    estimate_csv,
    estimate_xlsx,
    prepare_estimate,
)


def estimate(asked: Asked) -> Answer:
    """One ceiling or several, with prices, as their estimate."""
    query = asked.query
    prepared = prepare_estimate(asked.document, query.get("units"))
    if asked.media == CSV:
        which = query.get("table", EstimateTable.LINES)
        return Answer(estimate_csv(prepared, which), f"estimate-{which}.csv")
    if asked.media == XLSX:
        return Answer(estimate_xlsx(prepared), "estimate.xlsx")
    trace = query.get("trace", False)
    return Answer(json_bytes(estimate_answer(prepared, trace=trace)))


OPERATIONS = (
    Operation(
        method="POST",
        path="/v1/estimates",
        id="createEstimate",
        tag="Ceilings",
        summary="Estimate one ceiling or several",
        description=(
            "Takes a ceiling's spec, or several that are pooled, what is sold and on hand, if that"
            " is told, and a price list with labor rates; answers with a line for each material"
            " that is bought, each work and whatever else is paid for, and the way from direct cost"
            " over overhead, contingency, and markup or margin to the price and its tax. Labor is"
            " counted from the layout: feet, pieces, joints, coffers, settings of the saw. Each"
            " line has the part marks behind it or what was counted. Nothing is priced by a hidden"
            " default: what has no price is listed, and the total says that it is incomplete."
            " Alternates lay changes over ceilings, stock or prices, and are compared line by line."
            " Amounts are text, rounded as the answer states. Nothing is stored."
        ),
        media=(
            Media(JSON, {"$ref": "#/components/schemas/EstimateAnswer"}, "The estimate."),
            Media(
                CSV,
                {"type": "string"},
                "One table, of the lines of the estimate and of its alternates if `table` says"
                " nothing else.",
            ),
            Media(XLSX, {"type": "string", "format": "binary"}, "All tables, a sheet to each."),
        ),
        statuses=(400, 406, 409, 413, 415, 422),
        answer=estimate,
        query=EstimateQuery(),
        chosen=table_or_book,
        document="EstimateAsked",
        examples=estimate_examples.EXAMPLES,
    ),
)
