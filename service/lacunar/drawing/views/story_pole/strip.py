"""One piece of a story pole drawn at full size, every line exactly where its number says."""

from collections.abc import Iterator
from dataclasses import dataclass
from fractions import Fraction

from lacunar.drawing import style
from lacunar.drawing.annotation import Block, Tag, arrow, rectangle
from lacunar.drawing.elements import Element, Group, Polyline, Pt, Segments, Text
from lacunar.drawing.hatching import box_corners, diagonal_lines, outside_box
from lacunar.drawing.spreading import spread
from lacunar.drawing.typeface import Typeface
from lacunar.drawing.views.story_pole.pieces import OVERLAP, PolePiece
from lacunar.drawing.views.story_pole.poles import Pole, Stretch
from lacunar.drawing.wording import SheetWording, decimal_mm
from lacunar.layout.records import MarkKind
from lacunar.measure.length import Length

LETTERS = 3.5
"""Capital height of running numbers: they are read from a ladder [mm]."""
NUMBER_PITCH = 5.2
NUMBER_GAP = 1.2
BEND = 7.0
"""How deep the zone is in which lines bend to their numbers [mm]."""
BAND = 22.0
CROSS_ZONE = 7.0
CROSS = 2.5
WORDS = 9.0
HATCH_PITCH = 3.0
BACKING_REACH = 5.0
OFF_TAG = 0.8
EDGE = 2.0
"""How far numbers keep from where the strip is cut off [mm]."""

PENS = {
    MarkKind.WALL: style.WALL,
    MarkKind.FACE: style.CUT,
    MarkKind.CENTER: style.CENTER,
    MarkKind.MEMBER: style.HIDDEN,
    MarkKind.BACKING: style.CLEARANCE,
}


def _band_top(pole: Pole, wording: SheetWording, typeface: Typeface) -> float:
    longest = max(typeface.width(wording.length(mark.mark), LETTERS) for mark in pole.marks)
    return longest + NUMBER_GAP + BEND + CROSS_ZONE


@dataclass(frozen=True, slots=True)
class _Strip:
    """A piece of a pole, with how it is written and where its band's upper edge lies [mm]."""

    pole: Pole
    piece: PolePiece
    wording: SheetWording
    typeface: Typeface
    top: float

    @property
    def width(self) -> float:
        return self.x(self.piece.end)

    @property
    def bottom(self) -> float:
        return self.top + BAND

    @property
    def identity(self) -> str:
        return f"{self.pole.identity}-{self.piece.number}"

    def x(self, place: Length) -> float:
        """Where a place of the pole lies on the strip: full size [mm]."""
        return float((place - self.piece.start).millimeters)

    def holds(self, place: Length) -> bool:
        return self.piece.start <= place <= self.piece.end


def strip(pole: Pole, piece: PolePiece, wording: SheetWording, typeface: Typeface) -> Block:
    """A piece of a pole as a block as wide as it is long; one unit is a millimeter of the room."""
    of = _Strip(pole, piece, wording, typeface, _band_top(pole, wording, typeface))
    children: tuple[Element, ...] = (
        rectangle(0.0, of.top, of.width, BAND),
        *_beams(of),
        *_lines(of),
        *_seams(of),
        *_ids(of),
        *_numbers(of),
        *_words(of),
    )
    group = Group(
        "pole-strip",
        children,
        id=of.identity,
        title=f"{pole.name}, piece {piece.number} of {piece.count}",
        data={
            "run": pole.run.value,
            "end": pole.end,
            "piece": f"{piece.number} / {piece.count}",
            "from-mm": decimal_mm(piece.start),
            "to-mm": decimal_mm(piece.end),
        },
    )
    return Block(of.width, of.bottom + CROSS_ZONE + WORDS, (group,))


def _seen(of: _Strip, stretch: Stretch) -> tuple[Length, Length] | None:
    """What a piece shows of a beam."""
    near, far = max(stretch.near, of.piece.start), min(stretch.far, of.piece.end)
    return (near, far) if near < far else None


def _tags(of: _Strip) -> Iterator[tuple[Tag, Pt]]:
    """Each beam's id in the middle of what a piece shows, if that is most of it and has room."""
    for beam in of.pole.beams():
        seen = _seen(of, beam)
        if seen is None or (seen[1] - seen[0]) * 2 < beam.far - beam.near:
            continue
        left, right = of.x(seen[0]), of.x(seen[1])
        for turned in (False, True):
            tag = Tag("pole", beam.of, beam.of, turned=turned)
            if tag.size(of.typeface)[0] + 2 * EDGE <= right - left:
                yield tag, Pt((left + right) / 2, (of.top + of.bottom) / 2)
                break


def _behind_tags(of: _Strip) -> tuple[tuple[Pt, ...], ...]:
    """Where lines are broken about ids, by its corners."""
    found = []
    for tag, center in _tags(of):
        width, height = (size + 2 * OFF_TAG for size in tag.size(of.typeface))
        found.append(box_corners(center.x - width / 2, center.y - height / 2, width, height))
    return tuple(found)


def _broken(of: _Strip, lines: tuple[tuple[Pt, Pt], ...]) -> tuple[tuple[Pt, Pt], ...]:
    for box in _behind_tags(of):
        lines = outside_box(lines, box)
    return lines


def _beams(of: _Strip) -> Iterator[Element]:
    for beam in of.pole.beams():
        seen = _seen(of, beam)
        if seen:
            left, right = of.x(seen[0]), of.x(seen[1])
            area = box_corners(left, of.top, right - left, BAND)
            yield Segments(_broken(of, diagonal_lines(area, HATCH_PITCH)), style.HATCH)


def _lines(of: _Strip) -> Iterator[Element]:
    """Everything else that stands across the strip: faces, walls, centers, members, backing."""
    for mark in of.pole.marks:
        if of.holds(mark.mark):
            top = of.bottom - BACKING_REACH if mark.kind is MarkKind.BACKING else of.top
            line = (Pt(of.x(mark.mark), top), Pt(of.x(mark.mark), of.bottom))
            data = {
                "of": mark.of,
                "kind": mark.kind.value,
                "side": mark.side,
                "value": of.wording.exact(mark.mark),
            }
            drawn = tuple(Polyline(part, PENS[mark.kind]) for part in _broken(of, (line,)))
            yield Group("pole-line", drawn, data=data)


def _seams(of: _Strip) -> Iterator[Element]:
    """Two crosses at each seam, above and below the band, in the middle of what is in common."""
    half = OVERLAP[of.wording.units] * Fraction(1, 2)
    places = []
    if of.piece.number > 1:
        places.append(of.piece.start + half)
    if of.piece.number < of.piece.count:
        places.append(of.piece.end - half)
    for place in places:
        for y in (of.top - CROSS_ZONE / 2, of.bottom + CROSS_ZONE / 2):
            x = of.x(place)
            lines = (
                (Pt(x - CROSS, y), Pt(x + CROSS, y)),
                (Pt(x, y - CROSS), Pt(x, y + CROSS)),
            )
            data = {"at-mm": decimal_mm(place)}
            yield Group("pole-cross", (Segments(lines, style.FINE),), data=data)


def _ids(of: _Strip) -> Iterator[Element]:
    for tag, center in _tags(of):
        drawn = tag.drawn(center, of.typeface)
        yield Group("pole-tag", drawn.children, f"{of.identity}-{tag.of}", drawn.title)


def _numbers(of: _Strip) -> Iterator[Element]:
    """The running number of each face and wall, and of the place where a piece starts."""
    numbered: list[tuple[Length, str]] = [
        (mark.mark, mark.kind.value)
        for mark in of.pole.of_kind(MarkKind.FACE, MarkKind.WALL)
        if of.holds(mark.mark)
    ]
    if of.piece.number > 1:
        numbered.insert(0, (of.piece.start, "seam"))
    places = [of.x(place) for place, _ in numbered]
    half = LETTERS / 2
    stands = spread(places, NUMBER_PITCH, EDGE + half, of.width - EDGE - half)
    top = of.top - CROSS_ZONE
    for (place, kind), x, stand in zip(numbered, places, stands, strict=True):
        way = (Pt(x, of.top), Pt(x, top), Pt(stand, top - BEND))
        text = Text(Pt(stand + half, top - BEND - NUMBER_GAP), of.wording.length(place), LETTERS)
        yield Group(
            "pole-number",
            (Polyline(way, style.LEADER), _turned(text)),
            data={"kind": kind, "value": of.wording.exact(place)},
        )


def _turned(text: Text) -> Text:
    return Text(text.at, text.text, text.height, text.face, text.anchor, turned=True)


def _words(of: _Strip) -> Iterator[Element]:
    """What strip it is, and which end and face of it goes where."""
    pole, piece = of.pole, of.piece
    y = of.bottom + CROSS_ZONE + style.TEXT + 1.0
    said = [pole.name, f"PIECE {piece.number} OF {piece.count}"]
    if piece.number == 1:
        said.append(f"THIS END TO {pole.walls[0]}")
    else:
        said.append(f"STARTS AT {of.wording.length(piece.start)}")
    said.append("ON THE CEILING THIS FACE IS DOWN")
    yield Text(Pt(EDGE + 5.0, y), ". ".join(said) + ".", style.TEXT)
    tip = Pt(EDGE, y - style.TEXT / 2)
    if piece.number == 1:
        yield arrow(tip, tip.moved(1.0, 0.0))
    if piece.number == piece.count:
        words = f"THIS END TO {pole.walls[1]}"
        yield Text(Pt(of.width - EDGE - 5.0, y + style.LINE_PITCH), words, style.TEXT, anchor="end")
        end = Pt(of.width - EDGE, y + style.LINE_PITCH - style.TEXT / 2)
        yield arrow(end, end.moved(-1.0, 0.0))
