"""Panels of coffers out of square: four sides, and the rectangle they are cut from."""

from collections.abc import Iterator, Sequence

from lacunar.layout.opening_records import (
    MeasuredOpening,
    PanelCorner,
    Squareness,
    TaperedPanel,
)
from lacunar.layout.quadrilaterals import CORNERS, set_in
from lacunar.measure.angle import Angle, times_cosine, times_sine
from lacunar.measure.figure import LengthFigure, Rule
from lacunar.measure.length import ZERO, Length
from lacunar.model.panel import Panel, PanelKind, Seat

BOUNDING_LENGTH = Rule(
    "rectangle that the panel is cut from: from its leftmost corner to its rightmost",
    "max(lower_right, upper_right) - min(0, upper_left)",
)
BOUNDING_WIDTH = Rule(
    "rectangle that the panel is cut from: up to its highest corner",
    "max(upper_left, upper_right)",
)
ALONG_LEFT = Rule("corner along the rectangle: past its leftmost one", "max(0, 0 - lean)")
ALONG_UPPER_LEFT = Rule(
    "corner along the rectangle: past its leftmost one", "lean + max(0, 0 - lean)"
)
ALONG_LOWER_RIGHT = Rule(
    "corner along the rectangle: the lower side past the leftmost one",
    "lower + max(0, 0 - lean)",
)
ALONG_UPPER_RIGHT = Rule(
    "corner along the rectangle: the lower side past the leftmost one, less what the right side"
    " leans",
    "lower - right_lean + max(0, 0 - lean)",
)
ON_LOWER_EDGE = Rule("corner up the rectangle: on its lower edge", "0")
UP_LEFT = Rule("corner up the rectangle: the left side's rise", "side * sin(corner)")


def is_tapered(opening: MeasuredOpening) -> bool:
    """Whether what fills a coffer is cut to its corners: known, and out of square."""
    return opening.squareness is Squareness.OUT_OF_SQUARE and bool(opening.corners)


def follows_measured(panel: Panel) -> bool:
    """Whether panels or boards go in after the sides, and so can be cut to what was measured."""
    return panel.seat is Seat.BETWEEN_SIDES and panel.kind is not PanelKind.EXISTING


def tapered_panels(panel: Panel, measured: Sequence[MeasuredOpening]) -> Iterator[TaperedPanel]:
    """Turn coffers out of square into panels of their shape, a gap smaller all round.

    The side toward W4 lies on the lower edge of the rectangle, the lower left corner leaning out to
    the left of it or in. None where panels are no sheets, or went in before the sides.
    """
    if panel.kind is PanelKind.SHEET_GOODS and follows_measured(panel):
        for opening in measured:
            if is_tapered(opening):
                yield _panel(panel.gap, opening)


def inner_sides(gap: Length, opening: MeasuredOpening) -> tuple[LengthFigure, ...]:
    """The sides of a coffer set in by a gap, from the one toward W4 on, counter-clockwise."""
    angles = [corner.angle.value for corner in opening.corners]
    if not gap:
        return tuple(opening.side(number) for number in CORNERS)
    return tuple(
        set_in(opening.side(number).value, gap, angles[number], angles[(number + 1) % 4])
        for number in CORNERS
    )


def _panel(gap: Length, opening: MeasuredOpening) -> TaperedPanel:
    lower, right, upper, left = inner_sides(gap, opening)
    first, second = (opening.corners[number].angle.value for number in (0, 1))
    lean, right_lean = times_cosine(left.value, first), times_cosine(right.value, second)
    rises = (_rise(left, first), _rise(right, second))
    past = max(ZERO, -lean)
    floor = ON_LOWER_EDGE.gives(ZERO)
    low = lower.value
    along = (
        ALONG_LEFT.approximates(past, lean=lean),
        ALONG_LOWER_RIGHT.approximates(low + past, lower=low, lean=lean),
        ALONG_UPPER_RIGHT.approximates(
            low - right_lean + past, lower=low, right_lean=right_lean, lean=lean
        ),
        ALONG_UPPER_LEFT.approximates(lean + past, lean=lean),
    )
    up = (floor, floor, rises[1], rises[0])
    far = max(low, low - right_lean) - min(ZERO, lean)
    return TaperedPanel(
        coffer=opening.coffer,
        sides=(left, upper, right, lower),
        length=BOUNDING_LENGTH.approximates(
            far, lower_right=low, upper_right=low - right_lean, upper_left=lean
        ),
        width=BOUNDING_WIDTH.approximates(
            max(rises[0].value, rises[1].value),
            upper_left=rises[0].value,
            upper_right=rises[1].value,
        ),
        corners=tuple(
            PanelCorner(corner.between, x, y)
            for corner, x, y in zip(opening.corners, along, up, strict=True)
        ),
    )


def _rise(side: LengthFigure, corner: Angle) -> LengthFigure:
    return UP_LEFT.approximates(times_sine(side.value, corner), side=side.value, corner=corner)
