"""Ids of beams under an upright cut, and words in what it leaves clear."""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass

from lacunar.drawing import style
from lacunar.drawing.annotation import Tag
from lacunar.drawing.elements import Element, Face, Group, Polyline, Pt, Text
from lacunar.drawing.plan.clear_places import Box, Occupied, text_box
from lacunar.drawing.spreading import spread
from lacunar.drawing.typeface import Typeface
from lacunar.drawing.upright.cut import UprightCut
from lacunar.drawing.upright.paper import UprightPaper
from lacunar.measure.length import ZERO

ROWS = (3.4, 6.0, 9.0, 12.0, 16.0, 20.0)
"""How far below the lowest beam a row of ids may stand [mm], the best first."""
BETWEEN = 1.6
UNDER = 0.5
CLEAR = 0.8
FFL = "FFL"
TRIANGLE = 2.2
OFF_WALL = 2.5


def beam_ids(
    cut: UprightCut, paper: UprightPaper, number: int, busy: Occupied, typeface: Typeface
) -> tuple[Group, ...]:
    """The id of each beam that is cut, in a row under them; nothing where they have no room."""
    for turned in (False, True):
        for row in ROWS:
            drawn = _row(cut, paper, _Row(number, row, turned=turned), typeface)
            if drawn and all(_is_clear(group, busy, typeface) for group in drawn):
                return drawn
    return ()


@dataclass(frozen=True, slots=True)
class _Row:
    """Which view it is in, how far down it stands [mm], and whether its ids are turned."""

    view: int
    down: float
    turned: bool


def _row(cut: UprightCut, paper: UprightPaper, row: _Row, typeface: Typeface) -> tuple[Group, ...]:
    tags = [_tag(beam.id, row) for beam in cut.beams]
    if not tags:
        return ()
    sizes = [tag.size(typeface) for tag in tags]
    pitch = max(width for width, _ in sizes) + BETWEEN
    left, right = (paper.at(end.at, ZERO).x for end in cut.ends)
    low, high = left + pitch / 2, right - pitch / 2
    if pitch * (len(tags) - 1) > high - low:
        return ()
    middles = [paper.at((beam.near + beam.far) / 2, ZERO).x for beam in cut.beams]
    stands = spread(middles, pitch, low, high)
    lowest = max(beam.profile.drop.value for beam in cut.beams)
    top = paper.at(ZERO, cut.height - lowest).y + row.down
    drawn = []
    for beam, tag, size, middle, stand in zip(cut.beams, tags, sizes, middles, stands, strict=True):
        under = paper.at(ZERO, cut.height - beam.profile.drop.value).y + UNDER
        leader = Polyline((Pt(stand, top - UNDER), Pt(middle, under)), style.LEADER)
        center = Pt(stand, top + size[1] / 2)
        drawn.append(tag.drawn(center, typeface, leader))
    return tuple(drawn)


def _tag(beam: str, row: _Row) -> Tag:
    return Tag("cut", beam, beam, turned=row.turned, key=f"view-{row.view}-{beam}", bare=True)


def _is_clear(group: Group, busy: Occupied, typeface: Typeface) -> bool:
    """Whether nothing is drawn where a group has its texts."""
    texts = [child for child in group.children if isinstance(child, Text)]
    return all(busy.is_free(text_box(text, typeface).grown(CLEAR)) for text in texts)


def floor_mark(
    cut: UprightCut, paper: UprightPaper, busy: Occupied, typeface: Typeface
) -> tuple[Element, ...]:
    """The level mark on the finished floor with its word, where there is room for both."""
    left, right = (paper.at(end.at, ZERO).x for end in cut.ends)
    width = typeface.width(FFL, style.TEXT, Face.MEDIUM)
    reach = 2 * TRIANGLE + width + 1.0
    at = left + 3.0
    while at + reach < right - 1.0:
        middle = Pt(at + reach / 2, paper.floor - 2.4)
        if busy.is_free(Box.about(middle, reach + 1.0, 3.6)):
            tip = Pt(at + TRIANGLE / 2, paper.floor)
            sides = (tip.moved(-TRIANGLE / 2, -TRIANGLE), tip.moved(TRIANGLE / 2, -TRIANGLE))
            word = Text(Pt(at + TRIANGLE + 1.2, paper.floor - 1.3), FFL, style.TEXT, Face.MEDIUM)
            return (Group("level-mark", (Polyline((tip, *sides), style.FINE, closed=True), word)),)
        at += 4.0
    return ()


def wall_names(
    cut: UprightCut, paper: UprightPaper, number: int, busy: Occupied, typeface: Typeface
) -> Iterator[Group]:
    """The names of the walls that end a view, inside of them half way up, where there is room."""
    for end, way in zip(cut.ends, (1, -1), strict=True):
        if not end.wall:
            continue
        tag = Tag("wall", end.wall, end.wall, round=True, key=f"view-{number}-{end.wall}")
        width, height = tag.size(typeface)
        face = paper.at(end.at, cut.height / 2)
        for up in (0.0, 8.0, -8.0, 16.0, -16.0):
            center = face.moved(way * (width / 2 + OFF_WALL), -up)
            if busy.is_free(Box.about(center, width + 1.0, height + 1.0)):
                yield tag.drawn(center, typeface)
                break


def words_in_field(
    lines: Sequence[str], center: Pt, within: float, busy: Occupied, typeface: Typeface
) -> tuple[Element, ...]:
    """Lines of words about a place, if no wider than `within` [mm] and if nothing is there."""
    top = center.y - style.LINE_PITCH * len(lines) / 2 + style.TEXT
    texts = [
        Text(Pt(center.x, top + style.LINE_PITCH * n), line, style.TEXT, anchor="middle")
        for n, line in enumerate(lines)
    ]
    boxes = [text_box(text, typeface).grown(CLEAR) for text in texts]
    fits = all(box.right - box.left <= within for box in boxes)
    return tuple(texts) if fits and all(busy.is_free(box) for box in boxes) else ()
