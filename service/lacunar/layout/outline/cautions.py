"""Cautions about rooms with other than four walls."""

from collections.abc import Iterator

from lacunar.layout.names import first_few
from lacunar.layout.outline.column_cautions import column_cautions
from lacunar.layout.outline_records import OutlinedRoom
from lacunar.layout.records import Caution
from lacunar.measure.length import ZERO

NARROW = 12
"""A coffer that reaches less than this many inches either way reads as a leftover."""


def outline_cautions(room: OutlinedRoom | None, *, measured: bool) -> Iterator[Caution]:
    """Cautions of an outline that nothing checks, of leftovers, and of crown that is too short.

    `measured` is whether the room was told by an outline.
    """
    if room is None:
        return
    if measured and not room.checks:
        yield Caution(
            code="outline_not_checked",
            text="Nothing checks the corners of the outline: a diagonal from corner to corner"
            " would show a slip of the tape or a corner out of square.",
            figures={},
            pointer="/room/outline/diagonals",
        )
    crooked = [wall for wall in room.walls if wall.taper is not None and wall.taper.value > ZERO]
    if crooked:
        worst = max(crooked, key=lambda wall: wall.taper.value if wall.taper else ZERO)
        yield Caution(
            code="outline_walls_crooked",
            text="Walls that are not square are taken at their innermost places: what stands there"
            " tapers behind a straight face. Scribe it.",
            figures={"wall": worst.wall, "taper": worst.taper.value if worst.taper else ZERO},
            pointer="/room/outline",
        )
    yield from _bowed(room)
    yield from column_cautions(room)
    yield from _not_all_measured(room)
    yield from _leftovers(room)
    yield from _short_crown(room)
    yield from _without_room(room)


def _not_all_measured(room: OutlinedRoom) -> Iterator[Caution]:
    open_ = [each.coffer for each in room.measured if each.as_measured is None]
    if open_:
        yield Caution(
            code="cut_coffer_corners_unknown",
            text=f"What was measured does not tell all corners of {first_few(open_)}: they are cut"
            " to the plan. The answer lists what is missing, under outlined.measured.",
            figures={"coffers": len(open_)},
            pointer="/measured_openings/coffers",
        )


def _bowed(room: OutlinedRoom) -> Iterator[Caution]:
    worst = max(room.walls, key=lambda wall: wall.scribe.value)
    if worst.bow:
        yield Caution(
            code="outline_walls_bow",
            text="Walls that bow are taken at their innermost places: scribe what stands there; at"
            " a bare wall the gap is left to the trim of the panel.",
            figures={"wall": worst.wall, "bow": worst.bow},
            pointer="/room/outline/surfaces",
        )


def _leftovers(room: OutlinedRoom) -> Iterator[Caution]:
    narrow = [
        coffer.id
        for coffer in room.partial_coffers
        if min(coffer.reach_length.value, coffer.reach_width.value).inches < NARROW
    ]
    if narrow:
        yield Caution(
            code="coffers_left_narrow",
            text=f"Walls or columns leave narrow coffers: {first_few(narrow)}. Another count, a"
            " fixed beam in line with the wall, or nothing standing at it, makes them whole.",
            figures={"coffers": len(narrow)},
            pointer="/grid",
        )


def _short_crown(room: OutlinedRoom) -> Iterator[Caution]:
    short = [
        coffer.id for coffer in room.partial_coffers if any(side.too_short for side in coffer.sides)
    ]
    if short:
        yield Caution(
            code="cut_coffer_crown_too_short",
            text="In coffers that walls cut, crown would have pieces shorter than the shortest that"
            f" is to be cut: {first_few(short)}. Cut them by hand, or end the crown there.",
            figures={"coffers": len(short)},
            pointer="/crown/shortest_piece",
        )


def _without_room(room: OutlinedRoom) -> Iterator[Caution]:
    without = [
        coffer.id
        for coffer in room.coffers_as_cut
        if any(not strip.has_room for side in coffer.all_sides for strip in side.strips)
    ]
    if without:
        yield Caution(
            code="cut_coffer_strips_without_room",
            text="Sides of coffers that walls or columns cut are too short for flat mouldings or"
            f" nailers that are mitred there: {first_few(without)}. None are cut for them; end"
            " those beside on the site.",
            figures={"coffers": len(without)},
        )
