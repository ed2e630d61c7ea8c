"""Parts by what they are cut from: each material with its name, its parts, and how they are cut."""

from collections.abc import Sequence
from dataclasses import dataclass
from fractions import Fraction
from math import ceil

from lacunar.layout.beams.splices import Reach, with_scarfs
from lacunar.measure.angle import Angle
from lacunar.measure.length import ZERO, Length
from lacunar.measure.units import Units
from lacunar.model.cutting_limits import MITER
from lacunar.model.stock import size_name
from lacunar.takeoff.part_records import EndCut, Material, MaterialKind, Part, PartEnd, PartKind

# Pieces are planned as they are taped: rounded up, so that every plan can be cut.
TAPED = {
    Units.INCH: Length.of_inches(Fraction(1, 64)),
    Units.MILLIMETER: Length.of_millimeters(Fraction(1, 2)),
}
_SQUARE = Angle.of_degrees(0)
_RIGHT = Angle.of_degrees(90)
_POINTED = Angle.of_degrees(45)
# Joints that are seen are scarfed through the thickness at 45 degrees; hidden ones are butted.
_SEEN = {
    *(PartKind.SIDE, PartKind.BOTTOM, PartKind.UPPER_BOARD),
    *(PartKind.CROWN, PartKind.FLAT_MOULDING, PartKind.BOARD),
}


@dataclass(frozen=True, slots=True)
class CutMaterial:
    """A material by a name that no other one has, and all parts that are cut from it."""

    name: str
    material: Material
    parts: tuple[Part, ...]

    @property
    def is_sheet(self) -> bool:
        """Whether it is cut from sheets; else from what is sold by the length."""
        return self.material.kind is MaterialKind.SHEET

    @property
    def miter(self) -> Angle:
        """The most that any end is turned from a square cut: how wide a saw cut can be."""
        ends = (end for part in self.parts for end in (part.left, part.right))
        return max((min(_turned(end), MITER.most) for end in ends), default=_SQUARE)


@dataclass(frozen=True, slots=True)
class CutAs:
    """How a part is planned: as how many pieces that are joined, each so long and wide."""

    part: Part
    pieces_each: int
    length: Length
    width: Length | None


def cut_materials(parts: Sequence[Part], units: Units) -> tuple[CutMaterial, ...]:
    """Turn parts into what they are cut from, in the order of the parts.

    Materials of one name are told apart by their sizes, and where these are equal by a number.
    """
    grouped: dict[tuple[object, ...], list[Part]] = {}
    for part in parts:
        grouped.setdefault(part.material.key, []).append(part)
    groups = list(grouped.values())
    names = _names([group[0].material for group in groups], units)
    return tuple(
        CutMaterial(name, group[0].material, tuple(group))
        for name, group in zip(names, groups, strict=True)
    )


def _names(materials: Sequence[Material], units: Units) -> list[str]:
    plain = [material.name for material in materials]
    sized = [
        name if plain.count(name) == 1 else f"{name} {_size(material, units)}"
        for name, material in zip(plain, materials, strict=True)
    ]
    return [
        name if sized.count(name) == 1 else f"{name}, {sized[: place + 1].count(name)}"
        for place, name in enumerate(sized)
    ]


def _size(material: Material, units: Units) -> str:
    sizes = (material.thickness, material.width, material.length)
    sprung = (material.drop, material.projection)
    told = [size for size in (sprung if material.drop is not None else sizes) if size is not None]
    return size_name(told, units)


def _turned(end: PartEnd) -> Angle:
    """How far an end is turned from a square cut; a coped one is mitred first."""
    if end.corner is not None:
        return abs(_RIGHT - end.corner / 2)
    if end.cut is EndCut.POINTED:
        return _POINTED
    return abs(end.angle) if end.angle is not None else _SQUARE


def cut_as(part: Part, longest: Length, units: Units) -> CutAs | None:
    """A part as it is planned: whole, or where it is too long in the fewest equal pieces.

    Parameters: `longest`, the most that its stock has for one piece [length]. None where no stock
    is long enough for a joint.
    """
    length = part.cut_length.value
    width = None if part.cut_width is None else part.cut_width.value
    if length <= longest or part.kind is PartKind.PANEL:
        return CutAs(part, 1, taped(length, longest, units), width)
    seen = part.kind in _SEEN and part.thickness is not None
    lap = part.thickness.value if seen and part.thickness is not None else ZERO
    pieces = with_scarfs(Reach(ZERO, length), lap, longest)
    if pieces is None:
        return None
    return CutAs(part, len(pieces), taped(pieces[0].length, longest, units), width)


def taped(length: Length, most: Length, units: Units) -> Length:
    """A length rounded up to what a tape shows, but to no more than there is of stock.

    >>> taped(Length.of_inches(Fraction(143, 3)), Length.of_feet(8), Units.INCH)
    Length(3051/64 in)
    """
    step = TAPED[units]
    rounded = step * ceil(length / step)
    return rounded if rounded <= most or length > most else length
