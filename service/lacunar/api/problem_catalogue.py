"""Every problem an answer can be about: its status, and what it means in plain words.

A problem is about a whole request; the faults of a spec that it carries are in
`model.fault_catalogue`.
"""

from collections.abc import Mapping
from dataclasses import dataclass
from types import MappingProxyType

from lacunar.model.fault_meaning import FaultMeaning


@dataclass(frozen=True, slots=True)
class ProblemKind:
    """A kind of problem: the status it is answered with, and its meaning."""

    status: int
    words: FaultMeaning


_KINDS = {
    "bad_request": ProblemKind(
        400,
        FaultMeaning(
            "Request not understood",
            "The request is no proper HTTP request.",
            "Send it with a program that speaks HTTP, and look for unescaped signs in it.",
        ),
    ),
    "document_misfit": ProblemKind(
        400,
        FaultMeaning(
            "Document does not fit",
            "The document is not JSON, or does not fit the published schema.",
            "Mend every place that is listed, and send it again.",
        ),
    ),
    "query_misfit": ProblemKind(
        400,
        FaultMeaning(
            "Query does not fit",
            "A name in the query is not known, stands twice, or has a value that does not fit.",
            "Mend every name that is listed, and ask again.",
        ),
    ),
    "conflict": ProblemKind(
        409,
        FaultMeaning(
            "Conflict",
            "The document was made for another state of what it is about, such as openings measured"
            " in a grid that has been changed since.",
            "Send it with what it was made for, or bring it up to what there is now.",
        ),
    ),
    "cannot_be_built": ProblemKind(
        422,
        FaultMeaning(
            "Cannot be built",
            "What was sent fits the schema, and what it asks for cannot be built or told.",
            "Follow the remedy of each fault that is listed.",
        ),
    ),
    "not_found": ProblemKind(
        404,
        FaultMeaning(
            "Nothing here",
            "Nothing is found at this address.",
            "See /openapi.json or /docs for the addresses there are.",
        ),
    ),
    "method_not_allowed": ProblemKind(
        405,
        FaultMeaning(
            "Method not allowed",
            "The address exists, and this method does not work on it.",
            "Use one of the methods that the header Allow lists.",
        ),
    ),
    "not_acceptable": ProblemKind(
        406,
        FaultMeaning(
            "No such media type",
            "The answer cannot be given in any media type that the request accepts.",
            "Accept one of the media types that are named.",
        ),
    ),
    "document_too_long": ProblemKind(
        413,
        FaultMeaning(
            "Document too long",
            "The document has more bytes than are read.",
            "Send one ceiling in a document.",
        ),
    ),
    "unsupported_media_type": ProblemKind(
        415,
        FaultMeaning(
            "Media type not read",
            "The document is of a media type, or packed in a way, that is not read.",
            "Send it as application/json in UTF-8, without a content encoding.",
        ),
    ),
    "internal_error": ProblemKind(
        500,
        FaultMeaning(
            "Error in the service",
            "The service has met a state it does not know. Nothing is wrong with the request.",
            "Report it with the request id; asking again will not help.",
        ),
    ),
    "drawing_unavailable": ProblemKind(
        503,
        FaultMeaning(
            "Drawings not available",
            "The machine lacks what this drawing is painted with: the cairo library, or a folder"
            " for the typeface.",
            "Have it installed; SVG sheets and all numbers may still be had.",
        ),
    ),
}

PROBLEM_KINDS: Mapping[str, ProblemKind] = MappingProxyType(_KINDS)
