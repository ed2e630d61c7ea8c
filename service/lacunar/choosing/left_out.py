"""What a search leaves out, told one by one."""

from collections.abc import Iterator, Sequence

from lacunar.choosing.asked import Asked, Limits
from lacunar.choosing.criteria import lacks
from lacunar.choosing.options import Compared
from lacunar.choosing.pairing import Chosen
from lacunar.choosing.records import NotSearched
from lacunar.choosing.run_forms import Forms
from lacunar.layout.names import first_few
from lacunar.model import limits as bounds
from lacunar.model.choosing_limits import COFFERS_LAID_OUT, COMBINATIONS
from lacunar.model.faults import FigureValue
from lacunar.model.room import RunName


def left_out(asked: Asked, forms: Sequence[Forms], chosen: Chosen) -> tuple[NotSearched, ...]:
    """Turn a search into what it does not look at: by its limits, by design, and by its bounds."""
    return (*_by_limits(asked.limits), *_by_design(asked), *_by_bounds(forms, chosen, asked.limits))


def _says(code: str, text: str, **figures: FigureValue) -> NotSearched:
    return NotSearched(code, text, figures)


def not_compared(compared: Sequence[Compared]) -> Iterator[NotSearched]:
    """Turn layouts into what none of them was compared by."""
    lacking = [lacks(each.laid) for each in compared]
    if len(set(lacking)) > 1:
        unlike = frozenset.union(*lacking) - frozenset.intersection(*lacking)
        yield _says(
            "costs_not_compared",
            "Costs, which are told and not compared: only some layouts have what no price is given"
            " for.",
            without_a_price=first_few(sorted(unlike)),
        )


def _by_limits(limits: Limits) -> Iterator[NotSearched]:
    if any(limits.of(run).fewest is not None for run in RunName):
        yield _says(
            "openings_out_of_limits",
            "Openings smaller or larger than the limits.",
            smallest_opening=limits.smallest_opening,
            largest_opening=limits.largest_opening,
        )
    kept = [str(run) for run in RunName if limits.of(run).fewest is None]
    if kept:
        yield _says(
            "counts_kept",
            "Other numbers of coffers along a run for which the ceiling tells how many.",
            runs=", ".join(kept),
        )
    if not limits.widths:
        yield _says("widths_kept", "Beams of another width than the ceiling tells.")
    if not limits.through:
        yield _says("through_kept", "The other beams running through at crossings.")


def _by_design(asked: Asked) -> Iterator[NotSearched]:
    limits, room = asked.limits, asked.spec.room
    if limits.length.walls or limits.width.walls:
        yield _says("walls_unlike", "Unlike wall conditions at the two ends of one run.")
    if limits.widths:
        yield _says("families_unlike", "Crosswise beams of another width than lengthwise ones.")
    if room.members or any(asked.spec.grid.run(run).fixed_beams for run in RunName):
        yield _says(
            "zones_by_themselves",
            "Other shares of a run's coffers in its zones than the one with openings most alike,"
            " and other casings of members.",
        )
    if asked.priced_by is None:
        yield _says("costs_not_told", "What layouts cost, as there is no price list.")
    yield _says(
        "all_else_kept",
        "Other stock, drops, mouldings and panels than the ceiling tells or has assumed for it.",
    )


def _by_bounds(forms: Sequence[Forms], chosen: Chosen, limits: Limits) -> Iterator[NotSearched]:
    if chosen.passed_over:
        yield _says(
            "passed_over",
            "Combinations that others come before in what runs tell by themselves; a full layout"
            " could still have shown one of them to be worth considering.",
            combinations=chosen.passed_over,
            most_laid_out=limits.most_laid_out,
        )
    if chosen.by_coffers:
        yield _says(
            "too_many_coffers_together",
            "As many layouts as asked for: all that are laid out may have only so many coffers"
            " together.",
            coffers=COFFERS_LAID_OUT,
        )
    if chosen.too_many_coffers:
        yield _says(
            "too_many_coffers",
            "Combinations with more coffers than one ceiling may have.",
            combinations=chosen.too_many_coffers,
            coffers=bounds.COFFERS_IN_ALL,
        )
    if any(each.thinned for each in forms):
        yield _says(
            "counts_thinned",
            "Some numbers of coffers between the fewest and the most, as there are so many.",
            combinations=COMBINATIONS,
        )
