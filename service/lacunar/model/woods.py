"""Woods by name, with their published specific gravities.

Two figures are in use. For fastening: the assigned gravity, on oven-dry weight and oven-dry volume.
For weight: on oven-dry weight and the volume at 12 percent moisture. Where a species has only one
of them here, that one stands for both: the assigned figure weighs a little heavy, the other holds a
little less, so either way is the careful one.
"""

from collections.abc import Mapping
from enum import StrEnum
from fractions import Fraction
from types import MappingProxyType


class Species(StrEnum):
    """Species and species groups as framing is stamped and trim is sold."""

    DOUGLAS_FIR_LARCH = "douglas_fir_larch"
    HEM_FIR = "hem_fir"
    SPRUCE_PINE_FIR = "spruce_pine_fir"
    SPRUCE_PINE_FIR_SOUTH = "spruce_pine_fir_south"
    SOUTHERN_PINE = "southern_pine"
    PONDEROSA_PINE = "ponderosa_pine"
    EASTERN_WHITE_PINE = "eastern_white_pine"
    EASTERN_SOFTWOODS = "eastern_softwoods"
    WESTERN_HEMLOCK = "western_hemlock"
    YELLOW_POPLAR = "yellow_poplar"
    RED_MAPLE = "red_maple"
    RED_OAK = "red_oak"
    WHITE_OAK = "white_oak"
    CHERRY = "cherry"


def _table(gravities: dict[Species, str]) -> Mapping[Species, Fraction]:
    return MappingProxyType({name: Fraction(gravity) for name, gravity in gravities.items()})


# National Design Specification for Wood Construction, 2018, Table 12.3.3A (as quoted in a public
# cross-check note; the standard itself was not opened).
_ASSIGNED = _table(
    {
        Species.DOUGLAS_FIR_LARCH: "0.50",
        Species.HEM_FIR: "0.43",
        Species.SPRUCE_PINE_FIR: "0.42",
        Species.SPRUCE_PINE_FIR_SOUTH: "0.36",
        Species.SOUTHERN_PINE: "0.55",
        Species.PONDEROSA_PINE: "0.43",
        Species.EASTERN_WHITE_PINE: "0.36",
        Species.EASTERN_SOFTWOODS: "0.36",
        Species.WESTERN_HEMLOCK: "0.47",
        Species.YELLOW_POPLAR: "0.43",
        Species.RED_MAPLE: "0.58",
        Species.RED_OAK: "0.67",
        Species.WHITE_OAK: "0.73",
    }
)

# Gravity at 12 percent moisture, Wood Handbook (Forest Products Laboratory), by way of a state
# university's table in inch-pound units; yellow-poplar from memory.
_AT_12_PERCENT = _table(
    {
        Species.YELLOW_POPLAR: "0.42",
        Species.CHERRY: "0.50",
        Species.WESTERN_HEMLOCK: "0.45",
        Species.DOUGLAS_FIR_LARCH: "0.48",
        Species.RED_MAPLE: "0.54",
    }
)


def fastening_gravity(species: Species) -> Fraction:
    """The specific gravity by which fasteners hold in a species.

    >>> fastening_gravity(Species.HEM_FIR)
    Fraction(43, 100)
    """
    return _ASSIGNED.get(species) or _AT_12_PERCENT[species]


def weight_gravity(species: Species) -> Fraction:
    """The specific gravity by which a species is weighed, at 12 percent moisture.

    >>> weight_gravity(Species.YELLOW_POPLAR)
    Fraction(21, 50)
    """
    return _AT_12_PERCENT.get(species) or _ASSIGNED[species]
