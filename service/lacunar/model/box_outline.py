"""How a box's boards make up its outer sizes, as far as choosing stock for them needs it."""

from dataclasses import dataclass

from lacunar.measure.length import ZERO, Length
from lacunar.model.beams import BottomJoint
from lacunar.model.defaults import Defaults
from lacunar.model.spec import BoxSpec


@dataclass(frozen=True, slots=True)
class BoxOutline:
    """The joint of one family, its offsets, and the thickness its bottom has or will have."""

    joint: BottomJoint
    reveal: Length
    overhang: Length
    bottom_thickness: Length

    def side_for(self, drop: Length) -> Length:
        """Width of side that gives a drop [length]."""
        return drop - self.bottom_thickness if self.joint is BottomJoint.UNDER else drop

    def drop_about(self, depth: Length) -> Length:
        """Drop that leaves a depth inside the box, above its bottom [length]."""
        set_up = self.reveal if self.joint is BottomJoint.BETWEEN else ZERO
        return depth + self.bottom_thickness + set_up

    def bottom_for(self, width: Length, side_thickness: Length) -> Length:
        """Width of bottom that gives a finished width [length]."""
        return width - self._beyond_bottom(side_thickness)

    def width_of(self, bottom: Length, side_thickness: Length) -> Length:
        """Finished width that a width of bottom gives [length]."""
        return bottom + self._beyond_bottom(side_thickness)

    def _beyond_bottom(self, side_thickness: Length) -> Length:
        if self.joint is BottomJoint.BETWEEN:
            return side_thickness * 2
        if self.joint is BottomJoint.UNDER:
            return (self.reveal - self.overhang) * 2
        return ZERO


def outline_of(said: BoxSpec, usual: Defaults) -> BoxOutline:
    """The outline of a family, with usual values where it leaves them open.

    An overhang puts the bottom under the sides; otherwise it is set in between them. A bottom under
    or mitred is flush unless it is told otherwise.
    """
    joint = said.bottom_joint or (BottomJoint.UNDER if said.overhang else BottomJoint.BETWEEN)
    reveal = said.reveal
    if reveal is None:
        reveal = usual.reveal if joint is BottomJoint.BETWEEN else ZERO
    stock = said.bottom or said.sides or usual.sides
    return BoxOutline(joint, reveal, said.overhang or ZERO, stock.thickness)
