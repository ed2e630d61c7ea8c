"""The order of fitting in words: what its fields mean, and its steps in sentences."""

from collections.abc import Callable, Iterator
from typing import Any

from lacunar.exchange.board_answer_words import Words
from lacunar.layout.fitting_records import Because, Fitting, FittingStep, Passing, Stage, Wait
from lacunar.measure.figure import Figure

FITTING_WORDS: Words = {
    "Wait": {
        "number": "Number of the step that must be done before.",
        "stage": "What that step is.",
        "because": "The reason, as a word programs can tell it by.",
        "coffers": "Coffers whose mouth is the reason; empty where it holds all over.",
    },
    "FittingStep": {
        "number": "Counted from 1, in the order of the work.",
        "stage": "What is done.",
        "of": "Ids of the beams, or of the coffers, it is done for; beams in the order in which"
        " they go up.",
        "needs": "The steps that must be done before, each with its reason.",
    },
    "Passing": {
        "piece": "What is lifted in: the largest piece of a panel, a board, or a bench frame.",
        "coffers": "Ids of the coffers that have such a piece and such a mouth.",
        "length": "Its size along the length run [length].",
        "width": "Its size along the width run [length].",
        "between_bottoms_length": "Between the bottoms, along the length run [length].",
        "between_bottoms_width": "Between the bottoms, along the width run [length].",
        "mouth_length": "Between mouldings at the bottoms' edges too, along the length run"
        " [length].",
        "mouth_width": "Between mouldings at the bottoms' edges too, along the width run [length].",
        "too_small_after": "The first stage after which it no longer passes, held level; null"
        " where it always does.",
    },
    "Fitting": {
        "steps": "The steps, each after all that it waits for.",
        "passing": "What goes up after the sides, held against the mouths of the coffers.",
    },
}

_STAGES = {
    Stage.SKIN: "Cover the ceiling with a skin to fasten to, for {ids}",
    Stage.SNAP_LINES: "Snap lines for {ids}",
    Stage.BLOCKING: "Block between the joists, for {ids}",
    Stage.BACKING: "Put up the backing of {ids}",
    Stage.CASING_CLEATS: "Put up cleats beside the members in {ids}",
    Stage.SIDES: "Put up the sides of {ids}",
    Stage.FOLDED_BEAMS: "Put up sides and bottom as one, folded, of {ids}",
    Stage.BOTTOMS: "Put up the bottoms of {ids}",
    Stage.EDGE_MOULDINGS: "Put up the mouldings at the lower edges in {ids}",
    Stage.PANELS: "Put up the panels of {ids}",
    Stage.BOARDS: "Put up the boards of {ids}",
    Stage.CEILING_MOULDINGS: "Put up the flat mouldings at the ceiling in {ids}",
    Stage.CROWN_NAILERS: "Put up the nailers behind the crown in {ids}",
    Stage.CROWN_FRAMES: "Lift in the crown frames of {ids}",
    Stage.COPED_CROWN: "Cope the crown in place in {ids}",
}

_BECAUSE = {
    Because.LINES_GO_ON_SKIN: "the lines go on it",
    Because.PLACED_BY_LINES: "the lines tell the place",
    Because.FASTENED_TO_IT: "that is what it is fastened to",
    Because.CLOSED_OFF_AFTER: "it is closed off after",
    Because.FIXED_THROUGH_IT: "the fasteners go through it",
    Because.FITS_BETWEEN: "it fits between them",
    Because.COVERS_ITS_EDGE: "its edge is covered after",
    Because.LIES_AGAINST_IT: "that is what it lies against",
    Because.MOUTH_TOO_SMALL: "the mouth would be too small after, in {coffers}",
}

Tell = Callable[[str, Figure[Any]], str]


def fitting_in_words(fitting: Fitting, tell: Tell) -> Iterator[str]:
    """Turn the order of fitting into a line for each step, then what was held against mouths."""
    for step in fitting.steps:
        yield _step(step)
    for passing in fitting.passing:
        yield from _passing(passing, tell)


def _step(step: FittingStep) -> str:
    done = _STAGES[step.stage].format(ids=", ".join(step.of))
    needs = "; ".join(_wait(wait) for wait in step.needs)
    return f"{step.number}. {done}{f', after {needs}' if needs else ''}."


def _wait(wait: Wait) -> str:
    return f"step {wait.number} ({_BECAUSE[wait.because].format(coffers=', '.join(wait.coffers))})"


def _passing(passing: Passing, tell: Tell) -> Iterator[str]:
    ids, name = ", ".join(passing.coffers), passing.piece.replace("_", " ")
    yield tell(f"Largest {name} for {ids}, along the length", passing.length)
    yield tell(f"Largest {name} for {ids}, along the width", passing.width)
    yield tell(f"Between the bottoms of {ids}, along the length", passing.between_bottoms_length)
    yield tell(f"Between the bottoms of {ids}, along the width", passing.between_bottoms_width)
    if passing.too_small_after is None:
        yield f"The {name} for {ids} passes the mouth, lifted in level."
    else:
        after = passing.too_small_after.replace("_", " ")
        yield f"The {name} for {ids} has to go up before the {after}."
