"""Changes to a JSON document as RFC 7396 has them: an object laid over it, null takes out."""

from lacunar.exchange.json_pointer import pointer_to
from lacunar.exchange.strict_json import JsonValue


def merged(target: JsonValue, patch: JsonValue) -> JsonValue:
    """Turn a document and changes to it into the changed document (RFC 7396 section 2).

    >>> merged({"a": 1, "b": {"c": 2, "d": 3}}, {"a": None, "b": {"c": 4}})
    {'b': {'c': 4, 'd': 3}}
    """
    if not isinstance(patch, dict):
        return patch
    made: dict[str, JsonValue] = dict(target) if isinstance(target, dict) else {}
    for name, change in patch.items():
        if change is None:
            made.pop(name, None)
        else:
            made[name] = merged(made.get(name), change)
    return made


def landed(patch: JsonValue, pointer: str) -> str:
    """Turn a place in a changed document into the place in the changes that comes nearest to it.

    >>> landed({"crown": {"face": 3}}, "/crown/face"), landed({"crown": {}}, "/crown/method/x")
    ('/crown/face', '/crown')
    """
    path: list[str] = []
    for step in pointer.split("/")[1:]:
        name = step.replace("~1", "/").replace("~0", "~")
        if isinstance(patch, dict) and name in patch:
            patch = patch[name]
        elif isinstance(patch, list) and name.isdecimal() and int(name) < len(patch):
            patch = patch[int(name)]
        else:
            break
        path.append(name)
    return pointer_to(path)
