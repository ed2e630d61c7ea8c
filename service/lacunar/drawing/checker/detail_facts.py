"""What the layout's JSON says that sheets of details are held against."""

from collections.abc import Mapping
from dataclasses import dataclass, field

from lacunar.drawing.checker.crossing_facts import (
    CrossingFacts,
    ProfileFacts,
    read_crossings,
    read_profiles,
)
from lacunar.drawing.checker.crown_facts import CrownFacts, read_crown
from lacunar.drawing.checker.json_node import Node


@dataclass(frozen=True, slots=True)
class DetailFacts:
    """Crossings, the profiles of beams by their ids, and crown, None where there is none."""

    crossings: tuple[CrossingFacts, ...] = ()
    profiles: Mapping[str, ProfileFacts] = field(default_factory=dict)
    crown: CrownFacts | None = None


def read_details(root: Node) -> DetailFacts:
    """Turn the layout's JSON into what crossings and crown frames are held against."""
    return DetailFacts(tuple(read_crossings(root)), read_profiles(root), read_crown(root))
