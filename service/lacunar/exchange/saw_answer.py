"""Saw settings as JSON, as a table, value by value, and as lines for a terminal."""

from collections.abc import Iterator
from typing import Any

from lacunar.exchange.csv_table import Cell, csv_bytes, length_cells
from lacunar.exchange.layout_json import RecordWriter
from lacunar.exchange.length_json import decimal_number
from lacunar.exchange.query_schema import SawValue
from lacunar.layout.moulding_records import Lies, RakedMeeting, SawCut, SawSheet
from lacunar.layout.mouldings.cautions import saw_cautions
from lacunar.layout.mouldings.saw_settings import STRAIGHT
from lacunar.measure.angle import Angle
from lacunar.measure.figure import AngleFigure, LengthFigure
from lacunar.measure.length import ZERO, Length
from lacunar.measure.rounding import Step
from lacunar.measure.writing import LengthStyle, write_length
from lacunar.model.ceiling import Assumption
from lacunar.model.faults import Fault, SpecRefused

CSV_HEADER = (
    *("kind", "lies", "end", "against_fence", "table", "keep"),
    *("exact", "degrees", "in", "mm"),
)
_OF_RAKES = (
    SawValue.RAKED_HEIGHT,
    SawValue.APART,
    SawValue.RUN_DROP,
    SawValue.RUN_FACE,
    SawValue.WIDER,
)


def saw_sheet_to_json(
    sheet: SawSheet, assumptions: tuple[Assumption, ...], step: Step, *, trace: bool
) -> dict[str, Any]:
    """Turn a sheet for the saw into JSON values, each record under its own names."""
    write = RecordWriter(step, trace)
    return {
        "units": str(step.units),
        "mark_to": step.text,
        **write.record(sheet),
        "cautions": write.value(tuple(saw_cautions(sheet))),
        "assumptions": write.value(assumptions),
    }


def saw_sheet_to_csv(sheet: SawSheet, step: Step) -> bytes:
    """Turn a sheet for the saw into a table: what was asked, the settings, sizes, then each cut."""
    return csv_bytes(CSV_HEADER, _rows(sheet, step))


def _rows(sheet: SawSheet, step: Step) -> Iterator[tuple[Cell, ...]]:
    nothing = (None,) * 5
    angles = {"corner": sheet.settings.corner, "spring_from_wall": sheet.spring_from_wall.value}
    for kind, angle in angles.items():
        yield (kind, *nothing, *_angle_cells(angle))
    for value in SawValue:
        figure = _figures(sheet)[value]
        if figure is None:
            continue
        if isinstance(figure.value, Angle):
            yield (value.value, *nothing, *_angle_cells(figure.value))
        else:
            exact, inches, millimeters = length_cells(figure.value, step.units)
            yield (value.value, *nothing, exact, None, inches, millimeters)
    for cut in sheet.settings.cuts:
        words = (cut.lies, cut.end, cut.against_fence, cut.table, cut.keep)
        yield ("cut", *(str(word) for word in words), *(None,) * 4)


def _angle_cells(angle: Angle) -> tuple[Cell, ...]:
    return f"{angle.number} deg", decimal_number(angle.degrees), None, None


def _figures(sheet: SawSheet) -> dict[SawValue, AngleFigure | LengthFigure | None]:
    return {
        SawValue.NESTED_MITER: sheet.settings.nested_miter,
        SawValue.FLAT_MITER: sheet.settings.flat_miter,
        SawValue.FLAT_BEVEL: sheet.settings.flat_bevel,
        SawValue.DROP: sheet.drop,
        SawValue.PROJECTION: sheet.projection,
        SawValue.CEILING_EDGE: sheet.ceiling_edge,
        **_raked_figures(sheet.raked),
    }


def _raked_figures(raked: RakedMeeting | None) -> dict[SawValue, LengthFigure | None]:
    if raked is None:
        return dict.fromkeys(_OF_RAKES)
    sizes = (raked.raked_height, raked.apart, raked.run_drop, raked.run_face, raked.wider)
    return dict(zip(_OF_RAKES, sizes, strict=True))


def value_of(sheet: SawSheet, field: SawValue) -> Angle | Length:
    """One value of a sheet for the saw. Raises `SpecRefused` where it takes a face to know it."""
    figure = _figures(sheet)[field]
    if figure is None:
        raise SpecRefused([_no_value(sheet, field)])
    return figure.value


def _no_value(sheet: SawSheet, field: SawValue) -> Fault:
    of_rake = field in _OF_RAKES
    missing, given = ("/slope", "a slope") if of_rake else ("/corner", "a corner")
    return Fault(
        code="value_not_one",
        pointer="/face" if sheet.face is None else missing,
        message=f"Of what is given there is no {field}: it takes a face and {given}, and walls"
        " that do not run straight on.",
        remedy=f"Give the width of the crown's face, and {given}.",
    )


def saw_sheet_lines(sheet: SawSheet, step: Step) -> Iterator[str]:
    """Turn a sheet for the saw into a small table: settings to a tenth of a degree, then hands."""
    yield from _sizes(sheet, step)
    if sheet.raked is not None:
        yield from _raked(sheet.raked, step)
    settings = sheet.settings
    bevel = settings.flat_bevel.value.tenths
    rows = (
        (Lies.NESTED, settings.nested_miter, "0°", settings.nested_within_limits),
        (Lies.FLAT, settings.flat_miter, bevel, settings.flat_within_limits),
    )
    yield f"\n{'':8}{'miter':>8}{'bevel':>8}"
    for lies, miter, tilt, within in rows:
        beyond = "" if within else "  beyond the saw: cope instead"
        yield f"{lies:8}{miter.value.tenths:>8}{tilt:>8}{beyond}"
    if settings.cuts:
        yield f"\n{'':8}{'end':>8}{'at fence':>14}{'table':>8}{'tilt':>8}{'keep':>8}"
    yield from (_cut(cut) for cut in settings.cuts)


def _sizes(sheet: SawSheet, step: Step) -> Iterator[str]:
    """What was asked, and the crown's sizes where its face is known."""
    corner = sheet.settings.corner
    kind = "straight" if corner == STRAIGHT else "outside" if corner > STRAIGHT else "inside"
    yield f"Spring {sheet.spring_from_wall.value.tenths} from the wall, {kind} {corner.tenths}"
    if sheet.face is not None and sheet.drop is not None and sheet.projection is not None:
        sizes = (("face", sheet.face), ("drop", sheet.drop), ("projection", sheet.projection))
        yield ", ".join(f"{name} {_told(size, step)}" for name, size in sizes)
    if sheet.ceiling_edge is not None:
        how = "longer" if corner > STRAIGHT else "shorter"
        yield f"each end {how} by {_told(sheet.ceiling_edge, step)} at the ceiling than at the wall"


def _raked(raked: RakedMeeting, step: Step) -> Iterator[str]:
    """A raked run at the corner: whether it meets the level one, and by how far it does not."""
    verdict = "meets" if raked.meets else "does not meet"
    yield f"raked run that {raked.rake} at {raked.slope.tenths}: {verdict} the level one flat"
    if raked.raked_height is not None and raked.apart is not None:
        height, apart = _told(raked.raked_height, step), _told(raked.apart, step)
        yield f"edges at the ceiling pass {apart} apart, the raked one at {height}"
        if raked.run_face is None:
            yield "no profile can be run for this rake"
    if raked.run_drop is not None and raked.run_face is not None and raked.wider is not None:
        drop, face = _told(raked.run_drop, step), _told(raked.run_face, step)
        how = "wider" if raked.wider.value > ZERO else "narrower"
        by = write_length(max(raked.wider.value, ZERO - raked.wider.value), _style(step))
        yield f"a profile run for the rake: drop {drop}, face {face}, {by} {how}"


def _cut(cut: SawCut) -> str:
    tilt = "left" if cut.lies is Lies.FLAT else "none"
    fence = f"{cut.against_fence} edge"
    return f"{cut.lies:8}{cut.end:>8}{fence:>14}{cut.table:>8}{tilt:>8}{cut.keep:>8}"


def _told(size: LengthFigure, step: Step) -> str:
    return write_length(size.value, _style(step))


def _style(step: Step) -> LengthStyle:
    return LengthStyle(step.units, step, feet_from=None, with_unit=True)
