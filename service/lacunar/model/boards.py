"""Tongue-and-groove and other boards that fill coffers, and what their wood does in a year."""

from dataclasses import dataclass
from enum import StrEnum
from fractions import Fraction

from lacunar.measure.length import Length
from lacunar.measure.moisture import Temperature
from lacunar.model.room import RunName


class BoardName(StrEnum):
    """Nominal sizes of tongue-and-groove boards with a published face cover."""

    ONE_BY_FOUR = "1x4"
    ONE_BY_SIX = "1x6"
    ONE_BY_EIGHT = "1x8"
    ONE_BY_TEN = "1x10"


class BoardRun(StrEnum):
    """Whether each coffer has boards of its own, or boards run on above the beams."""

    PER_COFFER = "per_coffer"
    THROUGH = "through"


class CenteredOn(StrEnum):
    """What lies on the middle line of the courses."""

    JOINT = "joint"
    BOARD = "board"


class BoardSpecies(StrEnum):
    """Species with a published coefficient of movement."""

    CHERRY = "cherry"
    RED_MAPLE = "red_maple"
    SILVER_MAPLE = "silver_maple"
    SUGAR_MAPLE = "sugar_maple"
    RED_OAK = "red_oak"
    WHITE_OAK = "white_oak"
    BLACK_WALNUT = "black_walnut"
    WHITE_ASH = "white_ash"
    BEECH = "beech"
    YELLOW_POPLAR = "yellow_poplar"
    DOUGLAS_FIR = "douglas_fir"
    WESTERN_HEMLOCK = "western_hemlock"
    EASTERN_WHITE_PINE = "eastern_white_pine"
    PONDEROSA_PINE = "ponderosa_pine"


class Cut(StrEnum):
    """How a board lay in the log: its width along the growth rings, or across them."""

    FLATSAWN = "flatsawn"
    QUARTERSAWN = "quartersawn"


class Fastening(StrEnum):
    """Whether every board is held by itself, or all of them move as one."""

    NAILED = "nailed"
    FLOATING = "floating"


@dataclass(frozen=True, slots=True)
class Air:
    """Air by its relative humidity [percent] and temperature."""

    humidity: Fraction
    temperature: Temperature


# Wood's moisture: a percentage of its oven-dry weight, or the air it has come to rest in.
Moisture = Fraction | Air


@dataclass(frozen=True, slots=True)
class Movement:
    """What decides how much boards move.

    `coefficient` is the part of its width that a board gains for each percent of moisture; it is
    the published one of `species` and `cut` unless given. `trim_cover` is how far the trim reaches
    over the boards from the face they end at; None where nobody said.
    """

    species: BoardSpecies | None
    cut: Cut
    coefficient: Fraction | None
    fastening: Fastening
    now: Moisture
    driest: Moisture
    dampest: Moisture
    trim_cover: Length | None


@dataclass(frozen=True, slots=True)
class Boards:
    """Boards of one face cover. `tongue` is what a board is wider than it covers.

    `nominal` is the trade name they were asked for by; `centered_on` of None takes whichever gives
    the wider edge boards.
    """

    nominal: BoardName | None
    cover: Length
    tongue: Length
    parallel_to: RunName
    run: BoardRun
    centered_on: CenteredOn | None
    movement: Movement | None
