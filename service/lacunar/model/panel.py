"""What fills a coffer."""

from dataclasses import dataclass
from enum import StrEnum

from lacunar.measure.length import Length


class PanelKind(StrEnum):
    """The existing ceiling, or a panel cut from sheet goods."""

    EXISTING = "existing"
    SHEET_GOODS = "sheet_goods"


class Seat(StrEnum):
    """Where a sheet panel goes in the order of fitting, which decides how large it is."""

    BETWEEN_BACKING = "between_backing"
    BETWEEN_SIDES = "between_sides"
    ABOVE_BACKING = "above_backing"


@dataclass(frozen=True, slots=True)
class SheetSize:
    """A sheet as sold: the short and the long edge."""

    width: Length
    length: Length


@dataclass(frozen=True, slots=True)
class Panel:
    """What fills every coffer. `gap` is left at each edge of a sheet panel."""

    kind: PanelKind
    sheet: SheetSize
    thickness: Length
    seat: Seat
    gap: Length
