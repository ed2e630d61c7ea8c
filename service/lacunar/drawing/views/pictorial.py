"""The ceiling from below, in parallel projection: what the room will look like, near walls away."""

from collections.abc import Iterator, Sequence
from fractions import Fraction

from lacunar.drawing import style
from lacunar.drawing.annotation import Block, Tag
from lacunar.drawing.elements import Circle, Element, Group, Pt
from lacunar.drawing.plan.clear_places import Box, Occupied
from lacunar.drawing.plan.frame import PlanFrame
from lacunar.drawing.plan.rings import largest_box, rings_on_paper
from lacunar.drawing.plan.walls import walls_of
from lacunar.drawing.solids.ceiling import Detail, ceiling_solids, lowest_shown, panels_at
from lacunar.drawing.solids.pictures import Picture, edge_groups, fitted_picture
from lacunar.drawing.solids.space import Place, Sight
from lacunar.drawing.typeface import Typeface
from lacunar.layout.records import Layout

SIGHT = Sight(turned=32.0, raised=48.0)
"""From near the datum, so that W2 and W3 are seen from inside; steep enough to see into coffers."""
MARGIN = 12.0
TAG_OUT = (6.2, 8.4, 10.6)
LEAST_STEP = 0.7
"""Steps in a beam that would be less than this on paper [mm] are left out."""
MOST_WITH_CROWN = 300
"""Coffers of a ceiling that is drawn with its crown: in more it would be too fine to be read."""
SHIFTS = (0.0, 0.1, 0.2, 0.3)
PENS = {
    "beam": style.OBJECT,
    "wall-beam": style.OBJECT,
    "column": style.OBJECT,
    "crown": style.FINE,
    "wall": style.FINE,
}


def has_crown(layout: Layout) -> bool:
    """Whether the picture of a layout shows its crown, which it does where there is one."""
    return layout.mouldings.crown is not None and len(layout.coffers) <= MOST_WITH_CROWN


def ceiling_from_below(layout: Layout, room: tuple[float, float], typeface: Typeface) -> Block:
    """The picture as large as fits in a room on paper [mm], with ids of walls and coffers."""
    frame = PlanFrame(layout, Fraction(1), Pt(0.0, 0.0))
    heights = lowest_shown(layout), panels_at(layout)
    outline = [frame.point(corner) for corner in layout.outline]
    # In a room with other than four walls the datum may stand outside it.
    places = [Place(at.x, -at.y, z) for at in outline for z in heights] + [Place(0.0, 0.0, 0.0)]
    picture = fitted_picture(places, SIGHT, room, MARGIN)
    solids = ceiling_solids(layout, Detail(LEAST_STEP / picture.size, has_crown(layout)))
    edges = tuple(edge_groups(solids, picture, PENS))
    datum = Group("datum", (Circle(picture.datum, 1.0, style.LEADER),), id="datum-below")
    busy = Occupied(typeface, (*edges, datum))
    drawn = Group(
        "pictorial",
        (
            *edges,
            datum,
            *_walls(frame, picture, busy, typeface),
            *_coffers(layout, picture, busy, typeface),
        ),
        id="pictorial",
        title="The ceiling from below",
        data={"view": "ceiling-from-below", **picture.axes},
    )
    return Block(picture.width, picture.height, (drawn,))


def _walls(
    frame: PlanFrame, picture: Picture, busy: Occupied, typeface: Typeface
) -> Iterator[Element]:
    """The tag of each wall outside the middle of its strip, where there is room for it."""
    low, top = lowest_shown(frame.layout), panels_at(frame.layout)
    away = picture.sight.away
    done: set[str] = set()
    for wall in walls_of(frame):
        # Clockwise seen from above: the room lies to the right of the way along a wall.
        far = -wall.outward.x * away.x + wall.outward.y * away.y < 0
        x, y = (wall.start.x + wall.end.x) / 2, -(wall.start.y + wall.end.y) / 2
        level = low if far else top
        at = picture.at(Place(x, y, level))
        beyond = picture.at(Place(x + wall.outward.x, y - wall.outward.y, level))
        out = _one_long(at, beyond)
        tag = Tag("wall-below", wall.name, wall.name, round=True)
        spots = (at.moved(out.x * reach, out.y * reach) for reach in TAG_OUT)
        placed = None if wall.name in done else _first_free(tag, spots, busy, typeface)
        if placed is not None:
            done.add(wall.name)
            yield placed


def _coffers(
    layout: Layout, picture: Picture, busy: Occupied, typeface: Typeface
) -> Iterator[Element]:
    """The id of each coffer on what is seen of its panel, where it is clear of all lines."""
    top = panels_at(layout)
    away = picture.sight.away
    cut = layout.outlined.partial_coffers if layout.outlined else ()
    frame = PlanFrame(layout, Fraction(1), Pt(0.0, 0.0))
    boxes = {each.id: _about([frame.point(at) for at in each.corners]) for each in layout.coffers}
    boxes.update({each.id: largest_box(rings_on_paper(frame, each)) for each in cut})
    for name, box in boxes.items():
        x, y = box.middle.x, -box.middle.y
        reach = min(box.right - box.left, box.bottom - box.top)
        spots = (
            picture.at(Place(x + away.x * reach * shift, y + away.y * reach * shift, top))
            for shift in SHIFTS
        )
        tag = Tag("coffer-below", name, name, bare=True)
        placed = _first_free(tag, spots, busy, typeface)
        if placed is not None:
            yield placed


def _about(corners: Sequence[Pt]) -> Box:
    xs, ys = [at.x for at in corners], [at.y for at in corners]
    return Box(min(xs), min(ys), max(xs), max(ys))


def _first_free(
    tag: Tag, spots: Iterator[Pt] | Sequence[Pt], busy: Occupied, typeface: Typeface
) -> Element | None:
    """The tag at the first place that is clear, which it then takes up; None where none is."""
    for at in spots:
        if busy.is_free(Box.about(at, *tag.size(typeface)).grown(style.TEXT_CLEARANCE)):
            drawn = tag.drawn(at, typeface)
            busy.add((drawn,))
            return drawn
    return None


def _one_long(start: Pt, end: Pt) -> Pt:
    """The way from one place to another, one millimeter of it."""
    x, y = end.x - start.x, end.y - start.y
    long = (x * x + y * y) ** 0.5
    return Pt(x / long, y / long)
