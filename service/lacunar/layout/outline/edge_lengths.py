"""How long a piece along a side is at each of its edges, by the angles its ends are cut at.

An angle is that between the side and the cut, inside the piece: half the corner where two pieces
are mitred, 90 degrees where the end is square, past 90 at a corner that juts in.
"""

from dataclasses import dataclass

from lacunar.measure.angle import Angle, over_tangents
from lacunar.measure.figure import LengthFigure, Rule
from lacunar.measure.length import Length

Cuts = tuple[Angle, Angle]

_RIGHT = Angle.of_degrees(90)

SET_IN = Rule(
    "side set in: at each end less by the distance over the tangent of the angle between side and"
    " cut, which is half the corner at a miter; more where the corner juts in",
    "side - distance / tan(left) - distance / tan(right)",
)
SHORT_POINT = Rule(
    "edge that stands out: at each end less by the projection over the tangent of the angle between"
    " side and cut, which is half the corner at a miter; more where the corner juts in",
    "long_point - projection / tan(left) - projection / tan(right)",
)
CUT_FROM = Rule(
    "piece to be cut from: at each outside corner the edge that stands out goes further",
    "long_point + max(-projection / tan(left), 0) + max(-projection / tan(right), 0)",
)
BETWEEN_ENDS = Rule(
    "piece between what its ends leave: at each inside corner the edge that stands out is shorter",
    "long_point - max(projection / tan(left), 0) - max(projection / tan(right), 0)",
)


@dataclass(frozen=True, slots=True)
class EdgeLengths:
    """A piece at the edge on its side, at that which stands out, and between its outer points."""

    long_point: LengthFigure
    short_point: LengthFigure
    cut_from: LengthFigure
    between_ends: LengthFigure


def set_in(side: LengthFigure, distance: Length, cuts: Cuts) -> LengthFigure:
    """Turn a side [length] into a line at a distance from it, between the cuts at its ends."""
    if not distance:
        return side
    left, right = cuts
    taken = over_tangents([(distance, left), (distance, right)])
    return SET_IN.approximates(
        side.value - taken, side=side.value, distance=distance, left=left, right=right
    )


def edge_lengths(long_point: LengthFigure, projection: Length, cuts: Cuts) -> EdgeLengths:
    """Turn the edge on the side [length], how far the piece stands out, and its cuts into edges."""
    left, right = cuts
    long = long_point.value
    taken = over_tangents([(projection, cut) for cut in cuts])
    # Added up before they are snapped, so that each length is snapped once.
    past = over_tangents([(projection, cut) for cut in cuts if cut > _RIGHT])
    back = over_tangents([(projection, cut) for cut in cuts if cut < _RIGHT])
    short, cut_from, between = (
        rule.approximates(value, long_point=long, projection=projection, left=left, right=right)
        for rule, value in (
            (SHORT_POINT, long - taken),
            (CUT_FROM, long - past),
            (BETWEEN_ENDS, long - back),
        )
    )
    return EdgeLengths(long_point, short, cut_from, between)
