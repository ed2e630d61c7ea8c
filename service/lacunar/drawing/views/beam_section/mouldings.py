"""Crown and flat mouldings in a beam's section, on both its sides, with their leaders."""

from collections.abc import Iterator

from lacunar.drawing import style
from lacunar.drawing.elements import Element, Polyline, Pt, Segments
from lacunar.drawing.hatching import diagonal_lines
from lacunar.drawing.views.beam_section.cut import Cut
from lacunar.drawing.wording import SheetWording
from lacunar.layout.moulding_records import CrownSection
from lacunar.measure.length import ZERO, Length
from lacunar.model.moulding import FlatMoulding, FlatPlace

CROWN_PITCH = 1.0

Corner = tuple[Length, Length]


def moulding_reach(cut: Cut) -> float:
    """How far mouldings stand out from the side faces [mm of paper]."""
    return max((cut.on_paper(out) for outline in _outlines(cut) for out, _ in outline), default=0.0)


def drawn_mouldings(cut: Cut) -> tuple[Element, ...]:
    """Each moulding cut through, right of the box and mirrored left of it."""
    outlines = [
        tuple(_placed(cut, corner, right=right) for corner in outline)
        for outline in _outlines(cut)
        for right in (True, False)
    ]
    grain = tuple(line for corners in outlines for line in diagonal_lines(corners, CROWN_PITCH))
    if not outlines:
        return ()
    return (
        Segments(grain, style.HATCH),
        *(Polyline(corners, style.CUT, closed=True) for corners in outlines),
    )


def crown_words(crown: CrownSection, wording: SheetWording) -> str:
    """A crown as it is ordered: its face and its spring, with what that is measured from."""
    spring = crown.spring_from_wall.value.tenths
    return f"CROWN {wording.size(crown.face.value)} AT {spring} FROM WALL"


def moulding_notes(cut: Cut, wording: SheetWording) -> Iterator[tuple[Pt, str]]:
    """What leaders point at on the right side, and the words at their other ends."""
    trim = cut.of.trim
    if trim.crown is not None:
        yield _middle(cut, _crown(cut, trim.crown)), crown_words(trim.crown, wording)
    for number, flat in enumerate(trim.flats):
        size = f"{wording.size(flat.thickness)} x {wording.size(flat.width)}"
        yield _middle(cut, _flat(cut, number)), f"{flat.name.upper()} {size}"


def _outlines(cut: Cut) -> tuple[tuple[Corner, ...], ...]:
    """The corners of each moulding: out from the side face, down from the ceiling."""
    trim = cut.of.trim
    crown = () if trim.crown is None else (_crown(cut, trim.crown),)
    return (*(_flat(cut, number) for number in range(len(trim.flats))), *crown)


def _flat(cut: Cut, number: int) -> tuple[Corner, ...]:
    """Up against the panel, or down to the lower edge of the side, on those before it."""
    upper, lower = cut.side_ends
    flat = cut.of.trim.flats[number]
    out = _behind(flat.at, cut.of.trim.flats[:number])
    top = upper if flat.at is FlatPlace.CEILING else lower - flat.width
    far, bottom = out + flat.thickness, top + flat.width
    return ((out, top), (far, top), (far, bottom), (out, bottom))


def _crown(cut: Cut, crown: CrownSection) -> tuple[Corner, ...]:
    """From the side up to the ceiling: its face, and its back where it is thinner than its drop."""
    upper, _ = cut.side_ends
    out = _behind(FlatPlace.CEILING, cut.of.trim.flats)
    corners = (
        (ZERO, crown.drop.value),
        (crown.projection.value, ZERO),
        (crown.back_projection.value, ZERO),
        (ZERO, crown.back_drop.value),
    )
    return tuple((out + x, upper + y) for x, y in corners)


def _behind(place: FlatPlace, flats: tuple[FlatMoulding, ...]) -> Length:
    """How far those of the flat mouldings that are at a place stand out."""
    return sum((flat.thickness for flat in flats if flat.at is place), ZERO)


def _placed(cut: Cut, corner: Corner, *, right: bool) -> Pt:
    out, down = corner
    width = cut.of.profile.finished_width.value
    return cut.spot(width + out if right else -out, down)


def _middle(cut: Cut, outline: tuple[Corner, ...]) -> Pt:
    """A place inside a moulding on the right side."""
    spots = [_placed(cut, corner, right=True) for corner in outline]
    return Pt(sum(s.x for s in spots) / len(spots), sum(s.y for s in spots) / len(spots))
