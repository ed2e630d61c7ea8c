"""Numbers in rings beside a section, each led to its part; no leader crosses another."""

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass

from lacunar.drawing import style
from lacunar.drawing.annotation import Tag, dot
from lacunar.drawing.elements import Group, Polyline, Pt
from lacunar.drawing.section.leader_order import uncrossed
from lacunar.drawing.typeface import Typeface
from lacunar.drawing.views.profile_detail.parts import NamedPart, ShownPart

LEAST_PITCH = 8.0
MOST_PITCH = 18.0
STAGGER = 9.0
"""How far every other balloon stands out where there are two columns [mm]."""
ELBOW = 3.0
"""How long the level end of a leader is [mm]."""

Numbers = Mapping[NamedPart, int]


@dataclass(frozen=True, slots=True)
class BalloonColumn:
    """Where balloons of a section stand: the left edge of the rings, their tops and their pitch.

    `staggered` are in two columns, with leaders to the outer one between the rings of the inner.
    """

    left: float
    top: float
    pitch: float
    typeface: Typeface
    staggered: bool = False


def ring(number: int) -> Tag:
    """A balloon's ring with its number."""
    return Tag("balloon", str(number), str(number), round=True)


def column_height(count: int, staggered: bool) -> float:
    """How tall a column of so many balloons is at least [mm], or two of them."""
    return count * _least_pitch(staggered)


def pitch_over(height: float, count: int, staggered: bool) -> float:
    """How far apart balloons stand beside what is so tall [mm]."""
    return max(_least_pitch(staggered), min(MOST_PITCH, height / count))


def _least_pitch(staggered: bool) -> float:
    return LEAST_PITCH / 2 if staggered else LEAST_PITCH


def balloons(
    view: int, shown: Sequence[ShownPart], numbers: Numbers, column: BalloonColumn
) -> Iterator[Group]:
    """A balloon to each part, in an order that keeps their leaders apart."""
    elbow = Pt(column.left - ELBOW, column.top + column.pitch / 2)
    targets = [part.target for part in shown]
    order = uncrossed(targets, [column.pitch] * len(shown), elbow)
    for place, which in enumerate(order):
        part, y = shown[which].part, elbow.y + place * column.pitch
        number = numbers[part]
        tag = ring(number)
        radius = tag.long_side(column.typeface) / 2
        bend = Pt(elbow.x, y)
        left = column.left + (STAGGER if column.staggered and place % 2 else 0.0)
        leader = Polyline((targets[which], bend, Pt(left, y)), style.LEADER)
        drawn = tag.drawn(Pt(left + radius, y), column.typeface)
        yield Group(
            "balloon",
            (leader, dot(targets[which]), *drawn.children),
            id=f"balloon-{view}-{number}",
            title=part.words,
            data={"number": str(number), "part": part.name, "view": f"view-{view}"},
        )
