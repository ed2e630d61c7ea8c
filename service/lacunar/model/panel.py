"""What fills a coffer."""

from dataclasses import dataclass
from enum import StrEnum

from lacunar.measure.length import Length
from lacunar.model.boards import Boards
from lacunar.model.room import RunName


class PanelKind(StrEnum):
    """The existing ceiling, a panel cut from sheet goods, or boards side by side."""

    EXISTING = "existing"
    SHEET_GOODS = "sheet_goods"
    BOARDS = "boards"


class Seat(StrEnum):
    """Where sheets or boards go in the order of fitting, which decides how far they reach."""

    BETWEEN_BACKING = "between_backing"
    BETWEEN_SIDES = "between_sides"
    ABOVE_BACKING = "above_backing"


class SeamPlaces(StrEnum):
    """Where a panel larger than its sheet is parted: in equal parts, or after each whole sheet."""

    EQUAL = "equal"
    SHEET_EDGE = "sheet_edge"


@dataclass(frozen=True, slots=True)
class SheetSize:
    """A sheet as sold: the short and the long edge."""

    width: Length
    length: Length


@dataclass(frozen=True, slots=True)
class Panel:
    """What fills every coffer. `gap` is left at each edge of a sheet panel or of boards.

    `grain` is the run that the sheet's long edge lies along, None where it may be turned; `boards`
    is None unless boards fill the coffers.
    """

    kind: PanelKind
    sheet: SheetSize
    thickness: Length
    seat: Seat
    gap: Length
    grain: RunName | None = None
    seams: SeamPlaces = SeamPlaces.EQUAL
    boards: Boards | None = None
