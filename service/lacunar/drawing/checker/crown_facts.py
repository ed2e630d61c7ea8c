"""What the layout's JSON says of crown: its section, its pieces coffer by coffer, its corners."""

from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from fractions import Fraction

from lacunar.drawing.checker.json_node import Node

CROWN = "Crown"
Cut = Mapping[str, str]


@dataclass(frozen=True, slots=True)
class PieceFacts:
    """A piece of crown: its sides, how often it is cut, its ends, long point and short point."""

    sides: str
    quantity: int
    ends: tuple[str, str]
    long: Fraction
    short: Fraction


@dataclass(frozen=True, slots=True)
class FrameFacts:
    """Crown that goes alike into some coffers. `size` is the opening where it is as planned."""

    coffers: tuple[str, ...]
    pieces: tuple[PieceFacts, ...]
    size: tuple[Fraction, Fraction] | None


@dataclass(frozen=True, slots=True)
class CornerFacts:
    """A corner that crown turns [deg], where it is, and the settings for it [deg]."""

    of: str
    corner: float
    settings: Mapping[str, float]


@dataclass(frozen=True, slots=True)
class CrownFacts:
    """Crown: spring from the wall [deg], projection and face; how frames are fitted; all of them.

    `fit` is None where pieces are coped; `behind` what flat mouldings take of an opening.
    """

    spring: float
    projection: Fraction
    face: Fraction
    fit: Fraction | None
    behind: Fraction
    frames: tuple[FrameFacts, ...]
    corners: tuple[CornerFacts, ...]
    cuts: tuple[Cut, ...]


def read_crown(root: Node) -> CrownFacts | None:
    """Crown as laid out; None where there is none, or a layout does not tell it in full."""
    crown, ceiling = root["mouldings"]["crown"], root["ceiling"]
    if not crown.given or not crown.has("saw"):
        return None
    asked = ceiling["crown"]
    framed = asked["method"].text == "bench_frame"
    corners = (_corner("SQUARE", crown["saw"]), *_out_of_square(root), *_cut_corners(root))
    return CrownFacts(
        spring=_degrees(crown["spring_from_wall"]),
        projection=crown["projection"].length,
        face=crown["face"].length,
        fit=asked["fit_total"].exact_of(asked["fit_total"].text) if framed else None,
        behind=sum(_thicknesses(ceiling), Fraction(0)) * 2,
        frames=(*_whole(root), *_cut(root)),
        corners=corners,
        cuts=tuple(
            cut
            for node in _settings(root)
            for cut in ({name: each[name].text for name in _CUT} for each in node["cuts"])
        ),
    )


def _thicknesses(ceiling: Node) -> Iterator[Fraction]:
    """Those of the flat mouldings behind the crown."""
    for each in ceiling["flat_mouldings"] if ceiling.has("flat_mouldings") else ():
        if each["at"].text == "ceiling":
            yield each["thickness"].exact_of(each["thickness"].text)


_CUT = ("lies", "end", "against_fence", "table", "keep")


def _settings(root: Node) -> Iterator[Node]:
    """Settings of all corners, inside and outside ones."""
    yield root["mouldings"]["crown"]["saw"]
    if root.has("outlined") and root["outlined"].given:
        for corner in root["outlined"]["corners"]:
            yield corner["settings"]


def _degrees(node: Node) -> float:
    return float(Fraction(node["exact"].text.removesuffix(" deg")))


def _corner(of: str, saw: Node) -> CornerFacts:
    names = {"nested": "nested_miter", "miter": "flat_miter", "bevel": "flat_bevel"}
    settings = {short: _degrees(saw[name]) for short, name in names.items()}
    return CornerFacts(of, _degrees(saw["corner"]), settings)


def _out_of_square(root: Node) -> Iterator[CornerFacts]:
    for name in ("measured_openings", "followed"):
        if not root.has(name) or not root[name].given:
            continue
        for crown in root[name]["crown"]:
            for corner in crown["corners"]:
                walls = "-".join(wall.text for wall in corner["between"])
                yield _corner(f"{crown['coffer'].text} {walls}", corner["saw"])


def _cut_corners(root: Node) -> Iterator[CornerFacts]:
    if root.has("outlined") and root["outlined"].given:
        for corner in root["outlined"]["corners"]:
            of = "OUTSIDE" if corner["juts_in"].value else "INSIDE"
            yield _corner(of, corner["settings"])


def _whole(root: Node) -> Iterator[FrameFacts]:
    """Those of whole coffers, alike ones together where their corners are square."""
    sizes = {
        each["id"].text: (each["length"].length, each["width"].length) for each in root["coffers"]
    }
    squareness = _measured(root)
    aslant = set(_tapered(root)) - squareness.keys()
    aslant |= {coffer for coffer, told in squareness.items() if told == "out_of_square"}
    alike: dict[str, list[Node]] = {}
    for trim in root["mouldings"]["coffers"]:
        first = next(iter(trim["coffers"])).text
        own = [_exact(trim[name].value) for name in _FITTED]
        alike.setdefault(first if first in aslant else repr(own), []).append(trim)
    for trims in alike.values():
        coffers = tuple(coffer.text for trim in trims for coffer in trim["coffers"])
        pieces = (_piece(each) for each in trims[0]["pieces"] if each["moulding"].text == CROWN)
        planned = not {coffers[0]} & (squareness.keys() | aslant)
        yield FrameFacts(coffers, tuple(pieces), sizes[coffers[0]] if planned else None)


_FITTED = ("pieces", "nailers", "seen_length", "seen_width")


def _exact(value: object) -> object:
    """A value of the JSON with its lengths by what they are exactly, and nothing else of them."""
    if isinstance(value, dict):
        return value["exact"] if "exact" in value else {k: _exact(v) for k, v in value.items()}
    return [_exact(each) for each in value] if isinstance(value, list) else value


def _measured(root: Node) -> dict[str, str]:
    """What is known of the corners of coffers that were measured."""
    if not root.has("measured_openings") or not root["measured_openings"].given:
        return {}
    openings = root["measured_openings"]["openings"]
    return {each["coffer"].text: each["squareness"].text for each in openings}


def _tapered(root: Node) -> Iterator[str]:
    if root.has("followed") and root["followed"].given:
        yield from (
            each["coffer"].text for each in root["followed"]["coffers"] if each["tapers"].value
        )


def _piece(node: Node) -> PieceFacts:
    return PieceFacts(
        ", ".join(wall.text for wall in node["toward"]),
        int(str(node["quantity"].value)),
        (node["left_end"].text, node["right_end"].text),
        node["long_point"].length,
        node["short_point"].length,
    )


def _cut(root: Node) -> Iterator[FrameFacts]:
    """Cut coffers, as measured where that is known; alike ones together."""
    if not root.has("outlined") or not root["outlined"].given:
        return
    room = root["outlined"]
    built = {
        each["coffer"].text: each["as_measured"]
        for each in room["measured"]
        if each["as_measured"].given
    }
    alike: dict[tuple[object, ...], list[Node]] = {}
    for node in room["partial_coffers"]:
        coffer = built.get(node["id"].text, node)
        alike.setdefault(tuple(_key(coffer)), []).append(coffer)
    for coffers in alike.values():
        yield FrameFacts(
            tuple(each["id"].text for each in coffers), tuple(_cut_pieces(coffers[0])), None
        )


def _sides(coffer: Node) -> Iterator[Node]:
    yield from coffer["sides"]
    for hole in coffer["holes"]:
        yield from hole["sides"]


def _key(coffer: Node) -> Iterator[object]:
    for side in _sides(coffer):
        yield side["length"].length, side["corner"]["exact"].text, side["left_end"].value
        yield side["right_end"].value
        yield side["long_point"].length if side["long_point"].given else None
    yield coffer["crown_meets"].value


def _cut_pieces(coffer: Node) -> Iterator[PieceFacts]:
    for number, side in enumerate(_sides(coffer), start=1):
        if side["long_point"].given:
            ends = side["left_end"].text, side["right_end"].text
            lengths = side["long_point"].length, side["short_point"].length
            # Where nothing is left of an edge there is no piece.
            if min(lengths) > 0:
                yield PieceFacts(str(number), 1, ends, *lengths)
