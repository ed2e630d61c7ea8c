"""An operation: one declaration that routing, validation and the published description come from.

A resource declares its operations as records and writes one function for each. What is the same
for all of them is done here: the query is read, the media type agreed on, the document taken, the
answer sent with its validator. Where a GET `computes`, its validator is known before, so that a
repeated one computes nothing, and neither does HEAD.
"""

import hashlib
from collections.abc import Callable, Mapping
from dataclasses import dataclass, field
from typing import Any

from flask import Response, request

from lacunar.api.engine_names import ENGINE_TEXT
from lacunar.api.problems import Problem, refused
from lacunar.exchange.query_reading import read_query, units_in
from lacunar.exchange.query_schema import NoQuery
from lacunar.exchange.schema_base import SpecSchema
from lacunar.exchange.spec_json import units_of_document
from lacunar.model.faults import SpecRefused

Json = Mapping[str, Any]
Query = Mapping[str, Any]

JSON = "application/json"


@dataclass(frozen=True, slots=True)
class Media:
    """A media type an answer can be had in, with the schema of what is then sent."""

    type: str
    schema: Json
    words: str

    @property
    def content_type(self) -> str:
        """The type as it stands in the header: text is always UTF-8."""
        return f"{self.type}; charset=utf-8" if self.type.startswith("text/") else self.type


@dataclass(frozen=True, slots=True)
class Asked:
    """What a request asks: its query as read, its document as sent, the media type agreed on."""

    query: Query
    document: bytes
    media: str
    path: Mapping[str, str]


@dataclass(frozen=True, slots=True)
class Answer:
    """What is sent: the bytes, and the name they are to be saved under, if they are a file."""

    content: bytes
    name: str = ""


def _any_media(query: Query) -> None:
    """Leave the choice of media type to the header Accept."""
    del query


@dataclass(frozen=True, slots=True)
class Operation:
    """One thing that can be asked for, declared once.

    `document` is the name of the schema of the request's document and `examples` are documents that
    run, by name; `chosen` tells the media type a query names, if it does, which goes before what is
    accepted; `statuses` are those of the problems it can answer with; `path_words` describes what
    stands in braces in `path`; `errors_as_text` says whether `on_error=text` is obeyed; `computes`,
    whether a GET costs more than looking something up, so that HEAD tells the headers alone.
    """

    method: str
    path: str
    id: str
    tag: str
    summary: str
    description: str
    media: tuple[Media, ...]
    statuses: tuple[int, ...]
    answer: Callable[[Asked], Answer]
    query: SpecSchema = field(default_factory=NoQuery)
    chosen: Callable[[Query], str | None] = _any_media
    document: str = ""
    examples: Mapping[str, Json] = field(default_factory=dict)
    path_words: Mapping[str, Json] = field(default_factory=dict)
    errors_as_text: bool = False
    computes: bool = False


def respond(operation: Operation, path: Mapping[str, str]) -> Response:
    """Answer the request at hand by an operation; raises `Problem`.

    Parameters: `operation`; `path`, what stood in the braces of its path.
    """
    try:
        return _responded(operation, path)
    except Problem as problem:
        if operation.errors_as_text and request.args.get("on_error") == "text":
            return _problem_as_text(problem)
        raise


def _responded(operation: Operation, path: Mapping[str, str]) -> Response:
    query = _query(operation)
    media = _agreed(operation, query)
    tag = ""
    if operation.computes and operation.method == "GET":
        tag = _tag(media.type, request.path)
        if _known(tag) or request.method == "HEAD":
            return _finished(_headers_alone(media), tag, operation)
    asked = Asked(query, _document(operation), media.type, path)
    try:
        answer = operation.answer(asked)
    except SpecRefused as refusal:
        raise _refused_spec(asked, refusal, operation) from None
    response = Response(answer.content, content_type=media.content_type)
    if answer.name:
        response.headers["Content-Disposition"] = f'inline; filename="{answer.name}"'
    return _finished(response, tag or _tag(media.type, answer.content), operation)


def _refused_spec(asked: Asked, refusal: SpecRefused, operation: Operation) -> Problem:
    if operation.document:
        units = asked.query.get("units") or units_of_document(asked.document)
        return refused(refusal.faults, units, within="body")
    return refused(refusal.faults, units_in(_pairs()), within="query")


def _pairs() -> list[tuple[str, str]]:
    return list(request.args.items(multi=True))


def _query(operation: Operation) -> Query:
    pairs = _pairs()
    try:
        return read_query(operation.query, pairs)
    except SpecRefused as refusal:
        raise refused(refusal.faults, units_in(pairs), within="query") from None


def _agreed(operation: Operation, query: Query) -> Media:
    """The media type that the query names, whatever is accepted; else the one accepted best."""
    offered = {media.type: media for media in operation.media}
    named = operation.chosen(query)
    if named is not None:
        return offered[named]
    accepted = request.accept_mimetypes
    best = accepted.best_match(list(offered)) if accepted else next(iter(offered))
    if best is None:
        raise Problem(
            "not_acceptable", f"The answer can be had as {', '.join(offered)}, and in no other way."
        )
    return offered[best]


def _document(operation: Operation) -> bytes:
    if not operation.document:
        return b""
    packed = request.headers.get("Content-Encoding", "identity").lower() != "identity"
    if request.mimetype != JSON or packed:
        raise Problem(
            "unsupported_media_type",
            f"The document must be sent as {JSON} without a content encoding.",
            headers={"Accept-Post": JSON},
        )
    return request.get_data(cache=False)


def _tag(*parts: str | bytes) -> str:
    """A validator that changes whenever the answer's bytes may: engine, query, and `parts`."""
    told = [ENGINE_TEXT, repr(sorted(_pairs())), *parts]
    hashed = hashlib.sha256()
    for part in told:
        data = part if isinstance(part, bytes) else part.encode("utf-8", "surrogatepass")
        hashed.update(hashlib.sha256(data).digest())
    return hashed.hexdigest()[:32]


def _known(tag: str) -> bool:
    """Whether the client has this answer. A bare `*` is no answer in particular."""
    known = request.if_none_match
    return not known.star_tag and known.contains_weak(tag)


def _headers_alone(media: Media) -> Response:
    """The answer to HEAD, or to a GET of what the client has: nothing is computed for it."""
    response = Response(content_type=media.content_type)
    response.automatically_set_content_length = False  # how long it would be is not known
    return response


def _finished(response: Response, tag: str, operation: Operation) -> Response:
    response.set_etag(tag)
    response.headers["Cache-Control"] = "private, no-cache"
    if len(operation.media) > 1:
        response.headers["Vary"] = "Accept"
    if operation.method == "GET" and _known(tag):
        response.status_code = 304
        response.set_data(b"")
        for name in ("Content-Type", "Content-Length", "Content-Disposition"):
            response.headers.pop(name, None)
    return response


def _problem_as_text(problem: Problem) -> Response:
    """A problem for a caller who sees no status: a spreadsheet's cell."""
    said = problem.errors[0]["message"] if problem.errors else problem.detail
    response = Response(f"#ERR {said} {problem.remedy}", content_type="text/plain; charset=utf-8")
    response.headers["Cache-Control"] = "no-store"
    return response
