"""One room's whole job with everything decided: what the layout starts from."""

from dataclasses import dataclass

from lacunar.measure.length import Length
from lacunar.measure.rounding import Step
from lacunar.measure.units import Units
from lacunar.model.beams import Beams
from lacunar.model.drawing import Drawing
from lacunar.model.fixing import Fixing
from lacunar.model.grid import Grid
from lacunar.model.moulding import Crown, FlatMoulding
from lacunar.model.openings import Openings
from lacunar.model.panel import Panel
from lacunar.model.room import Room
from lacunar.model.take_off import TakeOff


@dataclass(frozen=True, slots=True)
class Assumption:
    """Something the spec left open: where, what was taken for it, and why."""

    pointer: str
    value: Length | int | str
    reason: str


@dataclass(frozen=True, slots=True)
class StockRules:
    """What is true of all stock: the saw's kerf, and how long boards and sheets are."""

    kerf: Length
    longest_board: Length
    longest_sheet: Length


@dataclass(frozen=True, slots=True)
class Ceiling:
    """The resolved spec. The field names are the spec's, so that it reads back as a spec.

    `fixing` is None where neither the joists nor anything about fixing was told. `take_off` decides
    nothing that is built.
    """

    name: str
    units: Units
    mark_to: Step
    room: Room
    beams: Beams
    grid: Grid
    panel: Panel
    fixing: Fixing | None
    stock: StockRules
    drawing: Drawing
    crown: Crown | None
    flat_mouldings: tuple[FlatMoulding, ...]
    measured_openings: Openings | None
    take_off: TakeOff
