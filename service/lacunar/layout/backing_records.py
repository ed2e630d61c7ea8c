"""What is known of joists, backing, weights and heights once the beams are set out.

Weights and strengths are plain numbers; the unit stands in each one's name. Places along a beam are
measured from the start of the run the beam lies along, as all positions are from the datum.
"""

from dataclasses import dataclass
from enum import StrEnum
from fractions import Fraction
from typing import Literal

from lacunar.measure.figure import CountFigure, Figure, LengthFigure
from lacunar.measure.length import Length
from lacunar.model.fixing import BetweenJoists
from lacunar.model.room import RunName

NumberFigure = Figure[Fraction]


@dataclass(frozen=True, slots=True)
class Joist:
    """One joist: its id (`J1` next the start wall) and its center from the datum."""

    id: str
    center: LengthFigure


@dataclass(frozen=True, slots=True)
class JoistLines:
    """All joists over the room. `on` is the run their centers are measured along."""

    parallel_to: RunName
    on: RunName
    spacing: Length
    width: Length
    count: CountFigure
    joists: tuple[Joist, ...]


class JoistRelation(StrEnum):
    """How a line of backing lies to the joists."""

    ACROSS = "across"
    ON_JOIST = "on_joist"
    BETWEEN = "between_joists"
    UNKNOWN = "unknown"


@dataclass(frozen=True, slots=True)
class BackingPiece:
    """One clear length of backing and where it is fixed.

    `places` are the crossings with joists where the line lies across them, else blocks or fasteners
    at even distances; `fasteners` how many go into them all, None where the joists are unknown.
    """

    start: LengthFigure
    end: LengthFigure
    length: LengthFigure
    count: CountFigure
    places: tuple[LengthFigure, ...]
    fasteners: CountFigure | None


@dataclass(frozen=True, slots=True)
class Bay:
    """The space between joists that a line of backing lies in.

    `near` and `far` are joists' ids, None where the bay ends at a wall; `block` is the length of a
    block that fills it.
    """

    near: str | None
    far: str | None
    block: LengthFigure


@dataclass(frozen=True, slots=True)
class BackingLine:
    """A line along which a beam is held: a beam has one in its middle, a casing one on each side.

    `on` is the run its `position` is measured along. `joist` is the nearest one where the line runs
    along the joists, and `offset` how far beyond that joist's center it lies; `bearing` is what a
    line on a joist leaves to the joist's nearer edge. `carried_by` says what holds a line that lies
    between joists.
    """

    beam: str
    side: Literal["middle", "near", "far"]
    on: RunName
    position: LengthFigure
    relation: JoistRelation
    joist: str | None
    offset: LengthFigure | None
    bearing: LengthFigure | None
    bay: Bay | None
    carried_by: BetweenJoists | None
    blocks: CountFigure | None
    pieces: tuple[BackingPiece, ...]


@dataclass(frozen=True, slots=True)
class Forms:
    """Backing as forms to be built, counted by where each stands in the grid."""

    crosses: CountFigure
    tees: CountFigure
    ells: CountFigure
    wall_ends: CountFigure
    soffit_ends: CountFigure
    mid_spans: CountFigure
    in_all: CountFigure


@dataclass(frozen=True, slots=True)
class BeamWeight:
    """What a foot and a meter of one profile weigh, with its backing; and all of its beams."""

    profile: str
    sides_pounds_per_foot: NumberFigure
    bottom_pounds_per_foot: NumberFigure
    backing_pounds_per_foot: NumberFigure
    pounds_per_foot: NumberFigure
    kilograms_per_meter: NumberFigure
    length: LengthFigure
    pounds: NumberFigure


@dataclass(frozen=True, slots=True)
class Weights:
    """What hangs from the ceiling: each profile, the panels, and all over the room's area."""

    trim_pounds_per_cubic_foot: NumberFigure
    backing_pounds_per_cubic_foot: NumberFigure
    beams: tuple[BeamWeight, ...]
    panel_pounds_per_square_foot: NumberFigure
    panels_pounds: NumberFigure
    pounds: NumberFigure
    pounds_per_square_foot: NumberFigure
    kilograms_per_square_meter: NumberFigure


@dataclass(frozen=True, slots=True)
class Hold:
    """Reference figures of the fasteners of one profile: a prompt for an engineer, no verdict.

    `withdrawal_pounds_per_inch` is the reference value in side grain, `withdrawal_pounds` that of
    one fastener as deep as `penetration` under a permanent load; `pull_through_pounds` of its head
    through the backing, None where none is published for its kind; `load_pounds` what one carries
    of a beam across the joists, `spacing` apart.
    """

    profile: str
    penetration: LengthFigure
    deep_enough: bool
    spacing: LengthFigure
    load_pounds: NumberFigure
    withdrawal_pounds_per_inch: NumberFigure
    withdrawal_pounds: NumberFigure
    pull_through_pounds: NumberFigure | None


@dataclass(frozen=True, slots=True)
class Backing:
    """Joists, lines of backing, forms, and where enough is told, weights and reference figures."""

    joists: JoistLines | None
    lines: tuple[BackingLine, ...]
    forms: Forms
    weights: Weights | None
    holds: tuple[Hold, ...]


@dataclass(frozen=True, slots=True)
class Level:
    """One surface of the stack: what it is, whose, and how far above the finished floor."""

    kind: Literal["joists", "ceiling", "panel", "member", "beam"]
    of: str
    height: LengthFigure


@dataclass(frozen=True, slots=True)
class BeamGap:
    """The least clear opening between beams of one run, and the least between their centers.

    `centers` is None where there are fewer than two beams.
    """

    run: RunName
    opening: LengthFigure
    centers: LengthFigure | None


@dataclass(frozen=True, slots=True)
class Heights:
    """Everything above the finished floor, from the top down, and what the limit leaves.

    `worst` are the ids of the lowest levels; `most_drop` is how deep a beam may hang and just meet
    the limit; `gaps` are told because some editions of codes judge beams by how far apart they are.
    """

    levels: tuple[Level, ...]
    worst: tuple[str, ...]
    worst_height: LengthFigure
    limit: Length
    code_edition: str
    most_drop: LengthFigure
    spare: LengthFigure
    gaps: tuple[BeamGap, ...]
