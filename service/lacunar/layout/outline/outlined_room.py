"""Puts together what is told of a room with other than four walls."""

from collections.abc import Iterator, Mapping, Sequence
from typing import Literal

from lacunar.layout.beams.lines import Meeting
from lacunar.layout.outline.angled_beams import angled_beams
from lacunar.layout.outline.cells import Cell
from lacunar.layout.outline.corners import area_of
from lacunar.layout.outline.filling import Filling
from lacunar.layout.outline.measured_coffers import measured_cut_coffers
from lacunar.layout.outline.partial_coffers import partial_coffers, partial_corners
from lacunar.layout.outline.room_columns import room_columns
from lacunar.layout.outline.rows import AT_FACE, Outlined, corner_between
from lacunar.layout.outline.spans import SpanEnd
from lacunar.layout.outline.wall import Wall, place
from lacunar.layout.outline.walls import Region, beam_strip
from lacunar.layout.outline_records import BeamSpan, OutlinedRoom, OutlineWall
from lacunar.layout.records import BeamProfile
from lacunar.layout.survey.report import apart
from lacunar.measure.figure import CountFigure, LengthFigure, NumberFigure, Rule
from lacunar.measure.length import ZERO, Length
from lacunar.measure.plane import Spot, distance, settled, turn
from lacunar.measure.rounding import Step, round_to
from lacunar.model.room import RunName
from lacunar.model.wall_kind import WallKind

LEFT_OUT = Rule(
    "coffers of the grid that lie outside the room",
    "columns * rows - coffers",
)
AT = Rule("place along the run", "at")
SLANT = Rule("how far the longer side of a beam goes on at an angled wall", "slant")
SCRIBE = Rule("to be left on for scribing: what the wall bows", "abs(bow)")
WIDEST = Rule(
    "board to start from: what stands there, the wider gap behind it, and a bow away from the room",
    "strip + gap + max(-bow, 0)",
)
TAPER = Rule("taper: the difference between both ends of the wall", "abs(end - start)")


def outlined_room(
    room: Outlined,
    meeting: Meeting,
    cells: Sequence[Cell],
    profiles: Mapping[str, BeamProfile],
    filling: Filling,
) -> OutlinedRoom:
    """Turn a room, its beams and its cells into what is told of it.

    Parameters: `room`; `meeting`, what meets what in it; `cells`, its coffers, whole and cut;
    `profiles` of beams by their ids; `filling`, what goes into cut coffers.
    """
    region, step = room.region, filling.ceiling.mark_to
    cut = partial_coffers(cells, filling)
    return OutlinedRoom(
        closing_error=region.shape.closing_error,
        corrections=region.shape.corrections,
        checks=region.shape.checks,
        walls=tuple(_wall(region, wall, step) for wall in region.walls),
        area=floor_area(room),
        spans=tuple(_spans(room, meeting)),
        partial_coffers=cut,
        corners=partial_corners(cut, filling),
        angled_beams=tuple(angled_beams(region, profiles)),
        coffers_left_out=_left_out(room, cells),
        beams_left_out=tuple(beam for beam, spans in room.spans.items() if not spans),
        columns=room_columns(room, cut, step),
        measured=measured_cut_coffers(filling.ceiling.measured_openings, cells, cut, filling),
    )


def floor_area(room: Outlined) -> NumberFigure:
    """The area of a room between its finished walls, less that of columns [ft2]."""
    region = room.region
    holes = [column.corners[::-1] for column in room.columns]
    return area_of(region.corners[::-1], approximate=region.approximate, holes=holes)


def _left_out(room: Outlined, cells: Sequence[Cell]) -> CountFigure:
    columns, rows = (
        sum(zone.coffers.value for zone in room.ends[run].at_start.zones) for run in RunName
    )
    inside = len({(cell.row, cell.column) for cell in cells})
    return LEFT_OUT.gives(columns * rows - inside, columns=columns, rows=rows, coffers=inside)


def _wall(region: Region, wall: Wall, step: Step) -> OutlineWall:
    strips = region.strips[wall.side]
    strip = beam_strip(strips)
    start, end = region.corners[wall.side - 1], region.corners[wall.side % len(region.corners)]
    beside = region.face_line(wall)
    at = face = taper = None
    bow = region.bows.get(wall.side, ZERO)
    if not wall.angled:
        at, face = _place_of(wall), _place_of_face(region, wall)
        taper = _taper(wall, start, end)
    return OutlineWall(
        wall=wall.name,
        side=wall.side,
        looks_as=wall.looks_as,
        start=start,
        end=end,
        length=apart(start, end, approximate=region.approximate),
        corner=corner_between(region, wall),
        angled=wall.angled,
        stands=strips[-1].wall_kind if strips else WallKind.NONE,
        beam=strip.id if strip else None,
        on=None if wall.angled else wall.on,
        at=at,
        at_mark=round_to(at.value, step) if at else None,
        face=face,
        face_mark=round_to(face.value, step) if face else None,
        face_start=beside[0] if strips else None,
        face_end=beside[1] if strips else None,
        taper=taper,
        finish=region.finish.get(wall.side),
        bow=bow,
        scribe=SCRIBE.gives(abs(bow), bow=bow),
        widest=_widest(region, wall, (start, end), bow),
    )


def _widest(region: Region, wall: Wall, ends: tuple[Spot, Spot], bow: Length) -> LengthFigure:
    """What a wall's strip takes where it is widest: from the wall itself to its face."""
    strip = sum((each.width.value for each in region.strips[wall.side]), ZERO)
    gap = max(_off_line(end, region.wall_line(wall)) for end in ends)
    tell = WIDEST.approximates if region.approximate else WIDEST.gives
    return tell(strip + gap + max(-bow, ZERO), strip=strip, gap=gap, bow=bow)


def _off_line(spot: Spot, line: tuple[Spot, Spot]) -> Length:
    """How far a corner lies off the line that its wall is taken at."""
    way = line[1] - line[0]
    long = distance(*line)
    off = Length.of_inches(abs(turn(way, spot - line[0])) / long.length.inches)
    return settled(off).length


def _place_of(wall: Wall) -> LengthFigure | None:
    return None if wall.at is None else AT.gives(wall.at, at=wall.at)


def _place_of_face(region: Region, wall: Wall) -> LengthFigure | None:
    """The face of what stands at a wall; None where nothing does."""
    if not region.strips[wall.side]:
        return None
    at = place(wall.on, region.face_line(wall)[0])
    return AT.gives(at, at=at)


def _taper(wall: Wall, start: Spot, end: Spot) -> LengthFigure:
    """How much a wall that is not square is off it over its length."""
    one, other = place(wall.on, start), place(wall.on, end)
    return TAPER.gives(abs(other - one), end=other, start=one)


def _spans(room: Outlined, meeting: Meeting) -> Iterator[BeamSpan]:
    """The stretches of beams, and of beams at walls, with what each ends at."""
    for run in RunName:
        for line in meeting.rows[run].lines:
            stretches = room.spans.get(line.id, ())
            for number, row in enumerate(meeting.rows_across(line)):
                span = stretches[number] if stretches else None
                yield BeamSpan(
                    beam=line.id,
                    on=run,
                    start=_ends_at(span.start) if span else row.start.at,
                    end=_ends_at(span.end) if span else row.end.at,
                    start_at=row.start.id,
                    end_at=row.end.id,
                    start_slant=_slant(span.start) if span else None,
                    end_slant=_slant(span.end) if span else None,
                    start_longer=_longer(span.start) if span else None,
                    end_longer=_longer(span.end) if span else None,
                )


def _ends_at(end: SpanEnd) -> LengthFigure:
    """Where a beam's full width ends, at the face of what stands at the wall."""
    return AT_FACE.gives(end.at, at=end.at)


def _slant(end: SpanEnd) -> LengthFigure | None:
    return SLANT.approximates(end.slant, slant=end.slant) if end.slant else None


def _longer(end: SpanEnd) -> Literal["near", "far"] | None:
    """Which side of a beam goes on at an angled wall."""
    if not end.slant:
        return None
    return "near" if end.longer_near else "far"
