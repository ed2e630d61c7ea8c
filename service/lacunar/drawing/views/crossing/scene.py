"""What is to be seen of a crossing at its first place: beams, their boards, walls, where it breaks.

All in millimeters of the room from the middle of the crossing, y up.
"""

from collections.abc import Iterator
from dataclasses import dataclass, replace
from math import dist

from lacunar.drawing.elements import Pt
from lacunar.drawing.views.crossing.boards import (
    Arm,
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
    """A wall from end to end; what is behind it lies to the left. A soffit's face is no `wall`."""

    start: Pt
    end: Pt
    wall: bool = True


@dataclass(frozen=True, slots=True)
class Scene:
    """All that is drawn of a crossing, from the furthest up to the lowest board.

    `led_by` is the beam that lies exactly along the sheet, `other` the one that meets it, None at a
    wall; `arms` are where these and what stands at the next wall come in, each broken off `reach`
    beyond the crossing.
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
        corner = arm.at(_wall_edge(beam), 0.0)
        face = (corner, face[1]) if beam.wall == "near" else (face[0], corner)
    soffit = crossing.kind is CrossingKind.END_AT_SOFFIT
    walls = [replace(_behind(face, stop.across), wall=not soffit)]
    if beam.wall is not None:
        walls.append(_own_wall(arm, reach))
    return Scene(beam, None, (arm,), boards, tuple(walls), reach)


def _wall_edge(beam: Standing) -> float:
    return 0.0 if beam.wall == "near" else beam.width


def _own_wall(arm: Arm, reach: float) -> SeenWall:
    """The wall that a beam stands at, from its end on."""
    at = _wall_edge(arm.beam)
    return _behind((arm.at(at, 0.0), arm.at(at, -reach)), Pt(*_toward_room(arm.beam)))


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


def _slanted_end(layout: Layout, crossing: Crossing, beam: Standing, reach: float) -> Scene | None:
    """A beam that ends at an angled face, on its longer side further out than on the other."""
    found = next(_slants(layout, crossing.places[0]), None)
    if found is None:
        return None
    at_start, longest, longer = found
    arm = Arm(beam, _limit(beam, at_start=at_start), "far", "stopped")
    near, far = (longest, 0.0) if longer == "near" else (0.0, longest)
    out = reach / 2 / beam.width
    start, end = (
        arm.at(beam.width * share, near + (far - near) * share) for share in (-out, 1 + out)
    )
    face = _behind((start, end), arm.stop.across)
    pasts = slanted_pasts(beam, longest, longer)
    boards = list(cut_boards(arm, _ends(crossing, "stopped"), pasts, reach))
    at_wall = _angled_beam(layout, crossing.places[0].through, face)
    if at_wall is None:
        return Scene(beam, None, (arm,), _in_order(iter(boards)), (face,), reach)
    half = dist((start.x, start.y), (end.x, end.y)) / 2
    boards += boards_on(at_wall, ("side", "bottom", "upper_board"), half, half)
    back = at_wall.beam.width
    wall = SeenWall(at_wall.at(back, half), at_wall.at(back, -half))
    return Scene(beam, None, (arm,), _in_order(iter(boards)), (wall,), reach)


def _slants(layout: Layout, place: CrossingPlace) -> Iterator[tuple[bool, float, Side]]:
    """At which end a beam is slanted there, how far its longer side goes on, and which that is."""
    room = layout.outlined
    for span in room.spans if room else ():
        if span.beam != place.stopped:
            continue
        for at_start, name, slant, longer in (
            (True, span.start_at, span.start_slant, span.start_longer),
            (False, span.end_at, span.end_slant, span.end_longer),
        ):
            if slant is not None and longer is not None and name == place.through:
                yield at_start, millimeters(slant.value), longer


def _angled_beam(layout: Layout, identity: str, face: SeenWall) -> Arm | None:
    """What stands at an angled wall, by the line of its face; None at a bare one."""
    beams = layout.outlined.angled_beams if layout.outlined else ()
    profile = next((layout.profile(each.profile) for each in beams if each.id == identity), None)
    if profile is None:
        return None
    long = dist((face.start.x, face.start.y), (face.end.x, face.end.y))
    way = Pt((face.end.x - face.start.x) / long, (face.end.y - face.start.y) / long)
    middle = Pt((face.start.x + face.end.x) / 2, (face.start.y + face.end.y) / 2)
    width = millimeters(profile.finished_width.value)
    beam = Standing(identity, middle, way, Pt(-way.y, way.x), width, "far", profile)
    return Arm(beam, Standing("", middle, beam.across, way, 0.0), "far", "beside")


def _corner(layout: Layout, crossing: Crossing, beam: Standing, reach: float) -> Scene | None:
    """A corner of walls that is not square, or juts in, with what stands at both of them."""
    place = crossing.places[0]
    stop = _limit(beam, at_start=_corner_at_start(layout, place))
    arm = Arm(beam, stop, "far", "stopped")
    if crossing.kind is CrossingKind.OUTSIDE_CORNER:
        return _outside(layout, crossing, arm, reach)
    ends = _ends(crossing, "stopped")
    pasts = pasts_to(beam, "face" if _juts_in(ends) else "wall")
    boards = list(cut_boards(arm, ends, pasts, reach))
    mirror = _mirror(arm, boards)
    own = _behind((mirror[0], arm.at(_wall_edge(beam), -reach)), Pt(*_toward_room(beam)))
    other = SeenWall(_reflected(own.end, mirror), _reflected(own.start, mirror))
    arms = [arm]
    beside = beside_corner(layout, place)
    if beside:
        # Both are mitred alike, so the other one is as this one in a mirror on the miter.
        arms.append(_in_mirror(arm, mirror, beside))
        boards += cut_boards(arms[1], ends, pasts, reach)
    return Scene(beam, None, tuple(arms), _in_order(iter(boards)), (own, other), reach)


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


def _in_mirror(arm: Arm, mirror: tuple[Pt, Pt], identity: str) -> Arm:
    beam = replace(_standing_in_mirror(arm.beam, mirror), id=identity)
    return Arm(beam, _standing_in_mirror(arm.stop, mirror), arm.toward, "beside")


def _standing_in_mirror(beam: Standing, mirror: tuple[Pt, Pt]) -> Standing:
    through_middle = Pt(0.0, 0.0), Pt(mirror[1].x - mirror[0].x, mirror[1].y - mirror[0].y)
    return replace(
        beam,
        at=_reflected(beam.at, mirror),
        way=_reflected(beam.way, through_middle),
        across=_reflected(beam.across, through_middle),
    )


def _outside(layout: Layout, crossing: Crossing, arm: Arm, reach: float) -> Scene:
    """Both beams round a corner of walls that juts into the room, each by its own end there."""
    beam, place = arm.beam, crossing.places[0]
    ends = _ends(crossing, "stopped")
    boards = list(cut_boards(arm, ends, pasts_to(beam, "face"), reach))
    corner, room, away = arm.at(_wall_edge(beam), 0.0), Pt(*_toward_room(beam)), arm.stop.across
    end = corner.moved(-room.x * reach, -room.y * reach)
    walls = (_own_wall(arm, reach), _behind((corner, end), Pt(-away.x, -away.y)))
    arms = [arm]
    other = standing(layout, beside_corner(layout, place) or "")
    mate = _mate(layout, place)
    if other is not None and mate is not None:
        arms.append(_round_it(arm, other))
        turned = arms[1].beam
        boards += cut_boards(arms[1], _ends(mate, "stopped"), pasts_to(turned, "face"), reach)
    return Scene(beam, None, tuple(arms), _in_order(iter(boards)), walls, reach)


def _round_it(arm: Arm, other: Standing) -> Arm:
    """The beam at the other wall of a corner that juts in: it goes back from there."""
    room, away = Pt(*_toward_room(arm.beam)), arm.stop.across
    corner = arm.at(_wall_edge(arm.beam), 0.0)
    back = Pt(-room.x, -room.y)
    lies = replace(other, at=corner, way=back, across=Pt(-away.x, -away.y), wall="near")
    return Arm(lies, Standing("", corner, lies.across, back, 0.0), "far", "beside")


def _mate(layout: Layout, place: CrossingPlace) -> Crossing | None:
    """The crossing of the beam at the other wall of a corner, as the layout has it."""
    beside = beside_corner(layout, place)
    own = next((each.wall for each in layout.wall_beams if each.id == place.stopped), "")
    wanted = CrossingPlace(own, beside or "")
    return next((each for each in layout.crossings if wanted in each.places), None)


def beside_corner(layout: Layout, place: CrossingPlace) -> str | None:
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
