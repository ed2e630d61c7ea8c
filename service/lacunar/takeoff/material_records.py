"""Material lists: one line for each material to be ordered, with what to buy and what for.

Amounts of a line are numbers of its `unit`, unrounded; what is bought is whole sticks, sheets and
packs. Of every line, need, waste and what is left over are together what is bought and taken from
what is on hand.
"""

from dataclasses import dataclass
from enum import StrEnum

from lacunar.layout.records import Caution
from lacunar.measure.figure import NumberFigure
from lacunar.measure.length import Length
from lacunar.takeoff.cutting.asked import Proof
from lacunar.takeoff.cutting.plan_records import OneLength
from lacunar.takeoff.part_records import Material
from lacunar.takeoff.quantities.quantity_records import MetricUnit, QuantityUnit, UsedFor


class LineKind(StrEnum):
    """How a material is sold: `stick` and `board` by the length, the latter to fill coffers.

    `each` is what is counted, in boxes or one by one; `area` and `volume` are sold by these.
    """

    STICK = "stick"
    SHEET = "sheet"
    BOARD = "board"
    EACH = "each"
    AREA = "area"
    VOLUME = "volume"


@dataclass(frozen=True, slots=True)
class Bought:
    """So many of one length of stick, size of sheet, or pack.

    `name` is what one is called, such as `12'-0"` or `box of 1000`; `stock` its id in the cutting
    plan, empty where nothing is cut from it. `length` and `width` are None of packs, `width` of
    sticks. `holds` is how much of the line's unit one has. `cost` is of all of them together, as
    text with two decimals, None where their price was not told.
    """

    name: str
    stock: str
    length: Length | None
    width: Length | None
    holds: NumberFigure
    quantity: int
    cost: str | None


@dataclass(frozen=True, slots=True)
class PartOnLine:
    """A part that a line is for: its mark, how many there are, and of how many pieces each is.

    Parts longer than all stock there is are cut as several pieces that are joined.
    """

    mark: str
    quantity: int
    pieces_each: int


@dataclass(frozen=True, slots=True)
class LinePlan:
    """What is proven of the cutting plan behind a line; costs None where stock has no prices.

    `least_amount` is proven: no plan can do with less of the line's unit; None where stock has
    prices. `yield_percent` is how much of what is cut goes into parts. `one_length` is what buying
    one length alone would come to.
    """

    cost: str | None
    lower_bound: str | None
    least_amount: NumberFigure | None
    proven_best: bool
    proof: Proof | None
    yield_percent: NumberFigure
    one_length: tuple[OneLength, ...]


@dataclass(frozen=True, slots=True)
class MaterialLine:
    """A material to be ordered.

    `need` is what parts, or a quantity, take; `waste` what is used up beside it, saw cuts, trimmed
    ends and short offcuts, or a share that the spec states; `left_over` what can be used again:
    longer offcuts, or the rest of a pack. `amount` is what is bought, `on_hand` what is taken from
    offcuts that are there. `parts` are the parts behind the line, empty where a line is for the
    room as a whole. `plan` is None where nothing is cut. The metric amounts are `need` and `amount`
    in `metric_unit`, where the unit has one.
    """

    number: int
    kind: LineKind
    name: str
    material: Material | None
    used_for: tuple[UsedFor, ...]
    unit: QuantityUnit
    need: NumberFigure
    waste: NumberFigure
    left_over: NumberFigure
    on_hand: NumberFigure
    amount: NumberFigure
    board_feet: NumberFigure | None
    bought: tuple[Bought, ...]
    parts: tuple[PartOnLine, ...]
    plan: LinePlan | None
    metric_unit: MetricUnit | None
    metric_need: NumberFigure | None
    metric_amount: NumberFigure | None


@dataclass(frozen=True, slots=True)
class BoardDirection:
    """What boards of one material come to if they ran the other way in every coffer.

    `amount` and `other_amount` are feet bought, as asked for and the other way; costs are None
    where stock has no prices.
    """

    material: str
    amount: NumberFigure
    other_amount: NumberFigure
    cost: str | None
    other_cost: str | None


@dataclass(frozen=True, slots=True)
class MaterialList:
    """All that is to be ordered for a take-off, with what stock with prices costs in all.

    `cost` and `lower_bound` are those of all that is cut from stock, None where stock of one
    material has no prices.
    """

    lines: tuple[MaterialLine, ...]
    cost: str | None
    lower_bound: str | None
    directions: tuple[BoardDirection, ...]
    cautions: tuple[Caution, ...]
