"""Saw settings as JSON, and as the lines of a small table."""

from collections.abc import Iterator
from typing import Any

from lacunar.exchange.layout_json import RecordWriter
from lacunar.layout.moulding_cautions import saw_cautions
from lacunar.layout.moulding_records import SawCut, SawSheet
from lacunar.layout.saw_settings import STRAIGHT
from lacunar.measure.figure import LengthFigure
from lacunar.measure.rounding import Step
from lacunar.measure.writing import LengthStyle, write_length
from lacunar.model.ceiling import Assumption


def saw_sheet_to_json(
    sheet: SawSheet, assumptions: tuple[Assumption, ...], step: Step
) -> dict[str, Any]:
    """Turn a sheet for the saw into JSON values, each record under its own names."""
    write = RecordWriter(step, trace=False)
    return {
        "units": str(step.units),
        "mark_to": step.text,
        **write.record(sheet),
        "assumptions": write.value(assumptions),
        "cautions": write.value(tuple(saw_cautions(sheet))),
    }


def saw_sheet_lines(sheet: SawSheet, step: Step) -> Iterator[str]:
    """Turn a sheet for the saw into a small table: settings to a tenth of a degree, then hands."""
    settings = sheet.settings
    corner = settings.corner
    kind = "straight" if corner == STRAIGHT else "outside" if corner > STRAIGHT else "inside"
    yield f"Spring {sheet.spring_from_wall.value.tenths} from the wall, {kind} {corner.tenths}"
    if sheet.face is not None and sheet.drop is not None and sheet.projection is not None:
        sizes = (("face", sheet.face), ("drop", sheet.drop), ("projection", sheet.projection))
        yield ", ".join(f"{name} {_told(size, step)}" for name, size in sizes)
    if sheet.ceiling_edge is not None:
        how = "longer" if corner > STRAIGHT else "shorter"
        yield f"each end {how} by {_told(sheet.ceiling_edge, step)} at the ceiling than at the wall"
    yield ""
    yield f"{'':8}{'miter':>8}{'bevel':>8}"
    rows = (
        ("nested", settings.nested_miter.value.tenths, "0°", settings.nested_within_limits),
        (
            "flat",
            settings.flat_miter.value.tenths,
            settings.flat_bevel.value.tenths,
            settings.flat_within_limits,
        ),
    )
    for name, miter, bevel, within in rows:
        yield f"{name:8}{miter:>8}{bevel:>8}" + ("" if within else "  beyond the saw: cope instead")
    if settings.cuts:
        yield ""
        yield f"{'':8}{'end':>8}{'at fence':>14}{'table':>8}{'tilt':>8}{'keep':>8}"
    yield from (_cut(cut) for cut in settings.cuts)


def _cut(cut: SawCut) -> str:
    tilt = "left" if cut.lies == "flat" else "none"
    fence = f"{cut.against_fence} edge"
    return f"{cut.lies:8}{cut.end:>8}{fence:>14}{cut.table:>8}{tilt:>8}{cut.keep:>8}"


def _told(size: LengthFigure, step: Step) -> str:
    return write_length(size.value, LengthStyle(step.units, step, feet_from=None, with_unit=True))
