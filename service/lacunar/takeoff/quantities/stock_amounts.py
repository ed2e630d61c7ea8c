"""Stock: feet of all that is sold by the length, board feet, areas of sheets, boards by cover."""

from collections.abc import Iterator, Mapping, Sequence
from fractions import Fraction

from lacunar.layout.records import Layout
from lacunar.measure.figure import NumberFigure, Operand, Rule
from lacunar.measure.length import ZERO, Length
from lacunar.model.stock import size_name
from lacunar.model.take_off import TakeOff
from lacunar.takeoff.part_records import Material, MaterialKind, Part, PartKind
from lacunar.takeoff.quantities.quantity_records import (
    FOOT,
    INCH,
    Item,
    Quantity,
    QuantityKind,
    QuantityUnit,
    Terms,
    UsedFor,
    needed,
)

BOARD_FEET = Rule(
    "board feet: nominal thickness, counted as 1 in where it is less, by nominal width by length",
    "length * max(thickness, inch) * width / (inch * foot * foot)",
)
COVERAGE = Rule("feet of boards by the rule of coverage: area over cover", "coverage / foot")
COVERED = Rule("area that boards cover", "coverage * cover / (foot * foot)")

USED_FOR: Mapping[PartKind, UsedFor] = {
    PartKind.SIDE: UsedFor.BEAMS,
    PartKind.BOTTOM: UsedFor.BEAMS,
    PartKind.UPPER_BOARD: UsedFor.BEAMS,
    PartKind.BACKING: UsedFor.FRAMING,
    PartKind.CLEAT: UsedFor.FRAMING,
    PartKind.BLOCKING: UsedFor.FRAMING,
    PartKind.SEAM_STRIP: UsedFor.FRAMING,
    PartKind.NAILER: UsedFor.FRAMING,
    PartKind.CROWN: UsedFor.MOULDINGS,
    PartKind.FLAT_MOULDING: UsedFor.MOULDINGS,
    PartKind.PANEL: UsedFor.PANELS,
    PartKind.BOARD: UsedFor.BOARDS,
}


def share_of_waste(take_off: TakeOff, used_for: UsedFor) -> Fraction:
    """The share of waste of what is sold by the length."""
    waste = take_off.waste
    return {
        UsedFor.BEAMS: waste.beams,
        UsedFor.FRAMING: waste.framing,
        UsedFor.MOULDINGS: waste.mouldings,
        UsedFor.BOARDS: waste.boards,
    }[used_for]


def board_feet(thickness: Length, width: Length, length: Length) -> NumberFigure:
    """Turn nominal sizes and a length into board feet.

    Formula: T W L / 144 cubic inches, T at least 1 in. Valid for nominal or rough sizes, by which
    lumber is sold. Source: the rule of hardwood grading, as suppliers quote it.

    >>> inch = Length.of_inches
    >>> board_feet(inch(5) / 4, inch(6), inch(120)).value, board_feet(inch(2), inch(4), FOOT).value
    (Fraction(25, 4), Fraction(2, 3))
    """
    feet = (length / FOOT) * (max(thickness, INCH) / INCH) * (width / FOOT)
    return BOARD_FEET.gives(
        feet, length=length, thickness=thickness, inch=INCH, width=width, foot=FOOT
    )


def stock_amounts(layout: Layout, parts: Sequence[Part]) -> Iterator[Quantity]:
    """Turn a ceiling's parts into how much stock they need, allowances in it.

    What is ripped from stock takes the whole width of it: two parts side by side are found when
    parts are laid out in sticks.
    """
    grouped: dict[tuple[object, ...], list[Part]] = {}
    for part in parts:
        grouped.setdefault((part.material.key, USED_FOR[part.kind]), []).append(part)
    for group in grouped.values():
        material, used_for = group[0].material, USED_FOR[group[0].kind]
        if material.kind is MaterialKind.SHEET:
            yield _sheet_area(layout, group, used_for)
        else:
            yield from _lineal(layout, group, used_for)
    yield from _coverage(layout)


def _lineal(layout: Layout, group: Sequence[Part], used_for: UsedFor) -> Iterator[Quantity]:
    material, share = group[0].material, share_of_waste(layout.ceiling.take_off, used_for)
    counted: dict[Length, int] = {}
    for part in group:
        counted[part.cut_length.value] = counted.get(part.cut_length.value, 0) + part.quantity
    rows: list[Mapping[str, Operand]] = [
        {"count": count, "length": length} for length, count in counted.items()
    ]
    total = sum((length * count for length, count in counted.items()), ZERO)
    approximate = any(part.cut_length.approximate for part in group)
    feet = Terms("count * length", rows).figure(
        "feet of stock: the lengths of all parts",
        " / foot",
        total / FOOT,
        approximate=approximate,
        foot=FOOT,
    )
    item = Item(QuantityKind.LINEAL, material.name, used_for, QuantityUnit.FOOT, material)
    yield needed(item, feet, share)
    if material.nominal_thickness is not None and material.nominal_width is not None:
        measured = board_feet(material.nominal_thickness, material.nominal_width, total)
        item = Item(
            QuantityKind.BOARD_FEET, material.name, used_for, QuantityUnit.BOARD_FOOT, material
        )
        yield needed(item, measured, share)


def _sheet_area(layout: Layout, group: Sequence[Part], used_for: UsedFor) -> Quantity:
    material: Material = group[0].material
    counted: dict[tuple[Length, Length], int] = {}
    for part in group:
        if part.cut_width is None:
            raise ValueError(f"{part.mark} is cut from a sheet and has no width")
        size = part.cut_length.value, part.cut_width.value
        counted[size] = counted.get(size, 0) + part.quantity
    rows: list[Mapping[str, Operand]] = [
        {"count": count, "length": length, "width": width}
        for (length, width), count in counted.items()
    ]
    area = sum(
        ((length / FOOT) * (width / FOOT) * count for (length, width), count in counted.items()),
        Fraction(0),
    )
    need = Terms("count * length * width", rows).figure(
        "area of sheets: that of all parts",
        " / (foot * foot)",
        area,
        approximate=any(part.cut_length.approximate for part in group),
        foot=FOOT,
    )
    item = Item(
        QuantityKind.SHEET_AREA, material.name, used_for, QuantityUnit.SQUARE_FOOT, material
    )
    return needed(item, need, layout.ceiling.take_off.waste.sheets)


def _coverage(layout: Layout) -> Iterator[Quantity]:
    """Boards as they are bought by the area: the layout's own figure of coverage."""
    boards = layout.boards
    if boards is None:
        return
    share = layout.ceiling.take_off.waste.boards
    units = layout.ceiling.units
    named = boards.nominal or size_name((boards.thickness, boards.overall_width.value), units)
    name = f"{named} boards, cover {size_name((boards.cover,), units)}"
    coverage, cover = boards.coverage.value, boards.cover
    rules = (COVERAGE, COVERED)
    feet, area = (
        rule.approximates if boards.coverage.approximate else rule.gives for rule in rules
    )
    yield needed(
        Item(QuantityKind.BOARD_COVERAGE, name, UsedFor.BOARDS, QuantityUnit.FOOT),
        feet(coverage / FOOT, coverage=coverage, foot=FOOT),
        share,
    )
    yield needed(
        Item(QuantityKind.BOARD_AREA, name, UsedFor.BOARDS, QuantityUnit.SQUARE_FOOT),
        area((coverage / FOOT) * (cover / FOOT), coverage=coverage, cover=cover, foot=FOOT),
        share,
    )
