"""How boards end at corners that are not square, and at angled walls: mitred, by where they lie."""

from lacunar.layout.beams.lines import Slant
from lacunar.layout.crossing_records import BoardCut, BoardEnd, EndsAt
from lacunar.measure.angle import Angle, over_tangent
from lacunar.measure.figure import LengthFigure, Rule
from lacunar.measure.length import ZERO, Length

AT_CORNER = Rule(
    "past the face's end at a corner: what lies behind the face, over the half tangent",
    "behind / tan(corner / 2)",
)
ALONG_SLANT = Rule(
    "past the end of the full width: what the slant gives at that place across it",
    "slant * across / width",
)

_HALF = Angle.of_degrees(180) / 2


def at_angled_corner(behind: tuple[Length, Length], corner: Angle) -> BoardEnd:
    """Turn how far a board's two edges lie behind the face [length] into its end at a corner.

    Formula: behind / tan(corner / 2), less at corners that jut in; mitred by 90 - corner / 2.
    """
    one, other = (_at_corner(each, corner) for each in behind)
    long, short = (one, other) if one.value >= other.value else (other, one)
    return BoardEnd(BoardCut.MITRED, EndsAt.BOARD_END, long, short, abs(_HALF - corner / 2))


def _at_corner(behind: Length, corner: Angle) -> LengthFigure:
    past = over_tangent(behind, corner / 2) if behind else ZERO
    return AT_CORNER.approximates(past, behind=behind, corner=corner)


def at_slant(across: tuple[Length, Length], width: Length, slant: Slant) -> BoardEnd:
    """Turn where a board's edges lie across its beam, from the near face, into its slanted end."""
    one, other = (_along_slant(each, width, slant) for each in across)
    long, short = (one, other) if one.value >= other.value else (other, one)
    ends_at = EndsAt.SIDE if slant.beam else EndsAt.WALL
    return BoardEnd(BoardCut.MITRED, ends_at, long, short, slant.angle)


def _along_slant(across: Length, width: Length, slant: Slant) -> LengthFigure:
    longest = max(slant.past_near, slant.past_far)
    from_short = width - across if slant.past_near else across
    past = longest * (from_short / width)
    return ALONG_SLANT.approximates(past, slant=longest, across=from_short, width=width)
