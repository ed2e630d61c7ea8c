"""Sets out a whole ceiling: the one function other stages call."""

from collections.abc import Iterator, Mapping
from dataclasses import replace

from lacunar.layout.backing.ceiling_backing import backing
from lacunar.layout.backing.weights import HungPanel
from lacunar.layout.beams.board_ends import EndRules
from lacunar.layout.beams.crossings import crossings
from lacunar.layout.beams.cut_pieces import cut_pieces
from lacunar.layout.beams.drops import Drops, DropTask, drops
from lacunar.layout.beams.headroom import floor_faults, headroom
from lacunar.layout.beams.heights import heights
from lacunar.layout.beams.profile_book import (
    ProfileBook,
    beam_orders,
    family_orders,
    profile_book,
    wall_order,
)
from lacunar.layout.beams.standing_beams import running, square_meeting, standing_beams
from lacunar.layout.board_records import BoardLayout
from lacunar.layout.cautions import cautions
from lacunar.layout.families import Family, beam_families
from lacunar.layout.fault_gathering import FaultGathering, refuse
from lacunar.layout.fitting.order import fitting
from lacunar.layout.follow.coffers import followed_coffers, planned_openings
from lacunar.layout.follow.followed import Tapering, followed_beams, followed_walls
from lacunar.layout.follow.marks import at_the_most, marks_along_walls
from lacunar.layout.follow.meeting import followed_meeting
from lacunar.layout.followed_records import FollowedWalls
from lacunar.layout.item_records import WallFeatureCheck
from lacunar.layout.items.ceiling_items import ceiling_items
from lacunar.layout.items.strips import BuiltCeiling, OddRoom
from lacunar.layout.items.wall_features import WallSurroundings, check_features
from lacunar.layout.levels.ceiling_levels import levels
from lacunar.layout.measured_outcome import as_measured, measured_outcome, outcome_of
from lacunar.layout.mouldings.coffer_mouldings import MouldingTask, mouldings
from lacunar.layout.opening_records import MeasuredOpening
from lacunar.layout.openings.grid_id import grid_id
from lacunar.layout.outline.cells import Cell, cells, odd_coffers
from lacunar.layout.outline.corners import area_of
from lacunar.layout.outline.filling import Filling
from lacunar.layout.outline.forms import counted_forms
from lacunar.layout.outline.outlined_room import floor_area, outlined_room
from lacunar.layout.outline.rows import (
    inner_strips,
    inner_wall_beams,
    odd_room,
    outlined_meeting,
)
from lacunar.layout.outline.wall_features import OddWalls, odd_features
from lacunar.layout.outline_records import OutlinedRoom
from lacunar.layout.panel_stack import beam_stack
from lacunar.layout.panels.boards import board_layout
from lacunar.layout.panels.sheet_goods import AsMeasured, PanelRun, panels
from lacunar.layout.panels.sheet_rips import sheet_rips
from lacunar.layout.records import (
    CasingChoice,
    Clearance,
    Coffer,
    Layout,
    PanelFit,
    Point,
    RunLayout,
    RunMarks,
    WallBeam,
    profiles_by_beam,
)
from lacunar.layout.runs.casing_choices import casing_choices
from lacunar.layout.runs.coffers import coffers
from lacunar.layout.runs.fixed_things import FixedThing
from lacunar.layout.runs.marks import run_marks
from lacunar.layout.runs.run_records import run_layout
from lacunar.layout.runs.wall_strips import (
    run_of_wall,
)
from lacunar.layout.set_out_beams import SetOutBeams
from lacunar.layout.set_out_runs import SetOut, joists_above, set_out_runs
from lacunar.layout.survey.strip_boards import with_boards
from lacunar.measure.length import ZERO
from lacunar.model.beams import Box
from lacunar.model.ceiling import Ceiling
from lacunar.model.room import WALLS, RunName


def lay_out(ceiling: Ceiling) -> Layout:
    """Turn a decided ceiling into where everything stands.

    Raises SpecRefused with every fault of the stage that fails: beam widths; then both runs
    together with the beams' stock; then what is built on them.

    >>> from lacunar.measure.length import Length
    >>> from lacunar.model.assumptions import resolve
    >>> from lacunar.model.spec import CeilingSpec, RoomSpec
    >>> room = RoomSpec(Length.of_feet(16), Length.of_feet(12), Length.of_feet(9))
    >>> layout = lay_out(resolve(CeilingSpec(room)).ceiling)
    >>> len(layout.coffers), layout.coffers[0].length.value  # half beams: 192/4 - 7 = 144/3 - 7
    (12, Length(41 in))
    """
    families = beam_families(ceiling.beams)
    faults = FaultGathering()
    set_out = set_out_runs(ceiling, families, faults)
    if set_out is None:
        _judge_boxes(ceiling, families, faults)
        faults.refuse_if_any()
        raise AssertionError("runs that cannot be divided leave faults")
    book = _build(set_out, faults)
    faults.refuse_if_any()
    return _layout(set_out, book)


def _judge_boxes(
    ceiling: Ceiling, families: Mapping[RunName, Family], faults: FaultGathering
) -> None:
    """Find what is wrong with the beams themselves, though the runs could not be divided."""
    stack = beam_stack(ceiling)
    none_cased: dict[RunName, tuple[FixedThing, ...]] = dict.fromkeys(RunName, ())
    depths = drops(DropTask(ceiling.beams.depth, list(families.values()), none_cased, stack))
    profile_book(family_orders(families, depths), stack, faults)


def _used_families(set_out: SetOut) -> list[Family]:
    """The families that have a beam anywhere, at a wall or between."""
    return [
        family
        for name, family in set_out.families.items()
        if set_out.ends[name].at_start.beams
        or set_out.tasks[name].start_strips
        or set_out.tasks[name].end_strips
    ]


def _drops(set_out: SetOut) -> Drops:
    casings = {
        name: [thing for thing in task.things if thing.member is not None]
        for name, task in set_out.tasks.items()
    }
    stack = beam_stack(set_out.ceiling)
    depth = set_out.ceiling.beams.depth
    return drops(DropTask(depth, _used_families(set_out), casings, stack))


def _build(set_out: SetOut, faults: FaultGathering) -> ProfileBook:
    depths = _drops(set_out)
    families = set_out.families
    orders = [
        order
        for name in RunName
        for order in beam_orders(set_out.ends[name], families[name], depths)
    ]
    for wall in WALLS:
        family = families[run_of_wall(wall)]
        orders += [(strip.id, wall_order(strip, family, depths)) for strip in set_out.strips[wall]]
    if set_out.outlined is not None:
        spans = set_out.outlined.spans
        orders = [(user, order) for user, order in orders if spans.get(user, True)]
        for strip, run in inner_strips(set_out.outlined.region):
            orders.append((strip.id, wall_order(strip, families[run], depths)))
    return profile_book(orders, beam_stack(set_out.ceiling), faults)


def _layout(set_out: SetOut, book: ProfileBook) -> Layout:
    ceiling, ends = set_out.ceiling, set_out.ends
    clearances = _clearances(set_out, book)
    found, within = _coffers(set_out)
    runs = {name: run_layout(ends[name]) for name in RunName}
    beams, ends_of = _standing(set_out, book, runs)
    grid, measured = _measured(set_out, found, within)
    fitted, boards = _filled(set_out, found, measured)
    trim = mouldings(MouldingTask(ceiling, runs, book.profiles, found, measured.openings))
    framing = backing(ceiling, beams, joists_above(set_out), tuple(_hung(fitted, boards)))
    flats, odd = ceiling.flat_mouldings, _odd(set_out, within)
    built = BuiltCeiling(runs, book.profiles, found, trim, flats, framing.joists, odd)
    layout = Layout(
        ceiling=ceiling,
        outline=_outline(set_out),
        length=runs[RunName.LENGTH],
        width=runs[RunName.WIDTH],
        beams=beams.beams,
        wall_beams=beams.wall_beams,
        coffers=found,
        grid_id=grid,
        profiles=book.profiles,
        panels=fitted,
        mouldings=trim,
        boards=boards,
        sheet_rips=sheet_rips(book.profiles, ceiling.stock.kerf),
        marks=tuple(_marks(set_out)),
        headroom=clearances,
        heights=heights(ceiling, clearances, runs, beams.beams),
        levels=levels(ceiling, beams, {name: set_out.tasks[name].frame for name in RunName}),
        backing=framing,
        casing_choices=tuple(_casing_choices(set_out)),
        measured_openings=measured_outcome(ceiling, found, measured),
        crossings=crossings(ends_of),
        pieces=cut_pieces(ends_of, ceiling.stock),
        items=ceiling_items(ceiling, built, set_out.tasks),
        wall_features=_features(set_out, within, _walls(set_out, beams)),
        crooked=with_boards(set_out.crooked, beams.wall_beams, book.profiles),
        followed=_followed(set_out, ends_of, measured),
    )
    return _advised(replace(layout, outlined=_outlined(set_out, ends_of, within, built)))


def _clearances(set_out: SetOut, book: ProfileBook) -> tuple[Clearance, ...]:
    """Headroom under each profile, of which none may reach the floor."""
    clearances = headroom(set_out.ceiling.room, book.profiles)
    refuse(list(floor_faults(clearances)))
    return clearances


def _standing(
    set_out: SetOut, book: ProfileBook, runs: Mapping[RunName, RunLayout]
) -> tuple[SetOutBeams, EndRules]:
    """The beams as they stand, and what decides how their boards end."""
    asked, ends = set_out.ceiling.beams, set_out.ends
    inner: tuple[WallBeam, ...] = ()
    if set_out.following is not None:
        family = running(ends, asked.through)
        meeting = followed_meeting(set_out.following, book, family)
    elif set_out.outlined is None:
        meeting = square_meeting(ends, book, asked.through)
    else:
        meeting = outlined_meeting(set_out.outlined, book, running(ends, asked.through))
        inner = tuple(inner_wall_beams(set_out.outlined.region, meeting, book))
    standing = standing_beams(ends, book, meeting)
    beams = SetOutBeams(runs, standing.beams, (*standing.wall_beams, *inner), book.by_id)
    if set_out.outlined is not None:
        within = set_out.outlined.region
        floor, forms = floor_area(set_out.outlined), counted_forms(within, meeting)
        beams = replace(beams, floor=floor, forms=forms)
    return beams, EndRules(meeting, asked.look)


def _coffers(set_out: SetOut) -> tuple[tuple[Coffer, ...], tuple[Cell, ...]]:
    """The whole coffers; in a room with other than four walls also its cells, whole and cut."""
    ends, room = set_out.ends, set_out.outlined
    if set_out.following is not None and set_out.crooked is not None:
        columns = sum(zone.coffers.value for zone in ends[RunName.LENGTH].at_start.zones)
        return followed_coffers(set_out.crooked, columns), ()
    found = coffers(ends[RunName.LENGTH].at_start, ends[RunName.WIDTH].at_start)
    if room is None:
        return found, ()
    within = cells(room.region, room.ends, room.spans)
    whole = {cell.id for cell in within if cell.whole}
    return tuple(coffer for coffer in found if coffer.id in whole), within


def _measured(
    set_out: SetOut, found: tuple[Coffer, ...], within: tuple[Cell, ...]
) -> tuple[str, AsMeasured]:
    """The grid's id, and what was measured in it."""
    cut = {cell.id: cell.corners for cell in within if not cell.whole}
    tapering = _planned_tapering(set_out, found)
    return grid_id(found, cut), as_measured(set_out.ceiling, found, tapering, cut)


def _odd(set_out: SetOut, within: tuple[Cell, ...]) -> OddRoom | None:
    """What ceiling items are held against in a room with other than four walls."""
    if set_out.outlined is None:
        return None
    room = set_out.outlined
    standing = (*room.spans, *(s.id for strips in room.region.strips.values() for s in strips))
    return odd_room(room, odd_coffers(within, room.region, standing))


def _outlined(
    set_out: SetOut, rules: EndRules, within: tuple[Cell, ...], built: BuiltCeiling
) -> OutlinedRoom | None:
    """What is told of a room with other than four walls."""
    room = set_out.outlined
    if room is None:
        return None
    profiles, crown = profiles_by_beam(built.profiles), built.mouldings.crown
    filling = Filling(set_out.ceiling, crown, room.region.approximate, profiles.keys())
    return outlined_room(room, rules.meeting, within, profiles, filling)


def _planned_tapering(set_out: SetOut, found: tuple[Coffer, ...]) -> tuple[MeasuredOpening, ...]:
    """The openings as planned where the grid follows the walls; none elsewhere."""
    crooked, asked = set_out.crooked, set_out.ceiling.room.crooked
    if set_out.following is None or crooked is None or asked is None:
        return ()
    return tuple(planned_openings(crooked, found, asked.out_of_square_limit))


def _followed(set_out: SetOut, rules: EndRules, measured: AsMeasured) -> FollowedWalls | None:
    """What is told of a grid that follows the walls."""
    grid, crooked, asked = set_out.following, set_out.crooked, set_out.ceiling.room.crooked
    if grid is None or crooked is None or asked is None or set_out.surveyed is None:
        return None
    room = area_of(set_out.surveyed.corners, approximate=True)
    beams = tuple(followed_beams(rules.meeting, grid))
    said = set_out.ceiling.measured_openings
    taken = {each.coffer for each in said.coffers} if said else set()
    planned = [each for each in measured.openings if each.coffer not in taken]
    outcome = outcome_of(set_out.ceiling, measured, {each.coffer for each in planned})
    return followed_walls(crooked, asked, room, beams, Tapering(planned, outcome))


def _advised(layout: Layout) -> Layout:
    """The layout with what is said of it as a whole: order of fitting and cautions."""
    layout = replace(layout, fitting=fitting(layout))
    return replace(layout, cautions=tuple(cautions(layout)))


def _boxes(set_out: SetOut, name: RunName) -> Box | None:
    """The box a run's family is built as, whose backing is marked; flat beams have none."""
    built = set_out.families[name].built
    return built if isinstance(built, Box) else None


def _panel_runs(set_out: SetOut) -> dict[RunName, PanelRun]:
    """What panels are sized by along each run, with the joists that are met along it."""
    joists, found = joists_above(set_out), {}
    for name in RunName:
        divided = set_out.ends[name].at_start
        if set_out.following is not None:
            divided = at_the_most(set_out.ends[name])
        met = joists if joists is not None and joists.on is name else None
        found[name] = PanelRun(divided, set_out.families[name].built, met)
    return found


def _marks(set_out: SetOut) -> Iterator[RunMarks]:
    step = set_out.ceiling.mark_to
    for name in RunName:
        box = _boxes(set_out, name)
        if set_out.following is None:
            yield from run_marks(set_out.ends[name], box, step)
        else:
            yield from marks_along_walls(set_out.following.along[name], box, step)


def _casing_choices(set_out: SetOut) -> Iterator[CasingChoice]:
    for name in RunName:
        yield from casing_choices(set_out.tasks[name], set_out.plans[name], set_out.ends[name])


def _features(
    set_out: SetOut, within: tuple[Cell, ...], around: WallSurroundings
) -> tuple[WallFeatureCheck, ...]:
    """What beams do at wall features."""
    features = set_out.ceiling.room.wall_features
    if set_out.outlined is None:
        return check_features(features, around)
    return odd_features(features, OddWalls(set_out.outlined, within, around))


def _walls(set_out: SetOut, beams: SetOutBeams) -> WallSurroundings:
    """What wall features are held against."""
    frames = {run: task.frame for run, task in set_out.tasks.items()}
    return WallSurroundings(frames, beams, set_out.ceiling.room.height)


def _filled(
    set_out: SetOut, found: tuple[Coffer, ...], measured: AsMeasured
) -> tuple[tuple[PanelFit, ...], BoardLayout | None]:
    """What fills the coffers: sheet panels, or boards."""
    panel, across = set_out.ceiling.panel, _panel_runs(set_out)
    return panels(panel, across, found, measured), board_layout(panel, across, found, measured)


def _hung(fitted: tuple[PanelFit, ...], boards: BoardLayout | None) -> Iterator[HungPanel]:
    """What is to be weighed of the panels, whatever they are made of."""
    for panel in fitted:
        yield HungPanel(len(panel.coffers), panel.length.value, panel.width.value)
    for field in boards.fields if boards else ():
        yield HungPanel(field.fields.value, field.length.value, field.courses.across.value)


def _outline(set_out: SetOut) -> tuple[Point, ...]:
    if set_out.outlined:
        first, *others = set_out.outlined.region.corners
        return tuple(Point(corner.x, corner.y) for corner in (first, *reversed(others)))
    if set_out.surveyed:
        return tuple(Point(corner.x, corner.y) for corner in set_out.surveyed.corners)
    ends = set_out.ends
    length = ends[RunName.LENGTH].frame.span.value
    width = ends[RunName.WIDTH].frame.span.value
    return Point(ZERO, ZERO), Point(length, ZERO), Point(length, width), Point(ZERO, width)
