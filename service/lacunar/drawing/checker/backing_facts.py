"""What the layout's JSON says of joists and backing, in exact millimeters."""

from collections import Counter
from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from fractions import Fraction

from lacunar.drawing.checker.json_node import Node

STARTS = ("W1", "W4")
Strip = tuple[str, str]


@dataclass(frozen=True, slots=True)
class Faces:
    """Both faces of a line of backing along the run `on`; None where it lies along no run."""

    on: str
    low: Fraction | None
    high: Fraction | None


@dataclass(frozen=True, slots=True)
class LineFacts:
    """A line of backing: its middle along its run, how many blocks and fasteners it has."""

    on: str
    position: Fraction
    blocks: int
    fasteners: int


@dataclass(frozen=True, slots=True)
class ZoneFacts:
    """A ceiling item with its clearance, and the ids of what it meets."""

    id: str
    x: Fraction
    y: Fraction
    length: Fraction
    width: Fraction
    meets: frozenset[str]


@dataclass(frozen=True, slots=True)
class BackingFacts:
    """Joists by their ids, lines of backing by beam and side, pieces and forms counted.

    `sections` are the thickness, width and offset of each profile's backing; `joists_on` is the run
    that the centers of joists are along, empty where none are known; `walls` has that of each beam
    at a wall.
    """

    joists_on: str
    joist_width: Fraction
    joists: Mapping[str, Fraction]
    sections: Mapping[str, tuple[Fraction, Fraction, Fraction]]
    strips: Mapping[Strip, Faces]
    lines: Mapping[Strip, LineFacts]
    walls: Mapping[str, str]
    pieces: Counter[tuple[str, Fraction]]
    forms: Mapping[str, int]
    zones: tuple[ZoneFacts, ...]


def read_backing(root: Node) -> BackingFacts | None:
    """What is said of backing; None where nothing is."""
    if not root.has("backing") or not root.has("profiles"):
        return None
    node, joists = root["backing"], root["backing"]["joists"]
    profiles = {beam.text: each for each in root["profiles"] for beam in each["used_by"]}
    straight = not (root.has("followed") and root["followed"].given)
    strips = dict(_strips(root, profiles))
    forms = node["forms"]
    assert isinstance(forms.value, Mapping)
    return BackingFacts(
        joists_on=joists["on"].text if joists.given else "",
        joist_width=joists["width"].length if joists.given else Fraction(0),
        joists={
            each["id"].text: each["center"].length
            for each in (joists["joists"] if joists.given else ())
        },
        sections={
            each["id"].text: (
                part["thickness"].length,
                part["width"].length,
                each["backing_offset"].length,
            )
            for each in root["profiles"]
            for part in _backing_part(each)
        },
        strips=strips if straight else {at: Faces(f.on, None, None) for at, f in strips.items()},
        lines={(line["beam"].text, line["side"].text): _line(line) for line in node["lines"]},
        walls={beam["id"].text: beam["wall"].text for beam in root["wall_beams"]},
        pieces=Counter(_pieces(root, profiles)),
        forms={name: _count(forms[name]) for name in forms.value},
        zones=tuple(_zones(root)),
    )


def _count(node: Node) -> int:
    """A count that is told."""
    number = node["count"].value
    assert isinstance(number, int)
    return number


def _backing_part(profile: Node) -> Iterator[Node]:
    return (part for part in profile["parts"] if part["name"].text == "backing")


def _strips(root: Node, profiles: Mapping[str, Node]) -> Iterator[tuple[Strip, Faces]]:
    """Both faces of each line of backing, worked back from the finished faces."""
    for beam in root["beams"]:
        name, on, profile = beam["id"].text, beam["on"].text, profiles[beam["id"].text]
        near, far = (beam[side]["at_start"].length for side in ("near", "far"))
        member = beam["member"]
        backed = list(_backing_part(profile))
        if member.given and member["cleat"].length:
            cleat = member["cleat"].length
            side = next(iter(profile["parts"]))["thickness"].length
            yield (name, "near"), Faces(on, near + side, near + side + cleat)
            yield (name, "far"), Faces(on, far - side - cleat, far - side)
        if backed:
            offset = profile["backing_offset"].length
            yield (name, "middle"), Faces(on, near + offset, far - offset)
        elif not member.given:
            yield (name, "middle"), Faces(on, None, None)
    for beam in root["wall_beams"]:
        if beam["kind"].text != "soffit":
            yield (beam["id"].text, "middle"), _at_wall(beam, profiles[beam["id"].text])


def _at_wall(beam: Node, profile: Node) -> Faces:
    on = beam["on"].text
    for part in _backing_part(profile):
        offset, width = profile["backing_offset"].length, part["width"].length
        if beam["looks_as"].text in STARTS:
            face = beam["far"]["at_start"].length - offset
            return Faces(on, face - width, face)
        face = beam["near"]["at_start"].length + offset
        return Faces(on, face, face + width)
    return Faces(on, None, None)


def _line(node: Node) -> LineFacts:
    blocks = _count(node["blocks"]) if node["blocks"].given else 0
    driven = sum(_count(each["fasteners"]) for each in node["pieces"] if each["fasteners"].given)
    return LineFacts(node["on"].text, node["position"].length, blocks, driven)


def _pieces(root: Node, profiles: Mapping[str, Node]) -> Iterator[tuple[str, Fraction]]:
    """Each clear length of backing, by its profile."""
    for beam in (*root["beams"], *root["wall_beams"]):
        profile = profiles[beam["id"].text]
        if beam["kind"].text == "soffit":
            continue
        name, backed = profile["id"].text, any(True for _ in _backing_part(profile))
        member = beam["member"] if beam.has("member") else None
        for piece in beam["pieces"]:
            start, end = piece["start"].length, piece["end"].length
            if member is None or not member.given:
                yield from ((name, end - start),) if backed else ()
                continue
            first, last = member["start"].length, member["end"].length
            stretches = [(f"{name} CLEAT", first, last)] * 2 if member["cleat"].length else []
            stretches += [(name, start, first), (name, last, end)] if backed else []
            for of, low, high in stretches:
                low, high = max(low, start), min(high, end)
                if low < high:
                    yield of, high - low


def _zones(root: Node) -> Iterator[ZoneFacts]:
    for item in root["ceiling_items"]["items"] if root.has("ceiling_items") else ():
        clearance = item["clearance"].length * 2
        yield ZoneFacts(
            id=item["id"].text,
            x=item["x"].length,
            y=item["y"].length,
            length=item["length"].length + clearance,
            width=item["width"].length + clearance,
            meets=frozenset(each["id"].text for each in item["conflicts"]),
        )
