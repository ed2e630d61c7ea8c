"""Sheets as they come off a printer: pages of a PDF, and lines measured on them."""

import pypdfium2

from lacunar.drawing.painters.fonts import load_typeface
from lacunar.drawing.sheet_set import compose
from lacunar.workflow.draw import painted_pdf
from lacunar.workflow.prepare import Prepared

MM = 25.4
DOTS = 8
"""To the millimeter; the renderer draws no page of more than 32,767 dots."""


def page_of(prepared: Prepared, identity: str) -> tuple[pypdfium2.PdfDocument, int, str]:
    """The PDF of a set, the number of the sheet that has a strip, and that sheet's id."""
    sheets = compose(prepared.layout, prepared.digest, load_typeface()).sheets
    number = next(
        n
        for n, sheet in enumerate(sheets)
        if any(getattr(child, "id", "") == identity for child in sheet.children)
    )
    document = pypdfium2.PdfDocument(painted_pdf(prepared, sheets, load_typeface()))
    return document, number, sheets[number].id


def lines_over_band(prepared: Prepared, identity: str, length: float) -> list[float]:
    """Where lines lead over a strip's upper edge on the printed page, from the first one [mm].

    `length` [mm] of the strip, by which its edge is found among the rows of dots.
    """
    document, number, _ = page_of(prepared, identity)
    image = document[number].render(scale=DOTS * MM / 72, grayscale=True).to_numpy()
    dark = image.reshape(image.shape[0], -1) < 128
    # Half a millimeter above the edge only the lines to the numbers are drawn.
    edge = next(n for n, row in enumerate(dark) if row.sum() > length * DOTS * 0.99)
    found = _middles(dark[edge - DOTS // 2].tolist())
    return [(dot - found[0]) / DOTS for dot in found]


def _middles(row: list[bool]) -> list[float]:
    """The middles of the dark stretches of a row of pixels."""
    found, start = [], None
    for number, dark in enumerate([*row, False]):
        if dark and start is None:
            start = number
        elif not dark and start is not None:
            found.append((start + number - 1) / 2)
            start = None
    return found
