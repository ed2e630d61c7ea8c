"""A piece of a strip on paper: its band, the crosses it is put together by, and its numbers."""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from fractions import Fraction

from lacunar.drawing import style
from lacunar.drawing.elements import Group, Polyline, Pt, Segments, Text
from lacunar.drawing.full_size.pieces import OVERLAP, Piece
from lacunar.drawing.spreading import spread
from lacunar.drawing.wording import SheetWording, decimal_mm
from lacunar.measure.length import Length

LETTERS = 3.5
"""Capital height of running numbers: they are read from a ladder [mm]."""
NUMBER_PITCH = 5.2
NUMBER_GAP = 1.2
BEND = 7.0
"""How deep the zone is in which lines bend to their numbers [mm]."""
CROSS_ZONE = 7.0
CROSS = 2.5
EDGE = 2.0
"""How far numbers keep from where the strip is cut off [mm]."""


@dataclass(frozen=True, slots=True)
class Band:
    """A piece of a strip, how it is written, and where its upper and lower edges lie [mm].

    `kind` is what its groups are called by.
    """

    kind: str
    piece: Piece
    wording: SheetWording
    top: float
    height: float

    @property
    def width(self) -> float:
        """How long it is [mm]."""
        return self.x(self.piece.end)

    @property
    def bottom(self) -> float:
        """Its lower edge [mm]."""
        return self.top + self.height

    def x(self, place: Length) -> float:
        """Where a place of the strip lies: full size [mm]."""
        return float((place - self.piece.start).millimeters)

    def holds(self, place: Length) -> bool:
        """Whether a place of the strip is on this piece."""
        return self.piece.start <= place <= self.piece.end


@dataclass(frozen=True, slots=True)
class Numbered:
    """A line that bears its running number: where it stands, and what it is."""

    place: Length
    kind: str


def above_band(longest_number: float) -> float:
    """How much room crosses and numbers take above a band [mm]."""
    return longest_number + NUMBER_GAP + BEND + CROSS_ZONE


def seam_crosses(band: Band) -> Iterator[Group]:
    """Two crosses at each seam, above and below the band, in the middle of what is in common."""
    half, piece = OVERLAP[band.wording.units] * Fraction(1, 2), band.piece
    places = []
    if piece.number > 1:
        places.append(piece.start + half)
    if piece.number < piece.count:
        places.append(piece.end - half)
    for place in places:
        for y in (band.top - CROSS_ZONE / 2, band.bottom + CROSS_ZONE / 2):
            x = band.x(place)
            lines = (
                (Pt(x - CROSS, y), Pt(x + CROSS, y)),
                (Pt(x, y - CROSS), Pt(x, y + CROSS)),
            )
            data = {"at-mm": decimal_mm(place)}
            yield Group(f"{band.kind}-cross", (Segments(lines, style.FINE),), data=data)


def running_numbers(band: Band, lines: Sequence[Numbered]) -> Iterator[Group]:
    """The running number of each line on the piece, and of the place where it starts."""
    numbered = [line for line in lines if band.holds(line.place)]
    if band.piece.number > 1:
        numbered.insert(0, Numbered(band.piece.start, "seam"))
    places = [band.x(line.place) for line in numbered]
    half = LETTERS / 2
    stands = spread(places, NUMBER_PITCH, EDGE + half, band.width - EDGE - half)
    top = band.top - CROSS_ZONE
    for line, x, stand in zip(numbered, places, stands, strict=True):
        way = (Pt(x, band.top), Pt(x, top), Pt(stand, top - BEND))
        words, at = band.wording.length(line.place), Pt(stand + half, top - BEND - NUMBER_GAP)
        text = Text(at, words, LETTERS, turned=True)
        yield Group(
            f"{band.kind}-number",
            (Polyline(way, style.LEADER), text),
            data={"kind": line.kind, "value": band.wording.exact(line.place)},
        )
