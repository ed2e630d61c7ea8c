"""Sets out crown and flat mouldings in every coffer: the one function of these that others call."""

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass, replace

from lacunar.layout.coffer_surroundings import SidePair, Surroundings, surroundings
from lacunar.layout.fault_gathering import refuse
from lacunar.layout.moulding_records import CofferTrim, MouldingPiece, Mouldings, SideCover
from lacunar.layout.mouldings.crown import crown_section
from lacunar.layout.mouldings.faults import bearing_faults, cover_faults, room_faults, spring_faults
from lacunar.layout.mouldings.measured_pieces import asked_for, fitting, measured_pieces
from lacunar.layout.mouldings.pieces import (
    TOWARD,
    CofferPieces,
    CrownInCoffers,
    crown_pieces,
    flat_pieces,
    flats_at,
    left_by_flats,
    nailer_pieces,
    openings,
    standing_out,
)
from lacunar.layout.opening_records import MeasuredOpening
from lacunar.layout.records import BeamProfile, Coffer, RunLayout, profiles_by_beam
from lacunar.measure.figure import LengthFigure, Rule
from lacunar.measure.length import ZERO, Length
from lacunar.model.ceiling import Ceiling
from lacunar.model.moulding import Crown, CrownMethod, FlatPlace
from lacunar.model.openings import OutOfSquare
from lacunar.model.room import RunName

SEEN_IN_FRAME = Rule(
    "seen opening: the opening less the fit of the frame and the projection on both sides",
    "opening - fit_total - 2 * projection",
)
SEEN_COPED = Rule(
    "seen opening: the opening less the projection on both sides", "opening - 2 * projection"
)
MOUTH = Rule(
    "mouth: the opening less overhangs and the mouldings at the lower edges, on both sides",
    "opening - near_overhang - near_mouldings - far_overhang - far_mouldings",
)
RUNNING_LENGTH = Rule(
    "crown of one coffer: its long points end to end", "2 * along_length + 2 * along_width"
)
RUNNING_ROUND = Rule("crown of one coffer: its long points end to end", "w1 + w2 + w3 + w4")
SIDE_LEFT = Rule(
    "side left to be seen between the mouldings above and the mouldings at the lower edge",
    "exposed_side - max(crown_drop, behind_width) - edge_width",
)


@dataclass(frozen=True, slots=True)
class MouldingTask:
    """A ceiling's beams and coffers: what mouldings are fitted into, as planned or as measured."""

    ceiling: Ceiling
    runs: Mapping[RunName, RunLayout]
    profiles: Sequence[BeamProfile]
    coffers: tuple[Coffer, ...]
    measured: tuple[MeasuredOpening, ...] = ()


def mouldings(task: MouldingTask) -> Mouldings:
    """Turn what is asked for and what it goes into into mouldings.

    Formula: seen opening = opening - 2 flats at the ceiling - fit_total - 2p; mouth = opening -
    2 (overhang + mouldings at the lower edge), each side with its own.

    Raises SpecRefused where the crown stands too far off its spring, where a moulding lies on
    nothing, where a side is too small for its mouldings, or where they fill a coffer.
    """
    asked = task.ceiling.crown
    crown = None if asked is None else CrownInCoffers(asked, crown_section(asked))
    flats = task.ceiling.flat_mouldings
    if crown is not None:
        refuse([*spring_faults(crown), *bearing_faults(crown, flats)])
    covers = tuple(_cover(task, crown, profile) for profile in task.profiles)
    trims = tuple(_trims(task, crown))
    refuse([*cover_faults(task.ceiling, covers), *room_faults(task.ceiling, trims)])
    sides = covers if crown is not None or flats else ()
    return Mouldings(None if crown is None else crown.section, sides, trims)


def _cover(task: MouldingTask, crown: CrownInCoffers | None, profile: BeamProfile) -> SideCover:
    """What is left of the sides of a profile."""
    flats = task.ceiling.flat_mouldings
    drop = ZERO if crown is None else crown.section.drop.value
    behind, edge = (
        max((flat.width for flat in flats_at(place, flats)), default=ZERO) for place in FlatPlace
    )
    exposed = profile.exposed_side.value
    gives = SIDE_LEFT.gives
    if crown is not None and crown.section.drop.approximate:
        gives = SIDE_LEFT.approximates
    left = gives(
        exposed - max(drop, behind) - edge,
        exposed_side=exposed,
        crown_drop=drop,
        behind_width=behind,
        edge_width=edge,
    )
    return SideCover(profile.id, left)


def _trims(task: MouldingTask, crown: CrownInCoffers | None) -> Iterator[CofferTrim]:
    """Coffers of one size with the same about them together, in the order of the first of each.

    A coffer that was measured stands by itself.
    """
    measured = {opening.coffer: opening for opening in task.measured}
    profile_of = profiles_by_beam(task.profiles)
    groups: dict[tuple[object, ...], list[Surroundings]] = {}
    for around in surroundings(task.runs, profile_of, task.coffers):
        coffer = around.coffer
        key: tuple[object, ...] = (coffer.id,)
        if coffer.id not in measured:
            key = (coffer.length.value, coffer.width.value, around.length, around.width)
        groups.setdefault(key, []).append(around)
    for group in groups.values():
        opening = measured.get(group[0].coffer.id)
        if opening is not None:
            yield _measured_trim(task.ceiling, crown, group[0], opening)
            continue
        ids = tuple(around.coffer.id for around in group)
        yield _trim(task.ceiling, crown, group[0], ids)


def _measured_trim(
    ceiling: Ceiling,
    crown: CrownInCoffers | None,
    around: Surroundings,
    opening: MeasuredOpening,
) -> CofferTrim:
    """The trim of a coffer that was measured; out of square, its crown goes in another way."""
    fitted = replace(around.coffer, length=opening.fit_length, width=opening.fit_width)
    as_built = replace(around, coffer=fitted)
    way = None
    if crown is not None:
        way = fitting(opening, crown, asked_for(ceiling, opening))
    if crown is not None and way is OutOfSquare.COPED_IN_PLACE:
        coped = replace(crown.asked, method=CrownMethod.COPED_IN_PLACE)
        crown = replace(crown, asked=coped)
    pieces = measured_pieces(as_built, opening, crown, way, ceiling.flat_mouldings)
    return _trim(ceiling, crown, as_built, (opening.coffer,), pieces)


def _planned_pieces(
    ceiling: Ceiling,
    crown: CrownInCoffers | None,
    around: Surroundings,
    left: dict[RunName, LengthFigure],
) -> CofferPieces:
    upper, lower = (flats_at(place, ceiling.flat_mouldings) for place in FlatPlace)
    return CofferPieces(
        upper=tuple(flat_pieces(around, upper)),
        crown=() if crown is None else crown_pieces(crown, left),
        lower=tuple(flat_pieces(around, lower)),
    )


def _trim(
    ceiling: Ceiling,
    crown: CrownInCoffers | None,
    around: Surroundings,
    coffers: tuple[str, ...],
    measured: CofferPieces | None = None,
) -> CofferTrim:
    """The trim of coffers that are alike."""
    upper, lower = (flats_at(place, ceiling.flat_mouldings) for place in FlatPlace)
    left = {
        run: left_by_flats(opening, standing_out(upper))
        for run, opening in openings(around).items()
    }
    seen = {run: _seen(crown, left[run]) for run in RunName}
    mouth = {
        run: _mouth(openings(around)[run], around.across(run), standing_out(lower))
        for run in RunName
    }
    pieces = measured or _planned_pieces(ceiling, crown, around, left)
    return CofferTrim(
        coffers=coffers,
        seen_length=seen[RunName.LENGTH],
        seen_width=seen[RunName.WIDTH],
        mouth_length=mouth[RunName.LENGTH],
        mouth_width=mouth[RunName.WIDTH],
        pieces=(*pieces.upper, *pieces.crown, *pieces.lower),
        nailers=() if crown is None else nailer_pieces(crown, left),
        running_length=_running_length(pieces.crown),
        frame_passes_mouth=_frame_passes(
            None if crown is None else crown.asked, pieces.crown, mouth
        ),
    )


def _seen(crown: CrownInCoffers | None, left: LengthFigure) -> LengthFigure:
    if crown is None:
        return left
    projection = crown.section.projection
    framed = crown.asked.method is CrownMethod.BENCH_FRAME
    rule = SEEN_IN_FRAME if framed else SEEN_COPED
    gives = rule.approximates if projection.approximate else rule.gives
    opening, fit = left.value, crown.asked.fit_total
    if framed:
        return gives(
            opening - fit - projection.value * 2,
            opening=opening,
            fit_total=fit,
            projection=projection.value,
        )
    return gives(opening - projection.value * 2, opening=opening, projection=projection.value)


def _mouth(opening: LengthFigure, sides: SidePair, standing: Length) -> LengthFigure:
    """What is left between the lower edges; a bare wall has none."""
    near, far = (standing if side.beam else ZERO for side in (sides.near, sides.far))
    overhangs = sides.near.overhang, sides.far.overhang
    if not any((near, far, *overhangs)):
        return opening
    return MOUTH.gives(
        opening.value - overhangs[0] - near - overhangs[1] - far,
        opening=opening.value,
        near_overhang=overhangs[0],
        near_mouldings=near,
        far_overhang=overhangs[1],
        far_mouldings=far,
    )


def _running_length(pieces: tuple[MouldingPiece, ...]) -> LengthFigure | None:
    if not pieces:
        return None
    by_wall = {wall: piece.long_point for piece in pieces for wall in piece.toward}
    unlike = {run: {by_wall[wall].value for wall in TOWARD[run]} for run in RunName}
    if any(len(sizes) > 1 for sizes in unlike.values()):
        told = {f"w{wall[1]}": by_wall[wall].value for wall in sorted(by_wall)}
        approximate = any(figure.approximate for figure in by_wall.values())
        gives = RUNNING_ROUND.approximates if approximate else RUNNING_ROUND.gives
        return gives(sum(told.values(), ZERO), **told)
    along, across = (
        next(piece.long_point.value for piece in pieces if piece.along is run) for run in RunName
    )
    return RUNNING_LENGTH.gives(along * 2 + across * 2, along_length=along, along_width=across)


def _frame_passes(
    crown: Crown | None, pieces: tuple[MouldingPiece, ...], mouth: Mapping[RunName, LengthFigure]
) -> bool | None:
    """Whether a bench frame is within the mouth, each way by the shorter of its long points.

    Where these differ the frame is mitred to the coffer's corners, and the mouth tapers with it.
    """
    if crown is None or crown.method is not CrownMethod.BENCH_FRAME:
        return None
    return all(
        min(piece.long_point.value for piece in pieces if piece.along is run) <= mouth[run].value
        for run in RunName
    )
