"""The card: half of a beam's outline at full size, to be cut out and held against a wall.

It lies on its side: the ceiling is its left edge, the beam's middle its lower one. Where paper is
too low for that, the card is cut off short of the middle, then short of the outermost moulding.
"""

from collections.abc import Iterator
from dataclasses import replace
from itertools import pairwise

from lacunar.drawing import style
from lacunar.drawing.annotation import Block, rectangle
from lacunar.drawing.elements import Element, Group, Polyline, Pt, Segments
from lacunar.drawing.full_size.band import Band, Numbered, running_numbers, seam_crosses
from lacunar.drawing.full_size.pieces import pieces_of
from lacunar.drawing.section.boards import panel_edges
from lacunar.drawing.section.records import Outline, SectionOf
from lacunar.drawing.section.room_side import room_side
from lacunar.drawing.views.mock_up.paper_strip import (
    KIND,
    Sheeting,
    band_of,
    block_of,
    words_under,
)
from lacunar.drawing.views.mock_up.unfolded import TO_CEILING
from lacunar.measure.length import ZERO, Length

OUTLINE_OFF = 4.0
"""How far the outline keeps from the card's upper edge [mm]."""
BEHIND_FACE = 30.0
"""How much a card has behind the side's face at least, to be held by [mm]."""
TICK = 3.0

Line = tuple[Pt, Pt]


def card(of: SectionOf, sheeting: Sheeting) -> tuple[Block, ...]:
    """The card of a profile in as many pieces as its paper asks for."""
    places = _places(of)
    longest = Length.of_millimeters(int(sheeting.longest))
    profile = of.profile.id
    named = f"mock-up-{profile}-card", "card", f"CARD {profile}"
    blocks = []
    for piece in pieces_of(places[-1], places, longest, sheeting.wording.units):
        band = band_of(piece, places, sheeting)
        band = replace(band, height=min(band.height, OUTLINE_OFF + _reach(of)))
        numbered = [Numbered(place, "edge") for place in places]
        children: tuple[Element, ...] = (
            rectangle(0.0, band.top, band.width, band.height),
            *_outline(of, band),
            *_ticks(band, places),
            *seam_crosses(band),
            *running_numbers(band, numbered),
            *words_under(band, _said(of, band), (TO_CEILING, "LOWEST EDGE"), sheeting.typeface),
        )
        blocks.append(block_of(band, children, named))
    return tuple(blocks)


def _said(of: SectionOf, band: Band) -> str:
    """Whose it is, what to do with it, and what its lower edge is."""
    whole = _reach(of) + OUTLINE_OFF <= band.height
    edge = "LOWER EDGE IS THE MIDDLE" if whole else "SHOWN AS FAR AS PAPER HOLDS IT"
    return f"CARD {of.profile.id}. CUT ALONG THE HEAVY LINE. {edge}"


def _reach(of: SectionOf) -> float:
    """How far the outline stands out from the beam's middle [mm]."""
    return float((_outermost(of) - of.profile.finished_width.value / 2).millimeters)


def _corners(of: SectionOf) -> Outline:
    """The outline from the ceiling down; beside a panel it is the beam's own face."""
    face, upper, line = of.profile.finished_width.value, panel_edges(of)[1], room_side(of)
    return ((face, ZERO), (face, upper), *line) if upper else line


def _outermost(of: SectionOf) -> Length:
    return max(x for x, _ in _corners(of))


def _places(of: SectionOf) -> tuple[Length, ...]:
    """The heights at which the outline turns, from the ceiling down."""
    upper = panel_edges(of)[1]
    crown = of.trim.crown
    turns = {ZERO, upper, of.profile.drop.value}
    if crown is not None:
        turns.add(upper + crown.drop.value)
    return tuple(sorted(turns))


def _outline(of: SectionOf, band: Band) -> Iterator[Element]:
    """The outline on the piece: its depth along the band, out from the middle toward the top."""
    face = of.profile.finished_width.value
    out = float((_outermost(of) - face).millimeters)
    # The face of the side stands where it has something behind it, whatever is cut off outside.
    level = band.top + min(OUTLINE_OFF + out, band.height - BEHIND_FACE)
    if band.height >= OUTLINE_OFF + _reach(of):
        level = band.top + OUTLINE_OFF + out
    spots = [Pt(band.x(y), level - float((x - face).millimeters)) for x, y in _corners(of)]
    parts = [part for line in pairwise(spots) for part in _clipped(line, band)]
    if parts:
        yield Group("mock-up-outline", (Segments(tuple(parts), style.WALL),))


def _clipped(line: Line, band: Band) -> Iterator[Line]:
    """What of a line lies on the piece."""
    for name, low, high in (("x", 0.0, band.width), ("y", band.top, band.bottom)):
        start, end = getattr(line[0], name), getattr(line[1], name)
        if max(start, end) < low or min(start, end) > high:
            return
        line = (_held(line, name, low, high), _held(line[::-1], name, low, high))
    if line[0] != line[1]:
        yield line


def _held(line: Line, name: str, low: float, high: float) -> Pt:
    """The line's first end, or where it comes within the bounds."""
    start, end = line
    at, other = getattr(start, name), getattr(end, name)
    if low <= at <= high:
        return start
    share = ((low if at < low else high) - at) / (other - at)
    return start.moved((end.x - start.x) * share, (end.y - start.y) * share)


def _ticks(band: Band, places: tuple[Length, ...]) -> Iterator[Element]:
    """Where the outline turns, on the band's upper edge."""
    for place in places:
        if band.holds(place):
            x = band.x(place)
            line = Polyline((Pt(x, band.top), Pt(x, band.top + TICK)), style.FINE)
            data = {"kind": "edge", "value": band.wording.exact(place)}
            yield Group(f"{KIND}-line", (line,), data=data)
