"""A page of a finished PDF as a picture in grays: PNG of so many pixels to the inch.

The picture is of the very PDF that would be printed, so it can show nothing else. Nothing is read
or told but pixels: no date, no name, no profile. Written here in full (ISO/IEC 15948: signature,
IHDR, pHYs, IDAT, IEND), because one kind of picture needs no library of pictures.

Pdfium, which makes the pixels, is loaded where a page is painted, and is not made for several
threads at once.
"""

import zlib
from math import ceil
from struct import pack
from threading import Lock

from lacunar.model.limits import LEAST_DPI, MOST_DPI

_POINTS_TO_THE_INCH = 72
_INCH = 25.4
_SIGNATURE = b"\x89PNG\r\n\x1a\n"
_GRAY_OF_8_BITS = bytes((8, 0, 0, 0, 0))
_METER = 1
_UNFILTERED = b"\0"
_EFFORT = 6

_one_at_a_time = Lock()


def pixels(width: float, height: float, dpi: int) -> int:
    """How many pixels a page [mm] has.

    >>> pixels(254.0, 127.0, 100)
    500000
    """
    across, down = (ceil(side / _INCH * dpi) for side in (width, height))
    return across * down


def paint_png(pdf: bytes, dpi: int) -> bytes:
    """The first page of a PDF as a PNG in grays: the same bytes for the same PDF.

    Raises `ValueError` for a `dpi` that is not within bounds.
    """
    if not LEAST_DPI <= dpi <= MOST_DPI:
        raise ValueError(f"{dpi} dpi is not within {LEAST_DPI} and {MOST_DPI}")
    import pypdfium2

    with _one_at_a_time:
        document = pypdfium2.PdfDocument(pdf)
        picture = document[0].render(scale=dpi / _POINTS_TO_THE_INCH, grayscale=True)
        rows, width, stride = bytes(picture.buffer), picture.width, picture.stride
        document.close()
    return _png([rows[n : n + width] for n in range(0, len(rows), stride)], width, dpi)


def _png(rows: list[bytes], width: int, dpi: int) -> bytes:
    per_meter = round(dpi * 1000 / _INCH)
    packed = zlib.compress(b"".join(_UNFILTERED + row for row in rows), _EFFORT)
    return b"".join(
        (
            _SIGNATURE,
            _chunk(b"IHDR", pack(">II", width, len(rows)) + _GRAY_OF_8_BITS),
            _chunk(b"pHYs", pack(">IIB", per_meter, per_meter, _METER)),
            _chunk(b"IDAT", packed),
            _chunk(b"IEND", b""),
        )
    )


def _chunk(kind: bytes, content: bytes) -> bytes:
    """A chunk: how long it is, its kind, what is in it, and a check of both."""
    return pack(">I", len(content)) + kind + content + pack(">I", zlib.crc32(kind + content))
