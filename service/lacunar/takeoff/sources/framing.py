"""What is hidden: backing, cleats of casings, blocks between joists, strips that carry seams."""

from collections.abc import Callable, Iterator, Sequence
from dataclasses import dataclass
from itertools import pairwise
from math import ceil

from lacunar.layout.backing.lines import backing_stretches
from lacunar.layout.backing_records import BackingLine
from lacunar.layout.records import Beam, WallBeam
from lacunar.measure.figure import LengthFigure, Rule, given
from lacunar.measure.length import Length
from lacunar.model.stock_length import longest_of
from lacunar.model.wall_kind import WallKind
from lacunar.takeoff.part_records import Material, PartKind, PartPlace, Pieces, Shape
from lacunar.takeoff.sources.source import Source, lying

Section = Callable[[LengthFigure], Shape]

CLEAR = Rule("length of backing: the clear length between what stops it", "end - start")
BUTTED = Rule("length of backing between the joints that part it", "end - start")


@dataclass(frozen=True, slots=True)
class _Stretch:
    """A clear length of a line, and the places it is fixed at, as far as these are known."""

    beam: str
    side: str
    start: Length
    end: Length
    places: tuple[Length, ...] = ()


def framing_pieces(source: Source) -> Iterator[Pieces]:
    """Turn a layout's lines of backing and its seams into pieces.

    Backing longer than its stock is butted where it is fixed, each part as long as can be; where
    it is not fixed often enough for that, or nobody said to what, it is parted evenly.
    """
    for stretch in _stretches(source):
        section = _section(source, stretch)
        if section is not None:
            yield from _backing(source, stretch, section)
    for line in source.layout.backing.lines:
        yield from _blocking(source, line)
    yield from _seam_strips(source)


def _stretches(source: Source) -> Iterator[_Stretch]:
    """Those of the layout's lines; where neither joists nor fixing are told, of its beams."""
    layout = source.layout
    for line in layout.backing.lines:
        for piece in line.pieces:
            places = tuple(place.value for place in piece.places)
            start, end = piece.start.value, piece.end.value
            yield _Stretch(line.beam, line.side, start, end, places)
    if layout.ceiling.fixing is not None:
        return
    walls = (beam for beam in layout.wall_beams if beam.kind is not WallKind.SOFFIT)
    every: tuple[Beam | WallBeam, ...] = (*layout.beams, *walls)
    for beam in every:
        for side, _, clears in backing_stretches(beam, layout.profile_of[beam.id]):
            for clear in clears:
                yield _Stretch(beam.id, side, clear.start.value, clear.end.value)


def _section(source: Source, line: _Stretch) -> Section | None:
    """What a line consists of; None of a flat beam."""
    layout = source.layout
    if line.side != "middle":
        beam = next(beam for beam in layout.beams if beam.id == line.beam)
        return _cleat(source, beam)
    profile = layout.profile_of[line.beam]
    part = next((part for part in profile.parts if part.name == "backing"), None)
    if part is None:
        return None
    stock = part.stock
    material = (
        source.section(part.thickness.value, part.width.value)
        if stock is None
        else source.lumber(stock)
    )
    return _framing(source, PartKind.BACKING, material, (part.thickness, part.width))


def _cleat(source: Source, beam: Beam) -> Section:
    if beam.member is None:
        raise ValueError(f"{beam.id} has cleats and no member")
    thickness, width = beam.member.cleat, source.take_off.cleat_width
    material = source.section(thickness, width)
    return _framing(source, PartKind.CLEAT, material, (given(thickness), given(width)))


def _framing(
    source: Source,
    kind: PartKind,
    material: Material,
    section: tuple[LengthFigure, LengthFigure],
) -> Section:
    """Framing of a section, by whatever length it is cut to."""
    thickness, width = section

    def of_length(length: LengthFigure) -> Shape:
        return Shape(
            kind=kind,
            name=kind.value.replace("_", " ").capitalize(),
            material=material,
            thickness=thickness,
            width=width,
            length=length,
            short_length=length,
            length_allowance=source.take_off.length_allowance,
            width_allowance=source.take_off.width_allowance,
        )

    return of_length


def _backing(source: Source, stretch: _Stretch, section: Section) -> Iterator[Pieces]:
    """A stretch whole, or in parts no longer than its stock."""
    at = "" if stretch.side == "middle" else stretch.side
    reach = stretch.start, stretch.end
    longest = _longest(source, stretch)
    joints: list[Length] = []
    if stretch.end - stretch.start > longest:
        joints = list(_joints(reach, stretch.places, longest))
    rule = BUTTED if joints else CLEAR
    for near, far in pairwise((stretch.start, *joints, stretch.end)):
        length = rule.gives(far - near, end=far, start=near)
        yield lying(section(length), PartPlace(source.number, (stretch.beam,), at, near, far, 1))


def _longest(source: Source, stretch: _Stretch) -> Length:
    parts = source.layout.profile_of[stretch.beam].parts
    stock = next((part.stock for part in parts if part.name == "backing"), None)
    kind = None if stock is None or stretch.side != "middle" else stock.kind
    return longest_of(kind, source.layout.ceiling.stock)[1]


def _joints(
    reach: tuple[Length, Length], places: Sequence[Length], longest: Length
) -> Iterator[Length]:
    """Joints at the last place within reach of the one before; even ones where one is missing."""
    start, end = reach
    found: list[Length] = []
    near = start
    while end - near > longest:
        within = [place for place in places if near < place <= near + longest and place < end]
        if not within:
            parts = ceil((end - start) / longest)
            yield from (start + (end - start) * number / parts for number in range(1, parts))
            return
        near = max(within)
        found.append(near)
    yield from found


def _blocking(source: Source, line: BackingLine) -> Iterator[Pieces]:
    """The blocks of a line that lies between two joists."""
    if line.blocks is None or line.bay is None:
        return
    section = _blocks(source, PartKind.BLOCKING)
    at = "" if line.side == "middle" else line.side
    place = source.place(line.beam, at=at, quantity=line.blocks.value)
    yield lying(section(line.bay.block), place)


def _seam_strips(source: Source) -> Iterator[Pieces]:
    """A strip along each seam that lies between joists, in every coffer that has it."""
    section = _blocks(source, PartKind.SEAM_STRIP)
    for panel in source.layout.panels:
        for bearing in panel.seam_bearings:
            if bearing.backing is not None:
                places = (source.place(coffer) for coffer in panel.coffers)
                yield lying(section(bearing.backing), *places)


def _blocks(source: Source, kind: PartKind) -> Section:
    """What goes in between joists, of the stock that the spec says."""
    stock = source.take_off.blocking
    size = given(stock.thickness), given(stock.width)
    return _framing(source, kind, source.lumber(stock), size)
