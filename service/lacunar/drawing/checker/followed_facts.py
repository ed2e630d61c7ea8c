"""What the layout's JSON says of a grid along the walls that a sheet can be held against."""

from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from fractions import Fraction

from lacunar.drawing.checker.json_node import Node

Place = tuple[Fraction, Fraction]
Line = tuple[Place, Place]

SIZES = ("towards_w1", "towards_w2", "towards_w3", "towards_w4", "rising", "falling")


@dataclass(frozen=True, slots=True)
class FollowedFacts:
    """A grid along the walls: faces and center line of each beam by its id, sizes of coffers.

    `sizes` are in the order of `SIZES`; `tapering` are coffers with crown along their own sides.
    """

    faces: Mapping[str, tuple[Line, ...]]
    centers: Mapping[str, Line]
    sizes: Mapping[str, tuple[Fraction, ...]]
    tapering: frozenset[str]


def read_followed(root: Node) -> FollowedFacts | None:
    """Turn the layout's JSON into what is told of a grid along the walls; None without one."""
    if not root.has("followed") or not root["followed"].given:
        return None
    node = root["followed"]
    beams = {beam["id"].text: beam for beam in node["beams"]}
    return FollowedFacts(
        faces={name: tuple(_faces(beam)) for name, beam in beams.items()},
        centers={name: _line(*beam["center"]) for name, beam in beams.items()},
        sizes=dict(_sizes(root["crooked"])),
        tapering=frozenset(
            each["coffer"].text for each in node["coffers"] if each["tapers"].value is True
        ),
    )


def _faces(beam: Node) -> Iterator[Line]:
    for piece in beam["pieces"]:
        for side in ("near", "far"):
            yield _line(piece[side]["start"], piece[side]["end"])


def _line(start: Node, end: Node) -> Line:
    return _place(start), _place(end)


def _place(node: Node) -> Place:
    return node["x"].length, node["y"].length


def _sizes(crooked: Node) -> Iterator[tuple[str, tuple[Fraction, ...]]]:
    for mode in crooked["modes"]:
        if mode["chosen"].value is True:
            for coffer in mode["coffers"]:
                yield coffer["id"].text, tuple(coffer[name].length for name in SIZES)
