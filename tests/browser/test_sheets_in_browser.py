"""Sheets as a browser shows them, beside the PDF: the file alone, with nothing to load it from.

Not in the core tier, since it needs a browser: `python3 tests/run.py --all`, or by name.
"""

import shutil
import subprocess
from pathlib import Path

import PIL.Image
import PIL.ImageChops
import PIL.ImageFilter
import pytest

from lacunar.workflow.draw import compose_sheets, painted_pdf, painted_svg
from lacunar.workflow.prepare import prepare
from tests.golden.pictures import of_pdf
from tests.run import BROWSERS

CEILINGS = Path(__file__).parents[2] / "examples" / "ceilings"
SHOWN = [
    ("music_room", "Z-101"),  # imperial
    ("music_room", "Z-701"),  # tables
    ("attic_study", "Z-101"),  # out of square
    ("sommerhaus", "Z-102"),  # metric, letters beyond ASCII
]
APART = 60
"""Grays by which a pixel must differ after a light blur to count: edges shimmer otherwise."""
FINER = 4
MOST_APART = 0.0002
"""The share of pixels that may be apart; none were when this was written. Without letters placed as
they are measured (`text-rendering` in the sheet's style) it was up to 0.0019."""


def screenshot(svg: Path, width: int, height: int) -> PIL.Image.Image:
    """The sheet as a browser without a network shows it, 96 pixels to the inch.

    A browser puts each letter at a whole pixel, so more are asked for than are looked at.
    """
    browser = next(path for path in map(shutil.which, BROWSERS) if path)
    picture = svg.with_suffix(".png")
    profile = svg.parent / "profile"
    subprocess.run(
        [
            *(browser, "--headless", "--no-sandbox", "--disable-gpu", "--hide-scrollbars"),
            *(f"--force-device-scale-factor={FINER}", f"--window-size={width},{height}"),
            *("--host-resolver-rules=MAP * ~NOTFOUND", f"--user-data-dir={profile}"),
            *(f"--screenshot={picture}", svg.as_uri()),
        ],
        check=True,
        capture_output=True,
        timeout=120,
    )
    return PIL.Image.open(picture).convert("L").reduce(FINER)


def share_apart(one: PIL.Image.Image, other: PIL.Image.Image) -> float:
    soft = [each.filter(PIL.ImageFilter.GaussianBlur(1)) for each in (one, other)]
    apart = PIL.ImageChops.difference(*soft).histogram()[APART + 1 :]
    return sum(apart) / (one.width * one.height)


@pytest.mark.parametrize(("ceiling", "number"), SHOWN)
def test_a_browser_shows_the_sheet_that_is_printed(
    ceiling: str, number: str, tmp_path: Path
) -> None:
    prepared = prepare((CEILINGS / f"{ceiling}.json").read_bytes())
    sheet_set, typeface = compose_sheets(prepared)
    sheet = next(sheet for sheet in sheet_set.sheets if sheet.id == number)
    path = tmp_path / "sheet.svg"
    path.write_text(painted_svg(sheet, typeface))
    printed = of_pdf(painted_pdf(prepared, (sheet,), typeface), FINER)
    shown = screenshot(path, printed.width, printed.height)
    assert shown.size == printed.size
    share = share_apart(shown, printed)
    # Sheets are mostly white: that both are not is the least that is asked.
    assert share_apart(shown, PIL.Image.new("L", shown.size, 255)) > 100 * MOST_APART
    assert share <= MOST_APART, f"{share:.3%} of the pixels differ"
