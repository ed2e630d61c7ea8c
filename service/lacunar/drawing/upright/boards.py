"""The boards of a beam's profile as outlines: across it from its near face, down from the ceiling.

What stands at a wall is told with the wall at its near face; whoever draws it turns it about.
"""

from collections.abc import Iterator
from dataclasses import dataclass
from typing import Literal

from lacunar.layout.panel_stack import PanelStack
from lacunar.layout.records import BeamProfile, ProfilePart
from lacunar.measure.length import ZERO, Length
from lacunar.model.beams import BottomJoint, FamilyProfile

BoardKind = Literal["side", "bottom", "backing", "upper_board", "soffit"]
Corner = tuple[Length, Length]


@dataclass(frozen=True, slots=True)
class BoardOutline:
    """One part of a profile: what it is, and its corners going round."""

    kind: BoardKind
    corners: tuple[Corner, ...]


def boards_of(profile: BeamProfile, stack: PanelStack) -> tuple[BoardOutline, ...]:
    """Turn a profile into the outlines of its boards, its backing first.

    A soffit is a plain block, since the spec says no more of it.
    """
    if profile.kind == "soffit":
        block = _rectangle(ZERO, ZERO, profile.finished_width.value, profile.drop.value)
        return (BoardOutline("soffit", block),)
    if profile.profile is FamilyProfile.FLAT:
        return tuple(_flat(profile))
    return (*_backing(profile, stack), *_sides(profile, stack), _bottom(profile))


def side_edges(profile: BeamProfile) -> tuple[Length, Length]:
    """Where what is seen of a side starts and ends, down from the ceiling [length]."""
    lower = profile.drop.value
    if profile.bottom_joint is BottomJoint.UNDER and profile.kind != "soffit":
        lower -= _part(profile, "bottom").thickness.value
    return lower - profile.exposed_side.value, lower


def _part(profile: BeamProfile, name: str) -> ProfilePart:
    return next(part for part in profile.parts if part.name == name)


def _rectangle(x: Length, y: Length, width: Length, height: Length) -> tuple[Corner, ...]:
    return ((x, y), (x + width, y), (x + width, y + height), (x, y + height))


def _flat(profile: BeamProfile) -> Iterator[BoardOutline]:
    """The face board, and the upper board where there is one; at a wall both start there."""
    width, at = profile.finished_width.value, profile.drop.value
    for kind in ("bottom", "upper_board"):
        for part in (each for each in profile.parts if each.name == kind):
            at -= part.thickness.value
            x = (width - part.width.value) / 2 if profile.sides > 1 else ZERO
            corners = _rectangle(x, at, part.width.value, part.thickness.value)
            yield BoardOutline("bottom" if kind == "bottom" else "upper_board", corners)


def _backing(profile: BeamProfile, stack: PanelStack) -> Iterator[BoardOutline]:
    for part in (each for each in profile.parts if each.name == "backing"):
        width = profile.finished_width.value
        x = (width - part.width.value) / 2 if profile.sides > 1 else ZERO
        corners = _rectangle(x, stack.above_backing, part.width.value, part.thickness.value)
        yield BoardOutline("backing", corners)


def _sides(profile: BeamProfile, stack: PanelStack) -> Iterator[BoardOutline]:
    """The side at the far face, and the one at the near face of a beam that has two."""
    side, width = _part(profile, "side"), profile.finished_width.value
    thick, tall, top = side.thickness.value, side.width.value, stack.above_sides
    mitre = _part(profile, "bottom").thickness.value
    if profile.bottom_joint is not BottomJoint.MITRED:
        mitre = ZERO
    low = top + tall
    far = ((width - thick, top), (width, top), (width, low), (width - thick, low - mitre))
    yield BoardOutline("side", far)
    if profile.sides > 1:
        yield BoardOutline("side", ((ZERO, top), (thick, top), (thick, low - mitre), (ZERO, low)))


def _bottom(profile: BeamProfile) -> BoardOutline:
    """The bottom between the sides, under them, or mitred to them."""
    bottom, side = _part(profile, "bottom"), _part(profile, "side").thickness.value
    width, drop, thick = profile.finished_width.value, profile.drop.value, bottom.thickness.value
    near = side if profile.sides > 1 else ZERO
    if profile.bottom_joint is BottomJoint.BETWEEN:
        top = drop - profile.reveal - thick
        return BoardOutline("bottom", _rectangle(near, top, width - side - near, thick))
    if profile.bottom_joint is BottomJoint.UNDER:
        x = (width - bottom.width.value) / 2 if profile.sides > 1 else ZERO
        return BoardOutline("bottom", _rectangle(x, drop - thick, bottom.width.value, thick))
    inner = drop - thick
    corners = ((near, inner), (width - side, inner), (width, drop), (ZERO, drop))
    return BoardOutline("bottom", corners)
