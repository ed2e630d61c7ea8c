"""The order of fitting: steps, what each of them waits for and why, and what passes the mouths."""

from dataclasses import dataclass
from enum import StrEnum
from typing import Literal

from lacunar.measure.figure import LengthFigure


class Stage(StrEnum):
    """A kind of work. A ceiling has those that it has parts for, each as one step."""

    SKIN = "skin"
    SNAP_LINES = "snap_lines"
    BLOCKING = "blocking"
    BACKING = "backing"
    CASING_CLEATS = "casing_cleats"
    SIDES = "sides"
    FOLDED_BEAMS = "folded_beams"
    BOTTOMS = "bottoms"
    EDGE_MOULDINGS = "edge_mouldings"
    PANELS = "panels"
    BOARDS = "boards"
    CEILING_MOULDINGS = "ceiling_mouldings"
    CROWN_NAILERS = "crown_nailers"
    CROWN_FRAMES = "crown_frames"
    COPED_CROWN = "coped_crown"


class Because(StrEnum):
    """Why a step waits for another."""

    LINES_GO_ON_SKIN = "lines_go_on_skin"
    PLACED_BY_LINES = "placed_by_lines"
    FASTENED_TO_IT = "fastened_to_it"
    CLOSED_OFF_AFTER = "closed_off_after"
    FIXED_THROUGH_IT = "fixed_through_it"
    FITS_BETWEEN = "fits_between"
    COVERS_ITS_EDGE = "covers_its_edge"
    LIES_AGAINST_IT = "lies_against_it"
    MOUTH_TOO_SMALL = "mouth_too_small"


@dataclass(frozen=True, slots=True)
class Wait:
    """A step that must be done before another: its number, what it is, and the reason.

    `coffers` are those whose mouth is the reason; empty where the reason holds all over.
    """

    number: int
    stage: Stage
    because: Because
    coffers: tuple[str, ...]


@dataclass(frozen=True, slots=True)
class FittingStep:
    """One step of fitting, counted from 1, with the ids of what is fitted, in their order."""

    number: int
    stage: Stage
    of: tuple[str, ...]
    needs: tuple[Wait, ...]


@dataclass(frozen=True, slots=True)
class Passing:
    """The largest piece that has to go up into a coffer, held level against the mouth.

    `too_small_after` is the first stage after which it no longer passes, None where it always does.
    The mouth is that between the bottoms, and that between the mouldings at their edges as well.
    """

    piece: Literal["panel", "board", "crown_frame"]
    coffers: tuple[str, ...]
    length: LengthFigure
    width: LengthFigure
    between_bottoms_length: LengthFigure
    between_bottoms_width: LengthFigure
    mouth_length: LengthFigure
    mouth_width: LengthFigure
    too_small_after: Stage | None


@dataclass(frozen=True, slots=True)
class Fitting:
    """Steps in an order in which nothing blocks anything, and what was held against the mouths."""

    steps: tuple[FittingStep, ...]
    passing: tuple[Passing, ...]
