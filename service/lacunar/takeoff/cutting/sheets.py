"""Cutting plans of sheets: each material by itself, at least cost, cut from edge to edge."""

from collections.abc import Iterator
from dataclasses import replace
from fractions import Fraction

from lacunar.model.faults import SpecRefused
from lacunar.takeoff.cutting.asked import Panel, Proof, SheetsAsked
from lacunar.takeoff.cutting.certificate import PriceSums, weigh
from lacunar.takeoff.cutting.efforts import EFFORTS
from lacunar.takeoff.cutting.guillotine import Shape
from lacunar.takeoff.cutting.money import money_text, total_text
from lacunar.takeoff.cutting.runs_out import runs_out
from lacunar.takeoff.cutting.search import Outcome, Search
from lacunar.takeoff.cutting.sheet_layout import Lying, SheetCutter
from lacunar.takeoff.cutting.sheet_problem import (
    SQUARE_INCHES_PER_SQUARE_FOOT,
    SheetProblem,
    is_turned,
    kind_of,
    sheet_problems,
)
from lacunar.takeoff.cutting.sheet_records import (
    CutSheet,
    PanelValue,
    SheetCertificate,
    SheetHolds,
    SheetPlan,
    SheetPlans,
    SheetTaken,
)
from lacunar.takeoff.cutting.sheet_shop import SheetShop
from lacunar.takeoff.cutting.task import Effort, Guard


def plan_sheets(asked: SheetsAsked, guard: Guard) -> SheetPlans:
    """Turn panels and sheets into plans.

    Errors: `SpecRefused` where there are too few sheets of a material.
    """
    effort = EFFORTS[asked.terms.effort]
    plans: list[SheetPlan] = []
    costs: list[int | None] = []
    least: list[int | None] = []
    short: list[str] = []
    for problem in sheet_problems(asked):
        shop = problem.shop()
        outcome = _searched(problem, shop, effort, guard)
        if outcome is None:
            short.append(problem.material)
            continue
        plans.append(_plan(problem, shop, outcome))
        costs.append(outcome.cost * problem.unit if problem.priced else None)
        least.append(outcome.least * problem.unit if problem.priced else None)
    if short:
        raise SpecRefused(runs_out("/sheets", name) for name in short)
    return SheetPlans(total_text(costs), total_text(least), tuple(plans), guard.struck)


def _searched(
    problem: SheetProblem, shop: SheetShop, effort: Effort, guard: Guard
) -> Outcome | None:
    """The outcome; what it proves is put right where values were not worked out exactly."""
    outcome = Search(shop, effort, guard).run()
    if outcome is None or (problem.exact and shop.complete):
        return outcome
    values, held = problem.shop(roomy=True).areas()
    weights = weigh(values, held, shop.demand, shop.prices, shop.supplies)
    bound = PriceSums(shop.prices, outcome.cost).least_from(weights.proven)
    proof = Proof.BOUND if bound >= outcome.cost else None
    return replace(outcome, weights=weights, bound=bound, least=bound, proof=proof)


def _plan(problem: SheetProblem, shop: SheetShop, outcome: Outcome) -> SheetPlan:
    sheets = tuple(_cut_sheets(problem, shop, outcome))
    priced = problem.priced
    area = sum((sheet.length.inches * sheet.width.inches for sheet in sheets), Fraction(0))
    return SheetPlan(
        material=problem.material,
        panels=sum(panel.quantity for panel in problem.panels),
        cost=_money(problem, outcome.cost),
        lower_bound=_money(problem, outcome.least),
        gap=_money(problem, outcome.cost - outcome.least),
        area=str(area / SQUARE_INCHES_PER_SQUARE_FOOT),
        least_area=None if priced else problem.area_text(outcome.least),
        proven_best=outcome.proof is not None,
        proof=outcome.proof,
        all_places=problem.exact and shop.complete,
        taken=tuple(_taken(problem, sheets)),
        sheets=sheets,
        certificate=_certificate(problem, shop, outcome),
    )


def _money(problem: SheetProblem, units: int) -> str | None:
    return money_text(units * problem.unit) if problem.priced else None


def _taken(problem: SheetProblem, sheets: tuple[CutSheet, ...]) -> Iterator[SheetTaken]:
    for sheet in problem.sheets:
        n = sum(each.sheet == sheet.id for each in sheets)
        if n:
            cost = None if sheet.price is None else money_text(n * sheet.price)
            yield SheetTaken(sheet.id, sheet.length, sheet.width, n, cost)


def _cut_sheets(problem: SheetProblem, shop: SheetShop, outcome: Outcome) -> Iterator[CutSheet]:
    queue = _Queue(problem)
    order = sorted(outcome.chosen.items(), key=lambda each: (each[0].stock, -each[1], each[0]))
    number = 0
    for pattern, (column, times) in enumerate(order, 1):
        sheet = problem.sheets[column.stock]
        for _ in range(times):
            number += 1
            queue.open(column.counts)
            cutter = SheetCutter(problem.terms, problem.tick, queue.next)
            cutter.cut(shop.tree(column), sheet.length, sheet.width)
            queue.close()
            yield CutSheet(
                number,
                sheet.id,
                sheet.length,
                sheet.width,
                pattern,
                tuple(cutter.cuts),
                tuple(cutter.panels),
                tuple(cutter.offcuts),
            )


class _Queue:
    """Gives each place of a sheet the next panel of its kind, as many as the pattern has."""

    def __init__(self, problem: SheetProblem) -> None:
        self._ways = list(problem.kinds)
        kinds = {ways: place for place, ways in enumerate(self._ways)}
        self._waiting: list[list[Panel]] = [[] for _ in kinds]
        for panel in problem.panels:
            self._waiting[kinds[kind_of(panel)]].extend([panel] * panel.quantity)
        for waiting in self._waiting:
            waiting.reverse()
        self._open: list[int] = []
        self._tick = problem.tick
        self._kerf = problem.terms.kerf

    def open(self, counts: tuple[int, ...]) -> None:
        """Begin a sheet that is to have so many of each kind."""
        self._open = list(counts)

    def next(self, shape: Shape) -> Lying | None:
        """The next panel of a shape; None where the sheet is to have no more of them."""
        if not self._open[shape.kind]:
            return None
        self._open[shape.kind] -= 1
        panel = self._waiting[shape.kind].pop()
        ways = self._ways[shape.kind]
        along, across = min(
            ways, key=lambda way: abs(way[0] + self._kerf - self._tick * shape.length)
        )
        return Lying(panel.id, along, across, is_turned(panel, along))

    def close(self) -> None:
        """End a sheet, which must have had all it was to have."""
        if any(self._open):
            raise AssertionError("a sheet has fewer panels than its pattern")


def _certificate(problem: SheetProblem, shop: SheetShop, outcome: Outcome) -> SheetCertificate:
    counted = shop if problem.exact and shop.complete else problem.shop(roomy=True)
    weights = outcome.weights
    edges: dict[int, list[tuple[int, int]]] = {}
    for shape in counted.shapes:
        edges.setdefault(shape.kind, []).append((shape.length, shape.width))
    panels = tuple(
        PanelValue(*ways[0], tuple(edges[kind]), quantity, weights.values[kind])
        for kind, (ways, quantity) in enumerate(problem.kinds.items())
    )
    sheets = tuple(
        SheetHolds(sheet.id, size, price, sheet.supply, holds)
        for sheet, size, price, holds in zip(
            problem.sheets, counted.sizes, counted.prices, weights.held, strict=True
        )
    )
    unit = money_text(problem.unit) if problem.priced else f"{problem.area_text(1)} square feet"
    return SheetCertificate(
        tick=problem.tick,
        panels=panels,
        sheets=sheets,
        factor=str(weights.factor),
        proves=str(weights.proven),
        rounded_up=outcome.bound,
        unit=unit,
    )
