"""What keeps a beam profile from being a box at all."""

from collections.abc import Iterator

from lacunar.layout.beams.profile_sizes import (
    ProfileOrder,
    backing_width,
    bottom_width,
    exposed_side,
    inside_depth,
    inside_width,
    side_width,
)
from lacunar.layout.panel_stack import PanelStack
from lacunar.measure.length import ZERO
from lacunar.model.beams import BottomJoint
from lacunar.model.faults import Fault


def drop_pointer(order: ProfileOrder) -> str:
    """Where in the spec a profile's drop comes from."""
    place = "sides" if order.box.drop is None else "drop"
    return f"{order.family.pointer}/{place}"


def shape_faults(order: ProfileOrder, stack: PanelStack) -> Iterator[Fault]:
    """Faults of a profile whose boards leave no inside, no backing, or do not meet."""
    depth = inside_depth(order, stack).value
    if min(depth, side_width(order, stack).value, exposed_side(order, stack).value) <= ZERO:
        yield Fault(
            code="beam_too_shallow",
            pointer=drop_pointer(order),
            message="The bottom board, its reveal and the panel take up the whole drop.",
            remedy="Make the beam deeper, or its reveal, bottom or panel thinner.",
            figures={"drop": order.drop.value, "left_inside": depth},
        )
        return
    yield from _bottom_faults(order)
    if order.kind != "cased" or order.partial:
        yield from _backing_faults(order, stack)


def _bottom_faults(order: ProfileOrder) -> Iterator[Fault]:
    bottom, inside = bottom_width(order).value, inside_width(order).value
    if order.box.bottom_joint is BottomJoint.UNDER and bottom <= inside:
        yield Fault(
            code="reveal_too_large",
            pointer=f"{order.family.pointer}/reveal",
            message="The bottom under the sides is set in past their inner faces.",
            remedy="Give a reveal of less than the thickness of the sides.",
            figures={"reveal": order.box.reveal, "side": order.box.sides.thickness},
        )


def _backing_faults(order: ProfileOrder, stack: PanelStack) -> Iterator[Fault]:
    box, pointer = order.box, order.family.pointer
    width, depth = backing_width(order).value, inside_depth(order, stack).value
    if width <= ZERO:
        yield Fault(
            code="no_room_for_backing",
            pointer=f"{pointer}/allowance",
            message="The play between backing and sides takes up the whole inside of the beam.",
            remedy="Give less allowance, a wider beam, or thinner sides.",
            figures={
                "allowance": box.allowance,
                "less_than": inside_width(order).value,
                "beam_width": order.width.value,
            },
        )
    if box.backing is not None and box.backing.thickness > depth:
        yield Fault(
            code="backing_too_thick",
            pointer=f"{pointer}/backing",
            message="The backing, laid flat, is thicker than the inside of the beam is deep.",
            remedy="Take thinner backing, or make the beam deeper.",
            figures={"backing": box.backing.thickness, "inside_depth": depth},
        )
