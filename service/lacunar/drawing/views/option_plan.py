"""A small plan of one layout, without dimensions: what a client points at.

Beams are the gray between coffers, as on the reflected ceiling plan; what walls have is a bar
outside them.
"""

from collections.abc import Iterator
from fractions import Fraction

from lacunar.drawing import style
from lacunar.drawing.annotation import Block
from lacunar.drawing.elements import Circle, Element, Fill, Group, Polyline, Pt
from lacunar.drawing.paper import Scale
from lacunar.drawing.wording import decimal_mm
from lacunar.layout.records import Coffer, Layout, Point
from lacunar.measure.length import Length
from lacunar.model.room import RunName

# Wide enough to be seen at any scale, and to stand clear of the wall's line.
BAR = 1.2
BAR_GAP = 0.6
MARGIN = BAR + 2 * BAR_GAP
LEAST_RADIUS = 0.6


def plan_size(layout: Layout, scale: Scale) -> tuple[float, float]:
    """Width and height of a layout's small plan at a scale, bars at walls included [mm]."""
    place = _Paper(layout, scale.ratio)
    return place.width + 2 * MARGIN, place.height + 2 * MARGIN


def option_plan(number: int, layout: Layout, scale: Scale) -> Block:
    """A layout as a small plan, the view of that number on its sheet."""
    place = _Paper(layout, scale.ratio)
    children = (
        Polyline(tuple(map(place.at, layout.outline)), None, closed=True, fill=Fill.TINT),
        *_coffers(number, layout, place),
        Polyline(tuple(map(place.at, layout.outline)), style.WALL, closed=True),
        *_members(layout, place),
        *_items(layout, place),
        *_features(layout, place),
    )
    view = Group(
        "view",
        children,
        id=f"view-{number}",
        title=f"Option {number}",
        data={
            "view": "option-plan",
            "scale": str(scale.ratio),
            "scale-text": scale.text,
        },
    )
    return Block(place.width + 2 * MARGIN, place.height + 2 * MARGIN, (view,))


class _Paper:
    """Where places in the room lie on the paper, the plan's upper left corner at the origin."""

    def __init__(self, layout: Layout, ratio: Fraction) -> None:
        xs = [corner.x for corner in layout.outline]
        ys = [corner.y for corner in layout.outline]
        self.left, self.right, self.low, self.high = min(xs), max(xs), min(ys), max(ys)
        self._ratio = ratio
        self.width = self.size(self.right - self.left)
        self.height = self.size(self.high - self.low)

    def size(self, length: Length) -> float:
        """A length on paper [mm]."""
        return float(length.millimeters / self._ratio)

    def at(self, point: Point) -> Pt:
        """A place in the room on paper."""
        return Pt(MARGIN + self.size(point.x - self.left), MARGIN + self.size(self.high - point.y))


def _coffers(number: int, layout: Layout, place: _Paper) -> Iterator[Element]:
    partial = layout.outlined.partial_coffers if layout.outlined else ()
    for cut in partial:
        spots = tuple(Point(corner.x, corner.y) for corner in cut.corners)
        yield _coffer(number, cut.id, tuple(map(place.at, spots)), {})
    for coffer in layout.coffers:
        corners = tuple(map(place.at, coffer.corners))
        yield _coffer(number, coffer.id, corners, _sizes(coffer))


def _coffer(number: int, name: str, corners: tuple[Pt, ...], data: dict[str, str]) -> Group:
    drawn = Polyline(corners, style.OBJECT, closed=True, fill=Fill.WHITE)
    identity = f"option-{number}-coffer-{name}"
    return Group("coffer", (drawn,), id=identity, title=f"Coffer {name}", data={"id": name, **data})


def _sizes(coffer: Coffer) -> dict[str, str]:
    return {
        "length-mm": decimal_mm(coffer.length.value),
        "width-mm": decimal_mm(coffer.width.value),
    }


def _members(layout: Layout, place: _Paper) -> Iterator[Element]:
    """Both edges of each member, dashed, from its start to its end."""
    for beam in layout.beams:
        member = beam.member
        if member is None:
            continue
        start, end = member.start.value, member.end.value
        for edge in (member.near, member.far):
            ends = ((edge.at_start.value, start), (edge.at_end.value, end))
            along = beam.on is RunName.LENGTH
            points = [Point(a, b) if along else Point(b, a) for a, b in ends]
            yield Polyline(tuple(map(place.at, points)), style.HIDDEN)


def _items(layout: Layout, place: _Paper) -> Iterator[Element]:
    for item in layout.items.items:
        radius = max(LEAST_RADIUS, place.size(min(item.length, item.width)) / 2)
        yield Circle(place.at(Point(item.x.value, item.y.value)), radius, style.FINE)


def _features(layout: Layout, place: _Paper) -> Iterator[Element]:
    for feature in layout.wall_features:
        near, far = feature.near.value, feature.far.value
        if feature.wall in ("W2", "W4"):
            above = feature.wall == "W2"
            level = place.high if above else place.low
            first, last = place.at(Point(near, level)), place.at(Point(far, level))
            out = Pt(0.0, -BAR_GAP - BAR if above else BAR_GAP)
            size = Pt(last.x - first.x, BAR)
        else:
            before = feature.wall == "W1"
            level = place.left if before else place.right
            first, last = place.at(Point(level, far)), place.at(Point(level, near))
            out = Pt(-BAR_GAP - BAR if before else BAR_GAP, 0.0)
            size = Pt(BAR, last.y - first.y)
        corner = first.moved(out.x, out.y)
        corners = (
            corner,
            corner.moved(size.x, 0.0),
            corner.moved(size.x, size.y),
            corner.moved(0.0, size.y),
        )
        yield Polyline(corners, None, closed=True, fill=Fill.BLACK)
