"""One piece of a story pole drawn at full size, every line exactly where its number says."""

from collections.abc import Iterator
from dataclasses import dataclass

from lacunar.drawing import style
from lacunar.drawing.annotation import Block, Tag, arrow, rectangle
from lacunar.drawing.elements import Element, Group, Polyline, Pt, Segments, Text
from lacunar.drawing.full_size.band import (
    CROSS_ZONE,
    EDGE,
    LETTERS,
    Band,
    Numbered,
    above_band,
    running_numbers,
    seam_crosses,
)
from lacunar.drawing.full_size.pieces import Piece
from lacunar.drawing.hatching import box_corners, diagonal_lines, outside_box
from lacunar.drawing.typeface import Typeface
from lacunar.drawing.views.story_pole.poles import Pole, Stretch
from lacunar.drawing.wording import SheetWording, decimal_mm
from lacunar.layout.records import MarkKind
from lacunar.measure.length import Length

BAND = 22.0
WORDS = 9.0
HATCH_PITCH = 3.0
BACKING_REACH = 5.0
OFF_TAG = 0.8

PENS = {
    MarkKind.WALL: style.WALL,
    MarkKind.FACE: style.CUT,
    MarkKind.CENTER: style.CENTER,
    MarkKind.MEMBER: style.HIDDEN,
    MarkKind.BACKING: style.CLEARANCE,
}


@dataclass(frozen=True, slots=True)
class _Strip:
    """A piece of a pole, with what its texts are measured by."""

    pole: Pole
    band: Band
    typeface: Typeface

    @property
    def identity(self) -> str:
        return f"{self.pole.identity}-{self.band.piece.number}"


def _strip_of(pole: Pole, piece: Piece, wording: SheetWording, typeface: Typeface) -> _Strip:
    longest = max(typeface.width(wording.length(mark.mark), LETTERS) for mark in pole.marks)
    return _Strip(pole, Band("pole", piece, wording, above_band(longest), BAND), typeface)


def strip(pole: Pole, piece: Piece, wording: SheetWording, typeface: Typeface) -> Block:
    """A piece of a pole as a block as wide as it is long; one unit is a millimeter of the room."""
    of = _strip_of(pole, piece, wording, typeface)
    band = of.band
    children: tuple[Element, ...] = (
        rectangle(0.0, band.top, band.width, BAND),
        *_beams(of),
        *_lines(of),
        *seam_crosses(band),
        *_ids(of),
        *running_numbers(band, _numbered(pole)),
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
    return Block(band.width, band.bottom + CROSS_ZONE + WORDS, (group,))


def _seen(of: _Strip, stretch: Stretch) -> tuple[Length, Length] | None:
    """What a piece shows of a beam."""
    near, far = max(stretch.near, of.band.piece.start), min(stretch.far, of.band.piece.end)
    return (near, far) if near < far else None


def _tags(of: _Strip) -> Iterator[tuple[Tag, Pt]]:
    """Each beam's id in the middle of what a piece shows, if that is most of it and has room."""
    for beam in of.pole.beams():
        seen = _seen(of, beam)
        if seen is None or (seen[1] - seen[0]) * 2 < beam.far - beam.near:
            continue
        left, right = of.band.x(seen[0]), of.band.x(seen[1])
        for turned in (False, True):
            tag = Tag("pole", beam.of, beam.of, turned=turned)
            if tag.size(of.typeface)[0] + 2 * EDGE <= right - left:
                yield tag, Pt((left + right) / 2, (of.band.top + of.band.bottom) / 2)
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
            left, right = of.band.x(seen[0]), of.band.x(seen[1])
            area = box_corners(left, of.band.top, right - left, BAND)
            yield Segments(_broken(of, diagonal_lines(area, HATCH_PITCH)), style.HATCH)


def _lines(of: _Strip) -> Iterator[Element]:
    """Everything else that stands across the strip: faces, walls, centers, members, backing."""
    for mark in of.pole.marks:
        if of.band.holds(mark.mark):
            top = of.band.bottom - BACKING_REACH if mark.kind is MarkKind.BACKING else of.band.top
            line = (Pt(of.band.x(mark.mark), top), Pt(of.band.x(mark.mark), of.band.bottom))
            data = {
                "of": mark.of,
                "kind": mark.kind.value,
                "side": mark.side,
                "value": of.band.wording.exact(mark.mark),
            }
            drawn = tuple(Polyline(part, PENS[mark.kind]) for part in _broken(of, (line,)))
            yield Group("pole-line", drawn, data=data)


def _ids(of: _Strip) -> Iterator[Element]:
    for tag, center in _tags(of):
        drawn = tag.drawn(center, of.typeface)
        yield Group("pole-tag", drawn.children, f"{of.identity}-{tag.of}", drawn.title)


def _numbered(pole: Pole) -> tuple[Numbered, ...]:
    """The faces and walls, which bear running numbers."""
    faces = pole.of_kind(MarkKind.FACE, MarkKind.WALL)
    return tuple(Numbered(mark.mark, mark.kind.value) for mark in faces)


def _words(of: _Strip) -> Iterator[Element]:
    """What strip it is, and which end and face of it goes where."""
    pole, piece = of.pole, of.band.piece
    y = of.band.bottom + CROSS_ZONE + style.TEXT + 1.0
    said = [pole.name, f"PIECE {piece.number} OF {piece.count}"]
    if piece.number == 1:
        said.append(f"THIS END TO {pole.walls[0]}")
    else:
        said.append(f"STARTS AT {of.band.wording.length(piece.start)}")
    said.append("ON THE CEILING THIS FACE IS DOWN")
    yield Text(Pt(EDGE + 5.0, y), ". ".join(said) + ".", style.TEXT)
    tip = Pt(EDGE, y - style.TEXT / 2)
    if piece.number == 1:
        yield arrow(tip, tip.moved(1.0, 0.0))
    if piece.number == piece.count:
        words = f"THIS END TO {pole.walls[1]}"
        yield Text(
            Pt(of.band.width - EDGE - 5.0, y + style.LINE_PITCH), words, style.TEXT, anchor="end"
        )
        end = Pt(of.band.width - EDGE, y + style.LINE_PITCH - style.TEXT / 2)
        yield arrow(end, end.moved(-1.0, 0.0))
