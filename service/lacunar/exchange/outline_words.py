"""A room with other than four walls in sentences."""

from collections.abc import Callable, Iterator
from typing import Any

from lacunar.exchange.board_words import courses_in_words
from lacunar.layout.outline_records import (
    AngledBeam,
    BeamSpan,
    MeasuredCutCoffer,
    MeasuredCutDiagonal,
    MeasuredCutSide,
    OutlinedRoom,
    OutlineWall,
    PartialCoffer,
    RoomColumn,
    SideStrip,
)
from lacunar.measure.figure import Figure

Tell = Callable[[str, Figure[Any]], str]


def outline_in_words(room: OutlinedRoom | None, tell: Tell) -> Iterator[str]:
    """Turn a room into sentences: how it closed, its walls, where beams stand, cut coffers."""
    if room is None:
        return
    yield from _closing(room, tell)
    for wall in room.walls:
        yield from _wall(wall, tell)
    for span in room.spans:
        yield from _span(span, tell)
    for coffer in room.partial_coffers:
        yield from _coffer(coffer, tell)
    for corner in room.corners:
        where = ", ".join(corner.coffers)
        yield tell(f"Corner of cut coffers ({corner.joint}), in {where}", corner.corner)
        yield tell("Miter there, nested", corner.settings.nested_miter)
        yield tell("Miter there, flat", corner.settings.flat_miter)
        yield tell("Bevel there, flat", corner.settings.flat_bevel)
    for beam in room.angled_beams:
        yield from _angled(beam, tell)
    yield from _columns_and_measured(room, tell)
    yield tell("Coffers of the grid outside the room", room.coffers_left_out)


def _closing(room: OutlinedRoom, tell: Tell) -> Iterator[str]:
    if room.closing_error is not None:
        yield tell("Closing error of the outline", room.closing_error)
    for correction in room.corrections:
        yield tell(f"Side {correction.side} as taken", correction.adjusted)
    for check in room.checks:
        name = f"corner {check.from_corner} to corner {check.to_corner}"
        yield tell(f"From {name}, by the sides", check.computed)
        yield tell(f"From {name}, off", check.off)
    yield tell("Area of the room", room.area)


def _span(span: BeamSpan, tell: Tell) -> Iterator[str]:
    yield tell(f"{span.beam} starts at {span.start_at}", span.start)
    yield tell(f"{span.beam} ends at {span.end_at}", span.end)
    for end, slant in (("start", span.start_slant), ("end", span.end_slant)):
        if slant is not None:
            yield tell(f"{span.beam}, slanted {end}", slant)


def _wall(wall: OutlineWall, tell: Tell) -> Iterator[str]:
    name = f"{wall.wall} (side {wall.side})"
    yield tell(f"{name}, length", wall.length)
    yield tell(f"{name}, corner at its end", wall.corner)
    yield tell(f"{name}, to be left on for scribing", wall.scribe)
    yield tell(f"{name}, widest", wall.widest)
    for what, figure in (("place", wall.at), ("face", wall.face), ("taper", wall.taper)):
        if figure is not None:
            yield tell(f"{name}, {what}", figure)


def _columns_and_measured(room: OutlinedRoom, tell: Tell) -> Iterator[str]:
    for column in room.columns:
        yield from _column(column, tell)
    for measured in room.measured:
        yield from _measured(measured, tell)


def _column(column: RoomColumn, tell: Tell) -> Iterator[str]:
    for what in ("left", "right", "lower", "upper"):
        yield tell(f"{column.name}, {what}", getattr(column, what))
    yield tell(f"{column.name}, area", column.area)


def _measured(measured: MeasuredCutCoffer, tell: Tell) -> Iterator[str]:
    name = measured.coffer
    told: list[MeasuredCutSide | MeasuredCutDiagonal] = [*measured.sides, *measured.diagonals]
    for each in told:
        what = f"side {each.side}" if isinstance(each, MeasuredCutSide) else "diagonal"
        if not isinstance(each, MeasuredCutSide):
            what = f"corner {each.from_corner} to corner {each.to_corner}"
        yield tell(f"{name}, {what}, as planned", each.planned)
        if each.measured is not None and each.difference is not None:
            yield tell(f"{name}, {what}, as measured", each.measured)
            yield tell(f"{name}, {what}, off the plan", each.difference)
    if measured.closing_error is not None:
        yield tell(f"{name}, closing error", measured.closing_error)
    if measured.missing:
        yield f"{name}: not measured: {', '.join(measured.missing)}."
    if measured.as_measured is not None:
        yield from _coffer(measured.as_measured, tell)


def _coffer(coffer: PartialCoffer, tell: Tell) -> Iterator[str]:
    yield tell(f"{coffer.id}, area", coffer.area)
    yield tell(f"{coffer.id}, reach along the length", coffer.reach_length)
    yield tell(f"{coffer.id}, reach along the width", coffer.reach_width)
    for number, side in enumerate(coffer.all_sides, start=1):
        name = f"{coffer.id}, side {number} at {side.against}"
        yield tell(name, side.length)
        yield tell(f"{name}, corner at its end", side.corner)
        for what, figure in (
            ("long point", side.long_point),
            ("short point", side.short_point),
            ("cut from", side.cut_from),
            ("between its ends", side.between_ends),
        ):
            if figure is not None:
                yield tell(f"{name}, crown, {what}", figure)
        for strip in side.strips:
            yield from _strip(f"{name}, {strip.moulding}", strip, tell)
    yield from _filling(coffer, tell)


def _filling(coffer: PartialCoffer, tell: Tell) -> Iterator[str]:
    """The panel or the boards of a cut coffer."""
    for what, figure in (("length", coffer.panel_length), ("width", coffer.panel_width)):
        if figure is not None:
            yield tell(f"{coffer.id}, panel, {what}", figure)
    if coffer.laid is not None:
        yield from courses_in_words(f"{coffer.id}, boards", coffer.laid, tell)
    for course in coffer.courses:
        yield tell(f"{coffer.id}, {course.boards} boards", course.length)


def _strip(name: str, strip: SideStrip, tell: Tell) -> Iterator[str]:
    if not strip.has_room:
        yield f"{name}: no room for it between its ends."
        return
    yield tell(f"{name}, angle of its left cut", strip.left_cut)
    yield tell(f"{name}, angle of its right cut", strip.right_cut)
    yield tell(f"{name}, long point", strip.long_point)
    yield tell(f"{name}, short point", strip.short_point)
    yield tell(f"{name}, cut from", strip.cut_from)
    yield tell(f"{name}, between its ends", strip.between_ends)


def _angled(beam: AngledBeam, tell: Tell) -> Iterator[str]:
    name = f"{beam.id} at {beam.wall}"
    yield tell(f"{name}, width", beam.width)
    yield tell(f"{name}, at the wall", beam.at_wall)
    yield tell(f"{name}, at its face", beam.at_face)
    yield tell(f"{name}, side, long points", beam.side_long)
    yield tell(f"{name}, side, short points", beam.side_short)
    yield tell(f"{name}, bottom, long points", beam.bottom_long)
    yield tell(f"{name}, bottom, short points", beam.bottom_short)
    for what, figure in (("long", beam.backing_long), ("short", beam.backing_short)):
        if figure is not None:
            yield tell(f"{name}, backing, {what} points", figure)
    yield tell(f"{name}, miter at its start", beam.start_miter)
    yield tell(f"{name}, miter at its end", beam.end_miter)
