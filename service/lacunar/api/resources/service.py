"""The service itself: is it there, is it ready, what does it speak."""

from lacunar.api.engine_names import ENGINE
from lacunar.api.operation import JSON, Answer, Asked, Media, Operation
from lacunar.exchange.json_bytes import json_bytes
from lacunar.workflow.readiness import prove_ready


def tell_alive(asked: Asked) -> Answer:
    """That the process answers; nothing is touched."""
    del asked
    return Answer(json_bytes({"alive": True, "engine": dict(ENGINE)}))


def tell_ready(asked: Asked) -> Answer:
    """That everything an answer may need is in order."""
    del asked
    prove_ready()
    return Answer(json_bytes({"ready": True, "engine": dict(ENGINE)}))


def describe(document: bytes) -> Operation:
    """The operation that answers with the published description."""
    return Operation(
        method="GET",
        path="/openapi.json",
        id="describeService",
        tag="Operation",
        summary="Describe the service",
        description="This description, as the running service gives it.",
        media=(Media(JSON, {"type": "object"}, "An OpenAPI 3.1 document."),),
        statuses=(400, 406),
        answer=lambda asked: Answer(document),
    )


OPERATIONS = (
    Operation(
        method="GET",
        path="/healthz",
        id="checkHealth",
        tag="Operation",
        summary="Tell that the service is alive",
        description="Answers at once and touches nothing: for a supervisor that restarts it.",
        media=(Media(JSON, {"$ref": "#/components/schemas/Alive"}, "It is alive."),),
        statuses=(400, 406),
        answer=tell_alive,
    ),
    Operation(
        method="GET",
        path="/readyz",
        id="checkReadiness",
        tag="Operation",
        summary="Tell whether the service is ready",
        description="Looks whether the typeface and cairo are in order: for a load balancer.",
        media=(Media(JSON, {"$ref": "#/components/schemas/Ready"}, "It is ready."),),
        statuses=(400, 406, 503),
        answer=tell_ready,
    ),
)
