"""Quantities with their units, and how needs, waste and metric figures follow from each other."""

import re
from collections.abc import Callable, Mapping, Sequence
from dataclasses import dataclass
from enum import StrEnum
from fractions import Fraction

from lacunar.measure.figure import NumberFigure, Operand, Rule
from lacunar.measure.length import Length
from lacunar.model.take_off import LITERS_IN_GALLON, SQUARE_METERS_IN_SQUARE_FOOT
from lacunar.takeoff.part_records import Material

FOOT = Length.of_feet(1)
INCH = Length.of_inches(1)
# 144 cubic inches; an inch is 0.0254 m exactly.
CUBIC_METERS_IN_BOARD_FOOT = 144 * Fraction(254, 10000) ** 3

WASTE = Rule("waste: a share of what is needed", "need * share")
WITH_WASTE = Rule("needed and waste together", "need + waste")
METRIC = Rule("the same in metric units", "amount * metric_each")


class QuantityKind(StrEnum):
    """What is counted."""

    LINEAL = "lineal"
    BOARD_FEET = "board_feet"
    SHEET_AREA = "sheet_area"
    BOARD_COVERAGE = "board_coverage"
    BOARD_AREA = "board_area"
    FASTENERS = "fasteners"
    ADHESIVE = "adhesive"
    INSULATION = "insulation"
    PAINTED_AREA = "painted_area"
    PRIMER = "primer"
    PAINT = "paint"


class UsedFor(StrEnum):
    """What a quantity goes into."""

    BEAMS = "beams"
    FRAMING = "framing"
    MOULDINGS = "mouldings"
    PANELS = "panels"
    BOARDS = "boards"
    SKIN = "skin"
    BACKING = "backing"
    SIDES = "sides"
    BOTTOMS = "bottoms"
    UPPER_BOARDS = "upper_boards"
    CROWN = "crown"
    FLAT_MOULDINGS = "flat_mouldings"
    COFFERS = "coffers"
    ROOM = "room"
    ALL = "all"


class QuantityUnit(StrEnum):
    """What a quantity is told in: board feet are 144 cubic inches, gallons US gallons."""

    FOOT = "ft"
    BOARD_FOOT = "board_ft"
    SQUARE_FOOT = "ft2"
    COUNT = "count"
    CARTRIDGE = "cartridge"
    GALLON = "gal"


class MetricUnit(StrEnum):
    """What the same is told in beside it."""

    METER = "m"
    CUBIC_METER = "m3"
    SQUARE_METER = "m2"
    LITER = "L"


_METRIC: Mapping[QuantityUnit, tuple[MetricUnit, Fraction]] = {
    QuantityUnit.FOOT: (MetricUnit.METER, Fraction(3048, 10000)),
    QuantityUnit.BOARD_FOOT: (MetricUnit.CUBIC_METER, CUBIC_METERS_IN_BOARD_FOOT),
    QuantityUnit.SQUARE_FOOT: (MetricUnit.SQUARE_METER, SQUARE_METERS_IN_SQUARE_FOOT),
    QuantityUnit.GALLON: (MetricUnit.LITER, LITERS_IN_GALLON),
}


@dataclass(frozen=True, slots=True)
class Item:
    """What a quantity is of: its kind, name, use, unit, and the material where it is one."""

    kind: QuantityKind
    of: str
    used_for: UsedFor
    unit: QuantityUnit
    material: Material | None = None

    @property
    def key(self) -> tuple[object, ...]:
        """Equal for what is added up when ceilings are pooled."""
        material = (self.of,) if self.material is None else self.material.key
        return self.kind, self.used_for, self.unit, *material


@dataclass(frozen=True, slots=True)
class Quantity:
    """How much is needed of something, and how much is added for waste.

    Amounts are numbers of `unit`, and of `metric_unit` where it has one; none is rounded up to what
    is sold.
    """

    kind: QuantityKind
    of: str
    used_for: UsedFor
    material: Material | None
    unit: QuantityUnit
    need: NumberFigure
    waste: NumberFigure
    with_waste: NumberFigure
    metric_unit: MetricUnit | None
    metric_need: NumberFigure | None
    metric_with_waste: NumberFigure | None


def _gives(rule: Rule, after: NumberFigure) -> Callable[..., NumberFigure]:
    """The rule, whose figures are approximate where what they follow from is."""
    return rule.approximates if after.approximate else rule.gives


def needed(item: Item, need: NumberFigure, share: Fraction) -> Quantity:
    """Turn a need and its share of waste into a quantity."""
    waste = _gives(WASTE, need)(need.value * share, need=need.value, share=share)
    return with_waste(item, need, waste)


def with_waste(item: Item, need: NumberFigure, waste: NumberFigure) -> Quantity:
    """Turn a need and its waste, both in the item's unit, into a quantity."""
    both = _gives(WITH_WASTE, need)(need.value + waste.value, need=need.value, waste=waste.value)
    return Quantity(
        kind=item.kind,
        of=item.of,
        used_for=item.used_for,
        material=item.material,
        unit=item.unit,
        need=need,
        waste=waste,
        with_waste=both,
        metric_unit=metric_unit(item.unit),
        metric_need=in_metric(item.unit, need),
        metric_with_waste=in_metric(item.unit, both),
    )


def metric_unit(unit: QuantityUnit) -> MetricUnit | None:
    """The metric unit that is told beside a unit; None where there is none."""
    return _METRIC[unit][0] if unit in _METRIC else None


def in_metric(unit: QuantityUnit, amount: NumberFigure) -> NumberFigure | None:
    """An amount in the metric unit that is told beside its own; None where there is none."""
    if unit not in _METRIC:
        return None
    each = _METRIC[unit][1]
    return _gives(METRIC, amount)(amount.value * each, amount=amount.value, metric_each=each)


_NAME = re.compile(r"\b[a-z]+(?:_[a-z]+)*\b(?!\()")


@dataclass(frozen=True, slots=True)
class Terms:
    """Terms of one form that are added up, such as `count * length`, each with its operands."""

    form: str
    rows: Sequence[Mapping[str, Operand]]

    def figure(
        self, name: str, rest: str, value: Fraction, *, approximate: bool = False, **others: Operand
    ) -> NumberFigure:
        """The sum of all terms, and what is done with it, as a figure.

        Parameters: `name` of the rule; `rest` of its formula after the sum; `value`, what both
        come to; `others`, the operands of the rest. Operands of terms are numbered.

        >>> feet = Terms("count * length", [{"count": 2, "length": FOOT * 3}])
        >>> feet.figure("feet", " / foot", Fraction(6), foot=FOOT).rule.formula
        '(count_1 * length_1) / foot'
        """
        formula = " + ".join(
            _NAME.sub(rf"\g<0>_{number}", self.form) for number in range(1, len(self.rows) + 1)
        )
        operands = {
            f"{each}_{number}": operand
            for number, row in enumerate(self.rows, start=1)
            for each, operand in row.items()
        }
        rule = Rule(name, f"({formula}){rest}")
        gives = rule.approximates if approximate else rule.gives
        return gives(value, **operands, **others)
