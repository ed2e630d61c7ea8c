"""How many coffers each zone of a run holds."""

from collections.abc import Sequence
from math import ceil, floor

from lacunar.layout.runs.zone_split import most_alike_split
from lacunar.measure.figure import CountFigure, Rule, given
from lacunar.measure.length import Length
from lacunar.model.grid import (
    CoffersInAll,
    CoffersPerZone,
    CountRule,
    LargestOpening,
    Parity,
    WishedOpening,
)

SPLIT = Rule(
    "share of the coffers in all that makes the openings of all zones most alike",
    "in_all - in_other_zones",
)
FROM_LARGEST = Rule(
    "fewest coffers that keep every opening at or below the largest wanted",
    "ceil((space + beam_width) / (largest + beam_width))",
)
FROM_LARGEST_STEPPED = Rule(
    "fewest coffers, odd or even as wanted, that keep every opening at or below the largest wanted",
    "max(first, first + step"
    " * ceil(((space + beam_width) / (largest + beam_width) - first) / step))",
)
WISHED_FEWER = Rule(
    "coffers that bring the opening nearest to the one wished for, from above",
    "max(first, first + step"
    " * floor(((space + beam_width) / (wished + beam_width) - first) / step))",
)
WISHED_MORE = Rule(
    "coffers that bring the opening nearest to the one wished for, from below",
    "step + max(first, first + step"
    " * floor(((space + beam_width) / (wished + beam_width) - first) / step))",
)

# The first count of each kind and the step to the next.
_SERIES = {None: (1, 1), Parity.ODD: (1, 2), Parity.EVEN: (2, 2)}


def zone_counts(
    rule: CountRule, parity: Parity | None, spaces: Sequence[Length], beam_width: Length
) -> tuple[CountFigure, ...]:
    """Turn a rule about coffers into a count for each zone.

    Parameters: `rule`; `parity`, wanted of every zone whose count is found from an opening;
    `spaces` of the zones [length]; `beam_width` [length]. Counts per zone are taken as given, of
    which there must be one for each; a total must be at least one for each zone.

    >>> inch = Length.of_inches
    >>> [found.value for found in zone_counts(LargestOpening(inch(36)), None, [inch(163)], inch(5))]
    [5]
    """
    match rule:
        case CoffersPerZone(counts):
            return tuple(given(count) for count in counts)
        case CoffersInAll(count):
            return _split(count, spaces, beam_width)
        case LargestOpening(largest):
            return tuple(_from_largest(largest, parity, space, beam_width) for space in spaces)
        case WishedOpening(wished):
            return tuple(_from_wished(wished, parity, space, beam_width) for space in spaces)


def opening_of(space: Length, coffers: int, beam_width: Length) -> Length:
    """Turn a zone's space and count into its equal opening: (N + W) / n - W [length].

    >>> opening_of(Length.of_inches(154), 3, Length.of_inches(5))
    Length(48 in)
    """
    return (space + beam_width) / coffers - beam_width


def coffers_that_fit(space: Length, least_opening: Length, beam_width: Length) -> int:
    """The most coffers a zone holds with openings of at least so much [length]; 0 if not even one.

    Formula: floor((N + W) / (least + W)).
    """
    return max(0, floor((space + beam_width) / (least_opening + beam_width)))


def _split(count: int, spaces: Sequence[Length], beam_width: Length) -> tuple[CountFigure, ...]:
    if len(spaces) == 1:
        return (given(count),)
    return tuple(
        SPLIT.gives(part, in_all=count, in_other_zones=count - part)
        for part in most_alike_split(count, spaces, beam_width)
    )


def _from_largest(
    largest: Length, parity: Parity | None, space: Length, beam_width: Length
) -> CountFigure:
    modules = (space + beam_width) / (largest + beam_width)
    if parity is None:
        return FROM_LARGEST.gives(
            ceil(modules), space=space, beam_width=beam_width, largest=largest
        )
    first, step = _SERIES[parity]
    return FROM_LARGEST_STEPPED.gives(
        max(first, first + step * ceil((modules - first) / step)),
        space=space,
        beam_width=beam_width,
        largest=largest,
        first=first,
        step=step,
    )


def _from_wished(
    wished: Length, parity: Parity | None, space: Length, beam_width: Length
) -> CountFigure:
    """The count on either side of the wish whose opening is nearer; a tie goes to fewer coffers."""
    first, step = _SERIES[parity]
    modules = (space + beam_width) / (wished + beam_width)
    fewer = max(first, first + step * floor((modules - first) / step))
    more = fewer + step
    too_large = opening_of(space, fewer, beam_width) - wished
    too_small = wished - opening_of(space, more, beam_width)
    takes_more = too_small < min(too_large, wished)
    return (WISHED_MORE if takes_more else WISHED_FEWER).gives(
        more if takes_more else fewer,
        space=space,
        beam_width=beam_width,
        wished=wished,
        first=first,
        step=step,
    )
