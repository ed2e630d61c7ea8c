"""Layouts: a ceiling's numbers."""

from lacunar.api import ceiling_examples
from lacunar.api.operation import JSON, Answer, Asked, Media, Operation
from lacunar.exchange.json_bytes import json_bytes
from lacunar.exchange.query_schema import LayoutQuery
from lacunar.workflow.prepare import layout_answer, prepare


def lay_out(asked: Asked) -> Answer:
    """A spec as its layout."""
    prepared = prepare(asked.document, asked.query.get("units"))
    return Answer(json_bytes(layout_answer(prepared, trace=asked.query.get("trace", False))))


OPERATIONS = (
    Operation(
        method="POST",
        path="/v1/layouts",
        id="createLayout",
        tag="Ceilings",
        summary="Lay out a ceiling",
        description=(
            "Takes a ceiling's spec and answers with everything set out for it: runs, beams,"
            " coffers, profiles, panels, running marks, headroom, cautions, and what was assumed"
            " for all the spec leaves open. Nothing is stored."
        ),
        media=(Media(JSON, {"$ref": "#/components/schemas/Layout"}, "The layout."),),
        statuses=(400, 406, 409, 413, 415, 422),
        answer=lay_out,
        query=LayoutQuery(),
        document="CeilingSpec",
        examples=ceiling_examples.EXAMPLES,
    ),
)
