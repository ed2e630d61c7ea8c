"""Reads sheets that are to be legible at half size as if they were reduced to their usual size.

Such a sheet is a usual one enlarged, letters, lines, signs and gaps alike. Reduced by the same, it
has to keep the same points.
"""

from collections.abc import Mapping
from dataclasses import replace

from lacunar.drawing.checker.records import Lettering, Path, PenSeen, Ring, SheetRead
from lacunar.drawing.checker.shapes import Box, Spot

HALF_SIZE = 1.4
"""By how much all is larger: letters of 2.5 mm are 3.5 mm, lines of 0.18 mm 0.25 mm (as notes on EN
ISO 128 ask of sheets that are reduced)."""
AXIS = "-axis"


def enlargement(sheet: SheetRead) -> float:
    """How much larger than usual a sheet's letters, lines and signs are to be."""
    return HALF_SIZE if "half-size" in sheet.data else 1.0


def as_composed(sheet: SheetRead) -> SheetRead:
    """The sheet with all on it as large as usual, and its page so much smaller."""
    factor = enlargement(sheet)
    if factor == 1.0:
        return sheet
    return replace(
        sheet,
        page=_box(sheet.page, factor),
        groups=[replace(group, data=_data(group.data, factor)) for group in sheet.groups],
        paths=[_path(path, factor) for path in sheet.paths],
        rings=[_ring(ring, factor) for ring in sheet.rings],
        letterings=[_lettering(lettering, factor) for lettering in sheet.letterings],
    )


def _data(data: Mapping[str, str], factor: float) -> Mapping[str, str]:
    changed = dict(data)
    for name, value in data.items():
        numbers = _numbers(value) if name == "scale" or name.endswith(AXIS) else ()
        if numbers:
            by = factor if name == "scale" else 1.0 / factor
            changed[name] = " ".join(f"{number * by:.9g}" for number in numbers)
    return changed


def _numbers(text: str) -> tuple[float, ...]:
    try:
        return tuple(float(number) for number in text.split())
    except ValueError:
        return ()


def _spot(spot: Spot, factor: float) -> Spot:
    return Spot(spot.x / factor, spot.y / factor)


def _box(box: Box, factor: float) -> Box:
    return Box(*(side / factor for side in box))


def _pen(pen: PenSeen | None, factor: float) -> PenSeen | None:
    """Widths and dashes are written to a thousandth of a millimeter."""
    if pen is None:
        return None
    dashes = tuple(round(dash / factor, 3) for dash in pen.dashes)
    return pen._replace(width=round(pen.width / factor, 3), dashes=dashes)


def _path(path: Path, factor: float) -> Path:
    return path._replace(
        spots=tuple(_spot(spot, factor) for spot in path.spots),
        around=_box(path.around, factor),
        pen=_pen(path.pen, factor),
    )


def _ring(ring: Ring, factor: float) -> Ring:
    center = _spot(ring.center, factor)
    return ring._replace(center=center, radius=ring.radius / factor, pen=_pen(ring.pen, factor))


def _lettering(lettering: Lettering, factor: float) -> Lettering:
    height = lettering.height / factor
    (stated,) = _numbers(lettering.stated_height) or (0.0,)
    said = f"{stated / factor:.2f}".rstrip("0").rstrip(".")
    box = _box(lettering.box, factor)
    return lettering._replace(box=box, height=height, stated_height=said)
