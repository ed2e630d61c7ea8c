"""What a take-off is asked for with: one ceiling or several, each read as a spec by itself."""

from collections.abc import Iterator
from dataclasses import replace

from lacunar.exchange.json_pointer import pointer_to
from lacunar.exchange.spec_json import spec_from
from lacunar.exchange.strict_json import JsonValue, read_json
from lacunar.model import limits
from lacunar.model.faults import Fault, SpecRefused
from lacunar.model.spec import CeilingSpec

ONE, SEVERAL = "ceiling", "ceilings"

Path = tuple[str | int, ...]
Pool = tuple[tuple[str, CeilingSpec], ...]
"""Ceilings, each with the JSON pointer it stands at."""


def read_pool(document: bytes) -> Pool:
    """Turn a document into the ceilings in it, each with the JSON pointer it stands at.

    The document is one bare spec; or an object with `ceiling`, one spec, or `ceilings`, a list of
    them; or that list by itself. Raises `SpecRefused` with the faults of all of them.

    >>> den = b'{"room": {"length": 99, "width": 99, "height": 99}}'
    >>> [pointer for pointer, _ in read_pool(b"[%s, %s]" % (den, den))]
    ['/0', '/1']
    """
    return pool_from(read_json(document))


def pool_from(document: JsonValue) -> Pool:
    """The same of an already read JSON value."""
    read: list[tuple[str, CeilingSpec]] = []
    faults: list[Fault] = []
    for path, value in specs_in(document):
        pointer = pointer_to(path)
        try:
            read.append((pointer, spec_from(value)))
        except SpecRefused as refused:
            faults.extend(within(pointer, refused))
    if faults:
        raise SpecRefused(faults)
    return tuple(read)


def within(pointer: str, refused: SpecRefused) -> Iterator[Fault]:
    """The faults of one ceiling, with pointers into the whole document."""
    for fault in refused.faults:
        yield replace(fault, pointer=f"{pointer}{fault.pointer}")


def specs_in(document: JsonValue) -> list[tuple[Path, JsonValue]]:
    """Turn a document into the specs in it, each with its path; raises `SpecRefused`."""
    path: Path = ()
    if isinstance(document, dict) and len(document) == 1:
        if ONE in document:
            return [((ONE,), document[ONE])]
        if isinstance(document.get(SEVERAL), list):
            path, document = (SEVERAL,), document[SEVERAL]
    if not isinstance(document, list):
        return [(path, document)]
    if not document:
        raise SpecRefused([_none(pointer_to(path))])
    if len(document) > limits.POOLED_CEILINGS:
        raise SpecRefused([too_many_ceilings(pointer_to(path), len(document))])
    return [((*path, number), each) for number, each in enumerate(document)]


def _none(pointer: str) -> Fault:
    return Fault(
        code="pool_empty",
        pointer=pointer,
        message="The list of ceilings is empty.",
        remedy="Send at least one ceiling.",
    )


def too_many_ceilings(pointer: str, count: int) -> Fault:
    """The fault for more ceilings than are taken off at once."""
    return Fault(
        code="too_many",
        pointer=pointer,
        message=f"{count} ceilings are pooled; {limits.POOLED_CEILINGS} are taken off at once.",
        remedy="Take them off in several parts.",
        figures={"ceilings": count, "most": limits.POOLED_CEILINGS},
    )


def too_many_coffers(count: int) -> Fault:
    """The fault for more coffers in all than are taken off at once."""
    return Fault(
        code="pool_too_large",
        pointer="",
        message=f"The ceilings have more than {limits.POOLED_COFFERS} coffers together.",
        remedy="Take them off in several parts.",
        figures={"coffers": count, "most": limits.POOLED_COFFERS},
    )
