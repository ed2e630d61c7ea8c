"""What is asked of a cutting plan of lengths, with nothing left open.

Prices are cents, or hundredths of whatever the prices are in.
"""

from dataclasses import dataclass
from enum import StrEnum

from lacunar.measure.angle import Angle
from lacunar.measure.length import Length
from lacunar.measure.units import Units


class Section(StrEnum):
    """Whether a stick may be turned over: of what is sprung, that swaps its edges."""

    SQUARE = "square"
    SPRUNG = "sprung"


class Grain(StrEnum):
    """Which way a panel may lie on a sheet, whose grain is along its length."""

    LENGTH = "length"
    WIDTH = "width"
    FREE = "free"


class SecondAim(StrEnum):
    """What decides between plans that cost the same."""

    FEWEST_PATTERNS = "fewest_patterns"
    LARGEST_OFFCUTS = "largest_offcuts"


class Proof(StrEnum):
    """What shows that no plan is cheaper: the bound by itself, or a search over all that remain."""

    BOUND = "bound"
    SEARCH = "search"


class EffortWord(StrEnum):
    """How much is tried, in counts."""

    QUICK = "quick"
    USUAL = "usual"
    THOROUGH = "thorough"


@dataclass(frozen=True, slots=True)
class StockLength:
    """A length that is sold: its price, and how many there are (None: as many as wanted)."""

    id: str
    material: str
    length: Length
    price: int | None
    supply: int | None


@dataclass(frozen=True, slots=True)
class Offcut:
    """What is on hand: how many, and what each would bring if it were kept."""

    id: str
    material: str
    length: Length
    quantity: int
    salvage: int


@dataclass(frozen=True, slots=True)
class Piece:
    """What is to be cut, by its longest edge."""

    id: str
    material: str
    length: Length
    quantity: int


@dataclass(frozen=True, slots=True)
class Material:
    """How a material's pieces are cut: square, or mitred at both ends.

    Nested pieces are turned over one by one, so that two of them share one mitred cut; `width` is
    the face that the miter goes across.
    """

    name: str
    section: Section
    miter: Angle
    width: Length | None
    nested: bool


@dataclass(frozen=True, slots=True)
class Terms:
    """What holds for all sticks: saw cut, what comes off each end, what is kept, what is tried.

    `end_trim` includes its saw cut. At most `most_lengths` different lengths are bought of a
    material; None: any number.
    """

    kerf: Length
    end_trim: Length
    usable_offcut: Length
    most_lengths: int | None
    second_aim: SecondAim
    effort: EffortWord
    units: Units


@dataclass(frozen=True, slots=True)
class LengthsAsked:
    """Pieces, and the stock they are cut from; every piece has stock of its material."""

    stock: tuple[StockLength, ...]
    offcuts: tuple[Offcut, ...]
    pieces: tuple[Piece, ...]
    materials: tuple[Material, ...]
    terms: Terms


@dataclass(frozen=True, slots=True)
class StockSheet:
    """A sheet that is sold: its price in cents, and how many there are (None: no end of it)."""

    id: str
    material: str
    length: Length
    width: Length
    price: int | None
    supply: int | None


@dataclass(frozen=True, slots=True)
class Panel:
    """A panel to be cut. `grain` tells which of its edges lies along the sheet's length."""

    id: str
    material: str
    length: Length
    width: Length
    quantity: int
    grain: Grain


@dataclass(frozen=True, slots=True)
class SheetTerms:
    """What holds for all sheets. `edge_trim` includes its saw cut."""

    kerf: Length
    edge_trim: Length
    usable_offcut: Length
    effort: EffortWord


@dataclass(frozen=True, slots=True)
class SheetsAsked:
    """Panels, and the sheets they are cut from; every panel has sheets of its material."""

    sheets: tuple[StockSheet, ...]
    panels: tuple[Panel, ...]
    terms: SheetTerms
