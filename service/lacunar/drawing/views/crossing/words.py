"""What is said of a crossing: how each board ends there, who goes first, and where it occurs."""

from collections.abc import Iterator, Sequence
from math import dist

from lacunar.drawing.elements import Pt
from lacunar.drawing.views.crossing.standing import millimeters
from lacunar.drawing.wording import SheetWording
from lacunar.layout.crossing_records import (
    BoardCut,
    BoardEnd,
    BoardPart,
    Crossing,
    CrossingPlace,
    EndsAt,
)
from lacunar.layout.fitting_records import Stage
from lacunar.layout.followed_records import FollowedBeam
from lacunar.layout.records import BeamProfile, Layout
from lacunar.measure.angle import Angle
from lacunar.measure.length import ZERO, Length
from lacunar.model.beams import BottomJoint, FamilyProfile
from lacunar.model.room import START_WALL

PLACES_TOLD = 3
_STAGES = {
    Stage.SIDES: "SIDES",
    Stage.FOLDED_BEAMS: "SIDES WITH BOTTOMS",
    Stage.BOTTOMS: "BOTTOMS",
}


def parts_in_words(parts: tuple[BoardPart, ...], profile: BeamProfile) -> str:
    """Boards of a beam in a row: a box has two sides, a flat beam a face board."""
    flat = profile.profile is FamilyProfile.FLAT
    names = {
        "side": "SIDES" if profile.sides > 1 else "SIDE",
        "bottom": "FACE BOARD" if flat else "BOTTOM",
        "upper_board": "UPPER BOARD",
    }
    return " AND ".join(names[part] for part in parts)


def end_in_words(end: BoardEnd, other: str, wording: SheetWording, wall: str = "") -> str:
    """How a board ends, and against what; at a corner that juts in, how far past which wall."""
    if end.cut is BoardCut.POINTED:
        return f"TO A POINT, {_angle(end)} FROM SQUARE"
    if end.cut is BoardCut.MITRED:
        return _slanted(end, other)
    if end.cut is BoardCut.NOTCHED:
        along, up = end.notch_along or ZERO, end.notch_up or ZERO
        return (
            f"SQUARE, AGAINST THE SIDE OF {other}, NOTCHED {wording.size(along)} x"
            f" {wording.size(up)} ROUND ITS BOTTOM"
        )
    if wall and end.ends_at in (EndsAt.BOARD_END, EndsAt.BOARD_EDGE) and end.past.value:
        what = "OVER THE END" if end.ends_at is EndsAt.BOARD_END else "AGAINST A BOARD"
        return f"SQUARE, {wording.detail(end.past.value)} PAST {wall}, {what} OF {other}"
    return f"SQUARE, {_against(end, other, wording)}"


def _slanted(end: BoardEnd, other: str) -> str:
    if end.ends_at is EndsAt.BOARD_END:
        return f"MITRED {_angle(end)}"
    return f"CUT {_angle(end)} OFF SQUARE, AGAINST {other}"


def _angle(end: BoardEnd) -> str:
    return end.angle.tenths if end.angle is not None else ""


def _against(end: BoardEnd, other: str, wording: SheetWording) -> str:
    past = end.past.value
    how_far = wording.detail(abs(past))
    match end.ends_at:
        case EndsAt.WALL | EndsAt.SOFFIT:
            return f"AGAINST {other}"
        case EndsAt.WALL_BEHIND:
            return f"ON BEHIND {other} TO THE WALL" if past else "AGAINST THE WALL"
        case EndsAt.OPEN_CORNER:
            return "ROUND THE CORNER" if past else "OPEN AT THE CORNER"
        case EndsAt.BOARD_END:
            return f"{how_far} ON, BEHIND THE END OF {other}"
        case EndsAt.BOARD_EDGE if past:
            where = "BEHIND" if past > ZERO else "BEFORE"
            return f"AGAINST A BOARD OF {other} {how_far} {where} ITS FACE"
    return f"AGAINST THE SIDE OF {other}" if end.ends_at is EndsAt.SIDE else f"AGAINST {other}"


def edge_in_words(profile: BeamProfile, wording: SheetWording) -> str:
    """How the bottom of a beam stands to its sides; nothing where they are flush."""
    if profile.overhang:
        return f"STANDS OUT {wording.detail(profile.overhang)}"
    if profile.reveal:
        where = "SET UP" if profile.bottom_joint is BottomJoint.BETWEEN else "SET IN"
        return f"{where} {wording.detail(profile.reveal)}"
    return ""


def place_in_words(place: CrossingPlace) -> str:
    """One place of a crossing: the beam that ends, and at what."""
    return f"{place.stopped} AT {place.through}".upper()


def notes_under(layout: Layout, crossing: Crossing, wording: SheetWording) -> Iterator[str]:
    """The sentences under a crossing's title."""
    yield _places(crossing)
    yield from _drops(layout, crossing, wording)
    yield from _order(layout, crossing)
    yield from _splices(layout, crossing)
    yield from _aslant(layout, crossing)
    yield from _tapered(layout, crossing)


def _places(crossing: Crossing) -> str:
    places = crossing.places
    told = ", ".join(place_in_words(place) for place in places[:PLACES_TOLD])
    more = len(places) - PLACES_TOLD
    count = f"{len(places)} PLACES" if len(places) > 1 else "1 PLACE"
    return f"{count}: {told}{f', AND {more} MORE' if more > 0 else ''}"


def _drops(layout: Layout, crossing: Crossing, wording: SheetWording) -> Iterator[str]:
    if crossing.through is None:
        return
    place = crossing.places[0]
    both = [
        (beam, layout.profile(profile).drop.value)
        for beam, profile in ((place.through, crossing.through), (place.stopped, crossing.stopped))
    ]
    if both[0][1] == both[1][1]:
        yield f"BOTH DROP {wording.detail(both[0][1])}"
    else:
        yield "DROP: " + ", ".join(f"{beam} {wording.detail(drop)}" for beam, drop in both)


def _order(layout: Layout, crossing: Crossing) -> Iterator[str]:
    """Which boards of the two go up first, by the steps of fitting."""
    place = crossing.places[0]
    told = []
    for step in layout.fitting.steps:
        beams = [each for each in step.of if each in (place.through, place.stopped)]
        if step.stage in _STAGES and beams:
            told.append(f"STEP {step.number} {_STAGES[step.stage]} {', THEN '.join(beams)}")
    if told:
        yield "FITTED: " + "; ".join(told)


def _splices(layout: Layout, crossing: Crossing) -> Iterator[str]:
    """At how many of the places boards that run through are joined."""
    at: dict[BoardPart, int] = {}
    reaches = {
        each.id: (each.near.at_start.value, each.far.at_start.value) for each in layout.beams
    }
    for piece in layout.pieces:
        if not any(end.ends_at is EndsAt.SPLICE for end in (piece.start, piece.end)):
            continue
        for place in crossing.places:
            near, far = reaches.get(place.stopped, (ZERO, ZERO))
            joints = [
                spot.start
                for spot in piece.places
                if spot.beam == place.through
                and piece.start.ends_at is EndsAt.SPLICE
                and near <= spot.start <= far
            ]
            at[piece.part] = at.get(piece.part, 0) + bool(joints)
    names = {"side": "SIDES", "bottom": "BOTTOM", "upper_board": "UPPER BOARD"}
    told = [f"{names[part]} AT {count}" for part, count in at.items() if count]
    if told:
        yield f"WHAT RUNS THROUGH IS JOINED HERE: {', '.join(told)} OF THE PLACES"


def _aslant(layout: Layout, crossing: Crossing) -> Iterator[str]:
    """By how much ends are off a square cut where a grid follows walls out of square."""
    if layout.followed is None:
        return
    beams = {beam.id: beam for beam in layout.followed.beams}
    cuts = [cut for place in crossing.places if (cut := _cut(beams, place)) is not None]
    if not cuts:
        return
    least, most = min(cuts).tenths, max(cuts).tenths
    ends = "ENDS OFF SQUARE BY " + (least if least == most else f"{least} TO {most}")
    drawn = "SQUARE" if crossing.through is None else cuts[0].tenths
    yield f"{ends}, DRAWN {drawn}"


def _cut(beams: dict[str, FollowedBeam], place: CrossingPlace) -> Angle | None:
    """How far off square a beam's end at a place is: of its ends, the one next what is there."""
    beam, other = beams.get(place.stopped), beams.get(place.through)
    if beam is None:
        return None
    starts = [(piece.near.start, piece.start_cut.value) for piece in beam.pieces]
    ends = [(piece.near.end, piece.end_cut.value) for piece in beam.pieces]
    if other is None:
        at_start = place.through in START_WALL.values()
        return abs(starts[0][1] if at_start else ends[-1][1])
    line = [_spot(spot.x, spot.y) for spot in other.center]
    return abs(min((*starts, *ends), key=lambda each: _off(_spot(each[0].x, each[0].y), line))[1])


def _off(spot: Pt, line: Sequence[Pt]) -> float:
    """How far a place is from a line by two of its places [mm]."""
    start, end = line
    long = dist((start.x, start.y), (end.x, end.y))
    way = (end.x - start.x) / long, (end.y - start.y) / long
    return abs((spot.x - start.x) * way[1] - (spot.y - start.y) * way[0])


def _spot(x: Length, y: Length) -> Pt:
    return Pt(millimeters(x), millimeters(y))


def _tapered(layout: Layout, crossing: Crossing) -> Iterator[str]:
    """That what stands at a wall out of square is wider elsewhere."""
    crooked = layout.crooked
    if crooked is None or layout.followed is not None:
        return
    tapers = {each.strip for each in crooked.walls if each.strip and each.taper.value}
    ends = {name for place in crossing.places for name in (place.through, place.stopped)}
    if tapers & ends:
        yield "DRAWN AT THE NARROWEST: WALLS ARE OUT OF SQUARE, AND THEIR BEAMS TAPER"
