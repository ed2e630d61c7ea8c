"""Rules about a room's outline: that it is one kind of outline, and goes round."""

from collections.abc import Iterator

from lacunar.model.boards import BoardRun
from lacunar.model.faults import Fault
from lacunar.model.outline import OutlineSpec
from lacunar.model.rule_case import RuleCase, missing

_OUTLINE = "/room/outline"
FEWEST = 3


def outlines_are_of_one_kind(case: RuleCase) -> Iterator[Fault]:
    """Sides, or points; at least three of them, and every side with its length."""
    outline = case.spec.room.outline
    if outline is None or not case.sound(_OUTLINE):
        return
    if outline.sides is None and outline.points is None:
        yield missing(f"{_OUTLINE}/sides", "The sides of the room, or its corners,")
        return
    if outline.sides is not None and outline.points is not None:
        yield Fault(
            code="outline_kind_unclear",
            pointer=f"{_OUTLINE}/points",
            message="Points are given beside sides.",
            remedy="Give sides with their corners' angles, or points, not both.",
        )
    for number, side in enumerate(outline.sides or ()):
        if side.length is None:
            yield missing(f"{_OUTLINE}/sides/{number}/length", "The length of a side")
    if corners_of(outline) < FEWEST:
        kind = "sides" if outline.sides is not None else "points"
        yield Fault(
            code="outline_too_few_sides",
            pointer=f"{_OUTLINE}/{kind}",
            message=f"An outline has at least {FEWEST} {kind}.",
            remedy="Give every side of the room, clockwise from the lower left corner.",
            figures={"given": corners_of(outline)},
        )


def corners_of(outline: OutlineSpec) -> int:
    """How many corners an outline has."""
    return len(outline.sides if outline.sides is not None else outline.points or ())


def diagonals_join_corners(case: RuleCase) -> Iterator[Fault]:
    """A check runs from one corner that there is to another."""
    outline = case.spec.room.outline
    if outline is None or not case.sound(_OUTLINE):
        return
    corners = corners_of(outline)
    for number, diagonal in enumerate(outline.diagonals):
        place = f"{_OUTLINE}/diagonals/{number}"
        for name in ("from_corner", "to_corner", "length"):
            if getattr(diagonal, name) is None:
                yield missing(f"{place}/{name}", "An end of a check, or its length,")
        ends = {"from_corner": diagonal.from_corner, "to_corner": diagonal.to_corner}
        for name, corner in ends.items():
            if corner is not None and not 1 <= corner <= corners:
                yield _no_corner(f"{place}/{name}", corner, corners)
        if diagonal.from_corner is not None and diagonal.from_corner == diagonal.to_corner:
            yield _no_corner(f"{place}/to_corner", diagonal.from_corner, corners)


def _no_corner(pointer: str, corner: int, corners: int) -> Fault:
    return Fault(
        code="corner_unknown",
        pointer=pointer,
        message=f"A check can't end at corner {corner}: it runs from one corner that the room has"
        " to another one.",
        remedy=f"Give another corner from 1 to {corners}.",
        figures={"corner": corner, "corners": corners},
    )


def surfaces_are_of_sides(case: RuleCase) -> Iterator[Fault]:
    """Finish and bow are told of a side that there is, and once."""
    outline = case.spec.room.outline
    if outline is None or not case.sound(_OUTLINE):
        return
    seen: set[int] = set()
    for number, surface in enumerate(outline.surfaces):
        place = f"{_OUTLINE}/surfaces/{number}/side"
        if surface.side is None:
            yield missing(place, "The side a finish or bow is told of")
        elif surface.side in seen or not 1 <= surface.side <= corners_of(outline):
            yield Fault(
                code="outline_side_unknown",
                pointer=place,
                message=f"Finish and bow are told once, of a side that there is, not of"
                f" {surface.side} here.",
                remedy=f"Give each side from 1 to {corners_of(outline)} once at most.",
                figures={"side": surface.side, "sides": corners_of(outline)},
            )
        else:
            seen.add(surface.side)


def boards_end_in_coffers(case: RuleCase) -> Iterator[Fault]:
    """Boards that run through are laid from wall to wall of a room with four."""
    panel, room = case.spec.panel, case.spec.room
    odd = room.outline is not None or room.columns
    if not odd or panel is None or not case.sound("/panel"):
        return
    if panel.run is BoardRun.THROUGH:
        yield Fault(
            code="through_boards_in_outline",
            pointer="/panel/run",
            message="Boards that run through are laid out in rooms with four walls and without"
            " columns alone.",
            remedy='Set run to "per_coffer".',
        )


OUTLINE_RULES = (
    outlines_are_of_one_kind,
    diagonals_join_corners,
    surfaces_are_of_sides,
    boards_end_in_coffers,
)
