"""The dimensions of a beam profile, each a sum over its finished width and drop."""

from dataclasses import dataclass
from typing import Literal

from lacunar.layout.families import Family
from lacunar.layout.panel_stack import PanelStack
from lacunar.measure.figure import LengthFigure, Rule
from lacunar.model.beams import BottomJoint, Box

ProfileKind = Literal["box", "flat", "cased", "wall_half", "wall_full", "soffit"]

INSIDE_TWO_SIDES = Rule("width inside a box: its width less both sides", "width - 2 * side")
INSIDE_ONE_SIDE = Rule("width inside a wall beam: its width less its side", "width - side")
BACKING_TWO_SIDES = Rule(
    "backing width: the beam less both sides and the play", "width - 2 * side - allowance"
)
BACKING_ONE_SIDE = Rule(
    "backing width at a wall: the beam less its side and the play", "width - side - allowance"
)
BOTTOM_UNDER_TWO_SIDES = Rule(
    "bottom under two sides: the beam plus overhangs, less reveals",
    "width + 2 * overhang - 2 * reveal",
)
BOTTOM_UNDER_ONE_SIDE = Rule(
    "bottom under one side: the beam plus the overhang, less the reveal",
    "width + overhang - reveal",
)
BOTTOM_MITRED = Rule("mitred bottom: as wide as the beam", "width")
OVERALL = Rule("width over all: the wider of the sides and the bottom", "max(width, bottom)")
SIDE_TO_EDGE = Rule(
    "side: from the ceiling, or the panel above it, to the lowest edge",
    "drop - panel_above_sides",
)
SIDE_TO_BOTTOM = Rule(
    "side: from the ceiling, or the panel above it, to the bottom board",
    "drop - bottom_thickness - panel_above_sides",
)
EXPOSED = Rule("side that is seen: less the panel between the sides", "side - panel_between_sides")
DEPTH_SET_UP = Rule(
    "depth inside a box with its bottom between the sides",
    "drop - reveal - bottom_thickness - panel_above_backing",
)
DEPTH = Rule("depth inside a box", "drop - bottom_thickness - panel_above_backing")
NET_DEPTH = Rule("net depth: what hangs below the panel", "drop - panel")
SOFFIT_SEEN = Rule("face of a soffit that is seen: below the panel", "drop - panel")
GIRTH = Rule(
    "painted girth: across the bottom and up each seen side, without reveals and overhangs",
    "width + sides * (drop - panel)",
)


@dataclass(frozen=True, slots=True)
class ProfileOrder:
    """What profile is wanted: its kind, its family, its finished width and its drop.

    A `partial` casing goes on as an empty box where its member ends.
    """

    kind: ProfileKind
    family: Family
    width: LengthFigure
    drop: LengthFigure
    partial: bool = False

    @property
    def box(self) -> Box:
        """The box it is built as."""
        return self.family.box

    @property
    def sides(self) -> int:
        """How many sides it has: one where it stands at a wall."""
        return 2 if self.kind in ("box", "flat", "cased") else 1

    @property
    def key(self) -> tuple[object, ...]:
        """Equal for profiles that are the same on the bench."""
        return self.kind, self.family.built, self.width.value, self.drop.value, self.partial


def inside_width(order: ProfileOrder) -> LengthFigure:
    """Between the inner faces of the sides, or from the wall to the side [length].

    Formula: W - 2 t; at a wall W - t.
    """
    width, side = order.width.value, order.box.sides.thickness
    rule = INSIDE_TWO_SIDES if order.sides > 1 else INSIDE_ONE_SIDE
    return rule.gives(width - side * order.sides, width=width, side=side)


def backing_width(order: ProfileOrder) -> LengthFigure:
    """Across the backing that locates the beam [length].

    Formula: W - 2 t - allowance; at a wall W - t - allowance (for a half beam W is half).
    """
    width, side, allowance = order.width.value, order.box.sides.thickness, order.box.allowance
    rule = BACKING_TWO_SIDES if order.sides > 1 else BACKING_ONE_SIDE
    return rule.gives(
        width - side * order.sides - allowance, width=width, side=side, allowance=allowance
    )


def bottom_width(order: ProfileOrder) -> LengthFigure:
    """Across the bottom board [length].

    Formula: between the sides, the width inside; under them W + overhangs - reveals; mitred W.
    """
    box, width = order.box, order.width.value
    if box.bottom_joint is BottomJoint.BETWEEN:
        return inside_width(order)
    if box.bottom_joint is BottomJoint.MITRED:
        return BOTTOM_MITRED.gives(width, width=width)
    rule = BOTTOM_UNDER_TWO_SIDES if order.sides > 1 else BOTTOM_UNDER_ONE_SIDE
    return rule.gives(
        width + (box.overhang - box.reveal) * order.sides,
        width=width,
        overhang=box.overhang,
        reveal=box.reveal,
    )


def overall_width(order: ProfileOrder) -> LengthFigure:
    """Between the outermost edges [length]: max(W, bottom)."""
    width, bottom = order.width.value, bottom_width(order).value
    if order.box.bottom_joint is not BottomJoint.UNDER:
        return order.width
    return OVERALL.gives(max(width, bottom), width=width, bottom=bottom)


def side_width(order: ProfileOrder, stack: PanelStack) -> LengthFigure:
    """From the upper to the lower edge of a side [length].

    Formula: the drop, less a bottom under it, less a panel above it.
    """
    drop, above = order.drop.value, stack.above_sides
    if order.box.bottom_joint is not BottomJoint.UNDER:
        return SIDE_TO_EDGE.gives(drop - above, drop=drop, panel_above_sides=above)
    thickness = order.box.bottom.thickness
    return SIDE_TO_BOTTOM.gives(
        drop - thickness - above, drop=drop, bottom_thickness=thickness, panel_above_sides=above
    )


def exposed_side(order: ProfileOrder, stack: PanelStack) -> LengthFigure:
    """What is seen of a side, or of a soffit's face, from inside the coffer [length]."""
    if order.kind == "soffit":
        drop, panel = order.drop.value, stack.thickness
        return SOFFIT_SEEN.gives(drop - panel, drop=drop, panel=panel)
    side, between = side_width(order, stack).value, stack.between_sides
    return EXPOSED.gives(side - between, side=side, panel_between_sides=between)


def net_depth(order: ProfileOrder, stack: PanelStack) -> LengthFigure:
    """What hangs below the panel, or below the existing ceiling where there is none [length]."""
    drop, panel = order.drop.value, stack.thickness
    return NET_DEPTH.gives(drop - panel, drop=drop, panel=panel)


def inside_depth(order: ProfileOrder, stack: PanelStack) -> LengthFigure:
    """From what the backing is fixed to down to the bottom board [length].

    Formula: drop - bottom thickness - panel above the backing; less the reveal where the bottom is
    between the sides.
    """
    box, drop = order.box, order.drop.value
    thickness, above = box.bottom.thickness, stack.above_backing
    if box.bottom_joint is not BottomJoint.BETWEEN:
        return DEPTH.gives(
            drop - thickness - above,
            drop=drop,
            bottom_thickness=thickness,
            panel_above_backing=above,
        )
    return DEPTH_SET_UP.gives(
        drop - box.reveal - thickness - above,
        drop=drop,
        reveal=box.reveal,
        bottom_thickness=thickness,
        panel_above_backing=above,
    )


def girth(order: ProfileOrder, stack: PanelStack) -> LengthFigure:
    """The painted surface across the beam [length]: W + sides · (drop - panel)."""
    width, drop, panel = order.width.value, order.drop.value, stack.thickness
    return GIRTH.gives(
        width + (drop - panel) * order.sides,
        width=width,
        sides=order.sides,
        drop=drop,
        panel=panel,
    )
