"""Both runs together: which combinations are laid out in full, and which are passed over."""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from fractions import Fraction

from lacunar.choosing.asked import Limits
from lacunar.choosing.candidates import Candidate
from lacunar.choosing.fronts import Key, layers, ranked
from lacunar.choosing.run_forms import Forms, RunForm
from lacunar.layout.panels.seams import seams
from lacunar.measure.length import Length
from lacunar.model.beams import Through
from lacunar.model.choosing_limits import COFFERS_LAID_OUT
from lacunar.model.limits import COFFERS_IN_ALL
from lacunar.model.panel import Panel, PanelKind


@dataclass(frozen=True, slots=True)
class Chosen:
    """The combinations to be laid out, and how many there were.

    `too_many_coffers` had more than a ceiling may have; `by_coffers` says that fewer are laid out
    than asked for, because all of them may have only so many together.
    """

    candidates: tuple[Candidate, ...]
    combinations: int
    too_many_coffers: int
    by_coffers: bool

    @property
    def passed_over(self) -> int:
        """How many were small enough and yet are not laid out."""
        return self.combinations - self.too_many_coffers - len(self.candidates)


@dataclass(frozen=True, slots=True)
class _Pair:
    length: RunForm
    width: RunForm
    beam_width: Length | None
    through: Through | None

    @property
    def coffers(self) -> int:
        return self.length.coffers * self.width.coffers

    @property
    def squareness(self) -> Fraction:
        """The longer side by the shorter, of the coffer that is least square."""
        along, up = self.length, self.width
        return max(along.largest / up.smallest, up.largest / along.smallest)


def chosen(forms: Sequence[Forms], limits: Limits, panel: Panel) -> Chosen:
    """Turn forms of both runs into the combinations that are laid out.

    Where there are more than that, combinations that others beat in what runs tell alone are passed
    over first: squareness, seams, coffers, items in the way, beams on no joist, centering.
    """
    everything = list(_pairs(forms, limits))
    pairs = [pair for pair in everything if pair.coffers <= COFFERS_IN_ALL]
    kept, by_coffers = _kept(pairs, limits, panel)
    return Chosen(
        candidates=tuple(
            Candidate(pair.length.choice, pair.width.choice, pair.beam_width, pair.through)
            for pair in kept
        ),
        combinations=len(everything),
        too_many_coffers=len(everything) - len(pairs),
        by_coffers=by_coffers,
    )


def _pairs(forms: Sequence[Forms], limits: Limits) -> Iterator[_Pair]:
    ways: tuple[Through | None, ...] = limits.through or (None,)
    for each in forms:
        for length in each.length:
            for width in each.width:
                for through in ways:
                    yield _Pair(length, width, each.beam_width, through)


def _kept(pairs: list[_Pair], limits: Limits, panel: Panel) -> tuple[list[_Pair], bool]:
    """The pairs to be laid out, in their order, and whether their coffers kept others out."""
    most = limits.most_laid_out
    if len(pairs) <= most and sum(pair.coffers for pair in pairs) <= COFFERS_LAID_OUT:
        return pairs, False
    known: dict[tuple[Length, Length], int] = {}
    keys = ranked([_key(pair, panel, known) for pair in pairs])
    least = min(pair.coffers for pair in pairs)
    kept: list[int] = []
    coffers = 0
    for place in _best_first(keys):
        if kept and coffers + pairs[place].coffers > COFFERS_LAID_OUT:
            continue
        kept.append(place)
        coffers += pairs[place].coffers
        if len(kept) == most or coffers + least > COFFERS_LAID_OUT:
            break
    return [pairs[each] for each in sorted(kept)], len(kept) < min(most, len(pairs))


def _best_first(keys: Sequence[tuple[int, ...]]) -> Iterator[int]:
    """Places layer by layer; first the best in each thing, then what comes out well in all of it.

    What is best in something and as good as any in the rest is in the first layer.
    """

    def in_all(place: int) -> tuple[int, int]:
        return sum(keys[place]), place

    for number, front in enumerate(layers(keys)):
        columns = range(len(keys[0])) if number == 0 else ()
        best = [min(front, key=lambda each: (keys[each][n], in_all(each))) for n in columns]
        yield from dict.fromkeys((*best, *sorted(front, key=in_all)))


def _key(pair: _Pair, panel: Panel, known: dict[tuple[Length, Length], int]) -> Key:
    """What both runs tell of a pair; less is better in all of it."""
    length, width = pair.length, pair.width
    size = (length.largest, width.largest)
    if size not in known:
        sheets = panel.kind is PanelKind.SHEET_GOODS
        known[size] = seams(size, panel.sheet, panel.grain).value if sheets else 0
    return (
        pair.squareness,
        known[size] * pair.coffers,
        pair.coffers,
        length.meets + width.meets,
        length.between_joists + width.between_joists,
        max(length.off_center, width.off_center).inches,
    )
