"""Mouldings about a space between beams: cut at its ends, and in view along what is beyond."""

from collections.abc import Iterator
from dataclasses import dataclass

from lacunar.drawing.section.boards import rectangle_of
from lacunar.drawing.section.mouldings import crown_outline, flat_outline, standing_behind
from lacunar.drawing.section.records import Outline, SectionOf, SectionTrim
from lacunar.drawing.upright.cut import Bay, Behind, CutBeam, UprightCut
from lacunar.layout.panel_stack import panel_stack
from lacunar.layout.records import BeamProfile, Layout
from lacunar.measure.length import ZERO, Length
from lacunar.model.moulding import FlatPlace


@dataclass(frozen=True, slots=True)
class CutMoulding:
    """A moulding that is cut: its name, and its corners along the plane and below the ceiling."""

    name: str
    corners: Outline


def section_of(layout: Layout, profile: BeamProfile) -> SectionOf:
    """A profile as a section of it is told: with the panel and the mouldings that meet it."""
    trim = SectionTrim(layout.mouldings.crown, layout.ceiling.flat_mouldings)
    return SectionOf(0, profile, (), layout.ceiling.panel, trim)


def cut_mouldings(cut: UprightCut, bay: Bay) -> Iterator[CutMoulding]:
    """What is cut of mouldings at both ends of a space; nothing at columns or at no wall.

    Where a plane crosses no more than the tip of a coffer, mouldings are wider than the space:
    there they lie along the plane, and are seen and not cut.
    """
    for thing, face, way in ((bay.left, bay.near, 1), (bay.right, bay.far, -1)):
        if isinstance(thing, CutBeam):
            found = _on_side(section_of(cut.layout, thing.profile))
        elif thing is None and any(end.wall and end.at == face for end in cut.ends):
            found = _on_wall(cut)
        else:
            continue
        for name, corners in found:
            if max(out.inches for out, _ in corners) > (bay.far - bay.near).inches:
                continue
            yield CutMoulding(name, tuple((face + out * way, down) for out, down in corners))


def seen_edges(cut: UprightCut, behind: Behind) -> tuple[Length, ...]:
    """The edges seen along what is beyond a space, down from the ceiling: boards and mouldings.

    Of crown its back is hidden: what is seen are its highest and its lowest edge.
    """
    if behind.profile is None:
        upper, own = panel_stack(cut.layout.ceiling.panel).thickness, set[Length]()
        trims = _on_wall(cut)
    else:
        of = section_of(cut.layout, behind.profile)
        upper, lower = of.side_ends
        own, trims = {lower, behind.profile.drop.value}, _on_side(of)
    for _, corners in trims:
        downs = [down.inches for _, down in corners]
        own |= {Length(min(downs)), Length(max(downs))}
    return tuple(sorted((down for down in own if down > upper), key=lambda down: down.inches))


def _on_side(of: SectionOf) -> Iterator[tuple[str, Outline]]:
    """Each moulding on a beam's side: out from it and down from the ceiling."""
    for number, flat in enumerate(of.trim.flats):
        yield flat.name, flat_outline(of, number)
    if of.trim.crown is not None:
        yield "Crown", crown_outline(of, of.trim.crown)


def _on_wall(cut: UprightCut) -> Iterator[tuple[str, Outline]]:
    """Each moulding up against the panel at a bare wall, which has no lower edge for others."""
    ceiling, crown = cut.layout.ceiling, cut.layout.mouldings.crown
    upper = panel_stack(ceiling.panel).thickness
    flats = tuple(flat for flat in ceiling.flat_mouldings if flat.at is FlatPlace.CEILING)
    for number, flat in enumerate(flats):
        out = standing_behind(FlatPlace.CEILING, flats[:number])
        yield flat.name, rectangle_of(out, upper, flat.thickness, flat.width)
    if crown is not None:
        out = standing_behind(FlatPlace.CEILING, flats)
        corners = (
            (ZERO, crown.drop.value),
            (crown.projection.value, ZERO),
            (crown.back_projection.value, ZERO),
            (ZERO, crown.back_drop.value),
        )
        yield "Crown", tuple((out + x, upper + down) for x, down in corners)
