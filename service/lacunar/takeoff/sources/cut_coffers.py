"""What stands in coffers that walls or columns cut, and at angled walls, as pieces."""

from collections.abc import Iterator
from dataclasses import replace

from lacunar.layout.outline_records import AngledBeam, PartialCoffer, PartialSide
from lacunar.layout.records import ProfilePart
from lacunar.measure.figure import AngleFigure, LengthFigure
from lacunar.takeoff.part_records import EndCut, Face, PartEnd, PartKind, Pieces, Shape
from lacunar.takeoff.sources.boards import WHOLE, board_shape, overall_width
from lacunar.takeoff.sources.mouldings import crown_shape, piece_end
from lacunar.takeoff.sources.panels import panel_shape
from lacunar.takeoff.sources.source import Source, lying


def cut_coffer_pieces(source: Source) -> Iterator[Pieces]:
    """Turn cut coffers into their crown, panels and boards.

    A place tells the number of the coffer's side, from 1, those about columns after the others.
    """
    room = source.layout.outlined
    for coffer in room.coffers_as_cut if room else ():
        first = 1
        for sides in (coffer.sides, *(hole.sides for hole in coffer.holes)):
            yield from _crown(source, coffer, sides, first)
            first += len(sides)
        yield from _panel(source, coffer)
        yield from _boards(source, coffer)


def _crown(
    source: Source, coffer: PartialCoffer, sides: tuple[PartialSide, ...], first: int
) -> Iterator[Pieces]:
    section = source.layout.mouldings.crown
    for at, side in enumerate(sides):
        if section is None or side.cut_from is None or side.between_ends is None:
            continue
        if side.left_end is None or side.right_end is None:
            continue
        # Going round with the coffer to the left, a side's end is at the left hand.
        shape = replace(
            crown_shape(source, section, (side.cut_from, side.between_ends)),
            left=piece_end(side.left_end, side.corner.value),
            right=piece_end(side.right_end, sides[at - 1].corner.value),
        )
        yield lying(shape, source.place(coffer.id, at=str(first + at)))


def _panel(source: Source, coffer: PartialCoffer) -> Iterator[Pieces]:
    """The panel as the piece it is cut from, with its corners."""
    if coffer.panel_length is None or coffer.panel_width is None:
        return
    shape = panel_shape(source, (coffer.panel_length, coffer.panel_width), tapered=True)
    yield lying(replace(shape, corners=coffer.panel_corners), source.place(coffer.id))


def _boards(source: Source, coffer: PartialCoffer) -> Iterator[Pieces]:
    """Boards of each length; what they are ripped or cut off aslant is told on the site."""
    for course in coffer.courses:
        shape = board_shape(source, WHOLE, (course.length, overall_width(source)))
        place = source.place(coffer.id, quantity=course.boards)
        yield lying(replace(shape, tapered=True), place)


def angled_beam_pieces(source: Source) -> Iterator[Pieces]:
    """Turn beams at angled walls into their boards, mitred at both ends."""
    room = source.layout.outlined
    for beam in room.angled_beams if room else ():
        profile = source.layout.profile(beam.profile)
        for part in profile.parts:
            yield from _board(source, beam, part)


def _board(source: Source, beam: AngledBeam, part: ProfilePart) -> Iterator[Pieces]:
    sizes: dict[str, tuple[LengthFigure | None, LengthFigure | None]] = {
        "side": (beam.side_long, beam.side_short),
        "bottom": (beam.bottom_long, beam.bottom_short),
        "upper_board": (beam.bottom_long, beam.bottom_short),
        "backing": (beam.backing_long, beam.backing_short),
    }
    long, short = sizes[part.name]
    if long is None or short is None:
        return
    # Who faces the side from the room has the wall's start at the left; a bottom lies the other
    # way about, its edge at the wall away.
    ends = _mitred(beam.start_miter), _mitred(beam.end_miter)
    left, right = ends if part.name in ("side", "backing") else ends[::-1]
    kind = PartKind(part.name)
    stock = part.stock
    material = (
        source.section(part.thickness.value, part.width.value)
        if stock is None
        else source.lumber(stock)
    )
    shape = Shape(
        kind=kind,
        name=kind.value.replace("_", " ").capitalize(),
        material=material,
        thickness=part.thickness,
        width=part.width,
        length=long,
        short_length=short,
        left=left,
        right=right,
        face={"side": Face.OUT, "backing": None}.get(part.name, Face.DOWN),
        length_allowance=source.take_off.length_allowance,
        width_allowance=source.take_off.width_allowance,
    )
    yield lying(shape, *[source.place(beam.id)] * part.quantity)


def _mitred(miter: AngleFigure) -> PartEnd:
    return PartEnd(EndCut.MITRED, miter.value)
