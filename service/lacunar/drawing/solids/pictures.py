"""Pictures of bodies on paper: how large, where, and the seen edges in groups."""

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass

from lacunar.drawing.elements import Group, Pen, Pt, Segments
from lacunar.drawing.solids.hidden import seen_edges
from lacunar.drawing.solids.space import Edge, Place, Sight, Solid


@dataclass(frozen=True, slots=True)
class Picture:
    """A sight on paper: millimeters of paper to one of the room, and where the datum stands.

    The datum is the corner that all places are from, at the finished ceiling. `width` and `height`
    are what the picture takes up [mm].
    """

    sight: Sight
    size: float
    datum: Pt
    width: float
    height: float

    def at(self, place: Place) -> Pt:
        """A place of the room on paper."""
        (seen,) = self.sight.of([place])
        return self.datum.moved(seen.right * self.size, -seen.up * self.size)

    @property
    def axes(self) -> dict[str, str]:
        """How far a millimeter along each axis of the room goes on paper, to the right and down."""
        origin = Place(0.0, 0.0, 0.0)
        found = {}
        for name, way in (("length", (1, 0, 0)), ("width", (0, 1, 0)), ("height", (0, 0, 1))):
            (seen,) = self.sight.of([origin.moved(*way)])
            right, down = seen.right * self.size, -seen.up * self.size
            found[f"{name}-axis"] = f"{right:.9f} {down:.9f}"
        return found


def fitted_picture(
    places: Sequence[Place], sight: Sight, room: tuple[float, float], margin: float
) -> Picture:
    """The largest picture of some places in a room on paper [mm], with a margin about them."""
    seen = sight.of(places)
    rights, ups = [at.right for at in seen], [at.up for at in seen]
    wide, high = max(rights) - min(rights), max(ups) - min(ups)
    size = min((room[0] - 2 * margin) / wide, (room[1] - 2 * margin) / high)
    datum = Pt(margin - min(rights) * size, margin + max(ups) * size)
    return Picture(sight, size, datum, wide * size + 2 * margin, high * size + 2 * margin)


def edge_groups(
    solids: Sequence[Solid], picture: Picture, pens: Mapping[str, Pen]
) -> Iterator[Group]:
    """The seen edges in groups: by what they are of, and by the heights they go between.

    Each line goes from the lower height to the higher one, so that it can be held against figures.
    """
    found: dict[tuple[str, str, str, str], list[tuple[Pt, Pt]]] = {}
    for edge in seen_edges(solids, picture.sight):
        low, high = _upward(edge)
        key = (edge.kind, edge.of, f"{low.z:.3f}", f"{high.z:.3f}")
        found.setdefault(key, []).append((picture.at(low), picture.at(high)))
    for number, ((kind, of, low_mm, high_mm), lines) in enumerate(found.items(), start=1):
        yield Group(
            "edges",
            (Segments(tuple(lines), pens[kind]),),
            id=f"edges-{number}",
            data={"of": of, "kind": kind, "low-mm": low_mm, "high-mm": high_mm},
        )


def _upward(edge: Edge) -> tuple[Place, Place]:
    return (edge.start, edge.end) if edge.start.z <= edge.end.z else (edge.end, edge.start)
