"""How deep the beams hang below the finished ceiling."""

from collections.abc import Mapping, Sequence
from dataclasses import dataclass

from lacunar.layout.families import Family
from lacunar.layout.panel_stack import PanelStack
from lacunar.layout.runs.fixed_things import FixedThing
from lacunar.measure.figure import LengthFigure, Rule, given
from lacunar.measure.length import ZERO
from lacunar.model.beams import BottomJoint, Depth
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
    "drop that a member needs inside: its own, the clearance, the bottom and its reveal",
    "member_drop + clearance + bottom_thickness + reveal",
)
MEMBER_NEEDS = Rule(
    "drop that a member needs inside: its own, the clearance and the bottom",
    "member_drop + clearance + bottom_thickness",
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
    ceiling is highest. Stepped
    depth: each family its own; a cased beam its family's, or deeper if its member needs it. Equal
    depth: all take the deepest drop asked for or needed by a member; if none is asked for, the
    shallower of what the two families' boards give, so that the deeper boards are ripped to it.
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
    return Drops(dict.fromkeys(own, equal), dict.fromkeys(needs, equal))


def _deepest(*figures: LengthFigure) -> LengthFigure:
    """The figure that decides, with its own reason; of equal ones the first."""
    return max(figures, key=lambda figure: figure.value)


def _own_drop(family: Family, stack: PanelStack) -> LengthFigure:
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


def _member_needs(family: Family, member: Member) -> LengthFigure:
    box = family.box
    below = member.drop + member.clearance + box.bottom.thickness
    operands = {
        "member_drop": member.drop,
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
    asked = [own[family.run] for family in task.families if family.box.drop is not None]
    if asked:
        return _deepest(*asked)
    return min(own.values(), key=lambda figure: figure.value)
