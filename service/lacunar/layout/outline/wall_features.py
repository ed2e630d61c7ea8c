"""How beams end at doors, windows, fireplaces and cabinets in a room with other than four walls.

There a beam ends at some walls and not at others, and walls may lie aslant: along these, places
are from their start, going clockwise.
"""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass

from lacunar.layout.fault_gathering import refuse
from lacunar.layout.item_records import BeamAtFeature, WallFeatureCheck
from lacunar.layout.items.wall_features import (
    EDGE_FAR,
    EDGE_NEAR,
    ELEMENT_OFF_CENTER,
    WallSurroundings,
    beam_at,
    over_head,
)
from lacunar.layout.outline.cells import Cell
from lacunar.layout.outline.rows import Outlined
from lacunar.layout.outline.spans import spot
from lacunar.layout.outline.wall import Wall, place
from lacunar.layout.outline.walls import Region
from lacunar.layout.records import profiles_by_beam
from lacunar.measure.figure import LengthFigure, Rule
from lacunar.measure.length import ZERO, Length
from lacunar.measure.plane import Spot, along, crossing, distance, settled
from lacunar.measure.polygon import edges, lies_on
from lacunar.model.ceiling_items import WallFeature
from lacunar.model.faults import Fault
from lacunar.model.room import WALLS, RunName

FROM_CORNER = Rule("center of a wall feature: its wall's corner, and from there", "corner + center")

Stretch = tuple[Length, Length]


@dataclass(frozen=True, slots=True)
class OddWalls:
    """A room with its coffers, and what is set out about its walls."""

    room: Outlined
    cells: tuple[Cell, ...]
    around: WallSurroundings


def odd_features(features: Sequence[WallFeature], walls: OddWalls) -> tuple[WallFeatureCheck, ...]:
    """Turn wall features into what beams do at them.

    Raises SpecRefused where one is at a wall that is not there, or not between its ends.
    """
    placed = [_placed(feature, number, walls) for number, feature in enumerate(features)]
    refuse([each for each in placed if isinstance(each, Fault)])
    return tuple(
        _check(feature, *each, walls)
        for feature, each in zip(features, placed, strict=True)
        if not isinstance(each, Fault)
    )


def _placed(
    feature: WallFeature, number: int, walls: OddWalls
) -> tuple[Wall, LengthFigure] | Fault:
    """The side a feature is in, with its center along it; or what is wrong with it."""
    region, pointer = walls.room.region, f"/room/wall_features/{number}"
    sides = [wall for wall in region.walls if wall.name == feature.wall]
    if not sides:
        known = ", ".join(dict.fromkeys(wall.name for wall in region.walls))
        return Fault(
            code="feature_wall_unknown",
            pointer=f"{pointer}/wall",
            message=f"The room has no wall {feature.wall}.",
            remedy=f"Name one of {known}.",
            figures={"wall": feature.wall},
        )
    half = feature.width / 2
    for wall in sides:
        center = _center(feature, wall, walls)
        low, high = sorted(_along(wall, end, region) for end in region.wall_line(wall))
        if low <= center.value - half and center.value + half <= high:
            return wall, center
    return Fault(
        code="feature_outside_wall",
        pointer=f"{pointer}/center",
        message=f"The feature does not lie between the ends of {feature.wall}.",
        remedy="Measure its center from the datum's end of the wall: on W1 to W4 from the walls"
        " furthest out, on an angled wall from its start, going clockwise.",
        figures={
            "near": center.value - half,
            "far": center.value + half,
            "start": low,
            "end": high,
        },
    )


def _center(feature: WallFeature, wall: Wall, walls: OddWalls) -> LengthFigure:
    if wall.name in WALLS:
        return walls.around.frames[wall.on.other].place(feature.center)
    if wall.angled:
        corner = ZERO
    else:
        line = walls.room.region.wall_line(wall)
        corner = min(place(wall.on.other, end) for end in line)
    return FROM_CORNER.gives(corner + feature.center, corner=corner, center=feature.center)


def _along(wall: Wall, at: Spot, region: Region) -> Length:
    """A place along a wall: along its run from the datum, or along a slant from its start."""
    if not wall.angled:
        return place(wall.on.other, at)
    start, end = region.wall_line(wall)
    way, long = end - start, distance(start, end).length
    return settled(Length.of_inches(along(way, at - start) / long.inches)).length


def _check(
    feature: WallFeature, wall: Wall, center: LengthFigure, walls: OddWalls
) -> WallFeatureCheck:
    region, at, width = walls.room.region, center.value, feature.width
    rough = wall.angled
    near = (EDGE_NEAR.approximates if rough else EDGE_NEAR.gives)(
        at - width / 2, center=at, width=width
    )
    far = (EDGE_FAR.approximates if rough else EDGE_FAR.gives)(
        at + width / 2, center=at, width=width
    )
    ending = dict(_ending(wall, walls.room))
    over, (first, last) = _over(at, wall, walls, ending)
    tell = ELEMENT_OFF_CENTER.approximates if rough else ELEMENT_OFF_CENTER.gives
    by_id = {beam.id: beam for beam in walls.around.built.beams}
    return WallFeatureCheck(
        name=feature.name,
        kind=feature.kind,
        wall=feature.wall,
        near=near,
        far=far,
        on=over,
        off_center=tell((first + last) / 2 - at, near=first, far=last, feature=at),
        beams=tuple(
            _at(feature, (near.value, far.value), by_id[beam].profile, (beam, faces), walls)
            for beam, faces in ending.items()
            if faces[1] > near.value and faces[0] < far.value
        ),
        along_wall=tuple(_low_along(feature, wall, region, walls)),
        side=wall.side,
    )


def _at(
    feature: WallFeature,
    edges_at: Stretch,
    profile: str,
    beam: tuple[str, Stretch],
    walls: OddWalls,
) -> BeamAtFeature:
    above = over_head(feature, walls.around.built.profiles[profile], walls.around.height)
    return beam_at(beam[0], beam[1], edges_at, above)


def _ending(wall: Wall, room: Outlined) -> Iterator[tuple[str, Stretch]]:
    """The beams that end at a wall, with where their faces come on it."""
    inch, line = Length.of_inches(1), room.region.wall_line(wall)
    for run in RunName:
        for beam_id, beam, _ in room.ends[run].beams:
            ends = [end for span in room.spans[beam_id] for end in (span.start, span.end)]
            if not any(end.wall.side == wall.side for end in ends):
                continue
            if wall.on is run and not wall.angled:
                continue  # it ends at a corner of a wall that lies along it
            faces = [
                crossing(line, (spot(run, face, ZERO), spot(run, face, inch)))
                for face in (beam.near.value, beam.far.value)
            ]
            first, last = sorted(_along(wall, face, room.region) for face in faces)
            yield beam_id, (first, last)


def _over(
    center: Length, wall: Wall, walls: OddWalls, ending: dict[str, Stretch]
) -> tuple[str, Stretch]:
    """What is over a place at a wall: the beam that ends there, else the coffer, or the nearest."""
    beam = next((b for b, (first, last) in ending.items() if first < center < last), None)
    if beam is not None:
        return beam, ending[beam]
    found = list(_coffers_at(wall, walls))
    if not found:
        return wall.name, (center, center)
    return min(found, key=lambda each: max(each[1][0] - center, center - each[1][1], ZERO))


def _coffers_at(wall: Wall, walls: OddWalls) -> Iterator[tuple[str, Stretch]]:
    """The coffers at a wall, or at what stands there, with where they start and end along it."""
    face = walls.room.region.face_line(wall)
    for cell in walls.cells:
        for line in edges(cell.corners):
            if all(lies_on(face, end) for end in line):
                first, last = sorted(_along(wall, end, walls.room.region) for end in line)
                yield cell.id, (first, last)


def _low_along(feature: WallFeature, wall: Wall, region: Region, walls: OddWalls) -> Iterator[str]:
    """What stands along the feature's own wall and hangs lower than its head."""
    profiles = profiles_by_beam(walls.around.built.profiles.values())
    for strip in region.strips[wall.side]:
        above = over_head(feature, profiles[strip.id], walls.around.height)
        if above is not None and above.value < ZERO:
            yield strip.id
