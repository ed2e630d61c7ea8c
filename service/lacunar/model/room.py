"""The room and what hangs into it.

Walls are W1, the start wall of the length run (left on the plan), then clockwise: W2 top, W3 right,
W4 bottom. The datum is the lower left corner, where W1 and W4 meet: both runs start there.
"""

from dataclasses import dataclass
from enum import StrEnum
from fractions import Fraction

from lacunar.measure.length import Length
from lacunar.model.ceiling_items import Item, WallFeature
from lacunar.model.columns import Column
from lacunar.model.outline import Outline
from lacunar.model.stations import Leveling, Station
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
    """A structural member hanging below the ceiling, to be cased.

    `on` is the run its place is measured along, from the datum as the room was measured. It lies
    along the other run from `starts_at` to `ends_at` (None: from wall to wall): at its start it has
    `center` and `drop` below the finished ceiling, at its end `center_at_end` and `drop_at_end`.
    `cladding` is what is on it already, on each side and below; `clearance` is kept outside that;
    `cleat` is the thickness of what each side of the casing is fixed to, zero where that is done
    otherwise. `cased_width` is the finished width asked for its casing (None: as its family, or as
    wide as it must be).
    """

    name: str
    on: RunName
    center: Length
    width: Length
    drop: Length
    casing: Casing
    clearance: Length
    cased_width: Length | None
    center_at_end: Length
    drop_at_end: Length
    starts_at: Length | None
    ends_at: Length | None
    cladding: Length
    cleat: Length

    @property
    def skew(self) -> Length:
        """How far its center wanders along the run between its ends [length]."""
        return abs(self.center_at_end - self.center)

    @property
    def deepest(self) -> Length:
        """The lower end's drop, without cladding [length]."""
        return max(self.drop, self.drop_at_end)

    @property
    def room_inside(self) -> Length:
        """The least width inside its casing [length].

        Formula: width + 2 cladding + 2 clearance + 2 cleats + skew.
        """
        return self.width + (self.cladding + self.clearance + self.cleat) * 2 + self.skew

    @property
    def partial(self) -> bool:
        """Whether it ends short of a wall, so that its casing goes on as an empty box."""
        return self.starts_at is not None or self.ends_at is not None


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
    `length` and `width` are its sides W4 and W1 in round terms, `survey` has what holds; where
    there is an `outline` they are how far that reaches. `height` is that of the ceiling at its
    lowest; `leveling` is None where no `stations` are known. `columns` stand free in it.
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
    ceiling_items: tuple[Item, ...]
    wall_features: tuple[WallFeature, ...]
    stations: tuple[Station, ...] = ()
    leveling: Leveling | None = None
    survey: Survey | None = None
    crooked: Crooked | None = None
    outline: Outline | None = None
    columns: tuple[Column, ...] = ()
