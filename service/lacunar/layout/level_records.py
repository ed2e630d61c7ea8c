"""How high the ceiling lies at each station, and what follows for the beams along their lines.

Heights are above the finished floor. The reference plane is level and lies at the lowest station;
`rise` is always from the plane up to the ceiling. Places along a beam are measured from the start
of the run it lies along.
"""

from dataclasses import dataclass
from typing import Literal

from lacunar.measure.figure import LengthFigure
from lacunar.measure.length import Length
from lacunar.model.stations import PanelsTo


@dataclass(frozen=True, slots=True)
class StationLevel:
    """One station: its place from the datum, the ceiling's height there, its rise, its beams."""

    id: str
    x: LengthFigure
    y: LengthFigure
    ceiling: LengthFigure
    rise: LengthFigure
    beams: tuple[str, ...]


@dataclass(frozen=True, slots=True)
class LevelPlace:
    """One place along a beam: what backing, sides and panel need there to meet the ceiling.

    `known` says whether the rise was measured at a station on the beam, lies on the straight line
    between two, or is that of the nearest beyond which nothing was measured. The shim goes behind
    the backing; `side` is a side's height; `scribe` is cut off its upper edge, from the board as
    ripped; `hidden_gap` stays open above panel and side where these hang in the plane.
    """

    at: LengthFigure
    station: str | None
    known: Literal["measured", "between", "beyond"]
    rise: LengthFigure
    shim: LengthFigure
    side: LengthFigure
    scribe: LengthFigure
    hidden_gap: LengthFigure


@dataclass(frozen=True, slots=True)
class Sag:
    """The greatest departure of the ceiling from the chord between a beam's outermost stations.

    `departure` is positive above the chord and negative below it; `radius` is that of a fair arc
    over the chord with this rise, None where the ceiling is straight.
    """

    station: str
    span: LengthFigure
    departure: LengthFigure
    radius: LengthFigure | None


@dataclass(frozen=True, slots=True)
class BeamLevel:
    """The ceiling along one beam: places with what each needs, the board, and how even it reads.

    `board` is the side as ripped, as tall as the tallest place on a station; `most_side` how tall
    sides may be planned for `stock_width` to reach up everywhere; `variation` the difference
    between the tallest and the shortest side; `sag` is None with fewer than three stations.
    """

    beam: str
    board: LengthFigure
    stock_width: Length | None
    most_side: LengthFigure | None
    variation: LengthFigure
    even: bool
    sag: Sag | None
    places: tuple[LevelPlace, ...]


@dataclass(frozen=True, slots=True)
class Levels:
    """The reference plane, all stations, the beams they lie on, and the beams without one.

    `beams` and `not_measured` are those with sides; what has none, such as a flat beam, is shimmed
    at each station by its rise.
    """

    panels: PanelsTo
    plane: LengthFigure
    lowest: tuple[str, ...]
    highest: tuple[str, ...]
    rise: LengthFigure
    uneven: Length
    stations: tuple[StationLevel, ...]
    beams: tuple[BeamLevel, ...]
    not_measured: tuple[str, ...]
