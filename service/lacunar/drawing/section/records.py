"""What a section is cut through."""

from dataclasses import dataclass

from lacunar.layout.moulding_records import CrownSection
from lacunar.layout.records import Beam, BeamProfile, ProfilePart
from lacunar.measure.length import Length
from lacunar.model.beams import BottomJoint
from lacunar.model.moulding import FlatMoulding
from lacunar.model.panel import Panel

Corner = tuple[Length, Length]
"""A place in a section: out from the beam's left face, down from the ceiling."""
Outline = tuple[Corner, ...]
"""The corners of what is cut through."""


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

    def part(self, name: str) -> ProfilePart | None:
        """A board of the profile by its name; a cased beam has no backing."""
        return next((part for part in self.profile.parts if part.name == name), None)

    @property
    def at_wall(self) -> bool:
        """Whether it stands at a wall, which is then left of it."""
        return self.profile.sides == 1

    @property
    def side_ends(self) -> tuple[Length, Length]:
        """Where the exposed part of a side starts and ends, down from the ceiling."""
        profile, bottom = self.profile, self.part("bottom")
        lower = profile.drop.value
        if profile.bottom_joint is BottomJoint.UNDER and bottom is not None:
            lower -= bottom.thickness.value
        return lower - profile.exposed_side.value, lower

    @property
    def members(self) -> tuple[str, ...]:
        """The names of the members in the beams."""
        return tuple(beam.member.name for beam in self.beams if beam.member)
