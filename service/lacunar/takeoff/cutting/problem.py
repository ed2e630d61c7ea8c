"""One material's problem: what there is of it, what is wanted, and both in whole numbers."""

from collections.abc import Sequence
from dataclasses import dataclass
from functools import cached_property
from itertools import combinations
from math import gcd

from lacunar.measure.length import Length
from lacunar.takeoff.cutting.asked import LengthsAsked, Material, Piece, Terms
from lacunar.takeoff.cutting.miters import EndCuts, end_cuts
from lacunar.takeoff.cutting.stick_shop import StickShop
from lacunar.takeoff.cutting.sticks import merged_lengths
from lacunar.takeoff.cutting.ticks import common_tick, rounded, tick_for


@dataclass(frozen=True, slots=True)
class Unit:
    """What one unit of cost is: cents, or where nothing has a price, a length bought."""

    cents: int | None
    length: Length | None

    def in_cents(self, units: int) -> int | None:
        """A cost in cents; None where nothing has a price."""
        return None if self.cents is None else units * self.cents

    def in_length(self, units: int) -> Length | None:
        """A cost as a length that is bought; None where it is money."""
        return None if self.length is None else self.length * units


@dataclass(frozen=True, slots=True)
class Racked:
    """One stock as the problem has it; what is on hand is never bought. `price` is in units."""

    id: str
    length: Length
    price: int
    supply: int | None
    on_hand: bool


@dataclass(frozen=True)
class Problem:
    """The rack and the pieces of one material."""

    material: Material
    terms: Terms
    pieces: tuple[Piece, ...]
    rack: tuple[Racked, ...]
    unit: Unit

    @cached_property
    def kinds(self) -> tuple[tuple[Length, int], ...]:
        """Each length that is wanted, the longest first, with its quantity."""
        return merged_lengths(self.pieces)

    @cached_property
    def cuts(self) -> EndCuts:
        """What lies between two pieces on a stick."""
        return end_cuts(self.material, self.terms)

    @cached_property
    def _ticked(self) -> tuple[Length, bool]:
        sizes = [self.cuts.size(length) for length, _ in self.kinds]
        capacities = [self.cuts.capacity(each.length, self.terms) for each in self.rack]
        there = [capacity for capacity in capacities if capacity.inches > 0]
        return tick_for([*sizes, *there], max(there))

    @property
    def tick(self) -> Length:
        """What sizes are counted in."""
        return self._ticked[0]

    @property
    def exact(self) -> bool:
        """Whether every size is a whole number of ticks."""
        return self._ticked[1]

    def shop(self, places: Sequence[int], *, roomy: bool = False) -> StickShop:
        """The problem with some of the stock, in whole numbers.

        Where sizes are not whole, pieces are counted larger and sticks shorter than they are, so
        that a plan can be cut; `roomy`, the other way about, so that a bound holds.
        """
        rack = [self.rack[place] for place in places]
        return StickShop(
            tuple(
                rounded(self.cuts.size(length), self.tick, up=not roomy) for length, _ in self.kinds
            ),
            tuple(quantity for _, quantity in self.kinds),
            tuple(
                max(0, rounded(self.cuts.capacity(each.length, self.terms), self.tick, up=roomy))
                for each in rack
            ),
            tuple(each.price for each in rack),
            tuple(each.supply for each in rack),
        )

    @cached_property
    def on_hand(self) -> tuple[int, ...]:
        """The places of what need not be bought."""
        return tuple(place for place, each in enumerate(self.rack) if each.on_hand)

    @cached_property
    def sold(self) -> tuple[int, ...]:
        """The places of what is worth buying: nothing as long costs less."""
        places = [place for place, each in enumerate(self.rack) if not each.on_hand]
        return tuple(place for place in places if not self._outdone(place, places))

    def _outdone(self, place: int, places: Sequence[int]) -> bool:
        this = self.rack[place]
        if this.supply is not None:
            return False
        for other in places:
            that = self.rack[other]
            better = (that.length, -that.price, -other) > (this.length, -this.price, -place)
            if better and that.supply is None and that.price <= this.price:
                return True
        return False

    def choices(self) -> list[tuple[int, ...]]:
        """The stock that plans may be made of: all, or as many lengths as may be bought."""
        most = self.terms.most_lengths
        if most is None or most >= len(self.sold):
            return [(*self.sold, *self.on_hand)]
        return [(*some, *self.on_hand) for some in combinations(self.sold, most)]


def problems(asked: LengthsAsked) -> list[Problem]:
    """The problem of each material that pieces are cut from, in the order of the pieces."""
    names = dict.fromkeys(piece.material for piece in asked.pieces)
    materials = {material.name: material for material in asked.materials}
    return [_problem(asked, materials[name]) for name in names]


def _problem(asked: LengthsAsked, material: Material) -> Problem:
    name = material.name
    stock = [each for each in asked.stock if each.material == name]
    offcuts = [each for each in asked.offcuts if each.material == name]
    priced = all(each.price is not None for each in stock)
    if priced:
        cents = gcd(*(each.price or 0 for each in stock), *(each.salvage for each in offcuts)) or 1
        unit = Unit(cents, None)
        costs = [(each.price or 0) // cents for each in stock]
    else:
        cents = 1
        tick = common_tick([each.length for each in stock])
        unit = Unit(None, tick)
        costs = [rounded(each.length, tick, up=True) for each in stock]
    rack = [
        Racked(each.id, each.length, cost, each.supply, on_hand=False)
        for each, cost in zip(stock, costs, strict=True)
    ]
    rack += [
        Racked(
            each.id,
            each.length,
            each.salvage // cents if priced else 0,
            each.quantity,
            on_hand=True,
        )
        for each in offcuts
    ]
    pieces = tuple(piece for piece in asked.pieces if piece.material == name)
    return Problem(material, asked.terms, pieces, tuple(rack), unit)
