"""Holding the sheets a ceiling is drawn on against its layout, as a plan checker would."""

from lacunar.drawing.checker import Finding, check_set
from lacunar.drawing.painters.svg import paint_svg
from lacunar.workflow.draw import compose_sheets
from lacunar.workflow.prepare import Prepared, layout_answer


def check_drawings(prepared: Prepared) -> tuple[Finding, ...]:
    """What the checker finds on the emitted SVG of the set, read beside the layout's JSON."""
    sheet_set, typeface = compose_sheets(prepared)
    svgs = [paint_svg(sheet, typeface, fonts=None) for sheet in sheet_set.sheets]
    return check_set(svgs, layout_answer(prepared, trace=False), typeface)
