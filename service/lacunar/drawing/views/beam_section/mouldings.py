"""Crown and flat mouldings in a beam's section, on both its sides, with their leaders."""

from collections.abc import Iterator

from lacunar.drawing import style
from lacunar.drawing.elements import Element, Polyline, Pt, Segments
from lacunar.drawing.hatching import diagonal_lines
from lacunar.drawing.section.cut import Cut
from lacunar.drawing.section.mouldings import crown_outline, flat_outline, on_side
from lacunar.drawing.section.records import Outline
from lacunar.drawing.wording import SheetWording
from lacunar.layout.moulding_records import CrownSection

CROWN_PITCH = 1.0


def moulding_reach(cut: Cut) -> float:
    """How far mouldings stand out from the side faces [mm of paper]."""
    return max((cut.on_paper(out) for outline in _outlines(cut) for out, _ in outline), default=0.0)


def drawn_mouldings(cut: Cut) -> tuple[Element, ...]:
    """Each moulding cut through, right of the box and mirrored left of it."""
    outlines = [
        cut.placed(on_side(cut.of, outline, right=right))
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
        yield _middle(cut, crown_outline(cut.of, trim.crown)), crown_words(trim.crown, wording)
    for number, flat in enumerate(trim.flats):
        size = f"{wording.size(flat.thickness)} x {wording.size(flat.width)}"
        yield _middle(cut, flat_outline(cut.of, number)), f"{flat.name.upper()} {size}"


def _outlines(cut: Cut) -> tuple[Outline, ...]:
    """The corners of each moulding: out from the side face, down from the ceiling."""
    trim = cut.of.trim
    crown = () if trim.crown is None else (crown_outline(cut.of, trim.crown),)
    return (*(flat_outline(cut.of, number) for number in range(len(trim.flats))), *crown)


def _middle(cut: Cut, outline: Outline) -> Pt:
    """A place inside a moulding on the right side."""
    spots = cut.placed(on_side(cut.of, outline, right=True))
    return Pt(sum(s.x for s in spots) / len(spots), sum(s.y for s in spots) / len(spots))
