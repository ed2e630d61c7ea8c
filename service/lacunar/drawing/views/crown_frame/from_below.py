"""A crown frame as it is seen from below: the coffer, the miters, what is seen inside it."""

from collections.abc import Iterator, Sequence
from fractions import Fraction
from math import dist

from lacunar.drawing import style
from lacunar.drawing.dimensions import Axis, Segment, Stop, String, drawn_string, place_strings
from lacunar.drawing.elements import Element, Face, Group, Polyline, Pt, Segments, Text
from lacunar.drawing.plan.clear_places import Occupied, text_box
from lacunar.drawing.plan.rings import set_in
from lacunar.drawing.typeface import Typeface
from lacunar.drawing.views.crown_frame.frames import CrownFrame
from lacunar.drawing.wording import SheetWording, decimal_mm
from lacunar.layout.moulding_records import PieceEnd
from lacunar.measure.figure import LengthFigure
from lacunar.measure.length import ZERO

Ring = tuple[Pt, ...]
FIRST_GAP = 1.6
NAME_OFF = 2.4
"""How far inside the seen edge the name of a side stands [mm of paper]."""


def from_below(
    frame: CrownFrame, ratio: Fraction, number: int, lettering: tuple[SheetWording, Typeface]
) -> tuple[Element, ...]:
    """The frame on paper with the opening's dimensions, as the object of view `number`."""
    wording, typeface = lettering
    rings = tuple(_on_paper(ring, ratio) for ring in frame.rings)
    seen = () if frame.meets else _seen(rings, frame.inward / ratio)
    drawn = tuple(_drawn(frame, rings, seen, ratio))
    strings: tuple[Element, ...] = ()
    if frame.size is not None:
        strings = tuple(_strings(frame, rings[0], frame.size, wording, typeface))
    names = tuple(_names(frame, seen or rings, (*drawn, *strings), typeface))
    return (Group("object", drawn, id=f"object-view-{number}"), *strings, *names)


def _on_paper(ring: Sequence[Pt], ratio: Fraction) -> Ring:
    return tuple(Pt(spot.x / ratio, -spot.y / ratio) for spot in ring)


def _seen(rings: Sequence[Ring], inward: float) -> tuple[Ring, ...]:
    """What is seen inside the crown; nothing where a side of it would run the other way."""
    found = tuple(set_in(ring, inward) for ring in rings)
    turned = any(
        (b.x - a.x) * (d.x - c.x) + (b.y - a.y) * (d.y - c.y) <= 0
        for ring, inner in zip(rings, found, strict=True)
        for (a, b), (c, d) in zip(_sides(ring), _sides(inner), strict=True)
    )
    return () if turned else found


def _sides(ring: Ring) -> Iterator[tuple[Pt, Pt]]:
    yield from zip(ring, (*ring[1:], ring[0]), strict=True)


def _drawn(
    frame: CrownFrame, rings: Sequence[Ring], seen: Sequence[Ring], ratio: Fraction
) -> Iterator[Element]:
    """Sides in the object pen, flat mouldings and the seen edge in a fine one, miters between."""
    for ring in rings:
        yield Polyline(ring, style.OBJECT, closed=True)
    if not seen:
        return
    behind = [set_in(ring, frame.flats / ratio) for ring in rings] if frame.flats else list(rings)
    if frame.flats:
        yield Group("flats-edge", tuple(Polyline(r, style.FINE, closed=True) for r in behind))
    yield Group("seen-edge", tuple(Polyline(r, style.OBJECT, closed=True) for r in seen))
    miters = tuple(
        pair
        for outer, inner in zip(behind, seen, strict=True)
        for pair in zip(outer, inner, strict=True)
    )
    yield Group("miters", (Segments(miters, style.FINE),))


def _strings(
    frame: CrownFrame,
    ring: Ring,
    size: tuple[LengthFigure, LengthFigure],
    wording: SheetWording,
    typeface: Typeface,
) -> Iterator[Group]:
    """The opening's length above it and its width left of it."""
    left, right = min(s.x for s in ring), max(s.x for s in ring)
    top, low = min(s.y for s in ring), max(s.y for s in ring)
    ways = (("length", size[0], right - left), ("width", size[1], low - top))
    axes = (Axis("x", top, left), Axis("y", left, -low))
    for (name, figure, long), axis in zip(ways, axes, strict=True):
        value = wording.detailed(figure.value)
        segment = Segment(
            Stop("side", 0.0, ZERO, ZERO),
            Stop("side", long, value, figure.value),
            wording.detailed_dimension(figure.value),
            wording.exact(value),
            decimal_mm(figure.value),
        )
        string = String(f"frame-{frame.name}", f"opening-{name}", (segment,))
        yield drawn_string(place_strings([string], typeface)[0], axis, FIRST_GAP)


def _side_names(frame: CrownFrame) -> list[str]:
    """The sides by their names; where pieces are coped in turn, each with its piece's number."""
    if not any(PieceEnd.COPED in piece.ends for piece in frame.pieces):
        return list(frame.sides)
    numbers = {
        side: number for number, piece in enumerate(frame.pieces, start=1) for side in piece.sides
    }
    return [f"{side}: {numbers[side]}" if side in numbers else side for side in frame.sides]


def _names(
    frame: CrownFrame, rings: Sequence[Ring], drawn: Sequence[Element], typeface: Typeface
) -> Iterator[Text]:
    """Each side's name inside the seen edge, by its middle, where it has room."""
    busy = Occupied(typeface, drawn)
    sides = [side for ring in rings for side in _sides(ring)]
    for name, (start, end) in zip(_side_names(frame), sides, strict=True):
        long = dist((start.x, start.y), (end.x, end.y))
        # As rings go counter-clockwise in the room, their inside is to the left of the way.
        inward = ((end.y - start.y) / long, -(end.x - start.x) / long)
        for share in (0.5, 0.35, 0.65):
            spot = start.moved((end.x - start.x) * share, (end.y - start.y) * share)
            half = typeface.width(name, style.TEXT, Face.SEMIBOLD) / 2
            off = (
                NAME_OFF - style.TEXT / 2 + abs(inward[0]) * half + abs(inward[1]) * style.TEXT / 2
            )
            middle = spot.moved(inward[0] * off, inward[1] * off)
            at = middle.moved(0.0, style.TEXT / 2)
            text = Text(at, name, style.TEXT, Face.SEMIBOLD, "middle")
            if busy.is_free(text_box(text, typeface).grown(0.3)):
                busy.add((text,))
                yield text
                break
