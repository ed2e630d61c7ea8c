"""Rules about the two families of beams and about panels."""

from collections.abc import Iterator

from lacunar.measure.length import ZERO
from lacunar.model.beams import BottomJoint
from lacunar.model.families import lengthwise_as_meant
from lacunar.model.faults import Fault
from lacunar.model.panel import Seat
from lacunar.model.room import RunName
from lacunar.model.rule_case import RuleCase
from lacunar.model.spec import BoxSpec

_ONLY_BOXES = ("sides", "backing", "bottom_joint", "allowance", "drop")


def _boxes(case: RuleCase, *names: str) -> Iterator[tuple[str, BoxSpec]]:
    """Each family that was described, if these names of it can be judged."""
    beams = case.spec.beams
    crosswise = [f"/beams/crosswise/{name}" for name in names]
    lengthwise = [f"/beams/lengthwise/{name}" for name in names]
    if beams.crosswise is not None and case.sound(*crosswise):
        yield "/beams/crosswise", beams.crosswise
    if beams.lengthwise is not None and case.sound(*crosswise, *lengthwise):
        yield "/beams/lengthwise", lengthwise_as_meant(beams)


def mitred_bottoms_have_no_reveal(case: RuleCase) -> Iterator[Fault]:
    """A mitred corner closes edge to edge: there is nothing for the bottom to be set back from."""
    for place, box in _boxes(case, "bottom_joint", "reveal"):
        if box.bottom_joint is BottomJoint.MITRED and (box.reveal or ZERO) > ZERO:
            yield Fault(
                code="reveal_on_mitred_bottom",
                pointer=f"{place}/reveal",
                message="A mitred bottom closes edge to edge with the sides and has no reveal.",
                remedy="Leave the reveal out, or put the bottom between or under the sides.",
                figures={"reveal": box.reveal or ZERO},
            )


def only_bottoms_under_the_sides_overhang(case: RuleCase) -> Iterator[Fault]:
    """A bottom can stand out past the sides only where it lies under them."""
    for place, box in _boxes(case, "bottom_joint", "overhang"):
        if box.flat or box.bottom_joint in (None, BottomJoint.UNDER):
            continue
        if (box.overhang or ZERO) > ZERO:
            yield Fault(
                code="overhang_without_under",
                pointer=f"{place}/overhang",
                message="Only a bottom under the sides can stand out past them.",
                remedy='Set bottom_joint to "under", or leave the overhang out.',
                figures={"overhang": box.overhang or ZERO},
            )


def bottoms_go_in_or_out(case: RuleCase) -> Iterator[Fault]:
    """A bottom is set in by a reveal or set out by an overhang, not both."""
    for place, box in _boxes(case, "reveal", "overhang"):
        if (box.reveal or ZERO) > ZERO and (box.overhang or ZERO) > ZERO:
            yield Fault(
                code="reveal_and_overhang",
                pointer=f"{place}/overhang",
                message="The bottom is to be set in by a reveal and out by an overhang at once.",
                remedy="Give one of the two.",
                figures={"reveal": box.reveal or ZERO, "overhang": box.overhang or ZERO},
            )


def mitred_boards_are_equally_thick(case: RuleCase) -> Iterator[Fault]:
    """Two boards meet in a mitre over their whole thickness only if that is the same."""
    for place, box in _boxes(case, "bottom_joint", "sides", "bottom"):
        if box.bottom_joint is not BottomJoint.MITRED or box.sides is None or box.bottom is None:
            continue
        if box.sides.thickness != box.bottom.thickness:
            yield Fault(
                code="mitred_thickness_differs",
                pointer=f"{place}/bottom",
                message="Sides and bottom that are mitred together differ in thickness.",
                remedy="Take stock of one thickness for both, or another bottom_joint.",
                figures={"sides": box.sides.thickness, "bottom": box.bottom.thickness},
            )


def width_is_said_once(case: RuleCase) -> Iterator[Fault]:
    """Backing decides a beam's width from the inside out; a width beside it is a second one."""
    for place, box in _boxes(case, "width", "backing"):
        if box.width is not None and box.backing is not None:
            yield Fault(
                code="width_given_twice",
                pointer=f"{place}/width",
                message="The backing decides the width, and another width is given beside it.",
                remedy="Leave out the width, or the backing.",
                figures={"width": box.width, "backing": box.backing.width},
            )


def beams_hang_above_the_floor(case: RuleCase) -> Iterator[Fault]:
    """A beam's drop is less than the height of the room."""
    height = case.spec.room.height
    if height is None or not case.sound("/room/height"):
        return
    for place, box in _boxes(case, "drop"):
        if box.drop is not None and box.drop >= height:
            yield Fault(
                code="beam_reaches_floor",
                pointer=f"{place}/drop",
                message="The beam hangs as low as the floor.",
                remedy="Give its drop from the finished ceiling, not its height from the floor.",
                figures={"drop": box.drop, "height": height},
            )


def sheets_name_their_short_edge_first(case: RuleCase) -> Iterator[Fault]:
    """A sheet's width is its short edge."""
    sheet = case.spec.panel.sheet if case.spec.panel else None
    if sheet is None or not case.sound("/panel/sheet"):
        return
    if sheet.width > sheet.length:
        yield Fault(
            code="sheet_edges_swapped",
            pointer="/panel/sheet",
            message="The sheet's width is more than its length.",
            remedy="Give the short edge as width and the long edge as length.",
            figures={"width": sheet.width, "length": sheet.length},
        )


def _said(case: RuleCase) -> Iterator[tuple[str, BoxSpec]]:
    """Each family as it was described itself, without what it takes over."""
    beams = case.spec.beams
    families = (("/beams/crosswise", beams.crosswise), ("/beams/lengthwise", beams.lengthwise))
    for place, said in families:
        if said is not None and case.sound(f"{place}/profile", "/beams/crosswise/profile"):
            yield place, said


def families_have_boards_of_their_profile(case: RuleCase) -> Iterator[Fault]:
    """A flat beam has no sides, joint, backing, play or drop of its own; a box no upper board."""
    flat_of = {
        "/beams/crosswise": (case.spec.beams.crosswise or BoxSpec()).flat,
        "/beams/lengthwise": lengthwise_as_meant(case.spec.beams).flat,
    }
    for place, said in _said(case):
        flat = flat_of[place]
        for name in _ONLY_BOXES if flat else ("upper_board",):
            if getattr(said, name) is not None and case.sound(f"{place}/{name}"):
                yield Fault(
                    code="not_of_this_profile",
                    pointer=f"{place}/{name}",
                    message=f"{'Flat' if flat else 'Box'} beams have no {name.replace('_', ' ')}"
                    " of their own.",
                    remedy=f"Leave {name} out, or set the family's profile to"
                    f' "{"box" if flat else "flat"}".',
                    figures={"profile": "flat" if flat else "box"},
                )


def edges_need_two_boards(case: RuleCase) -> Iterator[Fault]:
    """One flat board has nothing to be set in from or out past."""
    for place, box in _boxes(case, "profile", "upper_board", "reveal", "overhang"):
        for name, offset in (("reveal", box.reveal), ("overhang", box.overhang)):
            if box.flat and box.upper_board is None and offset:
                yield Fault(
                    code="edge_of_lone_board",
                    pointer=f"{place}/{name}",
                    message=f"A flat beam of one board has no {name}.",
                    remedy=f"Leave {name} out, or give an upper_board.",
                    figures={name: offset},
                )


def members_are_cased_by_boxes(case: RuleCase) -> Iterator[Fault]:
    """A flat board hides no member that hangs below the ceiling."""
    beams = case.spec.beams
    if not case.sound("/beams/crosswise/profile", "/beams/lengthwise/profile"):
        return
    flat = {
        RunName.LENGTH: (beams.crosswise or BoxSpec()).flat,
        RunName.WIDTH: lengthwise_as_meant(beams).flat,
    }
    for position, member in enumerate(case.spec.room.members):
        if member.on is not None and flat[member.on]:
            yield Fault(
                code="flat_beam_hides_no_member",
                pointer=f"/room/members/{position}/on",
                message="The member hangs below the ceiling, and the beams of its family are flat.",
                remedy='Set the profile of the beams that divide this run to "box".',
                figures={"on": str(member.on)},
            )


def seats_behind_sides_need_boxes(case: RuleCase) -> Iterator[Fault]:
    """A panel that goes up between backing and sides needs both."""
    beams, panel = case.spec.beams, case.spec.panel
    flat = (beams.crosswise or BoxSpec()).flat or lengthwise_as_meant(beams).flat
    if panel is None or panel.seat is not Seat.BETWEEN_BACKING or not case.sound("/panel/seat"):
        return
    if flat and case.sound("/beams/crosswise/profile", "/beams/lengthwise/profile"):
        yield Fault(
            code="seat_needs_backing",
            pointer="/panel/seat",
            message="Panels are to go up between backing and sides, and flat beams have neither.",
            remedy='Set the seat to "above_backing" or "between_sides".',
            figures={"seat": str(panel.seat)},
        )


BEAM_RULES = (
    families_have_boards_of_their_profile,
    edges_need_two_boards,
    members_are_cased_by_boxes,
    seats_behind_sides_need_boxes,
    mitred_bottoms_have_no_reveal,
    only_bottoms_under_the_sides_overhang,
    bottoms_go_in_or_out,
    mitred_boards_are_equally_thick,
    width_is_said_once,
    beams_hang_above_the_floor,
    sheets_name_their_short_edge_first,
)
