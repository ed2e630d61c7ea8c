"""The pieces of moulding in one coffer: how long they are and how their ends are cut."""

from collections.abc import Iterator
from dataclasses import dataclass

from lacunar.layout.coffer_surroundings import Surroundings
from lacunar.layout.moulding_records import CrownSection, MouldingPiece, NailerPiece, PieceEnd
from lacunar.measure.figure import LengthFigure, Rule
from lacunar.measure.length import ZERO, Length
from lacunar.model.moulding import Crown, CrownMethod, FlatMoulding, FlatPlace
from lacunar.model.room import RunName

LEFT_BY_FLATS = Rule(
    "opening that the flat mouldings leave: two thicknesses less for each", "opening - 2 * behind"
)
LEFT_AT_EDGE = Rule(
    "opening that mouldings at the lower edge leave: a thickness less where there is a beam",
    "opening - beams * behind",
)
FRAME_LONG_POINT = Rule("long point of a frame: the opening less the fit", "opening - fit_total")
COPED_LONG_POINT = Rule(
    "long point of a piece sprung in: the opening and the allowance",
    "opening + sprung_allowance",
)
CROWN_SHORT_POINT = Rule(
    "short point: each mitred or coped end takes the projection off",
    "long_point - ends * projection",
)
FLAT_SHORT_POINT = Rule(
    "short point of a flat moulding: each mitred end takes the thickness off",
    "long_point - ends * thickness",
)

NAILER_WHOLE = Rule("nailer along the longer way: from side to side", "opening")
NAILER_BETWEEN = Rule("nailer between the other two: less the depth of both", "opening - 2 * depth")

CROWN = "Crown"

# The walls toward which the sides along a run lie.
TOWARD = {RunName.LENGTH: ("W4", "W2"), RunName.WIDTH: ("W1", "W3")}
# Whoever goes round a coffer to the right, facing its sides, comes to them in this order.
TO_THE_RIGHT = ("W4", "W1", "W2", "W3")


@dataclass(frozen=True, slots=True)
class CofferPieces:
    """All pieces of one coffer: flat ones at the ceiling, crown, flat ones at the lower edge."""

    upper: tuple[MouldingPiece, ...]
    crown: tuple[MouldingPiece, ...]
    lower: tuple[MouldingPiece, ...]


@dataclass(frozen=True, slots=True)
class Cut:
    """Where a piece goes and how it is cut."""

    along: RunName
    toward: tuple[str, ...]
    ends: tuple[PieceEnd, PieceEnd]


@dataclass(frozen=True, slots=True)
class CrownInCoffers:
    """Crown as asked for, and its section."""

    asked: Crown
    section: CrownSection


def flats_at(place: FlatPlace, flats: tuple[FlatMoulding, ...]) -> tuple[FlatMoulding, ...]:
    """The flat mouldings of one place, from the side outward."""
    return tuple(flat for flat in flats if flat.at is place)


def standing_out(flats: tuple[FlatMoulding, ...]) -> Length:
    """How far a stack of flat mouldings stands out from the side [length]."""
    return sum((flat.thickness for flat in flats), ZERO)


def openings(around: Surroundings) -> dict[RunName, LengthFigure]:
    """A coffer's clear openings by run."""
    return {RunName.LENGTH: around.coffer.length, RunName.WIDTH: around.coffer.width}


def left_by_flats(opening: LengthFigure, behind: Length) -> LengthFigure:
    """Turn an opening [length] into what flat mouldings on both its sides leave [length]."""
    if not behind:
        return opening
    return LEFT_BY_FLATS.gives(opening.value - behind * 2, opening=opening.value, behind=behind)


def crown_pieces(
    crown: CrownInCoffers, left: dict[RunName, LengthFigure]
) -> tuple[MouldingPiece, ...]:
    """Turn crown and the openings it goes into [length] into the pieces of one coffer.

    A bench frame has two pieces of each of two lengths, mitred at both ends: long point = opening -
    fit_total. Coped in place, pieces go up to the right, facing them: the first square at both ends
    and along the longer way, the second and third coped to the one before, the last at both ends.
    """
    if crown.asked.method is CrownMethod.BENCH_FRAME:
        ends = (PieceEnd.MITRED, PieceEnd.MITRED)
        return tuple(_crown_piece(crown, left[run], Cut(run, TOWARD[run], ends)) for run in RunName)
    return tuple(_crown_piece(crown, left[cut.along], cut) for cut in coped_cuts(left))


def coped_cuts(left: dict[RunName, LengthFigure]) -> tuple[Cut, ...]:
    """The four pieces of coped crown in the order they go up, by the openings they go into."""
    first = max(RunName, key=lambda run: left[run].value)
    square, coped = PieceEnd.SQUARE, PieceEnd.COPED
    ends = ((square, square), (coped, square), (coped, square), (coped, coped))
    begins = TO_THE_RIGHT.index(TOWARD[first][0])
    order = (*TO_THE_RIGHT[begins:], *TO_THE_RIGHT[:begins])
    return tuple(
        Cut(first if number % 2 == 0 else first.other, (wall,), ends[number])
        for number, wall in enumerate(order)
    )


def _crown_piece(crown: CrownInCoffers, opening: LengthFigure, cut: Cut) -> MouldingPiece:
    asked, projection = crown.asked, crown.section.projection
    if asked.method is CrownMethod.BENCH_FRAME:
        long_point = FRAME_LONG_POINT.gives(
            opening.value - asked.fit_total, opening=opening.value, fit_total=asked.fit_total
        )
    else:
        long_point = coped_long_point(opening, asked.sprung_allowance)
    short_point = crown_short_point(long_point, projection, cut.ends)
    quantity = len(cut.toward)
    return MouldingPiece(CROWN, cut.along, cut.toward, quantity, *cut.ends, long_point, short_point)


def coped_long_point(opening: LengthFigure, allowance: Length) -> LengthFigure:
    """Turn an opening and what a coped piece is sprung in by [length] into its long point."""
    gives = COPED_LONG_POINT.approximates if opening.approximate else COPED_LONG_POINT.gives
    return gives(opening.value + allowance, opening=opening.value, sprung_allowance=allowance)


def crown_short_point(
    long_point: LengthFigure, projection: LengthFigure, ends: tuple[PieceEnd, PieceEnd]
) -> LengthFigure:
    """Turn the long point of crown at square corners [length] into its short point [length]."""
    slanted = sum(end is not PieceEnd.SQUARE for end in ends)
    gives = CROWN_SHORT_POINT.approximates if projection.approximate else CROWN_SHORT_POINT.gives
    return gives(
        long_point.value - projection.value * slanted,
        long_point=long_point.value,
        ends=slanted,
        projection=projection.value,
    )


def flat_short_point(
    long_point: LengthFigure, thickness: Length, ends: tuple[PieceEnd, PieceEnd]
) -> LengthFigure:
    """Turn the long point of a flat moulding at square corners [length] into its short point."""
    mitred = sum(end is PieceEnd.MITRED for end in ends)
    return FLAT_SHORT_POINT.gives(
        long_point.value - thickness * mitred,
        long_point=long_point.value,
        ends=mitred,
        thickness=thickness,
    )


def nailer_pieces(
    crown: CrownInCoffers, left: dict[RunName, LengthFigure]
) -> tuple[NailerPiece, ...]:
    """Turn the openings crown goes into [length] into the nailers behind it.

    Formula: two along the longer way from side to side, two between them: the opening less two
    depths of the nailer. None where there is no room for a nailer behind the crown, or between.
    """
    nailer = crown.section.nailer
    if nailer is None:
        return ()
    first = max(RunName, key=lambda run: left[run].value)
    whole, opening = left[first], left[first.other].value
    between = opening - nailer.depth.value * 2
    if between <= ZERO:
        return ()
    gives = NAILER_BETWEEN.approximates if nailer.depth.approximate else NAILER_BETWEEN.gives
    return (
        NailerPiece(first, 2, NAILER_WHOLE.gives(whole.value, opening=whole.value)),
        NailerPiece(first.other, 2, gives(between, opening=opening, depth=nailer.depth.value)),
    )


def flat_pieces(around: Surroundings, flats: tuple[FlatMoulding, ...]) -> Iterator[MouldingPiece]:
    """Turn the flat mouldings of one place into the pieces of one coffer, the innermost first.

    At the ceiling they go all round the coffer, bare walls too, mitred at every corner. At the
    lower edge they are on beams only, and end square at a bare wall.
    """
    for number, flat in enumerate(flats):
        behind = standing_out(flats[:number])
        for run in RunName:
            if flat.at is FlatPlace.CEILING:
                opening = left_by_flats(openings(around)[run], behind)
                ends = (PieceEnd.MITRED, PieceEnd.MITRED)
                yield _flat_piece(flat, opening, Cut(run, TOWARD[run], ends))
            else:
                yield from _edge_pieces(around, flat, run, behind)


def _edge_pieces(
    around: Surroundings, flat: FlatMoulding, run: RunName, behind: Length
) -> Iterator[MouldingPiece]:
    """The pieces along a run at the lower edge: on the sides across the other run that are beams.

    A piece that ends at a bare wall has that end to the left on one side of the coffer and to the
    right on the side across.
    """
    ends_at, on = around.across(run), around.across(run.other)
    opening = openings(around)[run]
    if behind and ends_at.beams:
        opening = LEFT_AT_EDGE.gives(
            opening.value - behind * ends_at.beams,
            opening=opening.value,
            beams=ends_at.beams,
            behind=behind,
        )
    near, far = (
        PieceEnd.MITRED if side.beam else PieceEnd.SQUARE for side in (ends_at.near, ends_at.far)
    )
    # The plan lies as the floor does. Who faces W4 from inside has the length run's far end at the
    # left hand; who faces W1 has the width run's far end at the right hand.
    ways = [(far, near), (near, far)] if run is RunName.LENGTH else [(near, far), (far, near)]
    found: dict[tuple[PieceEnd, PieceEnd], tuple[str, ...]] = {}
    for side, wall, ends in zip((on.near, on.far), TOWARD[run], ways, strict=True):
        if side.beam:
            found[ends] = (*found.get(ends, ()), wall)
    for ends, walls in found.items():
        yield _flat_piece(flat, opening, Cut(run, walls, ends))


def _flat_piece(flat: FlatMoulding, opening: LengthFigure, cut: Cut) -> MouldingPiece:
    short_point = flat_short_point(opening, flat.thickness, cut.ends)
    return MouldingPiece(
        flat.name, cut.along, cut.toward, len(cut.toward), *cut.ends, opening, short_point
    )
