"""What the layout's JSON says of a room with other than four walls, in exact millimeters."""

from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from fractions import Fraction

from lacunar.drawing.checker.json_node import Node

Place = tuple[Fraction, Fraction]
Stretch = tuple[Fraction, Fraction]
Cell = tuple[str, str, str, Fraction | None]
"""What tables list: the kind of row, whose it is, the column, and the figure there."""


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
    """A coffer that walls or columns cut, by its corners, and those of holes about columns.

    `crowned` is whether crown can be drawn in it: it has some, and no two runs of it meet.
    """

    id: str
    row: str
    column: str
    corners: tuple[Place, ...]
    holes: tuple[tuple[Place, ...], ...]
    crowned: bool


@dataclass(frozen=True, slots=True)
class ColumnFacts:
    """A column by its corners, and its outermost places: left, right, lower, upper."""

    name: str
    corners: tuple[Place, ...]
    faces: Mapping[str, Fraction]


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
    columns: tuple[ColumnFacts, ...]
    listed: tuple[Cell, ...]

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
        columns=tuple(_column(column) for column in node["columns"]),
        listed=tuple(_listed(node)),
    )


FACES = ("left", "right", "lower", "upper")


def _column(node: Node) -> ColumnFacts:
    return ColumnFacts(
        name=node["name"].text,
        corners=tuple(_place(corner) for corner in node["corners"]),
        faces={face: node[face].length for face in FACES},
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
    holes = tuple(tuple(_place(side["start"]) for side in hole["sides"]) for hole in node["holes"])
    crowned = node["crown_meets"].value is False and any(
        side["long_point"].given for side in node["sides"]
    )
    return CutFacts(node["id"].text, row, column, corners, holes, crowned)


def _listed(node: Node) -> Iterator[Cell]:
    """What the tables of an odd room are to list."""
    tapers = any(wall["taper"].given and wall["taper"].length for wall in node["walls"])
    for wall in node["walls"]:
        names = ("length", "at", "face", *(("taper",) if tapers else ()))
        yield from _cells("outline-wall", wall["wall"].text, wall, {name: name for name in names})
    sides = [
        (coffer, side)
        for coffer in node["partial_coffers"]
        for side in (*coffer["sides"], *(s for hole in coffer["holes"] for s in hole["sides"]))
    ]
    crowned = any(side["long_point"].given for _, side in sides)
    columns = {"length": "length", **({"crown": "long_point"} if crowned else {})}
    for coffer, side in sides:
        of = f"{coffer['id'].text} {side['against'].text}"
        yield from _cells("cut-side", of, side, columns)
    for beam in node["angled_beams"]:
        boards = {"side": "side_long", "bottom": "bottom_long"}
        yield from _cells("angled-board", beam["id"].text, beam, boards)
    for column in node["columns"]:
        yield from _cells("column", column["name"].text, column, {face: face for face in FACES})


def _cells(kind: str, of: str, node: Node, columns: Mapping[str, str]) -> Iterator[Cell]:
    for name, field in columns.items():
        yield kind, of, name, node[field].length if node[field].given else None


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
