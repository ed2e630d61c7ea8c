"""What a sheet panel takes of a beam's height, by where it sits in the order of fitting."""

from dataclasses import dataclass, replace

from lacunar.measure.length import ZERO, Length
from lacunar.model.ceiling import Ceiling
from lacunar.model.panel import Panel, PanelKind, Seat
from lacunar.model.stations import side_rise


@dataclass(frozen=True, slots=True)
class PanelStack:
    """The panel's thickness where it lies above the sides, above the backing, or between the sides.

    A panel fitted before the sides keeps them down from the ceiling; one fitted before the backing
    keeps that down too; one fitted between the sides covers their upper edge.
    `rise` is how much taller sides are where the ceiling is highest than where it is lowest.
    """

    above_sides: Length = ZERO
    above_backing: Length = ZERO
    between_sides: Length = ZERO
    rise: Length = ZERO

    @property
    def thickness(self) -> Length:
        """The panel below the existing ceiling, wherever it sits."""
        return max(self.above_sides, self.between_sides)


def panel_stack(panel: Panel) -> PanelStack:
    """Turn a panel into what it takes of a beam's height; the existing ceiling takes nothing."""
    if panel.kind is PanelKind.EXISTING:
        return PanelStack()
    if panel.seat is Seat.BETWEEN_SIDES:
        return PanelStack(between_sides=panel.thickness)
    if panel.seat is Seat.BETWEEN_BACKING:
        return PanelStack(above_sides=panel.thickness)
    return PanelStack(above_sides=panel.thickness, above_backing=panel.thickness)


def beam_stack(ceiling: Ceiling) -> PanelStack:
    """What the panel takes of a beam's height, and how much taller sides are than at the lowest."""
    room = ceiling.room
    return replace(panel_stack(ceiling.panel), rise=side_rise(room.stations, room.leveling))
