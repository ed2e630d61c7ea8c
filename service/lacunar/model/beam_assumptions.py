"""Decides what both families of beams leave open: joints, offsets, and stock that can make them."""

from dataclasses import dataclass

from lacunar.measure.length import ZERO, Length
from lacunar.measure.units import Units
from lacunar.model.assuming import Assuming
from lacunar.model.beams import Beams, BottomJoint, Box, Depth, FamilyBeam, FamilyProfile, Through
from lacunar.model.box_outline import BoxOutline, outline_of
from lacunar.model.defaults import DEFAULTS, Defaults
from lacunar.model.families import BothFamilies, FamilyNeeds, lengthwise_as_meant, taken_over
from lacunar.model.flat_assumptions import decide_flat
from lacunar.model.grid import Grid
from lacunar.model.look_assumptions import decide_look
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
    depth = _depth(beams, assuming)
    look = decide_look(beams.look, assuming)
    families = _families(beams, depth, around)
    crosswise = _decided("/beams/crosswise", RunName.LENGTH, families, around.units, assuming)
    if beams.lengthwise is None:
        assuming.note("/beams/lengthwise", "same", "both families are built alike")
    if families.alike:
        return Beams(crosswise, crosswise, through, depth, look)
    _note_taken_over(beams, assuming)
    lengthwise = _decided("/beams/lengthwise", RunName.WIDTH, families, around.units, assuming)
    return Beams(crosswise, lengthwise, through, depth, look)


def _depth(beams: BeamsSpec, assuming: Assuming) -> Depth:
    """Whether all beams hang equally deep: not where one family is flat and the other is not."""
    flats = {(beams.crosswise or BoxSpec()).flat, lengthwise_as_meant(beams).flat}
    if True in flats:
        reason = "a flat beam is as deep as its boards"
        return assuming.settle(beams.depth, "/beams/depth", Depth.STEPPED, reason)
    return assuming.settle(beams.depth, "/beams/depth", Depth.EQUAL, "all beams hang equally deep")


def _decided(
    place: str, run: RunName, families: BothFamilies, units: Units, assuming: Assuming
) -> FamilyBeam:
    said = families.said[run]
    profile = assuming.settle(
        said.profile, f"{place}/profile", FamilyProfile.BOX, "beams are hollow boxes"
    )
    needs = families.needs_of(run)
    if profile is FamilyProfile.FLAT:
        return decide_flat(place, said, needs.widths, units, assuming)
    return _Family(place, said, needs, units, assuming).decided()


def _families(beams: BeamsSpec, depth: Depth, around: BeamSurroundings) -> BothFamilies:
    said = {
        RunName.LENGTH: beams.crosswise or BoxSpec(),
        RunName.WIDTH: lengthwise_as_meant(beams),
    }
    usual = DEFAULTS[around.units]
    return BothFamilies(
        said=said,
        outlines={run: outline_of(box, usual) for run, box in said.items()},
        alike=said[RunName.LENGTH] == said[RunName.WIDTH],
        equal=depth is Depth.EQUAL,
        room=around.room,
        grid=around.grid,
    )


def _note_taken_over(beams: BeamsSpec, assuming: Assuming) -> None:
    crosswise = beams.crosswise or BoxSpec()
    for name in taken_over(beams.lengthwise or BoxSpec(), crosswise):
        if (taken := getattr(crosswise, name)) is not None:
            assuming.note(f"/beams/lengthwise/{name}", taken, "as the crosswise beams")


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
        outline = outline_of(self.said, self._usual)
        self._note_outline(outline)
        sides = self._sides(outline)
        allowance = self._settle("allowance", ZERO, "the sides close on the backing without play")
        plain = self._plain_bottom(outline, sides, allowance)
        widest = max([plain, *self._widened_bottoms(outline, sides)])
        bottom = self._bottom(sides, widest, plain)
        return Box(
            sides=sides,
            bottom=bottom,
            backing=self.said.backing,
            bottom_joint=outline.joint,
            reveal=outline.reveal,
            overhang=outline.overhang,
            allowance=allowance,
            width=self._width(outline, sides, widest, plain),
            drop=self.said.drop,
        )

    def _settle(self, name: str, value: Length, reason: str) -> Length:
        said: Length | None = getattr(self.said, name)
        return self.assuming.settle(said, f"{self.place}/{name}", value, reason)

    def _note_outline(self, outline: BoxOutline) -> None:
        """Note what the outline assumes; an offset no other value of which is possible, is not."""
        under = bool(self.said.overhang)
        self.assuming.settle(
            self.said.bottom_joint,
            f"{self.place}/bottom_joint",
            outline.joint,
            "only a bottom under the sides overhangs" if under else "the bottom is set in between",
        )
        flush = "the bottom is flush with the sides"
        if outline.joint is BottomJoint.BETWEEN:
            self._settle("reveal", outline.reveal, "a shadow line hides the joint")
        if outline.joint is BottomJoint.UNDER and not self.said.overhang:
            self._settle("reveal", outline.reveal, flush)
        if outline.joint is BottomJoint.UNDER and not self.said.reveal:
            self._settle("overhang", outline.overhang, flush)

    def _sides(self, outline: BoxOutline) -> Stock:
        if self.said.sides is not None:
            return self.said.sides
        least, reason = self._least_side(outline)
        sides = self._piece(self.said.bottom or self._usual.sides, least)
        self.assuming.note(f"{self.place}/sides", sides, reason)
        return sides

    def _least_side(self, outline: BoxOutline) -> tuple[Length, str]:
        """The least width of side that will do [length], and what it is for."""
        choices = [(self._usual.sides.width, "a usual size")]
        if self.said.drop is not None:
            reason = "the narrowest stock that makes the drop that is given"
            choices = [(outline.side_for(self.said.drop), reason)]
        if self.needs.hidden:
            reason = "the narrowest stock that hides the deepest member"
            choices.append((outline.side_for(self.needs.hidden), reason))
        if self.needs.drop:
            reason = "the narrowest stock that makes all beams equally deep"
            choices.append((outline.side_for(self.needs.drop), reason))
        return max(choices, key=lambda choice: choice[0])

    def _plain_bottom(self, outline: BoxOutline, sides: Stock, allowance: Length) -> Length:
        """The bottom of the family's beams where nothing makes them wider [length]."""
        if self.said.width is not None:
            return outline.bottom_for(self.said.width, sides.thickness)
        if self.said.backing is not None:
            width = self.said.backing.width + sides.thickness * 2 + allowance
            return outline.bottom_for(width, sides.thickness)
        return self._usual.bottom.width

    def _widened_bottoms(self, outline: BoxOutline, sides: Stock) -> list[Length]:
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
            reason = "the narrowest stock that makes the widest casing or fixed beam"
        elif self.said.width is not None or self.said.backing is not None:
            reason = "the narrowest stock that makes the width"
        else:
            reason = "a usual size"
        self.assuming.note(f"{self.place}/bottom", bottom, reason)
        return bottom

    def _width(
        self, outline: BoxOutline, sides: Stock, widest: Length, plain: Length
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
