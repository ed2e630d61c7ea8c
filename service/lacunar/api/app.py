"""The WSGI application: every operation at its path, problems and headers around them."""

from collections.abc import Callable
from itertools import chain
from typing import Any

from flask import Flask, Response

from lacunar.api import docs_page, headers, problems
from lacunar.api.openapi import openapi_document
from lacunar.api.operation import Operation, respond
from lacunar.api.resources import (
    boards,
    cutting_plans,
    division,
    drawings,
    estimates,
    layouts,
    material_lists,
    options,
    saw_settings,
    service,
    stock,
    take_offs,
)
from lacunar.api.resources import problems as problem_codes
from lacunar.exchange.json_bytes import json_bytes
from lacunar.model.limits import DOCUMENT_BYTES

_RESOURCES = (
    layouts,
    options,
    drawings,
    take_offs,
    material_lists,
    estimates,
    division,
    boards,
    cutting_plans,
    saw_settings,
    stock,
    problem_codes,
    service,
)


def declared() -> tuple[Operation, ...]:
    """Everything that can be asked for, in the order in which it is told."""
    resources = chain.from_iterable(resource.OPERATIONS for resource in _RESOURCES)
    return (*resources, service.describe(b""))


def description() -> dict[str, Any]:
    """The published description of everything that is declared, as JSON values."""
    return openapi_document(declared())


def create_app() -> Flask:
    """The application, ready to be served."""
    app = Flask("lacunar", static_folder=None)
    app.config["MAX_CONTENT_LENGTH"] = DOCUMENT_BYTES
    app.url_map.merge_slashes = False  # an address is spelled one way
    problems.register(app)
    docs_page.register(app)
    headers.register(app)
    *operations, _ = declared()
    for operation in (*operations, service.describe(json_bytes(description()))):
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
