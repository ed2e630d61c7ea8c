"""Holding the sheets a ceiling is drawn on against its layout, as a plan checker would."""

from lacunar.drawing.checker import Finding, check_sheet
from lacunar.drawing.painters.svg import paint_svg
from lacunar.workflow.draw import compose_sheets
from lacunar.workflow.prepare import Prepared, layout_answer


def check_drawings(prepared: Prepared) -> tuple[Finding, ...]:
    """What the checker finds on the emitted SVG of every sheet, read beside the layout's JSON."""
    sheet_set, typeface = compose_sheets(prepared)
    answer = layout_answer(prepared, trace=False)
    return tuple(
        finding
        for sheet in sheet_set.sheets
        for finding in check_sheet(paint_svg(sheet, typeface, fonts=None), answer, typeface)
    )
