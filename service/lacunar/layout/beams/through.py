"""Beams as pieces: which runs through at each crossing, and what is cut between them."""

from collections.abc import Mapping, Sequence
from dataclasses import dataclass

from lacunar.layout.records import BeamPiece, ElementKind
from lacunar.layout.runs.run_division import BeamStretch, DividedRun
from lacunar.measure.figure import LengthFigure, Rule
from lacunar.measure.length import Length
from lacunar.model.beams import Through
from lacunar.model.room import RunName

PIECE = Rule("clear length of a beam between the faces that stop it", "end - start")


@dataclass(frozen=True, slots=True)
class CrossedRun:
    """A run as the beams along it see it: the beams they cross, and the faces at its two walls."""

    name: RunName
    crossed: tuple[BeamStretch, ...]
    start: LengthFigure
    end: LengthFigure

    @classmethod
    def of(cls, name: RunName, divided: DividedRun) -> "CrossedRun":
        """What a divided run is to the beams that lie along it."""
        return cls(name, divided.beams, divided.zones[0].start, divided.zones[-1].end)

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


def pieces(along: CrossedRun, stopped_by: Sequence[BeamStretch]) -> tuple[BeamPiece, ...]:
    """Cut a beam between the beams that stop it.

    Parameters: `along`, the run it lies along; `stopped_by`, the beams that run through where they
    cross it, in order. Wall beams go round the room, so every beam ends at their faces; with
    nothing at a wall it ends at the wall.
    """
    starts = [along.start, *(beam.far for beam in stopped_by)]
    ends = [*(beam.near for beam in stopped_by), along.end]
    return tuple(
        BeamPiece(
            start,
            end,
            PIECE.gives(end.value - start.value, end=end.value, start=start.value),
        )
        for start, end in zip(starts, ends, strict=True)
    )


def stops(crossing: BeamStretch, beam: BeamStretch, *, family_runs_through: bool) -> bool:
    """Whether a crossing beam runs through where it meets a beam, so that the beam stops there.

    A cased beam holds a structural member and always runs through; `family_runs_through` says
    whether the crossing beam's family does, which decides where neither or both are cased.
    """
    cased = crossing.kind is ElementKind.CASED_BEAM
    if cased is not (beam.kind is ElementKind.CASED_BEAM):
        return cased
    return family_runs_through
