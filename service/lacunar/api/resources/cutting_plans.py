"""Cutting plans: pieces and stock in, what is cut from what out."""

from lacunar.api import cutting_examples
from lacunar.api.engine_names import ENGINE
from lacunar.api.operation import JSON, Answer, Asked, Media, Operation
from lacunar.exchange.cutting_answer import cutting_to_json
from lacunar.exchange.json_bytes import json_bytes
from lacunar.workflow.cutting import plan_cuts


def plan(asked: Asked) -> Answer:
    """A cutting problem as its plans."""
    found = plan_cuts(asked.document)
    return Answer(json_bytes({**cutting_to_json(found), "engine": dict(ENGINE)}))


OPERATIONS = (
    Operation(
        method="POST",
        path="/v1/cutting-plans",
        id="createCuttingPlan",
        tag="Calculator",
        summary="Plan how pieces are cut from stock",
        description=(
            "Takes pieces and the priced lengths they may be cut from, or panels and sheets; or"
            " ceilings, with what is sold and on hand beside them, whose parts are then the pieces"
            " and panels, by their part marks; and"
            " answers with plans of least cost: what to buy, how each stick is cut, and each sheet"
            " from edge to edge in a stated order, what is left. Each plan states the"
            " least that any plan can cost, whether it is proven best, and whole numbers by which"
            " anyone can check the bound; and what buying one length alone would cost. Materials"
            " are never mixed. The same problem always gets the same plan: what is tried is"
            " counted, not timed, and if a clock ever ends it early the answer says so."
        ),
        media=(Media(JSON, {"$ref": "#/components/schemas/CuttingAnswer"}, "The plans."),),
        statuses=(400, 406, 413, 415, 422),
        answer=plan,
        document="CuttingAsked",
        examples=cutting_examples.EXAMPLES,
    ),
)
