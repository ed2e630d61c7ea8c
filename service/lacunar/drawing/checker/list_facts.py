"""What the checker knows of parts and of what is bought, from the JSON of both lists."""

import json
from collections.abc import Mapping
from dataclasses import dataclass
from fractions import Fraction

from lacunar.drawing.checker.json_node import MILLIMETERS, Node, UnexpectedJson

AMOUNTS = ("need", "waste", "left_over", "on_hand", "amount")
SIZES = ("thickness", "width", "length", "short_length", "cut_width", "cut_length")
_OWN = ("mark", "quantity", "places")
# Pieces are planned rounded up to what a tape shows, of which the JSON tells nothing.
_TAPED = {"in": MILLIMETERS["in"] / 64, "mm": Fraction(1, 2)}


@dataclass(frozen=True, slots=True)
class PartFacts:
    """A part: how many, its sizes by name [mm], None where it has none, whether it may be turned.

    `shape` is all that makes it the same as another, as one text.
    """

    mark: str
    quantity: int
    sizes: Mapping[str, Fraction | None]
    material: str
    turns: bool
    shape: str


@dataclass(frozen=True, slots=True)
class BoughtFacts:
    """So many of one length, size or pack: its name, its id in the plan, how much each holds."""

    name: str
    stock: str
    quantity: int
    holds: Fraction
    length: Fraction | None


@dataclass(frozen=True, slots=True)
class LineFacts:
    """A line of the material list: its amounts by name, in its unit; what is cut has a plan.

    `metric` is how much of the metric unit one of its own is, None where there is none; `pieces`
    are how many pieces each of its parts is cut as, by mark.
    """

    number: str
    name: str
    cut: bool
    amounts: Mapping[str, Fraction]
    metric: Fraction | None
    bought: tuple[BoughtFacts, ...]
    pieces: Mapping[str, int]


@dataclass(frozen=True, slots=True)
class ListFacts:
    """Parts; lines, None where nothing is planned; the saw cut, and a tape's step [mm]."""

    parts: tuple[PartFacts, ...]
    lines: tuple[LineFacts, ...] | None
    kerf: Fraction
    taped: Fraction
    metric: bool

    def pieces_of(self, mark: str) -> int:
        """How many pieces each of a part is cut as; 1 where no line tells."""
        cut = (line for line in self.lines or () if line.cut and mark in line.pieces)
        return next((line.pieces[mark] for line in cut), 1)


def read_lists(answers: Mapping[str, object], layout: Mapping[str, object]) -> ListFacts:
    """The facts from the JSON of the take-off and of the material list, and the layout's saw cut.

    Errors: `UnexpectedJson` where the JSON is not one of these.
    """
    root = Node(answers, "")
    kerf = Node(layout, "")["ceiling"]["stock"]["kerf"]
    materials = root["materials"]
    units = root["take_off"]["units"].text
    return ListFacts(
        parts=tuple(_part(node) for node in root["take_off"]["parts"]),
        lines=tuple(_line(node) for node in materials["lines"]) if materials.given else None,
        kerf=kerf.exact_of(kerf.text),
        taped=_TAPED[units],
        metric=units == "mm",
    )


def _part(node: Node) -> PartFacts:
    if not isinstance(node.value, Mapping):
        raise UnexpectedJson(f"{node.pointer}: no part")
    same = {name: told for name, told in node.value.items() if name not in _OWN}
    return PartFacts(
        mark=node["mark"].text,
        quantity=_count(node["quantity"]),
        sizes={name: node[name].length if node[name].given else None for name in SIZES},
        material=node["material"]["name"].text,
        turns=node["grain"].text == "either",
        shape=json.dumps(same, sort_keys=True),
    )


def _line(node: Node) -> LineFacts:
    amounts = {name: _number(node[name]) for name in AMOUNTS}
    return LineFacts(
        number=str(_count(node["number"])),
        name=node["name"].text,
        cut=node["plan"].given,
        amounts=amounts,
        metric=_metric(node, amounts),
        bought=tuple(_bought(each) for each in node["bought"]),
        pieces={part["mark"].text: _count(part["pieces_each"]) for part in node["parts"]},
    )


def _metric(node: Node, amounts: Mapping[str, Fraction]) -> Fraction | None:
    """One unit in the metric one, from whichever amount is told in both."""
    for name in ("need", "amount"):
        if node[f"metric_{name}"].given and amounts[name]:
            return _number(node[f"metric_{name}"]) / amounts[name]
    return None


def _bought(node: Node) -> BoughtFacts:
    return BoughtFacts(
        name=node["name"].text,
        stock=node["stock"].text,
        quantity=_count(node["quantity"]),
        holds=_number(node["holds"]),
        length=node["length"].length if node["length"].given else None,
    )


def _count(node: Node) -> int:
    if not isinstance(node.value, int):
        raise UnexpectedJson(f"{node.pointer}: no count")
    return node.value


def _number(node: Node) -> Fraction:
    try:
        return Fraction(node["exact"].text)
    except ValueError as error:
        raise UnexpectedJson(f"{node.pointer}: no exact number") from error
