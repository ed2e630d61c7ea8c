"""Hidden lines: which pieces of the edges of bodies are seen, by exact intervals.

Every face turned to the viewer is a mask. In the picture it is a polygon that bulges outward, and
how far it lies behind the picture is linear over it; so is everything about a straight edge. What a
mask hides of an edge is therefore one interval, the common part of half lines, and what is seen is
what all intervals leave. No picture points are sampled anywhere.
"""

from collections.abc import Iterator, Sequence
from math import ceil, dist, floor, sqrt

from lacunar.drawing.solids.space import Edge, Place, Seen, Sight, Solid, faces_of, inner

BEHIND = 0.05
"""How far an edge must lie behind a face to be hidden by it [mm]: edges in a face are not."""
ROUND_A_MASK = 0.01
"""How far a mask reaches past its own edges [mm], so that nothing shows between two that touch."""
LEAST_PIECE = 0.5
"""A piece shorter than this in the picture [mm of the room] is none: two masks nearly touch."""
MOST_CELLS = 200

Stretch = tuple[float, float]


class _Mask:
    """A face in the picture: its half planes, inward positive, and its depth as a plane."""

    __slots__ = ("box", "depth", "sides")

    def __init__(self, corners: Sequence[Seen]) -> None:
        self.sides = _half_planes(corners)
        self.depth = _plane(corners)
        rights, ups = [at.right for at in corners], [at.up for at in corners]
        self.box = (min(rights), min(ups), max(rights), max(ups))

    def hides(self, start: Seen, end: Seen) -> Stretch | None:
        """From where to where along an edge it is hidden, both as shares of it; None: nowhere."""
        over_right, over_up, level = self.depth
        deep = (
            start.away - over_right * start.right - over_up * start.up - level - BEHIND,
            end.away - over_right * end.right - over_up * end.up - level - BEHIND,
        )
        if deep[0] <= 0 and deep[1] <= 0:
            return None
        low, high = _within(*deep, 0.0, 1.0)
        for right, up, level in self.sides:
            low, high = _within(
                right * start.right + up * start.up + level,
                right * end.right + up * end.up + level,
                low,
                high,
            )
            if low >= high:
                return None
        return low, high


def _within(first: float, last: float, low: float, high: float) -> Stretch:
    """What of a stretch lies where something linear, told at both ends, is not below zero."""
    if first < 0:
        return (max(low, first / (first - last)), high) if last > 0 else (1.0, 0.0)
    if last < 0:
        return low, min(high, first / (first - last))
    return low, high


def _half_planes(corners: Sequence[Seen]) -> tuple[tuple[float, float, float], ...]:
    """For each edge of a polygon the way inward, square to it, and its distance there.

    A face turned to the viewer runs clockwise in the picture or counter-clockwise, by the hand of
    the axes; the sign of its area tells.
    """
    pairs = list(zip(corners, (*corners[1:], corners[0]), strict=True))
    hand = 1.0 if sum(a.right * b.up - a.up * b.right for a, b in pairs) > 0 else -1.0
    found = []
    for one, other in pairs:
        right, up = other.right - one.right, other.up - one.up
        long = sqrt(right * right + up * up)
        if long > ROUND_A_MASK:
            in_right, in_up = -up / long * hand, right / long * hand
            level = ROUND_A_MASK - in_right * one.right - in_up * one.up
            found.append((in_right, in_up, level))
    return tuple(found)


def _plane(corners: Sequence[Seen]) -> tuple[float, float, float]:
    """Depth as a linear function of a place in the picture, from the face's normal there."""
    normal = [0.0, 0.0, 0.0]
    for a, b in zip(corners, (*corners[1:], corners[0]), strict=True):
        normal[0] += a.up * b.away - a.away * b.up
        normal[1] += a.away * b.right - a.right * b.away
        normal[2] += a.right * b.up - a.up * b.right
    over_right, over_up = -normal[0] / normal[2], -normal[1] / normal[2]
    first = corners[0]
    return over_right, over_up, first.away - over_right * first.right - over_up * first.up


class _Masks:
    """All masks, in square cells of the picture: an edge asks only those that it passes."""

    def __init__(self, masks: Sequence[_Mask]) -> None:
        sizes = [max(m.box[2] - m.box[0], m.box[3] - m.box[1]) for m in masks]
        # As large as the usual mask, so that most lie in few cells and few lie in a cell.
        self._cell = max(sorted(sizes)[len(sizes) // 2], 1.0) if sizes else 1.0
        self._cells: dict[tuple[int, int], list[_Mask]] = {}
        for mask in masks:
            for cell in self._in(*mask.box):
                self._cells.setdefault(cell, []).append(mask)

    def _in(self, left: float, low: float, right: float, high: float) -> Iterator[tuple[int, int]]:
        size = self._cell
        for x in range(floor(left / size), floor(right / size) + 1):
            for y in range(floor(low / size), floor(high / size) + 1):
                yield x, y

    def near(self, start: Seen, end: Seen) -> set[_Mask]:
        """The masks in the cells that a straight edge passes."""
        steps = min(MOST_CELLS, max(1, ceil(dist(start[:2], end[:2]) / self._cell)))
        found: set[_Mask] = set()
        for step in range(steps):
            one, other = (_between(start, end, (step + more) / steps) for more in (0, 1))
            lefts, lows = sorted((one[0], other[0])), sorted((one[1], other[1]))
            for cell in self._in(lefts[0], lows[0], lefts[1], lows[1]):
                found.update(self._cells.get(cell, ()))
        return found


def seen_edges(solids: Sequence[Solid], sight: Sight) -> Iterator[Edge]:
    """Turn bodies into the pieces of their edges that are seen, none of them twice.

    An edge that two bodies share belongs to the first.
    """
    masks = _Masks(list(_masks(solids, sight)))
    for edge in _once(_edges(solids, sight)):
        start, end = sight.of(edge[:2])
        hidden = [stretch for mask in masks.near(start, end) if (stretch := mask.hides(start, end))]
        long = dist(start[:2], end[:2])
        for first, last in _left_over(hidden):
            if (last - first) * long >= LEAST_PIECE:
                yield _piece(edge, edge.start, edge.end, (first, last))


def _masks(solids: Sequence[Solid], sight: Sight) -> Iterator[_Mask]:
    for solid in solids:
        seen = sight.of(solid.corners)
        for face in faces_of(solid, sight):
            yield _Mask([seen[at] for at in face])


def _edges(solids: Sequence[Solid], sight: Sight) -> Iterator[Edge]:
    """The edges of faces turned to the viewer; those of others are behind their own body."""
    for solid in solids:
        pairs: dict[tuple[int, int], None] = dict.fromkeys(solid.lines)
        for face in faces_of(solid, sight):
            for pair in zip(face, (*face[1:], face[0]), strict=True):
                if pair[::-1] not in pairs:
                    pairs[pair] = None
        for one, other in pairs:
            yield Edge(solid.corners[one], solid.corners[other], solid.of, solid.kind)


def _once(edges: Iterator[Edge]) -> Iterator[Edge]:
    """The edges without what earlier ones in the same line have already."""
    taken: dict[tuple[float, ...], list[Stretch]] = {}
    for edge in edges:
        long = dist(edge.start, edge.end)
        if long < LEAST_PIECE:
            continue
        key, way = _line_of(edge, long)
        first, last = sorted((inner(edge.start, way), inner(edge.end, way)))
        before = taken.setdefault(key, [])
        shares = [
            ((max(a, first) - first) / long, (min(b, last) - first) / long)
            for a, b in before
            if b > first and a < last
        ]
        before.append((first, last))
        forward = inner(edge.start, way) <= inner(edge.end, way)
        one, other = (edge.start, edge.end) if forward else (edge.end, edge.start)
        for low, high in _left_over(shares):
            if (high - low) * long >= LEAST_PIECE:
                yield _piece(edge, one, other, (low, high))


def _piece(edge: Edge, start: Place, end: Place, shares: Stretch) -> Edge:
    """A piece of an edge, by its shares of the way from a start to an end."""
    low, high = (Place(*_between(start, end, share)) for share in shares)
    return Edge(low, high, edge.of, edge.kind)


def _line_of(edge: Edge, long: float) -> tuple[tuple[float, ...], Place]:
    """What edges in one line have in common, to a hundredth of a millimeter, and its way."""
    way = Place(*((b - a) / long for a, b in zip(edge.start, edge.end, strict=True)))
    if next((part for part in way if abs(part) > 1e-9), 1.0) < 0:  # noqa: PLR2004
        way = Place(-way.x, -way.y, -way.z)
    along = inner(edge.start, way)
    # A little off, so that figures in whole hundredths are not split by the last digit.
    foot = (round(at - along * part + 0.0013, 2) for at, part in zip(edge.start, way, strict=True))
    return (*(round(part + 1e-8, 6) for part in way), *foot), way


def _left_over(hidden: Sequence[Stretch]) -> Iterator[Stretch]:
    """What stretches leave of a whole."""
    at = 0.0
    for low, high in sorted(hidden):
        if low > at:
            yield at, low
        at = max(at, high)
    if at < 1.0:
        yield at, 1.0


def _between(start: Sequence[float], end: Sequence[float], share: float) -> tuple[float, ...]:
    return tuple(a + (b - a) * share for a, b in zip(start, end, strict=True))
