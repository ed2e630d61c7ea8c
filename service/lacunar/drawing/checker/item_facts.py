"""What the layout's JSON says of ceiling items and wall features, in exact millimeters."""

from collections.abc import Iterator
from dataclasses import dataclass
from fractions import Fraction

from lacunar.drawing.checker.json_node import Node


@dataclass(frozen=True, slots=True)
class ItemFacts:
    """A ceiling item: its kind, center and size, each along the length run and the width run."""

    id: str
    kind: str
    x: Fraction
    y: Fraction
    length: Fraction
    width: Fraction
    round: bool


@dataclass(frozen=True, slots=True)
class FeatureFacts:
    """A wall feature: its kind, its wall, and its edges along the run that the wall lies along.

    In an odd room also the number of its side; in an angled one edges are from its start.
    """

    name: str
    kind: str
    wall: str
    near: Fraction
    far: Fraction
    side: str = ""


def read_items(root: Node) -> Iterator[ItemFacts]:
    """All ceiling items; nothing where the layout says nothing of them."""
    if root.has("ceiling_items"):
        for item in root["ceiling_items"]["items"]:
            x, y, length, width = (item[name].length for name in ("x", "y", "length", "width"))
            rounded = item["round"].value is True
            yield ItemFacts(item["id"].text, item["kind"].text, x, y, length, width, rounded)


def read_features(root: Node) -> Iterator[FeatureFacts]:
    """All wall features; nothing where the layout says nothing of them."""
    if root.has("wall_features"):
        for check in root["wall_features"]:
            name, kind, wall = (check[one].text for one in ("name", "kind", "wall"))
            near, far = check["near"].length, check["far"].length
            side = str(check["side"].value) if check.has("side") and check["side"].given else ""
            yield FeatureFacts(name, kind, wall, near, far, side)
