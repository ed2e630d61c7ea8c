"""The sheets that the README shows, as they are checked in and as they are drawn today."""

from dataclasses import dataclass
from functools import cache
from pathlib import Path

from lacunar.drawing.sheet_set import SheetSet
from lacunar.drawing.typeface import Typeface
from lacunar.workflow.draw import compose_sheets, painted_pdf, painted_svg
from lacunar.workflow.prepare import Prepared, prepare

EXAMPLES = Path(__file__).parents[2] / "examples"
SHOWN = sorted((EXAMPLES / "sheets").glob("*.svg"))
"""Named `CEILING-SHEET.svg`; another one is shown by adding a file of its name, and redrawing."""


@dataclass(frozen=True)
class DrawnToday:
    """A sheet as it is drawn today: SVG text and PDF."""

    svg: str
    pdf: bytes
    typeface: Typeface


def drawn_today(shown: Path) -> DrawnToday:
    """Draw the sheet that a file is named after."""
    ceiling, _, sheet_id = shown.stem.partition("-")
    prepared, sheet_set, typeface = _composed(ceiling)
    sheet = next(sheet for sheet in sheet_set.sheets if sheet.id == sheet_id)
    pdf = painted_pdf(prepared, (sheet,), typeface)
    return DrawnToday(painted_svg(sheet, typeface), pdf, typeface)


@cache
def _composed(ceiling: str) -> tuple[Prepared, SheetSet, Typeface]:
    prepared = prepare((EXAMPLES / "ceilings" / f"{ceiling}.json").read_bytes())
    return prepared, *compose_sheets(prepared)
