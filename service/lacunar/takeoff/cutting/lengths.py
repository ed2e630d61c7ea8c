"""Cutting plans of lengths: each material by itself, from its stock, at least cost."""

from collections.abc import Iterator
from dataclasses import dataclass, replace

from lacunar.measure.length import ZERO, Length
from lacunar.model.faults import SpecRefused
from lacunar.takeoff.cutting.asked import LengthsAsked, Proof, SecondAim
from lacunar.takeoff.cutting.certificate import PriceSums, weigh
from lacunar.takeoff.cutting.efforts import EFFORTS
from lacunar.takeoff.cutting.money import money_text, total_text
from lacunar.takeoff.cutting.plan_records import (
    Certificate,
    LengthChoice,
    LengthPlans,
    MaterialPlan,
    OneLength,
    PieceValue,
    Stick,
    StockHolds,
    StockTaken,
)
from lacunar.takeoff.cutting.problem import Problem, Unit, problems
from lacunar.takeoff.cutting.runs_out import runs_out
from lacunar.takeoff.cutting.search import Outcome, Search
from lacunar.takeoff.cutting.second_choice import Keeps
from lacunar.takeoff.cutting.stick_shop import StickShop
from lacunar.takeoff.cutting.sticks import Bench, SoldLength
from lacunar.takeoff.cutting.task import QUICK, Column, Effort, Guard
from lacunar.takeoff.cutting.ticks import rounded


@dataclass(frozen=True, slots=True)
class _Searched:
    """What came of one choice of stock."""

    places: tuple[int, ...]
    outcome: Outcome


def plan_lengths(asked: LengthsAsked, guard: Guard, *, alone: bool = True) -> LengthPlans:
    """Turn pieces and stock into plans.

    Parameters: `asked`; `guard`; `alone`, whether each length is planned by itself as well, to be
    compared, which takes most of the time and changes nothing of the plans. Errors: `SpecRefused`
    where there is too little stock of a material.
    """
    effort = EFFORTS[asked.terms.effort]
    found = [(problem, _chosen(problem, effort, guard)) for problem in problems(asked)]
    short = [problem for problem, searched in found if not searched]
    if short:
        raise SpecRefused(runs_out("/stock", problem.material.name) for problem in short)
    plans = [
        replace(
            _plan(problem, searched),
            one_length=tuple(_one_by_one(problem, searched[0].outcome.cost, effort, guard))
            if alone
            else (),
        )
        for problem, searched in found
    ]
    costs = [problem.unit.in_cents(searched[0].outcome.cost) for problem, searched in found]
    least = [problem.unit.in_cents(_least(searched)) for problem, searched in found]
    return LengthPlans(total_text(costs), total_text(least), tuple(plans), guard.struck)


def _chosen(problem: Problem, effort: Effort, guard: Guard) -> list[_Searched]:
    """Every choice of stock, the best first; empty where none gives a plan."""
    choices = problem.choices()
    if len(choices) == 1:
        outcome = _searched(problem, choices[0], effort, guard, None)
        return [] if outcome is None else [_Searched(choices[0], outcome)]
    bounds = [
        (outcome.least, places)
        for places in choices
        if (outcome := _searched(problem, places, effort, guard, 0)) is not None
    ]
    found: list[_Searched] = []
    best: int | None = None
    for _, places in sorted(bounds):
        outcome = _searched(problem, places, effort, guard, best)
        if outcome is not None:
            found.append(_Searched(places, outcome))
            best = outcome.cost if best is None else min(best, outcome.cost)
    return sorted(found, key=lambda each: (each.outcome.cost, each.outcome.least, each.places))


def _searched(
    problem: Problem, places: tuple[int, ...], effort: Effort, guard: Guard, stop_at: int | None
) -> Outcome | None:
    shop = problem.shop(places)
    largest = max(shop.capacities, default=0)
    if shop.sizes[0] > largest:
        return None
    keeps = _keeps(problem, shop) if problem.terms.second_aim is SecondAim.LARGEST_OFFCUTS else None
    outcome = Search(shop, effort, guard, keeps).run(stop_at)
    if outcome is None or problem.exact:
        return outcome
    roomy = problem.shop(places, roomy=True)
    held = roomy.best(outcome.weights.values, roomy.demand).best
    weights = weigh(outcome.weights.values, held, shop.demand, shop.prices, shop.supplies)
    bound = PriceSums(shop.prices, outcome.cost).least_from(weights.proven)
    proof = Proof.BOUND if bound >= outcome.cost else None
    return replace(outcome, weights=weights, bound=bound, least=bound, proof=proof)


def _keeps(problem: Problem, shop: StickShop) -> Keeps:
    """How much of a stick is left to be used again, in ticks."""
    usable = rounded(problem.terms.usable_offcut, problem.tick, up=True)
    trim = rounded(problem.terms.end_trim, problem.tick, up=False)

    def kept(column: Column) -> int:
        left = shop.capacities[column.stock] - shop.used(column) + trim
        return left if left >= usable else 0

    return kept


def _least(searched: list[_Searched]) -> int:
    """The least that any plan from any choice can cost."""
    return min(each.outcome.least for each in searched)


def _plan(problem: Problem, searched: list[_Searched]) -> MaterialPlan:
    """The best plan there is, without those from each length by itself."""
    best, unit = searched[0], problem.unit
    outcome, least = best.outcome, _least(searched)
    stock = tuple(SoldLength(problem.rack[k].id, problem.rack[k].length) for k in best.places)
    lengths = tuple(length for length, _ in problem.kinds)
    bench = Bench(stock, lengths, problem.pieces, problem.cuts, problem.terms)
    patterns, sticks = bench.parted(outcome.chosen)
    proven = outcome.cost <= least
    return MaterialPlan(
        material=problem.material.name,
        pieces=sum(piece.quantity for piece in problem.pieces),
        cost=_money(unit, outcome.cost),
        lower_bound=_money(unit, least),
        gap=_money(unit, outcome.cost - least),
        bought=_bought(problem, sticks),
        least_bought=unit.in_length(least),
        proven_best=proven,
        proof=outcome.proof if proven else None,
        exact_sizes=problem.exact,
        taken=tuple(_taken(problem, sticks)),
        patterns=patterns,
        sticks=sticks,
        certificate=_certificate(problem, best),
        choices=tuple(_choices(problem, searched)),
        one_length=(),
    )


def _money(unit: Unit, units: int) -> str | None:
    cents = unit.in_cents(units)
    return None if cents is None else money_text(cents)


def _bought(problem: Problem, sticks: tuple[Stick, ...]) -> Length:
    on_hand = {problem.rack[place].id for place in problem.on_hand}
    return sum((stick.length for stick in sticks if stick.stock not in on_hand), ZERO)


def _taken(problem: Problem, sticks: tuple[Stick, ...]) -> Iterator[StockTaken]:
    for each in problem.rack:
        n = sum(stick.stock == each.id for stick in sticks)
        if n:
            yield StockTaken(each.id, each.length, n, _money(problem.unit, n * each.price))


def _certificate(problem: Problem, best: _Searched) -> Certificate:
    shop = problem.shop(best.places, roomy=not problem.exact)
    weights, unit = best.outcome.weights, problem.unit
    pieces = tuple(
        PieceValue(length, size, quantity, value)
        for (length, quantity), size, value in zip(
            problem.kinds, shop.sizes, weights.values, strict=True
        )
    )
    stock = tuple(
        StockHolds(problem.rack[place].id, capacity, price, supply, holds)
        for place, capacity, price, supply, holds in zip(
            best.places, shop.capacities, shop.prices, shop.supplies, weights.held, strict=True
        )
    )
    told = money_text(unit.cents) if unit.cents is not None else f"{unit.length}"
    return Certificate(
        tick=problem.tick,
        pieces=pieces,
        stock=stock,
        factor=str(weights.factor),
        proves=str(weights.proven),
        rounded_up=best.outcome.bound,
        unit=told,
    )


def _choices(problem: Problem, searched: list[_Searched]) -> Iterator[LengthChoice]:
    """Only where lengths were chosen among: each choice with its bound."""
    if problem.terms.most_lengths is None:
        return
    for each in searched:
        names = tuple(problem.rack[place].id for place in each.places)
        least = each.outcome.least
        yield LengthChoice(names, _money(problem.unit, least), problem.unit.in_length(least))


def _one_by_one(problem: Problem, cost: int, effort: Effort, guard: Guard) -> Iterator[OneLength]:
    """The plan from each length by itself, if there is more than one to buy."""
    places = [place for place, each in enumerate(problem.rack) if not each.on_hand]
    if len(places) < 2:  # noqa: PLR2004 - one is nothing to compare
        return
    bare = replace(effort, dives=min(effort.dives, QUICK.dives))
    for place in places:
        outcome = _searched(problem, (place, *problem.on_hand), bare, guard, None)
        if outcome is None:
            continue
        unit, sold = problem.unit, problem.rack[place]
        n = sum(times for column, times in outcome.chosen.items() if column.stock == 0)
        yield OneLength(
            stock=sold.id,
            length=sold.length,
            quantity=n,
            cost=_money(unit, outcome.cost),
            more=_money(unit, outcome.cost - cost),
            more_bought=unit.in_length(outcome.cost - cost) or ZERO,
            proven_best=outcome.proof is not None,
        )
