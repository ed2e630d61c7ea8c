"""Flat beams: one or two boards fixed straight through to the joists, with no inside."""

from collections.abc import Iterator

from lacunar.layout.beams.profile_sizes import ProfileOrder, exposed_side, girth, net_depth
from lacunar.layout.beams.stock_fit import PartStock, stock_faults
from lacunar.layout.fault_gathering import refuse
from lacunar.layout.panel_stack import PanelStack
from lacunar.layout.records import BeamProfile, ProfilePart
from lacunar.measure.figure import LengthFigure, Rule, given
from lacunar.measure.length import ZERO
from lacunar.model.beams import FamilyProfile, Flat
from lacunar.model.faults import Fault

FACE_ALONE = Rule("one board: as wide as the beam", "width")
FACE_OF_TWO = Rule(
    "face board: the beam less a reveal at each edge that is seen", "width - edges * reveal"
)
UPPER_BOARD = Rule(
    "upper board: the beam less an overhang at each edge that is seen", "width - edges * overhang"
)
EDGE_SEEN = Rule("edge that is seen: below the panel", "drop - panel")


def build_flat(order: ProfileOrder, flat: Flat, stack: PanelStack) -> BeamProfile:
    """Turn a wanted flat profile into one with every board sized and every dimension with its sum.

    Formula: the face board is W - edges · reveal, an upper board W - edges · overhang, where a beam
    has two edges and one at a wall has one; drop as its boards and a panel above them give. Raises
    SpecRefused where nothing is left of a board or of its edge, or stock cannot make it. The id and
    the beams that use it are filled in later.
    """
    soffit = order.kind == "soffit"
    parts = () if soffit else _parts(order, flat)
    seen = EDGE_SEEN.gives(
        order.drop.value - stack.thickness, drop=order.drop.value, panel=stack.thickness
    )
    refuse(list(_edge_faults(order, seen, stack)))
    return BeamProfile(
        id="",
        kind=order.kind,
        profile=FamilyProfile.FLAT,
        sides=order.sides,
        bottom_joint=None,
        finished_width=order.width,
        overall_width=order.width,
        drop=order.drop,
        net_depth=net_depth(order, stack),
        exposed_side=exposed_side(order, stack) if soffit else seen,
        inside_width=None,
        inside_depth=None,
        girth=girth(order, stack),
        reveal=ZERO if soffit else flat.reveal,
        overhang=ZERO if soffit else flat.overhang,
        parts=parts,
        used_by=(),
    )


def _parts(order: ProfileOrder, flat: Flat) -> tuple[ProfilePart, ...]:
    """The face board, and the upper board where there is one, from stock that can make them."""
    refuse(list(_board_faults(order, flat)))
    pointer = order.family.pointer
    plain = order.kind == "wall_half" or order.width.value == order.family.width.value
    width = _face(order, flat)
    face = PartStock("bottom", f"{pointer}/bottom", flat.bottom, width.value, not plain)
    stocks = [face]
    if flat.upper_board is not None:
        needed = _upper(order, flat).value
        place = f"{pointer}/upper_board"
        stocks.append(PartStock("upper board", place, flat.upper_board, needed, not plain))
    refuse([fault for stock in stocks for fault in stock_faults(stock)])
    taken = face.taken
    parts = [ProfilePart("bottom", given(taken.thickness), width, taken, 1)]
    for stock in stocks[1:]:
        upper, thickness = stock.taken, given(stock.taken.thickness)
        parts.append(ProfilePart("upper_board", thickness, _upper(order, flat), upper, 1))
    return tuple(parts)


def _face(order: ProfileOrder, flat: Flat) -> LengthFigure:
    width, edges = order.width.value, order.sides
    if flat.upper_board is None:
        return FACE_ALONE.gives(width, width=width)
    return FACE_OF_TWO.gives(
        width - flat.reveal * edges, width=width, edges=edges, reveal=flat.reveal
    )


def _upper(order: ProfileOrder, flat: Flat) -> LengthFigure:
    width, edges = order.width.value, order.sides
    return UPPER_BOARD.gives(
        width - flat.overhang * edges, width=width, edges=edges, overhang=flat.overhang
    )


def _board_faults(order: ProfileOrder, flat: Flat) -> Iterator[Fault]:
    """The fault of edges that take up a whole board."""
    set_back = max(flat.reveal, flat.overhang)
    if flat.upper_board is not None and set_back * order.sides >= order.width.value:
        place = "reveal" if flat.reveal else "overhang"
        yield Fault(
            code="no_board_between_edges",
            pointer=f"{order.family.pointer}/{place}",
            message="The narrower board of the flat beams is set back until nothing is left of it.",
            remedy="Ask for less reveal or overhang, or for wider beams.",
            figures={place: set_back, "beam_width": order.width.value},
        )


def _edge_faults(order: ProfileOrder, seen: LengthFigure, stack: PanelStack) -> Iterator[Fault]:
    """The fault of a panel that is as thick as the flat beams it lies between."""
    if seen.value <= ZERO:
        yield Fault(
            code="panel_hides_flat_beams",
            pointer="/panel/thickness",
            message="The panels between the flat beams are as thick as these: no edge is seen.",
            remedy="Take thinner panels, an upper board over the face board, or set the seat to"
            ' "above_backing", so that the beams are fixed over the panels.',
            figures={"panel": stack.thickness, "drop": order.drop.value},
        )
