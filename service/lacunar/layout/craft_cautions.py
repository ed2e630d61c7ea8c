"""Cautions about how the coffers will look beside each other."""

from collections.abc import Iterator
from fractions import Fraction

from lacunar.layout.crossing_records import BoardCut
from lacunar.layout.records import Caution, Coffer, Layout, RunLayout
from lacunar.model.beams import Box, Depth, Flat, Through
from lacunar.model.room import RunName

# A border less than half of what is next to it reads as a mistake: the tile setter's rule for edge
# pieces (common practice, no source).
_SMALL_BORDER = Fraction(1, 2)
# From where coffers of one run read as unlike, and a coffer as a slot (this project's choice).
_UNLIKE = Fraction(3, 2)
_LONG = Fraction(2)


def craft_cautions(layout: Layout) -> Iterator[Caution]:
    """Cautions of small borders, unlike or long coffers, and boards ripped to a common depth."""
    for run in (layout.length, layout.width):
        yield from _openings(run)
    yield from _long_coffers(layout)
    yield from _ripped_sides(layout)
    yield from _scarfs(layout)
    yield from _flat_through(layout)


def _flat_through(layout: Layout) -> Iterator[Caution]:
    """Flat beams cannot run through boxes, which would end open below them."""
    beams = layout.ceiling.beams
    named = {Through.CROSSWISE: beams.crosswise, Through.LENGTHWISE: beams.lengthwise}
    flats = [isinstance(family, Flat) for family in (beams.crosswise, beams.lengthwise)]
    if isinstance(named.get(beams.through), Flat) and not all(flats):
        yield Caution(
            code="flat_beams_cannot_run_through",
            text="The flat beams were to run through; boxes would end open below them, so the"
            " boxes do.",
            figures={"through": str(beams.through)},
            pointer="/beams/through",
        )


def _scarfs(layout: Layout) -> Iterator[Caution]:
    scarfed = {
        place.beam
        for piece in layout.pieces
        if BoardCut.SCARFED in (piece.start.cut, piece.end.cut)
        for place in piece.places
    }
    if scarfed:
        rules = layout.ceiling.stock
        yield Caution(
            code="boards_scarfed",
            text="Boards of beams are longer than their stock, and no crossing hides a joint within"
            " its length: they are scarfed, which is seen. Longer stock, or beams that cross there,"
            " would avoid it.",
            figures={
                "beams": ", ".join(sorted(scarfed)),
                "longest_board": rules.longest_board,
                "longest_sheet": rules.longest_sheet,
            },
            pointer="/beams/look/splices",
        )


def _openings(run: RunLayout) -> Iterator[Caution]:
    openings = [opening.value for zone in run.zones for opening in zone.openings]
    borders = min(openings[0], openings[-1])
    inner = max(openings[1:-1], default=borders)
    largest, smallest = max(openings), min(openings)
    if borders < inner * _SMALL_BORDER:
        yield Caution(
            code="small_border_coffer",
            text=f"A coffer at a wall of the {run.name} run is less than half as large as one"
            " beside it. One coffer fewer, or beams at the walls, may look better.",
            figures={"border": borders, "inner": inner},
            pointer=f"/grid/{run.name}",
        )
    elif largest >= smallest * _UNLIKE:
        yield Caution(
            code="unlike_coffers",
            text=f"The coffers of the {run.name} run differ enough to be seen. Another split over"
            " its zones, or shifted casings, may make them more alike.",
            figures={"largest": largest, "smallest": smallest},
            pointer=f"/grid/{run.name}",
        )


def _long_coffers(layout: Layout) -> Iterator[Caution]:
    longest = max(layout.coffers, key=_shape, default=None)
    if longest is not None and _shape(longest) > _LONG:
        yield Caution(
            code="long_coffers",
            text="There are coffers more than twice as long as wide. Another count in one of the"
            " runs brings them nearer to squares.",
            figures={
                "coffer": longest.id,
                "length": longest.length.value,
                "width": longest.width.value,
            },
            pointer="/grid",
        )


def _shape(coffer: Coffer) -> Fraction:
    length, width = coffer.length.value, coffer.width.value
    return max(length, width) / min(length, width)


def _ripped_sides(layout: Layout) -> Iterator[Caution]:
    """Families of unlike boards were brought to one depth, though none was asked for."""
    beams = layout.ceiling.beams
    crosswise, lengthwise = beams.crosswise, beams.lengthwise
    if not isinstance(crosswise, Box) or not isinstance(lengthwise, Box):
        return
    if beams.depth is Depth.STEPPED or crosswise.drop is not None or lengthwise.drop is not None:
        return
    built = {beam.on for beam in layout.beams} | {beam.on for beam in layout.wall_beams}
    if built == set(RunName) and crosswise.sides.width != lengthwise.sides.width:
        yield Caution(
            code="sides_ripped_to_equal_depth",
            text="The two families have sides of unlike width, and equal depth was asked for: the"
            " wider sides are ripped. With stepped depth each family keeps its own.",
            figures={"crosswise": crosswise.sides.width, "lengthwise": lengthwise.sides.width},
            pointer="/beams/depth",
        )
