"""The boards of a beam that is cut across, its backing, and how far a panel reaches into it.

All lie from the beam's left face and down from the ceiling; of a beam at a wall, from the wall.
"""

from collections.abc import Mapping

from lacunar.drawing.section.records import Outline, SectionOf
from lacunar.layout.panel_stack import panel_stack
from lacunar.layout.records import ProfilePart
from lacunar.measure.length import ZERO, Length
from lacunar.model.beams import BottomJoint


def rectangle_of(x: Length, y: Length, width: Length, height: Length) -> Outline:
    """The outline of something square, from its upper left corner."""
    return ((x, y), (x + width, y), (x + width, y + height), (x, y + height))


def board_outlines(of: SectionOf) -> Mapping[str, tuple[Outline, ...]]:
    """The outlines of each board by its name; mitred boards meet on the diagonal.

    A side comes twice, left and right, but at a wall. A soffit has no boards.
    """
    side, bottom = of.part("side"), of.part("bottom")
    if bottom is None:
        return {}
    if side is None:
        return _flat_outlines(of, bottom)
    if of.profile.bottom_joint is BottomJoint.MITRED:
        return _mitred_outlines(of, side, bottom)
    width, thickness = of.profile.finished_width.value, side.thickness.value
    top = panel_stack(of.panel).above_sides
    lefts = (ZERO, width - thickness)[of.profile.sides % 2 :]
    sides = tuple(rectangle_of(x, top, thickness, side.width.value) for x in lefts)
    return {"side": sides, "bottom": (_bottom_outline(of, thickness, bottom),)}


def _bottom_outline(of: SectionOf, side: Length, bottom: ProfilePart) -> Outline:
    """A bottom between the sides or under them; at a wall it starts there."""
    profile, thickness, width = of.profile, bottom.thickness.value, bottom.width.value
    top = profile.drop.value - thickness
    if profile.bottom_joint is BottomJoint.UNDER:
        out = ZERO if of.at_wall else (width - profile.finished_width.value) / 2
        return rectangle_of(-out, top, width, thickness)
    return rectangle_of(ZERO if of.at_wall else side, top - profile.reveal, width, thickness)


def _mitred_outlines(
    of: SectionOf, side: ProfilePart, bottom: ProfilePart
) -> Mapping[str, tuple[Outline, ...]]:
    width, drop, thickness = (
        of.profile.finished_width.value,
        of.profile.drop.value,
        side.thickness.value,
    )
    upper, top = drop - bottom.thickness.value, panel_stack(of.panel).above_sides
    right = ((width - thickness, top), (width, top), (width, drop), (width - thickness, upper))
    left = ((ZERO, top), (thickness, top), (thickness, upper), (ZERO, drop))
    inner = ZERO if of.at_wall else thickness
    under = ((inner, upper), (width - thickness, upper), (width, drop), (ZERO, drop))
    return {"side": (right,) if of.at_wall else (left, right), "bottom": (under,)}


def _flat_outlines(of: SectionOf, bottom: ProfilePart) -> Mapping[str, tuple[Outline, ...]]:
    """The face board of a flat beam, and its upper board where it has one."""
    width, upper = of.profile.finished_width.value, of.part("upper_board")
    top = of.profile.drop.value - bottom.thickness.value
    found = {"bottom": (_flat_outline(of, bottom, width, top),)}
    if upper is not None:
        top -= upper.thickness.value
        found["upper_board"] = (_flat_outline(of, upper, width, top),)
    return found


def _flat_outline(of: SectionOf, part: ProfilePart, width: Length, top: Length) -> Outline:
    x = ZERO if of.at_wall else (width - part.width.value) / 2
    return rectangle_of(x, top, part.width.value, part.thickness.value)


def backing_outline(of: SectionOf) -> Outline | None:
    """Backing under what it is fixed to: in the middle of a box, at a wall against that."""
    backing = of.part("backing")
    if backing is None:
        return None
    width, depth = backing.width.value, backing.thickness.value
    x = ZERO if of.at_wall else (of.profile.finished_width.value - width) / 2
    return rectangle_of(x, panel_stack(of.panel).above_backing, width, depth)


def panel_edges(of: SectionOf) -> tuple[Length, Length]:
    """Where the upper and the lower face of a panel lie below the ceiling."""
    return ZERO, panel_stack(of.panel).thickness


def panel_runs_through(of: SectionOf) -> bool:
    """Whether a panel goes on over the beam, because it is fitted before the backing."""
    return bool(panel_stack(of.panel).above_backing) and of.part("backing") is not None


def panel_inset(of: SectionOf) -> Length:
    """How far over the sides a panel goes: to the backing, less the gap, where it is fitted first.

    About a member, to the inner faces of the sides; else to their outer faces.
    """
    profile, backing = of.profile, of.part("backing")
    if not panel_stack(of.panel).above_sides or profile.inside_width is None:
        return ZERO
    if backing is None:
        return (profile.finished_width.value - profile.inside_width.value) / profile.sides
    return (profile.finished_width.value - backing.width.value) / profile.sides - of.panel.gap
