"""How beams end at doors, windows, fireplaces and cabinets."""

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass

from lacunar.layout.item_records import BeamAtFeature, Meeting, WallFeatureCheck
from lacunar.layout.records import Beam, BeamProfile, ElementKind, RunElement, RunLayout
from lacunar.layout.runs.frame import RunFrame
from lacunar.layout.set_out_beams import SetOutBeams
from lacunar.measure.figure import LengthFigure, Rule
from lacunar.measure.length import ZERO, Length
from lacunar.model.ceiling_items import WallFeature
from lacunar.model.item_rules import run_along
from lacunar.model.room import END_WALL, RunName

EDGE_NEAR = Rule("near edge of a wall feature", "center - width / 2")
EDGE_FAR = Rule("far edge of a wall feature", "center + width / 2")
OFF_CENTER = Rule("from a feature's center to another", "center - feature")
ELEMENT_OFF_CENTER = Rule(
    "from a feature's center to the middle of what is over it", "(near + far) / 2 - feature"
)
PAST_EDGE = Rule(
    "how far a beam reaches past the nearer edge of a feature",
    "max(near - beam_near, beam_far - far)",
)
OVER_HEAD = Rule("from a feature's head up to a beam's lowest edge", "height - drop - head")


@dataclass(frozen=True, slots=True)
class WallSurroundings:
    """What is set out about the walls: frames, beams, and the height of the ceiling."""

    frames: Mapping[RunName, RunFrame]
    built: SetOutBeams
    height: Length


def check_features(
    features: Sequence[WallFeature], around: WallSurroundings
) -> tuple[WallFeatureCheck, ...]:
    """Turn wall features into what beams do at them."""
    return tuple(_check(feature, around) for feature in features)


def _check(feature: WallFeature, around: WallSurroundings) -> WallFeatureCheck:
    run = run_along(feature.wall)
    at_end = feature.wall in END_WALL.values()
    center = around.frames[run].place(feature.center, at_end=at_end).value
    half = feature.width / 2
    near = EDGE_NEAR.gives(center - half, center=center, width=feature.width)
    far = EDGE_FAR.gives(center + half, center=center, width=feature.width)
    over, (first, last) = _element_at(center, around.built.runs[run], at_end=at_end)
    return WallFeatureCheck(
        name=feature.name,
        kind=feature.kind,
        wall=str(feature.wall),
        near=near,
        far=far,
        on=over.id,
        off_center=ELEMENT_OFF_CENTER.gives(
            (first + last) / 2 - center, near=first, far=last, feature=center
        ),
        beams=tuple(_ends(feature, (near.value, far.value), around, run)),
        along_wall=tuple(_along(feature, around)),
    )


def _element_at(
    center: Length, run: RunLayout, *, at_end: bool
) -> tuple[RunElement, tuple[Length, Length]]:
    """What is over a place at one end of the other run, and its faces; on a face, the coffer.

    In a crooked room a place may lie short of all that, or beyond: then what is there first, or
    last.
    """
    faces = [(element, _faces(element, at_end=at_end)) for element in run.elements]
    at = min(max(center, faces[0][1][0]), faces[-1][1][1])
    found = [(each, (near, far)) for each, (near, far) in faces if near <= at <= far]
    return min(found, key=lambda over: over[0].kind is not ElementKind.COFFER)


def _faces(element: RunElement | Beam, *, at_end: bool) -> tuple[Length, Length]:
    """The faces of a stretch of a run at the start or at the end of the other run."""
    if at_end:
        return element.near.at_end.value, element.far.at_end.value
    return element.near.at_start.value, element.far.at_start.value


def _ends(
    feature: WallFeature, edges: tuple[Length, Length], around: WallSurroundings, run: RunName
) -> Iterator[BeamAtFeature]:
    """Each beam that ends at the feature's wall and reaches over the feature."""
    near, far = edges
    at_end = feature.wall in END_WALL.values()
    for beam in around.built.beams:
        first, last = _faces(beam, at_end=at_end)
        if beam.on is not run or last <= near or first >= far:
            continue
        above = over_head(feature, around.built.profiles[beam.profile], around.height)
        yield beam_at(beam.id, (first, last), edges, above)


def beam_at(
    beam: str,
    faces: tuple[Length, Length],
    edges: tuple[Length, Length],
    above: LengthFigure | None,
) -> BeamAtFeature:
    """Turn where a beam's faces and a feature's edges lie along a wall into how both meet.

    `above` is from the feature's head up to the beam, where the head is known.
    """
    (first, last), (near, far) = faces, edges
    middle, center = (near + far) / 2, (first + last) / 2
    past = max(near - first, last - far)
    meeting = Meeting.WITHIN if past <= ZERO else Meeting.OVER_EDGE
    return BeamAtFeature(
        beam=beam,
        meeting=Meeting.CENTERED if center == middle else meeting,
        offset=OFF_CENTER.gives(center - middle, center=center, feature=middle),
        past_edge=PAST_EDGE.gives(past, near=near, beam_near=first, beam_far=last, far=far),
        over_head=above,
    )


def over_head(feature: WallFeature, profile: BeamProfile, height: Length) -> LengthFigure | None:
    """From a feature's head up to a beam's lowest edge; None where no head was told."""
    if feature.head is None:
        return None
    drop = profile.drop.value
    return OVER_HEAD.gives(
        height - drop - feature.head, height=height, drop=drop, head=feature.head
    )


def _along(feature: WallFeature, around: WallSurroundings) -> Iterator[str]:
    """Wall beams along the feature's own wall that hang lower than its head."""
    for beam in around.built.wall_beams:
        over = over_head(feature, around.built.profiles[beam.profile], around.height)
        if beam.wall == feature.wall and over is not None and over.value < ZERO:
            yield beam.id
