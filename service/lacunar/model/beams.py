"""Beam families: what a box beam is built of and how its bottom meets its sides."""

from dataclasses import dataclass
from enum import StrEnum

from lacunar.measure.length import Length
from lacunar.model.look import Look
from lacunar.model.stock import Stock


class BottomJoint(StrEnum):
    """How the bottom board meets the two sides."""

    BETWEEN = "between"
    UNDER = "under"
    MITRED = "mitred"


class Through(StrEnum):
    """Which family runs through at crossings; `longer` is the one whose beams are longer."""

    CROSSWISE = "crosswise"
    LENGTHWISE = "lengthwise"
    LONGER = "longer"


class Depth(StrEnum):
    """Whether all beams take the deepest drop needed, or each family keeps its own."""

    EQUAL = "equal"
    STEPPED = "stepped"


@dataclass(frozen=True, slots=True)
class Box:
    """One family's box beam, before anything is computed.

    `width` is the finished width between side faces, `drop` the depth below the finished ceiling;
    None means "as the stock gives". `backing`, if given, decides the width from the inside out.
    `reveal` sets a bottom in (under) or up (between); `overhang` sets an `under` bottom out;
    `allowance` is the play between backing and the sides together.
    """

    sides: Stock
    bottom: Stock
    backing: Stock | None
    bottom_joint: BottomJoint
    reveal: Length
    overhang: Length
    allowance: Length
    width: Length | None
    drop: Length | None


@dataclass(frozen=True, slots=True)
class Beams:
    """Both families: crosswise beams divide the length run, lengthwise ones the width run."""

    crosswise: Box
    lengthwise: Box
    through: Through
    depth: Depth
    look: Look
