"""Sheet panels as pieces: each panel in as many as its seams part it into."""

from collections.abc import Iterator, Sequence
from itertools import pairwise

from lacunar.layout.tapering import tapered_panels_of
from lacunar.measure.figure import LengthFigure, Rule
from lacunar.measure.length import ZERO, Length
from lacunar.model.room import RunName
from lacunar.takeoff.part_records import Face, Grain, PartKind, Pieces, Shape
from lacunar.takeoff.sources.source import Source, lying

BETWEEN_SEAMS = Rule("piece of a panel between the seams that part it", "far - near")


def panel_pieces(source: Source) -> Iterator[Pieces]:
    """Turn a layout's sheet panels into pieces.

    With a grain, a piece's length lies along it. Without, its longer size is its length, and it may
    be turned.
    """
    tapered = {panel.coffer for panel in tapered_panels_of(source.layout)}
    for panel in source.layout.panels:
        along = list(_between(panel.length, panel.seams_along_length))
        up = list(_between(panel.width, panel.seams_along_width))
        parted = len(along) > 1 or len(up) > 1
        is_tapered = not tapered.isdisjoint(panel.coffers)
        for column, length in enumerate(along, start=1):
            for row, width in enumerate(up, start=1):
                at = f"{column}.{row}" if parted else ""
                places = (source.place(coffer, at=at) for coffer in panel.coffers)
                yield lying(panel_shape(source, (length, width), tapered=is_tapered), *places)


def _between(size: LengthFigure, seams: Sequence[LengthFigure]) -> Iterator[LengthFigure]:
    """A panel's size along one run, as the seams part it."""
    if not seams:
        yield size
        return
    gives = BETWEEN_SEAMS.approximates if size.approximate else BETWEEN_SEAMS.gives
    edges: list[Length] = [ZERO, *(seam.value for seam in seams), size.value]
    for near, far in pairwise(edges):
        yield gives(far - near, far=far, near=near)


def panel_shape(source: Source, size: tuple[LengthFigure, LengthFigure], *, tapered: bool) -> Shape:
    """A panel by its sizes along the length and the width run."""
    grain = source.layout.ceiling.panel.grain
    length, width = size
    if grain is RunName.WIDTH or (grain is None and width.value > length.value):
        length, width = width, length
    return Shape(
        kind=PartKind.PANEL,
        name="Panel",
        material=source.sheet(),
        thickness=source.panel_thickness,
        width=width,
        length=length,
        short_length=length,
        face=Face.DOWN,
        grain=Grain.EITHER if grain is None else Grain.LENGTHWISE,
        tapered=tapered,
        length_allowance=source.take_off.length_allowance,
        width_allowance=source.take_off.width_allowance,
    )
