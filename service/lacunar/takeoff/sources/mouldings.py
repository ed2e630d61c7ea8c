"""Crown, flat mouldings and nailers as pieces, each with its hand and the corners it meets."""

from collections.abc import Iterator, Mapping
from dataclasses import replace

from lacunar.layout.moulding_records import (
    CofferTrim,
    CrownSection,
    MouldingPiece,
    PieceEnd,
)
from lacunar.layout.mouldings.pieces import CROWN
from lacunar.layout.outline_records import NAILER
from lacunar.layout.tapering import Corners, corners_out_of_square
from lacunar.measure.angle import Angle
from lacunar.measure.figure import LengthFigure, given
from lacunar.model.moulding import FlatMoulding
from lacunar.takeoff.part_records import (
    SQUARE_END,
    EndCut,
    Face,
    Material,
    MaterialKind,
    PartEnd,
    PartKind,
    Pieces,
    Shape,
)
from lacunar.takeoff.sources.source import Source, lying

_CUTS = {end: EndCut(end.value) for end in PieceEnd}
_SQUARE = Angle.of_degrees(90)
# Who faces a side from inside the coffer has the sides toward these walls to the left and right.
_BESIDE = {"W4": ("W3", "W1"), "W1": ("W4", "W2"), "W2": ("W1", "W3"), "W3": ("W2", "W4")}


def moulding_pieces(source: Source) -> Iterator[Pieces]:
    """Turn what a layout tells of mouldings into pieces, one for each side of each coffer.

    Mouldings have a hand: the piece for a left end is none for a right one.
    """
    corners = _corners(source)
    flats = {flat.name: flat for flat in source.layout.ceiling.flat_mouldings}
    section = source.layout.mouldings.crown
    for trim in source.layout.mouldings.coffers:
        for piece in trim.pieces:
            if piece.moulding == CROWN and section is not None:
                base = crown_shape(source, section, (piece.long_point, piece.short_point))
            else:
                base = flat_shape(
                    source, flats[piece.moulding], (piece.long_point, piece.short_point)
                )
            yield from _in_coffers(source, trim, (piece, base), corners)
        if section is not None:
            yield from _nailers(source, trim, section)


def _corners(source: Source) -> Mapping[str, Corners]:
    """The corners of coffers that are out of square, by the walls toward which their sides lie."""
    return corners_out_of_square(source.layout)


def _in_coffers(
    source: Source,
    trim: CofferTrim,
    cut: tuple[MouldingPiece, Shape],
    corners: Mapping[str, Corners],
) -> Iterator[Pieces]:
    piece, base = cut
    for coffer in trim.coffers:
        known = corners.get(coffer, {})
        for wall in piece.toward:
            before, after = _BESIDE[wall]
            shape = replace(
                base,
                left=piece_end(piece.left_end, known.get(frozenset((wall, before)), _SQUARE)),
                right=piece_end(piece.right_end, known.get(frozenset((wall, after)), _SQUARE)),
            )
            yield lying(shape, source.place(coffer, at=wall))


def piece_end(end: PieceEnd, corner: Angle) -> PartEnd:
    """An end; one that is cut square meets no corner."""
    return PartEnd(_CUTS[end], corner=None if end is PieceEnd.SQUARE else corner)


def crown_shape(
    source: Source, section: CrownSection, lengths: tuple[LengthFigure, LengthFigure]
) -> Shape:
    """A piece of crown by its lengths between the long and the short points."""
    asked = source.layout.ceiling.crown
    if asked is None:
        raise ValueError("a layout with crown is of a ceiling without")
    material = Material(
        MaterialKind.CROWN,
        CROWN,
        asked.thickness,
        section.face.value,
        drop=section.drop.value,
        projection=section.projection.value,
    )
    return Shape(
        kind=PartKind.CROWN,
        name=CROWN,
        material=material,
        thickness=given(asked.thickness),
        width=section.face,
        length=lengths[0],
        short_length=lengths[1],
        face=Face.OUT,
        length_allowance=source.take_off.length_allowance,
    )


def flat_shape(
    source: Source,
    flat: FlatMoulding,
    lengths: tuple[LengthFigure, LengthFigure],
    ends: tuple[PartEnd, PartEnd] = (SQUARE_END, SQUARE_END),
) -> Shape:
    """A piece of flat moulding by its lengths between the long and the short points."""
    return Shape(
        kind=PartKind.FLAT_MOULDING,
        name=flat.name,
        material=Material(MaterialKind.FLAT_MOULDING, flat.name, flat.thickness, flat.width),
        thickness=given(flat.thickness),
        width=given(flat.width),
        length=lengths[0],
        short_length=lengths[1],
        left=ends[0],
        right=ends[1],
        face=Face.OUT,
        length_allowance=source.take_off.length_allowance,
    )


def _nailers(source: Source, trim: CofferTrim, section: CrownSection) -> Iterator[Pieces]:
    """The strips of triangular section behind the crown."""
    if section.nailer is None:
        return
    for nailer in trim.nailers:
        shape = nailer_shape(source, (nailer.length, nailer.length))
        places = (source.place(coffer, quantity=nailer.quantity) for coffer in trim.coffers)
        yield lying(shape, *places)


def nailer_shape(
    source: Source,
    lengths: tuple[LengthFigure, LengthFigure],
    ends: tuple[PartEnd, PartEnd] = (SQUARE_END, SQUARE_END),
) -> Shape:
    """A strip behind the crown by its lengths between the long and the short points."""
    section = source.layout.mouldings.crown
    if section is None or section.nailer is None:
        raise ValueError("a layout without nailers has a piece of one")
    height, depth = section.nailer.height, section.nailer.depth
    material = Material(
        MaterialKind.NAILER, NAILER, None, None, drop=height.value, projection=depth.value
    )
    return Shape(
        kind=PartKind.NAILER,
        name=NAILER,
        material=material,
        thickness=depth,
        width=height,
        length=lengths[0],
        short_length=lengths[1],
        left=ends[0],
        right=ends[1],
        length_allowance=source.take_off.length_allowance,
    )
