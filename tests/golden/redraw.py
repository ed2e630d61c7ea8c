"""Draws the sheets in examples/sheets anew, and tells what changed on them.

python -m tests.golden.redraw            write them
python -m tests.golden.redraw --look     only tell; the files stay as they are

Each difference is told in words, with a picture of it in a temporary folder: red is gone, blue is
new. Look at the picture before the sheet is committed.
"""

import argparse
import tempfile
from pathlib import Path

from tests.golden.comparing import differences
from tests.golden.pictures import of_pdf, of_svg, write_difference
from tests.golden.shown_sheets import SHOWN, drawn_today


def main() -> None:
    """Redraw each sheet that is shown."""
    parser = argparse.ArgumentParser(
        description=__doc__, formatter_class=argparse.RawDescriptionHelpFormatter
    )
    parser.add_argument("--look", action="store_true", help="write no sheet")
    look = parser.parse_args().look
    for shown in SHOWN:
        today, old = drawn_today(shown), shown.read_text()
        if today.svg == old:
            print(f"{shown.name}: as before")
            continue
        print(f"{shown.name}:")
        if old:
            picture = Path(tempfile.mkdtemp(prefix="redrawn-")) / f"{shown.stem}.png"
            write_difference(of_svg(old, today.typeface), of_pdf(today.pdf), picture)
            print(*(f"  {line}" for line in differences(old, today.svg)), sep="\n")
            print(f"  difference picture: {picture}")
        if not look:
            shown.write_text(today.svg)


if __name__ == "__main__":
    main()
