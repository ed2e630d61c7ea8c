"""The search: candidates laid out one by one, and at any time what is found so far."""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from decimal import Decimal
from typing import Literal

from lacunar.choosing.asked import Asked
from lacunar.choosing.candidates import Candidate, spec_of
from lacunar.choosing.costing import ShortOfStock
from lacunar.choosing.criteria import judged
from lacunar.choosing.crown_sticks import CrownTooLong
from lacunar.choosing.laying import LaidOut, Layer
from lacunar.choosing.left_out import left_out, not_compared
from lacunar.choosing.nudging import Trial, nudged, trials
from lacunar.choosing.options import Compared, Placed, worth_considering
from lacunar.choosing.pairing import Chosen, chosen
from lacunar.choosing.records import Found, Nudge, Nudges, SearchCounts
from lacunar.choosing.run_forms import FormBook, Forms, keep_faults
from lacunar.measure.money import NOTHING
from lacunar.model.assumptions import resolve
from lacunar.model.faults import Fault, SpecRefused
from lacunar.takeoff.cutting.task import Guard


@dataclass(frozen=True, slots=True)
class Progress:
    """How far the search is: so many of so many layouts, of options or of nudges."""

    of: Literal["options", "nudges"]
    done: int
    in_all: int


@dataclass(frozen=True, slots=True)
class FoundOptions:
    """What came of a search, and the layout of each option, in the same order."""

    found: Found
    laid_out: tuple[LaidOut, ...]


class Search:
    """A search for the options of a ceiling.

    `steps` lays out one candidate at a time, and whoever goes through it may stop at any; `found`
    tells what there is by then. The same search always finds the same.
    """

    def __init__(self, asked: Asked, guard: Guard) -> None:
        self._asked = asked
        self._layer = Layer(asked, guard)
        book = FormBook(asked)
        self._forms: tuple[Forms, ...] = tuple(book.forms())
        self._chosen: Chosen = chosen(self._forms, asked.limits, resolve(asked.spec).ceiling.panel)
        self._faults = list(book.faults)
        self._laid: list[tuple[Candidate, Compared]] = []
        self._done = self._cannot = self._too_long = self._short_of_stock = 0
        self._stock_faults: list[Fault] = []
        self._nudges: list[Nudge] = []
        self._tried = 0
        self._stopped = True

    def steps(self) -> Iterator[Progress]:
        """Lay out candidates, then nudges, telling after each how far it is.

        Errors: `SpecRefused` where nothing can be built within the limits, or where there is no
        such option to be nudged.
        """
        candidates = self._chosen.candidates
        for self._done, candidate in enumerate(candidates, start=1):
            self._lay_out(candidate)
            yield Progress("options", self._done, len(candidates))
        self._refuse_if_nothing()
        yield from self._nudge()
        self._stopped = False

    def found(self) -> FoundOptions:
        """The options among all that is laid out so far."""
        kept, short = self._kept()
        placed = self._placed(kept)
        nudged_option = self._asked.limits.nudges_of
        nudges = None
        if nudged_option is not None:
            ordered = sorted(self._nudges, key=_most_saved_first)
            nudges = Nudges(nudged_option, self._tried, tuple(ordered))
        counts = SearchCounts(
            combinations=self._chosen.combinations,
            passed_over=self._chosen.combinations - len(self._chosen.candidates),
            to_lay_out=len(self._chosen.candidates),
            laid_out=self._done,
            cannot_be_built=self._cannot,
            short_of_headroom=short,
            crown_too_long=self._too_long,
            short_of_stock=self._short_of_stock,
            worth_considering=len(placed),
            stopped=self._stopped,
        )
        options = tuple(each.option for each in placed)
        told = left_out(self._asked, self._forms, self._chosen)
        missing = (*told, *not_compared(kept))
        laid_out = tuple(each.compared.laid for each in placed)
        return FoundOptions(Found(counts, options, nudges, missing), laid_out)

    def _lay_out(self, candidate: Candidate) -> None:
        try:
            laid = self._layer.laid_out(spec_of(self._asked.spec, candidate))
        except SpecRefused as refused:
            self._cannot += 1
            keep_faults(self._faults, refused)
        except CrownTooLong:
            self._too_long += 1
        except ShortOfStock as short:
            self._short_of_stock += 1
            keep_faults(self._stock_faults, short.refused)
        else:
            if laid.layout.coffers:
                compared = Compared(laid, judged(laid, self._asked.limits.center_on))
                self._laid.append((candidate, compared))
            else:
                self._cannot += 1

    def _kept(self) -> tuple[Sequence[Compared], int]:
        """What is compared, and how many layouts were left out for want of headroom.

        Where none has enough, none is left out: then the headroom is one more thing to compare.
        """
        built = [compared for _, compared in self._laid]
        enough = [each for each in built if _has_headroom(each)]
        kept = enough or built
        return kept, len(built) - len(kept)

    def _placed(self, kept: Sequence[Compared]) -> tuple[Placed, ...]:
        """The options among them."""
        return worth_considering(kept, dict(self._asked.limits.weights)) if kept else ()

    def _nudge(self) -> Iterator[Progress]:
        number = self._asked.limits.nudges_of
        if number is None:
            return
        placed = self._placed(self._kept()[0])
        if number > len(placed):
            raise SpecRefused([_no_such_option(number, len(placed))])
        base = placed[number - 1].compared.laid
        candidate = next(each for each, compared in self._laid if compared.laid is base)
        tried = trials(spec_of(self._asked.spec, candidate), base.layout)
        for self._tried, trial in enumerate(tried, start=1):
            self._try(trial, base)
            yield Progress("nudges", self._tried, len(tried))

    def _try(self, trial: Trial, base: LaidOut) -> None:
        found = nudged(trial, base, self._layer, self._asked.limits.center_on)
        if found is not None:
            self._nudges.append(found)

    def _refuse_if_nothing(self) -> None:
        if self._laid:
            return
        if self._too_long:
            raise SpecRefused([_crown_too_long(self._asked)])
        if self._stock_faults:
            raise SpecRefused(self._stock_faults)
        raise SpecRefused(self._faults or [_nothing_in_limits(self._asked)])


def _most_saved_first(nudge: Nudge) -> tuple[bool, Decimal]:
    return not nudge.saves, -(nudge.money_saved or NOTHING)


def _has_headroom(compared: Compared) -> bool:
    return all(each.enough for each in compared.laid.layout.headroom)


def _no_such_option(number: int, options: int) -> Fault:
    return Fault(
        code="option_not_there",
        pointer="/choices/nudges_of",
        message="The search finds no option of that number.",
        remedy=f"Give a number from 1 to {options}.",
        figures={"given": number, "options": options},
    )


def _crown_too_long(asked: Asked) -> Fault:
    sticks = asked.limits.crown_lengths
    return Fault(
        code="crown_longer_than_sticks",
        pointer="/choices/crown_lengths",
        message="Every layout within the limits has pieces of crown longer than all sticks.",
        remedy="Give longer sticks, or let there be more coffers.",
        figures={"longest": max(sticks)},
    )


def _nothing_in_limits(asked: Asked) -> Fault:
    limits = asked.limits
    return Fault(
        code="no_option_in_limits",
        pointer="/choices",
        message="No number of coffers gives openings within the limits.",
        remedy="Let openings be smaller or larger, or beams narrower.",
        figures={
            "smallest_opening": limits.smallest_opening,
            "largest_opening": limits.largest_opening,
        },
    )
