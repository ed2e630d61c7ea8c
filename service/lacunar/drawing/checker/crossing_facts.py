"""What the layout's JSON says of crossings and of the boards that meet there, in millimeters."""

from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from fractions import Fraction

from lacunar.drawing.checker.json_node import Node

Size = tuple[Fraction, Fraction]


@dataclass(frozen=True, slots=True)
class ProfileFacts:
    """A beam's profile: its width between faces, and thickness and width of each of its boards.

    `edges` are how far the edges of boards other than sides lie off the faces.
    """

    width: Fraction
    boards: Mapping[str, Size]
    edges: Mapping[str, Fraction]


@dataclass(frozen=True, slots=True)
class EndFacts:
    """How a board ends at a crossing, and how far its long and its short point reach past."""

    cut: str
    past: Fraction
    short: Fraction


@dataclass(frozen=True, slots=True)
class CrossingFacts:
    """A crossing: its kind, the profiles of what runs through (or empty) and of what ends.

    `ends` are by role and board; `places` are the ids of what runs through and of what ends.
    """

    id: str
    kind: str
    profiles: Mapping[str, str]
    runs_past: tuple[str, ...]
    ends: Mapping[tuple[str, str], EndFacts]
    places: tuple[tuple[str, str], ...]


def read_crossings(root: Node) -> Iterator[CrossingFacts]:
    """Every crossing; nothing where a layout does not tell any."""
    for node in root["crossings"] if root.has("crossings") else ():
        through = node["through"].text if node["through"].given else ""
        yield CrossingFacts(
            id=node["id"].text,
            kind=node["kind"].text,
            profiles={"through": through, "stopped": node["stopped"].text},
            runs_past=tuple(part.text for part in node["runs_past"]),
            ends={(each["beam"].text, each["part"].text): _end(each) for each in node["ends"]},
            places=tuple(
                (place["through"].text, place["stopped"].text) for place in node["places"]
            ),
        )


def _end(node: Node) -> EndFacts:
    end = node["end"]
    return EndFacts(end["cut"].text, end["past"].length, end["past_short"].length)


def read_profiles(root: Node) -> dict[str, ProfileFacts]:
    """Every profile by its id; nothing where a layout does not tell any."""
    found = {}
    for node in root["profiles"] if root.has("profiles") else ():
        boards = {
            part["name"].text: (part["thickness"].length, part["width"].length)
            for part in node["parts"]
        }
        found[node["id"].text] = ProfileFacts(
            node["finished_width"].length, boards, _edges(node, boards)
        )
    return found


def _edges(node: Node, boards: Mapping[str, Size]) -> dict[str, Fraction]:
    """Off the faces: a bottom between the sides lies behind them, one under them by its overhang.

    Of a flat beam the reveal is the face board's, the overhang the upper one's.
    """
    reveal, overhang = node["reveal"].length, node["overhang"].length
    if "side" not in boards:
        return {"bottom": -reveal, "upper_board": -overhang}
    joint = node["bottom_joint"].text
    if joint == "between":
        return {"bottom": -boards["side"][0]}
    return {"bottom": overhang - reveal if joint == "under" else Fraction(0)}
