"""From corners to walls: which way each looks, its name, what stands at it, and what is between.

A wall that all but lies along a run, by an inch in a foot, is taken as square at its innermost
place, as in a crooked room: what stands there has a straight face and tapers behind. Any other is
angled, and what stands there follows it.
"""

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass, replace
from itertools import count

from lacunar.layout.families import Family
from lacunar.layout.fault_gathering import refuse
from lacunar.layout.outline.columns import StandingColumn, column_faults, standing_columns
from lacunar.layout.outline.shape import OutlineShape, outline_shape
from lacunar.layout.outline.surfaces import bows, finished, finishes, moved_inward
from lacunar.layout.outline.wall import Wall, look_of, place
from lacunar.layout.records import ElementKind
from lacunar.layout.runs.wall_strips import WallStrip, run_of_wall, strips_at
from lacunar.layout.survey.square_frame import furthest_in
from lacunar.measure.length import ZERO, Length
from lacunar.measure.plane import Spot, along, crossing, distance, moved_left, on_grid, snapped
from lacunar.measure.polygon import Line, Polygon, edges, extent, is_simple
from lacunar.model.faults import Fault, SpecRefused
from lacunar.model.grid import WallCondition
from lacunar.model.outline import Outline
from lacunar.model.room import START_WALL, WALLS, Room, RunName
from lacunar.model.wall_kind import WallKind

HAIR = Length.of_inches(1) / 8
"""Walls that lie so near in line are one wall: no tape tells them apart over a room."""


@dataclass(frozen=True, slots=True)
class Region:
    """A room with the lower left corner of the rectangle about it at the datum.

    `corners` are its own, clockwise; `squared` is the same with nearly square walls at their
    innermost places, counter-clockwise, `free` what is left of it between what stands at the walls.
    `walls` go clockwise; `strips` are what stands at each, by side, from the wall into the room,
    `frame` the strips of W1 to W4 alone. `spans` are how far the rectangle reaches; `finish` and
    `bows` are those of sides where these are known; `columns` stand free in it.
    """

    shape: OutlineShape
    corners: tuple[Spot, ...]
    walls: tuple[Wall, ...]
    squared: Polygon
    strips: Mapping[int, tuple[WallStrip, ...]]
    frame: Mapping[str, tuple[WallStrip, ...]]
    free: Polygon
    spans: Mapping[RunName, Length]
    finish: Mapping[int, Length]
    bows: Mapping[int, Length]
    approximate: bool
    columns: tuple[StandingColumn, ...] = ()

    @property
    def sides(self) -> Iterator[Wall]:
        """All that the room ends at: its walls, and the faces of columns."""
        yield from self.walls
        for column in self.columns:
            yield from column.faces

    def finish_of(self, wall: str) -> Length | None:
        """The finish of a wall, the thickest where several sides are this wall."""
        known = [self.finish.get(each.side) for each in self.walls if each.name == wall]
        return max((each for each in known if each is not None), default=None)

    def wall_line(self, wall: Wall) -> Line:
        """A wall's line in `squared`, clockwise; a column's face as it is."""
        if wall.side > len(self.walls):
            return wall.line
        return _clockwise(self.squared)[wall.side - 1]

    def face_line(self, wall: Wall) -> Line:
        """The face of what stands at a wall, in `free`, clockwise; the wall's own where nothing."""
        if wall.side > len(self.walls):
            return wall.line
        return _clockwise(self.free)[wall.side - 1]


def _clockwise(polygon: Polygon) -> list[Line]:
    """The edges of a counter-clockwise polygon, from its last corner back: side 1 comes first."""
    return list(edges(tuple(reversed(polygon))))


def region(
    room: Room,
    outline: Outline,
    frame: Mapping[str, tuple[WallStrip, ...]],
    families: Mapping[RunName, Family],
    conditions: Mapping[str, WallCondition],
) -> Region:
    """Turn a room's outline, and what is to stand at W1 to W4, into the room between its walls.

    Raises SpecRefused where the outline does not close or crosses itself, has no wall furthest out
    on one of its sides, or is too narrow for what stands there.
    """
    shape = outline_shape(outline)
    looks = [look_of(line) for line in edges(shape.corners)]
    refuse(list(_in_line(looks)))
    finish = finishes(room, outline, [look for look, _ in looks])
    corners, by_finish = finished(room, shape.corners, finish)
    bowed = bows(outline)
    squared, rough = _squared(corners, looks, bowed)
    low, high = extent(squared)
    squared = tuple(spot - low for spot in squared)
    corners = tuple(spot - low for spot in corners)
    spans = {RunName.LENGTH: high.x - low.x, RunName.WIDTH: high.y - low.y}
    walls = _named(corners, squared, looks, spans)
    refuse([*_frame_faults(walls), *_unknown_walls(outline, walls)])
    own = {each.wall: each.stands for each in outline.walls}
    strips = _strips(walls, frame, families, (conditions, own))
    free, by_angle = _free(walls, squared, strips)
    found = Region(
        shape=shape,
        corners=corners,
        walls=walls,
        squared=tuple(reversed(squared)),
        strips=strips,
        frame=frame,
        free=tuple(reversed(free)),
        spans=spans,
        finish=finish,
        bows=bowed,
        approximate=shape.approximate or by_finish or rough or by_angle,
    )
    return _with_columns(room, found)


def _with_columns(room: Room, region: Region) -> Region:
    """The room with the columns that stand in it; raises SpecRefused where one does not."""
    if not room.columns:
        return region
    finish = region.finish_of("W1"), region.finish_of("W4")
    columns = standing_columns(room, finish, len(region.walls))
    refuse(list(column_faults(columns, region.free)))
    bare: dict[int, tuple[WallStrip, ...]] = {
        face.side: () for column in columns for face in column.faces
    }
    return replace(region, columns=columns, strips={**region.strips, **bare})


def _in_line(looks: Sequence[tuple[str, bool]]) -> Iterator[Fault]:
    """Faults of neighboring sides that are both nearly square the same way: one wall."""
    for number, (look, square) in enumerate(looks):
        following = (number + 1) % len(looks)
        if square and looks[following] == (look, True):
            yield Fault(
                code="outline_walls_in_line",
                pointer="/room/outline",
                message=f"Sides {number + 1} and {following + 1} lie along the same way.",
                remedy="Give them as one side.",
                figures={"side": number + 1, "next": following + 1},
            )


def _squared(
    corners: Sequence[Spot], looks: Sequence[tuple[str, bool]], bowed: Mapping[int, Length]
) -> tuple[tuple[Spot, ...], bool]:
    """The outline with nearly square walls moved to their innermost places, clockwise.

    What an angled wall bows into the room moves all of it.
    """
    inward = [max(bowed.get(side, ZERO), ZERO) for side in range(1, len(corners) + 1)]
    lines = [
        _straight(line, look, bow) if square else moved_left(line, -bow)
        for line, bow, (look, square) in zip(edges(corners), inward, looks, strict=True)
    ]
    lines = _aligned(lines, looks)
    if all(line == own for line, own in zip(lines, edges(corners), strict=True)):
        return tuple(corners), False
    met = [crossing(lines[number - 1], line) for number, line in enumerate(lines)]
    rough = any(not square for _, square in looks) or any(inward)
    found = tuple(snapped(spot) if rough else spot for spot in met)
    if not is_simple(found):
        raise SpecRefused([_too_crooked()])
    return found, rough


def _aligned(lines: Sequence[Line], looks: Sequence[tuple[str, bool]]) -> list[Line]:
    """The lines with those that lie furthest out but for a hair in one line, the innermost."""
    found = list(lines)
    for wall in WALLS:
        own = [number for number, look in enumerate(looks) if look == (wall, True)]
        places = [place(run_of_wall(wall), lines[number][0]) for number in own]
        outmost, inmost = (min, max) if wall in START_WALL.values() else (max, min)
        alike = [
            (number, at)
            for number, at in zip(own, places, strict=True)
            if abs(at - outmost(places)) <= HAIR
        ]
        for number, _ in alike:
            at = inmost(each for _, each in alike)
            found[number] = _at(found[number], run_of_wall(wall), at)
    return found


def _at(line: Line, run: RunName, at: Length) -> Line:
    start, end = line
    if run is RunName.LENGTH:
        return Spot(at, start.y), Spot(at, end.y)
    return Spot(start.x, at), Spot(end.x, at)


def _straight(line: Line, look: str, bow: Length) -> Line:
    run, inward = run_of_wall(look), 1 if look in START_WALL.values() else -1
    start, end = (place(run, corner) * inward for corner in line)
    return _at(line, run, furthest_in(start, end, bow) * inward)


def _too_crooked() -> Fault:
    return Fault(
        code="outline_folded",
        pointer="/room/outline",
        message="With its walls squared the room crosses itself.",
        remedy="Look whether sides or corners were exchanged.",
    )


def _named(
    corners: Sequence[Spot],
    squared: Sequence[Spot],
    looks: Sequence[tuple[str, bool]],
    spans: Mapping[RunName, Length],
) -> tuple[Wall, ...]:
    numbers = count(len(WALLS) + 1)
    found = []
    lines = zip(edges(tuple(corners)), edges(tuple(squared)), looks, strict=True)
    for side, (own, line, (look, square)) in enumerate(lines, start=1):
        run = run_of_wall(look)
        at = (line[0].x if run is RunName.LENGTH else line[0].y) if square else None
        furthest = ZERO if look in START_WALL.values() else spans[run]
        name = look if at == furthest else f"W{next(numbers)}"
        found.append(Wall(name, side, look, own, at))
    return tuple(found)


def _frame_faults(walls: Sequence[Wall]) -> Iterator[Fault]:
    names = {wall.name for wall in walls}
    words = {"W1": "left", "W2": "top", "W3": "right", "W4": "bottom"}
    for wall in WALLS:
        if wall not in names:
            yield Fault(
                code="outline_wall_missing",
                pointer="/room/outline",
                message=f"Where the room reaches furthest to the {words[wall]} there is a corner,"
                f" and no wall that could be {wall}.",
                remedy="Turn the outline so that a wall lies furthest out on each of its four"
                " sides.",
                figures={"wall": wall},
            )


def _unknown_walls(outline: Outline, walls: Sequence[Wall]) -> Iterator[Fault]:
    known = [wall.name for wall in walls if wall.name not in WALLS]
    for number, name in enumerate(each.wall for each in outline.walls):
        if name not in known:
            yield Fault(
                code="outline_wall_unknown",
                pointer=f"/room/outline/walls/{number}/wall",
                message=f"The room has no wall {name} beyond W1 to W4.",
                remedy=f"Name one of {', '.join(known)}." if known else "Leave walls out.",
                figures={"wall": name},
            )


def _strips(
    walls: Sequence[Wall],
    frame: Mapping[str, tuple[WallStrip, ...]],
    families: Mapping[RunName, Family],
    said: tuple[Mapping[str, WallCondition], Mapping[str, WallKind]],
) -> dict[int, tuple[WallStrip, ...]]:
    """What stands at each wall, by side; beams beyond W1 to W4 are numbered on."""
    conditions, own = said
    numbers = count(sum(len(strips) for strips in frame.values()) + 1)
    found: dict[int, tuple[WallStrip, ...]] = {}
    for wall in walls:
        if wall.name in WALLS:
            found[wall.side] = frame[wall.name]
            continue
        usual = conditions[wall.looks_as]
        kind = usual.then if usual.kind is WallKind.SOFFIT else usual.kind
        condition = WallCondition(own.get(wall.name, kind))
        found[wall.side] = strips_at(wall.name, condition, families[wall.on].width, numbers)
    return found


def _free(
    walls: Sequence[Wall], squared: Sequence[Spot], strips: Mapping[int, tuple[WallStrip, ...]]
) -> tuple[tuple[Spot, ...], bool]:
    """The room between what stands at its walls, clockwise, and whether anything was snapped."""
    lines = list(edges(tuple(squared)))
    widths = [sum((strip.width.value for strip in strips[wall.side]), ZERO) for wall in walls]
    free, rough = moved_inward(lines, widths)
    faults = [
        _too_short(wall, line, face)
        for wall, line, face in zip(walls, lines, edges(free), strict=True)
        if along(line[1] - line[0], face[1] - face[0]) <= 0
    ]
    refuse(faults)
    if not is_simple(free):
        raise SpecRefused([_no_room()])
    return free, rough


def _too_short(wall: Wall, line: Line, face: Line) -> Fault:
    over = distance(*face).length
    return Fault(
        code="outline_wall_too_short",
        pointer="/room/outline",
        message=f"{wall.name}, side {wall.side}, is too short: what stands at the walls next to it"
        " leaves nothing of it.",
        remedy="Let nothing stand at it or beside it, in room.outline.walls or the grid, or make"
        " the beams narrower.",
        figures={
            "wall": wall.name,
            "length": on_grid(distance(*line).length),
            "short_by": on_grid(over),
        },
    )


def _no_room() -> Fault:
    return Fault(
        code="outline_has_no_coffers",
        pointer="/room/outline",
        message="What stands at the walls closes the room up in a narrow place.",
        remedy="Let nothing stand at the walls there, or make the beams narrower.",
    )


def beam_strip(strips: Sequence[WallStrip]) -> WallStrip | None:
    """The wall beam among what stands at a wall, if there is one."""
    return next((each for each in strips if each.kind is ElementKind.WALL_BEAM), None)
