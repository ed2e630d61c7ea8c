"""Mouldings about a space between beams: cut at its ends, and in view along what is beyond."""

from collections.abc import Iterator
from dataclasses import dataclass

from lacunar.drawing.upright.boards import side_edges
from lacunar.drawing.upright.cut import Bay, Behind, CutBeam, CutColumn, UprightCut
from lacunar.layout.panel_stack import panel_stack
from lacunar.measure.length import ZERO, Length
from lacunar.model.moulding import FlatMoulding, FlatPlace

Corner = tuple[Length, Length]


@dataclass(frozen=True, slots=True)
class MouldingOutline:
    """A moulding that is cut: its name, and its corners along the plane and below the ceiling."""

    name: str
    corners: tuple[Corner, ...]


def cut_mouldings(cut: UprightCut, bay: Bay) -> Iterator[MouldingOutline]:
    """What is cut of mouldings at both ends of a space; nothing at columns or at no wall."""
    for thing, face, way in ((bay.left, bay.near, 1), (bay.right, bay.far, -1)):
        edges = _edges(cut, thing, face)
        for name, corners in _outlines(cut, edges) if edges is not None else ():
            yield MouldingOutline(name, tuple((face + out * way, down) for out, down in corners))


def seen_edges(cut: UprightCut, behind: Behind) -> tuple[Length, ...]:
    """The edges seen along what is beyond a space, down from the ceiling: boards and mouldings."""
    if behind.profile is None:
        upper, own = panel_stack(cut.layout.ceiling.panel).thickness, set[Length]()
        trims = _outlines(cut, (upper, None))
    else:
        upper, lower = side_edges(behind.profile)
        own = {lower, behind.profile.drop.value}
        trims = _outlines(cut, (upper, lower))
    # Of crown its back is hidden: what is seen are its highest and its lowest edge.
    for _, corners in trims:
        downs = [down.inches for _, down in corners]
        own |= {Length(min(downs)), Length(max(downs))}
    return tuple(sorted((down for down in own if down > upper), key=lambda down: down.inches))


def _edges(
    cut: UprightCut, thing: CutBeam | CutColumn | None, face: Length
) -> tuple[Length, Length | None] | None:
    """Where what is seen of a side starts and ends, down from the ceiling; of a wall, the start."""
    if isinstance(thing, CutBeam):
        return side_edges(thing.profile)
    if thing is None and any(end.wall and end.at == face for end in cut.ends):
        return panel_stack(cut.layout.ceiling.panel).thickness, None
    return None


def _outlines(
    cut: UprightCut, edges: tuple[Length, Length | None]
) -> Iterator[tuple[str, tuple[Corner, ...]]]:
    """Each moulding on one face: out from it and down from the ceiling.

    None goes along the lower edge of a bare wall, which has none.
    """
    upper, lower = edges
    flats = cut.layout.ceiling.flat_mouldings
    for number, flat in enumerate(flats):
        out = _behind(flat.at, flats[:number])
        if flat.at is FlatPlace.CEILING:
            top = upper
        elif lower is not None:
            top = lower - flat.width
        else:
            continue
        far, bottom = out + flat.thickness, top + flat.width
        yield flat.name, ((out, top), (far, top), (far, bottom), (out, bottom))
    crown = cut.layout.mouldings.crown
    if crown is not None:
        out = _behind(FlatPlace.CEILING, flats)
        corners = (
            (ZERO, crown.drop.value),
            (crown.projection.value, ZERO),
            (crown.back_projection.value, ZERO),
            (ZERO, crown.back_drop.value),
        )
        yield "Crown", tuple((out + x, upper + y) for x, y in corners)


def _behind(place: FlatPlace, flats: tuple[FlatMoulding, ...]) -> Length:
    """How far those of the flat mouldings that are at a place stand out."""
    return sum((flat.thickness for flat in flats if flat.at is place), ZERO)
