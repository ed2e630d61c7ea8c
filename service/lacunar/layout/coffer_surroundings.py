"""What stands about a coffer, as the mouldings in it see it: on each of its four sides."""

from collections.abc import Iterator, Mapping
from dataclasses import dataclass

from lacunar.layout.records import BeamProfile, Coffer, ElementKind, RunElement, RunLayout
from lacunar.measure.length import ZERO, Length
from lacunar.model.room import RunName


@dataclass(frozen=True, slots=True)
class Side:
    """One side of a coffer: a beam's, with how far its bottom stands out; or the bare wall."""

    beam: bool
    overhang: Length


@dataclass(frozen=True, slots=True)
class SidePair:
    """The two sides of a coffer that lie across one run, the one towards the datum first."""

    near: Side
    far: Side

    @property
    def beams(self) -> int:
        """How many of the two are beams."""
        return self.near.beam + self.far.beam


@dataclass(frozen=True, slots=True)
class Surroundings:
    """A coffer with the sides across each run."""

    coffer: Coffer
    length: SidePair
    width: SidePair

    def across(self, run: RunName) -> SidePair:
        """The sides across a run, which a piece along that run meets with its two ends."""
        return self.length if run is RunName.LENGTH else self.width


def surroundings(
    runs: Mapping[RunName, RunLayout],
    profiles: Mapping[str, BeamProfile],
    coffers: tuple[Coffer, ...],
) -> Iterator[Surroundings]:
    """Turn coffers into coffers with their sides.

    Parameters: `runs` by name; `profiles`, what each beam and wall beam is built as, by its id;
    `coffers` in any order.
    """
    columns = list(_pairs(runs[RunName.LENGTH], profiles))
    rows = list(_pairs(runs[RunName.WIDTH], profiles))
    for coffer in coffers:
        yield Surroundings(coffer, columns[coffer.column - 1], rows[coffer.row - 1])


def _pairs(run: RunLayout, profiles: Mapping[str, BeamProfile]) -> Iterator[SidePair]:
    """The sides of each coffer of a run, in order."""
    elements = (None, *run.elements, None)
    for before, element, after in zip(elements, elements[1:], elements[2:], strict=False):
        if element is not None and element.kind is ElementKind.COFFER:
            yield SidePair(_side(before, profiles), _side(after, profiles))


def _side(element: RunElement | None, profiles: Mapping[str, BeamProfile]) -> Side:
    if element is None:
        return Side(beam=False, overhang=ZERO)
    return Side(beam=True, overhang=profiles[element.id].overhang)
