"""The published description (OpenAPI 3.1), put together from the operations and the schemas."""

from collections.abc import Iterable, Iterator, Mapping
from http import HTTPStatus
from typing import Any

from lacunar import __version__
from lacunar.api.engine_names import ENGINE_HEADER
from lacunar.api.operation import JSON, Operation
from lacunar.api.problem_catalogue import PROBLEM_KINDS
from lacunar.api.problem_schemas import problem_schemas
from lacunar.api.problems import PROBLEM_TYPE
from lacunar.api.request_id import REQUEST_ID_HEADER
from lacunar.exchange.answer_schema import reference
from lacunar.exchange.given_schema import given_schemas, query_parameters
from lacunar.exchange.whole_answers import answer_schemas

Json = dict[str, Any]

_TAGS = {
    "Ceilings": "A ceiling's numbers and sheets, from its spec. Nothing is stored.",
    "Calculator": "Small questions by GET, for calculators and spreadsheets.",
    "Problems": "What each refusal means.",
    "Operation": "The service itself: is it there, is it ready, what does it speak.",
}

_DESCRIPTION = """\
Lays out coffered ceilings exactly and plots their shop drawings.

Lengths are read in any usual notation and told exactly and in decimals, each with its unit. The
same request always gets the same bytes from the same engine, which every answer names.

A refusal is a problem (RFC 9457) that lists every fault at once. 400: what was sent is not JSON or
does not fit the schemas here. 422: it fits, and cannot be built.

A GET sends a strong validator (ETag); If-None-Match with it is answered 304 without computing.
Version 1 is a draft until it is declared frozen.
"""

_HEADERS: Mapping[str, Json] = {
    "ETag": {
        "description": "Strong validator: changes whenever the bytes of the answer do.",
        "schema": {"type": "string"},
    },
    ENGINE_HEADER: {
        "description": "Names and versions of what computed and drew.",
        "schema": {"type": "string"},
    },
    REQUEST_ID_HEADER: {
        "description": "The caller's id for the request if it is of 8 to 64 letters, digits, dots,"
        " dashes and underscores, else one made here.",
        "schema": {"type": "string", "pattern": "^[A-Za-z0-9._-]{8,64}$"},
    },
}


def openapi_document(operations: Iterable[Operation]) -> Json:
    """Turn operations into the description of the service."""
    paths: Json = {}
    statuses: set[int] = set()
    for operation in operations:
        paths.setdefault(operation.path, {})[operation.method.lower()] = _operation(operation)
        statuses.update(operation.statuses)
    return {
        "openapi": "3.1.0",
        "info": {
            "title": "Lacunar",
            "version": __version__,
            "summary": "Coffered ceilings, laid out and drawn.",
            "description": _DESCRIPTION,
            "contact": {"name": "Whoever runs this service"},
            "license": {"name": "None granted", "identifier": "LicenseRef-None-Granted"},
        },
        "servers": [{"url": "/", "description": "The service this description came from."}],
        "security": [],
        "tags": [{"name": name, "description": words} for name, words in _TAGS.items()],
        "paths": paths,
        "components": {
            "schemas": {**given_schemas(), **answer_schemas(), **problem_schemas()},
            "responses": dict(_problem_responses(statuses)),
            "headers": dict(_HEADERS),
        },
    }


def _operation(operation: Operation) -> Json:
    told: Json = {
        "operationId": operation.id,
        "tags": [operation.tag],
        "summary": operation.summary,
        "description": operation.description,
        "parameters": [*_path_parameters(operation), *query_parameters(operation.query)],
    }
    if operation.document:
        content = {"schema": reference(operation.document), "examples": dict(operation.examples)}
        told["requestBody"] = {
            "required": True,
            "description": "A JSON document in UTF-8.",
            "content": {JSON: content},
        }
    told["responses"] = _responses(operation)
    return told


def _path_parameters(operation: Operation) -> Iterator[Json]:
    for name, words in operation.path_words.items():
        yield {"name": name, "in": "path", "required": True, **words}


def _responses(operation: Operation) -> Json:
    headers = {name: {"$ref": f"#/components/headers/{name}"} for name in _HEADERS}
    told: Json = {
        "200": {
            "description": " ".join(
                f"{media.type}: {media.words}" if len(operation.media) > 1 else media.words
                for media in operation.media
            ),
            "headers": headers,
            "content": {media.type: {"schema": media.schema} for media in operation.media},
        }
    }
    for status in operation.statuses:
        told[str(status)] = {"$ref": f"#/components/responses/Problem{status}"}
    return told


def _problem_responses(statuses: Iterable[int]) -> Iterator[tuple[str, Json]]:
    for status in sorted(statuses):
        meanings = [kind.words.meaning for kind in PROBLEM_KINDS.values() if kind.status == status]
        headers: Json = {}
        if status == HTTPStatus.SERVICE_UNAVAILABLE:
            headers["Retry-After"] = {
                "description": "Seconds after which to look again [s].",
                "schema": {"type": "integer"},
            }
        yield (
            f"Problem{status}",
            {
                "description": " Or: ".join(meanings),
                "headers": headers,
                "content": {PROBLEM_TYPE: {"schema": reference("Problem")}},
            },
        )
