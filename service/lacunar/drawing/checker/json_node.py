"""Places in the layout's JSON, read one step at a time and never guessed."""

from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from fractions import Fraction
from functools import lru_cache

MILLIMETERS = {"in": Fraction("25.4"), "mm": Fraction(1)}


class UnexpectedJson(Exception):
    """The layout's JSON lacks what the checker needs; names the place."""


@lru_cache(maxsize=4096)
def exact_millimeters(text: str) -> Fraction:
    """An exact value such as `769/16 in` in millimeters; `ValueError` for anything else."""
    number, _, unit = text.partition(" ")
    if unit not in MILLIMETERS:
        raise ValueError(text)
    return Fraction(number) * MILLIMETERS[unit]


@dataclass(frozen=True, slots=True)
class Node:
    """A place in the JSON: what stands there, and the way to it to say where something is amiss."""

    value: object
    pointer: str

    def __getitem__(self, name: str) -> "Node":
        if not isinstance(self.value, Mapping) or name not in self.value:
            raise UnexpectedJson(f"{self.pointer}/{name}: nothing is there")
        return Node(self.value[name], f"{self.pointer}/{name}")

    def __iter__(self) -> Iterator["Node"]:
        if not isinstance(self.value, list | tuple):
            raise UnexpectedJson(f"{self.pointer}: no list")
        for place, item in enumerate(self.value):
            yield Node(item, f"{self.pointer}/{place}")

    def has(self, name: str) -> bool:
        """Whether an object is there that has a member of this name."""
        return isinstance(self.value, Mapping) and name in self.value

    @property
    def given(self) -> bool:
        """Whether anything but null is there."""
        return self.value is not None

    @property
    def text(self) -> str:
        """The text that is there."""
        if not isinstance(self.value, str):
            raise UnexpectedJson(f"{self.pointer}: no text")
        return self.value

    @property
    def length(self) -> Fraction:
        """The exact value of a length [mm]."""
        return self.exact_of(self["exact"].text)

    def exact_of(self, text: str) -> Fraction:
        """An exact length in millimeters, blamed on this place where it is none."""
        try:
            return exact_millimeters(text)
        except ValueError as error:
            raise UnexpectedJson(f"{self.pointer}: no exact length: {text}") from error
