"""Ids of beams under an upright cut, and words in what it leaves clear."""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass

from lacunar.drawing import style
from lacunar.drawing.annotation import Tag
from lacunar.drawing.elements import Element, Face, Group, Polyline, Pt, Text
from lacunar.drawing.plan.clear_places import Box, Occupied, text_box
from lacunar.drawing.spreading import spread
from lacunar.drawing.typeface import Typeface
from lacunar.drawing.upright.cut import Behind, UprightCut
from lacunar.drawing.upright.paper import UprightPaper
from lacunar.measure.length import ZERO

ROWS = (3.4, 6.0, 9.0, 12.0, 16.0, 20.0)
"""How far below the lowest beam an id may stand [mm], the best first."""
BETWEEN = 1.6
UNDER = 0.5
CLEAR = 0.8
FFL = "FFL"
TRIANGLE = 2.2
OFF_WALL = 2.5


@dataclass(frozen=True, slots=True)
class _Named:
    """A beam that is to bear its id: `cut`, or seen `beyond`; its underside on paper."""

    id: str
    kind: str
    under: Pt

    def tag(self, view: int, *, turned: bool) -> Tag:
        """Its id, known by the view too, since it may stand in several."""
        key = f"view-{view}-{self.id}"
        return Tag(self.kind, self.id, self.id, turned=turned, key=key, bare=True)


def beam_ids(
    cut: UprightCut, paper: UprightPaper, number: int, busy: Occupied, typeface: Typeface
) -> tuple[Group, ...]:
    """The id of each beam that is cut or seen, in a row under them; some may find no room.

    Each stands as high as what is there lets it, and has a leader to its beam.
    """
    for named in ((*_cut(cut, paper), *_beyond(cut, paper)), tuple(_cut(cut, paper))):
        for turned in (False, True):
            placed = _placed(sorted(named, key=_across), cut, paper, (number, turned), typeface)
            if placed:
                return tuple(_drawn(placed, cut, paper, busy, typeface))
    return ()


def _across(named: _Named) -> float:
    return named.under.x


def _cut(cut: UprightCut, paper: UprightPaper) -> Iterator[_Named]:
    for beam in cut.beams:
        under = cut.height - beam.profile.drop.value
        yield _Named(beam.id, "cut", paper.at((beam.near + beam.far) / 2, under))


def _beyond(cut: UprightCut, paper: UprightPaper) -> Iterator[_Named]:
    """Each beam seen beyond, in the widest space that it is seen in."""
    widest: dict[str, Behind] = {}
    for each in cut.behind:
        known = widest.get(each.id)
        if known is None or each.far - each.near > known.far - known.near:
            widest[each.id] = each
    for behind in widest.values():
        if behind.profile is not None:
            under = cut.height - behind.profile.drop.value
            yield _Named(behind.id, "beyond", paper.at((behind.near + behind.far) / 2, under))


def _placed(
    named: Sequence[_Named],
    cut: UprightCut,
    paper: UprightPaper,
    of_view: tuple[int, bool],
    typeface: Typeface,
) -> list[tuple[_Named, Tag, float]]:
    """Each id with its place across the sheet [mm], near its beam; none where not all fit."""
    number, turned = of_view
    tags = [each.tag(number, turned=turned) for each in named]
    if not tags:
        return []
    pitch = max(tag.size(typeface)[0] for tag in tags) + BETWEEN
    left, right = (paper.at(end.at, ZERO).x for end in cut.ends)
    low, high = left + pitch / 2, right - pitch / 2
    if pitch * (len(tags) - 1) > high - low:
        return []
    stands = spread([each.under.x for each in named], pitch, low, high)
    return list(zip(named, tags, stands, strict=True))


def _drawn(
    placed: Sequence[tuple[_Named, Tag, float]],
    cut: UprightCut,
    paper: UprightPaper,
    busy: Occupied,
    typeface: Typeface,
) -> Iterator[Group]:
    lowest = max((profile.drop.value for profile in cut.profiles), default=ZERO)
    top = paper.at(ZERO, cut.height - lowest).y
    for named, tag, stand in placed:
        height = tag.size(typeface)[1]
        for row in ROWS:
            at = Pt(stand, top + row)
            ends = (at.moved(0.0, -UNDER), named.under.moved(0.0, UNDER))
            center = at.moved(0.0, height / 2)
            group = tag.drawn(center, typeface, Polyline(ends, style.LEADER))
            if _is_clear(group, busy, typeface) and not busy.crosses_text(ends):
                busy.add((group,))
                yield group
                break


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
    taken: list[Box] = []
    for end, way in zip(cut.ends, (1, -1), strict=True):
        if not end.wall:
            continue
        tag = Tag("wall", end.wall, end.wall, round=True, key=f"view-{number}-{end.wall}")
        width, height = tag.size(typeface)
        face = paper.at(end.at, cut.height / 2)
        for up in (0.0, 8.0, -8.0, 16.0, -16.0):
            center = face.moved(way * (width / 2 + OFF_WALL), -up)
            box = Box.about(center, width + 1.0, height + 1.0)
            if busy.is_free(box) and not any(box.meets(other) for other in taken):
                taken.append(box)
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
