"""Crown, its nailer and flat mouldings on a beam's side that is cut across.

Their outlines go out from the side's face and down from the ceiling. What is known of a moulding
are its sizes, not its profile: the outline is what it fills at most.
"""

from lacunar.drawing.section.boards import rectangle_of
from lacunar.drawing.section.records import Outline, SectionOf
from lacunar.layout.moulding_records import CrownSection, Nailer
from lacunar.measure.length import ZERO, Length
from lacunar.model.moulding import FlatMoulding, FlatPlace


def flat_outline(of: SectionOf, number: int) -> Outline:
    """A flat moulding by its number: up against the panel, or down to the side's lower edge."""
    upper, lower = of.side_ends
    flat = of.trim.flats[number]
    top = upper if flat.at is FlatPlace.CEILING else lower - flat.width
    out = standing_behind(flat.at, of.trim.flats[:number])
    return rectangle_of(out, top, flat.thickness, flat.width)


def crown_outline(of: SectionOf, crown: CrownSection) -> Outline:
    """From the side up to the ceiling: its face, and its back where that is not in the corner."""
    corners = (
        (ZERO, crown.drop.value),
        (crown.projection.value, ZERO),
        (crown.back_projection.value, ZERO),
        (ZERO, crown.back_drop.value),
    )
    return _in_corner(of, corners)


def nailer_outline(of: SectionOf, nailer: Nailer) -> Outline:
    """The strip in the corner behind the crown."""
    corners = ((ZERO, ZERO), (nailer.depth.value, ZERO), (ZERO, nailer.height.value))
    return _in_corner(of, corners)


def _in_corner(of: SectionOf, corners: Outline) -> Outline:
    """Corners from the corner of panel and side, before the flat mouldings at the ceiling."""
    upper, _ = of.side_ends
    out = standing_behind(FlatPlace.CEILING, of.trim.flats)
    return tuple((out + x, upper + y) for x, y in corners)


def standing_behind(place: FlatPlace, flats: tuple[FlatMoulding, ...]) -> Length:
    """How far those of the flat mouldings that are at a place stand out."""
    return sum((flat.thickness for flat in flats if flat.at is place), ZERO)


def on_side(of: SectionOf, outline: Outline, *, right: bool) -> Outline:
    """An outline out from a side's face as one of the section: on its right side, or its left."""
    width = of.profile.finished_width.value
    return tuple((width + out if right else -out, down) for out, down in outline)
