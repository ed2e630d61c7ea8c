"""Decides what a search leaves open, and lists what it decided and why."""

from collections.abc import Mapping
from dataclasses import dataclass
from fractions import Fraction

from lacunar.choosing.asked import ChoicesSpec, Limits, RunLimits
from lacunar.choosing.rules import choices_faults
from lacunar.measure.length import Length
from lacunar.measure.units import Units
from lacunar.model.assuming import Assuming
from lacunar.model.beams import Through
from lacunar.model.ceiling import Assumption
from lacunar.model.ceiling_items import FeatureKind
from lacunar.model.choosing_limits import USUALLY_LAID_OUT
from lacunar.model.defaults import DEFAULTS
from lacunar.model.faults import SpecRefused
from lacunar.model.item_assumptions import decide_wall_features
from lacunar.model.limits import COFFERS_PER_RUN
from lacunar.model.room import RunName
from lacunar.model.spec import CeilingSpec, RunSpec
from lacunar.model.wall_kind import WallKind


@dataclass(frozen=True, slots=True)
class _Usual:
    """What is tried in one unit system where nothing is said."""

    smallest: Length
    largest: Length
    widths: tuple[Length, ...]


def _inches(amount: str) -> Length:
    return Length.of_inches(Fraction(amount))


def _millimeters(amount: int) -> Length:
    return Length.of_millimeters(amount)


# Common practice, no source: coffers of 2 ft to 6 ft, and beams whose bottom is a dressed 1x4, 1x6
# or 1x8 between two sides of 3/4 in, or of 100, 120 or 140 mm between two of 18 mm.
_USUAL: Mapping[Units, _Usual] = {
    Units.INCH: _Usual(_inches("24"), _inches("72"), (_inches("5"), _inches("7"), _inches("35/4"))),
    Units.MILLIMETER: _Usual(
        _millimeters(600),
        _millimeters(1800),
        (_millimeters(136), _millimeters(156), _millimeters(176)),
    ),
}
_WALLS = (WallKind.HALF, WallKind.FULL, WallKind.NONE)


def decide(spec: CeilingSpec, said: ChoicesSpec) -> tuple[Limits, tuple[Assumption, ...]]:
    """Turn what was said of a search into limits, and what was assumed for them.

    What the ceiling tells is kept unless it is named here; what it leaves open is varied. Errors:
    `SpecRefused` with every fault in what was said.
    """
    faults = tuple(choices_faults(spec, said))
    if faults:
        raise SpecRefused(faults)
    assuming = Assuming()
    usual = _USUAL[spec.units or Units.INCH]
    limits = Limits(
        length=_run(RunName.LENGTH, spec, said, assuming),
        width=_run(RunName.WIDTH, spec, said, assuming),
        smallest_opening=_smallest(said, usual, assuming),
        largest_opening=_largest(said, usual, assuming),
        widths=_widths(spec, said, usual, assuming),
        through=_through(said, assuming),
        center_on=_centers(spec, said, assuming),
        crown_lengths=_crown(spec, said, assuming),
        weights=tuple((criterion, weight) for criterion, weight in said.weights if weight),
        most_laid_out=assuming.settle(
            said.most_laid_out,
            "/choices/most_laid_out",
            USUALLY_LAID_OUT,
            "enough for a normal room, in well under a second",
        ),
        nudges_of=said.nudges_of,
    )
    return limits, assuming.made


def _run(name: RunName, spec: CeilingSpec, said: ChoicesSpec, assuming: Assuming) -> RunLimits:
    run, counts = spec.grid.run(name), said.counts(name)
    pointer = f"/choices/{name}_coffers"
    fewest: int | None = None
    most: int | None = None
    if counts is not None:
        fewest, most = counts.fewest or 1, counts.most or COFFERS_PER_RUN
    elif _is_counted(run):
        assuming.note(pointer, "kept", "the ceiling tells how many coffers this run has")
    else:
        fewest, most = 1, COFFERS_PER_RUN
        assuming.note(pointer, "any", "every number is tried whose openings are within the limits")
    walls = _walls(run, said, f"/grid/{name}", assuming)
    return RunLimits(name, fewest, most, walls, said.walls is not None)


def _is_counted(run: RunSpec) -> bool:
    """Whether the ceiling tells how many coffers a run has, by whichever rule."""
    told = (run.coffers, run.largest_opening, run.wished_opening, run.held, run.weights)
    return any(each is not None for each in told)


def _walls(run: RunSpec, said: ChoicesSpec, place: str, assuming: Assuming) -> tuple[WallKind, ...]:
    if said.walls is not None:
        return tuple(dict.fromkeys(said.walls))
    for name in ("start", "end"):
        if getattr(run, name) is None:
            assuming.note(f"{place}/{name}", ", ".join(_WALLS), "what can stand at a wall is tried")
    return _WALLS if run.start is None or run.end is None else ()


def _smallest(said: ChoicesSpec, usual: _Usual, assuming: Assuming) -> Length:
    if said.smallest_opening is None and said.largest_opening is not None:
        smallest = min(usual.smallest, said.largest_opening)
    else:
        smallest = usual.smallest
    reason = "smaller coffers read fussy, and cost a joint for every foot"
    return assuming.settle(said.smallest_opening, "/choices/smallest_opening", smallest, reason)


def _largest(said: ChoicesSpec, usual: _Usual, assuming: Assuming) -> Length:
    largest = max(usual.largest, said.smallest_opening or usual.largest)
    reason = "larger coffers leave a few beams on a bare ceiling"
    return assuming.settle(said.largest_opening, "/choices/largest_opening", largest, reason)


def _widths(
    spec: CeilingSpec, said: ChoicesSpec, usual: _Usual, assuming: Assuming
) -> tuple[Length, ...]:
    if said.beam_widths is not None:
        return tuple(dict.fromkeys(said.beam_widths))
    if spec.beams.crosswise is not None or spec.beams.lengthwise is not None:
        reason = "the ceiling tells what its beams are built of"
        assuming.note("/choices/beam_widths", "kept", reason)
        return ()
    for place, width in enumerate(usual.widths):
        reason = "what usual boards make of a box beam"
        assuming.note(f"/choices/beam_widths/{place}", width, reason)
    return usual.widths


def _through(said: ChoicesSpec, assuming: Assuming) -> tuple[Through, ...]:
    if said.through is None:
        reason = "which beams run through is as the ceiling says, or the longer ones"
        assuming.note("/choices/through", "kept", reason)
    return tuple(dict.fromkeys(said.through or ()))


def _centers(spec: CeilingSpec, said: ChoicesSpec, assuming: Assuming) -> tuple[str, ...]:
    if said.center_on is not None:
        return said.center_on
    features = decide_wall_features(spec.room.wall_features, Assuming())
    found = tuple(each.name for each in features if each.kind is FeatureKind.FIREPLACE)
    for place, name in enumerate(found):
        assuming.note(f"/choices/center_on/{place}", name, "a fireplace is what a room is about")
    return found


def _crown(spec: CeilingSpec, said: ChoicesSpec, assuming: Assuming) -> tuple[Length, ...]:
    if said.crown_lengths is not None or spec.crown is None:
        return said.crown_lengths or ()
    longest = spec.stock.longest_board or DEFAULTS[spec.units or Units.INCH].longest_board
    assuming.note("/choices/crown_lengths/0", longest, "crown is bought as long as other boards")
    return (longest,)
