"""The id a request goes by in answers and logs: the caller's, where it is harmless, or ours."""

import re
from uuid import uuid4

from flask import g, has_request_context, request

REQUEST_ID_HEADER = "X-Request-Id"

# Neither line breaks nor quotes, so that an id can stand in a header or a log as it is.
_HARMLESS = re.compile(r"[A-Za-z0-9._-]{8,64}\Z")


def request_id() -> str:
    """The id of the request being answered."""
    if not has_request_context():
        return ""
    if "request_id" not in g:
        asked = request.headers.get(REQUEST_ID_HEADER, "")
        g.request_id = asked if _HARMLESS.match(asked) else uuid4().hex
    known: str = g.request_id
    return known
