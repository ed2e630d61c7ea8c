"""The crown of a ceiling, frame by frame: coffers that take the same pieces are one frame.

Shapes are in millimeters of the room, y up; every length that is told stays the layout's figure.
"""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass, replace
from math import cos, radians, sin, tan

from lacunar.drawing.elements import Pt
from lacunar.layout.moulding_records import CofferTrim, MouldingPiece, PieceEnd
from lacunar.layout.mouldings.pieces import CROWN
from lacunar.layout.outline_records import PartialCoffer, PartialSide
from lacunar.layout.records import Layout
from lacunar.layout.tapering import Corners, corners_out_of_square
from lacunar.measure.angle import Angle
from lacunar.measure.figure import LengthFigure
from lacunar.measure.length import ZERO, Length
from lacunar.measure.plane import Spot
from lacunar.model.moulding import CrownMethod, FlatPlace

WALLS = ("W4", "W3", "W2", "W1")
"""The walls toward which a coffer's sides lie, counter-clockwise from its corner at the datum."""
_SQUARE = Angle.of_degrees(90)


@dataclass(frozen=True, slots=True)
class FramePiece:
    """A piece of crown: toward which sides it goes, how often it is cut, its ends and lengths.

    `backs` is how far its edge furthest out stays behind the one on the side at its left and its
    right end [mm], below zero where it goes further.
    """

    sides: tuple[str, ...]
    quantity: int
    ends: tuple[PieceEnd, PieceEnd]
    long_point: LengthFigure
    short_point: LengthFigure
    backs: tuple[float, float]
    too_short: bool = False


@dataclass(frozen=True, slots=True)
class CrownFrame:
    """Crown that goes alike into some coffers: their outline from below, and its pieces.

    `rings` are the coffer's corners, counter-clockwise, then those about columns in it, clockwise;
    `sides` the names of its sides, each from its corner on. Crown stands `inward` of them [mm],
    flat mouldings behind it to `flats`. `bare` are sides with nothing left for a piece, `size` is
    the opening where it is a rectangle, `meets` whether two runs would take the same place.
    """

    name: str
    coffers: tuple[str, ...]
    rings: tuple[tuple[Pt, ...], ...]
    sides: tuple[str, ...]
    pieces: tuple[FramePiece, ...]
    flats: float
    inward: float
    bare: tuple[str, ...] = ()
    size: tuple[LengthFigure, LengthFigure] | None = None
    seen: tuple[LengthFigure, LengthFigure] | None = None
    meets: bool = False


def millimeters(length: Length) -> float:
    """A length of the layout in millimeters of the room."""
    return float(length.millimeters)


def crown_frames(layout: Layout) -> tuple[CrownFrame, ...]:
    """All frames of a ceiling: those of whole coffers, then those of coffers that walls cut."""
    if layout.mouldings.crown is None:
        return ()
    found = [*_whole(layout), *_cut(layout)]
    return tuple(replace(each, name=f"F{number}") for number, each in enumerate(found, start=1))


def _flats(layout: Layout) -> float:
    at_ceiling = [f.thickness for f in layout.ceiling.flat_mouldings if f.at is FlatPlace.CEILING]
    return millimeters(sum(at_ceiling, ZERO))


def _inward(layout: Layout) -> float:
    """From a coffer's side to the edge of its crown that is seen."""
    crown, asked = layout.mouldings.crown, layout.ceiling.crown
    assert crown is not None
    assert asked is not None
    framed = asked.method is CrownMethod.BENCH_FRAME
    fit = millimeters(asked.fit_total) / 2 if framed else 0.0
    return _flats(layout) + fit + millimeters(crown.projection.value)


def _whole(layout: Layout) -> Iterator[CrownFrame]:
    """Frames of whole coffers: whatever lies about these, alike where all that goes in is alike."""
    corners = corners_out_of_square(layout)
    alike: dict[tuple[object, ...], list[CrownFrame]] = {}
    for trim in layout.mouldings.coffers:
        frame = _frame(layout, trim, corners.get(trim.coffers[0], {}))
        key: tuple[object, ...] = (trim.coffers,)
        if frame.size is not None:
            key = (*(each.value for each in frame.size), *_fitted(trim))
        alike.setdefault(key, []).append(frame)
    for frames in alike.values():
        coffers = tuple(coffer for frame in frames for coffer in frame.coffers)
        yield replace(frames[0], coffers=coffers)


def _fitted(trim: CofferTrim) -> Iterator[object]:
    """What is cut for a coffer, and what is seen of it after."""
    for piece in trim.pieces:
        yield piece.moulding, piece.toward, piece.quantity, piece.left_end, piece.right_end
        yield piece.long_point.value, piece.short_point.value
    yield from ((each.along, each.quantity, each.length.value) for each in trim.nailers)
    yield trim.seen_length.value, trim.seen_width.value


def _frame(layout: Layout, trim: CofferTrim, own: Corners) -> CrownFrame:
    size = None if own else _size(layout, trim.coffers[0])
    return CrownFrame(
        name="",
        coffers=trim.coffers,
        rings=(_rectangle(size) if size else _quadrilateral(layout, trim.coffers[0], own),),
        sides=WALLS,
        pieces=tuple(_pieces(layout, trim, own)),
        flats=_flats(layout),
        inward=_inward(layout),
        size=size,
        seen=None if own else (trim.seen_length, trim.seen_width),
    )


def _size(layout: Layout, identity: str) -> tuple[LengthFigure, LengthFigure]:
    """What a square frame is sized by: the coffer as planned, or as it was measured."""
    measured = layout.measured_openings
    for opening in measured.openings if measured else ():
        if opening.coffer == identity:
            return opening.fit_length, opening.fit_width
    coffer = next(each for each in layout.coffers if each.id == identity)
    return coffer.length, coffer.width


def _rectangle(size: tuple[LengthFigure, LengthFigure]) -> tuple[Pt, ...]:
    long, wide = (millimeters(each.value) for each in size)
    return (Pt(0.0, 0.0), Pt(long, 0.0), Pt(long, wide), Pt(0.0, wide))


def _quadrilateral(layout: Layout, identity: str, corners: Corners) -> tuple[Pt, ...]:
    """A coffer out of square: as it is laid out, or from its sides and corners as measured."""
    measured = layout.measured_openings
    for opening in measured.openings if measured else ():
        if opening.coffer == identity and corners:
            lengths = [millimeters(opening.side(number).value) for number in range(len(WALLS) - 1)]
            return tuple(_walked(lengths, corners))
    coffer = next(each for each in layout.coffers if each.id == identity)
    return tuple(Pt(millimeters(spot.x), millimeters(spot.y)) for spot in coffer.corners)


def _walked(lengths: Sequence[float], corners: Corners) -> Iterator[Pt]:
    at, heading = Pt(0.0, 0.0), 0.0
    yield at
    for number, length in enumerate(lengths):
        at = at.moved(length * cos(radians(heading)), length * sin(radians(heading)))
        yield at
        between = frozenset((WALLS[number], WALLS[(number + 1) % len(WALLS)]))
        heading += 180 - float(corners[between].degrees)


def _pieces(layout: Layout, trim: CofferTrim, corners: Corners) -> Iterator[FramePiece]:
    for piece in trim.pieces:
        if piece.moulding == CROWN:
            backs = _backs(layout, piece, corners)
            yield FramePiece(
                sides=piece.toward,
                quantity=piece.quantity,
                ends=(piece.left_end, piece.right_end),
                long_point=piece.long_point,
                short_point=piece.short_point,
                backs=backs,
            )


def _backs(layout: Layout, piece: MouldingPiece, corners: Corners) -> tuple[float, float]:
    """Facing a side from inside, its left end is at the corner that comes after it."""
    number = WALLS.index(piece.toward[0])
    wall, before, after = (WALLS[(number + step) % len(WALLS)] for step in (0, -1, 1))
    left, right = (corners.get(frozenset((wall, other)), _SQUARE) for other in (after, before))
    return _back(layout, piece.left_end, left), _back(layout, piece.right_end, right)


def _back(layout: Layout, end: PieceEnd, corner: Angle) -> float:
    return 0.0 if end is PieceEnd.SQUARE else _behind(layout, corner / 2)


def _behind(layout: Layout, cut: Angle) -> float:
    """How far the edge that stands out stays behind, by the angle between side and cut [mm]."""
    crown = layout.mouldings.crown
    assert crown is not None
    return millimeters(crown.projection.value) / tan(radians(float(cut.degrees)))


def _cut(layout: Layout) -> Iterator[CrownFrame]:
    alike: dict[tuple[object, ...], list[PartialCoffer]] = {}
    for coffer in layout.outlined.coffers_as_cut if layout.outlined else ():
        alike.setdefault(tuple(_cut_key(coffer)), []).append(coffer)
    for coffers in alike.values():
        coffer = coffers[0]
        pieces = tuple(_cut_pieces(layout, coffer))
        sides = tuple(str(number) for number in range(1, len(coffer.all_sides) + 1))
        crowned = {side for piece in pieces for side in piece.sides}
        yield CrownFrame(
            name="",
            coffers=tuple(each.id for each in coffers),
            rings=tuple(
                tuple(_spot(spot) for spot in ring)
                for ring in (coffer.corners, *(hole.corners for hole in coffer.holes))
            ),
            sides=sides,
            pieces=pieces,
            bare=tuple(side for side in sides if side not in crowned),
            flats=_flats(layout),
            inward=_inward(layout),
            meets=coffer.crown_meets,
        )


def _spot(spot: Spot) -> Pt:
    return Pt(millimeters(spot.x), millimeters(spot.y))


def _cut_key(coffer: PartialCoffer) -> Iterator[object]:
    """What cut coffers have in common whose crown is cut alike."""
    for side in coffer.all_sides:
        yield side.length.value, side.corner.value, side.left_end, side.right_end
        yield side.long_point and side.long_point.value
    yield coffer.crown_meets, len(coffer.holes)


def _cut_pieces(layout: Layout, coffer: PartialCoffer) -> Iterator[FramePiece]:
    number = 0
    for ring in (coffer.sides, *(hole.sides for hole in coffer.holes)):
        for place, side in enumerate(ring):
            number += 1
            piece = _cut_piece(layout, str(number), side, ring[place - 1])
            if piece is not None:
                yield piece


def _cut_back(layout: Layout, end: PieceEnd, corner: Angle) -> float:
    """In a cut coffer an end that butts against a side lies along it, whatever their corner."""
    return _behind(layout, corner if end is PieceEnd.SQUARE else corner / 2)


def _cut_piece(
    layout: Layout, name: str, side: PartialSide, before: PartialSide
) -> FramePiece | None:
    left, right = side.left_end, side.right_end
    long, short = side.long_point, side.short_point
    if left is None or right is None or long is None or short is None:
        return None
    if min(long.value, short.value) <= ZERO:
        return None
    return FramePiece(
        sides=(name,),
        quantity=1,
        ends=(left, right),
        long_point=long,
        short_point=short,
        backs=(
            _cut_back(layout, left, side.corner.value),
            _cut_back(layout, right, before.corner.value),
        ),
        too_short=bool(side.too_short),
    )
