"""The headers that every answer carries."""

from http import HTTPStatus

from flask import Flask, Response, request

from lacunar.api.engine_names import ENGINE_HEADER, ENGINE_TEXT
from lacunar.api.request_id import REQUEST_ID_HEADER, request_id

_NOTHING_RUNS = "default-src 'none'; frame-ancestors 'none'"
# A sheet may style itself and letter itself with the typeface it carries, and nothing else.
_SHEET_POLICY = (
    "default-src 'none'; style-src 'unsafe-inline'; font-src data:; frame-ancestors 'none'; sandbox"
)

_ALWAYS = {
    "X-Content-Type-Options": "nosniff",
    "Referrer-Policy": "no-referrer",
    "Cross-Origin-Resource-Policy": "same-origin",
    ENGINE_HEADER: ENGINE_TEXT,
}


def register(app: Flask) -> None:
    """Have the app put its headers on every answer."""
    app.after_request(_with_headers)


def _with_headers(response: Response) -> Response:
    if request.method == "OPTIONS" and response.status_code == HTTPStatus.OK:
        response.status_code = HTTPStatus.NO_CONTENT  # the header Allow is the whole answer
        del response.headers["Content-Type"]
    if response.allow:
        response.headers["Allow"] = ", ".join(sorted(response.allow))
    response.headers.update(_ALWAYS)
    response.headers[REQUEST_ID_HEADER] = request_id()
    svg = response.mimetype == "image/svg+xml"
    response.headers.setdefault("Content-Security-Policy", _SHEET_POLICY if svg else _NOTHING_RUNS)
    return response
