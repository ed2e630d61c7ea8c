"""One material's sheets and panels, exact and in whole numbers."""

from collections.abc import Iterator
from dataclasses import dataclass
from functools import cached_property
from math import gcd

from lacunar.measure.length import Length
from lacunar.takeoff.cutting.asked import Grain, Panel, SheetsAsked, SheetTerms, StockSheet
from lacunar.takeoff.cutting.guillotine import Shape
from lacunar.takeoff.cutting.sheet_fit import Edges, ways_to_lie
from lacunar.takeoff.cutting.sheet_shop import SheetShop
from lacunar.takeoff.cutting.ticks import common_tick, rounded, tick_for

SQUARE_INCHES_PER_SQUARE_FOOT = 144


@dataclass(frozen=True)
class SheetProblem:
    """The sheets and the panels of one material."""

    material: str
    terms: SheetTerms
    sheets: tuple[StockSheet, ...]
    panels: tuple[Panel, ...]

    @cached_property
    def kinds(self) -> dict[tuple[Edges, ...], int]:
        """The ways each kind of panel may lie, the largest first, with its quantity."""
        found: dict[tuple[Edges, ...], int] = {}
        for panel in self.panels:
            ways = kind_of(panel)
            found[ways] = found.get(ways, 0) + panel.quantity
        ordered = sorted(found, key=lambda ways: (ways[0][0] * ways[0][1].inches, ways))
        return {ways: found[ways] for ways in reversed(ordered)}

    @cached_property
    def _ticked(self) -> tuple[Length, bool]:
        kerf, trim = self.terms.kerf, self.terms.edge_trim * 2
        edges = [edge + kerf for ways in self.kinds for edge in ways[0]]
        sides = [
            side - trim + kerf for sheet in self.sheets for side in (sheet.length, sheet.width)
        ]
        return tick_for([*edges, *sides], max(sides))

    @property
    def tick(self) -> Length:
        """What edges are counted in."""
        return self._ticked[0]

    @property
    def exact(self) -> bool:
        """Whether every edge is a whole number of ticks."""
        return self._ticked[1]

    @property
    def priced(self) -> bool:
        """Whether sheets are compared by price; else by area."""
        return all(sheet.price is not None for sheet in self.sheets)

    @cached_property
    def unit(self) -> int:
        """One unit of cost: cents, or squares of `area_tick`."""
        return gcd(*self._costs) or 1

    @cached_property
    def area_tick(self) -> Length:
        """What sheets' edges are counted in where they are compared by area."""
        return common_tick(side for sheet in self.sheets for side in (sheet.length, sheet.width))

    @property
    def _costs(self) -> list[int]:
        if self.priced:
            return [sheet.price or 0 for sheet in self.sheets]
        return [
            int(sheet.length / self.area_tick) * int(sheet.width / self.area_tick)
            for sheet in self.sheets
        ]

    def shop(self, *, roomy: bool = False) -> SheetShop:
        """The problem in whole numbers; where edges are not whole, on the side that is asked for.

        Panels are counted larger and sheets smaller than they are, `roomy` the other way about.
        """
        kerf, trim = self.terms.kerf, self.terms.edge_trim * 2

        def edge(length: Length) -> int:
            return rounded(length + kerf, self.tick, up=not roomy)

        def side(length: Length) -> int:
            return rounded(length - trim + kerf, self.tick, up=roomy)

        shapes = [
            Shape(kind, edge(along), edge(across))
            for kind, ways in enumerate(self.kinds)
            for along, across in ways
        ]
        return SheetShop(
            tuple(shapes),
            tuple(self.kinds.values()),
            tuple((side(sheet.length), side(sheet.width)) for sheet in self.sheets),
            tuple(cost // self.unit for cost in self._costs),
            tuple(sheet.supply for sheet in self.sheets),
        )

    def area_text(self, units: int) -> str:
        """A cost in units of area, as square feet, exactly."""
        square = self.area_tick.inches * self.area_tick.inches
        return str(units * self.unit * square / SQUARE_INCHES_PER_SQUARE_FOOT)


def kind_of(panel: Panel) -> tuple[Edges, ...]:
    """Panels are of one kind if they may lie in the same ways, whatever they are called."""
    return tuple(sorted(ways_to_lie(panel), reverse=True))


def is_turned(panel: Panel, along: Length) -> bool:
    """Whether a panel that lies so has its length along the sheet's width."""
    if panel.grain is Grain.WIDTH:
        return True
    return panel.grain is Grain.FREE and along != panel.length


def sheet_problems(asked: SheetsAsked) -> Iterator[SheetProblem]:
    """The problem of each material that panels are cut from, in the order of the panels."""
    for name in dict.fromkeys(panel.material for panel in asked.panels):
        yield SheetProblem(
            name,
            asked.terms,
            tuple(sheet for sheet in asked.sheets if sheet.material == name),
            tuple(panel for panel in asked.panels if panel.material == name),
        )
