"""Divides the clear space of a zone between its coffers: the arithmetic, at one end of a run."""

from dataclasses import dataclass
from fractions import Fraction

from lacunar.layout.records import Zone
from lacunar.measure.figure import CountFigure, LengthFigure, Rule, given
from lacunar.measure.length import Length

CLEAR_TOTAL = Rule(
    "clear total of a zone: its space less the beams in it",
    "end - start - (coffers - 1) * beam_width",
)
EQUAL_OPENING = Rule("equal openings: the clear total by the coffers", "clear_total / coffers")
WEIGHTED_OPENING = Rule(
    "opening by weight: its share of the clear total", "clear_total * weight / weights"
)
BORDER_OPENING = Rule(
    "border opening: half of what the held openings leave of the clear total",
    "(clear_total - held_coffers * held) / 2",
)
PAST_OPENING = Rule("far side of a coffer: its near side plus the opening", "near + opening")
PAST_BEAM = Rule("far face: the near face plus the width", "near + width")


@dataclass(frozen=True, slots=True)
class ZoneSpace:
    """A zone from the face it starts at to the face it ends at, and how its coffers share it.

    `weights` has one share for each coffer; `held`, where there is one, is the size of all coffers
    but the first and the last.
    """

    start: LengthFigure
    end: LengthFigure
    coffers: CountFigure
    weights: tuple[Fraction, ...]
    held: Length | None = None

    @property
    def space(self) -> Length:
        """What there is between the two faces."""
        return self.end.value - self.start.value


def clear_total(space: Length, coffers: int, beam_width: Length) -> Length:
    """Turn a zone's space into what its coffers have of it.

    Formula: T = N - (n - 1) W, with N the space [length], n coffers and beams W wide [length]
    between them. Zero or less means that the beams fill the zone.

    >>> clear_total(Length.of_inches(163), 3, Length.of_inches(6))
    Length(151 in)
    """
    return space - beam_width * (coffers - 1)


def divide(number: int, zone: ZoneSpace, beam_width: Length) -> Zone:
    """Divide a zone between its coffers.

    Parameters: `number` of the zone in its run; `zone`; `beam_width` [length] of the beams between.
    Formula: clear total T = end - start - (n - 1) W; opening i = T w_i / sum(w); with a held size
    the two borders are (T - (n - 2) held) / 2. Valid for T > 0 and held
    sizes that leave a border.

    >>> from lacunar.measure.figure import given
    >>> inch = Length.of_inches
    >>> zone = ZoneSpace(given(inch(0)), given(inch(154)), given(3), (Fraction(1),) * 3)
    >>> [opening.value for opening in divide(1, zone, inch(5)).openings]
    [Length(48 in), Length(48 in), Length(48 in)]
    """
    coffers = zone.coffers.value
    total = CLEAR_TOTAL.gives(
        clear_total(zone.space, coffers, beam_width),
        end=zone.end.value,
        start=zone.start.value,
        coffers=coffers,
        beam_width=beam_width,
    )
    return Zone(
        number=number,
        start=zone.start,
        end=zone.end,
        coffers=zone.coffers,
        clear_total=total,
        openings=_openings(total.value, zone),
    )


def _openings(total: Length, zone: ZoneSpace) -> tuple[LengthFigure, ...]:
    coffers = zone.coffers.value
    if zone.held is not None:
        return _around_held(total, coffers, zone.held)
    if len(set(zone.weights)) == 1:
        return (EQUAL_OPENING.gives(total / coffers, clear_total=total, coffers=coffers),) * coffers
    weights = sum(zone.weights, Fraction(0))
    return tuple(
        WEIGHTED_OPENING.gives(
            total * weight / weights, clear_total=total, weight=weight, weights=weights
        )
        for weight in zone.weights
    )


def _around_held(total: Length, coffers: int, held: Length) -> tuple[LengthFigure, ...]:
    border = BORDER_OPENING.gives(
        (total - held * (coffers - 2)) / 2, clear_total=total, held_coffers=coffers - 2, held=held
    )
    return (border, *(given(held),) * (coffers - 2), border)


def past_opening(near: LengthFigure, opening: Length) -> LengthFigure:
    """The far side of a coffer, from its near side and its opening [length].

    >>> past_opening(given(Length.of_inches(5)), Length.of_inches(43)).value
    Length(48 in)
    """
    return PAST_OPENING.gives(near.value + opening, near=near.value, opening=opening)


def past_beam(near: LengthFigure, width: Length) -> LengthFigure:
    """The far face of a beam, from its near face and its width [length].

    >>> past_beam(given(Length.of_inches(43)), Length.of_inches(5)).value
    Length(48 in)
    """
    return PAST_BEAM.gives(near.value + width, near=near.value, width=width)
