"""The service in process, as a client meets it."""

import json
from functools import lru_cache
from pathlib import Path

from flask import Flask
from flask.testing import FlaskClient

from lacunar.api.app import create_app

CEILINGS = sorted((Path(__file__).parents[2] / "examples" / "ceilings").glob("*.json"))
THREE_NUMBERS = (
    b'{"room": {"length": "15\' 2 1/2\\"", "width": "12\' 4\\"", "height": "8\' 10\\""}}'
)


def on_few_sheets(ceiling: Path) -> bytes:
    """An example that issues its plans and poles alone: most answers need no whole set."""
    spec = json.loads(ceiling.read_bytes())
    spec["drawing"]["sheets"] = ["Z-101", "Z-102", "Z-701"]
    return json.dumps(spec).encode()


@lru_cache
def app() -> Flask:
    return create_app()


def client() -> FlaskClient:
    return app().test_client()


def post(path, document, **headers):
    """A JSON document sent to a path."""
    named = {name.replace("_", "-"): value for name, value in headers.items()}
    return client().post(path, data=document, content_type="application/json", headers=named)
