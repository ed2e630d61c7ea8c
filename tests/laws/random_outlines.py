"""Random rooms with other than four walls: ells, breasts, alcoves, bays, cut-off corners."""

from math import dist
from random import Random
from typing import Any

import shapely

from lacunar.layout.records import Layout
from tests.laws.random_specs import PLANS_AND_POLES

Spec = dict[str, Any]
Corner = tuple[float, float]


def random_outlines(count: int, seed: int = 1) -> list[Spec]:
    """So many specs with an outline by points, the same for the same seed."""
    random = Random(seed)
    return [random_outline(random) for _ in range(count)]


def with_measured(spec: Spec, layout: Layout) -> Spec:
    """The same spec with its first cut coffer measured, a little off the plan, from corner 1."""
    cut = layout.outlined.partial_coffers if layout.outlined else ()
    if not cut:
        return spec
    spots = [(float(at.x.inches), float(at.y.inches)) for at in cut[0].corners]
    spots[1] = (spots[1][0] - 0.125, spots[1][1])
    count = len(spots)
    far = {(a, b): f"{dist(spots[a], spots[b]):.3f}" for a in range(count) for b in range(count)}
    taken = {
        "coffer": cut[0].id,
        "cut_sides": [{"side": n + 1, "length": far[n, (n + 1) % count]} for n in range(count)],
        "cut_diagonals": [
            {"from_corner": 1, "to_corner": n, "length": far[0, n - 1]} for n in range(3, count)
        ],
    }
    return {**spec, "measured_openings": {"grid": layout.grid_id, "coffers": [taken]}}


def random_outline(random: Random) -> Spec:
    """One spec with an outline."""
    length, width = random.randrange(140, 400), random.randrange(120, 320)
    corners = _cut(random, float(length), float(width))
    spec: Spec = {
        "room": {
            "height": 108,
            "outline": {"points": [{"x": x, "y": y} for x, y in corners]},
        },
        "grid": {
            "length": {
                "coffers": random.randrange(2, 6),
                "start": random.choice(("half", "none", "full")),
                "end": random.choice(("half", "none", "full")),
            },
            "width": {
                "coffers": random.randrange(2, 5),
                "start": random.choice(("half", "none", "full")),
                "end": random.choice(("half", "none", "full")),
            },
        },
        "drawing": {"paper": "arch_d", "sheets": list(PLANS_AND_POLES)},
    }
    if random.random() < 0.6:
        spec["crown"] = {
            "face": random.choice(("2 1/2", "3 1/4")),
            "method": random.choice(("bench_frame", "coped_in_place")),
        }
    _measured_roughly(random, spec["room"], len(corners))
    if random.random() < 0.4:
        spec["room"]["columns"] = _columns(random, corners)
    _with_fittings(random, spec["room"], corners)
    spec["panel"] = random.choice(
        (
            {"kind": "sheet_goods"},
            {"kind": "boards", "parallel_to": random.choice(("length", "width"))},
            {"kind": "existing"},
        )
    )
    return spec


def _measured_roughly(random: Random, room: Spec, sides: int) -> None:
    """Now and then measured to the framing, with bows and a finish of its own on some sides."""
    if random.random() < 0.3:
        room["measured_to"] = "framing"
        room["wall_finish"] = random.choice(("1/2", "5/8", {"W1": 1, "W2": 0, "W3": 0.5, "W4": 2}))
    if random.random() < 0.3:
        chosen = random.sample(range(1, sides + 1), 2)
        bows = ({"in": "1/4"}, {"out": "3/8"}, {"in": "1/16"})
        room["outline"]["surfaces"] = [
            {"side": side, "finish": "3/4", "bow": random.choice(bows)} for side in chosen
        ]


def _with_fittings(random: Random, room: Spec, corners: list[Corner]) -> None:
    """Now and then lights anywhere within, and a door or window in the middle of some side."""
    inside = shapely.Polygon(corners)
    if random.random() < 0.4:
        low_x, low_y, high_x, high_y = inside.bounds
        places = [
            (round(random.uniform(low_x + 4, high_x - 4)), round(random.uniform(low_y, high_y)))
            for _ in range(4)
        ]
        room["ceiling_items"] = [
            {"kind": random.choice(("light", "speaker")), "diameter": 6, "x": x, "y": y}
            for x, y in places
            if inside.buffer(-4).contains(shapely.Point(x, y))
        ]
    if random.random() < 0.3:
        wall = random.choice(("W1", "W2", "W5"))
        kind = random.choice(("door", "window", "cabinet", "fireplace"))
        room["wall_features"] = [{"kind": kind, "wall": wall, "center": 6, "width": 8}]


def _columns(random: Random, corners: list[Corner]) -> list[Spec]:
    """One or two columns that stand free in the room, some of them turned or with more corners."""
    room, found = shapely.Polygon(corners), []
    for _ in range(40):
        low_x, low_y, high_x, high_y = room.bounds
        x, y = round(random.uniform(low_x, high_x)), round(random.uniform(low_y, high_y))
        size = random.choice((4, 8, 12, 16))
        place = shapely.box(x - size, y - size, x + size, y + size)
        if not room.buffer(-9).contains(place):
            continue
        room = room.difference(place)
        found.append(_column(random, (x, y), size))
        if len(found) > random.randrange(2):
            break
    return found


def _column(random: Random, at: tuple[int, int], size: int) -> Spec:
    x, y = at
    half = size // 2
    if random.random() < 0.6:
        return {"x": x, "y": y, "length": size, "width": random.choice((size, size + half))}
    turned = [(x - half, y), (x, y - half), (x + half, y), (x, y + half)]
    cut = half // 2
    eight = [(x - half, y - cut), (x - cut, y - half), (x + cut, y - half), (x + half, y - cut)]
    eight += [(2 * x - a, 2 * y - b) for a, b in eight]
    points = random.choice((turned, eight))
    return {"points": [{"x": px, "y": py} for px, py in points]}


def _cut(random: Random, length: float, width: float) -> list[Corner]:
    """A rectangle, clockwise from the datum, with something done to one or two of its walls."""
    sides = {
        "left": [(0.0, 0.0), (0.0, width)],
        "top": [(0.0, width), (length, width)],
        "right": [(length, width), (length, 0.0)],
        "bottom": [(length, 0.0), (0.0, 0.0)],
    }
    for name in random.sample(sorted(sides), random.choice((1, 1, 2))):
        sides[name] = _worked(random, *sides[name])
    corners = [corner for name in ("left", "top", "right", "bottom") for corner in sides[name][:-1]]
    if random.random() < 0.3:
        corners = _without_corner(random, corners, length, width)
    low = min(x for x, _ in corners), min(y for _, y in corners)
    return [(x - low[0], y - low[1]) for x, y in corners]


def _worked(random: Random, start: Corner, end: Corner) -> list[Corner]:
    """A wall with a breast, an alcove or a bay in it."""
    span = abs(end[0] - start[0]) + abs(end[1] - start[1])
    way = ((end[0] - start[0]) / span, (end[1] - start[1]) / span)
    inward = (way[1], -way[0])
    first = round(span * random.uniform(0.25, 0.4))
    last = round(span * random.uniform(0.6, 0.75))
    deep = round(random.uniform(12, 30)) * random.choice((1, 1, -1))

    def at(along: float, into: float) -> Corner:
        return (
            start[0] + way[0] * along + inward[0] * into,
            start[1] + way[1] * along + inward[1] * into,
        )

    slope = random.choice((0, 0, abs(deep)))
    if slope and last - first > 3 * slope:
        inner = [at(first + slope, deep), at(last - slope, deep)]
    else:
        inner = [at(first, deep), at(last, deep)]
    return [start, at(first, 0), *inner, at(last, 0), end]


def _without_corner(
    random: Random, corners: list[Corner], length: float, width: float
) -> list[Corner]:
    """The room without its upper right corner: an ell, or with a wall across it."""
    if (length, width) not in corners:
        return corners
    at = corners.index((length, width))
    x, y = round(length * random.uniform(0.6, 0.72)), round(width * random.uniform(0.6, 0.72))
    before, after = corners[at - 1], corners[(at + 1) % len(corners)]
    if before[0] > x - 20 or after[1] > y - 20:
        return corners
    cut = [(float(x), width), (float(x), float(y)), (length, float(y))]
    if random.random() < 0.4:
        cut = [(length - 40, width), (length, width - 40)]
    return [*corners[:at], *cut, *corners[at + 1 :]]
