"""Builds beam profiles: from a finished width and a drop to every board of the box."""

from collections.abc import Iterator

from lacunar.layout.beams.flat_profiles import build_flat
from lacunar.layout.beams.profile_faults import shape_faults
from lacunar.layout.beams.profile_sizes import (
    ProfileOrder,
    backing_width,
    bottom_width,
    exposed_side,
    girth,
    inside_depth,
    inside_width,
    net_depth,
    overall_width,
    side_width,
)
from lacunar.layout.beams.stock_fit import PartStock, stock_faults
from lacunar.layout.fault_gathering import refuse
from lacunar.layout.panel_stack import PanelStack
from lacunar.layout.records import BeamProfile, ProfilePart
from lacunar.measure.figure import given
from lacunar.measure.length import ZERO
from lacunar.model.beams import FamilyProfile


def build_profile(order: ProfileOrder, stack: PanelStack) -> BeamProfile:
    """Turn a wanted profile into one with every board sized and every dimension with its sum.

    Raises SpecRefused where the box has no inside, or stock cannot make a part. The id and the
    beams that use it are filled in later. A soffit is a plain block: the spec says how wide it is
    and no more.
    """
    soffit = order.kind == "soffit"
    if order.family.flat is not None:
        return build_flat(order, order.family.flat, stack)
    refuse([] if soffit else list(shape_faults(order, stack)))
    return BeamProfile(
        id="",
        kind=order.kind,
        profile=FamilyProfile.BOX,
        sides=order.sides,
        bottom_joint=order.box.bottom_joint,
        finished_width=order.width,
        overall_width=order.width if soffit else overall_width(order),
        drop=order.drop,
        net_depth=net_depth(order, stack),
        exposed_side=exposed_side(order, stack),
        inside_width=order.width if soffit else inside_width(order),
        inside_depth=order.drop if soffit else inside_depth(order, stack),
        girth=girth(order, stack),
        reveal=ZERO if soffit else order.box.reveal,
        overhang=ZERO if soffit else order.box.overhang,
        parts=() if soffit else _parts(order, stack),
        used_by=(),
    )


def _parts(order: ProfileOrder, stack: PanelStack) -> tuple[ProfilePart, ...]:
    """The boards, from stock that can make them. A cased beam has its member for a backing.

    Where its member ends, a casing is an empty box on backing of its own.
    """
    box, pointer = order.box, order.family.pointer
    own_width = order.width.value == order.family.width.value
    side, bottom = side_width(order, stack), bottom_width(order)
    wider = order.kind in ("cased", "wall_full") or not (own_width or order.kind == "wall_half")
    stocks = [
        PartStock(
            "side", f"{pointer}/sides", box.sides, side.value + stack.rise, order.kind == "cased"
        ),
        PartStock("bottom", f"{pointer}/bottom", box.bottom, bottom.value, wider),
    ]
    if box.backing is not None and (order.kind != "cased" or order.partial):
        width = backing_width(order).value
        stocks.append(PartStock("backing", f"{pointer}/backing", box.backing, width, wider))
    refuse([fault for stock in stocks for fault in stock_faults(stock)])
    thicknesses = [given(stock.stock.thickness) for stock in stocks]
    return (
        ProfilePart("side", thicknesses[0], side, stocks[0].taken, order.sides),
        ProfilePart("bottom", thicknesses[1], bottom, stocks[1].taken, 1),
        *_backing(order, stack, stocks[2:]),
    )


def _backing(
    order: ProfileOrder, stack: PanelStack, stocks: list[PartStock]
) -> Iterator[ProfilePart]:
    """The backing laid flat, or blocks as high as the inside where no stock for it is named."""
    if order.kind == "cased" and not order.partial:
        return
    if stocks:
        taken = stocks[0].taken
        yield ProfilePart("backing", given(taken.thickness), backing_width(order), taken, 1)
    else:
        yield ProfilePart("backing", inside_depth(order, stack), backing_width(order), None, 1)
