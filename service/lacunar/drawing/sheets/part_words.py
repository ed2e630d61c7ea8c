"""Parts in the words of the bench: how ends are cut, what else is to be known, where each goes."""

import re
from collections.abc import Iterator, Mapping, Sequence
from itertools import groupby
from types import MappingProxyType

from lacunar.drawing.wording import SheetWording
from lacunar.measure.length import Length
from lacunar.takeoff.part_records import EndCut, Grain, Part, PartEnd, PartKind

KIND_TITLES: Mapping[PartKind, str] = MappingProxyType(
    {
        PartKind.SIDE: "SIDES OF BEAMS",
        PartKind.BOTTOM: "BOTTOMS OF BEAMS",
        PartKind.UPPER_BOARD: "UPPER BOARDS OF BEAMS",
        PartKind.BACKING: "BACKING",
        PartKind.CLEAT: "CLEATS",
        PartKind.BLOCKING: "BLOCKING",
        PartKind.SEAM_STRIP: "STRIPS BEHIND SEAMS",
        PartKind.CROWN: "CROWN",
        PartKind.FLAT_MOULDING: "FLAT MOULDINGS",
        PartKind.NAILER: "NAILERS",
        PartKind.PANEL: "PANELS",
        PartKind.BOARD: "BOARDS IN COFFERS",
    }
)
_CUTS: Mapping[EndCut, str] = MappingProxyType(
    {
        EndCut.SQUARE: "Square",
        EndCut.MITRED: "Mitred",
        EndCut.COPED: "Coped",
        EndCut.POINTED: "Pointed",
        EndCut.NOTCHED: "Notched",
        EndCut.SCARFED: "Scarfed",
        EndCut.ANGLED: "Angled",
    }
)
_ID = re.compile(r"(.*?)(\d+)")
IN_A_ROW = 3
"""From so many ids in a row on, they are told by the first and the last."""
MOST_TOLD = 14
"""More ids, or rows of them, than these are not told in a table's cell."""


def size_text(size: Length | None, wording: SheetWording) -> str:
    """A thickness or width as boards are told; a dash where there is none."""
    return "-" if size is None else wording.size(size)


def end_words(end: PartEnd, wording: SheetWording) -> str:
    """How an end is cut: `Mitred 45°`, `Coped, corner 90°`."""
    words = _CUTS[end.cut]
    if end.angle is not None:
        words += f" {end.angle.tenths}"
    if end.notch_along is not None and end.notch_up is not None:
        along, up = wording.detail(end.notch_along), wording.detail(end.notch_up)
        words += f" {along} along, {up} up"
    if end.corner is not None:
        words += f", corner {end.corner.tenths}"
    if end.width is not None:
        words += f", {wording.detail(end.width)} wide"
    return words


def remarks(part: Part) -> str:
    """What its sizes and ends leave unsaid of a part; empty where that is nothing."""
    return ", ".join(_remarks(part))


def _remarks(part: Part) -> Iterator[str]:
    if part.mitred_edges:
        edges = "edge" if part.mitred_edges == 1 else "edges"
        yield f"{part.mitred_edges} long {edges} mitred"
    if part.corners:
        yield f"cut to {len(part.corners)} corners"
    elif part.tapered:
        yield "tapered"
    if part.grain is Grain.EITHER:
        yield "grain either way"


def where_words(part: Part) -> str:
    """The beams or coffers a part goes to, shortly: `A1 to A4, B2`."""
    ids = {each for place in part.places for each in place.of}
    return in_rows(sorted(ids, key=_in_order))


def _in_order(name: str) -> tuple[int, str, int]:
    """Ids by what stands before their number, so that B9 comes before B10 and Z before AA."""
    letters, number = _parted(name)
    return len(letters), letters, number


def _parted(name: str) -> tuple[str, int]:
    match = _ID.fullmatch(name)
    return (match[1], int(match[2])) if match else (name, -1)


def in_rows(ids: Sequence[str]) -> str:
    """Ids in words, those whose numbers follow each other by the first and the last.

    >>> in_rows(["A1", "A2", "A3", "B1", "B2", "XB-2"])
    'A1 to A3, B1, B2, XB-2'
    """
    told = list(_rows(ids))
    more = len(told) - MOST_TOLD
    return ", ".join(told[:MOST_TOLD]) + (f" and {more} more" if more > 0 else "")


def _rows(ids: Sequence[str]) -> Iterator[str]:
    """Each row of ids, and each id that stands in none."""
    split = [_parted(name) for name in ids]
    placed = list(zip(ids, split, range(len(ids)), strict=True))
    for _, row in groupby(placed, key=lambda each: (each[1][0], each[1][1] - each[2])):
        names = [name for name, _, _ in row]
        if len(names) < IN_A_ROW:
            yield from names
        else:
            yield f"{names[0]} to {names[-1]}"
