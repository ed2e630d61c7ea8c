"""What holds parts: fasteners of the backing, finish nails by spacing, adhesive by its bead."""

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass
from fractions import Fraction
from math import ceil

from lacunar.layout.records import Layout
from lacunar.measure.figure import Operand
from lacunar.measure.length import ZERO, Length
from lacunar.model.fixing import BetweenJoists
from lacunar.model.stock import size_name
from lacunar.takeoff.part_records import Part, PartKind
from lacunar.takeoff.quantities.quantity_records import (
    Item,
    Quantity,
    QuantityKind,
    QuantityUnit,
    Terms,
    UsedFor,
    needed,
)

FINISH_NAIL = "finish nail"
ANCHOR = "anchor for hollow ceilings"
ADHESIVE = "adhesive"

_ROW = "quantity * rows * (ceil(length / spacing) + 1)"
_ALL_ROUND = "quantity * (2 * ceil(length / spacing) + 2 * ceil(width / spacing))"


@dataclass(frozen=True, slots=True)
class _Nailed:
    """How a kind of part is nailed: what its nails are counted under, its spacing, its rows."""

    used_for: UsedFor
    spacing: str
    rows: int


# A side is nailed along its upper edge; a bottom, an upper board and crown along both edges; a flat
# moulding and a board that fills a coffer in one row (common practice, no source).
_NAILED: Mapping[PartKind, _Nailed] = {
    PartKind.SIDE: _Nailed(UsedFor.SIDES, "sides", 1),
    PartKind.BOTTOM: _Nailed(UsedFor.BOTTOMS, "bottoms", 2),
    PartKind.UPPER_BOARD: _Nailed(UsedFor.UPPER_BOARDS, "sides", 2),
    PartKind.CROWN: _Nailed(UsedFor.CROWN, "mouldings", 2),
    PartKind.FLAT_MOULDING: _Nailed(UsedFor.FLAT_MOULDINGS, "mouldings", 1),
    PartKind.BOARD: _Nailed(UsedFor.BOARDS, "boards", 1),
}


def fixings(layout: Layout, parts: Sequence[Part]) -> Iterator[Quantity]:
    """Turn a ceiling's backing and parts into fasteners and adhesive."""
    yield from _backing_fasteners(layout)
    for kind, nailed in _NAILED.items():
        group = [part for part in parts if part.kind is kind]
        if group:
            yield _nails(layout, group, nailed)
    panels = [part for part in parts if part.kind is PartKind.PANEL]
    if panels:
        yield _panel_nails(layout, panels)
    yield from _adhesive(layout, parts)


def _backing_fasteners(layout: Layout) -> Iterator[Quantity]:
    """Those the layout counts at each place of the backing, screws apart from anchors."""
    fixing = layout.ceiling.fixing
    counts: dict[str, list[int]] = {}
    for line in layout.backing.lines:
        for piece in line.pieces:
            if fixing is None or piece.fasteners is None:
                continue
            length = size_name((fixing.length,), layout.ceiling.units)
            screw = f"{fixing.fastener.replace('_', ' ')} {fixing.size}, {length}"
            name = ANCHOR if line.carried_by is BetweenJoists.ANCHORS else screw
            counts.setdefault(name, []).append(piece.fasteners.value)
    for name, each in counts.items():
        rows: list[Mapping[str, Operand]] = [{"piece": count} for count in each]
        need = Terms("piece", rows).figure(
            "fasteners: those of every piece of backing", "", Fraction(sum(each))
        )
        yield needed(_fasteners(name, UsedFor.BACKING), need, Fraction(0))


def _fasteners(name: str, used_for: UsedFor) -> Item:
    return Item(QuantityKind.FASTENERS, name, used_for, QuantityUnit.COUNT)


def _nails(layout: Layout, group: Sequence[Part], nailed: _Nailed) -> Quantity:
    spacing: Length = getattr(layout.ceiling.take_off.nail_spacing, nailed.spacing)
    counted: dict[Length, int] = {}
    for part in group:
        counted[part.length.value] = counted.get(part.length.value, 0) + part.quantity
    rows: list[Mapping[str, Operand]] = [
        {"quantity": count, "rows": nailed.rows, "length": length, "spacing": spacing}
        for length, count in counted.items()
    ]
    count = sum(
        count * nailed.rows * (ceil(length / spacing) + 1) for length, count in counted.items()
    )
    need = Terms(_ROW, rows).figure(
        "nails: in each row as many as keep within the spacing, and one more", "", Fraction(count)
    )
    return needed(_fasteners(FINISH_NAIL, nailed.used_for), need, Fraction(0))


def _panel_nails(layout: Layout, panels: Sequence[Part]) -> Quantity:
    spacing = layout.ceiling.take_off.nail_spacing.panels
    rows: list[Mapping[str, Operand]] = []
    count = 0
    for part in panels:
        length, width = _size(part)
        rows.append(
            {"quantity": part.quantity, "length": length, "spacing": spacing, "width": width}
        )
        count += part.quantity * 2 * (ceil(length / spacing) + ceil(width / spacing))
    need = Terms(_ALL_ROUND, rows).figure(
        "nails of panels: all round, as many as keep within the spacing", "", Fraction(count)
    )
    return needed(_fasteners(FINISH_NAIL, UsedFor.PANELS), need, Fraction(0))


def _size(part: Part) -> tuple[Length, Length]:
    if part.width is None:
        raise ValueError(f"{part.mark} is a panel and has no width")
    return part.length.value, part.width.value


def _adhesive(layout: Layout, parts: Sequence[Part]) -> Iterator[Quantity]:
    """Beads behind panels, and along each joint of a bottom with a side."""
    asked = layout.ceiling.take_off.adhesive
    panels = [part for part in parts if part.kind is PartKind.PANEL]
    share = layout.ceiling.take_off.waste.finish
    if panels:
        rows: list[Mapping[str, Operand]] = []
        area = Fraction(0)
        for part in panels:
            length, width = _size(part)
            rows.append({"quantity": part.quantity, "length": length, "width": width})
            area += part.quantity * (length / asked.bead_spacing) * width.inches
        need = Terms("quantity * length * width", rows).figure(
            "cartridges: panels' area over the spacing of beads and the bead of a cartridge",
            " / bead_spacing / bead_per_cartridge",
            area / asked.bead_per_cartridge.inches,
            approximate=any(part.length.approximate for part in panels),
            bead_spacing=asked.bead_spacing,
            bead_per_cartridge=asked.bead_per_cartridge,
        )
        yield needed(_cartridges(UsedFor.PANELS), need, share)
    yield from _joints(layout, share)


def _cartridges(used_for: UsedFor) -> Item:
    return Item(QuantityKind.ADHESIVE, ADHESIVE, used_for, QuantityUnit.CARTRIDGE)


def _joints(layout: Layout, share: Fraction) -> Iterator[Quantity]:
    bead = layout.ceiling.take_off.adhesive.bead_per_cartridge
    profiles = {profile.id: profile for profile in layout.profiles}
    rows: list[Mapping[str, Operand]] = []
    total = ZERO
    for cut in layout.pieces:
        profile = profiles[cut.profile]
        if cut.part == "bottom" and profile.bottom_joint is not None:
            length = cut.length.value
            rows.append({"quantity": cut.quantity, "sides": profile.sides, "length": length})
            total += length * (cut.quantity * profile.sides)
    if rows:
        need = Terms("quantity * sides * length", rows).figure(
            "cartridges: the joints of bottoms with sides over the bead of a cartridge",
            " / bead_per_cartridge",
            total / bead,
            bead_per_cartridge=bead,
        )
        yield needed(_cartridges(UsedFor.BOTTOMS), need, share)
