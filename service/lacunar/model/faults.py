"""What makes a ceiling impossible, as records that name the place, the figures and the way out.

A fault is never a bare sentence: it has a code from the catalogue, the JSON pointer (RFC 6901) of
the value it is about, the figures it was judged by and a remedy. All faults of a stage are
collected and leave together, as one `SpecRefused`.
"""

from collections.abc import Iterable, Mapping
from dataclasses import dataclass, field
from types import MappingProxyType

from lacunar.measure.length import Length

FigureValue = Length | int | str

_NO_FIGURES: Mapping[str, FigureValue] = MappingProxyType({})


@dataclass(frozen=True, slots=True)
class Fault:
    """One thing in the spec that makes the ceiling impossible.

    Parameters: `code` from `FAULT_CODES`; `pointer`, the JSON pointer into the spec ("" is the
    whole document); `message`, one sentence; `figures` it was judged by; `remedy`, what to do.
    """

    code: str
    pointer: str
    message: str
    remedy: str
    figures: Mapping[str, FigureValue] = field(default_factory=lambda: _NO_FIGURES)


class SpecRefused(Exception):
    """Carries every fault found; raised once per stage, never for a single one of many."""

    def __init__(self, faults: Iterable[Fault]) -> None:
        self.faults: tuple[Fault, ...] = tuple(faults)
        super().__init__("; ".join(f"{f.pointer or '/'}: {f.message}" for f in self.faults))
