"""All beams as they are set out: what is built on them is worked out from this."""

from collections.abc import Iterator, Mapping
from dataclasses import dataclass

from lacunar.layout.backing_records import Forms
from lacunar.layout.records import Beam, BeamProfile, RunLayout, WallBeam
from lacunar.measure.figure import NumberFigure
from lacunar.measure.length import Length
from lacunar.model.room import RunName
from lacunar.model.wall_kind import WallKind


@dataclass(frozen=True, slots=True)
class SetOutBeams:
    """Both runs, the beams along grid lines and at walls, and the profiles by their ids.

    `floor` is the room's area [ft2] and `forms` its backing counted, where the grid does not tell
    them.
    """

    runs: Mapping[RunName, RunLayout]
    beams: tuple[Beam, ...]
    wall_beams: tuple[WallBeam, ...]
    profiles: Mapping[str, BeamProfile]
    floor: NumberFigure | None = None
    forms: Forms | None = None

    def span(self, run: RunName) -> Length:
        """The span of a run [length]."""
        return self.runs[run].span.at_start.value

    @property
    def backed(self) -> Iterator[Beam | WallBeam]:
        """Every beam that has backing: all but soffits, whose inside the spec does not tell."""
        yield from self.beams
        yield from (beam for beam in self.wall_beams if beam.kind is not WallKind.SOFFIT)
