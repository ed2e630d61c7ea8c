"""The marks that a take-off has for a part of a section, in whatever lengths it is cut."""

from collections.abc import Mapping, Sequence

from lacunar.drawing.sheets.blocks import listed
from lacunar.drawing.views.profile_detail import NamedPart
from lacunar.measure.length import Length
from lacunar.takeoff.part_records import Part, PartKind

KINDS: Mapping[str, PartKind] = {
    "side": PartKind.SIDE,
    "bottom": PartKind.BOTTOM,
    "upper_board": PartKind.UPPER_BOARD,
    "backing": PartKind.BACKING,
    "cleat": PartKind.CLEAT,
    "crown": PartKind.CROWN,
    "flat-moulding": PartKind.FLAT_MOULDING,
    "nailer": PartKind.NAILER,
}
MOST_MARKS = 6


def part_marks(part: NamedPart, taken: Sequence[Part]) -> str:
    """The marks of what has a part's kind and size, in words; empty where it is not taken off."""
    kind = KINDS.get(part.name)
    marks = [each.mark for each in taken if each.kind is kind and _alike(each, part)]
    if not marks:
        return ""
    told = listed(marks) if len(marks) <= MOST_MARKS else f"{marks[0]} to {marks[-1]}"
    return f"marked {told}"


def _alike(taken: Part, part: NamedPart) -> bool:
    """Whether both are as thick and as wide; of mouldings there is one of a name."""
    if taken.kind is PartKind.FLAT_MOULDING:
        return taken.name.upper() == part.words
    if taken.kind in (PartKind.CROWN, PartKind.NAILER):
        return True
    sizes: list[Length | None] = [
        None if each is None else each.value for each in (taken.thickness, taken.width)
    ]
    return sizes == [part.thickness, part.width]
