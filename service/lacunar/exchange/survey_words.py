"""A survey, and how the grid lies in a crooked room, in sentences."""

from collections.abc import Callable, Iterator
from typing import Any

from lacunar.layout.survey_records import CrookedMode, CrookedRoom, CrookedWall, SurveyReport
from lacunar.measure.figure import Figure
from lacunar.model.survey import CORNERS

Tell = Callable[[str, Figure[Any]], str]

_MODES = {"keep_square": "Kept square", "follow_walls": "Following the walls"}


def survey_in_words(crooked: CrookedRoom, tell: Tell) -> Iterator[str]:
    """Turn a surveyed room into sentences: how the survey closed, and what each wall takes up."""
    yield from _closing(crooked.survey, tell)
    if crooked.control is None:
        yield "The grid follows the walls."
    else:
        what = "the member " if crooked.control_by == "member" else ""
        yield f"The grid is square to {what}{crooked.control}."
    yield tell("Both diagonals of the clear rectangle", crooked.grid_diagonal)
    for run in crooked.runs:
        name = f"the {run.run} run"
        yield tell(f"Clear line of {name}", run.clear)
        yield tell(f"Clear line of {name}, moved to share the excess", run.moved)
        before = f"Start wall of {name} before its clear line, at the"
        yield tell(f"{before} start of the other", run.before_start)
        yield tell(f"{before} end of the other", run.before_end)
        yield tell(f"Wall to wall along {name}, at the start of the other", run.span_at_start)
        yield tell(f"Wall to wall along {name}, at the end of the other", run.span_at_end)
    for wall in crooked.walls:
        yield from _wall(wall, tell)
    for mode in crooked.modes:
        yield from _mode(mode, tell)


def _closing(survey: SurveyReport, tell: Tell) -> Iterator[str]:
    if survey.closing_error is not None:
        yield tell("Closing error of the survey", survey.closing_error)
    for length in survey.lengths:
        yield tell(f"{length.of} as taken", length.adjusted)
    for angle in survey.angles:
        yield tell(f"Angle {angle.of} as taken", angle.adjusted)
    for corner in survey.corners:
        yield tell(f"Corner {corner.id}", corner.angle)
    for wall in survey.walls:
        yield tell(f"Wall {wall.wall}, from corner to corner", wall.length)
    yield tell("Rising diagonal of the room", survey.rising)
    yield tell("Falling diagonal of the room", survey.falling)


def _wall(wall: CrookedWall, tell: Tell) -> Iterator[str]:
    what = f"{wall.strip} at {wall.wall}" if wall.strip else f"Gap at {wall.wall}"
    yield tell(f"{what}, width at the start", wall.at_start)
    yield tell(f"{what}, width at the end", wall.at_end)
    yield tell(f"{what}, taper", wall.taper)
    yield tell(f"{what}, left on for scribing", wall.scribe)
    yield tell(f"{what}, board to start from", wall.widest)
    for board in wall.boards:
        name = f"{what}, {board.part.replace('_', ' ')}"
        yield tell(f"{name}, width at the start", board.at_start)
        yield tell(f"{name}, width at the end", board.at_end)
        yield tell(f"{name}, board to start from, of {board.stock.name}", board.widest)


def _mode(mode: CrookedMode, tell: Tell) -> Iterator[str]:
    name = _MODES[mode.mode]
    yield tell(f"{name}, shortest coffer", mode.shortest)
    yield tell(f"{name}, longest coffer", mode.longest)
    yield tell(f"{name}, narrowest coffer", mode.narrowest)
    yield tell(f"{name}, widest coffer", mode.widest)
    yield tell(f"{name}, most out of square", mode.out_of_square)
    for coffer in mode.coffers:
        for wall in ("W1", "W2", "W3", "W4"):
            side = getattr(coffer, f"towards_{wall.lower()}")
            yield tell(f"{name}, side of {coffer.id} towards {wall}", side)
        yield tell(f"{name}, rising diagonal of {coffer.id}", coffer.rising)
        yield tell(f"{name}, falling diagonal of {coffer.id}", coffer.falling)
        for between, corner in zip(CORNERS, coffer.corners, strict=True):
            yield tell(f"{name}, corner {between} of {coffer.id}", corner.angle)
        yield tell(f"{name}, {coffer.id} out of square", coffer.out_of_square)
