"""The WSGI application: every operation at its path, problems and headers around them."""

from collections.abc import Callable, Iterator
from itertools import chain

from flask import Flask, Response

from lacunar.api import headers, problems
from lacunar.api.operation import Operation, respond
from lacunar.api.resources import division, drawings, layouts, stock
from lacunar.api.resources import problems as problem_codes
from lacunar.model.limits import DOCUMENT_BYTES

_RESOURCES = (layouts, drawings, division, stock, problem_codes)


def operations() -> Iterator[Operation]:
    """Everything that can be asked for, in the order in which it is told."""
    return chain.from_iterable(resource.OPERATIONS for resource in _RESOURCES)


def create_app() -> Flask:
    """The application, ready to be served."""
    app = Flask("lacunar", static_folder=None)
    app.config["MAX_CONTENT_LENGTH"] = DOCUMENT_BYTES
    app.url_map.merge_slashes = False  # an address is spelled one way
    problems.register(app)
    headers.register(app)
    for operation in operations():
        app.add_url_rule(
            operation.path.replace("{", "<").replace("}", ">"),
            endpoint=operation.id,
            view_func=_view(operation),
            methods=[operation.method],
        )
    return app


def _view(operation: Operation) -> Callable[..., Response]:
    def view(**path: str) -> Response:
        return respond(operation, path)

    return view
