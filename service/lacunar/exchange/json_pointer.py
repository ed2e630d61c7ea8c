"""JSON pointers (RFC 6901), and values out of a document made fit to stand in a sentence."""

from collections.abc import Iterable

SHOWN_CHARACTERS = 40


def pointer_to(path: Iterable[str | int]) -> str:
    """A path of property names and list positions as a JSON pointer.

    RFC 6901 section 3: `~` is written `~0` and `/` is written `~1`.

    >>> pointer_to(["room", "members", 0, "a/b"])
    '/room/members/0/a~1b'
    """
    return "".join("/" + str(step).replace("~", "~0").replace("/", "~1") for step in path)


def shown(value: object) -> str:
    r"""A JSON value as words for a message: short, and free of characters that cannot be printed.

    >>> shown("half" + chr(7)), shown([1, 2]), shown(True)
    ("'half\\x07'", 'a list', 'true')
    """
    match value:
        case None:
            return "null"
        case bool():
            return "true" if value else "false"
        case str():
            return repr(_clipped(value))
        case list():
            return "a list"
        case dict():
            return "an object"
        case _:
            return _clipped(str(value))


def _clipped(text: str) -> str:
    return text if len(text) <= SHOWN_CHARACTERS else text[: SHOWN_CHARACTERS - 3] + "..."
