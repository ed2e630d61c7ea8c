"""Which family of beams runs through where nothing else decides."""

from collections.abc import Mapping
from dataclasses import dataclass

from lacunar.layout.runs.run_division import DividedRun
from lacunar.measure.figure import LengthFigure
from lacunar.measure.length import Length
from lacunar.model.beams import Through
from lacunar.model.room import RunName


@dataclass(frozen=True, slots=True)
class CrossedRun:
    """A run as the beams along it see it: by the faces at its two walls."""

    start: LengthFigure
    end: LengthFigure

    @classmethod
    def of(cls, divided: DividedRun) -> "CrossedRun":
        """What a divided run is to the beams that lie along it."""
        return cls(divided.zones[0].start, divided.zones[-1].end)

    @property
    def length(self) -> Length:
        """How long a beam is that runs through, between the faces of what is at the walls."""
        return self.end.value - self.start.value


def through_family(through: Through, runs: Mapping[RunName, CrossedRun]) -> RunName:
    """Turn the caller's word into the run whose beams run through where neither or both are cased.

    Parameters: `through`; `runs` by name, each as the beams along it see it. `longer` are the beams
    with the longer way between what stands at the walls; if they are equal, the crosswise.
    """
    if through is Through.CROSSWISE:
        return RunName.LENGTH
    if through is Through.LENGTHWISE:
        return RunName.WIDTH
    crosswise, lengthwise = runs[RunName.WIDTH].length, runs[RunName.LENGTH].length
    return RunName.LENGTH if crosswise >= lengthwise else RunName.WIDTH
