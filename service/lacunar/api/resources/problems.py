"""Problems: what each code in a refusal means, and the way out."""

from collections.abc import Iterator
from typing import Any

from lacunar.api.engine_names import ENGINE
from lacunar.api.operation import JSON, Answer, Asked, Media, Operation
from lacunar.api.problem_catalogue import PROBLEM_KINDS
from lacunar.api.problems import MISFITS, Problem
from lacunar.exchange.json_bytes import json_bytes
from lacunar.model.fault_catalogue import FAULT_CODES


def codes() -> Iterator[str]:
    """Every code a problem or one of its faults can have."""
    yield from PROBLEM_KINDS
    yield from (code for code in FAULT_CODES if code not in PROBLEM_KINDS)


def explain_problem(asked: Asked) -> Answer:
    """A code in plain words."""
    code = asked.path["code"]
    if code in PROBLEM_KINDS:
        kind = PROBLEM_KINDS[code]
        return _told(code, kind.status, kind.words)
    if code in FAULT_CODES:
        return _told(code, 400 if code in MISFITS else 422, FAULT_CODES[code])
    raise Problem("not_found", "No problem has this code.")


def list_problems(asked: Asked) -> Answer:
    """Every code there is."""
    del asked
    return Answer(json_bytes({"codes": sorted(codes()), "engine": dict(ENGINE)}))


def _told(code: str, status: int, words: Any) -> Answer:
    told = {
        "code": code,
        "status": status,
        "title": words.title,
        "meaning": words.meaning,
        "remedy": words.remedy,
        "engine": dict(ENGINE),
    }
    return Answer(json_bytes(told))


_CODE = {
    "description": "A code out of a problem or one of its errors.",
    "schema": {"type": "string", "enum": sorted(codes())},
    "example": "no_room_left",
}

OPERATIONS = (
    Operation(
        method="GET",
        path="/v1/problems",
        id="listProblems",
        tag="Problems",
        summary="List the codes of all problems",
        description="Every code that a refusal, or one of the faults in it, can have.",
        media=(Media(JSON, {"$ref": "#/components/schemas/ProblemCodes"}, "All codes."),),
        statuses=(400, 406),
        answer=list_problems,
    ),
    Operation(
        method="GET",
        path="/v1/problems/{code}",
        id="explainProblem",
        tag="Problems",
        summary="Explain the code of a problem",
        description="What a code means, whatever the figures, and what to do about it.",
        media=(Media(JSON, {"$ref": "#/components/schemas/ProblemMeaning"}, "The meaning."),),
        statuses=(400, 404, 406),
        answer=explain_problem,
        path_words={"code": _CODE},
    ),
)
