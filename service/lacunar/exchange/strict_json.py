"""The bytes of a JSON document as Python values, or every fault in them.

JSON (RFC 8259) leaves much open that a ceiling cannot afford: two members of one name, numbers of
any length, halves of surrogate pairs. They are refused here, before anything is built from them,
and so is every document that could cost more to read than a ceiling is worth.
"""

import json
import re
from collections.abc import Iterator
from dataclasses import dataclass
from decimal import Decimal, InvalidOperation

from lacunar.exchange.json_pointer import pointer_to, shown
from lacunar.model import limits
from lacunar.model.faults import Fault, SpecRefused

JsonValue = None | bool | int | Decimal | str | list["JsonValue"] | dict[str, "JsonValue"]

# A string (even one that never ends, so that the scan stays linear), or a bracket outside strings.
_STRING_OR_BRACKET = re.compile(r'"[^"\\]*(?:\\.?[^"\\]*)*(?:"|\Z)|[\[\]{}]', re.DOTALL)
_SURROGATE = re.compile("[\ud800-\udfff]")
NAME = r"[!-~]([ -~]*[!-~])?"
"""What a name may consist of."""

_READABLE_NAME = re.compile(NAME + r"\Z")


@dataclass(frozen=True, slots=True)
class _RefusedNumber:
    """Stands in the tree for a number that was not read, so that its pointer can be found."""

    text: str


@dataclass(frozen=True, slots=True)
class _NoNumber(_RefusedNumber):
    """One of the words Python writes where a number is none: `NaN`, `Infinity`, `-Infinity`."""


class _Object(dict[str, object]):
    """An object, with the names that came more than once."""

    doubled: tuple[str, ...] = ()


def read_json(document: bytes) -> JsonValue:
    """Turn the bytes of a JSON document into Python values.

    Whole numbers become `int`, all others `Decimal`: no digit is lost. Raises `SpecRefused` with
    every fault found: a document that is too long, not UTF-8, nested too deeply or not JSON is one
    fault with its line and column; otherwise each doubled name, each number out of bounds, each
    text with half a surrogate pair is one with its JSON pointer.

    >>> read_json(b'{"kerf": 0.1, "coffers": 3}')
    {'kerf': Decimal('0.1'), 'coffers': 3}
    """
    text = _decoded(document)
    _refuse_deep_nesting(text)
    try:
        tree = json.loads(
            text,
            parse_int=_whole_number,
            parse_float=_decimal_number,
            parse_constant=_NoNumber,
            object_pairs_hook=_object,
        )
    except json.JSONDecodeError as error:
        raise SpecRefused([_syntax_fault(error)]) from None
    faults = tuple(_faults_in(tree, ()))
    if faults:
        raise SpecRefused(faults)
    return tree  # type: ignore[no-any-return]


def _decoded(document: bytes) -> str:
    if len(document) > limits.DOCUMENT_BYTES:
        raise SpecRefused([_too_long(len(document))])
    try:
        return document.decode("utf-8-sig")
    except UnicodeDecodeError as error:
        raise SpecRefused([_not_utf8(document, error.start)]) from None


def _too_long(size: int) -> Fault:
    return Fault(
        code="document_too_long",
        pointer="",
        message=f"The document is longer than the {limits.DOCUMENT_BYTES} bytes that are read.",
        remedy="Send one ceiling in a document.",
        figures={"bytes": size, "most": limits.DOCUMENT_BYTES},
    )


def _not_utf8(document: bytes, offset: int) -> Fault:
    before = document[:offset]
    return Fault(
        code="document_not_utf8",
        pointer="",
        message=f"Byte {offset} is not UTF-8 text.",
        remedy="Save the document as UTF-8 (RFC 8259 section 8.1 asks for it).",
        figures={
            "byte": offset,
            "line": before.count(b"\n") + 1,
            "column": offset - (before.rfind(b"\n") + 1) + 1,
        },
    )


def _refuse_deep_nesting(text: str) -> None:
    depth = 0
    for found in _STRING_OR_BRACKET.finditer(text):
        token = found.group()
        if token in "[{":
            depth += 1
        elif token in "]}":
            depth -= 1
        if depth > limits.JSON_DEPTH:
            raise SpecRefused([_too_deep(text, found.start())])


def _too_deep(text: str, position: int) -> Fault:
    return Fault(
        code="document_too_deep",
        pointer="",
        message=f"Lists and objects lie more than {limits.JSON_DEPTH} deep in each other.",
        remedy="A ceiling needs no such depth; look for a bracket that is never closed.",
        figures=_place(text, position) | {"most": limits.JSON_DEPTH},
    )


def _place(text: str, position: int) -> dict[str, int | str]:
    return {
        "line": text.count("\n", 0, position) + 1,
        "column": position - text.rfind("\n", 0, position),
    }


def _syntax_fault(error: json.JSONDecodeError) -> Fault:
    return Fault(
        code="not_json",
        pointer="",
        message=(
            f"The document is not JSON: {error.msg[:1].lower()}{error.msg[1:]}"
            f" at line {error.lineno}, column {error.colno}."
        ),
        remedy="Mend the text at that place; JSON takes no comments and no comma before a bracket.",
        figures={"line": error.lineno, "column": error.colno},
    )


def _whole_number(text: str) -> int | _RefusedNumber:
    return int(text) if len(text) <= limits.NUMBER_CHARACTERS else _RefusedNumber(text)


def _decimal_number(text: str) -> Decimal | _RefusedNumber:
    if len(text) > limits.NUMBER_CHARACTERS:
        return _RefusedNumber(text)
    try:
        number = Decimal(text)
    except InvalidOperation:  # the exponent alone is out of all bounds
        return _RefusedNumber(text)
    if number and abs(number.adjusted()) > limits.NUMBER_EXPONENT:
        return _RefusedNumber(text)
    # Zero may carry any exponent, and an exponent is what makes a number costly to convert.
    return number if number else Decimal(0)


def _object(pairs: list[tuple[str, object]]) -> _Object:
    made = _Object(pairs)
    if len(made) < len(pairs):
        seen: set[str] = set()
        doubled = [name for name, _ in pairs if name in seen or seen.add(name)]  # type: ignore[func-returns-value]
        made.doubled = tuple(dict.fromkeys(doubled))
    return made


def _faults_in(value: object, path: tuple[str | int, ...]) -> Iterator[Fault]:
    match value:
        case _NoNumber():
            yield _constant_fault(value, path)
        case _RefusedNumber():
            yield _number_fault(value, path)
        case str():
            if _SURROGATE.search(value):
                yield _surrogate_fault(path)
        case list():
            yield from _faults_in_list(value, path)
        case _Object():
            yield from _faults_in_object(value, path)


def _faults_in_list(items: list[object], path: tuple[str | int, ...]) -> Iterator[Fault]:
    if len(items) > limits.LIST_ITEMS:
        yield Fault(
            code="list_too_long",
            pointer=pointer_to(path),
            message=f"A list of {len(items)} items is longer than any a ceiling needs.",
            remedy=f"Keep lists to {limits.LIST_ITEMS} items.",
            figures={"items": len(items), "most": limits.LIST_ITEMS},
        )
        return
    for position, item in enumerate(items):
        yield from _faults_in(item, (*path, position))


def _faults_in_object(members: _Object, path: tuple[str | int, ...]) -> Iterator[Fault]:
    if len(members) > limits.OBJECT_MEMBERS:
        yield Fault(
            code="object_too_large",
            pointer=pointer_to(path),
            message=f"An object of {len(members)} names is larger than any a ceiling needs.",
            remedy=f"Keep objects to {limits.OBJECT_MEMBERS} names.",
            figures={"names": len(members), "most": limits.OBJECT_MEMBERS},
        )
        return
    for name, item in members.items():
        if len(name) > limits.NAME_CHARACTERS or not _READABLE_NAME.match(name):
            yield _name_fault(name, path)
        elif name in members.doubled:
            yield _doubled_fault(name, path)
        else:
            yield from _faults_in(item, (*path, name))


def _name_fault(name: str, path: tuple[str | int, ...]) -> Fault:
    return Fault(
        code="name_not_readable",
        pointer=pointer_to(path),
        message=f"The name {shown(name)} is no name a spec can have.",
        remedy="Names are plain letters, digits and underscores; take this one out.",
        figures={"characters": len(name), "most": limits.NAME_CHARACTERS},
    )


def _doubled_fault(name: str, path: tuple[str | int, ...]) -> Fault:
    return Fault(
        code="name_doubled",
        pointer=pointer_to((*path, name)),
        message=f"The name {shown(name)} stands more than once in one object.",
        remedy="Keep one of them: nothing says which one is meant.",
    )


def _constant_fault(word: _NoNumber, path: tuple[str | int, ...]) -> Fault:
    return Fault(
        code="not_json",
        pointer=pointer_to(path),
        message=f"The document is not JSON: {word.text} is no number there.",
        remedy="Write a finite number (RFC 8259 section 6 knows no other).",
    )


def _number_fault(number: _RefusedNumber, path: tuple[str | int, ...]) -> Fault:
    return Fault(
        code="number_out_of_bounds",
        pointer=pointer_to(path),
        message=f"{shown(number.text)[1:-1]} is no number that can be measured or counted.",
        remedy=(
            f"Write a finite number of at most {limits.NUMBER_CHARACTERS} characters,"
            f" between 1e-{limits.NUMBER_EXPONENT} and 1e{limits.NUMBER_EXPONENT}."
        ),
        figures={"characters": len(number.text), "most": limits.NUMBER_CHARACTERS},
    )


def _surrogate_fault(path: tuple[str | int, ...]) -> Fault:
    return Fault(
        code="text_has_half_a_character",
        pointer=pointer_to(path),
        message="The text holds half of a surrogate pair, which is no character.",
        remedy="Write the character itself, or both halves of its \\u escape.",
    )
