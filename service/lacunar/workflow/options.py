"""From the bytes of a ceiling to its options: read, decide, search, and answer at any time."""

import time
from collections.abc import Iterator, Mapping
from contextlib import contextmanager
from dataclasses import dataclass, replace
from typing import Any

from lacunar.choosing.asked import Asked, PricedBy
from lacunar.choosing.deciding import decide
from lacunar.choosing.search import Progress, Search
from lacunar.drawing.option_set import OptionSet, compose_options
from lacunar.drawing.painters.engine import engine
from lacunar.drawing.painters.fonts import load_typeface
from lacunar.drawing.painters.pdf import PdfRecord, paint_pdf
from lacunar.drawing.sheets.options_sheet import CardFigure, OptionCard
from lacunar.exchange.ceiling_json import digest
from lacunar.exchange.option_request import CHOICES, Beside, OptionsAsked, read_options
from lacunar.exchange.option_words import sheet_figures, sheet_lines
from lacunar.exchange.options_json import PreparedOptions, options_to_json
from lacunar.exchange.stock_json import STOCK
from lacunar.exchange.take_off_request import within
from lacunar.model.assumptions import resolve
from lacunar.model.ceiling import Assumption, Ceiling
from lacunar.model.faults import Fault, SpecRefused
from lacunar.takeoff.buying.stock_rules import stock_faults
from lacunar.takeoff.cutting.task import Guard
from lacunar.takeoff.estimate.deciding import decide_prices
from lacunar.workflow.estimate import Document, read_document

# The search is bounded by counts; this only ends what is far beyond them.
SECONDS = 30


@dataclass(frozen=True, slots=True)
class OptionSearch:
    """A search under way: whoever goes through `steps` may stop at any, and ask what is found."""

    search: Search
    guard: Guard
    pointer: str
    ceiling: Ceiling
    assumptions: tuple[Assumption, ...]

    def steps(self) -> Iterator[Progress]:
        """One candidate after the other. Errors: `SpecRefused` where none can be built."""
        with _pointing_into(self.pointer):
            yield from self.search.steps()

    def found(self) -> PreparedOptions:
        """What is found so far."""
        return PreparedOptions(
            self.search.found(), self.assumptions, digest(self.ceiling), self.ceiling
        )


@dataclass(frozen=True, slots=True)
class BesideIt:
    """What is given beside a document, and goes before what the document itself says.

    `nudges_of`: number of the option for which small changes are tried; `prices` and `stock`:
    documents of their own, with their names.
    """

    nudges_of: int | None = None
    prices: Document | None = None
    stock: Document | None = None


def begin_options(document: bytes, beside: BesideIt = BesideIt()) -> OptionSearch:
    """Turn the bytes of a ceiling, or of one with its choices and prices, into a search.

    Errors: `SpecRefused` with every fault of the first stage that finds any, in whichever part.
    """
    asked = _read(document, beside)
    end = time.monotonic() + SECONDS
    guard = Guard(lambda: end - time.monotonic())
    decided = _decided(asked)
    with _pointing_into(asked.pointer):
        search = Search(decided.asked, guard)
        ceiling = resolve(asked.spec).ceiling
    return OptionSearch(search, guard, asked.pointer, ceiling, decided.assumptions)


def _read(document: bytes, beside: BesideIt) -> OptionsAsked:
    faults: list[Fault] = []
    prices, stock = (
        None if each is None else read_document(each, {}, faults)
        for each in (beside.prices, beside.stock)
    )
    if faults:
        raise SpecRefused(faults)
    asked = read_options(document, Beside(prices, stock))
    if beside.nudges_of is None:
        return asked
    return replace(asked, said=replace(asked.said, nudges_of=beside.nudges_of))


@dataclass(frozen=True, slots=True)
class _Decided:
    asked: Asked
    assumptions: tuple[Assumption, ...]


def _decided(asked: OptionsAsked) -> _Decided:
    """A search with nothing open. Errors: `SpecRefused` with the faults of choices and prices."""
    faults: list[Fault] = list(stock_faults(asked.stock))
    decided = priced = None
    try:
        with _pointing_into(asked.pointer):
            decided = decide(asked.spec, asked.said)
    except SpecRefused as refused:
        faults.extend(refused.faults)
    try:
        priced = None if asked.prices is None else decide_prices(asked.prices)
    except SpecRefused as refused:
        faults.extend(within(asked.prices_at, refused))
    if faults or decided is None:
        raise SpecRefused(faults)
    limits, assumptions = decided
    if priced is None:
        return _Decided(Asked(asked.spec, limits), assumptions)
    by = PricedBy(priced.prices, asked.stock)
    of_prices = (
        replace(each, pointer=f"{asked.prices_at}{each.pointer}") for each in priced.assumptions
    )
    return _Decided(Asked(asked.spec, limits, by), (*assumptions, *of_prices))


def prepare_options(document: bytes) -> PreparedOptions:
    """Turn the bytes of a ceiling into its options; raises as `begin_options` and its steps do.

    Past the guard's time the search stops, and what it has found says so.
    """
    begun = begin_options(document)
    for _ in begun.steps():
        if begun.guard.over():
            break
    return begun.found()


def options_answer(prepared: PreparedOptions, *, trace: bool) -> Mapping[str, Any]:
    """Options as JSON values; with `trace`, each figure with its rule and operands."""
    return {**options_to_json(prepared, trace=trace), "engine": dict(engine())}


def options_pdf(prepared: PreparedOptions) -> bytes:
    """Options as small plans on sheets, as one PDF.

    Errors: `SpecRefused` where the paper is too small; `DrawingUnavailable`.
    """
    typeface = load_typeface()
    ceiling = prepared.ceiling
    record = PdfRecord(
        title=f"{ceiling.name}: options",
        author=ceiling.drawing.owner,
        subject=f"Options, input digest {prepared.digest}",
        date=ceiling.drawing.date,
    )
    return paint_pdf(compose_options(option_set(prepared), typeface), typeface, record)


def option_set(prepared: PreparedOptions) -> OptionSet:
    """What sheets of options are composed from: their layouts, and figures in words."""
    found, step = prepared.options, prepared.step
    options = found.found.options
    cards = tuple(
        OptionCard(
            number=option.number,
            layout=laid.layout,
            lines=sheet_lines(option, step),
            figures=tuple(CardFigure(*each) for each in sheet_figures(option, options, step)),
        )
        for option, laid in zip(options, found.laid_out, strict=True)
    )
    return OptionSet(prepared.ceiling, cards, prepared.digest)


@contextmanager
def _pointing_into(pointer: str) -> Iterator[None]:
    """Faults of the ceiling point to where it stands; choices and stock stand beside it."""
    try:
        yield
    except SpecRefused as refused:
        faults = [
            fault
            if fault.pointer.startswith((f"/{CHOICES}", f"/{STOCK}"))
            else replace(fault, pointer=f"{pointer}{fault.pointer}")
            for fault in refused.faults
        ]
        raise SpecRefused(faults) from None
