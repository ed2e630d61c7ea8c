"""Sheet panels: how large they are by where they sit, and the seams they need."""

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass
from itertools import chain

from lacunar.layout.backing_records import JoistLines
from lacunar.layout.board_records import Courses, PanelPlace
from lacunar.layout.fault_gathering import refuse
from lacunar.layout.opening_records import MeasuredOpening, TaperedField, TaperedPanel
from lacunar.layout.panels.seams import JoistsAbove, SheetLay, lay_sheets
from lacunar.layout.panels.tapered_panels import follows_measured
from lacunar.layout.records import Coffer, ElementKind, PanelFit
from lacunar.layout.runs.run_division import BeamStretch, DividedRun, Stretch
from lacunar.layout.runs.run_records import member_reach
from lacunar.measure.figure import LengthFigure, Rule
from lacunar.measure.length import ZERO, Length
from lacunar.model.beams import Box, FamilyBeam
from lacunar.model.faults import Fault
from lacunar.model.panel import Panel, PanelKind, Seat
from lacunar.model.room import RunName

PANEL_BETWEEN_SIDES = Rule(
    "panel between the sides: the opening less a gap at each edge", "opening - 2 * gap"
)
PANEL_PAST_SIDES = Rule(
    "panel past the beam faces: the opening and what it reaches past each, less a gap at each edge",
    "opening + past_near + past_far - 2 * gap",
)
PANEL_START = Rule(
    "where a panel starts: at the face, less what it reaches past it, and a gap in",
    "near - past_near + gap",
)


@dataclass(frozen=True, slots=True)
class PanelRun:
    """A run divided, the box of the family that divides it, and the joists met, if told."""

    divided: DividedRun
    box: FamilyBeam
    joists: JoistLines | None = None


@dataclass(frozen=True, slots=True)
class CofferReach:
    """The rectangle about a coffer that tapers, along both runs."""

    coffer: Coffer
    length: LengthFigure
    width: LengthFigure


@dataclass(frozen=True, slots=True)
class AsMeasured:
    """What was measured that panels and boards go into, and those that are no rectangles.

    Tapered boards come with the courses they are cut from. `reaches` are by what panels are sized
    that go in before the sides of coffers that taper.
    """

    openings: tuple[MeasuredOpening, ...] = ()
    tapered: tuple[TaperedPanel, ...] = ()
    tapered_boards: tuple[tuple[TaperedField, Courses], ...] = ()
    reaches: tuple[CofferReach, ...] = ()


NOTHING_MEASURED = AsMeasured()


def panels(
    panel: Panel,
    runs: Mapping[RunName, PanelRun],
    coffers: Sequence[Coffer],
    measured: AsMeasured = NOTHING_MEASURED,
) -> tuple[PanelFit, ...]:
    """Turn coffers into sheet panels, those of one size together, in the order of their coffers.

    The seat decides how far a panel reaches. `between_sides`: opening - 2 gap. `between_backing`:
    past each face by the side and the play beside it, up to the backing. `above_backing`: past each
    face to the middle of the beam, where it meets the next panel; up to the wall behind a wall
    beam; up to the member in a cased beam. At a bare wall or soffit it ends there.

    A panel that goes in after the sides of a coffer that was measured follows what was measured.

    Raises SpecRefused where gaps leave no panel.
    """
    if panel.kind is not PanelKind.SHEET_GOODS or not coffers:
        return ()
    lengths = panel_sizes(panel, runs[RunName.LENGTH])
    widths = panel_sizes(panel, runs[RunName.WIDTH])
    taken = measured_sizes(panel, runs, measured)
    planned = {
        coffer.id: (lengths[coffer.column - 1], widths[coffer.row - 1]) for coffer in coffers
    }
    sizes = {**planned, **taken}
    refuse(gap_faults(panel, [size for pair in sizes.values() for size in pair]))
    starts = {name: panel_starts(panel, run) for name, run in runs.items()}
    groups: dict[tuple[object, ...], tuple[SheetLay, list[Coffer]]] = {}
    for coffer in coffers:
        length, width = (size.value for size in sizes[coffer.id])
        at = {RunName.LENGTH: coffer.column - 1, RunName.WIDTH: coffer.row - 1}
        above = {
            name: JoistsAbove(starts[name][at[name]].value, runs[name].joists) for name in RunName
        }
        lay = lay_sheets((length, width), panel, above)
        key = (coffer.id,) if coffer.id in taken else (length, width, lay.alike)
        groups.setdefault(key, (lay, []))[1].append(coffer)
    return tuple(
        _fit(lay, panel_places(group, starts), sizes[group[0].id]) for lay, group in groups.values()
    )


def measured_sizes(
    panel: Panel, runs: Mapping[RunName, PanelRun], measured: AsMeasured
) -> dict[str, tuple[LengthFigure, LengthFigure]]:
    """The sizes of what goes into coffers that were measured: what fits, less a gap at each edge.

    Of a tapered panel, the rectangle it is cut from. Where panels went in before the sides, none
    but those that reach past the sides of coffers planned to taper: the rectangle about each.
    """
    if not follows_measured(panel):
        columns, rows = (list(_pasts(panel.seat, runs[name])) for name in RunName)
        return {
            each.coffer.id: (
                _size(panel, each.length.value, columns[each.coffer.column - 1]),
                _size(panel, each.width.value, rows[each.coffer.row - 1]),
            )
            for each in measured.reaches
        }
    found = {
        opening.coffer: (
            _size(panel, opening.fit_length.value, (ZERO, ZERO)),
            _size(panel, opening.fit_width.value, (ZERO, ZERO)),
        )
        for opening in measured.openings
    }
    return found | {each.coffer: (each.length, each.width) for each in measured.tapered}


def _fit(
    lay: SheetLay, places: tuple[PanelPlace, ...], sizes: tuple[LengthFigure, LengthFigure]
) -> PanelFit:
    """The panel of coffers of one size and with one set of seams."""
    length, width = sizes
    return PanelFit(
        coffers=tuple(place.coffer for place in places),
        length=length,
        width=width,
        long_edge=lay.long_edge,
        seams=lay.seams,
        seams_along_length=lay.along_length,
        seams_along_width=lay.along_width,
        seam_bearings=lay.bearings,
        places=places,
    )


def panel_places(
    coffers: Sequence[Coffer], starts: Mapping[RunName, Sequence[LengthFigure]]
) -> tuple[PanelPlace, ...]:
    """Where the panel of each coffer starts, by where those of its column and row do."""
    return tuple(
        PanelPlace(
            coffer.id,
            starts[RunName.LENGTH][coffer.column - 1],
            starts[RunName.WIDTH][coffer.row - 1],
        )
        for coffer in coffers
    )


def gap_faults(panel: Panel, sizes: Sequence[LengthFigure]) -> list[Fault]:
    """A fault where the gaps leave nothing of a panel or of a field of boards."""
    smallest = min(size.value for size in sizes)
    if smallest > ZERO:
        return []
    return [
        Fault(
            code="gap_too_large",
            pointer="/panel/gap",
            message="The gaps at the edges of a panel leave nothing of it in the smallest coffer.",
            remedy="Give a smaller gap.",
            figures={"gap": panel.gap, "smallest_panel": smallest},
        )
    ]


def panel_sizes(panel: Panel, run: PanelRun) -> list[LengthFigure]:
    """How far panels or boards reach along a run, in each of its coffers in order."""
    openings = chain.from_iterable(zone.openings for zone in run.divided.zones)
    return [
        _size(panel, opening.value, past)
        for opening, past in zip(openings, _pasts(panel.seat, run), strict=True)
    ]


def panel_starts(panel: Panel, run: PanelRun) -> list[LengthFigure]:
    """Where panels start along a run, from the datum [length], in each of its coffers in order."""
    coffers = (each for each in run.divided.stretches if each.kind is ElementKind.COFFER)
    return [
        _start(coffer.near, past, panel.gap)
        for coffer, (past, _) in zip(coffers, _pasts(panel.seat, run), strict=True)
    ]


def _start(near: LengthFigure, past: Length, gap: Length) -> LengthFigure:
    tell = PANEL_START.approximates if near.approximate else PANEL_START.gives
    return tell(near.value - past + gap, near=near.value, past_near=past, gap=gap)


def _size(panel: Panel, opening: Length, past: tuple[Length, Length]) -> LengthFigure:
    gap = panel.gap
    if panel.seat is Seat.BETWEEN_SIDES:
        return PANEL_BETWEEN_SIDES.gives(opening - gap * 2, opening=opening, gap=gap)
    near, far = past
    return PANEL_PAST_SIDES.gives(
        opening + near + far - gap * 2, opening=opening, past_near=near, past_far=far, gap=gap
    )


def _pasts(seat: Seat, run: PanelRun) -> Iterator[tuple[Length, Length]]:
    """How far panels reach past the faces on either side of each coffer."""
    stretches = (None, *run.divided.stretches, None)
    for before, stretch, after in zip(stretches, stretches[1:], stretches[2:], strict=False):
        if stretch is not None and stretch.kind is ElementKind.COFFER:
            yield (
                _past(seat, before, run.box, near_side=False),
                _past(seat, after, run.box, near_side=True),
            )


def _past(seat: Seat, beside: Stretch | None, box: FamilyBeam, *, near_side: bool) -> Length:
    """How far a panel reaches past a face; `near_side` if that is the beam's side to the datum."""
    if beside is None or beside.kind is ElementKind.SOFFIT or seat is Seat.BETWEEN_SIDES:
        return ZERO
    at_wall = beside.kind is ElementKind.WALL_BEAM
    if seat is Seat.BETWEEN_BACKING and isinstance(box, Box):
        return box.sides.thickness + (box.allowance if at_wall else box.allowance / 2)
    whole = beside.far.value - beside.near.value
    if at_wall:
        return whole
    if isinstance(beside, BeamStretch) and beside.kind is ElementKind.CASED_BEAM:
        near, far = member_reach(beside)
        return near.value - beside.near.value if near_side else beside.far.value - far.value
    return whole / 2
