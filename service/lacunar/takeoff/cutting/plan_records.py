"""Cutting plans of lengths, as they leave: every length exact, money as text with two decimals."""

from dataclasses import dataclass

from lacunar.measure.length import Length
from lacunar.takeoff.cutting.asked import Proof


@dataclass(frozen=True, slots=True)
class PieceOnStick:
    """One piece on a stick, by the marks it lies between, from the stick's end."""

    piece: str
    length: Length
    start: Length
    end: Length


@dataclass(frozen=True, slots=True)
class Stick:
    """One stick, with what is cut from it in this order."""

    number: int
    stock: str
    length: Length
    pattern: int
    pieces: tuple[PieceOnStick, ...]
    offcut: Length
    usable: bool


@dataclass(frozen=True, slots=True)
class PatternPart:
    """How many pieces of a length a pattern has."""

    length: Length
    quantity: int


@dataclass(frozen=True, slots=True)
class CutPattern:
    """A way to cut a stick, and how often it is cut so."""

    number: int
    stock: str
    times: int
    parts: tuple[PatternPart, ...]
    offcut: Length


@dataclass(frozen=True, slots=True)
class StockTaken:
    """How many are taken of a stock, and what they cost together."""

    stock: str
    length: Length
    quantity: int
    cost: str | None


@dataclass(frozen=True, slots=True)
class PieceValue:
    """What a length of piece is taken to be worth in the proof; sizes count one saw cut."""

    length: Length
    size: int
    quantity: int
    value: int


@dataclass(frozen=True, slots=True)
class StockHolds:
    """The most value that one piece of a stock can hold in the proof."""

    stock: str
    capacity: int
    price: int
    supply: int | None
    holds: int


@dataclass(frozen=True, slots=True)
class Certificate:
    """Whole numbers that prove the lower bound; no solver is needed to check them."""

    tick: Length
    pieces: tuple[PieceValue, ...]
    stock: tuple[StockHolds, ...]
    factor: str
    proves: str
    rounded_up: int
    unit: str


@dataclass(frozen=True, slots=True)
class LengthChoice:
    """A choice of lengths to buy, with the least that any plan from it can cost."""

    stock: tuple[str, ...]
    lower_bound: str | None
    least_bought: Length | None


@dataclass(frozen=True, slots=True)
class OneLength:
    """The plan if only one length is bought, against the plan from all."""

    stock: str
    length: Length
    quantity: int
    cost: str | None
    more: str | None
    more_bought: Length
    proven_best: bool


@dataclass(frozen=True, slots=True)
class MaterialPlan:
    """How one material is cut, what that costs, and what is proven of it.

    Where stock has no prices, `cost`, `lower_bound` and `gap` are None, and what is bought is as
    short as can be: `bought`, against `least_bought`.
    """

    material: str
    pieces: int
    cost: str | None
    lower_bound: str | None
    gap: str | None
    bought: Length
    least_bought: Length | None
    proven_best: bool
    proof: Proof | None
    exact_sizes: bool
    taken: tuple[StockTaken, ...]
    patterns: tuple[CutPattern, ...]
    sticks: tuple[Stick, ...]
    certificate: Certificate
    choices: tuple[LengthChoice, ...]
    one_length: tuple[OneLength, ...]


@dataclass(frozen=True, slots=True)
class LengthPlans:
    """The plans of all materials, which are never mixed."""

    cost: str | None
    lower_bound: str | None
    plans: tuple[MaterialPlan, ...]
    clock_struck: bool
