"""The room and what hangs into it.

Walls are W1, the start wall of the length run (left on the plan), then clockwise: W2 top, W3 right,
W4 bottom. The datum is the lower left corner, where W1 and W4 meet: both runs start there.
"""

from dataclasses import dataclass
from enum import StrEnum
from fractions import Fraction

from lacunar.measure.length import Length
from lacunar.model.survey import Crooked, Survey
from lacunar.model.woods import Species


class RunName(StrEnum):
    """A line wall to wall along which coffers are counted: length is left to right on the plan."""

    LENGTH = "length"
    WIDTH = "width"

    @property
    def other(self) -> "RunName":
        """The run across this one."""
        return RunName.WIDTH if self is RunName.LENGTH else RunName.LENGTH


START_WALL = {RunName.LENGTH: "W1", RunName.WIDTH: "W4"}
END_WALL = {RunName.LENGTH: "W3", RunName.WIDTH: "W2"}
WALLS = ("W1", "W2", "W3", "W4")


class MeasuredTo(StrEnum):
    """What the tape touched: the finished wall face, or the framing before its finish."""

    FINISH = "finish"
    FRAMING = "framing"


class Casing(StrEnum):
    """How a cased beam stands about its member."""

    CENTERED = "centered"
    SHIFT_TO_EQUAL = "shift_to_equal"


@dataclass(frozen=True, slots=True)
class Member:
    """A structural member hanging below the ceiling, running wall to wall, to be cased.

    `on` is the run its place is measured along; `center` from the datum as the room was measured;
    `drop` below the finished ceiling; `clearance` to be kept on each side and below; `cased_width`
    is the finished width asked for its casing (None: as its family, or as wide as it must be).
    """

    name: str
    on: RunName
    center: Length
    width: Length
    drop: Length
    casing: Casing
    clearance: Length
    cased_width: Length | None


class JoistKind(StrEnum):
    """Sawn lumber, or trusses, whose designer has the say on what may hang from them."""

    LUMBER = "lumber"
    TRUSS = "truss"


class CeilingState(StrEnum):
    """Whether the joists can be reached: `open` from below, or `closed` behind a finish."""

    OPEN = "open"
    CLOSED = "closed"


@dataclass(frozen=True, slots=True)
class Joists:
    """Joists that run `parallel_to` one run and stand at equal `spacing` along the other.

    `first` is the center of the first one from the finished start wall; `width` the thickness of
    each as seen from below; `existing_finish` what lies between joists and backing; `gravity` the
    specific gravity fasteners hold by, `species` where it came from a species.
    """

    parallel_to: RunName
    spacing: Length
    first: Length
    width: Length
    kind: JoistKind
    ceiling: CeilingState
    existing_finish: Length
    species: Species | None
    gravity: Fraction

    @property
    def on(self) -> RunName:
        """The run along which their places are measured."""
        return self.parallel_to.other


@dataclass(frozen=True, slots=True)
class Room:
    """A room. `wall_finish` is a thickness for W1 to W4, or None where unknown.

    `headroom` is the least clear height wished for, `code_edition` what it was taken from, empty
    where that was not told; `joists` are None where nothing is known of them. In a surveyed room
    `length` and `width` are its sides W4 and W1 in round terms; `survey` has what holds.
    """

    length: Length
    width: Length
    height: Length
    measured_to: MeasuredTo
    wall_finish: tuple[Length, Length, Length, Length] | None
    headroom: Length
    code_edition: str
    members: tuple[Member, ...]
    joists: Joists | None
    survey: Survey | None = None
    crooked: Crooked | None = None
