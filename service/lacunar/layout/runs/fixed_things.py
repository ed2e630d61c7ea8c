"""Beams whose place is given: those that case a structural member, and those that line up."""

from collections.abc import Iterator
from dataclasses import dataclass, replace

from lacunar.layout.families import Family
from lacunar.layout.fault_gathering import refuse
from lacunar.layout.records import ElementKind
from lacunar.layout.runs.frame import RunFrame
from lacunar.measure.figure import LengthFigure, Rule, given
from lacunar.measure.length import ZERO, Length
from lacunar.model.ceiling import Ceiling
from lacunar.model.faults import Fault
from lacunar.model.grid import FixedBeam
from lacunar.model.room import Casing, Member

CASED_WIDTH = Rule(
    "width of a cased beam: as its family, or as the clad member, its skew, air, cleats and both"
    " sides need",
    "max(beam_width, member + 2 * (cladding + clearance + cleat + side) + skew)",
)
MEMBER_MIDDLE = Rule(
    "center a casing stands about: midway between the centers at the member's two ends",
    "(at_start + at_end) / 2",
)
SHIFT_LIMIT = Rule(
    "how far a casing may stand off its member: half the room inside it, less all that is beside",
    "(width - 2 * side - member - skew) / 2 - cladding - clearance - cleat",
)


@dataclass(frozen=True, slots=True)
class FixedThing:
    """A beam with a given place: its center or its member's, its finished width, and its play.

    `shift_limit` is how far the beam may stand to either side of `center`; nothing for a beam that
    lines up with something. `shifts` says whether it was asked to. `member_ends` are the centers of
    the member at its start and at its end, from the datum.
    """

    kind: ElementKind
    name: str
    pointer: str
    center: LengthFigure
    width: LengthFigure
    shift_limit: LengthFigure
    shifts: bool
    member: Member | None
    member_ends: tuple[LengthFigure, LengthFigure] | None = None


def fixed_things(ceiling: Ceiling, frame: RunFrame, family: Family) -> tuple[FixedThing, ...]:
    """Turn a run's members and fixed beams into beams with a place, in order from the datum.

    Raises SpecRefused where a width that was asked for is less than is needed.
    """
    faults: list[Fault] = []
    things: list[FixedThing] = []
    for position, measured in enumerate(ceiling.room.members):
        if measured.on is frame.name:
            pointer = f"/room/members/{position}"
            member = _as_in_frame(measured, frame)
            things.append(_cased(member, pointer, frame, family))
            faults.extend(_casing_too_narrow(member, pointer, family))
    for position, beam in enumerate(ceiling.grid.run(frame.name).fixed_beams):
        pointer = f"/grid/{frame.name}/fixed_beams/{position}"
        things.append(_lined_up(beam, pointer, frame, family))
        faults.extend(_fixed_too_narrow(beam, pointer, family))
    refuse(faults)
    return tuple(sorted(things, key=lambda thing: thing.center.value))


def _as_in_frame(member: Member, frame: RunFrame) -> Member:
    """The member with its center at its end told from where the start wall lies at its start.

    So that what it wanders by is towards the grid, not towards a wall that is not square to it.
    """
    if frame.before_start is None or frame.before_end is None:
        return member
    if frame.kept_to is not None and frame.kept_to[0] == member.name:
        return replace(member, center_at_end=member.center)
    leans = frame.before_end.value - frame.before_start.value
    return replace(member, center_at_end=member.center_at_end - leans)


def _cased(member: Member, pointer: str, frame: RunFrame, family: Family) -> FixedThing:
    side = family.box.sides.thickness
    width = _cased_width(member, family)
    limit = SHIFT_LIMIT.gives(
        (width.value - side * 2 - member.room_inside) / 2,
        width=width.value,
        side=side,
        **_beside(member),
    )
    ends = frame.place(member.center), frame.place(member.center_at_end)
    if frame.kept_to is not None and frame.kept_to[0] == member.name:
        ends = frame.kept_to[1], frame.kept_to[1]
    return FixedThing(
        kind=ElementKind.CASED_BEAM,
        name=member.name,
        pointer=pointer,
        center=_middle(member, ends),
        width=width,
        shift_limit=limit,
        shifts=member.casing is Casing.SHIFT_TO_EQUAL,
        member=member,
        member_ends=ends,
    )


def _middle(member: Member, ends: tuple[LengthFigure, LengthFigure]) -> LengthFigure:
    start, end = ends
    if not member.skew:
        return start
    return MEMBER_MIDDLE.gives(
        (start.value + end.value) / 2, at_start=start.value, at_end=end.value
    )


def _beside(member: Member) -> dict[str, Length]:
    """All that must find room between the sides of a casing, by name."""
    return {
        "member": member.width,
        "skew": member.skew,
        "cladding": member.cladding,
        "clearance": member.clearance,
        "cleat": member.cleat,
    }


def _needed(member: Member, family: Family) -> Length:
    return member.room_inside + family.box.sides.thickness * 2


def _cased_width(member: Member, family: Family) -> LengthFigure:
    if member.cased_width is not None:
        return given(member.cased_width)
    return CASED_WIDTH.gives(
        max(family.width.value, _needed(member, family)),
        beam_width=family.width.value,
        side=family.box.sides.thickness,
        **_beside(member),
    )


def _casing_too_narrow(member: Member, pointer: str, family: Family) -> Iterator[Fault]:
    needed = _needed(member, family)
    if member.cased_width is not None and member.cased_width < needed:
        yield Fault(
            code="casing_too_narrow",
            pointer=f"{pointer}/cased_width",
            message="The casing does not go round the member with what is on and beside it.",
            remedy="Leave cased_width out to have the casing as wide as it must be, or give at"
            " least the width needed.",
            figures={
                "cased_width": member.cased_width,
                "needed": needed,
                **_beside(member),
                "side": family.box.sides.thickness,
            },
        )


def _lined_up(beam: FixedBeam, pointer: str, frame: RunFrame, family: Family) -> FixedThing:
    return FixedThing(
        kind=ElementKind.FIXED_BEAM,
        name=beam.name,
        pointer=pointer,
        center=frame.place(beam.center),
        width=family.width if beam.width is None else given(beam.width),
        shift_limit=given(ZERO),
        shifts=False,
        member=None,
    )


def _fixed_too_narrow(beam: FixedBeam, pointer: str, family: Family) -> Iterator[Fault]:
    sides = ZERO if family.flat else family.box.sides.thickness * 2
    if beam.width is not None and beam.width <= sides:
        yield Fault(
            code="beam_too_narrow",
            pointer=f"{pointer}/width",
            message="The beam is no wider than its two sides together: it has no inside.",
            remedy="Make the beam wider, or leave its width out to have it as its family.",
            figures={"beam_width": beam.width, "more_than": sides},
        )
