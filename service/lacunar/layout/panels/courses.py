"""Courses of boards across an opening: how many, and what the two edge boards are ripped to."""

from collections.abc import Callable
from math import ceil

from lacunar.layout.board_records import Courses
from lacunar.measure.figure import CountFigure, LengthFigure, NumberFigure, Rule
from lacunar.measure.length import Length
from lacunar.model.boards import CenteredOn

COURSES = Rule(
    "courses: as many covers as fill what is across, so that the edge boards are over half a cover",
    "ceil(across / cover)",
)
OTHER_COURSES = Rule(
    "courses: one more than the fewest, so that what was asked for lies on the middle line",
    "ceil(across / cover) + 1",
)
EDGE = Rule(
    "face of both edge boards: half of what whole covers leave",
    "(across - (courses - 2) * cover) / 2",
)
ONLY_BOARD = Rule("the only board fills what is across", "across")
FIRST_RIP = Rule("first board: its face, and the tongue, which is kept", "edge + tongue")
LAST_RIP = Rule("last board: its face, tongue cut off", "edge")
LINEAL_FACTOR = Rule("lineal feet of board to a square foot: a foot over the cover", "foot / cover")
BOARD_FOOT_FACTOR = Rule(
    "board feet to a square foot, of boards 1 in thick by name: nominal width over the cover",
    "nominal / cover",
)

_FOOT = Length.of_feet(1)


def lay_courses(
    across: LengthFigure, cover: Length, tongue: Length, centered_on: CenteredOn | None
) -> Courses:
    """Turn what is to be filled into courses with two equal edge boards.

    With as few courses as fill it, each edge board shows more than half a cover and at most a
    whole one: an even number of courses puts a joint on the middle line, an odd one a board. Where
    the other is asked for there is one course more, and edge boards of half a cover or less.

    Parameters: `across` [length], the gaps taken off; `cover` [length] of one board; `tongue`
    [length]; `centered_on`, None for whichever gives the wider edge boards.
    Law: two edges and the covers between them are `across` exactly.

    >>> from lacunar.measure.figure import given
    >>> inch = Length.of_inches
    >>> found = lay_courses(given(inch(41)), inch(5), inch(0), None)
    >>> found.courses.value, found.centered_on.value, found.edge.value  # 7 * 5 = 35, 6 left for two
    (9, 'board', Length(3 in))
    """
    count = _count(across.value, cover, centered_on)
    edge = _edge(across, cover, count.value)
    last = _gives(LAST_RIP, across)(edge.value, edge=edge.value)
    first = last
    if count.value > 1:
        first = _gives(FIRST_RIP, across)(edge.value + tongue, edge=edge.value, tongue=tongue)
    return Courses(
        across=across,
        courses=count,
        centered_on=_centered(count.value),
        edge=edge,
        first_rip=first,
        last_rip=last,
    )


def _centered(courses: int) -> CenteredOn:
    return CenteredOn.BOARD if courses % 2 else CenteredOn.JOINT


def _count(across: Length, cover: Length, centered_on: CenteredOn | None) -> CountFigure:
    fewest = ceil(across / cover)
    if centered_on in (None, _centered(fewest)):
        return COURSES.gives(fewest, across=across, cover=cover)
    return OTHER_COURSES.gives(fewest + 1, across=across, cover=cover)


def _gives(rule: Rule, across: LengthFigure) -> Callable[..., LengthFigure]:
    """The rule, whose figures are approximate where what is across is."""
    return rule.approximates if across.approximate else rule.gives


def _edge(across: LengthFigure, cover: Length, courses: int) -> LengthFigure:
    if courses == 1:
        return _gives(ONLY_BOARD, across)(across.value, across=across.value)
    left = across.value - cover * (courses - 2)
    return _gives(EDGE, across)(left / 2, across=across.value, courses=courses, cover=cover)


def lineal_factor(cover: Length) -> NumberFigure:
    """Turn a board's cover into the lineal feet that cover a square foot.

    >>> lineal_factor(Length.of_inches(25) / 8).value  # 3.84
    Fraction(96, 25)
    """
    return LINEAL_FACTOR.gives(_FOOT / cover, foot=_FOOT, cover=cover)


def board_foot_factor(nominal: Length, cover: Length) -> NumberFigure:
    """Turn a 1 in board's nominal width and cover into the board feet that cover a square foot.

    >>> board_foot_factor(Length.of_inches(4), Length.of_inches(25) / 8).value  # 1.28
    Fraction(32, 25)
    """
    return BOARD_FOOT_FACTOR.gives(nominal / cover, nominal=nominal, cover=cover)
