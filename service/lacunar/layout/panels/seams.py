"""Where a panel larger than its sheet is parted, and which way its sheets are turned."""

from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from math import ceil

from lacunar.layout.backing_records import JoistLines
from lacunar.layout.panels.joist_seams import SeamTask, on_joists, seam_bearings
from lacunar.layout.records import SeamBearing
from lacunar.measure.figure import CountFigure, LengthFigure, Rule
from lacunar.measure.length import Length
from lacunar.model.panel import Panel, SeamPlaces, SheetSize
from lacunar.model.room import RunName

SEAMS = Rule(
    "seams with the sheet turned the better way: sheets along and across, less one each",
    "min(ceil(length / sheet_length) + ceil(width / sheet_width),"
    " ceil(length / sheet_width) + ceil(width / sheet_length)) - 2",
)
SEAMS_BY_GRAIN = Rule(
    "seams with the grain as asked for: sheets along and across it, less one each",
    "ceil(along_grain / sheet_length) + ceil(across_grain / sheet_width) - 2",
)
EQUAL_SEAM = Rule("seam in equal parts, from the panel's near edge", "panel * number / pieces")
SHEET_SEAM = Rule("seam after whole sheets, from the panel's near edge", "sheet * number")


@dataclass(frozen=True, slots=True)
class SheetLay:
    """How sheets lie in a panel: the run their long edge is along, and the seams along each run."""

    long_edge: RunName
    seams: CountFigure
    along_length: tuple[LengthFigure, ...]
    along_width: tuple[LengthFigure, ...]
    bearings: tuple[SeamBearing, ...]

    @property
    def alike(self) -> tuple[object, ...]:
        """What two lays have in common that are cut alike and lie alike to the joists."""
        seams = (*self.along_length, *self.along_width)
        return (
            tuple(seam.value for seam in seams),
            tuple(bearing.offset.value for bearing in self.bearings),
        )


@dataclass(frozen=True, slots=True)
class JoistsAbove:
    """Where a panel starts along a run [length], and the joists met along it, if there are any."""

    start: Length
    joists: JoistLines | None


def lay_sheets(
    size: tuple[Length, Length], panel: Panel, above: Mapping[RunName, JoistsAbove] | None = None
) -> SheetLay:
    """Turn a panel's sizes along both runs [length] into how its sheets lie.

    Without a grain the sheet is turned so that there are fewer seams, and lies along the length run
    where both ways give as many. Seams along the joists are put on them where sheets as many reach
    from joist to joist, each as near as can be to where it would lie; else they lie as asked for.
    """
    length, width = size
    sheet = panel.sheet
    long_edge = panel.grain or _better_turn(size, sheet)
    edges = (sheet.length, sheet.width)
    along, up = edges if long_edge is RunName.LENGTH else edges[::-1]
    found: dict[RunName, tuple[LengthFigure, ...]] = {}
    bearings: list[SeamBearing] = []
    for run, panel_size, edge in ((RunName.LENGTH, length, along), (RunName.WIDTH, width, up)):
        found[run] = tuple(_places(panel_size, edge, panel.seams))
        met = above[run] if above else None
        if met is not None and met.joists is not None:
            seam_task = SeamTask(run, panel_size, edge, met.start, met.joists)
            found[run] = on_joists(seam_task, found[run])
            across = width if run is RunName.LENGTH else length
            bearings += seam_bearings(seam_task, found[run], across)
    return SheetLay(
        long_edge=long_edge,
        seams=seams(size, sheet, panel.grain),
        along_length=found[RunName.LENGTH],
        along_width=found[RunName.WIDTH],
        bearings=tuple(bearings),
    )


def seams(
    size: tuple[Length, Length], sheet: SheetSize, grain: RunName | None = None
) -> CountFigure:
    """Turn a panel's two sizes [length] into the fewest seams from sheets of one size.

    Parameters: `size` along both runs; `sheet`; `grain`, the run its long edge must lie along.

    >>> inch = Length.of_inches
    >>> sheet = SheetSize(inch(48), inch(96))
    >>> seams((inch(48), inch(60)), sheet).value, seams((inch(49), inch(60)), sheet).value
    (0, 1)
    >>> seams((inch(48), inch(60)), sheet, RunName.LENGTH).value
    1
    """
    length, width = size
    if grain is None:
        count = min(_pieces(size, sheet, run) for run in RunName) - 2
        edges = {"sheet_length": sheet.length, "sheet_width": sheet.width}
        return SEAMS.gives(count, length=length, width=width, **edges)
    with_it, across_it = (length, width) if grain is RunName.LENGTH else (width, length)
    return SEAMS_BY_GRAIN.gives(
        _pieces(size, sheet, grain) - 2,
        along_grain=with_it,
        sheet_length=sheet.length,
        across_grain=across_it,
        sheet_width=sheet.width,
    )


def _better_turn(size: tuple[Length, Length], sheet: SheetSize) -> RunName:
    return min(RunName, key=lambda run: _pieces(size, sheet, run))


def _pieces(size: tuple[Length, Length], sheet: SheetSize, long_edge: RunName) -> int:
    """Pieces along the length run and along the width run, added up."""
    length, width = size
    along, up = sheet.length, sheet.width
    if long_edge is RunName.WIDTH:
        along, up = up, along
    return ceil(length / along) + ceil(width / up)


def _places(size: Length, edge: Length, places: SeamPlaces) -> Iterator[LengthFigure]:
    """The seams along one run, from the panel's edge next the datum."""
    pieces = ceil(size / edge)
    for number in range(1, pieces):
        if places is SeamPlaces.EQUAL:
            yield EQUAL_SEAM.gives(size * number / pieces, panel=size, number=number, pieces=pieces)
        else:
            yield SHEET_SEAM.gives(edge * number, sheet=edge, number=number)
