"""What each stage of fitting has to put up, by the ids of it."""

from collections.abc import Iterator, Mapping

from lacunar.layout.crossing_records import EndsAt
from lacunar.layout.fitting_records import Stage
from lacunar.layout.records import BeamProfile, ElementKind, Layout
from lacunar.model.beams import BottomJoint
from lacunar.model.fixing import BetweenJoists
from lacunar.model.moulding import CrownMethod, FlatPlace


def parts_of(layout: Layout) -> Mapping[Stage, tuple[str, ...]]:
    """Turn a layout into the ids that each of its stages puts up; stages without any are left out.

    Beams stand in the order in which they go up: those at the walls, which go round the room, then
    those that run through, then those cut in between; but none before what its sides end against.
    """
    found = {
        **_above(layout),
        **_beams(layout),
        **_panels(layout),
        **_mouldings(layout),
    }
    return {stage: ids for stage, ids in found.items() if ids}


def _above(layout: Layout) -> Mapping[Stage, tuple[str, ...]]:
    """Lines, and what carries beams that no joist does."""
    carried: dict[BetweenJoists, dict[str, None]] = {}
    for line in layout.backing.lines:
        if line.carried_by is not None:
            carried.setdefault(line.carried_by, {})[line.beam] = None
    return {
        Stage.SNAP_LINES: tuple(_by_kind(layout)),
        Stage.SKIN: tuple(carried.get(BetweenJoists.SKIN, ())),
        Stage.BLOCKING: tuple(carried.get(BetweenJoists.BLOCKING, ())),
    }


def _in_turn(layout: Layout) -> Iterator[str]:
    """All beams as they go up; where each ends against another, the first in turn starts."""
    against = _ended_against(layout)
    waiting = list(_by_kind(layout))
    while waiting:
        free = (one for one in waiting if not against.get(one, set()).intersection(waiting))
        nearest = next(free, waiting[0])
        waiting.remove(nearest)
        yield nearest


def _by_kind(layout: Layout) -> Iterator[str]:
    yield from (beam.id for beam in layout.wall_beams)
    if layout.outlined is not None:
        yield from (beam.id for beam in layout.outlined.angled_beams)
    for through in (True, False):
        yield from (beam.id for beam in layout.beams if beam.through is through)


def _ended_against(layout: Layout) -> Mapping[str, set[str]]:
    """By the id of a beam, those whose sides its own sides butt against."""
    found: dict[str, set[str]] = {}
    for crossing in layout.crossings:
        butts = {each.beam for each in crossing.ends if each.end.ends_at is EndsAt.SIDE}
        if butts != {"stopped"}:
            continue
        for place in crossing.places:
            found.setdefault(place.stopped, set()).add(place.through)
    return found


def _beams(layout: Layout) -> Mapping[Stage, tuple[str, ...]]:
    found: dict[Stage, list[str]] = {}
    profiles = layout.profile_of
    cased = {beam.id for beam in layout.beams if beam.kind is ElementKind.CASED_BEAM}
    for beam in _in_turn(layout):
        if beam in cased:
            found.setdefault(Stage.CASING_CLEATS, []).append(beam)
        for stage in _stages(profiles[beam]):
            found.setdefault(stage, []).append(beam)
    return {stage: tuple(beams) for stage, beams in found.items()}


def _stages(profile: BeamProfile) -> Iterator[Stage]:
    """The stages a profile's boards go up in; a folded beam's sides and bottom go up as one."""
    boards = {part.name for part in profile.parts}
    if "backing" in boards:
        yield Stage.BACKING
    if "side" in boards and profile.bottom_joint is BottomJoint.MITRED:
        yield Stage.FOLDED_BEAMS
        return
    if "side" in boards:
        yield Stage.SIDES
    if "bottom" in boards:
        yield Stage.BOTTOMS


def _panels(layout: Layout) -> Mapping[Stage, tuple[str, ...]]:
    fields = layout.boards.fields if layout.boards else ()
    cut = layout.outlined.partial_coffers if layout.outlined else ()
    panels = [coffer for panel in layout.panels for coffer in panel.coffers]
    panels += [coffer.id for coffer in cut if coffer.panel_length is not None]
    boarded = [coffer for field in fields for coffer in field.coffers]
    boarded += [coffer.id for coffer in cut if coffer.courses]
    return {Stage.PANELS: tuple(panels), Stage.BOARDS: tuple(dict.fromkeys(boarded))}


def _mouldings(layout: Layout) -> Mapping[Stage, tuple[str, ...]]:
    """Mouldings by the coffers they are in; those at the lower edges only where there are beams."""
    section = layout.mouldings.crown
    at_edge = {f.name for f in layout.ceiling.flat_mouldings if f.at is FlatPlace.BOTTOM_EDGE}
    above = any(flat.at is FlatPlace.CEILING for flat in layout.ceiling.flat_mouldings)
    every = (*(coffer.id for coffer in layout.coffers), *_cut(layout))
    edged = tuple(
        coffer
        for trim in layout.mouldings.coffers
        if any(piece.moulding in at_edge for piece in trim.pieces)
        for coffer in trim.coffers
    ) + tuple(
        coffer.id
        for coffer in (layout.outlined.partial_coffers if layout.outlined else ())
        if any(strip.moulding in at_edge for side in coffer.all_sides for strip in side.strips)
    )
    return {
        Stage.EDGE_MOULDINGS: edged,
        Stage.CEILING_MOULDINGS: every if above else (),
        Stage.CROWN_NAILERS: every if section is not None and section.nailer is not None else (),
        Stage.CROWN_FRAMES: _crowned(layout, framed=True),
        Stage.COPED_CROWN: _crowned(layout, framed=False),
    }


def _crowned(layout: Layout, *, framed: bool) -> tuple[str, ...]:
    """The coffers whose crown is a frame, or those where it is coped: out of square, some are."""
    if layout.mouldings.crown is None:
        return ()
    frames = {
        coffer
        for trim in layout.mouldings.coffers
        if trim.frame_passes_mouth is not None
        for coffer in trim.coffers
    }
    method = layout.ceiling.crown.method if layout.ceiling.crown else None
    cut = _cut(layout) if (method is CrownMethod.BENCH_FRAME) is framed else ()
    whole = (coffer.id for coffer in layout.coffers if (coffer.id in frames) is framed)
    return (*whole, *cut)


def _cut(layout: Layout) -> tuple[str, ...]:
    """The coffers that walls cut."""
    if layout.outlined is None:
        return ()
    return tuple(coffer.id for coffer in layout.outlined.partial_coffers)
