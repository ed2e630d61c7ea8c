"""Labor by its rates, and what else is paid for."""

from collections.abc import Iterator, Mapping, Sequence
from fractions import Fraction

from lacunar.measure.figure import MoneyFigure, NumberFigure, Operand, Rule, given
from lacunar.measure.money import rounded
from lacunar.takeoff.estimate.estimate_records import (
    EstimateLine,
    EstimateSection,
    LaborCount,
    Unpriced,
    UnpricedReason,
)
from lacunar.takeoff.estimate.material_lines import BY_PRICE
from lacunar.takeoff.estimate.price_list import LaborRate, OtherPrice
from lacunar.takeoff.estimate.words import LaborPer, OtherPer

HOURS = Rule("hours: what is counted, by what one takes", "count * hours_each")
BY_THE_HOUR = Rule("hours by the rate, to the hundredth", "cents(hours * price)")
# Frames by what coping takes, and coping by what frames take: hours, then money.
OF_COPING = (
    Rule("hours of frames: their share of coping's", "count * hours_each * frame_share"),
    Rule("frames at their share of coping's price", "cents(quantity * price * frame_share)"),
)
OF_FRAMES = (
    Rule("hours of coping, of which frames take a share", "count * hours_each / frame_share"),
    Rule("coping, of whose price frames take a share", "cents(quantity * price / frame_share)"),
)


def labor_lines(
    counts: Sequence[LaborCount], rates: Sequence[LaborRate]
) -> Iterator[EstimateLine | Unpriced]:
    """Turn what is counted into lines, one for each rate that anything is counted for.

    Then what is made and no rate pays for. A rate that nothing is counted for gives no line.
    """
    for rate in rates:
        line = _line(rate, counts)
        if line is not None:
            yield line
    paid = {work for rate in rates for work in rate.pays_for}
    for count in counts:
        if count.per is LaborPer.PIECE and count.of not in paid and count.of is not None:
            yield Unpriced(
                section=EstimateSection.LABOR,
                name=count.of.replace("_", " ").capitalize(),
                reason=UnpricedReason.NO_PRICE,
                per=LaborPer.PIECE,
                quantity=count.count,
                source=count.source,
            )


def _line(rate: LaborRate, counts: Sequence[LaborCount]) -> EstimateLine | None:
    counted, source = _counted(rate, counts)
    if counted is None:
        return None
    hours = counted if rate.per is LaborPer.HOUR else _hours(rate, counted)
    return EstimateLine(
        section=EstimateSection.LABOR,
        name=rate.name,
        per=rate.per,
        quantity=counted,
        hours=hours,
        price=rate.price,
        amount=_amount(rate, counted, hours),
        taxed=rate.taxed,
        source=source,
        priced_at=rate.pointer,
    )


def _counted(
    rate: LaborRate, counts: Sequence[LaborCount]
) -> tuple[NumberFigure | None, tuple[str, ...]]:
    """All of it that is counted, in one figure; None where there is none. And what is behind it."""
    if rate.quantity is not None:
        return given(rate.quantity), ()
    if rate.per is LaborPer.COFFER:
        return _coffers(rate, counts)
    fitting = [count for count in counts if count.per is rate.per and count.of in rate.of]
    if not fitting:
        return None, ()
    source = tuple(dict.fromkeys(each for count in fitting for each in count.source))
    if len(fitting) == 1:
        return fitting[0].count, source
    named: dict[str, Operand] = {str(count.of): count.count.value for count in fitting}
    rule = Rule("all that is counted, together", " + ".join(named))
    approximate = any(count.count.approximate for count in fitting)
    gives = rule.approximates if approximate else rule.gives
    total = sum((count.count.value for count in fitting), Fraction(0))
    return gives(total, **named), source


def _coffers(
    rate: LaborRate, counts: Sequence[LaborCount]
) -> tuple[NumberFigure | None, tuple[str, ...]]:
    """All coffers; none where what is paid for with them is not there."""
    there = {count.of for count in counts if count.per is LaborPer.PIECE}
    if rate.of and there.isdisjoint(rate.of):
        return None, ()
    (coffers,) = (count for count in counts if count.per is LaborPer.COFFER)
    return coffers.count, coffers.source


def _hours(rate: LaborRate, counted: NumberFigure) -> NumberFigure | None:
    if rate.hours is None:
        return None
    rule, told = HOURS, _with_share(rate, {"count": counted.value, "hours_each": rate.hours})
    if rate.beside is not None:
        rule = (OF_COPING if rate.beside.of_coping else OF_FRAMES)[0]
    gives = rule.approximates if counted.approximate else rule.gives
    return gives(counted.value * rate.hours * _factor(rate), **told)


def _factor(rate: LaborRate) -> Fraction:
    beside = rate.beside
    if beside is None:
        return Fraction(1)
    return beside.share if beside.of_coping else 1 / beside.share


def _with_share(rate: LaborRate, told: dict[str, Operand]) -> dict[str, Operand]:
    return told if rate.beside is None else told | {"frame_share": rate.beside.share}


def _amount(rate: LaborRate, counted: NumberFigure, hours: NumberFigure | None) -> MoneyFigure:
    price = Fraction(rate.price)
    if hours is not None:
        return rounded(BY_THE_HOUR, hours.value * price, hours=hours.value, price=rate.price)
    rule, told = BY_PRICE, _with_share(rate, {"quantity": counted.value, "price": rate.price})
    if rate.beside is not None:
        rule = (OF_COPING if rate.beside.of_coping else OF_FRAMES)[1]
    return rounded(rule, counted.value * price * _factor(rate), **told)


def other_lines(
    counts: Sequence[LaborCount], ceilings: int, others: Sequence[OtherPrice]
) -> Iterator[EstimateLine]:
    """Turn what else is paid for into lines.

    Parameters: `counts` of all ceilings; `ceilings`, how many there are; `others` with their
    prices.
    """
    (coffers,) = (count.count for count in counts if count.per is LaborPer.COFFER)
    counted: Mapping[OtherPer, NumberFigure] = {
        OtherPer.JOB: given(Fraction(1)),
        OtherPer.CEILING: given(Fraction(ceilings)),
        OtherPer.COFFER: coffers,
    }
    for other in others:
        quantity = counted[other.per] if other.quantity is None else given(other.quantity)
        yield EstimateLine(
            section=EstimateSection.OTHERS,
            name=other.name,
            per=other.per,
            quantity=quantity,
            hours=None,
            price=other.price,
            amount=rounded(
                BY_PRICE,
                quantity.value * Fraction(other.price),
                quantity=quantity.value,
                price=other.price,
            ),
            taxed=other.taxed,
            source=(),
            priced_at=other.pointer,
        )
