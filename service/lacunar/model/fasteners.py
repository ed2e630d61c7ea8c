"""Wood screws, lag screws and common nails by the sizes they are sold in.

Diameters: National Design Specification for Wood Construction, 2018, appendix tables L2 (lag
screws), L3 (wood screws) and L4 (common nails), as quoted in a public cross-check note; the
standard itself was not opened.
"""

from collections.abc import Mapping
from dataclasses import dataclass
from enum import StrEnum
from fractions import Fraction
from types import MappingProxyType

from lacunar.measure.length import Length


class FastenerKind(StrEnum):
    """What holds the backing to the framing."""

    WOOD_SCREW = "wood_screw"
    LAG_SCREW = "lag_screw"
    NAIL = "nail"


@dataclass(frozen=True, slots=True)
class FastenerSize:
    """One size: its diameter, and for wood screws that of the head."""

    diameter: Length
    head: Length | None = None


def _inches(text: str) -> Length:
    return Length.of_inches(Fraction(text))


# Gauge, diameter, head diameter [in].
_WOOD_SCREWS = (
    ("6", "0.138", "0.262"),
    ("8", "0.164", "0.312"),
    ("10", "0.190", "0.363"),
    ("12", "0.216", "0.414"),
    ("14", "0.242", "0.480"),
)
_LAG_SCREWS = ("1/4", "5/16", "3/8", "1/2", "5/8", "3/4", "1")
# Pennyweight, diameter [in].
_NAILS = (("6d", "0.113"), ("8d", "0.131"), ("10d", "0.148"), ("16d", "0.162"))

SIZES: Mapping[FastenerKind, Mapping[str, FastenerSize]] = MappingProxyType(
    {
        FastenerKind.WOOD_SCREW: MappingProxyType(
            {
                gauge: FastenerSize(_inches(diameter), _inches(head))
                for gauge, diameter, head in _WOOD_SCREWS
            }
        ),
        FastenerKind.LAG_SCREW: MappingProxyType(
            {size: FastenerSize(_inches(size)) for size in _LAG_SCREWS}
        ),
        FastenerKind.NAIL: MappingProxyType(
            {name: FastenerSize(_inches(diameter)) for name, diameter in _NAILS}
        ),
    }
)

USUAL_SIZE: Mapping[FastenerKind, str] = MappingProxyType(
    {
        FastenerKind.WOOD_SCREW: "10",
        FastenerKind.LAG_SCREW: "1/4",
        FastenerKind.NAIL: "16d",
    }
)
"""The size taken where none is said (common practice, no source)."""
