"""What the layout's JSON says of a crooked room that a sheet can be held against."""

from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from fractions import Fraction

from lacunar.drawing.checker.json_node import Node


@dataclass(frozen=True, slots=True)
class RunEndFacts:
    """A run at one of its ends: how far the start wall lies before the clear line, and the span."""

    before: Fraction
    span: Fraction


@dataclass(frozen=True, slots=True)
class StripFacts:
    """What a wall's strip takes up; `strip` is empty at a bare wall."""

    wall: str
    strip: str
    at_start: Fraction
    at_end: Fraction
    taper: Fraction
    scribe: Fraction
    widest: Fraction


@dataclass(frozen=True, slots=True)
class CrookedFacts:
    """A room out of square: its control wall, runs by name and end, strips, lengths surveyed.

    `control` is empty where the grid follows the walls, or is square to a member.

    `modes` has the least and the largest sides of coffers of each way of laying out.
    """

    control: str
    runs: Mapping[tuple[str, str], RunEndFacts]
    strips: tuple[StripFacts, ...]
    lengths: Mapping[str, Fraction]
    modes: Mapping[str, tuple[Fraction, ...]]


def read_crooked(root: Node) -> CrookedFacts | None:
    """Turn the layout's JSON into what is told of its being crooked; None where it is square."""
    if not root.has("crooked") or not root["crooked"].given:
        return None
    node = root["crooked"]
    if node["square"].value is True:
        return None
    survey = node["survey"]
    lengths = {wall["wall"].text: wall["length"].length for wall in survey["walls"]}
    lengths |= {name.upper(): survey[name].length for name in ("rising", "falling")}
    sides = ("shortest", "longest", "narrowest", "widest")
    return CrookedFacts(
        control=node["control"].text if node["control_by"].value == "wall" else "",
        runs=dict(_runs(node["runs"])),
        strips=tuple(_strip(wall) for wall in node["walls"]),
        lengths=lengths,
        modes={
            mode["mode"].text.replace("_", "-"): tuple(mode[side].length for side in sides)
            for mode in node["modes"]
        },
    )


def _runs(runs: Node) -> Iterator[tuple[tuple[str, str], RunEndFacts]]:
    for run in runs:
        for end in ("start", "end"):
            before, span = run[f"before_{end}"].length, run[f"span_at_{end}"].length
            yield (run["run"].text, end), RunEndFacts(before, span)


def _strip(wall: Node) -> StripFacts:
    lengths = (wall[n].length for n in ("at_start", "at_end", "taper", "scribe", "widest"))
    strip = wall["strip"].text if wall["strip"].given else ""
    return StripFacts(wall["wall"].text, strip, *lengths)
