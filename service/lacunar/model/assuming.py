"""The list of what was assumed, kept while a spec is decided."""

from collections.abc import Iterable
from itertools import count
from typing import TypeVar

from lacunar.measure.length import Length
from lacunar.model.ceiling import Assumption

Decided = TypeVar("Decided")


class Assuming:
    """Takes what was said where something was, and otherwise a value, which it writes down."""

    def __init__(self) -> None:
        self._made: list[Assumption] = []

    @property
    def made(self) -> tuple[Assumption, ...]:
        """Every assumption so far, in the order in which they were made."""
        return tuple(self._made)

    def settle(self, said: Decided | None, pointer: str, value: Decided, reason: str) -> Decided:
        """What was said, or else `value` as an assumption at `pointer`, for a `reason`."""
        if said is not None:
            return said
        self.note(pointer, value, reason)
        return value

    def note(self, pointer: str, value: object, reason: str) -> None:
        """Write an assumption down. A value without a word of its own goes by its name or text."""
        told = value if isinstance(value, Length | int | str) else _told(value)
        self._made.append(Assumption(pointer, told, reason))


class FreeNames:
    """Free names of a prefix and a number, for things that have none."""

    def __init__(self, prefix: str, given: Iterable[str | None]) -> None:
        taken = set(given)
        self._free = (name for n in count(1) if (name := f"{prefix}{n}") not in taken)

    def settle(self, said: str | None, place: str, assuming: Assuming) -> str:
        """The name said, or the next free one as an assumption; an empty name says none."""
        if said:
            return said
        return assuming.settle(None, f"{place}/name", next(self._free), "the next free name")


def _told(value: object) -> str:
    for attribute in ("name", "text", "kind"):
        if isinstance(word := getattr(value, attribute, None), str):
            return str(word)
    return str(value)
