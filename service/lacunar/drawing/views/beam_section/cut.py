"""What a section is cut through, and where its lengths stand on paper."""

from dataclasses import dataclass
from fractions import Fraction

from lacunar.drawing.elements import Pt
from lacunar.layout.moulding_records import CrownSection
from lacunar.layout.records import Beam, BeamProfile, ProfilePart
from lacunar.measure.length import Length
from lacunar.model.beams import BottomJoint
from lacunar.model.moulding import FlatMoulding
from lacunar.model.panel import Panel


@dataclass(frozen=True, slots=True)
class SectionTrim:
    """The mouldings on the sides of every beam: crown, and flat ones from the side outward."""

    crown: CrownSection | None = None
    flats: tuple[FlatMoulding, ...] = ()


@dataclass(frozen=True, slots=True)
class SectionOf:
    """What is cut: a profile, the beams that have it, the panel and the mouldings that meet them.

    Cased beams hold their members alike.
    """

    number: int
    profile: BeamProfile
    beams: tuple[Beam, ...]
    panel: Panel
    trim: SectionTrim = SectionTrim()

    @property
    def members(self) -> tuple[str, ...]:
        """The names of the members in the beams."""
        return tuple(beam.member.name for beam in self.beams if beam.member)


@dataclass(frozen=True, slots=True)
class Cut:
    """The section's scale and the place of the box at the ceiling [mm]."""

    of: SectionOf
    ratio: Fraction
    left: float
    top: float

    def on_paper(self, length: Length) -> float:
        """A length as millimeters of paper."""
        return float(length.millimeters / self.ratio)

    def spot(self, x: Length, y: Length) -> Pt:
        """A place in the section; x from the box's left face, y down from the ceiling."""
        return Pt(self.left + self.on_paper(x), self.top + self.on_paper(y))

    def board(self, x: Length, y: Length, width: Length, height: Length) -> tuple[Pt, ...]:
        """A board's corners; x and y as for `spot`."""
        left, top = self.left + self.on_paper(x), self.top + self.on_paper(y)
        right, bottom = left + self.on_paper(width), top + self.on_paper(height)
        return (Pt(left, top), Pt(right, top), Pt(right, bottom), Pt(left, bottom))

    def part(self, name: str) -> ProfilePart | None:
        """A board of the profile by its name; a cased beam has no backing."""
        return next((part for part in self.of.profile.parts if part.name == name), None)

    @property
    def side_ends(self) -> tuple[Length, Length]:
        """Where the exposed part of a side starts and ends, down from the ceiling."""
        profile, bottom = self.of.profile, self.part("bottom")
        lower = profile.drop.value
        if profile.bottom_joint is BottomJoint.UNDER and bottom is not None:
            lower -= bottom.thickness.value
        return lower - profile.exposed_side.value, lower
