"""Part marks: two letters for what a part is, and its number in the order of size."""

from collections.abc import Iterable, Mapping
from types import MappingProxyType

from lacunar.measure.figure import LengthFigure
from lacunar.takeoff.part_records import PartKind, Shape

# Two letters each, so that no mark is the id of a coffer (rows go up to BM), a wall or a beam.
LETTERS: Mapping[PartKind, str] = MappingProxyType(
    {
        PartKind.SIDE: "SD",
        PartKind.BOTTOM: "BT",
        PartKind.UPPER_BOARD: "UB",
        PartKind.BACKING: "BS",
        PartKind.CLEAT: "CT",
        PartKind.BLOCKING: "BX",
        PartKind.SEAM_STRIP: "SS",
        PartKind.CROWN: "CR",
        PartKind.FLAT_MOULDING: "FM",
        PartKind.NAILER: "NL",
        PartKind.PANEL: "PN",
        PartKind.BOARD: "PB",
    }
)
_ORDER = {kind: number for number, kind in enumerate(PartKind)}


def marked(shapes: Iterable[Shape]) -> list[tuple[str, Shape]]:
    """Turn the shapes of different parts into marks with their shapes, kind by kind.

    The longest is number 1; of those as long, the widest, then the thickest. What still is alike is
    told apart by material, ends and all else there is, so that the same parts always have the same
    marks, in whatever order they come and however many there are of each.
    """
    counted: dict[PartKind, int] = {}
    found: list[tuple[str, Shape]] = []
    for shape in sorted(shapes, key=_rank):
        counted[shape.kind] = counted.get(shape.kind, 0) + 1
        found.append((f"{LETTERS[shape.kind]}{counted[shape.kind]}", shape))
    return found


def _rank(shape: Shape) -> tuple[object, ...]:
    sizes = (shape.length, shape.width, shape.thickness, shape.short_length)
    return (
        _ORDER[shape.kind],
        tuple(_largest_first(size) for size in sizes),
        shape.name,
        tuple(_sortable(each) for each in shape.material.key),
        shape.left.key,
        shape.right.key,
        shape.mitred_edges,
        shape.face or "",
        shape.grain,
        shape.tapered,
        shape.length_allowance,
        shape.width_allowance,
        tuple((spot.x, spot.y) for spot in shape.corners),
    )


def _largest_first(size: LengthFigure | None) -> tuple[bool, object]:
    return size is None, 0 if size is None else -size.value


def _sortable(value: object) -> tuple[bool, object]:
    """What may be missing, in an order with what is not."""
    return value is not None, "" if value is None else value
