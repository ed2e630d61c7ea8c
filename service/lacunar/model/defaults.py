"""What is taken for everything a spec leaves open, in inches and in millimeters, each with why.

The metric figures are not the inch ones converted: they are what is sold and marked there.
"""

from collections.abc import Mapping
from dataclasses import dataclass
from fractions import Fraction

from lacunar.measure.length import Length
from lacunar.measure.rounding import Step
from lacunar.measure.units import Units
from lacunar.model.boards import BoardName
from lacunar.model.drawing import Paper
from lacunar.model.panel import SheetSize
from lacunar.model.stock import Stock, actual_stock, read_stock

NAME = "Coffered ceiling"
REVISION = "-"


@dataclass(frozen=True, slots=True)
class Defaults:
    """One unit system's figures. `width_step` rounds up widths of unlisted stock.

    `board` is the board taken where nothing is said of it, `board_cover` its face; a board with a
    cover of its own has `board_tongue`.
    """

    mark_to: Step
    wall_finish: Length
    headroom: Length
    clearance: Length
    cleat: Length
    sides: Stock
    bottom: Stock
    width_step: Length
    reveal: Length
    wished_opening: Length
    sheet: SheetSize
    sheet_thickness: Length
    gap: Length
    board: BoardName | None
    board_cover: Length
    board_tongue: Length
    board_thickness: Length
    board_gap: Length
    kerf: Length
    longest_board: Length
    paper: Paper
    fixing: "FixingDefaults"


@dataclass(frozen=True, slots=True)
class FixingDefaults:
    """One unit system's figures for joists and for what is fixed to them."""

    joist_spacing: Length
    joist_width: Length
    existing_finish: Length
    least_penetration: Length
    block_through: Length
    block_spacing: Length
    end_distance: Length
    fastener_lengths: tuple[Length, ...]


def _inches(amount: str) -> Length:
    return Length.of_inches(Fraction(amount))


def _millimeters(amount: str) -> Length:
    return Length.of_millimeters(Fraction(amount))


# Everything here is common practice, no source, but for the headroom: the least ceiling height in
# the International Residential Code, section R305 (from memory), which local codes change; for
# the board in inches, which is that of `board_tables`; and for the cleat, which is a dressed board
# of nominal 1 in (American Softwood Lumber Standard, PS 20: 3/4 in).
_INCHES = Defaults(
    mark_to=Step.read("1/16", Units.INCH),
    wall_finish=_inches("1/2"),
    headroom=_inches("84"),
    clearance=_inches("1/4"),
    cleat=_inches("3/4"),
    sides=read_stock("1x6"),
    bottom=read_stock("1x6"),
    width_step=_inches("1/4"),
    reveal=_inches("1/4"),
    wished_opening=_inches("48"),
    sheet=SheetSize(_inches("48"), _inches("96")),
    sheet_thickness=_inches("1/2"),
    gap=_inches("1/32"),
    board=BoardName.ONE_BY_SIX,
    board_cover=_inches("41/8"),
    board_tongue=_inches("1/4"),
    board_thickness=_inches("3/4"),
    board_gap=_inches("1/8"),
    kerf=_inches("1/8"),
    longest_board=_inches("192"),
    paper=Paper.TABLOID,
    fixing=FixingDefaults(
        joist_spacing=_inches("16"),
        joist_width=_inches("3/2"),
        existing_finish=_inches("1/2"),
        least_penetration=_inches("3/2"),
        block_through=_inches("3/2"),
        block_spacing=_inches("24"),
        end_distance=_inches("2"),
        fastener_lengths=tuple(_inches(f"{n}/2") for n in (*range(3, 9), *range(10, 26, 2))),
    ),
)
_MILLIMETERS = Defaults(
    mark_to=Step.read("1 mm", Units.MILLIMETER),
    wall_finish=_millimeters("12.5"),
    headroom=_millimeters("2134"),
    clearance=_millimeters("6"),
    cleat=_millimeters("18"),
    sides=actual_stock(_millimeters("18"), _millimeters("140"), Units.MILLIMETER),
    bottom=actual_stock(_millimeters("18"), _millimeters("120"), Units.MILLIMETER),
    width_step=_millimeters("10"),
    reveal=_millimeters("6"),
    wished_opening=_millimeters("1200"),
    sheet=SheetSize(_millimeters("1220"), _millimeters("2440")),
    sheet_thickness=_millimeters("12"),
    gap=_millimeters("1"),
    board=None,
    board_cover=_millimeters("96"),
    board_tongue=_millimeters("6"),
    board_thickness=_millimeters("18"),
    board_gap=_millimeters("3"),
    kerf=_millimeters("3"),
    longest_board=_millimeters("4800"),
    paper=Paper.A3,
    fixing=FixingDefaults(
        joist_spacing=_millimeters("400"),
        joist_width=_millimeters("38"),
        existing_finish=_millimeters("12.5"),
        least_penetration=_millimeters("40"),
        block_through=_millimeters("38"),
        block_spacing=_millimeters("600"),
        end_distance=_millimeters("50"),
        fastener_lengths=tuple(_millimeters(str(n)) for n in range(40, 320, 10)),
    ),
)

DEFAULTS: Mapping[Units, Defaults] = {Units.INCH: _INCHES, Units.MILLIMETER: _MILLIMETERS}
