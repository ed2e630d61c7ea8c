"""The reference page: Swagger UI's own files from its packaged distribution, started by ours.

Nothing is loaded from anywhere else, and the page's policy would not let it be.
"""

from collections.abc import Callable, Mapping
from importlib.resources import files

from flask import Flask, Response, request
from werkzeug.exceptions import NotFound

_POLICY = (
    "default-src 'none'; script-src 'self'; style-src 'self'; img-src 'self' data:;"
    " connect-src 'self'; base-uri 'none'; form-action 'none'; frame-ancestors 'none'"
)

_PAGE = b"""<!doctype html>
<html lang="en">
<head>
<meta charset="utf-8">
<meta name="viewport" content="width=device-width, initial-scale=1">
<title>Lacunar: API reference</title>
<link rel="stylesheet" href="/docs/swagger-ui.css">
<link rel="icon" type="image/png" href="/docs/favicon-32x32.png">
</head>
<body>
<div id="reference"></div>
<noscript>The same description is at <a href="/openapi.json">/openapi.json</a>.</noscript>
<script src="/docs/swagger-ui-bundle.js"></script>
<script src="/docs/start.js"></script>
</body>
</html>
"""

_START = b"""SwaggerUIBundle({
  url: "/openapi.json",
  dom_id: "#reference",
  deepLinking: true,
  validatorUrl: null,
});
"""

_OWN = {
    "": ("text/html; charset=utf-8", _PAGE),
    "start.js": ("text/javascript; charset=utf-8", _START),
}
_PACKAGED = {
    "swagger-ui.css": "text/css; charset=utf-8",
    "swagger-ui-bundle.js": "text/javascript; charset=utf-8",
    "favicon-32x32.png": "image/png",
}


def register(app: Flask) -> None:
    """Put the page and its files on the app."""
    view = _view(_packaged())
    app.add_url_rule("/docs", "docs", view, methods=["GET"])
    app.add_url_rule("/docs/<name>", "docs_file", view, methods=["GET"])


def _packaged() -> Mapping[str, tuple[str, bytes]]:
    folder = files("flask_swagger_ui") / "dist"
    read = {name: (kind, (folder / name).read_bytes()) for name, kind in _PACKAGED.items()}
    return {**_OWN, **read}


def _view(served: Mapping[str, tuple[str, bytes]]) -> Callable[..., Response]:
    def view(name: str = "") -> Response:
        if name not in served:
            raise NotFound
        kind, content = served[name]
        response = Response(content, content_type=kind)
        response.headers["Content-Security-Policy"] = _POLICY
        response.headers["Cache-Control"] = "no-cache"
        response.add_etag()
        response.make_conditional(request)
        return response

    return view
