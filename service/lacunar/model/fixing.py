"""How backing is fixed to the framing, and what the beams are made of as far as they weigh."""

from dataclasses import dataclass
from enum import StrEnum
from fractions import Fraction

from lacunar.measure.length import Length
from lacunar.model.fasteners import FastenerKind
from lacunar.model.woods import Species


class BetweenJoists(StrEnum):
    """What carries a beam that runs along the joists and lies between two of them.

    `blocking` is framing let in between the joists, `skin` plywood screwed up under them over the
    whole ceiling, `anchors` are fasteners made for hollow ceilings.
    """

    BLOCKING = "blocking"
    SKIN = "skin"
    ANCHORS = "anchors"


class Service(StrEnum):
    """Whether the wood stays dry once it is up: rooms are dry, baths and porches may not be."""

    DRY = "dry"
    WET = "wet"


@dataclass(frozen=True, slots=True)
class Wood:
    """What boards are made of: specific gravity, and moisture as a share of the dry weight."""

    species: Species | None
    gravity: Fraction
    moisture: Fraction


@dataclass(frozen=True, slots=True)
class Fixing:
    """Fasteners, where they go, and what hangs from them.

    `at_crossing` fasteners go into each joist or block; `least_penetration` is wished for in the
    framing; `shim` is what packs the backing down from the ceiling; `block_through` is how much of
    a block as high as the inside a fastener passes through; where nothing but the piece's own
    length says where it is fixed, places are at most `block_spacing` apart, the outer ones
    `end_distance` from its ends. `panel_gravity` is the density of a sheet panel over water's.
    """

    between_joists: BetweenJoists
    fastener: FastenerKind
    size: str
    length: Length
    at_crossing: int
    least_penetration: Length
    shim: Length
    block_through: Length
    block_spacing: Length
    end_distance: Length
    service: Service
    trim: Wood
    backing: Wood
    panel_gravity: Fraction
