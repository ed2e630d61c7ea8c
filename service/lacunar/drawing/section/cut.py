"""Where a section's lengths stand on paper."""

from dataclasses import dataclass

from lacunar.drawing.elements import Pt
from lacunar.drawing.section.records import Outline, SectionOf
from lacunar.measure.length import Length


@dataclass(frozen=True, slots=True)
class Cut:
    """The section's scale and the place of the box at the ceiling [mm]."""

    of: SectionOf
    ratio: int
    left: float
    top: float

    def on_paper(self, length: Length) -> float:
        """A length as millimeters of paper."""
        return float(length.millimeters / self.ratio)

    def spot(self, x: Length, y: Length) -> Pt:
        """A place in the section; x from the box's left face, y down from the ceiling."""
        return Pt(self.left + self.on_paper(x), self.top + self.on_paper(y))

    def placed(self, outline: Outline) -> tuple[Pt, ...]:
        """An outline's corners on paper."""
        return tuple(self.spot(x, y) for x, y in outline)
