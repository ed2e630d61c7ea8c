"""Hidden lines against another way: rays from points of edges to the eye, through every triangle.

The rays know nothing of intervals or half planes in the picture: they meet triangles in the room by
the determinants of Moeller and Trumbore (from memory of their paper of 1997).
"""

import json
from itertools import pairwise
from math import dist
from random import Random

import pytest

from lacunar.drawing.solids.ceiling import Detail, ceiling_solids
from lacunar.drawing.solids.hidden import seen_edges
from lacunar.drawing.solids.space import Edge, Place, Sight, Solid, inner, outer, prism
from lacunar.workflow.prepare import prepare

SIGHT = Sight(turned=32.0, raised=48.0)
CLEAR = 2.0
"""Points nearer than this [mm] to where a line ends or goes out of sight are not asked about."""

Triangle = tuple[Place, Place, Place]


def less(one: Place, other: Place) -> Place:
    return Place(one.x - other.x, one.y - other.y, one.z - other.z)


def triangles(solids: tuple[Solid, ...]) -> list[Triangle]:
    """All faces, whichever way they are turned, as fans."""
    return [
        (solid.corners[face[0]], solid.corners[one], solid.corners[other])
        for solid in solids
        for face in solid.faces
        for one, other in pairwise(face[1:])
    ]


def is_hidden(at: Place, all_of: list[Triangle]) -> bool:
    """Whether a ray to the eye meets a triangle a hair away from where it starts, or farther."""
    away = SIGHT.away
    eye = Place(-away.x, -away.y, -away.z)
    for a, b, c in all_of:
        one, other = less(b, a), less(c, a)
        across = outer(eye, other)
        whole = inner(one, across)
        if abs(whole) < 1e-9:
            continue
        start = less(at, a)
        u = inner(start, across) / whole
        turned = outer(start, one)
        v = inner(eye, turned) / whole
        if u >= 0 and v >= 0 and u + v <= 1 and inner(other, turned) / whole > 0.1:
            return True
    return False


def along(edge: Edge, share: float) -> Place:
    return Place(*(a + (b - a) * share for a, b in zip(edge.start, edge.end, strict=True)))


def lies_on(at: Place, edges: list[Edge], off: float) -> bool:
    """Whether a place is on a drawn piece, as far as `off` from its ends or beyond them."""
    for edge in edges:
        long = dist(edge.start, edge.end)
        way = Place(*((b - a) / long for a, b in zip(edge.start, edge.end, strict=True)))
        share = inner(less(at, edge.start), way)
        foot = Place(*(a + share * w for a, w in zip(edge.start, way, strict=True)))
        if off <= share <= long - off and dist(foot, at) < 0.02:
            return True
    return False


def all_edges(solids: tuple[Solid, ...]) -> list[Edge]:
    return [
        Edge(solid.corners[one], solid.corners[other], solid.of, solid.kind)
        for solid in solids
        for face in solid.faces
        for one, other in zip(face, (*face[1:], face[0]), strict=True)
    ]


def rooms() -> list[dict[str, object]]:
    random = Random(8)
    found = []
    for number in range(4):
        length, width = (random.randrange(110, 230) for _ in range(2))
        walls = ("none", "half", "full")
        spec: dict[str, object] = {
            "room": {"length": length, "width": width, "height": 108},
            "grid": {
                run: {
                    "coffers": random.choice((2, 3)),
                    "start": random.choice(walls),
                    "end": random.choice(walls),
                }
                for run in ("length", "width")
            },
            "beams": {"depth": random.choice(("equal", "stepped"))},
        }
        if number % 2:
            spec["crown"] = {"face": "3 1/4", "spring_from_wall": 38}
        found.append(spec)
    return found


def bodies(spec: dict[str, object]) -> tuple[Solid, ...]:
    layout = prepare(json.dumps(spec).encode()).layout
    return ceiling_solids(layout, Detail(15.0, crown=True))


@pytest.mark.parametrize("number", range(4))
def test_what_rays_meet_is_hidden_and_nothing_else(number: int):
    solids = bodies(rooms()[number])
    drawn = list(seen_edges(solids, SIGHT))
    faces = triangles(tuple(solid for solid in solids if solid.kind != "wall"))
    # A wall is one face, seen from inside the room alone: the ray would stop at a near one.
    far = [s for s in solids if s.kind == "wall" and any(e.of == s.of for e in drawn)]
    faces += triangles(tuple(s for s in far if _faces_eye(s)))
    random = Random(number)
    edges = [edge for edge in all_edges(solids) if edge.kind != "wall"]
    seen = hidden = 0
    for edge in random.sample(edges, min(110, len(edges))):
        at = along(edge, random.uniform(0.05, 0.95))
        if is_hidden(at, faces):
            hidden += 1
            assert not lies_on(at, drawn, CLEAR), (edge, at)
        elif not _nearly_hidden(at, faces):
            seen += 1
            assert lies_on(at, drawn, -CLEAR), (edge, at)
    assert seen > 15
    assert hidden > 15


def _faces_eye(solid: Solid) -> bool:
    a, b, c, *_ = solid.corners
    return inner(outer(less(b, a), less(c, b)), SIGHT.away) < 0


def _nearly_hidden(at: Place, faces: list[Triangle]) -> bool:
    """Whether a ray that starts a little beside the place is stopped: at silhouettes, or in folds.

    An edge in a fold of bodies that touch is such, and whether it is seen hangs on a hair.
    """
    right, up = SIGHT.right, SIGHT.up
    ways = ((1, 0), (-1, 0), (0, 1), (0, -1), (1, 1), (-1, -1), (1, -1), (-1, 1))
    return all(
        is_hidden(
            at.moved(*(CLEAR * (s * r + t * u) for r, u in zip(right, up, strict=True))), faces
        )
        for s, t in ways
    )


def test_every_drawn_piece_is_a_piece_of_an_edge():
    solids = bodies(rooms()[1])
    edges = all_edges(solids)
    for piece in seen_edges(solids, SIGHT):
        for share in (0.0, 0.5, 1.0):
            assert lies_on(along(piece, share), edges, -0.01)


def test_no_piece_is_drawn_twice():
    """Two boxes side by side share an edge; it is drawn once, and belongs to the first."""
    square = ((0.0, 0.0), (100.0, 0.0), (100.0, 100.0), (0.0, 100.0))
    other = tuple((x + 100.0, y) for x, y in square)
    boxes = (prism(("A", "box"), square, 0.0, 50.0), prism(("B", "box"), other, 0.0, 50.0))
    drawn = list(seen_edges(boxes, SIGHT))
    shared = [e for e in drawn if e.start.x == e.end.x == 100.0 and e.start.z == e.end.z == 0.0]
    assert [(e.of, dist(e.start, e.end)) for e in shared] == [("A", 100.0)]


def test_a_lone_box_shows_nine_of_its_twelve_edges():
    """From a corner three faces are seen, with nine edges; three meet in the hidden corner."""
    square = ((0.0, 0.0), (100.0, 0.0), (100.0, 100.0), (0.0, 100.0))
    drawn = list(seen_edges((prism(("A", "box"), square, 0.0, 50.0),), SIGHT))
    assert len(drawn) == 9
    hidden = Place(100.0, 100.0, 50.0)
    assert not any(hidden in edge[:2] for edge in drawn)


def test_a_nearer_plate_cuts_a_line_where_it_covers_it():
    """Hand-worked: looking straight along y, a plate from x 40 to 60 hides that much of a line."""
    level = Sight(turned=0.0, raised=0.0)
    plate = prism(("A", "plate"), ((40.0, 0.0), (60.0, 0.0), (60.0, 5.0), (40.0, 5.0)), -50.0, 50.0)
    line = Solid("B", "line", (Place(0.0, 90.0, 0.0), Place(100.0, 90.0, 0.0)), (), ((0, 1),))
    drawn = [edge for edge in seen_edges((plate, line), level) if edge.of == "B"]
    assert sorted((round(e.start.x, 1), round(e.end.x, 1)) for e in drawn) == [
        (0.0, 40.0),
        (60.0, 100.0),
    ]
