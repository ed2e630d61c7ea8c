"""Lets independent parts of the work go on after a fault, so that all faults leave together."""

from collections.abc import Callable
from typing import ParamSpec, TypeVar

from lacunar.model.faults import Fault, SpecRefused

Given = ParamSpec("Given")
Result = TypeVar("Result")


class FaultGathering:
    """Takes the faults of several computations that do not need each other."""

    def __init__(self) -> None:
        self._faults: list[Fault] = []

    def attempt(
        self, compute: Callable[Given, Result], *args: Given.args, **kwargs: Given.kwargs
    ) -> Result | None:
        """Return what a computation returns, or None after keeping the faults it raised."""
        try:
            return compute(*args, **kwargs)
        except SpecRefused as refused:
            self._faults += [fault for fault in refused.faults if fault not in self._faults]
            return None

    def refuse_if_any(self) -> None:
        """Raise SpecRefused with everything kept, in the order it was found."""
        if self._faults:
            raise SpecRefused(self._faults)


def refuse(faults: list[Fault]) -> None:
    """Raise SpecRefused if there is any fault."""
    if faults:
        raise SpecRefused(faults)
