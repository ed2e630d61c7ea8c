"""Turns runs divided at both ends into the records of a layout."""

from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from itertools import count

from lacunar.layout.names import row_letters
from lacunar.layout.records import (
    Beam,
    BeamPiece,
    CasedMember,
    EndPositions,
    RunElement,
    RunLayout,
    WallBeam,
)
from lacunar.layout.runs.frame import RunFrame
from lacunar.layout.runs.run_division import BeamStretch, DividedRun, Stretch, WallStretch
from lacunar.measure.figure import LengthFigure, Rule
from lacunar.model.room import RunName

MEMBER_NEAR = Rule("near face of a member", "center - width / 2")
MEMBER_FAR = Rule("far face of a member", "center + width / 2")

_BEAM_LETTERS = {RunName.LENGTH: "XB", RunName.WIDTH: "LB"}


@dataclass(frozen=True, slots=True)
class DividedEnds:
    """A run divided at the start and at the end of the run across it; one object in a rectangle."""

    frame: RunFrame
    at_start: DividedRun
    at_end: DividedRun

    @property
    def pairs(self) -> Iterator[tuple[Stretch, Stretch]]:
        """Each stretch at both ends."""
        return zip(self.at_start.stretches, self.at_end.stretches, strict=True)

    @property
    def beams(self) -> Iterator[tuple[str, BeamStretch, BeamStretch]]:
        """Each beam's id, and the beam at both ends."""
        beams = zip(self.at_start.beams, self.at_end.beams, strict=True)
        for number, (start, end) in enumerate(beams, start=1):
            yield f"{_BEAM_LETTERS[self.frame.name]}-{number}", start, end


def run_layout(ends: DividedEnds) -> RunLayout:
    """Turn a divided run into its record, every stretch with its id."""
    name = ends.frame.name
    beam_ids = iter([beam_id for beam_id, _, _ in ends.beams])
    coffers = count(1)
    elements = []
    for start, end in ends.pairs:
        if isinstance(start, WallStretch):
            stretch_id = start.strip.id
        elif isinstance(start, BeamStretch):
            stretch_id = next(beam_ids)
        else:
            number = next(coffers)
            stretch_id = str(number) if name is RunName.LENGTH else row_letters(number)
        elements.append(
            RunElement(
                kind=start.kind,
                id=stretch_id,
                near=EndPositions(start.near, end.near),
                far=EndPositions(start.far, end.far),
            )
        )
    span = ends.frame.span
    return RunLayout(name, EndPositions(span, span), ends.at_start.zones, tuple(elements))


def beam_record(
    beam: tuple[str, BeamStretch, BeamStretch],
    on: RunName,
    profile: str,
    pieces: tuple[BeamPiece, ...],
) -> Beam:
    """Turn a beam at both ends into its record. It runs through if it is in one piece."""
    beam_id, start, end = beam
    return Beam(
        id=beam_id,
        kind=start.kind,
        on=on,
        near=EndPositions(start.near, end.near),
        far=EndPositions(start.far, end.far),
        center=EndPositions(start.center, end.center),
        width=start.width,
        profile=profile,
        through=len(pieces) == 1,
        pieces=pieces,
        member=_member(start, end),
    )


def _member(start: BeamStretch, end: BeamStretch) -> CasedMember | None:
    thing = start.thing
    if thing is None or thing.member is None or start.shift is None:
        return None
    near, far = member_faces(start)
    end_near, end_far = member_faces(end)
    return CasedMember(
        name=thing.name,
        near=EndPositions(near, end_near),
        far=EndPositions(far, end_far),
        drop=thing.member.drop,
        shift=start.shift,
        shift_limit=thing.shift_limit,
    )


def member_faces(beam: BeamStretch) -> tuple[LengthFigure, LengthFigure]:
    """Turn a cased beam into the faces of the member inside it."""
    if beam.thing is None or beam.thing.member is None:
        raise ValueError("only a cased beam has a member")
    center, width = beam.thing.center.value, beam.thing.member.width
    return (
        MEMBER_NEAR.gives(center - width / 2, center=center, width=width),
        MEMBER_FAR.gives(center + width / 2, center=center, width=width),
    )


def wall_beams(ends: DividedEnds, profiles: Mapping[str, str]) -> Iterator[WallBeam]:
    """Turn a run's soffits and wall beams into records; `profiles` has the profile of each id."""
    for start, end in ends.pairs:
        if isinstance(start, WallStretch):
            yield WallBeam(
                id=start.strip.id,
                wall=start.strip.wall,
                kind=start.strip.wall_kind,
                on=ends.frame.name,
                near=EndPositions(start.near, end.near),
                far=EndPositions(start.far, end.far),
                width=start.strip.width,
                profile=profiles[start.strip.id],
            )
