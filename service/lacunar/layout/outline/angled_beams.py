"""Beams at angled walls: they follow the wall, mitred into what stands at the walls beside it."""

from collections.abc import Iterator, Mapping

from lacunar.layout.outline.rows import corner_between
from lacunar.layout.outline.wall import Wall
from lacunar.layout.outline.walls import Region, beam_strip
from lacunar.layout.outline_records import AngledBeam
from lacunar.layout.records import BeamProfile
from lacunar.layout.survey.report import apart
from lacunar.measure.angle import Angle, over_tangents
from lacunar.measure.figure import AngleFigure, LengthFigure, Rule
from lacunar.measure.length import ZERO, Length

BEHIND_FACE = Rule(
    "board behind the face: at each end more by how far it lies behind, over the half tangent of"
    " the corner, less where that juts in",
    "face + behind / tan(start / 2) + behind / tan(end / 2)",
)
MITER = Rule("miter, from square", "abs(90 - corner / 2)")

_SQUARE = Angle.of_degrees(90)


def angled_beams(region: Region, profiles: Mapping[str, BeamProfile]) -> Iterator[AngledBeam]:
    """Turn what stands at angled walls into beams with the sizes of their boards."""
    for wall in region.walls:
        strip = beam_strip(region.strips[wall.side])
        if wall.angled and strip is not None:
            yield _beam(region, wall, (strip.id, strip.width), profiles[strip.id])


def _beam(
    region: Region, wall: Wall, strip: tuple[str, LengthFigure], profile: BeamProfile
) -> AngledBeam:
    name, width = strip
    outer, inner = region.wall_line(wall), region.face_line(wall)
    before = region.walls[wall.side - 2]
    corners = corner_between(region, before).value, corner_between(region, wall).value
    face = apart(*inner, approximate=True)
    parts = {part.name: part for part in profile.parts}
    thickness = parts["side"].thickness.value if "side" in parts else ZERO
    bottom = parts["bottom"].width.value if "bottom" in parts else ZERO
    backing = parts["backing"].width.value if "backing" in parts else ZERO
    backing_long, backing_short = _points(face, (thickness, thickness + backing), corners)
    side_long, side_short = _points(face, (ZERO, thickness), corners)
    bottom_long, bottom_short = _points(face, (thickness, thickness + bottom), corners)
    return AngledBeam(
        id=name,
        wall=wall.name,
        profile=profile.id,
        corners=(inner[1], inner[0], outer[0], outer[1]),
        width=width,
        at_wall=apart(*outer, approximate=True),
        at_face=face,
        side_long=side_long,
        side_short=side_short,
        bottom_long=bottom_long,
        bottom_short=bottom_short,
        backing_long=backing_long if backing else None,
        backing_short=backing_short if backing else None,
        start_miter=_miter(corners[0]),
        end_miter=_miter(corners[1]),
    )


def _points(
    face: LengthFigure, behind: tuple[Length, Length], corners: tuple[Angle, Angle]
) -> tuple[LengthFigure, LengthFigure]:
    """How long a board is at its long and its short points, by where its edges lie."""
    sizes = [_behind(face, each, corners) for each in behind]
    ordered = sorted(sizes, key=lambda size: size.value, reverse=True)
    return ordered[0], ordered[1]


def _behind(face: LengthFigure, behind: Length, corners: tuple[Angle, Angle]) -> LengthFigure:
    start, end = corners
    more = over_tangents([(behind, start / 2), (behind, end / 2)]) if behind else ZERO
    return BEHIND_FACE.approximates(
        face.value + more, face=face.value, behind=behind, start=start, end=end
    )


def _miter(corner: Angle) -> AngleFigure:
    return MITER.gives(abs(_SQUARE - corner / 2), corner=corner)
