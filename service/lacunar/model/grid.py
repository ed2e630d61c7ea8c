"""How many coffers, and what stands at the walls."""

from dataclasses import dataclass
from enum import StrEnum
from fractions import Fraction

from lacunar.measure.length import Length
from lacunar.model.room import RunName
from lacunar.model.wall_kind import WallKind


class Parity(StrEnum):
    """Odd counts center a coffer in the run, even counts a beam."""

    ODD = "odd"
    EVEN = "even"


@dataclass(frozen=True, slots=True)
class WallCondition:
    """What stands at one wall: a kind, and for a soffit its own width and what is on its face."""

    kind: WallKind
    soffit_width: Length | None = None
    then: WallKind = WallKind.NONE


@dataclass(frozen=True, slots=True)
class CoffersPerZone:
    """One count for each zone between fixed beams, from the datum."""

    counts: tuple[int, ...]


@dataclass(frozen=True, slots=True)
class CoffersInAll:
    """A total, to be split over the zones so that openings come out most alike."""

    count: int


@dataclass(frozen=True, slots=True)
class LargestOpening:
    """As few coffers as keep every clear opening at or below this."""

    opening: Length


@dataclass(frozen=True, slots=True)
class WishedOpening:
    """As many coffers as bring the clear opening nearest to this."""

    opening: Length


CountRule = CoffersPerZone | CoffersInAll | LargestOpening | WishedOpening


@dataclass(frozen=True, slots=True)
class FixedBeam:
    """A beam whose place is given because it lines up with something.

    `center` is from the datum as the room was measured; `width` None: as its family.
    """

    name: str
    center: Length
    width: Length | None


@dataclass(frozen=True, slots=True)
class Run:
    """How one run is divided.

    `weights` (one per coffer over the whole run, None: equal) share each zone's clear total; `held`
    keeps the inner coffers of a run at one size and lets its two border coffers take the rest.
    """

    name: RunName
    count: CountRule
    parity: Parity | None
    weights: tuple[Fraction, ...] | None
    held: Length | None
    start: WallCondition
    end: WallCondition
    fixed_beams: tuple[FixedBeam, ...]


@dataclass(frozen=True, slots=True)
class Grid:
    """Both runs."""

    length: Run
    width: Run

    def run(self, name: RunName) -> Run:
        """The run of that name."""
        return self.length if name is RunName.LENGTH else self.width
