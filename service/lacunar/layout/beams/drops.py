"""How deep the beams hang below the finished ceiling."""

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass

from lacunar.layout.families import Family
from lacunar.layout.fault_gathering import refuse
from lacunar.layout.panel_stack import PanelStack
from lacunar.layout.runs.fixed_things import FixedThing
from lacunar.measure.figure import LengthFigure, Rule, given
from lacunar.measure.length import ZERO
from lacunar.model.beams import BottomJoint, Depth, Flat
from lacunar.model.faults import Fault
from lacunar.model.room import Member, RunName

SIDE_GIVES = Rule("drop as the side boards give", "side + panel_above_sides")
SIDE_AND_BOTTOM_GIVE = Rule(
    "drop as the side boards and the bottom under them give",
    "side + bottom_thickness + panel_above_sides",
)
SIDE_GIVES_UNDER_RISE = Rule(
    "drop as the side boards give where the ceiling is highest", "side + panel_above_sides - rise"
)
SIDE_AND_BOTTOM_GIVE_UNDER_RISE = Rule(
    "drop as the side boards and the bottom under them give where the ceiling is highest",
    "side + bottom_thickness + panel_above_sides - rise",
)
MEMBER_NEEDS_BETWEEN = Rule(
    "drop that a member needs inside: its own at its lower end, its cladding, the clearance, the"
    " bottom and its reveal",
    "max(member_drop, member_drop_at_end) + cladding + clearance + bottom_thickness + reveal",
)
MEMBER_NEEDS = Rule(
    "drop that a member needs inside: its own at its lower end, its cladding, the clearance and the"
    " bottom",
    "max(member_drop, member_drop_at_end) + cladding + clearance + bottom_thickness",
)
FLAT_GIVES = Rule("drop of a flat beam: its one board", "bottom_thickness + panel_above")
FLAT_OF_TWO_GIVES = Rule(
    "drop of a flat beam: both its boards",
    "upper_board_thickness + bottom_thickness + panel_above",
)
_UNDER_RISE = {
    SIDE_GIVES: SIDE_GIVES_UNDER_RISE,
    SIDE_AND_BOTTOM_GIVE: SIDE_AND_BOTTOM_GIVE_UNDER_RISE,
}


@dataclass(frozen=True, slots=True)
class Drops:
    """The drop of each family, and of each cased beam by the pointer of its member."""

    families: Mapping[RunName, LengthFigure]
    casings: Mapping[str, LengthFigure]


@dataclass(frozen=True, slots=True)
class DropTask:
    """The families that have beams, the cased beams in each run, and the panel above."""

    depth: Depth
    families: Sequence[Family]
    casings: Mapping[RunName, Sequence[FixedThing]]
    stack: PanelStack


def drops(task: DropTask) -> Drops:
    """Turn what is asked for, what members need and what boards give into the drop of every beam.

    A family's own drop is the one asked for, else what its side boards give unripped, where the
    ceiling is highest. Stepped depth: each family its own; a cased beam its family's, or deeper if
    its member needs it. Equal depth: all take the deepest drop asked for or needed by a member; if
    none is asked for, the shallower of what the two families' boards give, so that the deeper
    boards are ripped to it.

    Raises SpecRefused where equal depth is asked of flat beams that are not as deep as the others.
    """
    own = {family.run: _own_drop(family, task.stack) for family in task.families}
    needs = {
        thing.pointer: _member_needs(family, thing.member)
        for family in task.families
        for thing in task.casings[family.run]
        if thing.member is not None
    }
    if task.depth is Depth.STEPPED:
        return _stepped(task, own, needs)
    if not own:
        return Drops({}, {})
    equal = _deepest(_asked_or_given(task, own), *needs.values())
    refuse(list(_flats_too_shallow(task, own, equal)))
    return Drops(dict.fromkeys(own, equal), dict.fromkeys(needs, equal))


def _flats_too_shallow(
    task: DropTask, own: Mapping[RunName, LengthFigure], equal: LengthFigure
) -> Iterator[Fault]:
    for family in task.families:
        drop = own[family.run].value
        if family.flat is not None and drop != equal.value:
            yield Fault(
                code="flat_beams_unlike_depth",
                pointer="/beams/depth",
                message="Flat beams are as deep as their boards, and the others are deeper.",
                remedy='Set depth to "stepped", or take boards that come to the same depth.',
                figures={"flat_drop": drop, "deepest": equal.value},
            )
            return


def _deepest(*figures: LengthFigure) -> LengthFigure:
    """The figure that decides, with its own reason; of equal ones the first."""
    return max(figures, key=lambda figure: figure.value)


def _own_drop(family: Family, stack: PanelStack) -> LengthFigure:
    if family.flat is not None:
        return _flat_drop(family.flat, stack)
    box, above = family.box, stack.above_sides
    if box.drop is not None:
        return given(box.drop)
    operands, rule = {"side": box.sides.width, "panel_above_sides": above}, SIDE_GIVES
    if box.bottom_joint is BottomJoint.UNDER:
        thickness = box.bottom.thickness
        operands = {
            "side": box.sides.width,
            "bottom_thickness": thickness,
            "panel_above_sides": above,
        }
        rule = SIDE_AND_BOTTOM_GIVE
    gives = sum(operands.values(), ZERO)
    if not stack.rise:
        return rule.gives(gives, **operands)
    return _UNDER_RISE[rule].gives(gives - stack.rise, **operands, rise=stack.rise)


def _flat_drop(flat: Flat, stack: PanelStack) -> LengthFigure:
    drop, above = flat.thickness + stack.above_sides, stack.above_sides
    if flat.upper_board is None:
        return FLAT_GIVES.gives(drop, bottom_thickness=flat.bottom.thickness, panel_above=above)
    return FLAT_OF_TWO_GIVES.gives(
        drop,
        upper_board_thickness=flat.upper_board.thickness,
        bottom_thickness=flat.bottom.thickness,
        panel_above=above,
    )


def _member_needs(family: Family, member: Member) -> LengthFigure:
    box = family.box
    below = member.deepest + member.cladding + member.clearance + box.bottom.thickness
    operands = {
        "member_drop": member.drop,
        "member_drop_at_end": member.drop_at_end,
        "cladding": member.cladding,
        "clearance": member.clearance,
        "bottom_thickness": box.bottom.thickness,
    }
    if box.bottom_joint is BottomJoint.BETWEEN:
        return MEMBER_NEEDS_BETWEEN.gives(below + box.reveal, **operands, reveal=box.reveal)
    return MEMBER_NEEDS.gives(below, **operands)


def _stepped(
    task: DropTask, own: Mapping[RunName, LengthFigure], needs: Mapping[str, LengthFigure]
) -> Drops:
    casings = {
        thing.pointer: _deepest(own[family.run], needs[thing.pointer])
        for family in task.families
        for thing in task.casings[family.run]
        if thing.pointer in needs
    }
    return Drops(own, casings)


def _asked_or_given(task: DropTask, own: Mapping[RunName, LengthFigure]) -> LengthFigure:
    asked = [
        own[family.run] for family in task.families if family.flat or family.box.drop is not None
    ]
    if asked:
        return _deepest(*asked)
    return min(own.values(), key=lambda figure: figure.value)
