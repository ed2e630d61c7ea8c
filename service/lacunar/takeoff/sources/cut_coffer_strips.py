"""Flat mouldings and nailers in coffers that walls or columns cut, as pieces."""

from collections.abc import Iterator

from lacunar.layout.moulding_records import PieceEnd
from lacunar.layout.outline_records import NAILER, PartialSide, SideStrip
from lacunar.measure.angle import Angle
from lacunar.takeoff.part_records import SQUARE_END, EndCut, PartEnd, Pieces, Shape
from lacunar.takeoff.sources.mouldings import flat_shape, nailer_shape, piece_end
from lacunar.takeoff.sources.source import Source, lying

_RIGHT = Angle.of_degrees(90)


def cut_coffer_strip_pieces(source: Source) -> Iterator[Pieces]:
    """Turn the strips along cut coffers' sides into pieces, each with its hand.

    A place tells the number of the coffer's side, from 1, those about columns after the others.
    """
    room = source.layout.outlined
    for coffer in room.coffers_as_cut if room else ():
        first = 1
        for sides in (coffer.sides, *(hole.sides for hole in coffer.holes)):
            for at, side in enumerate(sides):
                for strip in side.strips:
                    if strip.has_room:
                        shape = _shape(source, strip, (side, sides[at - 1]))
                        yield lying(shape, source.place(coffer.id, at=str(first + at)))
            first += len(sides)


def _shape(source: Source, strip: SideStrip, beside: tuple[PartialSide, PartialSide]) -> Shape:
    """A strip of a side that is told with the one before it, whose corner is at its right end."""
    side, before = beside
    ends = (
        _end(strip.left_end, strip.left_cut.value, side.corner.value),
        _end(strip.right_end, strip.right_cut.value, before.corner.value),
    )
    lengths = strip.cut_from, strip.between_ends
    if strip.moulding == NAILER:
        return nailer_shape(source, lengths, ends)
    flats = {flat.name: flat for flat in source.layout.ceiling.flat_mouldings}
    return flat_shape(source, flats[strip.moulding], lengths, ends)


def _end(end: PieceEnd, cut: Angle, corner: Angle) -> PartEnd:
    """An end: mitred to the corner, or square; beveled where what it butts against is aslant."""
    if end is not PieceEnd.SQUARE:
        return piece_end(end, corner)
    return SQUARE_END if cut == _RIGHT else PartEnd(EndCut.MITRED, abs(_RIGHT - cut))
