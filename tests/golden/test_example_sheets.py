"""The sheets shown in the README are those that are drawn today.

Regression, not proof: what stands on the sheet is held by the checker and the layout's own tests.
Draw them anew with: python -m tests.golden.redraw
"""

from pathlib import Path

import pytest

from tests.golden.comparing import differences
from tests.golden.pictures import of_pdf, of_svg, pixels_apart, write_difference
from tests.golden.shown_sheets import EXAMPLES, SHOWN, drawn_today

MOST_PIXELS = 5
"""That two paintings of one sheet differ by: a changed digit is some twenty."""


@pytest.mark.parametrize("path", SHOWN, ids=lambda path: path.stem)
def test_a_shown_sheet_is_drawn_the_same_today(path: Path, tmp_path: Path) -> None:
    """As text, and as pixels: the PDF of today shows what the SVG in the file does."""
    today, shown = drawn_today(path), path.read_text()
    old, new = of_svg(shown, today.typeface), of_pdf(today.pdf)
    apart = pixels_apart(old, new)
    if today.svg != shown or apart > MOST_PIXELS:
        picture = tmp_path / f"{path.stem}.png"
        write_difference(old, new, picture)
        told = "\n".join(differences(shown, today.svg))
        pytest.fail(f"{path.name} has changed, {apart} pixels of it:\n{told}\n{picture}", False)


def test_the_readme_shows_all_of_them() -> None:
    readme = (EXAMPLES.parent / "README.md").read_text()
    assert all(f"examples/sheets/{shown.name}" in readme for shown in SHOWN)
