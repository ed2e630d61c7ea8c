"""All quantities of one ceiling, and those of several added up."""

from collections.abc import Iterable, Iterator, Sequence
from fractions import Fraction

from lacunar.layout.records import Caution, Layout
from lacunar.measure.figure import NumberFigure, Rule
from lacunar.takeoff.part_records import Part
from lacunar.takeoff.quantities.fixings import fixings
from lacunar.takeoff.quantities.quantity_records import Item, Quantity, QuantityKind, with_waste
from lacunar.takeoff.quantities.stock_amounts import stock_amounts
from lacunar.takeoff.quantities.surfaces import surfaces

_ORDER = {kind: number for number, kind in enumerate(QuantityKind)}


def quantities(layout: Layout, parts: Sequence[Part]) -> tuple[Quantity, ...]:
    """Turn a ceiling and its parts into all quantities, each by its own rule.

    Parameters: `layout`; `parts` of this ceiling alone.
    """
    found = (
        *stock_amounts(layout, parts),
        *fixings(layout, parts),
        *surfaces(layout, parts),
    )
    return tuple(sorted(found, key=lambda quantity: _ORDER[quantity.kind]))


def pooled_quantities(each: Iterable[Sequence[Quantity]]) -> tuple[Quantity, ...]:
    """Turn the quantities of several ceilings into those of all, equal items added up."""
    together: dict[tuple[object, ...], tuple[Item, list[Quantity]]] = {}
    for of_ceiling in each:
        for quantity in of_ceiling:
            item = _item(quantity)
            together.setdefault(item.key, (item, []))[1].append(quantity)
    found = (
        group[0] if len(group) == 1 else _added(item, group) for item, group in together.values()
    )
    return tuple(sorted(found, key=lambda quantity: _ORDER[quantity.kind]))


def _item(quantity: Quantity) -> Item:
    return Item(quantity.kind, quantity.of, quantity.used_for, quantity.unit, quantity.material)


def _added(item: Item, group: Sequence[Quantity]) -> Quantity:
    return with_waste(
        item,
        _sum("needed in all ceilings", [quantity.need for quantity in group]),
        _sum("waste in all ceilings", [quantity.waste for quantity in group]),
    )


def _sum(name: str, figures: Sequence[NumberFigure]) -> NumberFigure:
    named = {f"ceiling_{number}": figure.value for number, figure in enumerate(figures, start=1)}
    rule = Rule(name, " + ".join(named))
    gives = rule.approximates if any(figure.approximate for figure in figures) else rule.gives
    return gives(sum((figure.value for figure in figures), Fraction(0)), **named)


def quantity_cautions(number: int, layout: Layout) -> Iterator[Caution]:
    """What is not counted of a ceiling, because nobody said what it hangs from."""
    backed = any(part.name == "backing" for profile in layout.profiles for part in profile.parts)
    cased = any(beam.member is not None and beam.member.cleat for beam in layout.beams)
    if layout.ceiling.room.joists is None and (backed or cased):
        yield Caution(
            code="fasteners_not_counted",
            text="The joists are not told, so that neither fasteners of the backing nor blocks"
            " between joists are counted.",
            figures={"ceiling": number},
        )
