"""The line of a beam's section that is seen from the room: from the panel round to its middle."""

from collections.abc import Iterator
from itertools import pairwise

from lacunar.drawing.section.boards import board_outlines
from lacunar.drawing.section.mouldings import crown_outline, flat_outline
from lacunar.drawing.section.records import Corner, Outline, SectionOf
from lacunar.measure.length import ZERO, Length
from lacunar.model.beams import BottomJoint

STRAIGHT = 2


def room_side(of: SectionOf) -> Outline:
    """The right half of what is seen: mouldings, side, bottom, to the middle, or to the wall."""
    upper, _ = of.side_ends
    levels = {upper, of.profile.drop.value}
    shapes = [_sloped(outline) for outline in _outlines(of)]
    levels.update(y for shape in shapes for _, y in shape)
    steps = sorted(level for level in levels if upper <= level <= of.profile.drop.value)
    corners: list[Corner] = []
    for top, low in pairwise(steps):
        corners.extend(_outermost(shapes, top, low))
    return _turns([*corners, *_underside(of)])


def mirrored(of: SectionOf, line: Outline) -> Outline:
    """A line of the right half as one of the left half, the other way along."""
    width = of.profile.finished_width.value
    return tuple((width - x, y) for x, y in reversed(line))


def _outlines(of: SectionOf) -> Iterator[Outline]:
    """Everything with a face on the right: boards of the right half, and mouldings there."""
    width = of.profile.finished_width.value
    if of.part("bottom") is None:
        drop = of.profile.drop.value
        yield ((ZERO, ZERO), (width, ZERO), (width, drop), (ZERO, drop))
    for outlines in board_outlines(of).values():
        yield outlines[-1]
    mouldings = [flat_outline(of, number) for number in range(len(of.trim.flats))]
    if of.trim.crown is not None:
        mouldings.append(crown_outline(of, of.trim.crown)[:2])
    for outline in mouldings:
        yield tuple((width + out, down) for out, down in outline)


def _sloped(outline: Outline) -> tuple[Corner, Corner]:
    """The face of an outline that looks to the right, from its upper end to its lower one."""
    top, low = min(y for _, y in outline), max(y for _, y in outline)
    at_top, at_low = (max(x for x, y in outline if y == end) for end in (top, low))
    return (at_top, top), (at_low, low)


def _outermost(
    shapes: list[tuple[Corner, Corner]], top: Length, low: Length
) -> tuple[Corner, Corner] | tuple[()]:
    """The face furthest out between two heights at which any face starts or ends."""
    faces = [(_at(shape, top), _at(shape, low)) for shape in shapes if _spans(shape, top, low)]
    if not faces:
        return ()
    out = max(faces, key=lambda face: face[0] + face[1])
    return ((out[0], top), (out[1], low))


def _spans(shape: tuple[Corner, Corner], top: Length, low: Length) -> bool:
    return shape[0][1] <= top and low <= shape[1][1]


def _at(shape: tuple[Corner, Corner], y: Length) -> Length:
    """How far out a face is at a height."""
    (x1, y1), (x2, y2) = shape
    return x1 + (x2 - x1) * ((y - y1) / (y2 - y1))


def _underside(of: SectionOf) -> Iterator[Corner]:
    """From the lowest edge on the right to the beam's middle, or to the wall it stands at."""
    profile, side = of.profile, of.part("side")
    width, drop = profile.finished_width.value, profile.drop.value
    middle = ZERO if of.at_wall else width / 2
    if profile.bottom_joint is BottomJoint.BETWEEN and side is not None and profile.reveal:
        inner = width - side.thickness.value
        yield inner, drop
        yield inner, drop - profile.reveal
        yield middle, drop - profile.reveal
    else:
        yield middle, drop


def _turns(corners: list[Corner]) -> Outline:
    """The corners without those that the line goes straight through."""
    kept: list[Corner] = []
    for corner in corners:
        if kept and corner == kept[-1]:
            continue
        if len(kept) >= STRAIGHT and _straight(kept[-2], kept[-1], corner):
            kept.pop()
        kept.append(corner)
    return tuple(kept)


def _straight(one: Corner, amid: Corner, other: Corner) -> bool:
    """Whether three places lie on one line."""
    (x1, y1), (x2, y2), (x3, y3) = one, amid, other
    if x2 in (x1, x3):
        return x1 == x2 == x3
    return (y2 - y1) / (x2 - x1) == (y3 - y2) / (x3 - x2)
