"""What choosing results in: immutable records, each figure with its reason."""

from collections.abc import Mapping
from dataclasses import dataclass
from decimal import Decimal
from enum import StrEnum
from typing import Literal

from lacunar.measure.figure import CountFigure, LengthFigure, MoneyFigure, NumberFigure
from lacunar.measure.length import Length
from lacunar.model.beams import Through
from lacunar.model.faults import FigureValue
from lacunar.model.room import RunName


class Criterion(StrEnum):
    """What layouts are compared by. Less of it is better, but for headroom."""

    SQUARENESS = "squareness"
    SEAMS = "seams"
    JOINTS = "joints"
    CUTS = "cuts"
    CROWN_LEFT = "crown_left"
    COST = "cost"
    HEADROOM = "headroom"
    BETWEEN_JOISTS = "between_joists"
    CONFLICTS = "conflicts"
    OFF_CENTER = "off_center"


MORE_IS_BETTER = frozenset({Criterion.HEADROOM})

AnyFigure = LengthFigure | CountFigure | NumberFigure | MoneyFigure


@dataclass(frozen=True, slots=True)
class Judged:
    """What a layout comes to by one criterion."""

    criterion: Criterion
    figure: AnyFigure


@dataclass(frozen=True, slots=True)
class OptionRun:
    """One run of an option: how many coffers, what stands at its walls, and its openings."""

    run: RunName
    coffers: int
    start: str
    end: str
    smallest_opening: LengthFigure
    largest_opening: LengthFigure
    beam_width: LengthFigure


@dataclass(frozen=True, slots=True)
class SticksBought:
    """How many sticks of a length are bought."""

    length: Length
    quantity: int


@dataclass(frozen=True, slots=True)
class CrownStock:
    """The crown of an option: its pieces, and the sticks they are cut from.

    `proven_best` says whether no fewer feet can be bought.
    """

    pieces: int
    used: LengthFigure
    bought: LengthFigure
    sticks: tuple[SticksBought, ...]
    proven_best: bool


@dataclass(frozen=True, slots=True)
class OptionCost:
    """What an option costs by the price list, as an estimate of it alone says.

    `total` is what is to be paid, with all that is added and tax. Where not `complete`, it is less
    than it will be: `lacks` tells what has no price, or is built and not counted.
    """

    currency: str
    materials: MoneyFigure
    labor: MoneyFigure
    others: MoneyFigure
    total: MoneyFigure
    complete: bool
    lacks: tuple[str, ...]


@dataclass(frozen=True, slots=True)
class Behind:
    """By which criterion an option comes off worst, and the number of the one that is best in it.

    `than` is what that other one comes to.
    """

    criterion: Criterion
    option: int
    than: AnyFigure


@dataclass(frozen=True, slots=True)
class Option:
    """A layout worth considering: no other is as good in everything and better in something.

    `cost` is None without prices. `fillers` are pieces of panels narrower than a quarter of a
    sheet. `stands_out_by` are the fewest criteria of which no other option is as good in all, none
    where another comes to the same; `behind` is where it comes off worst, None where it does
    nowhere. `score` is 0 for the best in everything that has a weight and 1 for the worst; None
    without weights.
    """

    number: int
    coffers: int
    length: OptionRun
    width: OptionRun
    through: Through
    judged: tuple[Judged, ...]
    crown: CrownStock | None
    cost: OptionCost | None
    fillers: int
    grid_id: str
    stands_out_by: tuple[Criterion, ...]
    behind: Behind | None
    score: NumberFigure | None


@dataclass(frozen=True, slots=True)
class SearchCounts:
    """What was looked at, in numbers.

    `combinations` were compared by their runs alone; of these `passed_over` were not laid out,
    because others were better in all that runs tell; `laid_out` were, of which `worth_considering`
    are told. The others could not be built, had less headroom than the limit, pieces of crown
    longer than the sticks or parts that the told stock has too little for, or another one beats
    them. `stopped` says that the search was ended
    before `to_lay_out` were.
    """

    combinations: int
    passed_over: int
    to_lay_out: int
    laid_out: int
    cannot_be_built: int
    short_of_headroom: int
    crown_too_long: int
    short_of_stock: int
    worth_considering: int
    stopped: bool


@dataclass(frozen=True, slots=True)
class NotSearched:
    """Something that was left out of the search, and by which figures."""

    code: str
    text: str
    figures: Mapping[str, FigureValue]


@dataclass(frozen=True, slots=True)
class NudgeChange:
    """What a nudge changes: before and after, and whether that is for the better."""

    criterion: Criterion
    before: AnyFigure
    after: AnyFigure
    better: bool


@dataclass(frozen=True, slots=True)
class Nudge:
    """A small change of an option, and what comes of it.

    Either all beams are `wider` by so much (below zero: narrower), or at `wall` stands `condition`
    instead. What is saved is below zero where it takes more; `money_saved` is None without prices,
    and where both lack prices of different things. `saves` says that it saves sticks, seams,
    fillers or money, and takes more of none of them.
    """

    kind: Literal["beam_width", "wall"]
    wider: Length | None
    wall: str | None
    condition: str | None
    changes: tuple[NudgeChange, ...]
    sticks_saved: int
    seams_saved: int
    fillers_saved: int
    money_saved: Decimal | None
    saves: bool


@dataclass(frozen=True, slots=True)
class Nudges:
    """What small changes of one option come to: how many were tried, and those that can be built.

    Those that save something stand first, of these those that save most money.
    """

    option: int
    tried: int
    nudges: tuple[Nudge, ...]


@dataclass(frozen=True, slots=True)
class Found:
    """What came of a search: the options in their order, and what was not searched."""

    counts: SearchCounts
    options: tuple[Option, ...]
    nudges: Nudges | None
    not_searched: tuple[NotSearched, ...]
