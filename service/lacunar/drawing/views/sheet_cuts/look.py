"""How sheets are drawn, and where their parts lie on paper."""

from dataclasses import dataclass
from fractions import Fraction

from lacunar.drawing.elements import Pt
from lacunar.drawing.hatching import box_corners
from lacunar.drawing.typeface import Typeface
from lacunar.drawing.wording import SheetWording
from lacunar.measure.length import Length

HEAD = 11.0
"""From the top of the block down to the sheet: its heading, and numbers of cuts [mm]."""
SIDE = 5.0
"""What is left free beside a sheet for numbers of cuts [mm]."""


@dataclass(frozen=True, slots=True)
class SheetLook:
    """How sheets are drawn: `ratio` millimeters of sheet to one of paper, and what is written.

    `kerf` is what the saw takes.
    """

    ratio: Fraction
    kerf: Length
    wording: SheetWording
    typeface: Typeface

    def on_paper(self, length: Length) -> float:
        """A length to scale [mm]."""
        return float(length.millimeters) / self.ratio

    def by(self, length: Length, width: Length) -> str:
        """A size in words."""
        return f"{self.wording.detail(length)} x {self.wording.detail(width)}"


@dataclass(frozen=True, slots=True)
class Spot:
    """A rectangle of a sheet on paper [mm]."""

    left: float
    top: float
    width: float
    height: float

    @property
    def right(self) -> float:
        """Its right edge."""
        return self.left + self.width

    @property
    def bottom(self) -> float:
        """Its lower edge."""
        return self.top + self.height

    @property
    def corners(self) -> tuple[Pt, ...]:
        """Its corners."""
        return box_corners(self.left, self.top, self.width, self.height)

    @property
    def middle(self) -> Pt:
        """Its middle."""
        return Pt(self.left + self.width / 2, self.top + self.height / 2)


@dataclass(frozen=True, slots=True)
class Rectangle:
    """A part of a sheet: its lower left corner, how long and how wide it is."""

    x: Length
    y: Length
    length: Length
    width: Length

    def on(self, sheet_width: Length, look: SheetLook) -> Spot:
        """Where it lies on paper, in a block whose sheet is so wide."""
        width, height = look.on_paper(self.length), look.on_paper(self.width)
        bottom = HEAD + look.on_paper(sheet_width) - look.on_paper(self.y)
        return Spot(SIDE + look.on_paper(self.x), bottom - height, width, height)
