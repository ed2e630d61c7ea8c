"""Boards of beams as pieces: what they are ripped from, which end is to the left, which edges."""

from collections.abc import Iterator

from lacunar.layout.crossing_records import BoardCut, BoardEnd, CutPiece, PiecePlace
from lacunar.layout.records import Beam, BeamProfile, ProfilePart, WallBeam
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
    side that is scribed is as wide as its tallest place.
    """
    layout = source.layout
    beams: dict[str, Beam | WallBeam] = {beam.id: beam for beam in layout.beams}
    beams.update((beam.id, beam) for beam in layout.wall_beams)
    profiles = {profile.id: profile for profile in layout.profiles}
    ripped = {level.beam: level.board for level in (layout.levels.beams if layout.levels else ())}
    for cut in layout.pieces:
        profile = profiles[cut.profile]
        board = next(part for part in profile.parts if part.name == cut.part)
        for place in cut.places:
            width = ripped.get(place.beam, board.width) if cut.part == "side" else board.width
            ends = _ends(cut, place, profile, beams[place.beam])
            shape = _shape(source, cut, (profile, board), width, ends)
            went = PartPlace(
                source.number, (place.beam,), place.side or "", place.start, place.end, 1
            )
            yield Pieces(shape, (went,))


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
