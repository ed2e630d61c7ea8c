"""What stands at the walls: strips of the run that no coffer can have."""

from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from itertools import count

from lacunar.layout.families import Family
from lacunar.layout.records import ElementKind
from lacunar.measure.figure import LengthFigure, Rule, given
from lacunar.model.grid import Grid, WallCondition
from lacunar.model.room import END_WALL, START_WALL, WALLS, RunName
from lacunar.model.wall_kind import WallKind

HALF_BEAM = Rule("half a beam at a wall", "beam_width / 2")


@dataclass(frozen=True, slots=True)
class WallStrip:
    """A soffit or wall beam, with its width into the room and its id."""

    kind: ElementKind
    wall_kind: WallKind
    wall: str
    id: str
    width: LengthFigure


def wall_strips(
    grid: Grid, families: Mapping[RunName, Family]
) -> Mapping[str, tuple[WallStrip, ...]]:
    """Turn the wall conditions of both runs into strips, by wall, from the wall into the room.

    A half beam is half as wide as the beams of the family that divides the run. `WB-` ids count
    round the room from W1, on a soffit's wall first the soffit, then the beam on its face.
    """
    numbered: dict[str, tuple[WallStrip, ...]] = {}
    number = count(1)
    for wall, condition in wall_conditions(grid).items():
        numbered[wall] = strips_at(wall, condition, families[run_of_wall(wall)].width, number)
    return numbered


def wall_conditions(grid: Grid) -> Mapping[str, WallCondition]:
    """What is to stand at W1 to W4."""
    runs = {wall: grid.run(run_of_wall(wall)) for wall in WALLS}
    return {
        wall: run.start if wall in START_WALL.values() else run.end for wall, run in runs.items()
    }


def strips_at(
    wall: str, condition: WallCondition, beam_width: LengthFigure, numbers: Iterator[int]
) -> tuple[WallStrip, ...]:
    """Turn one wall's condition into strips, from the wall into the room.

    Parameters: `wall`; `condition`; `beam_width` of the family that divides the run; `numbers`,
    from which each strip takes the next for its id.
    """
    return tuple(
        WallStrip(
            ElementKind.SOFFIT if kind is WallKind.SOFFIT else ElementKind.WALL_BEAM,
            kind,
            wall,
            f"WB-{next(numbers)}",
            width,
        )
        for kind, width in _kinds(condition, beam_width)
    )


def run_of_wall(wall: str) -> RunName:
    """The run that starts or ends at a wall."""
    return next(name for name in RunName if wall in (START_WALL[name], END_WALL[name]))


def _kinds(
    condition: WallCondition, beam_width: LengthFigure
) -> Iterator[tuple[WallKind, LengthFigure]]:
    kind = condition.kind
    if kind is WallKind.SOFFIT:
        if condition.soffit_width is not None:
            yield WallKind.SOFFIT, given(condition.soffit_width)
        kind = condition.then
    if kind is WallKind.HALF:
        width = beam_width.value
        yield kind, HALF_BEAM.gives(width / 2, beam_width=width)
    elif kind is WallKind.FULL:
        yield kind, beam_width
