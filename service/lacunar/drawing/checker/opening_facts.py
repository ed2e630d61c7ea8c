"""What the layout's JSON says of coffers as measured, in exact millimeters."""

from collections.abc import Iterator
from dataclasses import dataclass
from fractions import Fraction

from lacunar.drawing.checker.json_node import Node


@dataclass(frozen=True, slots=True)
class OpeningFacts:
    """A side, by its wall, or a diagonal of a coffer, as planned and as measured."""

    coffer: str
    what: str
    planned: Fraction
    measured: Fraction


def read_openings(root: Node) -> Iterator[OpeningFacts]:
    """All that was measured; nothing where the layout says nothing of it."""
    if not root.has("measured_openings") or not root["measured_openings"].given:
        return
    for opening in root["measured_openings"]["openings"]:
        for names, parts in (("toward", "sides"), ("name", "diagonals")):
            for part in opening[parts]:
                if part["measured"].given:
                    yield OpeningFacts(
                        opening["coffer"].text,
                        part[names].text,
                        part["planned"].length,
                        part["measured"].length,
                    )


def read_cut_openings(root: Node) -> Iterator[OpeningFacts]:
    """All that was measured of cut coffers: sides by number, diagonals by their corners."""
    if not root.has("outlined") or not root["outlined"].given:
        return
    for coffer in root["outlined"]["measured"]:
        name = coffer["coffer"].text
        for side in coffer["sides"]:
            if side["measured"].given:
                sizes = side["planned"].length, side["measured"].length
                yield OpeningFacts(name, str(side["side"].value), *sizes)
        for each in coffer["diagonals"]:
            what = f"{each['from_corner'].value}-{each['to_corner'].value}"
            yield OpeningFacts(name, what, each["planned"].length, each["measured"].length)
