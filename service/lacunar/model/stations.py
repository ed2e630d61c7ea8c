"""Where the height of a ceiling was measured, and what its parts are leveled to."""

from collections.abc import Sequence
from dataclasses import dataclass
from enum import StrEnum

from lacunar.measure.length import ZERO, Length


class PanelsTo(StrEnum):
    """Whether panels hang level in the reference plane, or follow the ceiling as it is."""

    PLANE = "to_plane"
    CEILING = "to_ceiling"


@dataclass(frozen=True, slots=True)
class StationSpec:
    """A place on the ceiling and how high it lies there; see `Station`."""

    length: Length | None = None
    width: Length | None = None
    name: str | None = None
    height: Length | None = None
    above_line: Length | None = None


@dataclass(frozen=True, slots=True)
class LevelingSpec:
    """What is leveled to what; see `Leveling`."""

    panels: PanelsTo | None = None
    reach: Length | None = None
    uneven: Length | None = None


@dataclass(frozen=True, slots=True)
class Station:
    """A place on the ceiling, from the datum as the room was measured, and how high it lies there.

    Either `height` above the finished floor, or `above_line`, from a level line up to the ceiling;
    all stations of a room are of one kind.
    """

    name: str
    length: Length
    width: Length
    height: Length | None
    above_line: Length | None

    @property
    def measured(self) -> Length:
        """The height as it was read, above whatever it was read from."""
        read = self.height if self.above_line is None else self.above_line
        if read is None:
            raise ValueError("a station without a height: the spec has not passed the rules")
        return read


@dataclass(frozen=True, slots=True)
class Leveling:
    """What panels hang from, which stations count for a beam, and what reads uneven.

    A station counts for every beam between whose faces it lies, or within `reach` of them; sides
    that differ along one beam by more than `uneven` are cautioned.
    """

    panels: PanelsTo
    reach: Length
    uneven: Length


def greatest_rise(stations: Sequence[Station]) -> Length:
    """From the lowest to the highest station [length]; nothing where there are none.

    >>> low, high = (Station("", ZERO, ZERO, None, Length.of_inches(n)) for n in (20, 21))
    >>> greatest_rise([low, high])
    Length(1 in)
    """
    read = [station.measured for station in stations]
    return max(read) - min(read) if read else ZERO


def side_rise(stations: Sequence[Station], leveling: Leveling | None) -> Length:
    """How much higher the tallest sides are than those at the lowest station [length].

    Formula: the greatest rise where panels follow the ceiling, since the sides go up to it; nothing
    where they hang in the plane, which the sides end at.
    """
    if leveling is None or leveling.panels is PanelsTo.PLANE:
        return ZERO
    return greatest_rise(stations)
