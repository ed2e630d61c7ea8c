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
from lacunar.measure.figure import LengthFigure, Rule, given
from lacunar.measure.length import ZERO, Length
from lacunar.model.room import RunName

MEMBER_NEAR = Rule("near face of a member", "center - width / 2")
MEMBER_FAR = Rule("far face of a member", "center + width / 2")
REACH_NEAR = Rule(
    "nearest place of a clad member to the datum", "min(near_at_start, near_at_end) - cladding"
)
REACH_FAR = Rule(
    "furthest place of a clad member from the datum", "max(far_at_start, far_at_end) + cladding"
)
SKEW = Rule(
    "how far a member runs out of square: between its centers at both ends",
    "abs(center_at_end - center_at_start)",
)

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
    across: RunFrame,
) -> Beam:
    """Turn a beam at both ends into its record. It runs through if it is in one piece.

    `across` is the run it lies along.
    """
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
        member=_member(start, across),
    )


def _member(beam: BeamStretch, across: RunFrame) -> CasedMember | None:
    thing = beam.thing
    if thing is None or thing.member is None or beam.shift is None:
        return None
    member = thing.member
    (near, far), (end_near, end_far) = member_faces(beam)
    return CasedMember(
        name=thing.name,
        start=given(ZERO) if member.starts_at is None else across.place(member.starts_at),
        end=across.span if member.ends_at is None else across.place(member.ends_at),
        near=EndPositions(near, end_near),
        far=EndPositions(far, end_far),
        drop=member.drop,
        drop_at_end=member.drop_at_end,
        clad=member.cladding,
        cleat=member.cleat,
        skew=SKEW.gives(
            member.skew, center_at_start=member.center, center_at_end=member.center_at_end
        ),
        shift=beam.shift,
        shift_limit=thing.shift_limit,
    )


Faces = tuple[LengthFigure, LengthFigure]


def member_faces(beam: BeamStretch) -> tuple[Faces, Faces]:
    """Turn a cased beam into the faces of the member inside it, at its start and at its end."""
    if beam.thing is None or beam.thing.member is None or beam.thing.member_ends is None:
        raise ValueError("only a cased beam has a member")
    width = beam.thing.member.width
    start, end = (_faces(center.value, width) for center in beam.thing.member_ends)
    return start, end


def _faces(center: Length, width: Length) -> Faces:
    return (
        MEMBER_NEAR.gives(center - width / 2, center=center, width=width),
        MEMBER_FAR.gives(center + width / 2, center=center, width=width),
    )


def member_reach(beam: BeamStretch) -> Faces:
    """Turn a cased beam into the places its member nowhere goes past, with what it is clad with."""
    (near, far), (near_at_end, far_at_end) = member_faces(beam)
    cladding = beam.thing.member.cladding if beam.thing and beam.thing.member else ZERO
    return (
        REACH_NEAR.gives(
            min(near.value, near_at_end.value) - cladding,
            near_at_start=near.value,
            near_at_end=near_at_end.value,
            cladding=cladding,
        ),
        REACH_FAR.gives(
            max(far.value, far_at_end.value) + cladding,
            far_at_start=far.value,
            far_at_end=far_at_end.value,
            cladding=cladding,
        ),
    )


def wall_beams(
    ends: DividedEnds,
    profiles: Mapping[str, str],
    pieces: Mapping[str, tuple[BeamPiece, ...]],
) -> Iterator[WallBeam]:
    """Turn a run's soffits and wall beams into records.

    `profiles` has the profile of each id, `pieces` its clear lengths.
    """
    for start, end in ends.pairs:
        if isinstance(start, WallStretch):
            yield WallBeam(
                id=start.strip.id,
                wall=start.strip.wall,
                looks_as=start.strip.wall,
                kind=start.strip.wall_kind,
                on=ends.frame.name,
                near=EndPositions(start.near, end.near),
                far=EndPositions(start.far, end.far),
                width=start.strip.width,
                profile=profiles[start.strip.id],
                pieces=pieces[start.strip.id],
            )
