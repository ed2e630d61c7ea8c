"""Writes what the service publishes of itself: its description, and the list of its fields.

python3 openapi/write.py

The description is written anew. The list only ever grows: a field that has been published stays on
it, and the tests fail if the service no longer has it. To take one back is a decision: it needs a
new version of the interface, and its line deleted by hand.
"""

import json
import sys
from collections.abc import Iterator
from pathlib import Path

FOLDER = Path(__file__).parent
DESCRIPTION = FOLDER / "lacunar-v1.json"
FIELDS = FOLDER / "lacunar-v1-fields.txt"


def description_text(document: dict) -> str:
    """The description as it is checked in: one value to a line, plain ASCII."""
    return json.dumps(document, indent=1) + "\n"


def published(document: dict) -> Iterator[str]:
    """Everything a client may have come to rely on, a line each."""
    for path, operations in document["paths"].items():
        for method, operation in operations.items():
            yield from _operation(f"{method.upper()} {path}", operation)
    for name, schema in document["components"]["schemas"].items():
        yield from _fields(name, schema)


def _operation(place: str, operation: dict) -> Iterator[str]:
    yield place
    for parameter in operation["parameters"]:
        yield f"{place} {parameter['in']} {parameter['name']}"
        for word in parameter["schema"].get("enum", ()):
            yield f"{place} {parameter['in']} {parameter['name']}={word}"
    for status, response in operation["responses"].items():
        yield f"{place} {status}"
        for media in response.get("content", ()):
            yield f"{place} {status} {media}"


def _fields(place: str, schema: dict) -> Iterator[str]:
    for name, inside in schema.get("properties", {}).items():
        yield f"{place}.{name}"
        yield from _fields(f"{place}.{name}", inside)
    for word in schema.get("enum", ()):
        yield f"{place}={word}"
    for choice in (*schema.get("oneOf", ()), *schema.get("anyOf", ())):
        yield from _fields(place, choice)
    if isinstance(schema.get("items"), dict):
        yield from _fields(place, schema["items"])


def main() -> int:
    """Write both files."""
    from lacunar.api.app import description

    document = description()
    DESCRIPTION.write_text(description_text(document), encoding="ascii")
    known = FIELDS.read_text(encoding="utf-8").splitlines() if FIELDS.exists() else []
    lines = sorted({*known, *published(document)})
    FIELDS.write_text("".join(f"{line}\n" for line in lines), encoding="utf-8")
    return 0


if __name__ == "__main__":
    sys.exit(main())
