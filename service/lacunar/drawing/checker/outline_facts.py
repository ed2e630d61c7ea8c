"""What the layout's JSON says of a room with other than four walls, in exact millimeters."""

from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from fractions import Fraction

from lacunar.drawing.checker.json_node import Node

Place = tuple[Fraction, Fraction]
Stretch = tuple[Fraction, Fraction]


@dataclass(frozen=True, slots=True)
class SideFacts:
    """A side of the room: its wall, its corners clockwise, and the face of what stands there.

    `on` is the run across which it stands, empty where it is angled; `at` and `face_at` its place
    there and that of the face, `beam` the id of what has the face.
    """

    wall: str
    side: str
    looks_as: str
    ends: tuple[Place, Place]
    beam: str
    face: tuple[Place, Place] | None
    on: str
    at: Fraction | None
    face_at: Fraction | None


@dataclass(frozen=True, slots=True)
class CutFacts:
    """A coffer that walls cut, by its corners."""

    id: str
    row: str
    column: str
    corners: tuple[Place, ...]


@dataclass(frozen=True, slots=True)
class OutlineFacts:
    """A room with other than four walls.

    `spans` are where each beam stands along the other run; `slants` how far its near and its far
    face go on past the ends of these, by the beam and the end.
    """

    sides: tuple[SideFacts, ...]
    coffers: tuple[CutFacts, ...]
    spans: Mapping[str, tuple[Stretch, ...]]
    slants: Mapping[tuple[str, Fraction], tuple[str, Fraction]]
    angled: tuple[str, ...]

    def innermost_corners(self) -> tuple[Fraction, Fraction]:
        """How far in the corners of W1 and of W4 reach, zero unless these bow into the room."""
        first = {side.wall: side for side in reversed(self.sides)}
        left, lower = first["W1"].ends, first["W4"].ends
        return max(at[0] for at in left), max(at[1] for at in lower)

    def places(self, run: str) -> Iterator[tuple[str, Fraction]]:
        """What a dimension can stop at along a run, beside W1 to W4 and the beams."""
        for side in self.sides:
            if side.on == run and side.at is not None:
                yield side.wall, side.at
            if not side.on:
                along = 0 if run == "length" else 1
                yield f"{side.wall}:start", side.ends[0][along]
                yield f"{side.wall}:end", side.ends[1][along]


def read_outline(root: Node) -> OutlineFacts | None:
    """Turn the layout's JSON into what it says of the outline; None for a room with four walls."""
    if not root.has("outlined") or not root["outlined"].given:
        return None
    node = root["outlined"]
    return OutlineFacts(
        sides=tuple(_side(wall) for wall in node["walls"]),
        coffers=tuple(_cut(coffer) for coffer in node["partial_coffers"]),
        spans=_spans(node["spans"]),
        slants=dict(_slants(node["spans"])),
        angled=tuple(beam["id"].text for beam in node["angled_beams"]),
    )


def _side(node: Node) -> SideFacts:
    face = None
    if node["face_start"].given:
        face = _place(node["face_start"]), _place(node["face_end"])
    return SideFacts(
        wall=node["wall"].text,
        side=str(node["side"].value),
        looks_as=node["looks_as"].text,
        ends=(_place(node["start"]), _place(node["end"])),
        beam=node["beam"].text if node["beam"].given else "",
        face=face,
        on=node["on"].text if node["on"].given else "",
        at=node["at"].length if node["at"].given else None,
        face_at=node["face"].length if node["face"].given else None,
    )


def _place(node: Node) -> Place:
    return node["x"].length, node["y"].length


def _cut(node: Node) -> CutFacts:
    corners = tuple(_place(side["start"]) for side in node["sides"])
    row, column = (str(node[name].value) for name in ("row", "column"))
    return CutFacts(node["id"].text, row, column, corners)


def _spans(nodes: Node) -> dict[str, tuple[Stretch, ...]]:
    found: dict[str, tuple[Stretch, ...]] = {}
    for node in nodes:
        beam = node["beam"].text
        found[beam] = (*found.get(beam, ()), (node["start"].length, node["end"].length))
    return found


def _slants(nodes: Node) -> Iterator[tuple[tuple[str, Fraction], tuple[str, Fraction]]]:
    for node in nodes:
        for end, sign in (("start", -1), ("end", 1)):
            if node[f"{end}_slant"].given:
                key = node["beam"].text, node[end].length
                yield key, (node[f"{end}_longer"].text, sign * node[f"{end}_slant"].length)
