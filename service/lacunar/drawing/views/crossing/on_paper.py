"""Where a crossing stands on paper: its middle at nothing, y down [mm]."""

from collections.abc import Sequence
from dataclasses import dataclass
from fractions import Fraction

from lacunar.drawing.elements import Pt
from lacunar.drawing.views.crossing.boards import Arm
from lacunar.drawing.views.crossing.scene import Scene
from lacunar.drawing.views.crossing.standing import Standing

STRAIGHT = 1e-9


@dataclass(frozen=True, slots=True)
class OnPaper:
    """How many times smaller than life a crossing is drawn."""

    ratio: Fraction

    def spot(self, at: Pt) -> Pt:
        """A place of the room on paper [mm]."""
        return Pt(at.x / self.ratio, -at.y / self.ratio)

    def spots(self, places: Sequence[Pt]) -> tuple[Pt, ...]:
        """Several places."""
        return tuple(self.spot(place) for place in places)

    def broken_end(self, arm: Arm, reach: float) -> tuple[Pt, Pt]:
        """Where an arm is broken off, from its near face to its far one."""
        return self.spot(arm.at(0.0, -reach)), self.spot(arm.at(arm.beam.width, -reach))


def arms_of(seen: Scene, beam: Standing) -> tuple[Arm, ...]:
    """Where a beam comes in."""
    return tuple(arm for arm in seen.arms if arm.beam is beam)


def along_sheet(beam: Standing) -> bool:
    """Whether a beam lies exactly along the sheet or up it."""
    return min(abs(beam.way.x), abs(beam.way.y)) < STRAIGHT


def words_on_left(seen: Scene) -> bool:
    """Whether words stand on the left: beams come in from the right alone."""
    level = [arm for arm in seen.arms if not arm.beam.upright]
    return bool(level) and all(arm.at(0.0, -seen.reach).x > arm.at(0.0, 0.0).x for arm in level)
