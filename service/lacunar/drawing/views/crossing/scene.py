"""What is to be seen of a crossing at its first place: beams, their boards, walls, where it breaks.

All in millimeters of the room from the middle of the crossing, y up.
"""

from collections.abc import Iterator
from dataclasses import dataclass, replace
from math import dist

from lacunar.drawing.elements import Pt
from lacunar.drawing.views.crossing.boards import (
    Arm,
    Pasts,
    Role,
    SeenBoard,
    boards_on,
    cut_boards,
    pasts_to,
    slanted_pasts,
)
from lacunar.drawing.views.crossing.standing import (
    Side,
    Standing,
    millimeters,
    standing,
    turned_to,
)
from lacunar.layout.crossing_records import (
    BoardEnd,
    BoardPart,
    Crossing,
    CrossingKind,
    CrossingPlace,
)
from lacunar.layout.outline_records import OutlineWall
from lacunar.layout.records import Layout
from lacunar.model.room import START_WALL

SIDES: tuple[Side, Side] = ("far", "near")
_AT_WALLS = (CrossingKind.END_AT_WALL, CrossingKind.END_AT_SOFFIT)


@dataclass(frozen=True, slots=True)
class SeenWall:
    """A wall, or the face of a soffit, from end to end; what is behind it lies to the left."""

    start: Pt
    end: Pt


@dataclass(frozen=True, slots=True)
class Scene:
    """All that is drawn of a crossing, from the furthest up to the lowest board.

    `led_by` is the beam that lies exactly along the sheet, `other` the one that meets it, None at a
    wall; `arms` are where they come in, each broken off `reach` beyond the crossing.
    """

    led_by: Standing
    other: Standing | None
    arms: tuple[Arm, ...]
    boards: tuple[SeenBoard, ...]
    walls: tuple[SeenWall, ...]
    reach: float


def scene(layout: Layout, crossing: Crossing, reach: float) -> Scene | None:
    """A crossing as it lies at the first of its places; None where nothing of it is a beam's."""
    place = crossing.places[0]
    if crossing.through is not None:
        return _meeting(layout, crossing, place, reach)
    beam = standing(layout, place.stopped)
    if beam is None:
        return None
    (beam,) = turned_to((beam,))
    if crossing.kind in _AT_WALLS:
        return _square_end(layout, crossing, beam, reach)
    if crossing.kind is CrossingKind.END_AT_ANGLED_WALL:
        return _slanted_end(layout, crossing, beam, reach)
    return _corner(layout, crossing, beam, reach)


def _ends(crossing: Crossing, role: str) -> dict[BoardPart, BoardEnd]:
    return {each.part: each.end for each in crossing.ends if each.beam == role}


def _in_order(boards: Iterator[SeenBoard]) -> tuple[SeenBoard, ...]:
    return tuple(sorted(boards, key=lambda board: board.lowest))


def _meeting(
    layout: Layout, crossing: Crossing, place: CrossingPlace, reach: float
) -> Scene | None:
    found = standing(layout, place.through), standing(layout, place.stopped)
    if found[0] is None or found[1] is None:
        return None
    through, stopped = turned_to((found[0], found[1]))
    ways = _ways(stopped), _ways(through)
    over = tuple(Arm(through, stopped, way, "through") for way in ways[0])
    into = tuple(Arm(stopped, through, way, "stopped") for way in ways[1])

    def boards() -> Iterator[SeenBoard]:
        whole = len(over) > 1
        yield from boards_on(over[0], crossing.runs_past, reach if whole else 0.0, reach)
        for role, arms in (("through", over), ("stopped", into)):
            for arm in arms:
                yield from cut_boards(arm, _ends(crossing, role), pasts_to(arm.beam), reach)

    walls = tuple(_walls_of(through, stopped, reach))
    return Scene(through, stopped, (*over, *into), _in_order(boards()), walls, reach)


def _ways(at: Standing) -> tuple[Side, ...]:
    """From which sides of it a beam can come: not from a wall's."""
    return SIDES if at.wall is None else ("far",) if at.wall == "near" else ("near",)


def _walls_of(one: Standing, other: Standing, reach: float) -> Iterator[SeenWall]:
    """The walls that beams stand at, each as far as it is seen, with the room to its right."""
    for beam, across in ((one, other), (other, one)):
        if beam.wall is None:
            continue
        at = 0.0 if beam.wall == "near" else beam.width
        low, high = -reach, across.width + reach
        if across.wall == "near":
            low = 0.0
        elif across.wall == "far":
            high = across.width
        arm = Arm(beam, across, "far", "through")
        ends = arm.at(at, across.width - low), arm.at(at, across.width - high)
        yield _behind(ends, Pt(*_toward_room(beam)))


def _toward_room(beam: Standing) -> tuple[float, float]:
    sign = 1 if beam.wall == "near" else -1
    return beam.across.x * sign, beam.across.y * sign


def _behind(ends: tuple[Pt, Pt], room: Pt) -> SeenWall:
    """A wall in the way along which the room lies to the right."""
    start, end = ends
    turned = (end.x - start.x) * room.y - (end.y - start.y) * room.x
    return SeenWall(start, end) if turned < 0 else SeenWall(end, start)


def _limit(beam: Standing, *, at_start: bool) -> Standing:
    """A face square across the end of a beam, its far side towards the beam."""
    sign = 1.0 if at_start else -1.0
    way = Pt(beam.across.x, beam.across.y)
    return Standing("", Pt(0.0, 0.0), way, Pt(beam.way.x * sign, beam.way.y * sign), 0.0)


def _square_end(layout: Layout, crossing: Crossing, beam: Standing, reach: float) -> Scene:
    stop = _limit(beam, at_start=_ends_at_start(layout, crossing.places[0]))
    arm = Arm(beam, stop, "far", "stopped")
    boards = _in_order(cut_boards(arm, _ends(crossing, "stopped"), pasts_to(beam), reach))
    out = reach / 2
    face = arm.at(-out, 0.0), arm.at(beam.width + out, 0.0)
    if beam.wall is not None:
        face = (arm.at(0.0, 0.0), face[1]) if beam.wall == "near" else (face[0], arm.at(beam.width, 0.0))
    walls = [_behind(face, stop.across)]
    if beam.wall is not None:
        at = 0.0 if beam.wall == "near" else beam.width
        walls.append(_behind((arm.at(at, 0.0), arm.at(at, -reach)), Pt(*_toward_room(beam))))
    return Scene(beam, None, (arm,), boards, tuple(walls), reach)


def _ends_at_start(layout: Layout, place: CrossingPlace) -> bool:
    """Whether a beam ends there where the run that it lies along starts."""
    room = layout.outlined
    for span in room.spans if room else ():
        if span.beam == place.stopped and place.through in (span.start_at, span.end_at):
            return span.start_at == place.through
    names = [each for each in layout.wall_beams if place.through in (each.id, each.wall)]
    if names:
        return names[0].looks_as in START_WALL.values()
    walls = [each for each in (room.walls if room else ()) if each.wall == place.through]
    return (walls[0].looks_as if walls else place.through) in START_WALL.values()


def _slanted_end(
    layout: Layout, crossing: Crossing, beam: Standing, reach: float
) -> Scene | None:
    place = crossing.places[0]
    room = layout.outlined
    for span in room.spans if room else ():
        if span.beam != place.stopped:
            continue
        for at_start, name, slant, longer in (
            (True, span.start_at, span.start_slant, span.start_longer),
            (False, span.end_at, span.end_slant, span.end_longer),
        ):
            if slant is None or longer is None or name != place.through:
                continue
            stop = _limit(beam, at_start=at_start)
            arm = Arm(beam, stop, "far", "stopped")
            longest = millimeters(slant.value)
            pasts = slanted_pasts(beam, longest, longer)
            boards = _in_order(cut_boards(arm, _ends(crossing, "stopped"), pasts, reach))
            out = reach / 2 / beam.width
            near, far = (longest, 0.0) if longer == "near" else (0.0, longest)
            face = tuple(
                arm.at(beam.width * share, near + (far - near) * share)
                for share in (-out, 1 + out)
            )
            walls = (_behind((face[0], face[1]), stop.across),)
            return Scene(beam, None, (arm,), boards, walls, reach)
    return None


def _corner(layout: Layout, crossing: Crossing, beam: Standing, reach: float) -> Scene | None:
    """A corner of walls that is not square, or juts in, with what stands at both of them."""
    place = crossing.places[0]
    stop = _limit(beam, at_start=_corner_at_start(layout, place))
    arm = Arm(beam, stop, "far", "stopped")
    ends = _ends(crossing, "stopped")
    beside = _beside(layout, place)
    if crossing.kind is CrossingKind.OUTSIDE_CORNER:
        return _outside(layout, crossing, arm, reach)
    pasts = pasts_to(beam, "face" if _juts_in(ends) else "wall")
    boards = list(cut_boards(arm, ends, pasts, reach))
    mirror = _mirror(arm, boards)
    if beside:
        boards += [_mirrored(board, mirror, beside) for board in boards]
    at = 0.0 if beam.wall == "near" else beam.width
    tip = mirror[0]
    own = _behind((tip, arm.at(at, -reach)), Pt(*_toward_room(beam)))
    other = SeenWall(_reflected(own.end, mirror), _reflected(own.start, mirror))
    arms = (arm,)
    return Scene(beam, None, arms, _in_order(iter(boards)), (own, other), reach)


def _juts_in(ends: dict[BoardPart, BoardEnd]) -> bool:
    """Whether mitred boards are shorter the further they lie from the face."""
    return any(
        abs(millimeters(end.past_short.value)) > abs(millimeters(end.past.value))
        for end in ends.values()
    )


def _mirror(arm: Arm, boards: list[SeenBoard]) -> tuple[Pt, Pt]:
    """The miter's line: from the corner of the walls to that of the faces."""
    beam = arm.beam
    wall, face = (0.0, beam.width) if beam.wall == "near" else (beam.width, 0.0)
    start = arm.at(face, 0.0)
    # Where the board that reaches furthest back is cut tells the angle.
    tips = [spot for board in boards for spot in board.corners[1:-1]]
    away = max(tips, key=lambda spot: dist((spot.x, spot.y), (start.x, start.y)))
    way = Pt(away.x - start.x, away.y - start.y)
    back = abs(way.x * beam.across.x + way.y * beam.across.y)
    share = abs(wall - face) / back
    return start.moved(way.x * share, way.y * share), start


def _reflected(spot: Pt, mirror: tuple[Pt, Pt]) -> Pt:
    (start, end) = mirror
    way = Pt(end.x - start.x, end.y - start.y)
    square = way.x**2 + way.y**2
    from_start = Pt(spot.x - start.x, spot.y - start.y)
    along = (from_start.x * way.x + from_start.y * way.y) / square
    foot = start.moved(way.x * along, way.y * along)
    return Pt(2 * foot.x - spot.x, 2 * foot.y - spot.y)


def _mirrored(board: SeenBoard, mirror: tuple[Pt, Pt], beside: str) -> SeenBoard:
    role: Role = "beside"
    return replace(
        board,
        role=role,
        beam=beside,
        corners=tuple(_reflected(spot, mirror) for spot in board.corners),
        lines=tuple(tuple(_reflected(spot, mirror) for spot in line) for line in board.lines),
    )


def _outside(layout: Layout, crossing: Crossing, arm: Arm, reach: float) -> Scene:
    """Both beams round a corner of walls that juts into the room, each by its own end there."""
    beam = arm.beam
    place = crossing.places[0]
    boards = list(cut_boards(arm, _ends(crossing, "stopped"), pasts_to(beam, "face"), reach))
    at = 0.0 if beam.wall == "near" else beam.width
    corner = arm.at(at, 0.0)
    room = Pt(*_toward_room(beam))
    walls = [_behind((corner, arm.at(at, -reach)), room)]
    away = arm.stop.across
    end = corner.moved(-room.x * reach, -room.y * reach)
    walls.append(_behind((corner, end), Pt(-away.x, -away.y)))
    other = standing(layout, _beside(layout, place) or "")
    mate = _mate(layout, place)
    if other is not None and mate is not None:
        boards += _boards_round(arm, other, mate, reach)
    return Scene(beam, None, (arm,), _in_order(iter(boards)), tuple(walls), reach)


def _boards_round(arm: Arm, other: Standing, mate: Crossing, reach: float) -> Iterator[SeenBoard]:
    """The boards of the beam at the other wall of a corner that juts in."""
    beam, away = arm.beam, arm.stop.across
    room = Pt(*_toward_room(beam))
    corner = arm.at(0.0 if beam.wall == "near" else beam.width, 0.0)
    # It lies along the wall that goes back from the corner, on the side that this beam ends at.
    lies = Standing(
        id=other.id,
        at=corner,
        way=Pt(-room.x, -room.y),
        across=Pt(-away.x, -away.y),
        width=other.width,
        wall="near",
        profile=other.profile,
    )
    stop = Standing("", corner, lies.across, Pt(-room.x, -room.y), 0.0)
    turned = Arm(lies, stop, "far", "beside")
    pasts: Pasts = pasts_to(lies, "face")
    yield from cut_boards(turned, _ends(mate, "stopped"), pasts, reach)


def _mate(layout: Layout, place: CrossingPlace) -> Crossing | None:
    """The crossing of the beam at the other wall of a corner, as the layout has it."""
    beside = _beside(layout, place)
    own = next((each.wall for each in layout.wall_beams if each.id == place.stopped), "")
    wanted = CrossingPlace(own, beside or "")
    return next((each for each in layout.crossings if wanted in each.places), None)


def _beside(layout: Layout, place: CrossingPlace) -> str | None:
    """What stands at the other wall of a corner."""
    room = layout.outlined
    at_walls = [(each.wall, each.id) for each in layout.wall_beams]
    at_walls += [(each.wall, each.id) for each in (room.angled_beams if room else ())]
    return next((identity for wall, identity in at_walls if wall == place.through), None)


def _corner_at_start(layout: Layout, place: CrossingPlace) -> bool:
    """Whether the corner with another wall is there where the run along a wall beam starts."""
    walls = layout.outlined.walls if layout.outlined else ()
    own = next(each for each in layout.wall_beams if each.id == place.stopped)
    onward = any(
        wall.wall == own.wall and _after(walls, wall).wall == place.through for wall in walls
    )
    # Clockwise, walls that look as W1 and W2 go the way of the run along them.
    return onward is not (own.looks_as in ("W1", "W2"))


def _after(walls: tuple[OutlineWall, ...], wall: OutlineWall) -> OutlineWall:
    return walls[(walls.index(wall) + 1) % len(walls)]
