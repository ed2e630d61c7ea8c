"""What is answered when an answer cannot be given: RFC 9457 problems, never a traceback."""

import logging
from collections.abc import Iterable, Mapping, Sequence
from http import HTTPStatus
from typing import Any

from flask import Flask, Response, request
from werkzeug.exceptions import HTTPException

from lacunar.api.engine_names import ENGINE
from lacunar.api.problem_catalogue import PROBLEM_KINDS
from lacunar.api.request_id import request_id
from lacunar.drawing.painters.unavailable import DrawingUnavailable
from lacunar.exchange.fault_json import fault_to_json
from lacunar.exchange.json_bytes import json_bytes
from lacunar.measure.units import Units
from lacunar.model.defaults import DEFAULTS
from lacunar.model.faults import Fault

PROBLEM_TYPE = "application/problem+json"

# Seconds after which a client may look again whether the machine has been mended.
RETRY_AFTER = 300

# Faults of what does not fit the published schema, which could be found without knowing anything
# about ceilings. All others fit it and are told as 422.
MISFITS = frozenset(
    {
        "document_not_utf8",
        "document_too_deep",
        "not_json",
        "list_too_long",
        "object_too_large",
        "name_not_readable",
        "name_doubled",
        "text_has_half_a_character",
        "wrong_type",
        "null_given",
        "name_unknown",
        "name_missing",
        "unknown_word",
        "text_too_long",
        "text_not_printable",
        "too_many",
        "count_below_one",
        "dpi_out_of_bounds",
        "soffit_without_width",
        "pool_empty",
        "ceiling_and_ceilings",
    }
)
# Faults of a document that was right for another state of what it is about.
CONFLICTS = frozenset({"measured_in_other_grid"})
TOO_LONG = "document_too_long"

# Faults found in drawing that are about the query, not about the document.
_ABOUT_QUERY = frozenset({"sheet_not_in_set", "more_sheets_than_one", "picture_too_large"})

_KIND_OF_STATUS = {
    kind.status: code
    for code, kind in PROBLEM_KINDS.items()
    if code not in ("document_misfit", "query_misfit")
}

_log = logging.getLogger("lacunar.api")


class Problem(Exception):
    """A request that gets no answer; `code` is a kind in the catalogue."""

    def __init__(
        self,
        code: str,
        detail: str,
        errors: Sequence[Mapping[str, Any]] = (),
        headers: Mapping[str, str] | None = None,
    ) -> None:
        super().__init__(detail)
        self.code = code
        self.detail = detail
        self.errors = tuple(errors)
        self.headers = dict(headers or {})

    @property
    def status(self) -> int:
        """The HTTP status of its kind."""
        return PROBLEM_KINDS[self.code].status

    @property
    def remedy(self) -> str:
        """What to do: of the first fault, or of the kind."""
        if self.errors:
            return str(self.errors[0]["remedy"])
        return PROBLEM_KINDS[self.code].words.remedy

    def members(self) -> dict[str, Any]:
        """The problem as JSON values."""
        kind = PROBLEM_KINDS[self.code]
        return {
            "type": f"/v1/problems/{self.code}",
            "title": kind.words.title,
            "status": kind.status,
            "detail": self.detail,
            "code": self.code,
            "remedy": self.remedy,
            "errors": list(self.errors),
            "request_id": request_id(),
            "engine": dict(ENGINE),
        }


def refused(faults: Iterable[Fault], units: Units, *, within: str) -> Problem:
    """Turn faults into the problem that carries them all.

    Parameters: `faults`; `units` their lengths are told in; `within`, what pointers point into:
    `body` or `query`. The status is 413 for a document too long, 400 if any does not fit the
    schema, 409 if
    any conflicts with what it was made for, else 422.
    """
    told = tuple(faults)
    code = _kind_of({fault.code for fault in told}, within)
    errors = [_error(fault, units, within) for fault in told]
    count = "One fault was" if len(told) == 1 else f"{len(told)} faults were"
    return Problem(code, f"{count} found. The first: {told[0].message}", errors)


def _kind_of(codes: set[str], within: str) -> str:
    if TOO_LONG in codes:
        return "document_too_long"
    if codes & MISFITS:
        return "query_misfit" if within == "query" else "document_misfit"
    return "conflict" if codes & CONFLICTS else "cannot_be_built"


def _error(fault: Fault, units: Units, within: str) -> dict[str, Any]:
    told = fault_to_json(fault, DEFAULTS[units].mark_to)
    place = "query" if fault.code in _ABOUT_QUERY else within
    return {"type": f"/v1/problems/{fault.code}", "in": place, **told}


def unavailable(lack: DrawingUnavailable) -> Problem:
    """Turn what this machine lacks into a problem that may be over later."""
    return Problem("drawing_unavailable", str(lack), headers={"Retry-After": str(RETRY_AFTER)})


def problem_response(problem: Problem) -> Response:
    """The answer that tells a problem."""
    response = Response(
        json_bytes(problem.members()), status=problem.status, content_type=PROBLEM_TYPE
    )
    response.headers.update(problem.headers)
    response.headers["Cache-Control"] = "no-store"
    return response


def register(app: Flask) -> None:
    """Have the app answer every exception with a problem."""
    app.register_error_handler(Problem, problem_response)
    app.register_error_handler(DrawingUnavailable, lambda lack: problem_response(unavailable(lack)))
    app.register_error_handler(HTTPException, _of_http)
    app.register_error_handler(Exception, _unforeseen)


def _of_http(error: HTTPException) -> Response:
    status = error.code or HTTPStatus.INTERNAL_SERVER_ERROR
    fallback = "bad_request" if status < HTTPStatus.INTERNAL_SERVER_ERROR else "internal_error"
    code = _KIND_OF_STATUS.get(status, fallback)
    kept = {name: value for name, value in error.get_headers() if name != "Content-Type"}
    meaning = PROBLEM_KINDS[code].words.meaning
    return problem_response(Problem(code, meaning, headers=kept))


def _unforeseen(error: Exception) -> Response:
    _log.error(
        "request %s: %s %s failed", request_id(), request.method, request.path, exc_info=error
    )
    kind = PROBLEM_KINDS["internal_error"]
    return problem_response(Problem("internal_error", kind.words.meaning))
