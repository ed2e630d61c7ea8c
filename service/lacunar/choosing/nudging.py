"""What a small change of one layout would save: in the beams' width, or at one wall."""

from collections.abc import Iterator
from dataclasses import dataclass, replace
from decimal import Decimal
from fractions import Fraction
from typing import Literal

from lacunar.choosing.candidates import with_kind
from lacunar.choosing.costing import ShortOfStock
from lacunar.choosing.criteria import judged, lacks, seams_of, value_of, without_cost
from lacunar.choosing.crown_sticks import CrownTooLong
from lacunar.choosing.laying import LaidOut, Layer
from lacunar.choosing.options import coffers_along, condition_words, fillers
from lacunar.choosing.records import Nudge, NudgeChange
from lacunar.layout.families import beam_families
from lacunar.layout.records import Layout
from lacunar.measure.length import Length
from lacunar.measure.units import Units
from lacunar.model.faults import SpecRefused
from lacunar.model.grid import WallCondition
from lacunar.model.room import END_WALL, START_WALL, RunName
from lacunar.model.spec import BeamsSpec, BoxSpec, CeilingSpec, RunSpec
from lacunar.model.wall_kind import WallKind

# What a carpenter can still take in or let out of a beam: its backing's play, a shim, a plane.
_STEPS = {
    Units.INCH: tuple(Length.of_inches(Fraction(n, 16)) for n in (1, 2, 4)),
    Units.MILLIMETER: tuple(Length.of_millimeters(n) for n in (1, 3, 6)),
}
_STANDING = (WallKind.NONE, WallKind.HALF, WallKind.FULL)


@dataclass(frozen=True, slots=True)
class Trial:
    """A nudged ceiling, and what the nudge is."""

    spec: CeilingSpec
    kind: Literal["beam_width", "wall"]
    wider: Length | None = None
    wall: str | None = None
    condition: str | None = None


def trials(spec: CeilingSpec, layout: Layout) -> tuple[Trial, ...]:
    """Turn a ceiling and its layout into all that is tried of small changes.

    Counts stay as they were laid out, even where the ceiling asks for them by an opening.
    """
    counted = _counted(spec, layout)
    return (*_of_width(counted, layout), *_at_walls(counted, layout))


def nudged(trial: Trial, base: LaidOut, layer: Layer, center_on: tuple[str, ...]) -> Nudge | None:
    """Turn a trial into what comes of it; None where it cannot be built or bought for."""
    try:
        after = layer.laid_out(trial.spec)
    except (SpecRefused, CrownTooLong, ShortOfStock):
        return None
    if not after.layout.coffers:
        return None
    sticks = _sticks(base) - _sticks(after)
    seams = seams_of(base.layout) - seams_of(after.layout)
    strips = fillers(base) - fillers(after)
    money = _money_saved(base, after)
    saved = (sticks, seams, strips, money or 0)
    return Nudge(
        kind=trial.kind,
        wider=trial.wider,
        wall=trial.wall,
        condition=trial.condition,
        changes=tuple(_changes(base, after, center_on)),
        sticks_saved=sticks,
        seams_saved=seams,
        fillers_saved=strips,
        money_saved=money,
        saves=min(saved) >= 0 and max(saved) > 0,
    )


def _counted(spec: CeilingSpec, layout: Layout) -> CeilingSpec:
    grid = spec.grid
    for run in RunName:
        told = grid.run(run)
        if told.weights is None and not isinstance(told.coffers, tuple):
            counted = replace(
                told,
                coffers=coffers_along(layout, run),
                largest_opening=None,
                wished_opening=None,
            )
            grid = replace(grid, **{str(run): counted})
    return replace(spec, grid=grid)


def _of_width(spec: CeilingSpec, layout: Layout) -> Iterator[Trial]:
    for step in _STEPS[layout.ceiling.units]:
        for wider in (step, -step):
            yield Trial(
                replace(spec, beams=_widened(spec.beams, layout, wider)), "beam_width", wider=wider
            )


def _widened(beams: BeamsSpec, layout: Layout, wider: Length) -> BeamsSpec:
    families = beam_families(layout.ceiling.beams)
    crosswise = families[RunName.LENGTH].width.value + wider
    lengthwise = families[RunName.WIDTH].width.value + wider
    if beams.lengthwise is None:
        return replace(beams, crosswise=replace(beams.crosswise or BoxSpec(), width=crosswise))
    return replace(
        beams,
        crosswise=replace(beams.crosswise or BoxSpec(), width=crosswise),
        lengthwise=replace(beams.lengthwise, width=lengthwise),
    )


def _at_walls(spec: CeilingSpec, layout: Layout) -> Iterator[Trial]:
    for run in RunName:
        decided = layout.ceiling.grid.run(run)
        for name, wall, now in (
            ("start", START_WALL[run], decided.start),
            ("end", END_WALL[run], decided.end),
        ):
            for kind in _STANDING:
                then = with_kind(now, kind)
                if then != now:
                    grid = replace(spec.grid, **{str(run): _with(spec.grid.run(run), name, then)})
                    yield Trial(
                        replace(spec, grid=grid), "wall", wall=wall, condition=condition_words(then)
                    )


def _with(run: RunSpec, name: str, condition: WallCondition) -> RunSpec:
    return replace(run, start=condition) if name == "start" else replace(run, end=condition)


def _sticks(laid: LaidOut) -> int:
    return sum(each.quantity for each in laid.crown.sticks) if laid.crown else 0


def _money_saved(base: LaidOut, after: LaidOut) -> Decimal | None:
    if base.costed is None or after.costed is None or lacks(base) != lacks(after):
        return None
    return base.costed.cost.total.value - after.costed.cost.total.value


def _changes(base: LaidOut, after: LaidOut, center_on: tuple[str, ...]) -> Iterator[NudgeChange]:
    pair = (judged(base, center_on), judged(after, center_on))
    if lacks(base) != lacks(after):
        pair = (without_cost(pair[0]), without_cost(pair[1]))
    for before, now in zip(*pair, strict=True):
        was, becomes = (value_of(each.criterion, each.figure) for each in (before, now))
        if was != becomes:
            yield NudgeChange(before.criterion, before.figure, now.figure, becomes < was)
