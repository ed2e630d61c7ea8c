"""What the layout's JSON says of beam profiles, and of what is fixed to their sides."""

from collections.abc import Iterator
from dataclasses import dataclass
from fractions import Fraction

from lacunar.drawing.checker.json_node import Node

NOTHING = Fraction(0)


@dataclass(frozen=True, slots=True)
class BoardFacts:
    """A board of a profile: its name, its thickness and width [mm], how many there are across."""

    name: str
    thickness: Fraction
    width: Fraction
    quantity: int


@dataclass(frozen=True, slots=True)
class ProfileFacts:
    """A profile: its sizes [mm] and its boards. `joint` is empty of flat beams."""

    id: str
    kind: str
    joint: str
    finished: Fraction
    drop: Fraction
    net_depth: Fraction
    reveal: Fraction
    boards: tuple[BoardFacts, ...]

    def board(self, name: str) -> BoardFacts | None:
        """The board of a name, where it has one."""
        return next((each for each in self.boards if each.name == name), None)


@dataclass(frozen=True, slots=True)
class SectionFacts:
    """All profiles, how far a panel hangs below the ceiling, and the mouldings [mm].

    `crown` is its face and its drop, None without one; `flats` thickness and width of each flat
    moulding; `mocked_up` says whether strips of paper are asked for.
    """

    profiles: tuple[ProfileFacts, ...] = ()
    panel: Fraction = NOTHING
    crown: tuple[Fraction, Fraction] | None = None
    flats: tuple[tuple[Fraction, Fraction], ...] = ()
    mocked_up: bool = False


def read_sections(root: Node) -> SectionFacts:
    """Profiles, panel and mouldings; nothing where a layout tells none."""
    ceiling = root["ceiling"]
    if not root.has("profiles") or not ceiling.has("panel"):
        return SectionFacts()
    crown = root["mouldings"]["crown"]
    return SectionFacts(
        profiles=tuple(_profile(node) for node in root["profiles"]),
        panel=_panel(ceiling["panel"]),
        crown=(crown["face"].length, crown["drop"].length) if crown.given else None,
        flats=tuple(_flats(ceiling)),
        mocked_up=ceiling.has("drawing") and ceiling["drawing"]["mock_up"].text != "none",
    )


def _profile(node: Node) -> ProfileFacts:
    joint = node["bottom_joint"]
    return ProfileFacts(
        id=node["id"].text,
        kind=node["kind"].text,
        joint=joint.text if joint.given else "",
        finished=node["finished_width"].length,
        drop=node["drop"].length,
        net_depth=node["net_depth"].length,
        reveal=node["reveal"].length,
        boards=tuple(_board(each) for each in node["parts"]),
    )


def _board(node: Node) -> BoardFacts:
    quantity = node["quantity"].value
    count = quantity if isinstance(quantity, int) else 0
    return BoardFacts(node["name"].text, node["thickness"].length, node["width"].length, count)


def _panel(node: Node) -> Fraction:
    if node["kind"].text == "existing":
        return NOTHING
    return node["thickness"].exact_of(node["thickness"].text)


def _flats(ceiling: Node) -> Iterator[tuple[Fraction, Fraction]]:
    for each in ceiling["flat_mouldings"] if ceiling.has("flat_mouldings") else ():
        thickness, width = (each[name].exact_of(each[name].text) for name in ("thickness", "width"))
        yield thickness, width
