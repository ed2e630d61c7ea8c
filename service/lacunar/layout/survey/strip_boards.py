"""The boards of beams at walls that are out of square: as wide at each end as the wall leaves."""

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import replace

from lacunar.layout.records import BeamProfile, ProfilePart, WallBeam, profiles_by_beam
from lacunar.layout.runs.wall_strips import run_of_wall
from lacunar.layout.survey.crooked_room import WIDEST
from lacunar.layout.survey_records import CrookedRoom, CrookedWall, StripBoard
from lacunar.measure.figure import LengthFigure, Rule
from lacunar.measure.length import ZERO, Length
from lacunar.model.stock import Stock, same_stock_at_least

AT_AN_END = Rule(
    "width of a board at a wall at one end: as its straight face asks, and what its strip is wider"
    " there",
    "max(straight + strip_there - strip, 0)",
)
ALONG = Rule(
    "width of a tapering board at a place along the wall, between its widths at both ends of the"
    " clear line",
    "at_start + (at_end - at_start) * along / clear",
)


def with_boards(
    crooked: CrookedRoom | None, wall_beams: Sequence[WallBeam], profiles: Sequence[BeamProfile]
) -> CrookedRoom | None:
    """Turn a crooked room into one whose walls tell the boards of what stands there.

    Those reach the wall that lie flat: a bottom, and an upper board. A side stands at the face,
    which is straight. Where the grid follows the walls, or a beam stands at a soffit's face,
    nothing tapers.
    """
    if crooked is None or crooked.mode == "follow_walls":
        return crooked
    beams = {beam.id: beam for beam in wall_beams}
    built = profiles_by_beam(profiles)
    return replace(
        crooked, walls=tuple(_with(each, crooked, beams, built) for each in crooked.walls)
    )


def _with(
    wall: CrookedWall,
    crooked: CrookedRoom,
    beams: Mapping[str, WallBeam],
    built: Mapping[str, BeamProfile],
) -> CrookedWall:
    beam = beams.get(wall.strip or "")
    if beam is None:
        return wall
    found = _boards(wall, beam.width.value, built[beam.id], bow_at(crooked, wall.wall))
    return replace(wall, boards=tuple(found))


def bow_at(crooked: CrookedRoom, wall: str) -> Length:
    """How far a wall's middle bows into the room [length]."""
    return next(each.bow for each in crooked.survey.walls if each.wall == wall)


def _boards(
    wall: CrookedWall, strip: Length, profile: BeamProfile, bow: Length
) -> Iterator[StripBoard]:
    for part in profile.parts:
        if part.name not in ("bottom", "upper_board") or part.stock is None:
            continue
        start, end = (_at_end(part, strip, there) for there in (wall.at_start, wall.at_end))
        widest = _widest((start, end), bow)
        stock = _stock(part.stock, widest.value)
        yield StripBoard(
            part=part.name,
            at_start=start,
            at_end=end,
            widest=widest,
            stock=stock,
            too_narrow=widest.value > stock.width,
        )


def _at_end(part: ProfilePart, strip: Length, there: LengthFigure) -> LengthFigure:
    straight = part.width.value
    tell = AT_AN_END.approximates if there.approximate else AT_AN_END.gives
    return tell(
        max(straight + there.value - strip, ZERO),
        straight=straight,
        strip_there=there.value,
        strip=strip,
    )


def _widest(ends: tuple[LengthFigure, LengthFigure], bow: Length) -> LengthFigure:
    start, end = ends
    tell = WIDEST.approximates if start.approximate or end.approximate else WIDEST.gives
    return tell(
        max(start.value, end.value) + max(-bow, ZERO),
        at_start=start.value,
        at_end=end.value,
        bow=bow,
    )


def _stock(stock: Stock, needed: Length) -> Stock:
    """The stock itself, or where it is too narrow the next wider one of its kind, if there is."""
    if needed <= stock.width:
        return stock
    return same_stock_at_least(stock, needed) or stock


def board_between(
    crooked: CrookedRoom, wall: CrookedWall, board: StripBoard, reach: tuple[Length, Length]
) -> StripBoard:
    """Turn the board of a whole wall into that of a stretch of it, by its ends along the wall.

    Between the ends of the clear line its width goes evenly from the one to the other; a bow away
    from the room is left on everywhere.
    """
    across = run_of_wall(wall.wall).other
    clear = next(run.clear for run in crooked.runs if run.run is across)
    start, end = (_along(board, clear, at) for at in reach)
    widest = _widest((start, end), bow_at(crooked, wall.wall))
    return replace(board, at_start=start, at_end=end, widest=widest)


def _along(board: StripBoard, clear: LengthFigure, at: Length) -> LengthFigure:
    start, end = board.at_start.value, board.at_end.value
    rough = board.at_start.approximate or board.at_end.approximate or clear.approximate
    tell = ALONG.approximates if rough else ALONG.gives
    return tell(
        start + (end - start) * (at / clear.value),
        at_start=start,
        at_end=end,
        along=at,
        clear=clear.value,
    )
