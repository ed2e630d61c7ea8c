"""Decides everything a spec leaves open, and lists what it decided and why."""

from dataclasses import dataclass, fields, replace

from lacunar.measure.length import ZERO, Length
from lacunar.measure.units import Units
from lacunar.model.assuming import Assuming, FreeNames
from lacunar.model.beam_assumptions import BeamSurroundings, decide_beams
from lacunar.model.ceiling import Assumption, Ceiling
from lacunar.model.column_assumptions import decide_columns
from lacunar.model.defaults import DEFAULTS, NAME, REVISION, Defaults
from lacunar.model.drawing import Drawing, MockUp, PrintSize, SheetNumber, StoryPoles
from lacunar.model.fixing_assumptions import FixingSurroundings, decide_fixing, decide_joists
from lacunar.model.grid import (
    CoffersInAll,
    CoffersPerZone,
    CountRule,
    FixedBeam,
    Grid,
    LargestOpening,
    Run,
    WallCondition,
    WishedOpening,
)
from lacunar.model.item_assumptions import decide_items, decide_wall_features
from lacunar.model.moulding_assumptions import decide_crown, decide_flat_mouldings
from lacunar.model.opening_assumptions import decide_openings
from lacunar.model.outline_assumptions import decide_outline, rough_sizes
from lacunar.model.panel_assumptions import decide_panel
from lacunar.model.room import Casing, MeasuredTo, Member, Room, RunName
from lacunar.model.spec import (
    CeilingSpec,
    DrawingSpec,
    FixedBeamSpec,
    GridSpec,
    MemberSpec,
    RoomSpec,
    RunSpec,
)
from lacunar.model.station_assumptions import decide_height, decide_leveling, decide_stations
from lacunar.model.stations import greatest_rise
from lacunar.model.stock_length import decide_stock
from lacunar.model.survey_assumptions import decide_crooked, decide_survey, nominal_sizes
from lacunar.model.take_off_assumptions import decide_take_off
from lacunar.model.wall_kind import WallKind


@dataclass(frozen=True, slots=True)
class Resolution:
    """A ceiling with nothing open, and what was assumed to close it.

    What was assumed for the take-off alone stands apart: it has no bearing on what is built.
    """

    ceiling: Ceiling
    assumptions: tuple[Assumption, ...]
    take_off_assumptions: tuple[Assumption, ...] = ()


def resolve(spec: CeilingSpec) -> Resolution:
    """Turn a spec that has passed the rules into a ceiling.

    Every place that was left open and matters is filled and listed as an `Assumption`. A resolved
    ceiling read back as a spec assumes nothing and gives the same ceiling.
    """
    assuming = Assuming()
    units = assuming.settle(
        spec.units, "/units", Units.INCH, "no units are given, and inches are the trade's"
    )
    usual = DEFAULTS[units]
    name = assuming.settle(spec.name or None, "/name", NAME, "the ceiling has no name")
    mark_to = assuming.settle(
        spec.mark_to, "/mark_to", usual.mark_to, "as fine as a common tape is read"
    )
    room = _room(spec, usual, assuming)
    grid = _grid(spec.grid, usual, assuming)
    longer = RunName.WIDTH if room.width > room.length else RunName.LENGTH
    beams = decide_beams(spec.beams, BeamSurroundings(room, grid, units), assuming)
    panel = decide_panel(spec.panel, longer, usual, assuming)
    room = replace(room, leveling=decide_leveling(spec.room, panel, units, assuming))
    around = FixingSurroundings(room.joists, beams, panel, greatest_rise(room.stations))
    fixing = decide_fixing(spec.fixing, around, usual.fixing, assuming)
    crown = decide_crown(spec.crown, units, assuming)
    for_take_off = Assuming()
    ceiling = Ceiling(
        name=name,
        units=units,
        mark_to=mark_to,
        room=room,
        beams=beams,
        grid=grid,
        panel=panel,
        fixing=fixing,
        stock=decide_stock(spec.stock, beams, usual, assuming),
        drawing=_drawing(spec.drawing, usual, assuming),
        crown=crown,
        flat_mouldings=decide_flat_mouldings(spec.flat_mouldings, assuming),
        measured_openings=decide_openings(spec.measured_openings, crown, units, assuming),
        take_off=decide_take_off(spec.take_off, units, for_take_off),
    )
    return Resolution(ceiling, assuming.made, for_take_off.made)


def resolve_run(name: RunName, run: RunSpec, units: Units) -> tuple[Run, tuple[Assumption, ...]]:
    """Turn one run that has passed the rules into a decided one, and what was assumed for it."""
    assuming = Assuming()
    return _run(name, run, FreeNames("F", ()), DEFAULTS[units], assuming), assuming.made


def _stated(value: Length | None, pointer: str) -> Length:
    """A length the rules require, so that only a spec they have not passed can lack it."""
    if value is None:
        raise ValueError(f"{pointer} is open: the spec has not passed the rules")
    return value


def _sizes(room: RoomSpec) -> tuple[Length | None, Length | None]:
    """What a room is called by: its length and width, or those of what was measured of it."""
    if room.outline is not None:
        return rough_sizes(room.outline)
    return nominal_sizes(room.survey) if room.survey else (room.length, room.width)


def _room(spec: CeilingSpec, usual: Defaults, assuming: Assuming) -> Room:
    room = spec.room
    measured_to = assuming.settle(
        room.measured_to,
        "/room/measured_to",
        MeasuredTo.FINISH,
        "sizes are taken to be between finished walls",
    )
    wall_finish = room.wall_finish
    if wall_finish is None and measured_to is MeasuredTo.FRAMING:
        finish = usual.wall_finish
        assuming.note("/room/wall_finish", finish, "a usual wallboard on each wall")
        wall_finish = (finish, finish, finish, finish)
    length, width = _sizes(room)
    return Room(
        length=_stated(length, "/room/length"),
        width=_stated(width, "/room/width"),
        height=decide_height(room, assuming),
        measured_to=measured_to,
        wall_finish=wall_finish,
        headroom=assuming.settle(
            room.headroom,
            "/room/headroom",
            usual.headroom,
            "the least ceiling height of a model code (International Residential Code, R305);"
            " the local code governs",
        ),
        code_edition=room.code_edition or "",
        members=_members(room.members, usual, assuming),
        joists=decide_joists(room.joists, spec.fixing, usual.fixing, assuming),
        survey=decide_survey(room, spec.units or Units.INCH, assuming),
        outline=decide_outline(room, spec.units or Units.INCH, assuming),
        crooked=decide_crooked(room, spec.units or Units.INCH, assuming),
        ceiling_items=decide_items(room.ceiling_items, assuming),
        wall_features=decide_wall_features(room.wall_features, assuming),
        stations=decide_stations(room, assuming),
        columns=decide_columns(room.columns, assuming),
    )


def _members(
    members: tuple[MemberSpec, ...], usual: Defaults, assuming: Assuming
) -> tuple[Member, ...]:
    names = FreeNames("S", (member.name for member in members))
    return tuple(
        _member(f"/room/members/{position}", member, names, usual, assuming)
        for position, member in enumerate(members)
    )


def _member(
    place: str, member: MemberSpec, names: FreeNames, usual: Defaults, assuming: Assuming
) -> Member:
    if member.on is None:
        raise ValueError(f"{place}/on is open: the spec has not passed the rules")
    center = _stated(member.center, f"{place}/center")
    drop = _stated(member.drop, f"{place}/drop")
    return Member(
        name=names.settle(member.name, place, assuming),
        on=member.on,
        center=center,
        width=_stated(member.width, f"{place}/width"),
        drop=drop,
        casing=assuming.settle(
            member.casing, f"{place}/casing", Casing.CENTERED, "the casing stands about the middle"
        ),
        clearance=assuming.settle(
            member.clearance,
            f"{place}/clearance",
            usual.clearance,
            "air for a member that is not straight",
        ),
        cased_width=member.cased_width,
        center_at_end=assuming.settle(
            member.center_at_end, f"{place}/center_at_end", center, "it runs square to the walls"
        ),
        drop_at_end=assuming.settle(
            member.drop_at_end, f"{place}/drop_at_end", drop, "it hangs level"
        ),
        starts_at=member.starts_at,
        ends_at=member.ends_at,
        cladding=assuming.settle(
            member.cladding, f"{place}/cladding", ZERO, "nothing is on it yet"
        ),
        cleat=assuming.settle(
            member.cleat,
            f"{place}/cleat",
            usual.cleat,
            "each side of the casing is fixed to a board on edge beside the member",
        ),
    )


def _grid(grid: GridSpec, usual: Defaults, assuming: Assuming) -> Grid:
    beams = (*grid.length.fixed_beams, *grid.width.fixed_beams)
    names = FreeNames("FB-", (beam.name for beam in beams))
    length, width = (_run(run, grid.run(run), names, usual, assuming) for run in RunName)
    return Grid(length, width)


def _run(name: RunName, run: RunSpec, names: FreeNames, usual: Defaults, assuming: Assuming) -> Run:
    place = f"/grid/{name}"
    half = WallCondition(WallKind.HALF)
    reason = "a half beam frames the border coffers like all others"
    return Run(
        name=name,
        count=_count(place, run, usual, assuming),
        parity=run.parity,
        weights=run.weights,
        held=run.held,
        start=assuming.settle(run.start, f"{place}/start", half, reason),
        end=assuming.settle(run.end, f"{place}/end", half, reason),
        fixed_beams=tuple(
            _fixed_beam(f"{place}/fixed_beams/{position}", beam, names, assuming)
            for position, beam in enumerate(run.fixed_beams)
        ),
    )


def _count(place: str, run: RunSpec, usual: Defaults, assuming: Assuming) -> CountRule:
    if isinstance(run.coffers, tuple):
        return CoffersPerZone(run.coffers)
    if run.coffers is not None:
        return CoffersInAll(run.coffers)
    if run.largest_opening is not None:
        return LargestOpening(run.largest_opening)
    if run.wished_opening is not None:
        return WishedOpening(run.wished_opening)
    if run.weights is not None:
        coffers = len(run.weights)
        assuming.note(f"{place}/coffers", coffers, "one coffer for each weight")
        return CoffersInAll(coffers)
    opening = run.held or usual.wished_opening
    reason = "border coffers near the held ones" if run.held else "a usual size of coffer"
    assuming.note(f"{place}/wished_opening", opening, reason)
    return WishedOpening(opening)


def _fixed_beam(place: str, beam: FixedBeamSpec, names: FreeNames, assuming: Assuming) -> FixedBeam:
    name = names.settle(beam.name, place, assuming)
    return FixedBeam(name, _stated(beam.center, f"{place}/center"), beam.width)


_NO_TEXTS = {
    *("paper", "sheets", "story_poles", "mock_up", "legible_at", "revision", "second_units")
}


def _drawing(drawing: DrawingSpec, usual: Defaults, assuming: Assuming) -> Drawing:
    """Paper and title block. A field left out is left blank on the sheet: nothing is assumed."""
    texts = {
        field.name: getattr(drawing, field.name) or ""
        for field in fields(DrawingSpec)
        if field.name not in _NO_TEXTS
    }
    if drawing.sheets is None:
        assuming.note("/drawing/sheets", "all", "every sheet that has something to show")
    chosen = set(SheetNumber) if drawing.sheets is None else set(drawing.sheets)
    return Drawing(
        sheets=tuple(number for number in SheetNumber if number in chosen),
        paper=assuming.settle(
            drawing.paper, "/drawing/paper", usual.paper, "a sheet any office can print"
        ),
        story_poles=assuming.settle(
            drawing.story_poles,
            "/drawing/story_poles",
            StoryPoles.TABLE,
            "strips at full size take much paper: ask for a roll or for tiles",
        ),
        legible_at=assuming.settle(
            drawing.legible_at,
            "/drawing/legible_at",
            PrintSize.FULL,
            "prints at half size need larger letters, and so smaller scales or larger paper",
        ),
        mock_up=assuming.settle(
            drawing.mock_up,
            "/drawing/mock_up",
            MockUp.NONE,
            "paper for it is wanted once at most: ask for a roll or for tiles",
        ),
        revision=assuming.settle(
            drawing.revision, "/drawing/revision", REVISION, "not revised yet"
        ),
        second_units=drawing.second_units,
        **texts,
    )
