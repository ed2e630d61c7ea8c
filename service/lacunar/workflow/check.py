"""Holding the sheets a ceiling is drawn on against its layout, as a plan checker would."""

from lacunar.drawing.checker import Finding, check_set
from lacunar.drawing.painters.svg import paint_svg
from lacunar.workflow.draw import compose_sheets
from lacunar.workflow.lists import drawn_lists, list_answers
from lacunar.workflow.prepare import Prepared, layout_answer


def check_drawings(prepared: Prepared) -> tuple[Finding, ...]:
    """What the checker finds on the emitted SVG of the set, read beside the JSON of what it is of.

    That is the layout's, and where sheets tell of them the take-off's and the material list's.
    """
    lists = drawn_lists(prepared)
    sheet_set, typeface = compose_sheets(prepared, lists)
    svgs = [paint_svg(sheet, typeface, fonts=None) for sheet in sheet_set.sheets]
    answers = None if lists is None else list_answers(lists)
    return check_set(svgs, layout_answer(prepared, trace=False), typeface, answers)
