"""The lines along which beams are held, each with what of the framing is above it."""

from collections.abc import Iterator
from dataclasses import dataclass, field
from typing import Literal

from lacunar.layout.backing.pieces import Clear, added, crossing_piece, even_piece
from lacunar.layout.backing_records import (
    BackingLine,
    BackingPiece,
    JoistLines,
    JoistRelation,
)
from lacunar.layout.joists import among_joists
from lacunar.layout.records import Beam, BeamProfile, WallBeam
from lacunar.layout.set_out_beams import SetOutBeams
from lacunar.measure.figure import LengthFigure, Rule
from lacunar.measure.length import Length
from lacunar.model.beams import FamilyProfile
from lacunar.model.fixing import BetweenJoists, Fixing
from lacunar.model.room import START_WALL

AT_START_WALL = Rule("middle of the backing at a start wall", "near + backing / 2")
AT_END_WALL = Rule("middle of the backing at an end wall", "far - backing / 2")
FLAT_MIDDLE = Rule("middle of a flat beam at a wall", "(near + far) / 2")
NEAR_CLEAT = Rule("middle of a casing's cleat, which lies on its side", "near + side + cleat / 2")
FAR_CLEAT = Rule("middle of a casing's cleat, which lies on its side", "far - side - cleat / 2")

Side = Literal["middle", "near", "far"]


@dataclass(frozen=True, slots=True)
class LineTask:
    """What lines of backing are laid out from; `joists` are None where nothing is known of them."""

    beams: SetOutBeams
    joists: JoistLines | None
    fixing: Fixing
    cut: dict[tuple[Length, Length, bool], BackingPiece] = field(default_factory=dict)


def backing_lines(task: LineTask) -> Iterator[BackingLine]:
    """Lay out every line of backing: one for each beam, two for each casing.

    A line of backing across the joists is fixed to each of them; one along them to the joist it is
    on, or to what carries it between two of them.
    """
    for beam in task.beams.backed:
        for side, position in _positions(beam, task.beams.profiles[beam.profile]):
            yield _line(task, beam, (side, position))


def backing_stretches(
    beam: Beam | WallBeam, profile: BeamProfile
) -> Iterator[tuple[Side, LengthFigure, tuple[Clear, ...]]]:
    """Turn a beam into its lines, whatever they are fixed to: side, middle and clear lengths."""
    for side, middle in _positions(beam, profile):
        yield side, middle, tuple(_beside_member(_clears(beam), beam, side))


def _positions(beam: Beam | WallBeam, profile: BeamProfile) -> Iterator[tuple[Side, LengthFigure]]:
    near, far = beam.near.at_start.value, beam.far.at_start.value
    if isinstance(beam, WallBeam) and profile.profile is FamilyProfile.FLAT:
        yield "middle", FLAT_MIDDLE.gives((near + far) / 2, near=near, far=far)
    elif isinstance(beam, WallBeam):
        backing = next(part for part in profile.parts if part.name == "backing").width.value
        if beam.looks_as == START_WALL[beam.on]:
            yield "middle", AT_START_WALL.gives(near + backing / 2, near=near, backing=backing)
        else:
            yield "middle", AT_END_WALL.gives(far - backing / 2, far=far, backing=backing)
    elif beam.member is None:
        yield "middle", beam.center.at_start
    else:
        side, cleat = profile.parts[0].thickness.value, beam.member.cleat
        if cleat:
            at = near + side + cleat / 2
            yield "near", NEAR_CLEAT.gives(at, near=near, side=side, cleat=cleat)
            at = far - side - cleat / 2
            yield "far", FAR_CLEAT.gives(at, far=far, side=side, cleat=cleat)
        if any(part.name == "backing" for part in profile.parts):
            yield "middle", beam.center.at_start


def _line(task: LineTask, beam: Beam | WallBeam, at: tuple[Side, LengthFigure]) -> BackingLine:
    side, position = at
    joists, fixing = task.joists, task.fixing
    across = joists is not None and joists.on is not beam.on
    found = None
    if joists is not None and not across:
        found = among_joists(position.value, joists, task.beams.span(beam.on))
    clears = _beside_member(_clears(beam), beam, side)
    pieces = tuple(_piece(task, clear, across=across) for clear in clears)
    carried_by = fixing.between_joists if found is not None and found.bay else None
    blocks = None
    if carried_by is BetweenJoists.BLOCKING:
        blocks = added("blocks between joists along a line", [piece.count for piece in pieces])
    return BackingLine(
        beam=beam.id,
        side=side,
        on=beam.on,
        position=position,
        relation=_relation(joists, across=across, in_bay=carried_by is not None),
        joist=found.joist if found else None,
        offset=found.offset if found else None,
        bearing=found.bearing if found else None,
        bay=found.bay if found else None,
        carried_by=carried_by,
        blocks=blocks,
        pieces=pieces,
    )


def _clears(beam: Beam | WallBeam) -> tuple[Clear, ...]:
    return tuple(Clear(piece.start, piece.end) for piece in beam.pieces)


def _beside_member(clears: tuple[Clear, ...], beam: Beam | WallBeam, side: Side) -> Iterator[Clear]:
    """The stretches of a line: cleats as far as the member goes, the backing of a casing beyond."""
    member = beam.member if isinstance(beam, Beam) else None
    if member is None:
        yield from clears
        return
    for clear in clears:
        start, end = clear.start, clear.end
        stretches = [(member.start, member.end)]
        if side == "middle":
            stretches = [(start, member.start), (member.end, end)]
        for near, far in stretches:
            first = max(start, near, key=lambda each: each.value)
            last = min(end, far, key=lambda each: each.value)
            if first.value < last.value:
                yield Clear(first, last)


def _relation(joists: JoistLines | None, *, across: bool, in_bay: bool) -> JoistRelation:
    if joists is None:
        return JoistRelation.UNKNOWN
    if across:
        return JoistRelation.ACROSS
    return JoistRelation.BETWEEN if in_bay else JoistRelation.ON_JOIST


def _piece(task: LineTask, clear: Clear, *, across: bool) -> BackingPiece:
    """A piece for a clear length; equal ones are worked out once."""
    key = clear.start.value, clear.end.value, across
    if key not in task.cut:
        if across and task.joists is not None:
            centers = [joist.center for joist in task.joists.joists]
            task.cut[key] = crossing_piece(clear, centers, task.fixing)
        else:
            task.cut[key] = even_piece(clear, task.fixing, framed=task.joists is not None)
    return task.cut[key]
