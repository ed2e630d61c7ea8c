"""Holds a price list against what can be priced by, and tells all it finds at once."""

import re
from collections.abc import Callable, Iterator
from fractions import Fraction

from lacunar.model import price_limits as limits
from lacunar.model.cutting_limits import LENGTHS_OF_A_MATERIAL
from lacunar.model.faults import Fault
from lacunar.model.rules import length_out_of_bounds
from lacunar.takeoff.estimate.price_list import named
from lacunar.takeoff.estimate.said import MaterialPriceSpec, PriceListSpec, WorkSpec
from lacunar.takeoff.estimate.words import COUNTED, LaborPer, MaterialPer, OtherPer

Rule = Callable[[PriceListSpec], Iterator[Fault]]

_CURRENCY = re.compile("[A-Z]{3}")
_SIZED = (MaterialPer.PIECE, MaterialPer.SHEET)


def the_currency_is_a_code(said: PriceListSpec) -> Iterator[Fault]:
    """Three capital letters; which of them are a currency, others keep a list of."""
    if not _CURRENCY.fullmatch(said.currency):
        yield Fault(
            code="currency_not_readable",
            pointer="/currency",
            message="A currency is named by three capital letters.",
            remedy="Write its ISO 4217 code, such as USD or EUR.",
        )


def shares_lie_within_bounds(said: PriceListSpec) -> Iterator[Fault]:
    """A share is written 0.1 for a tenth; one beyond its bounds is mostly a percentage."""
    tax = None if said.tax is None else said.tax.rate
    for pointer, share, least, most in (
        ("/overhead", said.overhead, limits.NO_SHARE, limits.OVERHEAD),
        ("/contingency", said.contingency, limits.NO_SHARE, limits.CONTINGENCY),
        ("/markup", said.markup, limits.NO_SHARE, limits.MARKUP),
        ("/margin", said.margin, limits.NO_SHARE, limits.MARGIN),
        ("/tax/rate", tax, limits.NO_SHARE, limits.TAX),
        ("/labor/frame_share", said.labor.frame_share, limits.LEAST_FRAMES, limits.FRAMES),
    ):
        if share is not None and not least <= share <= most:
            yield Fault(
                code="share_out_of_bounds",
                pointer=pointer,
                message=f"The share is from {least} to {most}.",
                remedy="Write a share, such as 0.1 for ten percent.",
                figures={"given": str(share), "least": str(least), "most": str(most)},
            )


def markup_or_margin(said: PriceListSpec) -> Iterator[Fault]:
    """A markup is a share of cost, a margin one of the price: either says the other."""
    if said.markup is not None and said.margin is not None:
        yield Fault(
            code="markup_and_margin",
            pointer="/margin",
            message="Both a markup and a margin are given; each says by itself what is added.",
            remedy="Leave one out: a margin g is the markup g / (1 - g).",
            figures={"markup": str(said.markup), "margin": str(said.margin)},
        )


def materials_say_what_they_are(said: PriceListSpec) -> Iterator[Fault]:
    """A price is of something, in one size or in any, and of each only one."""
    seen: dict[object, int] = {}
    counted: dict[object, tuple[int, MaterialPer]] = {}
    for place, row in enumerate(said.materials):
        pointer = f"/materials/{place}"
        yield from _said_of(pointer, row)
        thing = named(row.of), row.kind
        first, per = counted.setdefault(thing, (place, row.per))
        if per is not row.per:
            yield _twice(f"{pointer}/per", first, "The same is priced by two measures.")
        elif (*thing, row.length) in seen:
            yield _twice(pointer, seen[(*thing, row.length)], "The same has two prices.")
        seen.setdefault((*thing, row.length), place)


def sizes_are_few(said: PriceListSpec) -> Iterator[Fault]:
    """So many sizes of one thing can be planned with."""
    sizes: dict[object, int] = {}
    for place, row in enumerate(said.materials):
        thing = named(row.of), row.kind
        sizes[thing] = sizes.get(thing, 0) + (row.length is not None)
        if sizes[thing] == LENGTHS_OF_A_MATERIAL + 1:
            yield Fault(
                code="too_many_stock_sizes",
                pointer=f"/materials/{place}/length",
                message=f"At most {LENGTHS_OF_A_MATERIAL} sizes of one thing are planned with.",
                remedy="Leave out those that are not to be bought.",
                figures={"most": LENGTHS_OF_A_MATERIAL},
            )


def _said_of(pointer: str, row: MaterialPriceSpec) -> Iterator[Fault]:
    if not row.of and row.kind is None:
        yield Fault(
            code="price_of_nothing",
            pointer=pointer,
            message="Neither a name nor a kind says what this is a price of.",
            remedy="Give of, a name as the take-off tells it, or kind.",
        )
    if row.length is None:
        return
    if row.per not in _SIZED:
        yield Fault(
            code="length_without_size",
            pointer=f"{pointer}/length",
            message=f"A price by the {row.per.replace('_', ' ')} holds for every length.",
            remedy="Leave the length out, or price it by the piece or sheet.",
        )
    elif not limits.SIZE.least <= row.length <= limits.SIZE.most:
        yield length_out_of_bounds(f"{pointer}/length", row.length, limits.SIZE)


def _twice(pointer: str, first: int, message: str) -> Fault:
    return Fault(
        code="priced_twice",
        pointer=pointer,
        message=message,
        remedy="Keep one of them: nothing says which one is meant.",
        figures={"first": f"/materials/{first}"},
    )


def work_is_priced_once(said: PriceListSpec) -> Iterator[Fault]:
    """By a price for one, or by hours at a rate; by the hour, so many of them."""
    for place, row in enumerate(said.labor.work):
        pointer = f"/labor/work/{place}"
        yield from _priced(
            pointer, row, has_rate=row.rate is not None or said.labor.rate is not None
        )
        yield from _given(pointer, row.quantity, given=row.per is LaborPer.HOUR)
        yield from _within(f"{pointer}/quantity", row.quantity, limits.QUANTITY)
        yield from _within(f"{pointer}/hours", row.hours, limits.HOURS)


def _priced(pointer: str, row: WorkSpec, *, has_rate: bool) -> Iterator[Fault]:
    hourly = row.per is LaborPer.HOUR
    if hourly and row.hours is not None:
        yield _labor_fault(f"{pointer}/hours", "An hour takes an hour.", "Give quantity instead.")
    elif row.price is not None and (row.hours is not None or row.rate is not None):
        yield _labor_fault(
            pointer,
            "Both a price and hours or a rate are given.",
            "Give a price, or hours and a rate.",
        )
    elif row.price is None and row.hours is None and not hourly:
        yield _labor_fault(pointer, "Nothing says what one costs.", "Give a price, or hours.")
    elif row.price is None and not has_rate:
        yield _labor_fault(
            pointer, "Nothing says what an hour costs.", "Give a rate here or under labor."
        )


def _labor_fault(pointer: str, message: str, remedy: str) -> Fault:
    return Fault(code="labor_not_priced", pointer=pointer, message=message, remedy=remedy)


def _given(pointer: str, quantity: Fraction | None, *, given: bool) -> Iterator[Fault]:
    """A number where it is not counted, and none where it is."""
    if (quantity is not None) is not given:
        yield Fault(
            code="quantity_not_fitting",
            pointer=f"{pointer}/quantity",
            message="How many there are is not counted, and must be given."
            if given
            else "How many there are is counted, and cannot be given.",
            remedy="Give quantity." if given else "Leave quantity out.",
        )


def _within(pointer: str, number: Fraction | None, most: Fraction) -> Iterator[Fault]:
    if number is not None and not 0 <= number <= most:
        yield Fault(
            code="amount_out_of_bounds",
            pointer=pointer,
            message=f"There can be from 0 to {most} here.",
            remedy="Check the figure.",
            figures={"given": str(number), "most": str(most)},
        )


def work_is_counted(said: PriceListSpec) -> Iterator[Fault]:
    """What work is of is counted by what it is paid by."""
    for place, row in enumerate(said.labor.work):
        pointer = f"/labor/work/{place}/of"
        known = COUNTED[row.per]
        for at, work in enumerate(row.of or ()):
            if work not in known:
                yield _not_counted(f"{pointer}/{at}", row, f"{work} is not counted by it.")
        if row.of == ():
            yield _not_counted(pointer, row, "Nothing is named in the list.")


def _not_counted(pointer: str, row: WorkSpec, message: str) -> Fault:
    return Fault(
        code="work_not_counted",
        pointer=pointer,
        message=f"The work is paid by the {row.per}; {message[:1].lower()}{message[1:]}",
        remedy="Name what is counted by it, or leave of out.",
        figures={"known": ", ".join(COUNTED[row.per])},
    )


def others_are_counted_or_given(said: PriceListSpec) -> Iterator[Fault]:
    """So many hours and so many of each are given; jobs, ceilings and coffers are counted."""
    for place, row in enumerate(said.others):
        pointer = f"/others/{place}"
        yield from _given(pointer, row.quantity, given=row.per in (OtherPer.EACH, OtherPer.HOUR))
        yield from _within(f"{pointer}/quantity", row.quantity, limits.QUANTITY)


RULES: tuple[Rule, ...] = (
    the_currency_is_a_code,
    shares_lie_within_bounds,
    markup_or_margin,
    materials_say_what_they_are,
    sizes_are_few,
    work_is_priced_once,
    work_is_counted,
    others_are_counted_or_given,
)
