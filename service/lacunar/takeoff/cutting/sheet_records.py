"""Cutting plans of sheets, as they leave: every length exact, money as text with two decimals.

Places on a sheet are from its lower left corner: x along its length, y along its width.
"""

from dataclasses import dataclass

from lacunar.measure.length import Length
from lacunar.takeoff.cutting.asked import Grain, Proof


@dataclass(frozen=True, slots=True)
class SheetCut:
    """One cut through a whole part of a sheet, in the order in which they are made.

    The part lies at x, y and is so long and wide before the cut, which leaves parts `1a` and `1b`
    of cut 1. `across` is the direction that is parted, `at` how much of it is left before the saw.
    """

    number: int
    part: str
    x: Length
    y: Length
    length: Length
    width: Length
    across: Grain
    at: Length


@dataclass(frozen=True, slots=True)
class PanelOnSheet:
    """A panel where it lies on its sheet; `turned`: its length lies along the sheet's width."""

    panel: str
    part: str
    x: Length
    y: Length
    length: Length
    width: Length
    turned: bool


@dataclass(frozen=True, slots=True)
class SheetOffcut:
    """What is left of a sheet in one part."""

    part: str
    x: Length
    y: Length
    length: Length
    width: Length
    usable: bool


@dataclass(frozen=True, slots=True)
class CutSheet:
    """One sheet: its cuts in order, and what they leave."""

    number: int
    sheet: str
    length: Length
    width: Length
    pattern: int
    cuts: tuple[SheetCut, ...]
    panels: tuple[PanelOnSheet, ...]
    offcuts: tuple[SheetOffcut, ...]


@dataclass(frozen=True, slots=True)
class SheetTaken:
    """How many are taken of a size of sheet, and what they cost together."""

    sheet: str
    length: Length
    width: Length
    quantity: int
    cost: str | None


@dataclass(frozen=True, slots=True)
class PanelValue:
    """What a size of panel is taken to be worth in the proof; edges count one saw cut."""

    length: Length
    width: Length
    edges: tuple[tuple[int, int], ...]
    quantity: int
    value: int


@dataclass(frozen=True, slots=True)
class SheetHolds:
    """The most value that one sheet can hold in the proof."""

    sheet: str
    edges: tuple[int, int]
    price: int
    supply: int | None
    holds: int


@dataclass(frozen=True, slots=True)
class SheetCertificate:
    """Whole numbers that prove the lower bound; what a sheet can hold is by edge-to-edge cuts."""

    tick: Length
    panels: tuple[PanelValue, ...]
    sheets: tuple[SheetHolds, ...]
    factor: str
    proves: str
    rounded_up: int
    unit: str


@dataclass(frozen=True, slots=True)
class SheetPlan:
    """How one material's sheets are cut, what that costs, and what is proven of it.

    Where sheets have no prices, `cost`, `lower_bound` and `gap` are None and their area is as small
    as can be: `area` against `least_area`, in square feet.
    """

    material: str
    panels: int
    cost: str | None
    lower_bound: str | None
    gap: str | None
    area: str
    least_area: str | None
    proven_best: bool
    proof: Proof | None
    all_places: bool
    taken: tuple[SheetTaken, ...]
    sheets: tuple[CutSheet, ...]
    certificate: SheetCertificate


@dataclass(frozen=True, slots=True)
class SheetPlans:
    """The plans of all materials, which are never mixed."""

    cost: str | None
    lower_bound: str | None
    plans: tuple[SheetPlan, ...]
    clock_struck: bool
