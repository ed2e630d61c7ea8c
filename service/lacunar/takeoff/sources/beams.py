"""Boards of beams as pieces: what they are ripped from, which end is to the left, which edges."""

from collections.abc import Iterator
from dataclasses import replace

from lacunar.layout.crossing_records import BoardCut, BoardEnd, CutPiece, PiecePlace
from lacunar.layout.records import Beam, BeamProfile, Layout, ProfilePart, WallBeam
from lacunar.layout.survey.strip_boards import board_between
from lacunar.layout.survey_records import CrookedRoom, CrookedWall, StripBoard
from lacunar.measure.figure import LengthFigure
from lacunar.model.beams import BottomJoint
from lacunar.model.room import RunName
from lacunar.takeoff.part_records import EndCut, Face, PartEnd, PartKind, PartPlace, Pieces, Shape
from lacunar.takeoff.sources.source import Source

_CUTS = {cut: EndCut(cut.value) for cut in BoardCut}

# The sides, by the run their beam's place is measured along, whose end away from the datum is to
# the left of someone who faces them. The plan lies as the floor does.
_TURNED_SIDES = {(RunName.LENGTH, "near"), (RunName.WIDTH, "far")}
# The walls at which the bottom of a wall beam, its edge at the wall away from who looks at the face
# that shows, has its end away from the datum to the left.
_TURNED_BOTTOMS = {"W1", "W2"}


def beam_pieces(source: Source) -> Iterator[Pieces]:
    """Turn a layout's boards of beams into pieces.

    A board that can be turned end for end on the bench without its faces or edges being exchanged
    has no hand: both ends are then told in one order, so that left and right ones are one part. A
    side that is scribed is as wide as its tallest place. The boards of a beam at a wall out of
    square are as wide as the wall asks, and tell the width at both ends.
    """
    layout = source.layout
    beams: dict[str, Beam | WallBeam] = {beam.id: beam for beam in layout.beams}
    beams.update((beam.id, beam) for beam in layout.wall_beams)
    profiles = {profile.id: profile for profile in layout.profiles}
    ripped = {level.beam: level.board for level in (layout.levels.beams if layout.levels else ())}
    tapers = _tapers(layout)
    for cut in layout.pieces:
        profile = profiles[cut.profile]
        board = next(part for part in profile.parts if part.name == cut.part)
        for place in cut.places:
            width = ripped.get(place.beam, board.width) if cut.part == "side" else board.width
            at_wall = tapers.get((place.beam, cut.part))
            if at_wall is None:
                ends = _ends(cut, place, profile, beams[place.beam])
                shape = _shape(source, cut, (profile, board), width, ends)
            else:
                shape = _tapered(source, cut, place, (profile, board), at_wall)
            went = PartPlace(
                source.number, (place.beam,), place.side or "", place.start, place.end, 1
            )
            yield Pieces(shape, (went,))


_AtWall = tuple[CrookedRoom, CrookedWall, StripBoard]


def _tapers(layout: Layout) -> dict[tuple[str, str], _AtWall]:
    """Boards of beams at walls that are wider somewhere than their straight face asks."""
    crooked, profiles = layout.crooked, layout.profile_of
    return {
        (wall.strip, board.part): (crooked, wall, board)
        for wall in (crooked.walls if crooked else ())
        for board in wall.boards
        if crooked is not None and wall.strip is not None and _is_wider(board, profiles[wall.strip])
    }


def _is_wider(board: StripBoard, profile: BeamProfile) -> bool:
    straight = next(part.width.value for part in profile.parts if part.name == board.part)
    return any(size.value != straight for size in (board.at_start, board.at_end, board.widest))


def _tapered(
    source: Source,
    cut: CutPiece,
    place: PiecePlace,
    made_of: tuple[BeamProfile, ProfilePart],
    at_wall: _AtWall,
) -> Shape:
    """A board by the width its wall asks for, with that at both its ends."""
    crooked, wall, whole = at_wall
    own = board_between(crooked, wall, whole, (place.start, place.end))
    ends = (
        replace(_end(cut.start), width=own.at_start.value),
        replace(_end(cut.end), width=own.at_end.value),
    )
    if wall.wall in _TURNED_BOTTOMS:
        ends = ends[::-1]
    shape = _shape(source, cut, made_of, own.widest, ends)
    return replace(shape, material=source.lumber(whole.stock), tapered=True)


def _shape(
    source: Source,
    cut: CutPiece,
    made_of: tuple[BeamProfile, ProfilePart],
    width: LengthFigure,
    ends: tuple[PartEnd, PartEnd],
) -> Shape:
    profile, board = made_of
    if board.stock is None:
        raise ValueError(f"{board.name} of {profile.id} is cut from nothing")
    kind = PartKind(cut.part)
    return Shape(
        kind=kind,
        name=kind.value.replace("_", " ").capitalize(),
        material=source.lumber(board.stock),
        thickness=board.thickness,
        width=width,
        length=cut.length,
        short_length=cut.short_length,
        left=ends[0],
        right=ends[1],
        mitred_edges=_mitred_edges(cut, profile),
        face=Face.OUT if cut.part == "side" else Face.DOWN,
        length_allowance=source.take_off.length_allowance,
        width_allowance=source.take_off.width_allowance,
    )


def _mitred_edges(cut: CutPiece, profile: BeamProfile) -> int:
    """The lower edge of a folded beam's side; of its bottom, an edge for each side."""
    if profile.bottom_joint is not BottomJoint.MITRED:
        return 0
    return 1 if cut.part == "side" else profile.sides


def _ends(
    cut: CutPiece, place: PiecePlace, profile: BeamProfile, beam: Beam | WallBeam
) -> tuple[PartEnd, PartEnd]:
    start, end = _end(cut.start), _end(cut.end)
    if not _has_hand(cut, profile):
        first, second = sorted((start, end), key=lambda each: each.key)
        return first, second
    if cut.part == "side":
        turned = (beam.on, place.side) in _TURNED_SIDES
    else:
        turned = isinstance(beam, WallBeam) and beam.wall in _TURNED_BOTTOMS
    return (end, start) if turned else (start, end)


def _has_hand(cut: CutPiece, profile: BeamProfile) -> bool:
    """Whether turning a board end for end would bring a cut or an edge to the wrong place."""
    cuts = {cut.start.cut, cut.end.cut}
    if cut.part == "side":
        return BoardCut.NOTCHED in cuts or profile.bottom_joint is BottomJoint.MITRED
    return BoardCut.MITRED in cuts or _mitred_edges(cut, profile) == 1


def _end(end: BoardEnd) -> PartEnd:
    return PartEnd(_CUTS[end.cut], end.angle, None, end.notch_along, end.notch_up)
