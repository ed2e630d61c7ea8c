"""What one family of beams takes over from the other, and what each must be able to make."""

from collections.abc import Mapping
from dataclasses import dataclass, replace

from lacunar.measure.length import ZERO, Length
from lacunar.model.beams import BottomJoint
from lacunar.model.box_outline import BoxOutline
from lacunar.model.grid import Grid
from lacunar.model.room import Member, Room, RunName
from lacunar.model.spec import BeamsSpec, BoxSpec

# What is taken over is taken over together: a joint with its reveal and overhang, a size with the
# stock that makes it. Half of one family's detail beside half of the other's would be neither.
EDGES = ("bottom_joint", "reveal", "overhang")
BOARDS = ("sides", "bottom", "upper_board", "backing", "width", "drop")
TAKEN_TOGETHER = (("profile",), EDGES, BOARDS, ("allowance",))


@dataclass(frozen=True, slots=True)
class FamilyNeeds:
    """What the stock assumed for one family must be able to make.

    `hidden` is the drop its members need, and `drop` that of the other family, where both are to be
    equal (zero: none); `insides` are the inside widths members need; `widths` the finished widths
    given for casings and fixed beams.
    """

    hidden: Length
    drop: Length
    insides: tuple[Length, ...]
    widths: tuple[Length, ...]


def lengthwise_as_meant(beams: BeamsSpec) -> BoxSpec:
    """The lengthwise family with what it leaves open taken from the crosswise, group by group."""
    crosswise = beams.crosswise or BoxSpec()
    if beams.lengthwise is None:
        return crosswise
    return replace(
        beams.lengthwise,
        **{name: getattr(crosswise, name) for name in taken_over(beams.lengthwise, crosswise)},
    )


def taken_over(box: BoxSpec, other: BoxSpec) -> tuple[str, ...]:
    """The fields of a family that it takes from the other one.

    None where it is told to be built in another way: boards of a box make no flat beam. A flat beam
    told as one board alone has no edges to take over.
    """
    if box.profile is not None and box.flat is not other.flat:
        return ()
    groups = [
        group for group in TAKEN_TOGETHER if all(getattr(box, name) is None for name in group)
    ]
    flat = box.flat or (box.profile is None and other.flat)
    if flat and BOARDS not in groups and box.upper_board is None:
        groups = [group for group in groups if group is not EDGES]
    return tuple(name for group in groups for name in group)


def drop_as_stated(said: BoxSpec, outline: BoxOutline) -> Length:
    """The drop a family is given or its sides give [length]; zero where neither is said.

    Formula: the width of the side, plus the thickness of a bottom that lies under it.
    """
    if said.drop is not None:
        return said.drop
    if said.sides is None:
        return ZERO
    below = outline.bottom_thickness if outline.joint is BottomJoint.UNDER else ZERO
    return said.sides.width + below


@dataclass(frozen=True, slots=True)
class BothFamilies:
    """What both families say, whether they are equally deep, and what they are built about."""

    said: Mapping[RunName, BoxSpec]
    outlines: Mapping[RunName, BoxOutline]
    alike: bool
    equal: bool
    room: Room
    grid: Grid

    def needs_of(self, run: RunName) -> FamilyNeeds:
        """What the family that divides a run must be able to make.

        That is what stands in its own run; and where both families are alike, or equally deep, what
        stands in the other run too.
        """
        runs = tuple(RunName) if self.alike else (run,)
        members = [member for member in self.room.members if member.on in runs]
        deep = self.room.members if self.equal else members
        fixed = [beam for name in runs for beam in self.grid.run(name).fixed_beams]
        other = drop_as_stated(self.said[run.other], self.outlines[run.other])
        return FamilyNeeds(
            hidden=max((self._drop_about(member) for member in deep), default=ZERO),
            drop=other if self.equal else ZERO,
            insides=tuple(member.room_inside for member in members if not member.cased_width),
            widths=(
                *(member.cased_width for member in members if member.cased_width),
                *(beam.width for beam in fixed if beam.width),
            ),
        )

    def _drop_about(self, member: Member) -> Length:
        depth = member.deepest + member.cladding + member.clearance
        return self.outlines[member.on].drop_about(depth)
