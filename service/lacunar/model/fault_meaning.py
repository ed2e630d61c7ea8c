"""A fault code in plain words: the shape of the entries in the catalogue."""

from dataclasses import dataclass


@dataclass(frozen=True, slots=True)
class FaultMeaning:
    """A fault code in plain words."""

    title: str
    meaning: str
    remedy: str
