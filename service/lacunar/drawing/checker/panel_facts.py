"""What the layout's JSON says of panels and boards, in exact millimeters."""

from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from fractions import Fraction

from lacunar.drawing.checker.json_node import Node

Places = Mapping[str, tuple[Fraction, Fraction]]


@dataclass(frozen=True, slots=True)
class LaidFacts:
    """Courses across an opening: what they fill, how many, what the edge boards show."""

    across: Fraction
    courses: int
    edge: Fraction
    first_rip: Fraction
    last_rip: Fraction


@dataclass(frozen=True, slots=True)
class SheetFacts:
    """Panels that are alike: sizes along both runs, seams along both, where each starts."""

    coffers: tuple[str, ...]
    length: Fraction
    width: Fraction
    seam_count: int
    seams: Mapping[str, tuple[Fraction, ...]]
    places: Places


@dataclass(frozen=True, slots=True)
class FieldFacts:
    """Fields of boards that are alike: how many there are and how long, and where each starts."""

    coffers: tuple[str, ...]
    fields: int
    boards: int
    length: Fraction
    laid: LaidFacts
    places: Places


@dataclass(frozen=True, slots=True)
class CutFacts:
    """What fills a coffer that walls cut: its courses, and how many boards there are by length.

    A panel is `cut_from` a rectangle, and has so many corners.
    """

    coffer: str
    laid: LaidFacts | None
    boards: tuple[tuple[Fraction, int], ...]
    cut_from: tuple[Fraction, Fraction, int] | None


@dataclass(frozen=True, slots=True)
class PanelFacts:
    """All that fills coffers.

    `cut_drawn` are cut coffers as planned, `cut_listed` as measured. `tapered` are coffers whose
    panels or boards are no rectangles, of boards with what the first edge board shows at its start.
    `edges` are both ends of tapering edge boards, `sides` those of panels, toward W1 to W4.
    `asked_for_middle` is whether the spec says what lies on the middle line.
    """

    parallel_to: str
    through: bool
    cover: Fraction
    asked_for_middle: bool
    gap: Fraction
    sheets: tuple[SheetFacts, ...]
    fields: tuple[FieldFacts, ...]
    tapered: Mapping[str, Fraction | None]
    edges: tuple[tuple[str, Fraction, Fraction], ...]
    sides: tuple[tuple[str, tuple[Fraction, ...]], ...]
    cut_drawn: tuple[CutFacts, ...]
    cut_listed: tuple[CutFacts, ...]


def read_panels(root: Node) -> PanelFacts | None:
    """What is said of panels and boards; None where the ceiling that is there shows."""
    if not root.has("panel") or root["panel"]["kind"].text == "existing":
        return None
    node, asked = root["panel"], root["ceiling"]["panel"]
    boards = node["boards"]
    boarded = asked.has("cover")
    drawn, listed = _cut(root)
    return PanelFacts(
        parallel_to=asked["parallel_to"].text if boarded else "",
        through=boards.given and boards["run"].text == "through",
        cover=asked["cover"].exact_of(asked["cover"].text) if boarded else Fraction(0),
        asked_for_middle=asked.has("centered_on") and asked["centered_on"].given,
        gap=asked["gap"].exact_of(asked["gap"].text),
        sheets=tuple(_sheet(piece) for piece in node["pieces"]),
        fields=tuple(_field(each) for each in (boards["fields"] if boards.given else ())),
        tapered=dict(_tapered(root)),
        edges=tuple(_edges(root)),
        sides=tuple(_sides(root)),
        cut_drawn=drawn,
        cut_listed=listed,
    )


def _count(node: Node) -> int:
    number = node["count"].value
    assert isinstance(number, int)
    return number


def _places(node: Node) -> Places:
    return {each["coffer"].text: (each["x"].length, each["y"].length) for each in node["places"]}


def _sheet(node: Node) -> SheetFacts:
    return SheetFacts(
        coffers=tuple(each.text for each in node["coffers"]),
        length=node["length"].length,
        width=node["width"].length,
        seam_count=_count(node["seams"]),
        seams={
            run: tuple(seam.length for seam in node[f"seams_along_{run}"])
            for run in ("length", "width")
        },
        places=_places(node),
    )


def _field(node: Node) -> FieldFacts:
    return FieldFacts(
        coffers=tuple(each.text for each in node["coffers"]),
        fields=_count(node["fields"]),
        boards=_count(node["boards"]),
        length=node["length"].length,
        laid=_laid(node["courses"]),
        places=_places(node),
    )


def _laid(node: Node) -> LaidFacts:
    return LaidFacts(
        node["across"].length,
        _count(node["courses"]),
        node["edge"].length,
        node["first_rip"].length,
        node["last_rip"].length,
    )


def _tapering(root: Node, what: str) -> Iterator[Node]:
    """Panels, or fields of boards, that are no rectangles."""
    for name in ("measured_openings", "followed"):
        if root.has(name) and root[name].given:
            yield from root[name][what]


def _tapered(root: Node) -> Iterator[tuple[str, Fraction | None]]:
    yield from ((panel["coffer"].text, None) for panel in _tapering(root, "panels"))
    for field in _tapering(root, "boards"):
        yield field["coffer"].text, next(iter(field["edges"]))["start"].length


def _edges(root: Node) -> Iterator[tuple[str, Fraction, Fraction]]:
    for field in _tapering(root, "boards"):
        for edge in field["edges"]:
            yield field["coffer"].text, edge["start"].length, edge["end"].length


def _sides(root: Node) -> Iterator[tuple[str, tuple[Fraction, ...]]]:
    for panel in _tapering(root, "panels"):
        yield panel["coffer"].text, tuple(side.length for side in panel["sides"])


def _cut(root: Node) -> tuple[tuple[CutFacts, ...], tuple[CutFacts, ...]]:
    """Cut coffers as planned, and as measured where they were."""
    if not root.has("outlined") or not root["outlined"].given:
        return (), ()
    odd = root["outlined"]
    planned = {each["id"].text: each for each in odd["partial_coffers"]}
    measured = {
        each["coffer"].text: each["as_measured"]
        for each in odd["measured"]
        if each["as_measured"].given
    }
    cut = {**planned, **measured}
    return (
        tuple(_cut_coffer(node) for node in planned.values()),
        tuple(_cut_coffer(cut[name]) for name in planned),
    )


def _cut_coffer(node: Node) -> CutFacts:
    laid, lengths = node["laid"], []
    for each in node["courses"]:
        number = each["boards"].value
        assert isinstance(number, int)
        lengths.append((each["length"].length, number))
    cut_from = None
    if node["panel_length"].given:
        corners = sum(1 for _ in node["panel_corners"])
        cut_from = node["panel_length"].length, node["panel_width"].length, corners
    told = _laid(laid) if laid.given else None
    return CutFacts(node["id"].text, told, tuple(lengths), cut_from)
