"""The boards of beams as they are seen from below at a crossing: their outlines, one over another.

Each board is told by the edges it has across its beam and by how far it reaches past the face of
what stops it; both are the layout's. What is here is where that lies in the plane.
"""

from collections.abc import Callable, Iterator, Sequence
from dataclasses import dataclass
from typing import Literal

from lacunar.drawing.elements import Pt
from lacunar.drawing.views.crossing.standing import (
    Side,
    Standing,
    crossing_place,
    edges_of,
    millimeters,
)
from lacunar.layout.beams.board_ends import Level, levels
from lacunar.layout.crossing_records import BoardCut, BoardEnd, BoardPart
from lacunar.model.beams import BottomJoint

Role = Literal["through", "stopped", "beside"]
Pasts = Callable[[BoardEnd, float, float], tuple[tuple[float, float], ...]]
"""Turns an end and a board's two edges into how far it reaches past the face, edge by edge."""


@dataclass(frozen=True, slots=True)
class Arm:
    """A beam on one side of what stops it: towards that one's near face or its far one."""

    beam: Standing
    stop: Standing
    toward: Side
    role: Role

    def at(self, across: float, past: float) -> Pt:
        """The place on an edge that lies `past` the face of what stops the beam [mm]."""
        face = self.stop.width - past if self.toward == "far" else past
        return crossing_place(self.beam, across, self.stop, face)


@dataclass(frozen=True, slots=True)
class SeenBoard:
    """A board's outline; drawn are the `lines` of it that are its edges, not where it breaks off.

    `lowest` is how far its lower face lies below the ceiling [mm]; one further down covers others.
    `covered` is one that a bottom under it hides.
    """

    role: Role
    beam: str
    part: BoardPart
    side: Side | None
    toward: Side | None
    corners: tuple[Pt, ...]
    lines: tuple[tuple[Pt, ...], ...]
    lowest: float
    covered: bool


def cut_boards(
    arm: Arm, ends: dict[BoardPart, BoardEnd], pasts: Pasts, reach: float
) -> Iterator[SeenBoard]:
    """The boards of an arm that end at the crossing; `reach` is how far the arm is drawn [mm]."""
    for level in _levels(arm.beam):
        end = ends.get(level.part)
        if end is None:
            continue
        for side, first, second in edges_of(arm.beam, level):
            tip = [arm.at(across, past) for across, past in pasts(end, first, second)]
            yield _board(arm, level, side, (arm.at(first, -reach), *tip, arm.at(second, -reach)))


def boards_on(
    arm: Arm, parts: Sequence[BoardPart], beyond: float, reach: float
) -> Iterator[SeenBoard]:
    """The boards of an arm that are not cut: on to the far side of the other beam, and beyond."""
    for level in _levels(arm.beam):
        if level.part not in parts:
            continue
        for side, first, second in edges_of(arm.beam, level):
            one = arm.at(first, -reach), arm.at(first, arm.stop.width + beyond)
            two = arm.at(second, arm.stop.width + beyond), arm.at(second, -reach)
            if beyond:
                yield _through(arm, level, side, (one, two))
            else:
                yield _board(arm, level, side, (*one, *two))


def _levels(beam: Standing) -> tuple[Level, ...]:
    return levels(beam.profile) if beam.profile else ()


def _board(arm: Arm, level: Level, side: Side | None, corners: tuple[Pt, ...]) -> SeenBoard:
    return SeenBoard(
        role=arm.role,
        beam=arm.beam.id,
        part=level.part,
        side=side,
        toward=arm.toward,
        corners=corners,
        lines=(corners,),
        lowest=millimeters(level.bottom),
        covered=_covered(arm.beam, level),
    )


def _through(
    arm: Arm, level: Level, side: Side | None, edges: tuple[tuple[Pt, Pt], tuple[Pt, Pt]]
) -> SeenBoard:
    return SeenBoard(
        role=arm.role,
        beam=arm.beam.id,
        part=level.part,
        side=side,
        toward=None,
        corners=(*edges[0], *edges[1]),
        lines=edges,
        lowest=millimeters(level.bottom),
        covered=_covered(arm.beam, level),
    )


def _covered(beam: Standing, level: Level) -> bool:
    """Whether a side stands on a bottom that reaches out to its face, or beyond."""
    if level.part != "side" or beam.profile is None:
        return False
    bottom = next(each for each in _levels(beam) if each.part == "bottom")
    return beam.profile.bottom_joint is not BottomJoint.BETWEEN and millimeters(bottom.edge) >= 0


def pasts_to(beam: Standing, long: Literal["wall", "face"] = "wall") -> Pasts:
    """How boards of a beam reach past a face, a mitred one furthest at its edge at the wall.

    A side of a beam that stands at no wall is longest at its back; `face` is for corners that jut
    into the room, round which the edge at the face goes furthest.
    """

    def pasts(end: BoardEnd, first: float, second: float) -> tuple[tuple[float, float], ...]:
        past, short = millimeters(end.past.value), millimeters(end.past_short.value)
        if end.cut is BoardCut.POINTED:
            return ((first, short), ((first + second) / 2, past), (second, short))
        if end.cut is not BoardCut.MITRED:
            return ((first, past), (second, past))
        second_long = _second_at_back(beam, first, second) is (long == "wall")
        return ((first, short), (second, past)) if second_long else ((first, past), (second, short))

    return pasts


def _second_at_back(beam: Standing, first: float, second: float) -> bool:
    """Whether the second edge is further from the face that is seen than the first."""
    if beam.wall is not None:
        return beam.wall == "far"
    return first + second < beam.width


def slanted_pasts(beam: Standing, longest: float, longer: Side) -> Pasts:
    """How boards reach past the end of the full width at an angled face, by where they lie."""

    def past(across: float) -> float:
        share = across / beam.width
        return longest * (1 - share if longer == "near" else share)

    def pasts(end: BoardEnd, first: float, second: float) -> tuple[tuple[float, float], ...]:
        return ((first, past(first)), (second, past(second)))

    return pasts
