"""A take-off as tables: for a spreadsheet, a saw's list, or an estimate."""

from collections.abc import Iterable, Iterator
from enum import StrEnum

from lacunar.exchange.csv_table import Cell, Table, length_cells, mark_cells
from lacunar.exchange.length_json import decimal_number
from lacunar.exchange.take_off_json import PooledTakeOff
from lacunar.layout.names import first_few
from lacunar.layout.records import Caution
from lacunar.measure.angle import Angle
from lacunar.measure.figure import LengthFigure, NumberFigure
from lacunar.measure.length import Length
from lacunar.measure.rounding import Step, round_to
from lacunar.takeoff.part_records import Part, PartEnd


class TakeOffTable(StrEnum):
    """The tables of a take-off."""

    PARTS = "parts"
    PLACES = "places"
    QUANTITIES = "quantities"
    CEILINGS = "ceilings"
    ASSUMPTIONS = "assumptions"
    CAUTIONS = "cautions"


def sized_names(*names: str) -> tuple[str, ...]:
    """Three columns for each length: as a tape reads it, in inches, in millimeters."""
    return tuple(f"{name}{unit}" for name in names for unit in ("", "_in", "_mm"))


_ENDS = tuple(
    f"{end}_{what}" for end in ("left", "right") for what in ("cut", "angle_deg", "corner_deg")
)
HEADERS = {
    TakeOffTable.PARTS: (
        *("mark", "kind", "name", "quantity", "material"),
        *sized_names("thickness", "width", "length", "short_length", "cut_width", "cut_length"),
        *_ENDS,
        *sized_names("left_notch_along", "left_notch_up", "right_notch_along", "right_notch_up"),
        *sized_names("left_width", "right_width"),
        *("mitred_edges", "face", "grain", "tapered", "where"),
    ),
    TakeOffTable.PLACES: (
        *("mark", "ceiling", "ceiling_name", "of", "at", "quantity"),
        *sized_names("start", "end"),
    ),
    TakeOffTable.QUANTITIES: (
        *("kind", "of", "used_for", "unit", "need", "waste", "with_waste"),
        *("metric_unit", "metric_need", "metric_with_waste", "rule"),
    ),
    TakeOffTable.CEILINGS: ("ceiling", "name", "coffers", "digest"),
    TakeOffTable.ASSUMPTIONS: ("ceiling", "pointer", "value", "reason"),
    TakeOffTable.CAUTIONS: ("code", "text", "figures"),
}


def take_off_table(pooled: PooledTakeOff, which: TakeOffTable) -> Table:
    """Turn a take-off into one of its tables."""
    rows = {
        TakeOffTable.PARTS: _parts,
        TakeOffTable.PLACES: _places,
        TakeOffTable.QUANTITIES: _quantities,
        TakeOffTable.CEILINGS: ceiling_rows,
        TakeOffTable.ASSUMPTIONS: _assumptions,
        TakeOffTable.CAUTIONS: _cautions,
    }
    return Table(which.value.capitalize(), HEADERS[which], tuple(rows[which](pooled)))


def size_cells(length: LengthFigure | Length | None, step: Step) -> tuple[Cell, Cell, Cell]:
    """A length as a tape reads it, then in decimals without that rounding."""
    if length is None:
        return None, None, None
    exact = length if isinstance(length, Length) else length.value
    text, _, _ = mark_cells(round_to(exact, step), step)
    _, in_inches, in_millimeters = length_cells(exact, step.units)
    return text, in_inches, in_millimeters


def _parts(pooled: PooledTakeOff) -> Iterator[tuple[Cell, ...]]:
    step = pooled.step
    several = len(pooled.pool) > 1
    for part in pooled.taken.parts:
        sizes = (
            *(part.thickness, part.width, part.length),
            *(part.short_length, part.cut_width, part.cut_length),
        )
        notches = (
            *(part.left.notch_along, part.left.notch_up),
            *(part.right.notch_along, part.right.notch_up),
            *(part.left.width, part.right.width),
        )
        yield (
            *(part.mark, part.kind.value, part.name, part.quantity, part.material.name),
            *(cell for size in sizes for cell in size_cells(size, step)),
            *(cell for end in (part.left, part.right) for cell in _end(end)),
            *(cell for size in notches for cell in size_cells(size, step)),
            *(part.mitred_edges, part.face and part.face.value, part.grain.value),
            "yes" if part.tapered else "no",
            _where(part, several=several),
        )


def _end(end: PartEnd) -> tuple[Cell, Cell, Cell]:
    return end.cut.value, _degrees(end.angle), _degrees(end.corner)


def _degrees(angle: Angle | None) -> Cell:
    return None if angle is None else decimal_number(angle.degrees)


def _where(part: Part, *, several: bool) -> str:
    """The ids a part goes to, a few of them; of several ceilings, each with its number."""
    ids = {
        f"{place.ceiling}:{each}" if several else each: None
        for place in part.places
        for each in place.of
    }
    return first_few(list(ids))


def _places(pooled: PooledTakeOff) -> Iterator[tuple[Cell, ...]]:
    names = {ceiling.number: ceiling.name for ceiling in pooled.taken.ceilings}
    for part in pooled.taken.parts:
        for place in part.places:
            yield (
                *(part.mark, place.ceiling, names[place.ceiling]),
                *(" ".join(place.of), place.at, place.quantity),
                *size_cells(place.start, pooled.step),
                *size_cells(place.end, pooled.step),
            )


def _quantities(pooled: PooledTakeOff) -> Iterator[tuple[Cell, ...]]:
    for each in pooled.taken.quantities:
        yield (
            *(each.kind.value, each.of, each.used_for.value, each.unit.value),
            *(number_cell(figure) for figure in (each.need, each.waste, each.with_waste)),
            each.metric_unit and each.metric_unit.value,
            *(number_cell(figure) for figure in (each.metric_need, each.metric_with_waste)),
            each.need.rule.name,
        )


def number_cell(figure: NumberFigure | None) -> Cell:
    """A number in decimals."""
    return None if figure is None else decimal_number(figure.value)


def ceiling_rows(pooled: PooledTakeOff) -> Iterator[tuple[Cell, ...]]:
    """Ceilings, a row to each."""
    for taken, asked in zip(pooled.taken.ceilings, pooled.pool, strict=True):
        yield taken.number, taken.name, taken.coffers, asked.digest


def _assumptions(pooled: PooledTakeOff) -> Iterator[tuple[Cell, ...]]:
    for taken, asked in zip(pooled.taken.ceilings, pooled.pool, strict=True):
        for each in asked.assumptions:
            yield taken.number, each.pointer, told_cell(each.value, pooled.step), each.reason


def _cautions(pooled: PooledTakeOff) -> Iterator[tuple[Cell, ...]]:
    return caution_rows(pooled.taken.cautions, pooled.step)


def caution_rows(cautions: Iterable[Caution], step: Step) -> Iterator[tuple[Cell, ...]]:
    """Cautions, a row to each."""
    for caution in cautions:
        told = (f"{name} {told_cell(each, step)}" for name, each in caution.figures.items())
        yield caution.code, caution.text, "; ".join(told)


def told_cell(value: Length | int | str, step: Step) -> str:
    """A value as text, lengths as a tape reads them."""
    return str(size_cells(value, step)[0]) if isinstance(value, Length) else str(value)
