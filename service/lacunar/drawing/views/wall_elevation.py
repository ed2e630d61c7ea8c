"""A wall as seen from inside: beams that end there cut, what stands along it, what is in it."""

from collections.abc import Iterator, Sequence

from lacunar.drawing import style
from lacunar.drawing.annotation import Block
from lacunar.drawing.dimensions import String
from lacunar.drawing.elements import Element, Face, Group, Polyline, Pt, Segments, Text
from lacunar.drawing.hatching import box_corners, outside_box
from lacunar.drawing.plan.clear_places import Box, Occupied, text_box
from lacunar.drawing.upright.along import PlacedMark, marks_along
from lacunar.drawing.upright.elevations import Elevation, InWall
from lacunar.drawing.upright.heights import HeightStrings, wall_string
from lacunar.drawing.upright.view import Hand, Strings, UprightView
from lacunar.drawing.wording import decimal_mm
from lacunar.measure.length import ZERO, Length
from lacunar.model.ceiling_items import FeatureKind

INSET = 1.2
NOT_TOLD = 5.0
"""How far an edge goes on, in hidden lines, towards where its end is not told [mm]."""
CLEAR = 0.8
MOST_HEADS = 3


class WallElevation:
    """An elevation at a scale: its size is known before it is drawn."""

    def __init__(self, elevation: Elevation, hand: Hand) -> None:
        self.elevation = elevation
        self.hand = hand
        cut, bare = elevation.cut, hand.bare_paper()
        heights = HeightStrings(hand.number, bare, hand.wording)
        heads = sorted({f.head for f in elevation.features if f.head}, key=lambda at: at.inches)
        named = [(_first_with(elevation, head), head) for head in heads[:MOST_HEADS]]
        marks = marks_along(cut, elevation.end, bare) if elevation.end else ()
        length = wall_string(hand.number, _corners(elevation), bare, hand.wording)
        strings = Strings(
            left=heights.beside(cut),
            right=(heights.string("heads", named, far=True),) if named else (),
            marks=marks,
            below=() if _tell_length(marks, length) else (length,),
        )
        self.view = UprightView(cut, hand, strings)

    def drawn(self) -> Block:
        """The elevation as a block."""
        seen = [_Feature(feature, self) for feature in self.elevation.features]
        busy = Occupied(self.hand.typeface, (self.view.drawn.object(),))
        busy.add(part for each in seen for part in each.outline())
        words: list[tuple[Text, ...]] = []
        for each in seen:
            words.append(each.words(busy))
            busy.add(words[-1])
        boxes = [text_box(word, self.hand.typeface).grown(CLEAR) for each in words for word in each]
        within = [each.drawn(own, boxes) for each, own in zip(seen, words, strict=True)]
        about = self.view.named(within)
        wall = self.elevation.wall
        of = {"view": "elevation", "wall": wall, "side": self.elevation.side}
        return self.view.block(of, about, f"Elevation of wall {wall}")


def _tell_length(marks: Sequence[PlacedMark], length: String) -> bool:
    """Whether running marks go from corner to corner, so that they tell the wall's length."""
    segment = length.segments[0]
    places = {each.mark.of: each.mark.mark for each in marks}
    ends = [places.get(stop.name) for stop in (segment.start, segment.end)]
    known = [end for end in ends if end is not None]
    told = abs(known[1] - known[0]) if len(known) == len(ends) else None
    return told == segment.end.mark - segment.start.mark


def _corners(elevation: Elevation) -> tuple[tuple[str, Length], tuple[str, Length]]:
    """Both ends of a wall, by the walls there or as its corners, and how far they are apart."""
    start, end = elevation.cut.ends
    return (start.wall or "left corner", ZERO), (end.wall or "right corner", end.at)


def _first_with(elevation: Elevation, head: Length) -> str:
    number = next(each.number for each in elevation.features if each.head == head)
    return f"head:{number}"


class _Feature:
    """One feature in its wall."""

    def __init__(self, feature: InWall, elevation: WallElevation) -> None:
        self.feature = feature
        self.elevation = elevation
        paper = elevation.view.paper
        cut = elevation.elevation.cut
        self.head = feature.head or cut.height
        upper, lower = paper.at(feature.near, self.head), paper.at(feature.far, ZERO)
        self.left, self.top, self.right, self.floor = upper.x, upper.y, lower.x, lower.y

    def drawn(self, words: tuple[Text, ...], boxes: Sequence[Box]) -> Group:
        """Its outline as far as that is told, its `words`, its kind's mark broken about all words.

        Features may stand before one another, so that a mark can meet the words of another.
        """
        feature, hand = self.feature, self.elevation.hand
        lines = tuple(self._marks())
        for box in boxes:
            corners = box_corners(box.left, box.top, box.right - box.left, box.bottom - box.top)
            lines = outside_box(lines, corners)
        data = {
            "id": feature.name,
            "kind": feature.kind.value,
            "wall": self.elevation.elevation.wall,
            "near-mm": decimal_mm(feature.near),
            "far-mm": decimal_mm(feature.far),
            **({"head-mm": decimal_mm(feature.head)} if feature.head else {}),
        }
        marks = (Segments(lines, style.FINE),) if lines else ()
        return Group(
            "wall-opening",
            (*self.outline(), *marks, *words),
            id=f"view-{hand.number}-opening-{feature.number}",
            title=feature.name,
            data=data,
        )

    def outline(self) -> Iterator[Element]:
        """Edges and head; where an end is not told the edges go on a little in hidden lines."""
        top, floor = self.top, self.floor
        told = self.feature.head is not None
        ends: list[tuple[float, float]] = []
        if self.feature.kind is FeatureKind.WINDOW:
            middle = (top + floor) / 2
            ends.append((middle, min(middle + NOT_TOLD, floor)))
            floor = middle
        if not told:
            start = floor - (floor - top) / 2
            ends.append((start, max(start - NOT_TOLD, top)))
            top = start
        corners = (
            Pt(self.left, floor),
            Pt(self.left, top),
            Pt(self.right, top),
            Pt(self.right, floor),
        )
        if told:
            yield Polyline(corners, style.OBJECT)
        else:
            yield Polyline(corners[:2], style.OBJECT)
            yield Polyline(corners[2:], style.OBJECT)
        for start, end in ends:
            for x in (self.left, self.right):
                yield Polyline((Pt(x, start), Pt(x, end)), style.HIDDEN)

    def _marks(self) -> Iterator[tuple[Pt, Pt]]:
        """What tells the kinds apart: a door's leaf, a window's glass, an opening's splay."""
        left, right = self.left + INSET, self.right - INSET
        top, floor, kind = self.top + INSET, self.floor, self.feature.kind
        if right <= left or top >= floor or self.feature.head is None:
            return
        if kind is FeatureKind.WINDOW:
            floor = (self.top + self.floor) / 2
            middle = (left + right) / 2
            yield Pt(middle, top), Pt(middle, floor)
        if kind is FeatureKind.CABINET:
            middle = (left + right) / 2
            yield Pt(middle, self.top), Pt(middle, floor)
            return
        yield Pt(left, floor), Pt(left, top)
        yield Pt(left, top), Pt(right, top)
        yield Pt(right, top), Pt(right, floor)
        if kind is FeatureKind.FIREPLACE:
            yield Pt(left, floor), Pt(self.left + 3 * INSET, top + 2 * INSET)
            yield Pt(right, floor), Pt(self.right - 3 * INSET, top + 2 * INSET)

    def words(self, busy: Occupied) -> tuple[Text, ...]:
        """Its name and its head, clear within its outline; nothing where they have no room."""
        wording, typeface = self.elevation.hand.wording, self.elevation.hand.typeface
        feature = self.feature
        head = f"HEAD {wording.length(feature.head)}" if feature.head else "HEAD NOT TOLD"
        lines = [feature.name, head]
        width = self.right - self.left - 2 * (INSET + CLEAR)
        window = feature.kind is FeatureKind.WINDOW
        low = (self.top + self.floor) / 2 if window else self.floor
        for turned in (False, True):
            across = low - self.top - 3 * INSET if turned else width
            if max(typeface.width(line, style.TEXT, Face.MEDIUM) for line in lines) > across:
                continue
            texts = tuple(self._text(lines, number, low, turned=turned) for number in (0, 1))
            if all(busy.is_free(text_box(text, typeface).grown(CLEAR)) for text in texts):
                return texts
        return ()

    def _text(self, lines: list[str], number: int, low: float, *, turned: bool) -> Text:
        x, y = (self.left + self.right) / 2, (self.top + low) / 2
        off = style.LINE_PITCH * (number - 0.5) + style.TEXT / 2
        at = Pt(x + off, y) if turned else Pt(x, y + off)
        return Text(at, lines[number], style.TEXT, Face.MEDIUM, "middle", turned)
