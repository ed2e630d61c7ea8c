"""The sheets shown in the README are those that are drawn today.

Regression, not proof: what stands on the sheet is held by the checker and the layout's own tests.
Draw one anew with: lacunar draw examples/ceilings/NAME.json --out DIR --format svg
"""

from pathlib import Path

import pytest

from lacunar.workflow.draw import compose_sheets, painted_svg
from lacunar.workflow.prepare import prepare

EXAMPLES = Path(__file__).parents[2] / "examples"
SHOWN = sorted((EXAMPLES / "sheets").glob("*.svg"))


@pytest.mark.parametrize("shown", SHOWN, ids=lambda path: path.stem)
def test_a_shown_sheet_is_drawn_the_same_today(shown):
    ceiling, _, sheet_id = shown.stem.partition("-")
    prepared = prepare((EXAMPLES / "ceilings" / f"{ceiling}.json").read_bytes())
    sheet_set, typeface = compose_sheets(prepared)
    sheet = next(sheet for sheet in sheet_set.sheets if sheet.id == sheet_id)
    assert painted_svg(sheet, typeface) == shown.read_text()


def test_the_readme_shows_all_of_them():
    readme = (EXAMPLES.parent / "README.md").read_text()
    assert all(f"examples/sheets/{shown.name}" in readme for shown in SHOWN)
