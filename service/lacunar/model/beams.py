"""Beam families: what a beam is built of, as a box or as boards flat against the ceiling."""

from dataclasses import dataclass
from enum import StrEnum

from lacunar.measure.length import ZERO, Length
from lacunar.model.look import Look
from lacunar.model.stock import Stock


class FamilyProfile(StrEnum):
    """How a family is built: as hollow boxes, or of boards lying flat against the ceiling."""

    BOX = "box"
    FLAT = "flat"


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
class Flat:
    """One family's flat beam: a face board against the ceiling, or on an upper board that is.

    `bottom` is the face board. `reveal` sets its edges in from those of the upper board, `overhang`
    out past them; without an upper board both are zero. `width` is that of the wider board (None:
    as the stock gives). A flat beam is as deep as its boards are thick.
    """

    bottom: Stock
    upper_board: Stock | None
    reveal: Length
    overhang: Length
    width: Length | None

    @property
    def thickness(self) -> Length:
        """Both boards together [length]."""
        upper = self.upper_board.thickness if self.upper_board else ZERO
        return upper + self.bottom.thickness


FamilyBeam = Box | Flat


@dataclass(frozen=True, slots=True)
class Beams:
    """Both families: crosswise beams divide the length run, lengthwise ones the width run."""

    crosswise: FamilyBeam
    lengthwise: FamilyBeam
    through: Through
    depth: Depth
    look: Look
