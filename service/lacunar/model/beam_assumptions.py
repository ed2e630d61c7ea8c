"""Decides what both families of beams leave open: joints, offsets, and stock that can make them."""

from dataclasses import dataclass, replace

from lacunar.measure.length import ZERO, Length
from lacunar.measure.units import Units
from lacunar.model.assuming import Assuming
from lacunar.model.beams import Beams, BottomJoint, Box, Depth, Through
from lacunar.model.defaults import DEFAULTS, Defaults
from lacunar.model.families import (
    SIZE,
    FamilyNeeds,
    drop_as_stated,
    lengthwise_as_meant,
    needs_of,
    says_any,
    taken_over,
)
from lacunar.model.grid import Grid
from lacunar.model.room import Room, RunName
from lacunar.model.spec import BeamsSpec, BoxSpec
from lacunar.model.stock import (
    SOFTWOOD,
    Stock,
    actual_stock,
    boards_at_least,
    is_common,
    same_stock_at_least,
)


@dataclass(frozen=True, slots=True)
class BeamSurroundings:
    """The decided parts of the ceiling that beams must suit, and its units."""

    room: Room
    grid: Grid
    units: Units


def decide_beams(beams: BeamsSpec, around: BeamSurroundings, assuming: Assuming) -> Beams:
    """Both families with nothing open; what was assumed is noted in `assuming`."""
    through = assuming.settle(
        beams.through, "/beams/through", Through.LONGER, "the longer beams run through at crossings"
    )
    depth = assuming.settle(beams.depth, "/beams/depth", Depth.EQUAL, "all beams hang equally deep")
    beams = replace(beams, depth=depth)
    crosswise = _crosswise(beams, around, assuming)
    lengthwise = _lengthwise(beams, crosswise, around, assuming)
    return Beams(crosswise, lengthwise, through, depth)


def _crosswise(beams: BeamsSpec, around: BeamSurroundings, assuming: Assuming) -> Box:
    own_drop = beams.lengthwise is not None and says_any(beams.lengthwise, SIZE)
    other_drop = drop_as_stated(lengthwise_as_meant(beams)) if own_drop else ZERO
    needs = needs_of(RunName.LENGTH, beams, other_drop, around.room, around.grid)
    said = beams.crosswise or BoxSpec()
    return _Family("/beams/crosswise", said, needs, around.units, assuming).decided()


def _lengthwise(
    beams: BeamsSpec, crosswise: Box, around: BeamSurroundings, assuming: Assuming
) -> Box:
    place = "/beams/lengthwise"
    if beams.lengthwise is None:
        assuming.note(place, "same", "both families are built alike")
        return crosswise
    if beams.lengthwise == (beams.crosswise or BoxSpec()):
        return crosswise
    said = beams.lengthwise
    for name in taken_over(beams.lengthwise):
        if taken := getattr(crosswise, name):
            assuming.note(f"{place}/{name}", taken, "as the crosswise beams")
        said = replace(said, **{name: taken})
    needs = needs_of(RunName.WIDTH, beams, drop_as_stated(crosswise), around.room, around.grid)
    return _Family(place, said, needs, around.units, assuming).decided()


@dataclass(frozen=True, slots=True)
class _Family:
    """One family while it is decided: each part may rest on those decided before it."""

    place: str
    said: BoxSpec
    needs: FamilyNeeds
    units: Units
    assuming: Assuming

    @property
    def _usual(self) -> Defaults:
        return DEFAULTS[self.units]

    def decided(self) -> Box:
        """The box, decided from its joint inward: offsets, sides, bottom, width."""
        joint = self._joint()
        outline = _Outline(joint, self._reveal(joint), self._overhang(joint))
        sides = self._sides(outline)
        allowance = self._settle("allowance", ZERO, "the sides close on the backing without play")
        plain = self._plain_bottom(outline, sides, allowance)
        widest = max([plain, *self._widened_bottoms(outline, sides)])
        bottom = self._bottom(sides, widest, plain)
        return Box(
            sides=sides,
            bottom=bottom,
            backing=self.said.backing,
            bottom_joint=joint,
            reveal=outline.reveal,
            overhang=outline.overhang,
            allowance=allowance,
            width=self._width(outline, sides, widest, plain),
            drop=self.said.drop,
        )

    def _settle(self, name: str, value: Length, reason: str) -> Length:
        said: Length | None = getattr(self.said, name)
        return self.assuming.settle(said, f"{self.place}/{name}", value, reason)

    def _joint(self) -> BottomJoint:
        under = bool(self.said.overhang)
        return self.assuming.settle(
            self.said.bottom_joint,
            f"{self.place}/bottom_joint",
            BottomJoint.UNDER if under else BottomJoint.BETWEEN,
            "only a bottom under the sides overhangs" if under else "the bottom is set in between",
        )

    def _reveal(self, joint: BottomJoint) -> Length:
        if joint is BottomJoint.MITRED or self.said.overhang:
            return self.said.reveal or ZERO  # no other is possible
        if joint is BottomJoint.UNDER:
            return self._settle("reveal", ZERO, "the bottom is flush with the sides")
        return self._settle("reveal", self._usual.reveal, "a shadow line hides the joint")

    def _overhang(self, joint: BottomJoint) -> Length:
        if joint is not BottomJoint.UNDER or self.said.reveal:
            return self.said.overhang or ZERO  # no other is possible
        return self._settle("overhang", ZERO, "the bottom is flush with the sides")

    def _sides(self, outline: "_Outline") -> Stock:
        if self.said.sides is not None:
            return self.said.sides
        like = self.said.bottom or self._usual.sides
        least, reason = self._least_side(outline, like.thickness)
        sides = self._piece(like, least)
        self.assuming.note(f"{self.place}/sides", sides, reason)
        return sides

    def _least_side(self, outline: "_Outline", bottom_thickness: Length) -> tuple[Length, str]:
        """The least width of side that will do [length], and what it is for."""
        if self.said.drop is not None:
            drop = outline.side_for(self.said.drop, bottom_thickness)
            return drop, "the narrowest common stock that makes the drop that is given"
        choices = [(self._usual.sides.width, "a usual size")]
        if self.needs.depth:
            deep = outline.side_about(self.needs.depth, bottom_thickness)
            choices.append((deep, "the narrowest common stock that hides the deepest member"))
        if self.needs.drop:
            equal = outline.side_for(self.needs.drop, bottom_thickness)
            choices.append((equal, "the narrowest common stock that makes all beams equally deep"))
        return max(choices, key=lambda choice: choice[0])

    def _plain_bottom(self, outline: "_Outline", sides: Stock, allowance: Length) -> Length:
        """The bottom of the family's beams where nothing makes them wider [length]."""
        if self.said.width is not None:
            return outline.bottom_for(self.said.width, sides.thickness)
        if self.said.backing is not None:
            width = self.said.backing.width + sides.thickness * 2 + allowance
            return outline.bottom_for(width, sides.thickness)
        return self._usual.bottom.width

    def _widened_bottoms(self, outline: "_Outline", sides: Stock) -> list[Length]:
        """The bottoms of casings and fixed beams that have a width of their own [length]."""
        about_members = [inside + sides.thickness * 2 for inside in self.needs.insides]
        return [
            outline.bottom_for(width, sides.thickness)
            for width in (*self.needs.widths, *about_members)
        ]

    def _bottom(self, sides: Stock, widest: Length, plain: Length) -> Stock:
        if self.said.bottom is not None:
            return self.said.bottom
        bottom = self._piece(sides, widest)
        if widest > plain:
            reason = "the narrowest common stock that makes the widest casing or fixed beam"
        elif self.said.width is not None or self.said.backing is not None:
            reason = "the narrowest common stock that makes the width"
        else:
            reason = "a usual size"
        self.assuming.note(f"{self.place}/bottom", bottom, reason)
        return bottom

    def _width(
        self, outline: "_Outline", sides: Stock, widest: Length, plain: Length
    ) -> Length | None:
        """The finished width; None leaves it to stock or backing.

        Where the bottom's stock was taken wider for one casing, all other beams stay as they were.
        """
        by_stock = self.said.bottom is not None or self.said.backing is not None
        if self.said.width is not None or by_stock or widest == plain:
            return self.said.width
        width = outline.width_of(plain, sides.thickness)
        self.assuming.note(f"{self.place}/width", width, "a usual width, ripped from wider stock")
        return width

    def _piece(self, like: Stock, width: Length) -> Stock:
        """Stock like another, at least this wide, of a common width; if none is, it is glued up."""
        if like.kind in SOFTWOOD:
            boards = boards_at_least(width, like)
            common = next((board for board in boards if is_common(board)), None)
            found = common or next(iter(boards), None)
        else:
            step = self._usual.width_step
            width = max(step, step * -(-width // step))
            found = same_stock_at_least(like, width)
        return found or actual_stock(like.thickness, width, self.units)


@dataclass(frozen=True, slots=True)
class _Outline:
    """How a box's boards make up its outer sizes, for choosing stock that can make them."""

    joint: BottomJoint
    reveal: Length
    overhang: Length

    def side_for(self, drop: Length, bottom_thickness: Length) -> Length:
        """Width of side that gives a drop [length]."""
        return drop - bottom_thickness if self.joint is BottomJoint.UNDER else drop

    def side_about(self, depth: Length, bottom_thickness: Length) -> Length:
        """Width of side that leaves a depth inside the box, above the bottom [length]."""
        if self.joint is BottomJoint.UNDER:
            return depth
        return depth + bottom_thickness + self.reveal

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
