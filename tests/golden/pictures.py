"""Sheets as pixels, and pictures of how two of them differ."""

import io
from pathlib import Path
from xml.etree import ElementTree

import PIL.Image
import PIL.ImageChops
import pypdfium2

from lacunar.drawing.painters.cairo_letters import lettering_cairo
from lacunar.drawing.painters.cairo_pages import PlainPage
from lacunar.drawing.typeface import Typeface

DPI = 96
FAINT = 32
"""Grays that are less apart than this are the same: edges of letters shimmer."""


def of_pdf(pdf: bytes, finer: int = 1) -> PIL.Image.Image:
    """The first page of a PDF in grays, each pixel the mean of so many times finer ones."""
    page = pypdfium2.PdfDocument(pdf)[0]
    picture: PIL.Image.Image = page.render(scale=finer * DPI / 72, grayscale=True).to_pil()
    return picture.reduce(finer)


def of_svg(svg: str, typeface: Typeface) -> PIL.Image.Image:
    """An SVG as it stands in its file, in grays."""
    cairo = lettering_cairo(typeface)
    target = io.BytesIO()
    surface = cairo.PDFSurface(target, 1, 1)
    PlainPage(_plain(ElementTree.fromstring(svg)), surface, DPI).context.show_page()
    surface.finish()
    return of_pdf(target.getvalue())


def _plain(root: ElementTree.Element) -> ElementTree.Element:
    """The elements as the painter makes them: named without the namespace they are in."""
    for element in root.iter():
        element.tag = element.tag.rpartition("}")[2]
    root.set("xmlns", "http://www.w3.org/2000/svg")
    return root


def pixels_apart(one: PIL.Image.Image, other: PIL.Image.Image) -> int:
    """How many pixels of two pictures of one size differ; all of them where sizes do."""
    if one.size != other.size:
        return one.width * one.height
    return sum(PIL.ImageChops.difference(one, other).histogram()[FAINT + 1 :])


def write_difference(old: PIL.Image.Image, new: PIL.Image.Image, path: Path) -> None:
    """Write a picture of both: black what is in both, red what is gone, blue what is new."""
    size = max(old.width, new.width), max(old.height, new.height)
    before, after = (PIL.Image.new("L", size, 255) for _ in "ab")
    before.paste(old)
    after.paste(new)
    both = PIL.ImageChops.darker(before, after)
    PIL.Image.merge("RGB", (after, both, before)).save(path)
