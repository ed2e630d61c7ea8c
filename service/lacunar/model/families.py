"""What one family of beams takes over from the other, and what each must be able to make."""

from dataclasses import dataclass, replace

from lacunar.measure.length import ZERO, Length
from lacunar.model.beams import BottomJoint, Box, Depth
from lacunar.model.grid import Grid
from lacunar.model.room import Room, RunName
from lacunar.model.spec import BeamsSpec, BoxSpec

# What is taken over is taken over together: a joint with its reveal and overhang, a size with the
# stock that makes it. Half of one family's detail beside half of the other's would be neither.
DETAIL = ("bottom_joint", "reveal", "overhang")
SIZE = ("sides", "bottom", "backing", "width", "drop")
TAKEN_TOGETHER = (DETAIL, SIZE, ("allowance",))


@dataclass(frozen=True, slots=True)
class FamilyNeeds:
    """What the stock assumed for one family must be able to make.

    `depth` is the greatest depth a member needs inside the box (zero: none); `drop` the drop of the
    other family, where both are to be equal (zero: not known); `insides` the inside widths members
    need; `widths` the finished widths given for casings and fixed beams.
    """

    depth: Length
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
        **{name: getattr(crosswise, name) for name in taken_over(beams.lengthwise)},
    )


def taken_over(box: BoxSpec) -> tuple[str, ...]:
    """The fields of a family that it takes from the other one."""
    return tuple(name for group in TAKEN_TOGETHER if not says_any(box, group) for name in group)


def says_any(box: BoxSpec, group: tuple[str, ...]) -> bool:
    """Whether a family says anything of a group of fields itself."""
    return any(getattr(box, name) is not None for name in group)


def drop_as_stated(box: BoxSpec | Box) -> Length:
    """The drop a family is given or its sides give; zero where neither is known.

    Formula: the width of the side, plus the thickness of a bottom that lies under it.
    """
    if box.drop is not None:
        return box.drop
    if box.sides is None:
        return ZERO
    if box.bottom_joint is not BottomJoint.UNDER:
        return box.sides.width
    return box.sides.width + (box.bottom or box.sides).thickness


def needs_of(
    run: RunName, beams: BeamsSpec, other_drop: Length, room: Room, grid: Grid
) -> FamilyNeeds:
    """What the family that divides `run` must be able to make.

    That is what stands in its own run; and where it is the pattern for the other family, or all
    beams are equally deep, what stands in the other run too. `other_drop` [length] is the drop the
    other family states.
    """
    equal = beams.depth is not Depth.STEPPED
    alone = beams.lengthwise is not None and says_any(beams.lengthwise, SIZE)
    runs = (run,) if alone else tuple(RunName)
    members = [member for member in room.members if member.on in runs]
    deep = room.members if equal else members
    fixed = [beam for name in runs for beam in grid.run(name).fixed_beams]
    return FamilyNeeds(
        depth=max((member.drop + member.clearance for member in deep), default=ZERO),
        drop=other_drop if equal else ZERO,
        insides=tuple(
            member.width + member.clearance * 2 for member in members if not member.cased_width
        ),
        widths=(
            *(member.cased_width for member in members if member.cased_width),
            *(beam.width for beam in fixed if beam.width),
        ),
    )
