"""What laying boards and ripping sheets results in: immutable records, each length a figure."""

from dataclasses import dataclass
from typing import Literal

from lacunar.measure.figure import CountFigure, LengthFigure, NumberFigure
from lacunar.measure.length import Length
from lacunar.measure.moisture import Sorption
from lacunar.model.boards import BoardName, BoardRun, BoardSpecies, CenteredOn, Cut, Fastening
from lacunar.model.room import RunName


@dataclass(frozen=True, slots=True)
class Courses:
    """Boards side by side across one opening, both edge boards alike.

    `across` is what they fill, gaps taken off; `edge` the face that both edge boards show; the
    first board is ripped to `first_rip` with its tongue kept, the last to `last_rip` without it.
    """

    across: LengthFigure
    courses: CountFigure
    centered_on: CenteredOn
    edge: LengthFigure
    first_rip: LengthFigure
    last_rip: LengthFigure


@dataclass(frozen=True, slots=True)
class PanelPlace:
    """Where a panel, or a field of boards, has its corner next the datum: `x` and `y` from there.

    `coffer` is the one it fills, of a field that runs through the first of those it covers.
    """

    coffer: str
    x: LengthFigure
    y: LengthFigure


@dataclass(frozen=True, slots=True)
class BoardField:
    """Fields of one size, boarded alike: a coffer each, or what through boards cover unbroken.

    `coffers` are the coffers in these fields, `fields` how many of them there are, `length` how
    long every board is, `lineal` all their boards in a row, `coverage` what the rule of coverage
    gives for them: area over cover. `places` is where each of them starts, as planned.
    """

    coffers: tuple[str, ...]
    fields: CountFigure
    length: LengthFigure
    courses: Courses
    boards: CountFigure
    lineal: LengthFigure
    coverage: LengthFigure
    places: tuple[PanelPlace, ...]


@dataclass(frozen=True, slots=True)
class WoodMoistureContent:
    """Moisture in percent: as given, or that of wood at rest in air, with the equation's values."""

    percent: NumberFigure
    sorption: Sorption | None


@dataclass(frozen=True, slots=True)
class BoardMovement:
    """How much boards shrink and swell, and what the trim laps over them.

    `moving_width` is one board's cover where each is nailed, the widest field where they float.
    `shrink` and `swell` are None outside the moistures for which the coefficient is published;
    `lap` is what the trim covers beside the gap, None where nobody said.
    """

    species: BoardSpecies | None
    cut: Cut
    fastening: Fastening
    coefficient: NumberFigure
    now: WoodMoistureContent
    driest: WoodMoistureContent
    dampest: WoodMoistureContent
    moving_width: LengthFigure
    shrink: LengthFigure | None
    swell: LengthFigure | None
    lap: LengthFigure | None


@dataclass(frozen=True, slots=True)
class BoardLayout:
    """All boards of a ceiling. Lengths as asked for stand plain, what follows from them is figures.

    `lineal_factor` is lineal feet to a square foot, `board_foot_factor` board feet of nominal size
    to one, None for a board without a nominal size.
    """

    parallel_to: RunName
    run: BoardRun
    nominal: BoardName | None
    cover: Length
    tongue: Length
    thickness: Length
    gap: Length
    overall_width: LengthFigure
    fields: tuple[BoardField, ...]
    boards: CountFigure
    lineal: LengthFigure
    coverage: LengthFigure
    lineal_factor: NumberFigure
    board_foot_factor: NumberFigure | None
    movement: BoardMovement | None


@dataclass(frozen=True, slots=True)
class SheetRip:
    """Strips of one width ripped from sheets for the beams' boards.

    `strips` is how many strips a sheet gives, kerfs counted; `one_more` the widest strip of which
    it gives one more.
    """

    part: Literal["side", "bottom", "backing", "upper_board"]
    stock: str
    profiles: tuple[str, ...]
    width: LengthFigure
    strips: CountFigure
    one_more: LengthFigure
