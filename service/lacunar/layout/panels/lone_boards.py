"""Boards across one opening by itself, without a ceiling around it."""

from dataclasses import dataclass

from lacunar.layout.board_records import BoardMovement, Courses
from lacunar.layout.fault_gathering import refuse
from lacunar.layout.panels.board_cautions import edge_cautions, movement_cautions
from lacunar.layout.panels.courses import board_foot_factor, lay_courses, lineal_factor
from lacunar.layout.panels.sheet_goods import PANEL_BETWEEN_SIDES, gap_faults
from lacunar.layout.panels.wood_movement import board_movement
from lacunar.layout.records import Caution
from lacunar.measure.figure import LengthFigure, NumberFigure, Rule
from lacunar.measure.length import Length
from lacunar.model.board_tables import PUBLISHED_BOARDS
from lacunar.model.boards import BoardName
from lacunar.model.panel import Panel

LINEAL = Rule("the boards of the opening in a row", "courses * length")
COVERAGE = Rule("by the rule of coverage: area over cover", "length * across / cover")


@dataclass(frozen=True, slots=True)
class LoneBoards:
    """Boards across one opening. `lineal` and `coverage` are None where no length was given."""

    opening: Length
    length: Length | None
    nominal: BoardName | None
    cover: Length
    tongue: Length
    gap: Length
    courses: Courses
    lineal: LengthFigure | None
    coverage: LengthFigure | None
    lineal_factor: NumberFigure
    board_foot_factor: NumberFigure | None
    movement: BoardMovement | None
    cautions: tuple[Caution, ...]


def boards_alone(panel: Panel, opening: Length, length: Length | None) -> LoneBoards:
    """Turn one opening into its courses of boards, and how much they move.

    Parameters: `panel`, decided, of the kind boards; `opening` [length], what courses lie across,
    between the faces; `length` [length] of each board.
    Raises SpecRefused where the gaps leave nothing.

    >>> from lacunar.model.assuming import Assuming
    >>> from lacunar.model.defaults import DEFAULTS
    >>> from lacunar.model.panel_assumptions import decide_panel
    >>> from lacunar.model.room import RunName
    >>> from lacunar.model.spec import PanelSpec
    >>> from lacunar.measure.units import Units
    >>> inch = Length.of_inches
    >>> said = PanelSpec(cover=inch(5), gap=inch(0))
    >>> panel = decide_panel(said, RunName.LENGTH, DEFAULTS[Units.INCH], Assuming())
    >>> boards_alone(panel, inch(41), None).courses.edge.value  # nine courses: (41 - 7 * 5) / 2
    Length(3 in)
    """
    boards, gap = panel.boards, panel.gap
    if boards is None:
        raise ValueError("the panel is not of boards")
    across = PANEL_BETWEEN_SIDES.gives(opening - gap * 2, opening=opening, gap=gap)
    refuse(gap_faults(panel, [across]))
    laid = lay_courses(across, boards.cover, boards.tongue, boards.centered_on)
    published = PUBLISHED_BOARDS[boards.nominal] if boards.nominal else None
    movement = None
    if boards.movement is not None:
        movement = board_movement(boards.movement, boards.cover, gap, across.value)
    return LoneBoards(
        opening=opening,
        length=length,
        nominal=boards.nominal,
        cover=boards.cover,
        tongue=boards.tongue,
        gap=gap,
        courses=laid,
        lineal=_lineal(laid, length),
        coverage=_coverage(laid, length, boards.cover),
        lineal_factor=lineal_factor(boards.cover),
        board_foot_factor=(
            board_foot_factor(published.nominal_width, boards.cover) if published else None
        ),
        movement=movement,
        cautions=(
            *edge_cautions([laid], boards.cover),
            *(movement_cautions(movement, gap) if movement else ()),
        ),
    )


def _lineal(laid: Courses, length: Length | None) -> LengthFigure | None:
    if length is None:
        return None
    count = laid.courses.value
    return LINEAL.gives(length * count, courses=count, length=length)


def _coverage(laid: Courses, length: Length | None, cover: Length) -> LengthFigure | None:
    if length is None:
        return None
    across = laid.across.value
    return COVERAGE.gives(length * (across / cover), length=length, across=across, cover=cover)
