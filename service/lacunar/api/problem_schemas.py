"""The shape of refusals, and of the small answers of the service about itself."""

from typing import Any

from lacunar.exchange.answer_schema import reference

Json = dict[str, Any]


def problem_schemas() -> dict[str, Json]:
    """The schema of each of them, by name."""
    engine = {**reference("Engine"), "description": "What answered."}
    return {
        "Problem": _whole("A refusal (RFC 9457).", {**_problem(), "engine": engine}),
        "Fault": _whole("One thing that is wrong.", _fault()),
        "ProblemMeaning": _whole("What a code means.", {**_meaning(), "engine": engine}),
        "ProblemCodes": _whole("Every code there is.", {**_codes(), "engine": engine}),
        "Alive": _whole("A living service.", {"alive": _true("It answers."), "engine": engine}),
        "Ready": _whole("A ready service.", {"ready": _true("All is in order."), "engine": engine}),
    }


def _problem() -> Json:
    return {
        "type": _text("Where the problem is explained.", format="uri-reference"),
        "title": _text("The kind of problem in words."),
        "status": {"type": "integer", "description": "The HTTP status."},
        "detail": _text("What is wrong, in a sentence."),
        "code": _code(),
        "remedy": _text("What to do about it."),
        "errors": {
            "type": "array",
            "description": "Every fault found, if the problem is about faults.",
            "items": reference("Fault"),
        },
        "request_id": _text("The id of the request."),
    }


def _fault() -> Json:
    figure = {"anyOf": [reference("Length"), {"type": "integer"}, {"type": "string"}]}
    return {
        "type": _text("Where the code is explained.", format="uri-reference"),
        "in": _text("What the pointer points into.", enum=["body", "query"]),
        "code": _code(),
        "title": _text("The code in words."),
        "pointer": _text("JSON pointer (RFC 6901) to the value; empty for the whole document."),
        "message": _text("What is wrong, in a sentence."),
        "figures": {
            "type": "object",
            "description": "The figures it was judged by, lengths with their units.",
            "additionalProperties": figure,
        },
        "remedy": _text("What to do about it."),
    }


def _meaning() -> Json:
    return {
        "code": _code(),
        "status": {"type": "integer", "description": "The HTTP status it is answered with."},
        "title": _text("The code in words."),
        "meaning": _text("What it means, whatever the figures."),
        "remedy": _text("What to do about it."),
    }


def _codes() -> Json:
    return {"codes": {"type": "array", "items": {"type": "string"}, "description": "All codes."}}


def _code() -> Json:
    return _text("A word programs can tell it by; /v1/problems explains it.")


def _text(words: str, **more: Any) -> Json:
    return {"type": "string", "description": words, **more}


def _true(words: str) -> Json:
    return {"type": "boolean", "const": True, "description": words}


def _whole(words: str, properties: Json) -> Json:
    return {
        "type": "object",
        "description": words,
        "required": list(properties),
        "properties": properties,
    }
