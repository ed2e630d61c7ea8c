"""Rules about the room and what hangs into it."""

from collections.abc import Iterator

from lacunar.measure.length import ZERO, Length
from lacunar.measure.units import Units
from lacunar.model.defaults import DEFAULTS
from lacunar.model.faults import Fault
from lacunar.model.room import END_WALL, START_WALL, WALLS, MeasuredTo, RunName
from lacunar.model.rule_case import RuleCase, missing
from lacunar.model.spec import MemberSpec


def room_has_its_three_sizes(case: RuleCase) -> Iterator[Fault]:
    """Length and width, or a survey, are all a small spec needs beside a height.

    None of them can be assumed. The height may be left to stations that tell it.
    """
    room = case.spec.room
    given = room.survey is not None or room.outline is not None
    surveyed = given or not case.sound("/room/survey", "/room/outline")
    for name, size in (("length", room.length), ("width", room.width)):
        if size is None and not surveyed and case.sound(f"/room/{name}"):
            yield missing(f"/room/{name}", f"The {name} of the room")
    told = room.height is not None or any(station.height for station in room.stations)
    if not told and case.sound("/room/height", "/room/stations"):
        yield Fault(
            code="height_missing",
            pointer="/room/height",
            message="The height of the room is not given, and cannot be assumed.",
            remedy="Give height, or stations that each have one.",
        )


def members_are_described(case: RuleCase) -> Iterator[Fault]:
    """A member has a run, a place, a width and a drop; none of them can be assumed."""
    for position, member in enumerate(case.spec.room.members):
        place = f"/room/members/{position}"
        for name in ("on", "center", "width", "drop"):
            if getattr(member, name) is None and case.sound(f"{place}/{name}"):
                yield missing(f"{place}/{name}", f"The member's {name}")


def members_lie_in_the_room(case: RuleCase) -> Iterator[Fault]:
    """A member runs wall to wall between the walls of the run it is placed on."""
    for position, member in enumerate(case.spec.room.members):
        place = f"/room/members/{position}"
        if case.sound(place, "/room/length", "/room/width"):
            yield from _member_outside(case, place, member)


def _member_outside(case: RuleCase, place: str, member: MemberSpec) -> Iterator[Fault]:
    room = case.spec.room
    span = room.width if member.on is RunName.WIDTH else room.length
    if member.on is None or member.center is None or member.width is None or span is None:
        return
    end = member.center if member.center_at_end is None else member.center_at_end
    near = min(member.center, end) - member.width / 2
    far = max(member.center, end) + member.width / 2
    if near < ZERO or far > span:
        yield Fault(
            code="member_outside_room",
            pointer=f"{place}/center",
            message=f"The member does not lie between the walls of the {member.on} run.",
            remedy="Measure its center from the datum, the lower left corner of the plan.",
            figures={"near": near, "far": far, "span": span},
        )


def members_hang_above_the_floor(case: RuleCase) -> Iterator[Fault]:
    """A member's drop is less than the height of the room."""
    height = case.spec.room.height
    for position, member in enumerate(case.spec.room.members):
        pointer = f"/room/members/{position}/drop"
        if height is None or member.drop is None or not case.sound(pointer, "/room/height"):
            continue
        if member.drop >= height:
            yield Fault(
                code="member_reaches_floor",
                pointer=pointer,
                message="The member hangs as low as the floor.",
                remedy="Give its drop from the finished ceiling, not its height from the floor.",
                figures={"drop": member.drop, "height": height},
            )


def casings_are_wider_than_their_members(case: RuleCase) -> Iterator[Fault]:
    """The width wished for a casing leaves room for the member and the air about it."""
    for position, member in enumerate(case.spec.room.members):
        place = f"/room/members/{position}"
        if member.cased_width is None or member.width is None or not case.sound(place):
            continue
        needed = member.width + (member.clearance or ZERO) * 2
        if member.cased_width <= needed:
            yield Fault(
                code="casing_too_narrow",
                pointer=f"{place}/cased_width",
                message="The casing is no wider than the member with the air on both sides.",
                remedy="Leave cased_width out to have the casing as wide as it must be.",
                figures={"cased_width": member.cased_width, "more_than": needed},
            )


def names_are_unique(case: RuleCase) -> Iterator[Fault]:
    """Members and fixed beams are known by their names on sheets and in cautions."""
    seen: set[str] = set()
    for pointer, name in _names(case):
        if name in seen and case.sound(pointer):
            yield Fault(
                code="label_doubled",
                pointer=pointer,
                message="Another member or fixed beam has the same name.",
                remedy="Give each its own name, or leave the names out.",
                figures={"name": name},
            )
        seen.add(name)


def _names(case: RuleCase) -> Iterator[tuple[str, str]]:
    for position, member in enumerate(case.spec.room.members):
        if member.name is not None:
            yield f"/room/members/{position}/name", member.name
    for run in RunName:
        for position, beam in enumerate(case.spec.grid.run(run).fixed_beams):
            if beam.name is not None:
                yield f"/grid/{run}/fixed_beams/{position}/name", beam.name


def members_start_before_they_end(case: RuleCase) -> Iterator[Fault]:
    """A member that ends short of the walls lies between them, and its start comes first."""
    room = case.spec.room
    for position, member in enumerate(room.members):
        place = f"/room/members/{position}"
        if member.on is None or not case.sound(place, "/room/length", "/room/width"):
            continue
        span = room.length if member.on is RunName.WIDTH else room.width
        near, far = _finishes(case, member.on.other)
        start = near if member.starts_at is None else member.starts_at
        end = member.ends_at
        if span is None or near <= start < (span - far if end is None else end) <= span - far:
            continue
        name = "starts_at" if member.starts_at is not None else "ends_at"
        yield Fault(
            code="member_extent_outside_room",
            pointer=f"{place}/{name}",
            message=f"The member's start and end do not lie in order along the {member.on.other}"
            " run.",
            remedy="Measure both from the datum, or leave out the one at a wall.",
            figures={"starts_at": start, "ends_at": span if end is None else end, "span": span},
        )


def _finishes(case: RuleCase, run: RunName) -> tuple[Length, Length]:
    """The finish of a run's two walls, said or usual, where places are measured from behind it."""
    room = case.spec.room
    if room.measured_to is not MeasuredTo.FRAMING or not case.sound("/room/wall_finish"):
        return ZERO, ZERO
    usual = DEFAULTS[case.spec.units or Units.INCH].wall_finish
    finishes = room.wall_finish or (usual,) * len(WALLS)
    near, far = (finishes[WALLS.index(wall[run])] for wall in (START_WALL, END_WALL))
    return near, far


ROOM_RULES = (
    members_start_before_they_end,
    room_has_its_three_sizes,
    members_are_described,
    members_lie_in_the_room,
    members_hang_above_the_floor,
    casings_are_wider_than_their_members,
    names_are_unique,
)
