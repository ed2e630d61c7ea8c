"""One way a ceiling can be varied, and the spec that asks for it."""

from dataclasses import dataclass, replace

from lacunar.choosing.asked import RunLimits
from lacunar.measure.length import Length
from lacunar.model.beams import Through
from lacunar.model.grid import WallCondition
from lacunar.model.spec import BeamsSpec, BoxSpec, CeilingSpec, GridSpec, RunSpec
from lacunar.model.wall_kind import WallKind


@dataclass(frozen=True, slots=True)
class RunChoice:
    """What is tried along a run: a number of coffers, and what stands at its walls.

    None leaves it as the ceiling says. `told_too` puts the wall condition where the ceiling tells
    one as well.
    """

    coffers: int | None
    wall: WallKind | None
    told_too: bool


@dataclass(frozen=True, slots=True)
class Candidate:
    """A layout to be tried. `beam_width` and `through` of None: as the ceiling says."""

    length: RunChoice
    width: RunChoice
    beam_width: Length | None
    through: Through | None


def spec_of(spec: CeilingSpec, candidate: Candidate) -> CeilingSpec:
    """Turn a ceiling and a way to vary it into the ceiling that is asked for."""
    beams = with_width(spec.beams, candidate.beam_width)
    if candidate.through is not None:
        beams = replace(beams, through=candidate.through)
    grid = GridSpec(
        length=run_of(spec.grid.length, candidate.length),
        width=run_of(spec.grid.width, candidate.width),
    )
    return replace(spec, beams=beams, grid=grid)


def with_width(beams: BeamsSpec, width: Length | None) -> BeamsSpec:
    """The same families, their beams of one finished width [length]; None leaves them."""
    if width is None:
        return beams
    crosswise = replace(beams.crosswise or BoxSpec(), width=width)
    lengthwise = None if beams.lengthwise is None else replace(beams.lengthwise, width=width)
    return replace(beams, crosswise=crosswise, lengthwise=lengthwise)


def run_of(run: RunSpec, choice: RunChoice) -> RunSpec:
    """A run with a choice made for it."""
    if choice.wall is not None:
        start = _at_wall(run.start, choice)
        run = replace(run, start=start, end=_at_wall(run.end, choice))
    if choice.coffers is None:
        return run
    return replace(run, coffers=choice.coffers, largest_opening=None, wished_opening=None)


def _at_wall(told: WallCondition | None, choice: RunChoice) -> WallCondition | None:
    if choice.wall is None or (told is not None and not choice.told_too):
        return told
    return with_kind(told, choice.wall)


def with_kind(told: WallCondition | None, kind: WallKind) -> WallCondition:
    """What stands at a wall with another kind of beam; a soffit stays, with that on its face."""
    if told is not None and told.kind is WallKind.SOFFIT:
        return replace(told, then=kind)
    return WallCondition(kind)


def wall_choices(limits: RunLimits) -> tuple[RunChoice, ...]:
    """What is tried at the walls of a run, its count left as it is."""
    walls: tuple[WallKind | None, ...] = limits.walls or (None,)
    return tuple(RunChoice(None, wall, limits.told_too) for wall in walls)
