"""What the layout's JSON says of heights: the stack, what hangs how deep, heads of doors."""

from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from fractions import Fraction

from lacunar.drawing.checker.json_node import Node


@dataclass(frozen=True, slots=True)
class HeightFacts:
    """Heights above the finished floor by what dimensions call them, such as `beam:P1`.

    `ceiling` is the height asked for, `limit` the headroom asked for; `drops` are those of
    profiles, `profiles` by the ids of their beams; `heads` of wall features in their order, None
    where one was not told.
    """

    levels: Mapping[str, Fraction]
    ceiling: Fraction
    limit: Fraction
    drops: Mapping[str, Fraction]
    profiles: Mapping[str, str]
    heads: tuple[Fraction | None, ...]

    @property
    def lowest(self) -> Fraction:
        """The lowest place of the stack."""
        return min(self.levels.values())

    def under(self, beam: str) -> Fraction:
        """A beam's underside: its ceiling less its drop."""
        return self.ceiling - self.drops[self.profiles[beam]]


def read_heights(root: Node) -> HeightFacts | None:
    """Turn the layout's JSON into its heights; None where it comes without them."""
    ceiling = root["ceiling"]
    if not root.has("heights") or not ceiling.has("room"):
        return None
    room = ceiling["room"]
    profiles = list(root["profiles"])
    return HeightFacts(
        levels=dict(_levels(root["heights"]["levels"])),
        ceiling=room["height"].exact_of(room["height"].text),
        limit=room["headroom"].exact_of(room["headroom"].text),
        drops={profile["id"].text: profile["drop"].length for profile in profiles},
        profiles={
            beam.text: profile["id"].text for profile in profiles for beam in profile["used_by"]
        },
        heads=tuple(_heads(room)),
    )


def _levels(levels: Node) -> Iterator[tuple[str, Fraction]]:
    for level in levels:
        kind, of = level["kind"].text, level["of"].text
        yield (kind if kind == of else f"{kind}:{of}"), level["height"].length


def _heads(room: Node) -> Iterator[Fraction | None]:
    for feature in room["wall_features"] if room.has("wall_features") else ():
        told = feature.has("head") and feature["head"].given
        yield feature["head"].exact_of(feature["head"].text) if told else None
