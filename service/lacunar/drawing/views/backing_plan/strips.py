"""Backing on paper: the corners of every piece, and the places it is fixed at."""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass

from lacunar.drawing.elements import Pt
from lacunar.drawing.plan.frame import PlanFrame
from lacunar.drawing.plan.rings import on_paper
from lacunar.layout.backing.lines import Side, backing_stretches
from lacunar.layout.backing.pieces import Clear
from lacunar.layout.followed_records import FollowedPiece
from lacunar.layout.records import Beam, BeamProfile, WallBeam
from lacunar.measure.figure import LengthFigure
from lacunar.measure.length import Length
from lacunar.model.room import START_WALL, RunName
from lacunar.model.wall_kind import WallKind

Quad = tuple[Pt, Pt, Pt, Pt]
"""Near start, near end, far end, far start: along the beam on the side next the datum, and back."""
Axis = tuple[Pt, Pt]


@dataclass(frozen=True, slots=True)
class BackingStrip:
    """One line of backing: its middle along the run `on`, its width, its pieces on paper.

    `width` is None, and there are no `quads`, where a flat beam is fixed by itself: its middle line
    alone has `axes`. `places` are those it is fixed at, of which there are none where nothing is
    known of them.
    """

    beam: str
    side: Side
    on: RunName
    middle: LengthFigure
    width: Length | None
    quads: tuple[Quad, ...]
    axes: tuple[Axis, ...]
    places: tuple[Pt, ...]


def backing_strips(frame: PlanFrame) -> Iterator[BackingStrip]:
    """All lines of backing along the runs, those of beams, then those at walls."""
    layout = frame.layout
    profiles = layout.profile_of
    walls = (beam for beam in layout.wall_beams if beam.kind is not WallKind.SOFFIT)
    every: tuple[Beam | WallBeam, ...] = (*layout.beams, *walls)
    fixed = {(line.beam, line.side): line.pieces for line in layout.backing.lines}
    for beam in every:
        profile = profiles[beam.id]
        for side, middle, clears in backing_stretches(beam, profile):
            width = _width(beam, profile, side)
            quads = tuple(_quads(frame, beam, (profile, middle, width), clears))
            axes = tuple(_axis(quad) for quad in quads)
            pieces = fixed.get((beam.id, side), ())
            places = tuple(
                _along(frame, beam.on, axis, place.value)
                for axis, piece in zip(axes, pieces, strict=False)
                for place in piece.places
            )
            shown = quads if width is not None else ()
            yield BackingStrip(beam.id, side, beam.on, middle, width, shown, axes, places)


def angled_strips(frame: PlanFrame) -> Iterator[tuple[str, Quad]]:
    """The backing of each beam at an angled wall, by the beam's id."""
    layout = frame.layout
    for beam in layout.outlined.angled_beams if layout.outlined else ():
        profile = layout.profile(beam.profile)
        if profile.backing_offset is not None:
            face_end, face_start, wall_start, wall_end = (
                on_paper(frame, corner) for corner in beam.corners
            )
            share = float(profile.backing_offset.value / beam.width.value)
            near = _between(face_start, wall_start, share), _between(face_end, wall_end, share)
            yield beam.id, (*near, wall_end, wall_start)


def _width(beam: Beam | WallBeam, profile: BeamProfile, side: Side) -> Length | None:
    """How wide the backing of a line is; None of a flat beam."""
    if side != "middle" and isinstance(beam, Beam) and beam.member is not None:
        return beam.member.cleat
    backing = next((part for part in profile.parts if part.name == "backing"), None)
    return None if backing is None else backing.width.value


def _quads(
    frame: PlanFrame,
    beam: Beam | WallBeam,
    line: tuple[BeamProfile, LengthFigure, Length | None],
    clears: Sequence[Clear],
) -> Iterator[Quad]:
    profile, middle, width = line
    followed = frame.layout.followed
    if followed is not None:
        for own in followed.beams:
            if own.id == beam.id:
                yield from (_within(frame, beam, profile, piece) for piece in own.pieces)
        return
    half = 0.0 if width is None else frame.on_paper(width) / 2
    at = frame.on_paper(middle.value)
    for clear in clears:
        ends = clear.start.value, clear.end.value
        near, far = (frame.line_ends(beam.on, edge, ends) for edge in (at - half, at + half))
        yield (
            frame.along(beam.on, at - half, near[0]),
            frame.along(beam.on, at - half, near[1]),
            frame.along(beam.on, at + half, far[1]),
            frame.along(beam.on, at + half, far[0]),
        )


def _within(
    frame: PlanFrame, beam: Beam | WallBeam, profile: BeamProfile, piece: FollowedPiece
) -> Quad:
    """The backing within a piece of a beam aslant: as far in from its faces as its offset."""
    near_start, near_end, far_start, far_end = (
        on_paper(frame, spot)
        for spot in (piece.near.start, piece.near.end, piece.far.start, piece.far.end)
    )
    offset = profile.backing_offset
    share = 0.5 if offset is None else float(offset.value / profile.finished_width.value)
    first, last = share, 1.0 - share
    if isinstance(beam, WallBeam) and offset is not None:
        first, last = (0.0, last) if beam.looks_as == START_WALL[beam.on] else (first, 1.0)
    return (
        _between(near_start, far_start, first),
        _between(near_end, far_end, first),
        _between(near_end, far_end, last),
        _between(near_start, far_start, last),
    )


def _between(one: Pt, other: Pt, share: float) -> Pt:
    return one.moved((other.x - one.x) * share, (other.y - one.y) * share)


def _axis(quad: Quad) -> Axis:
    near_start, near_end, far_end, far_start = quad
    return _between(near_start, far_start, 0.5), _between(near_end, far_end, 0.5)


def _along(frame: PlanFrame, on: RunName, axis: Axis, place: Length) -> Pt:
    """Where a place along the other run lies on the middle line of a piece."""
    start, end = axis
    at = frame.on_paper(place)
    if on is RunName.LENGTH:
        share = (frame.origin.y - at - start.y) / (end.y - start.y)
    else:
        share = (frame.origin.x + at - start.x) / (end.x - start.x)
    return _between(start, end, share)
