"""Those worth considering of all that were laid out: in order, compared with each other."""

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass, replace
from fractions import Fraction
from itertools import combinations

from lacunar.choosing.criteria import key_of, lacks, without_cost
from lacunar.choosing.fronts import Key, unbeaten
from lacunar.choosing.laying import LaidOut
from lacunar.choosing.records import Behind, Criterion, Judged, Option, OptionRun
from lacunar.layout.families import beam_families
from lacunar.layout.records import Layout
from lacunar.measure.figure import LengthFigure, NumberFigure, Rule
from lacunar.measure.length import Length
from lacunar.model.grid import WallCondition
from lacunar.model.room import RunName
from lacunar.model.wall_kind import WallKind
from lacunar.takeoff.part_records import PartKind

SCORE = Rule(
    "score: how far short of the best, from 0 to 1 in each criterion, by its weight",
    "shortfall / weights",
)
# A piece this part of a sheet's short edge, or narrower, is a strip and no panel.
_FILLER = Fraction(1, 4)


@dataclass(frozen=True, slots=True)
class Compared:
    """A layout with its figures."""

    laid: LaidOut
    judged: tuple[Judged, ...]

    @property
    def key(self) -> Key:
        """Its figures as values of which less is better."""
        return key_of(self.judged)


@dataclass(frozen=True, slots=True)
class Placed:
    """An option, and what it was made of."""

    option: Option
    compared: Compared


def comparable(compared: Sequence[Compared]) -> Sequence[Compared]:
    """Layouts with the figures that can be compared: cost only where all leave out the same."""
    if len({lacks(each.laid) for each in compared}) <= 1:
        return compared
    return [replace(each, judged=without_cost(each.judged)) for each in compared]


def worth_considering(
    laid_out: Sequence[Compared], weights: Mapping[Criterion, Fraction]
) -> tuple[Placed, ...]:
    """Turn layouts into options: those that none beats, the best first.

    With `weights` they stand by their score; without, by the criteria in their order.
    """
    compared = comparable(laid_out)
    kept = [compared[place] for place in unbeaten([each.key for each in compared])]
    spreads = _Spreads(kept)
    scores = [spreads.score(each, weights) for each in kept]

    def order(place: int) -> tuple[Fraction, Key]:
        score = scores[place]
        return Fraction(0) if score is None else score.value, kept[place].key

    ordered = sorted(range(len(kept)), key=order)
    options = [_option(n, kept[place], scores[place]) for n, place in enumerate(ordered, start=1)]
    told = [_standing(each, options, spreads) for each in options]
    return tuple(Placed(option, kept[place]) for option, place in zip(told, ordered, strict=True))


class _Spreads:
    """The best and the worst of each criterion among the options."""

    def __init__(self, kept: Sequence[Compared]) -> None:
        columns = list(zip(*(each.key for each in kept), strict=True))
        self._least = [min(column) for column in columns]
        self._most = [max(column) for column in columns]

    def shortfalls(self, key: Key) -> list[Fraction]:
        """How far a key is from the best, in parts of the way to the worst."""
        return [
            Fraction(value - least) / (most - least) if most > least else Fraction(0)
            for value, least, most in zip(key, self._least, self._most, strict=True)
        ]

    def score(
        self, compared: Compared, weights: Mapping[Criterion, Fraction]
    ) -> NumberFigure | None:
        """The weighted mean of shortfalls; None where nothing told has a weight."""
        told = [weights.get(each.criterion, Fraction(0)) for each in compared.judged]
        total = sum(told, Fraction(0))
        if not total:
            return None
        falls = self.shortfalls(compared.key)
        shortfall = sum((a * b for a, b in zip(falls, told, strict=True)), Fraction(0))
        return SCORE.gives(shortfall / total, shortfall=shortfall, weights=total)

    def behind(self, option: Option, options: Sequence[Option]) -> Behind | None:
        """By what an option comes off worst; None where it does by nothing."""
        falls = self.shortfalls(key_of(option.judged))
        if not any(falls):
            return None
        place = falls.index(max(falls))
        best = next(each for each in options if key_of(each.judged)[place] == self._least[place])
        judged = best.judged[place]
        return Behind(judged.criterion, best.number, judged.figure)


def _standing(option: Option, options: Sequence[Option], spreads: _Spreads) -> Option:
    """The option with how it stands among all of them."""
    return replace(
        option,
        stands_out_by=_stands_out_by(option, options),
        behind=spreads.behind(option, options),
    )


def _stands_out_by(option: Option, options: Sequence[Option]) -> tuple[Criterion, ...]:
    """The fewest criteria of which no other option is as good in all."""
    key = key_of(option.judged)
    others = [key_of(each.judged) for each in options if each is not option]
    if not others:
        return ()
    for many in range(1, len(key) + 1):
        for places in combinations(range(len(key)), many):
            if not any(all(other[n] <= key[n] for n in places) for other in others):
                return tuple(option.judged[n].criterion for n in places)
    return ()


def _option(number: int, compared: Compared, score: NumberFigure | None) -> Option:
    laid, layout = compared.laid, compared.laid.layout
    length, width = (_run(layout, run) for run in RunName)
    return Option(
        number=number,
        coffers=len(layout.coffers),
        length=length,
        width=width,
        through=layout.ceiling.beams.through,
        judged=compared.judged,
        crown=laid.crown,
        cost=None if laid.costed is None else laid.costed.cost,
        fillers=fillers(laid),
        grid_id=layout.grid_id,
        stands_out_by=(),
        behind=None,
        score=score,
    )


def _run(layout: Layout, run: RunName) -> OptionRun:
    asked = layout.ceiling.grid.run(run)
    openings = sorted(_openings(layout, run), key=lambda each: each.value)
    return OptionRun(
        run=run,
        coffers=coffers_along(layout, run),
        start=condition_words(asked.start),
        end=condition_words(asked.end),
        smallest_opening=openings[0],
        largest_opening=openings[-1],
        beam_width=beam_families(layout.ceiling.beams)[run].width,
    )


def coffers_along(layout: Layout, run: RunName) -> int:
    """How many coffers a run has."""
    return sum(zone.coffers.value for zone in layout.run(run).zones)


def _openings(layout: Layout, run: RunName) -> Iterator[LengthFigure]:
    for zone in layout.run(run).zones:
        yield from zone.openings


def condition_words(condition: WallCondition) -> str:
    """What stands at a wall, and on the face of a soffit."""
    if condition.kind is WallKind.SOFFIT:
        return f"{WallKind.SOFFIT}, then {condition.then}"
    return str(condition.kind)


def fillers(laid: LaidOut) -> int:
    """How many pieces of panels are strips."""
    narrow: Length = laid.layout.ceiling.panel.sheet.width * _FILLER
    return sum(
        part.quantity
        for part in laid.parts
        if part.kind is PartKind.PANEL
        and min(part.length.value, part.width.value if part.width else narrow) < narrow
    )
