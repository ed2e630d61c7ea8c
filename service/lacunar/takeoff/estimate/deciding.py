"""From a price list as it was sent to one with nothing open, and what was assumed."""

from collections.abc import Iterator
from dataclasses import dataclass, replace
from decimal import Decimal
from fractions import Fraction

from lacunar.model.assuming import Assuming
from lacunar.model.ceiling import Assumption
from lacunar.model.faults import SpecRefused
from lacunar.takeoff.estimate.price_list import (
    Added,
    FrameShare,
    LaborRate,
    MaterialPrice,
    OtherPrice,
    PriceList,
)
from lacunar.takeoff.estimate.rules import RULES
from lacunar.takeoff.estimate.said import (
    LaborSpec,
    PriceListSpec,
    TaxedOn,
    WorkSpec,
)
from lacunar.takeoff.estimate.words import PAID_WITH, PARTS, USUALLY_COUNTED, LaborPer, Work

# A practitioner's figure, common practice, no source: crown made up as frames on the bench takes
# about half the time of coping it piece by piece in its place.
FRAME_SHARE = Fraction(1, 2)

_NONE = Fraction(0)
_NOT_ADDED = "nothing is said of it, so nothing is added"


@dataclass(frozen=True, slots=True)
class DecidedPrices:
    """A price list, and what was assumed for it."""

    prices: PriceList
    assumptions: tuple[Assumption, ...]


def decide_prices(said: PriceListSpec) -> DecidedPrices:
    """Turn a price list as sent into one to price by; no price is ever assumed.

    Errors: `SpecRefused` with every fault.
    """
    faults = [fault for rule in RULES for fault in rule(said)]
    if faults:
        raise SpecRefused(faults)
    assuming = Assuming()
    decided = PriceList(
        currency=said.currency,
        materials=tuple(
            MaterialPrice(
                pointer=f"/materials/{place}",
                of=row.of or None,
                kind=row.kind,
                per=row.per,
                length=row.length,
                price=row.price,
                taxed=bool(row.taxed),
            )
            for place, row in enumerate(said.materials)
        ),
        labor=tuple(_labor(said.labor, assuming)),
        others=tuple(
            OtherPrice(
                f"/others/{place}", row.name, row.per, row.price, row.quantity, bool(row.taxed)
            )
            for place, row in enumerate(said.others)
        ),
        added=_added(said, assuming),
    )
    _note_untaxed(said, assuming)
    return DecidedPrices(decided, assuming.made)


def _labor(said: LaborSpec, assuming: Assuming) -> Iterator[LaborRate]:
    rates = [_rate(f"/labor/work/{place}", row, said.rate) for place, row in enumerate(said.work)]
    yield from rates
    yield from _beside(rates, said.frame_share, assuming)


def _rate(pointer: str, row: WorkSpec, by_the_hour: Decimal | None) -> LaborRate:
    hourly = row.rate if row.rate is not None else by_the_hour
    price = row.price if row.price is not None else hourly
    assert price is not None, pointer  # a rule holds it
    of = tuple(dict.fromkeys(row.of)) if row.of is not None else USUALLY_COUNTED[row.per]
    return LaborRate(
        pointer=pointer,
        name=row.name or _usual_name(row),
        per=row.per,
        of=of,
        price=price,
        hours=row.hours,
        quantity=row.quantity,
        taxed=bool(row.taxed),
        pays_for=_pays_for(of),
    )


def _pays_for(of: tuple[Work, ...]) -> tuple[Work, ...]:
    """Kinds of parts; edges and settings of a saw pay for none."""
    paid = (part for each in of for part in PAID_WITH.get(each, (each,)))
    return tuple(part for part in dict.fromkeys(paid) if part in PARTS)


def _usual_name(row: WorkSpec) -> str:
    of = "" if row.of is None else f" of {', '.join(row.of)}"
    return f"By the {row.per}{of}".replace("_", " ")


def _beside(
    rates: list[LaborRate], share: Fraction | None, assuming: Assuming
) -> Iterator[LaborRate]:
    """Frames by what coping costs, or coping by what frames cost, where one of them is priced."""
    joints = [rate for rate in rates if rate.per is LaborPer.JOINT]
    coped = next((rate for rate in joints if Work.CROWN_COPE in rate.of), None)
    mitred = next((rate for rate in joints if Work.CROWN_MITER in rate.of), None)
    if (coped is None) == (mitred is None):
        return
    settled = assuming.settle(
        share,
        "/labor/frame_share",
        FRAME_SHARE,
        "frames made on the bench take about half the time of coping in place",
    )
    if coped is not None:
        yield _following(coped, Work.CROWN_MITER, FrameShare(settled, of_coping=True))
    elif mitred is not None:
        yield _following(mitred, Work.CROWN_COPE, FrameShare(settled, of_coping=False))


def _following(rate: LaborRate, work: Work, beside: FrameShare) -> LaborRate:
    """The rate of other work that follows from one that is given."""
    how = "as bench frames" if beside.of_coping else "coped in place"
    return replace(
        rate, name=f"{rate.name}, {how}", of=(work,), pays_for=_pays_for((work,)), beside=beside
    )


def _added(said: PriceListSpec, assuming: Assuming) -> Added:
    overhead = assuming.settle(said.overhead, "/overhead", _NONE, _NOT_ADDED)
    contingency = assuming.settle(said.contingency, "/contingency", _NONE, _NOT_ADDED)
    markup = said.markup
    if said.margin is None:
        markup = assuming.settle(markup, "/markup", _NONE, "neither markup nor margin is said")
    if said.tax is None:
        assuming.note("/tax", "none", "nothing is said of tax")
        return Added(overhead, contingency, markup or _NONE, said.margin, _NONE, TaxedOn.COST)
    on = assuming.settle(
        said.tax.on,
        "/tax/on",
        TaxedOn.COST,
        "lines are taxed as they cost, before all that is added",
    )
    return Added(overhead, contingency, markup or _NONE, said.margin, said.tax.rate, on)


def _note_untaxed(said: PriceListSpec, assuming: Assuming) -> None:
    """Where there is a tax, lines that say nothing of it are not taxed, which is told once each."""
    if said.tax is None:
        return
    rows: tuple[tuple[str, tuple[bool | None, ...]], ...] = (
        ("/materials", tuple(row.taxed for row in said.materials)),
        ("/labor/work", tuple(row.taxed for row in said.labor.work)),
        ("/others", tuple(row.taxed for row in said.others)),
    )
    for pointer, flags in rows:
        count = flags.count(None)
        if count:
            assuming.note(
                pointer, f"{count} not taxed", "rows that do not say whether they are taxed are not"
            )
