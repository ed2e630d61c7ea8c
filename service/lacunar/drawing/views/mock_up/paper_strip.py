"""Pieces of a paper strip at full size, each line where its number says."""

from collections.abc import Iterator
from dataclasses import dataclass

from lacunar.drawing import style
from lacunar.drawing.annotation import Block, arrow, rectangle
from lacunar.drawing.elements import Element, Group, Pen, Polyline, Pt, Text
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
from lacunar.drawing.full_size.pieces import Piece, pieces_of
from lacunar.drawing.typeface import Typeface
from lacunar.drawing.views.mock_up.unfolded import LineKind, PaperStrip
from lacunar.drawing.wording import SheetWording, decimal_mm
from lacunar.measure.length import Length

KIND = "mock-up"
WORDS = 14.0
"""What the words under a strip take [mm]."""
AT_ARROW = 5.0
"""How far words stand from the tip of their arrow [mm]."""
LEAST_FIELD = style.TEXT + 1.6
"""A field narrower than this on a piece has no words [mm]."""
PENS: dict[LineKind, Pen] = {
    "edge": style.CUT,
    "fold": style.HIDDEN,
    "seat": style.CENTER,
}


@dataclass(frozen=True, slots=True)
class Sheeting:
    """The paper strips go on: how long and how tall pieces may be [mm], how they are lettered."""

    longest: float
    tallest: float
    wording: SheetWording
    typeface: Typeface

    def band_height(self, places: tuple[Length, ...]) -> float:
        """How tall the band of a strip may be: without its numbers, crosses and words [mm]."""
        return self.tallest - self.above(places) - CROSS_ZONE - WORDS

    def above(self, places: tuple[Length, ...]) -> float:
        """What numbers and crosses take above a band [mm]."""
        words = self.wording.holding(places)
        return above_band(max(self.typeface.width(words.length(each), LETTERS) for each in places))


def strip_pieces(strip: PaperStrip, sheeting: Sheeting) -> tuple[Block, ...]:
    """A strip in as many pieces as its paper asks for, along the beam as long as that is tall."""
    places = strip.places
    longest = Length.of_millimeters(int(sheeting.longest))
    pieces = pieces_of(strip.length, places, longest, sheeting.wording.units)
    return tuple(_piece(strip, piece, sheeting) for piece in pieces)


def band_of(piece: Piece, places: tuple[Length, ...], sheeting: Sheeting) -> Band:
    """The band of a piece, written to the step that holds its places."""
    words, above = sheeting.wording.holding(places), sheeting.above(places)
    return Band(KIND, piece, words, above, sheeting.band_height(places))


def _piece(strip: PaperStrip, piece: Piece, sheeting: Sheeting) -> Block:
    band = band_of(piece, strip.places, sheeting)
    numbered = [Numbered(at, kind) for at, kind in zip(strip.places, strip.kinds, strict=True)]
    said = f"{strip.name}. {strip.remark}" if strip.remark else strip.name
    children: tuple[Element, ...] = (
        rectangle(0.0, band.top, band.width, band.height),
        *_lines(strip, band),
        *_field_words(strip, band),
        *seam_crosses(band),
        *running_numbers(band, numbered),
        *words_under(band, said, (strip.first_edge, strip.last_edge), sheeting.typeface),
    )
    return block_of(band, children, (strip.identity, strip.of, strip.name))


def block_of(band: Band, children: tuple[Element, ...], named: tuple[str, str, str]) -> Block:
    """A piece as a block; `named` are its identity, what it is of, and its name."""
    identity, of, name = named
    piece = band.piece
    group = Group(
        f"{KIND}-strip",
        children,
        id=f"{identity}-{piece.number}",
        title=f"{name}, piece {piece.number} of {piece.count}",
        data={
            "strip": identity,
            "of": of,
            "piece": f"{piece.number} / {piece.count}",
            "from-mm": decimal_mm(piece.start),
            "to-mm": decimal_mm(piece.end),
        },
    )
    return Block(band.width, band.bottom + CROSS_ZONE + WORDS, (group,))


def _lines(strip: PaperStrip, band: Band) -> Iterator[Element]:
    """Edges, folds, joints and seats across the strip."""
    for place, kind in zip(strip.places, strip.kinds, strict=True):
        if band.holds(place):
            x = band.x(place)
            line = Polyline((Pt(x, band.top), Pt(x, band.bottom)), PENS[kind])
            data = {"kind": kind, "value": band.wording.exact(place)}
            yield Group(f"{KIND}-line", (line,), data=data)


def _field_words(strip: PaperStrip, band: Band) -> Iterator[Element]:
    """What each field is and how wide, up the middle of what a piece shows of it."""
    middle = (band.top + band.bottom) / 2
    for number, field in enumerate(strip.fields):
        start = max(strip.places[number], band.piece.start)
        end = min(strip.places[number + 1], band.piece.end)
        if start >= end or band.x(end) - band.x(start) < LEAST_FIELD:
            continue
        x = (band.x(start) + band.x(end)) / 2 + style.TEXT / 2
        words = f"{field.words} {band.wording.detail(field.size)}"
        yield Text(Pt(x, middle), words, style.TEXT, anchor="middle", turned=True)


def words_under(
    band: Band, said: str, edges: tuple[str, str], typeface: Typeface
) -> Iterator[Element]:
    """What strip it is, and which edge of it goes where."""
    piece = band.piece
    y = band.bottom + CROSS_ZONE + style.TEXT + 1.0
    which = f". PIECE {piece.number} OF {piece.count}" if piece.count > 1 else ""
    yield Text(Pt(EDGE, y), said + which, style.TEXT)
    y += style.LINE_PITCH
    if piece.number == 1:
        tip = Pt(EDGE, y - style.TEXT / 2)
        yield arrow(tip, tip.moved(1.0, 0.0))
        yield Text(Pt(EDGE + AT_ARROW, y), edges[0], style.TEXT)
    y += style.LINE_PITCH
    if piece.number == piece.count:
        within = typeface.width(edges[1], style.TEXT) + 2 * EDGE + AT_ARROW <= band.width
        # On a narrow strip they stand beside its last edge, on what is cut off.
        way = -1.0 if within else 1.0
        tip = Pt(band.width + way * EDGE, y - style.TEXT / 2)
        yield arrow(tip, tip.moved(way, 0.0))
        at = Pt(tip.x + way * AT_ARROW, y)
        yield Text(at, edges[1], style.TEXT, anchor="end" if within else "start")
