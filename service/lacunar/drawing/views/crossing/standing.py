"""How beams lie where they meet, and where the edges of their boards end.

Places are in millimeters of the room, x along the length run, y up along the width run, from the
middle of the crossing. The beam that leads is turned to lie exactly along the sheet; one that lies
aslant keeps its angle to it.
"""

from dataclasses import dataclass, replace
from math import hypot
from typing import Literal

from lacunar.drawing.elements import Pt
from lacunar.layout.beams.board_ends import Level
from lacunar.layout.records import Beam, BeamProfile, EndPositions, Layout, WallBeam
from lacunar.measure.length import Length
from lacunar.model.room import START_WALL, RunName

Side = Literal["near", "far"]


def millimeters(length: Length) -> float:
    """A length of the layout in millimeters of the room."""
    return float(length.millimeters)


@dataclass(frozen=True, slots=True)
class Standing:
    """A beam as it lies: a place on its near face, the way along it, and the way across it.

    Both ways are of length 1, the one across from its near to its far face, `width` apart. `wall`
    is the face at the wall of a beam that stands at one.
    """

    id: str
    at: Pt
    way: Pt
    across: Pt
    width: float
    wall: Side | None = None
    profile: BeamProfile | None = None

    def edge(self, across: float) -> Pt:
        """A place on the line that lies so far from the near face towards the far one [mm]."""
        return self.at.moved(self.across.x * across, self.across.y * across)

    @property
    def upright(self) -> bool:
        """Whether it lies up the sheet rather than along it."""
        return abs(self.way.y) > abs(self.way.x)


def crossing_place(one: Standing, across: float, other: Standing, other_across: float) -> Pt:
    """Where a line along one thing meets a line along another, each so far from its near face."""
    start, end = one.edge(across), other.edge(other_across)
    turned = one.way.x * other.way.y - one.way.y * other.way.x
    gone = ((end.x - start.x) * other.way.y - (end.y - start.y) * other.way.x) / turned
    return start.moved(one.way.x * gone, one.way.y * gone)


def standing(layout: Layout, identity: str) -> Standing | None:
    """A beam or wall beam about the middle of the crossing; None for what is neither."""
    for beam in layout.beams:
        if beam.id == identity:
            return _standing(layout, beam, None)
    for at_wall in layout.wall_beams:
        if at_wall.id == identity:
            return _standing(layout, at_wall, _wall_side(at_wall))
    return None


def _wall_side(beam: WallBeam) -> Side:
    return "near" if beam.looks_as in START_WALL.values() else "far"


def _standing(layout: Layout, beam: Beam | WallBeam, wall: Side | None) -> Standing:
    face = beam.near if wall == "far" else beam.far
    way, across = _ways(layout, beam.on, face)
    profile = layout.profile(beam.profile)
    width = millimeters(profile.finished_width.value)
    at = Pt(-across.x * width / 2, -across.y * width / 2)
    return Standing(beam.id, at, way, across, width, wall, profile)


def _ways(layout: Layout, on: RunName, face: EndPositions) -> tuple[Pt, Pt]:
    """Along a beam and across it: a face that lies aslant is at two places along its run."""
    long = millimeters(layout.run(on.other).span.at_start.value)
    aside = millimeters(face.at_end.value - face.at_start.value)
    reach = hypot(long, aside)
    if on is RunName.LENGTH:
        return Pt(aside / reach, long / reach), Pt(long / reach, -aside / reach)
    return Pt(long / reach, aside / reach), Pt(-aside / reach, long / reach)


def turned_to(beams: tuple[Standing, ...]) -> tuple[Standing, ...]:
    """All turned alike, so that the first lies exactly along the sheet or up it."""
    way = beams[0].way
    main = Pt(0.0, 1.0) if beams[0].upright else Pt(1.0, 0.0)
    cosine = way.x * main.x + way.y * main.y
    sine = way.x * main.y - way.y * main.x

    def turned(at: Pt) -> Pt:
        return Pt(at.x * cosine - at.y * sine, at.x * sine + at.y * cosine)

    return tuple(
        replace(each, at=turned(each.at), way=turned(each.way), across=turned(each.across))
        for each in beams
    )


def thickness_of(profile: BeamProfile, part: str) -> tuple[float, float]:
    """Thickness and width of one board of a profile [mm]."""
    board = next(each for each in profile.parts if each.name == part)
    return millimeters(board.thickness.value), millimeters(board.width.value)


def edges_of(beam: Standing, level: Level) -> tuple[tuple[Side | None, float, float], ...]:
    """Where the edges of a part's boards lie from the near face [mm]; a box has two sides.

    A wall beam has but the one away from its wall; its other boards go back from its face.
    """
    assert beam.profile is not None
    thick, wide = thickness_of(beam.profile, level.part)
    edge = millimeters(level.edge)
    if level.part == "side":
        near: tuple[Side | None, float, float] = ("near", 0.0, thick)
        far: tuple[Side | None, float, float] = ("far", beam.width - thick, beam.width)
        return {"near": (far,), "far": (near,), None: (near, far)}[beam.wall]
    if beam.wall == "near":
        return ((None, beam.width + edge - wide, beam.width + edge),)
    if beam.wall == "far":
        return ((None, -edge, wide - edge),)
    return ((None, -edge, beam.width + edge),)
