"""What the layout's JSON says that a picture and a cover can be held against, in millimeters."""

from collections.abc import Iterator, Mapping
from dataclasses import dataclass

from lacunar.drawing.checker.json_node import Node

Place = tuple[float, float]
Line = tuple[Place, Place]


@dataclass(frozen=True, slots=True)
class ProfileFacts:
    """How deep a beam's layers reach below the ceiling, and how far they are set in [mm]."""

    drop: float
    levels: tuple[float, ...]
    insets: tuple[float, ...]


@dataclass(frozen=True, slots=True)
class PictorialFacts:
    """One layout as bodies.

    `profiles` are by the ids of beams, `aslant` the faces of beams in a grid along the walls, by
    the same; `panel` is how far the panels' underside lies below the ceiling, `crown_drop` how far
    crown comes down from there, `crown_out` how far it comes out. `told` are the figures of a
    cover, by name, exact; `steps` the stages of fitting in their order.
    """

    profiles: Mapping[str, ProfileFacts]
    aslant: Mapping[str, tuple[Line, ...]]
    panel: float
    crown_drop: float
    crown_out: float
    told: Mapping[str, str]
    steps: tuple[str, ...]

    @property
    def deepest(self) -> float:
        """The deepest beam's drop."""
        return max((each.drop for each in self.profiles.values()), default=self.panel)


def read_pictorial(root: Node) -> PictorialFacts | None:
    """Turn the layout's JSON into what pictures are held against; None where it is a part."""
    if not root.has("fitting") or not root.has("heights"):
        return None
    ceiling, crown = root["ceiling"], root["mouldings"]["crown"]
    panel = ceiling["panel"]
    thick = 0.0 if panel["kind"].text == "existing" else _plain(panel["thickness"])
    return PictorialFacts(
        profiles={
            beam.text: _profile(profile)
            for profile in root["profiles"]
            for beam in profile["used_by"]
        },
        aslant=dict(_aslant(root)),
        panel=thick,
        crown_drop=float(crown["drop"].length) if crown.given else 0.0,
        crown_out=float(crown["projection"].length) if crown.given else 0.0,
        told=dict(_told(root)),
        steps=tuple(step["stage"].text for step in root["fitting"]["steps"]),
    )


def _plain(node: Node) -> float:
    """A length that stands there as text alone."""
    return float(node.exact_of(node.text))


def _profile(node: Node) -> ProfileFacts:
    drop, width = float(node["drop"].length), float(node["finished_width"].length)
    parts = {part["name"].text: part for part in node["parts"]}
    sides = len(range(int(str(node["sides"].value))))
    levels, insets = [drop], [0.0]
    if "bottom" in parts:
        levels.append(drop - float(parts["bottom"]["thickness"].length))
    for name in ("bottom", "upper_board"):
        if name in parts:
            insets.append((width - float(parts[name]["width"].length)) / sides)
    return ProfileFacts(drop, tuple(levels), tuple(insets))


def _aslant(root: Node) -> Iterator[tuple[str, tuple[Line, ...]]]:
    if not root["followed"].given:
        return
    for beam in root["followed"]["beams"]:
        faces = [piece[side] for piece in beam["pieces"] for side in ("near", "far")]
        lines = tuple((_spot(face["start"]), _spot(face["end"])) for face in faces)
        ends = tuple(
            (_spot(piece["near"][end]), _spot(piece["far"][end]))
            for piece in beam["pieces"]
            for end in ("start", "end")
        )
        yield beam["id"].text, (*lines, *ends)


def _spot(node: Node) -> Place:
    return float(node["x"].length), float(node["y"].length)


def _told(root: Node) -> Iterator[tuple[str, str]]:
    """The figures of a cover: what they are, and their exact values or counts."""
    for run in ("length", "width"):
        yield f"room-{run}", root["runs"][run]["span"]["at_start"]["exact"].text
    yield "height", root["ceiling"]["room"]["height"].text
    odd = root["outlined"]
    cut = list(odd["partial_coffers"]) if odd.given else []
    angled = list(odd["angled_beams"]) if odd.given else []
    yield "coffers", str(len([*root["coffers"], *cut]))
    yield "beams", str(len(list(root["beams"])))
    yield "wall-beams", str(len([*root["wall_beams"], *angled]))
    for profile in root["profiles"]:
        sizes = (profile[size]["exact"].text for size in ("finished_width", "drop"))
        yield profile["id"].text, " x ".join(sizes)
    yield "headroom", root["heights"]["worst_height"]["exact"].text
    yield "limit", root["heights"]["limit"]["exact"].text
    yield "units", root["ceiling"]["units"].text
    yield "step", root["ceiling"]["mark_to"].text
