"""What is told of a grid that follows the walls: beams as they lie, and coffers that taper."""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from fractions import Fraction

from lacunar.layout.beams.lines import Line, Meeting, Stretch
from lacunar.layout.follow.coffers import planned_coffers
from lacunar.layout.follow.grid import FollowedGrid, along_run
from lacunar.layout.follow.meeting import Faces, faces_of
from lacunar.layout.followed_records import (
    CofferTaper,
    FollowedBeam,
    FollowedFace,
    FollowedPiece,
    FollowedWalls,
)
from lacunar.layout.measured_outcome import Outcome
from lacunar.layout.opening_records import MeasuredOpening, Squareness
from lacunar.layout.records import BeamPiece
from lacunar.layout.survey.along_walls import Line as Joined
from lacunar.layout.survey_records import CrookedRoom
from lacunar.measure.angle import angle_of_legs
from lacunar.measure.figure import AngleFigure, NumberFigure, Rule
from lacunar.measure.length import Length
from lacunar.measure.plane import Spot, along, on_grid, turn
from lacunar.measure.polygon import area
from lacunar.model.room import RunName
from lacunar.model.survey import Crooked

CUT = Rule(
    "end cut off square: how much further the far face goes there, over the width across",
    "atan(further / across)",
)
BY_DIAGONALS = "(c_x - a_x) * (d_y - b_y) - (c_y - a_y) * (d_x - b_x)"
_SQUARE_INCHES = 144


@dataclass(frozen=True, slots=True)
class Tapering:
    """What goes into coffers that taper: openings as planned or measured, and what fills them."""

    openings: Sequence[MeasuredOpening]
    outcome: Outcome


def followed_walls(
    crooked: CrookedRoom,
    asked: Crooked,
    room: NumberFigure,
    beams: tuple[FollowedBeam, ...],
    tapering: Tapering,
) -> FollowedWalls:
    """Put together what is told of a grid along the walls.

    Parameters: `crooked`, the coffers of both ways; `asked`; `room`, its area [ft2]; `beams` as
    they lie; `tapering`, what goes into coffers.
    """
    outcome = tapering.outcome
    return FollowedWalls(
        out_of_square=asked.out_of_square,
        out_of_square_limit=asked.out_of_square_limit,
        room=room,
        openings=_openings(crooked),
        beams=beams,
        coffers=tuple(_tapers(tapering.openings)),
        crown=outcome.crown,
        panels=outcome.panels,
        boards=outcome.boards,
    )


def _tapers(openings: Sequence[MeasuredOpening]) -> Iterator[CofferTaper]:
    for opening in openings:
        if opening.out_of_square is not None:
            tapers = opening.squareness is Squareness.OUT_OF_SQUARE
            yield CofferTaper(opening.coffer, opening.out_of_square, tapers)


def _openings(crooked: CrookedRoom) -> NumberFigure:
    """The area of all coffers [ft2]: of each, half the product of its diagonals' ways."""
    terms: list[str] = []
    operands: dict[str, Length] = {}
    total = Fraction(0)
    for number, coffer in enumerate(planned_coffers(crooked), start=1):
        spots = [corner.at for corner in coffer.corners]
        terms.append(BY_DIAGONALS.replace("_", f"{number}_"))
        for name, spot in zip("abcd", spots, strict=True):
            operands |= {f"{name}{number}_x": spot.x, f"{name}{number}_y": spot.y}
        total += area(spots)
    formula = f"({' + '.join(terms)}) / 2 / (foot * foot)"
    rule = Rule("area of all coffers: half of what both diagonals of each span", formula)
    foot = Length.of_feet(1)
    return rule.approximates(total / _SQUARE_INCHES, **operands, foot=foot)


def followed_beams(meeting: Meeting, grid: FollowedGrid) -> Iterator[FollowedBeam]:
    """Turn what meets what in a grid along the walls into its beams, each with its pieces."""
    faces = faces_of(grid)
    for row in meeting.rows.values():
        for line in row.lines:
            own = faces[line.id]
            stretches = meeting.stretches(line, lambda _: False)
            yield FollowedBeam(
                line.id, own.center, tuple(_piece(line, own, stretch) for stretch in stretches)
            )


def _piece(line: Line, own: Faces, stretch: Stretch) -> FollowedPiece:
    if stretch.faces is None:
        raise ValueError("only a grid along the walls has pieces with two faces")
    near, far = (
        _face(line.on, joined, piece)
        for joined, piece in zip((own.near, own.far), stretch.faces, strict=True)
    )
    way = own.center[1] - own.center[0]
    start, end = far.start - near.start, far.end - near.end
    return FollowedPiece(near, far, _cut(-1, way, start), _cut(1, way, end))


def _face(on: RunName, joined: Joined, piece: BeamPiece) -> FollowedFace:
    start, end = (_on(joined, on, place.value) for place in (piece.start, piece.end))
    return FollowedFace(start, end, piece.length)


def _on(joined: Joined, on: RunName, at: Length) -> Spot:
    """The place on a line across a run, so far along the other run."""
    start, end = joined
    low, high = (along_run(spot, on.other) for spot in joined)
    place = on_grid(along_run(start + (end - start) * ((at - low) / (high - low)), on))
    return Spot(place, at) if on is RunName.LENGTH else Spot(at, place)


def _cut(outward: int, way: Spot, across: Spot) -> AngleFigure:
    """How far an end is off a square cut; `across` it goes from the near face to the far one."""
    further = Length.of_inches(along(way, across) * outward)
    wide = Length.of_inches(abs(turn(way, across)))
    return CUT.approximates(angle_of_legs(further, wide), further=further, across=wide)
