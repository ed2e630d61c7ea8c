"""Puts together how a square grid lies in a surveyed room: what each wall takes up, and both ways.

The one function of these that others call, beside the frame itself.
"""

from collections.abc import Iterator, Mapping

from lacunar.layout.fault_gathering import refuse
from lacunar.layout.runs.wall_strips import WallStrip, run_of_wall
from lacunar.layout.survey.modes import Grids, crooked_modes
from lacunar.layout.survey.report import survey_report
from lacunar.layout.survey.square_frame import SquareFrame
from lacunar.layout.survey_records import CrookedRoom, CrookedWall, Mode
from lacunar.measure.figure import LengthFigure, Rule, given
from lacunar.measure.length import ZERO, Length
from lacunar.measure.plane import ORIGIN, Spot, distance, on_grid
from lacunar.model.faults import Fault
from lacunar.model.room import START_WALL, WALLS, Room, RunName
from lacunar.model.survey import Crooked, GridMode, Survey

STRIP = Rule("width of a wall's strip at one end: its own, and the gap there", "strip + gap")
TAPER = Rule("taper: the difference between both ends", "abs(at_end - at_start)")
SCRIBE = Rule("to be left on for scribing: what the wall bows", "abs(bow)")
WIDEST = Rule(
    "board to start from: the wider end, and a bow away from the room",
    "max(at_start, at_end) + max(-bow, 0)",
)
DIAGONAL = Rule(
    "both diagonals of the clear rectangle, equal if it is square",
    "sqrt(length * length + width * width)",
)


def crooked_room(
    room: Room,
    frame: SquareFrame,
    strips: Mapping[str, tuple[WallStrip, ...]],
    grids: Grids,
) -> CrookedRoom:
    """Turn a surveyed room and its divided runs into what is told of its being crooked.

    Parameters: `room`, surveyed; its `frame`; what stands at the walls; `grids`, the grid both
    ways. Raises SpecRefused where a bare wall is out of square.
    """
    if room.survey is None or room.crooked is None:
        raise ValueError("the room was not surveyed")
    follows = room.crooked.mode is GridMode.FOLLOW_WALLS
    walls = tuple(_walls(room.survey, room.crooked, frame, strips))
    if not follows:
        refuse([fault for wall in walls for fault in _at_wall(wall, room.crooked)])
    length, width = (frame.runs[name].clear.value for name in RunName)
    return CrookedRoom(
        survey=survey_report(room.survey, frame),
        mode=_mode(room.crooked),
        control=None if follows else room.crooked.control,
        control_by=None if follows else "member" if room.crooked.by_member else "wall",
        square=frame.square,
        grid_diagonal=_diagonal(length, width, frame),
        runs=tuple(frame.runs[name] for name in RunName),
        walls=walls,
        modes=crooked_modes(frame, grids, _mode(room.crooked)),
    )


def _mode(crooked: Crooked) -> Mode:
    return "follow_walls" if crooked.mode is GridMode.FOLLOW_WALLS else "keep_square"


def _diagonal(length: Length, width: Length, frame: SquareFrame) -> LengthFigure:
    found = distance(ORIGIN, Spot(length, width))
    rough = found.approximate or frame.approximate
    tell = DIAGONAL.approximates if rough else DIAGONAL.gives
    long = on_grid(found.length) if found.approximate else found.length
    return tell(long, length=length, width=width)


def _walls(
    survey: Survey,
    crooked: Crooked,
    frame: SquareFrame,
    strips: Mapping[str, tuple[WallStrip, ...]],
) -> Iterator[CrookedWall]:
    for wall, bow in zip(WALLS, survey.bows, strict=True):
        strip = strips[wall][0] if strips[wall] else None
        width = strip.width.value if strip else ZERO
        follows = crooked.mode is GridMode.FOLLOW_WALLS
        gaps = (given(ZERO), given(ZERO)) if follows else frame.gaps[wall]
        start, end = (_strip(width, gap) for gap in gaps)
        rough = frame.approximate and not follows
        taper = (TAPER.approximates if rough else TAPER.gives)(
            abs(end.value - start.value), at_end=end.value, at_start=start.value
        )
        widest = (WIDEST.approximates if rough else WIDEST.gives)(
            max(start.value, end.value) + max(-bow, ZERO),
            at_start=start.value,
            at_end=end.value,
            bow=bow,
        )
        yield CrookedWall(
            wall=wall,
            strip=strip.id if strip else None,
            at_start=start,
            at_end=end,
            taper=taper,
            seen=taper.value > crooked.visible_taper,
            scribe=SCRIBE.gives(abs(bow), bow=bow),
            widest=widest,
        )


def _strip(width: Length, gap: LengthFigure) -> LengthFigure:
    tell = STRIP.approximates if gap.approximate else STRIP.gives
    return tell(width + gap.value, strip=width, gap=gap.value)


def _at_wall(wall: CrookedWall, crooked: Crooked) -> Iterator[Fault]:
    """A fault where a wall cannot take up what lies between: it is bare, or its strip ends.

    At a bare wall coffers would have to taper, which would be seen.
    """
    run = run_of_wall(wall.wall)
    if wall.strip is not None:
        if min(wall.at_start.value, wall.at_end.value) <= ZERO:
            yield _without_room(wall, run)
        return
    if wall.widest.value <= crooked.visible_taper:
        return
    end = "start" if wall.wall == START_WALL[run] else "end"
    yield Fault(
        code="crooked_wall_bare",
        pointer=f"/grid/{run}/{end}",
        message=f"{wall.wall} lies off the square grid, and nothing stands there to take it up.",
        remedy="Put a half or full beam or a soffit there, name this wall as the control line, or"
        ' let the grid follow the walls, with room.crooked.mode "follow_walls".',
        figures={
            "at_start": wall.at_start.value,
            "at_end": wall.at_end.value,
            "most": crooked.visible_taper,
        },
    )


def _without_room(wall: CrookedWall, run: RunName) -> Fault:
    end = "start" if wall.wall == START_WALL[run] else "end"
    return Fault(
        code="strip_without_room",
        pointer="/room/crooked/excess",
        message=f"With the excess split, nothing is left for {wall.strip} at {wall.wall}.",
        remedy=f'Leave the excess at the end where it lies, with "end", or make grid.{run}.{end}'
        " wider.",
        figures={"at_start": wall.at_start.value, "at_end": wall.at_end.value},
    )
