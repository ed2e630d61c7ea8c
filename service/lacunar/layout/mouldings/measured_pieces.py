"""The pieces of moulding in a coffer that was measured: each as long as its own side wants it."""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass, replace

from lacunar.layout.coffer_surroundings import Surroundings
from lacunar.layout.moulding_records import MouldingPiece, PieceEnd
from lacunar.layout.mouldings.pieces import (
    CROWN,
    LEFT_AT_EDGE,
    CofferPieces,
    CrownInCoffers,
    Cut,
    coped_cuts,
    coped_long_point,
    crown_pieces,
    crown_short_point,
    flat_short_point,
    flats_at,
    left_by_flats,
    standing_out,
)
from lacunar.layout.opening_records import MeasuredOpening, Squareness
from lacunar.layout.quadrilaterals import set_in
from lacunar.measure.angle import Angle, over_tangents
from lacunar.measure.figure import LengthFigure, Rule, given
from lacunar.measure.length import Length
from lacunar.model.ceiling import Ceiling
from lacunar.model.moulding import CrownMethod, FlatMoulding, FlatPlace
from lacunar.model.openings import OutOfSquare
from lacunar.model.room import RunName

BOTH_ENDS_LESS = Rule(
    "at corners out of square each slanted end takes its depth over the half tangent off",
    "length - depth / tan(left / 2) - depth / tan(right / 2)",
)
ONE_END_LESS = Rule(
    "at a corner out of square a slanted end takes its depth over the half tangent off",
    "length - depth / tan(corner / 2)",
)

SIDE_NUMBER = {"W4": 0, "W3": 1, "W2": 2, "W1": 3}
# As the pieces of a coffer that was not measured are told: along the length, then the width.
_TOLD = ("W4", "W2", "W1", "W3")


@dataclass(frozen=True, slots=True)
class MeasuredShape:
    """A coffer's sides by wall, and its corners by number where it is out of square."""

    sides: dict[str, LengthFigure]
    corners: tuple[Angle, ...]

    def ends_of(self, wall: str) -> tuple[Angle, Angle] | None:
        """The corners left and right of a side, to who faces it; None where square ones serve."""
        if not self.corners:
            return None
        number = SIDE_NUMBER[wall]
        return self.corners[(number + 1) % 4], self.corners[number]


def shape_of(opening: MeasuredOpening) -> MeasuredShape:
    """A coffer as measured; its corners count only where it is out of square."""
    off = opening.squareness is Squareness.OUT_OF_SQUARE
    return MeasuredShape(
        sides={wall: opening.side(number) for wall, number in SIDE_NUMBER.items()},
        corners=tuple(each.angle.value for each in opening.corners) if off else (),
    )


def fitting(
    opening: MeasuredOpening, crown: CrownInCoffers, asked: OutOfSquare
) -> OutOfSquare | None:
    """How crown goes into a coffer in place of a square frame; None where it goes in as asked for.

    Corners that nobody knows cannot be mitred to: there, it is coped.
    """
    if opening.squareness is not Squareness.OUT_OF_SQUARE:
        return None
    framed = crown.asked.method is CrownMethod.BENCH_FRAME
    mitred = framed and asked is OutOfSquare.MITRED_TO_CORNERS and opening.corners
    return asked if mitred else OutOfSquare.COPED_IN_PLACE


def asked_for(ceiling: Ceiling, opening: MeasuredOpening) -> OutOfSquare:
    """How crown is to go into a coffer out of square, whether it was measured or is so planned."""
    asked, crooked = ceiling.measured_openings, ceiling.room.crooked
    if asked is not None and any(each.coffer == opening.coffer for each in asked.coffers):
        return asked.out_of_square
    return crooked.out_of_square if crooked else OutOfSquare.COPED_IN_PLACE


def measured_pieces(
    around: Surroundings,
    opening: MeasuredOpening,
    crown: CrownInCoffers | None,
    way: OutOfSquare | None,
    flats: tuple[FlatMoulding, ...],
) -> CofferPieces:
    """Turn a measured coffer into its pieces.

    A square frame is as large as the shorter of opposite sides let it. Everything else goes up
    piece by piece, each as long as its own side.
    """
    shape = shape_of(opening)
    upper, lower = (flats_at(place, flats) for place in FlatPlace)
    behind = standing_out(upper)
    all_round = dict.fromkeys(_TOLD, True)
    return CofferPieces(
        upper=tuple(_flats(shape, upper, all_round)),
        crown=() if crown is None else _crown(around, shape, crown, way, behind),
        lower=tuple(_flats(shape, lower, _beams(around))),
    )


def _beams(around: Surroundings) -> dict[str, bool]:
    return {
        "W1": around.length.near.beam,
        "W2": around.width.far.beam,
        "W3": around.length.far.beam,
        "W4": around.width.near.beam,
    }


def _crown(
    around: Surroundings,
    shape: MeasuredShape,
    crown: CrownInCoffers,
    way: OutOfSquare | None,
    behind: Length,
) -> tuple[MouldingPiece, ...]:
    if way is OutOfSquare.MITRED_TO_CORNERS:
        return mitred_crown(shape, crown, behind)
    if way is OutOfSquare.COPED_IN_PLACE or crown.asked.method is CrownMethod.COPED_IN_PLACE:
        return coped_crown(shape, crown, behind)
    left = {
        RunName.LENGTH: left_by_flats(around.coffer.length, behind),
        RunName.WIDTH: left_by_flats(around.coffer.width, behind),
    }
    return crown_pieces(crown, left)


def coped_crown(
    shape: MeasuredShape, crown: CrownInCoffers, behind: Length
) -> tuple[MouldingPiece, ...]:
    """Turn a measured coffer into coped pieces: each as long as its side, and sprung in."""
    longer = {
        run: max((shape.sides[a], shape.sides[b]), key=lambda figure: figure.value)
        for run, a, b in ((RunName.LENGTH, "W4", "W2"), (RunName.WIDTH, "W1", "W3"))
    }
    return tuple(_coped(shape, crown, behind, cut) for cut in coped_cuts(longer))


def _coped(shape: MeasuredShape, crown: CrownInCoffers, behind: Length, cut: Cut) -> MouldingPiece:
    wall = cut.toward[0]
    opening = _behind_left(shape, wall, behind)
    long_point = coped_long_point(opening, crown.asked.sprung_allowance)
    depth = crown.section.projection
    corners = shape.ends_of(wall)
    if corners is not None:
        short_point = _slanted(long_point, depth.value, cut.ends, corners)
    else:
        short_point = crown_short_point(long_point, depth, cut.ends)
    return MouldingPiece(CROWN, cut.along, cut.toward, 1, *cut.ends, long_point, short_point)


def _behind_left(shape: MeasuredShape, wall: str, behind: Length) -> LengthFigure:
    """What flat mouldings all round leave of a side."""
    corners = shape.ends_of(wall)
    if corners is None or not behind:
        return left_by_flats(shape.sides[wall], behind)
    return set_in(shape.sides[wall].value, behind, *corners)


def mitred_crown(
    shape: MeasuredShape, crown: CrownInCoffers, behind: Length
) -> tuple[MouldingPiece, ...]:
    """Turn a coffer out of square into a frame mitred to its own corners, set in evenly all round.

    None where its corners are not known.
    """
    if not shape.corners:
        return ()
    return tuple(_mitred(shape, crown, behind, wall) for wall in _TOLD)


def _mitred(
    shape: MeasuredShape, crown: CrownInCoffers, behind: Length, wall: str
) -> MouldingPiece:
    number = SIDE_NUMBER[wall]
    left, right = shape.corners[(number + 1) % 4], shape.corners[number]
    ends = (PieceEnd.MITRED, PieceEnd.MITRED)
    distance = behind + crown.asked.fit_total / 2
    long_point = set_in(shape.sides[wall].value, distance, left, right)
    short_point = _slanted(long_point, crown.section.projection.value, ends, (left, right))
    return MouldingPiece(CROWN, _along(wall), (wall,), 1, *ends, long_point, short_point)


def _along(wall: str) -> RunName:
    return RunName.LENGTH if wall in ("W2", "W4") else RunName.WIDTH


def _slanted(
    length: LengthFigure,
    depth: Length,
    ends: tuple[PieceEnd, PieceEnd],
    corners: tuple[Angle, Angle],
) -> LengthFigure:
    """A piece's length at its other edge, its slanted ends at corners out of square."""
    slanted = [
        corner for end, corner in zip(ends, corners, strict=True) if end is not PieceEnd.SQUARE
    ]
    less = over_tangents([(depth, corner / 2) for corner in slanted])
    value = length.value - less
    if len(slanted) == len(ends):
        left, right = slanted
        return BOTH_ENDS_LESS.approximates(
            value, length=length.value, depth=depth, left=left, right=right
        )
    if slanted:
        return ONE_END_LESS.approximates(value, length=length.value, depth=depth, corner=slanted[0])
    return length if length.approximate else given(length.value)


def _flats(
    shape: MeasuredShape, flats: Sequence[FlatMoulding], on: dict[str, bool]
) -> Iterator[MouldingPiece]:
    """Flat mouldings on the sides that have them, alike ones together."""
    for number, flat in enumerate(flats):
        behind = standing_out(tuple(flats[:number]))
        alike: dict[tuple[object, ...], list[MouldingPiece]] = {}
        for wall in _TOLD:
            if on[wall]:
                piece = _flat(shape, flat, behind, Cut(_along(wall), (wall,), _ends(wall, on)))
                corners = shape.ends_of(wall)
                key = (piece.along, piece.left_end, piece.right_end, corners)
                sizes = (piece.long_point.value, piece.short_point.value)
                alike.setdefault((*key, *sizes), []).append(piece)
        for same in alike.values():
            walls = tuple(wall for piece in same for wall in piece.toward)
            yield replace(same[0], toward=walls, quantity=len(same))


def _ends(wall: str, on: dict[str, bool]) -> tuple[PieceEnd, PieceEnd]:
    """Mitred to a neighbor that has the moulding too, else square: left and right, facing it."""
    walls = tuple(SIDE_NUMBER)
    number = SIDE_NUMBER[wall]
    left, right = on[walls[(number + 1) % 4]], on[walls[number - 1]]
    return (
        PieceEnd.MITRED if left else PieceEnd.SQUARE,
        PieceEnd.MITRED if right else PieceEnd.SQUARE,
    )


def _flat(shape: MeasuredShape, flat: FlatMoulding, behind: Length, cut: Cut) -> MouldingPiece:
    side = shape.sides[cut.toward[0]]
    corners = shape.ends_of(cut.toward[0])
    mitred = sum(end is PieceEnd.MITRED for end in cut.ends)
    if corners is not None:
        long_point = _slanted(side, behind, cut.ends, corners) if behind else side
        short_point = _slanted(long_point, flat.thickness, cut.ends, corners)
    else:
        long_point = side
        if behind and mitred:
            long_point = LEFT_AT_EDGE.gives(
                side.value - behind * mitred, opening=side.value, beams=mitred, behind=behind
            )
        short_point = flat_short_point(long_point, flat.thickness, cut.ends)
    return MouldingPiece(flat.name, cut.along, cut.toward, 1, *cut.ends, long_point, short_point)
