"""From a question about one opening to its boards: rules, what is left open, and the sums."""

from collections.abc import Mapping
from dataclasses import dataclass, replace
from typing import Any

from lacunar.layout.panels.lone_boards import LoneBoards, boards_alone
from lacunar.measure.rounding import Step
from lacunar.measure.units import Units
from lacunar.model.assuming import Assuming
from lacunar.model.ceiling import Assumption
from lacunar.model.defaults import DEFAULTS
from lacunar.model.faults import SpecRefused
from lacunar.model.panel import PanelKind
from lacunar.model.panel_assumptions import decide_panel
from lacunar.model.room import RunName
from lacunar.model.rules import check
from lacunar.model.spec import (
    CeilingSpec,
    GridSpec,
    MovementSpec,
    PanelSpec,
    RoomSpec,
    RunSpec,
)

# What of a ceiling is not asked about, so that its rules are silent there.
_NOT_ASKED = frozenset({"/room"})

_PANEL = ("board", "cover", "tongue", "gap", "centered_on")
_MOVEMENT = (
    "species",
    "cut",
    "coefficient",
    "fastening",
    "now",
    "driest",
    "dampest",
    "trim_cover",
)


@dataclass(frozen=True, slots=True)
class AnsweredBoards:
    """Boards across one opening, the step texts are rounded to, and what was assumed for them."""

    boards: LoneBoards
    mark_to: Step
    assumptions: tuple[Assumption, ...]


def lay_boards(question: Mapping[str, Any]) -> AnsweredBoards:
    """Turn a question about boards, as read, into the boards.

    Raises `SpecRefused` with every fault; pointers are into the question.
    """
    usual = DEFAULTS[question.get("units", Units.INCH)]
    assuming = Assuming()
    try:
        panel_spec = _panel_spec(question)
        _judge(panel_spec, question)
        panel = decide_panel(panel_spec, RunName.LENGTH, usual, assuming)
        laid = boards_alone(panel, question["opening"], question.get("length"))
    except SpecRefused as refused:
        faults = (replace(each, pointer=_pointer(each.pointer)) for each in refused.faults)
        raise SpecRefused(faults) from None
    cautions = tuple(replace(each, pointer=_pointer(each.pointer)) for each in laid.cautions)
    asked = (*_PANEL, *_MOVEMENT)
    return AnsweredBoards(
        replace(laid, cautions=cautions),
        question.get("mark_to", usual.mark_to),
        tuple(
            replace(each, pointer=_pointer(each.pointer))
            for each in assuming.made
            if _pointer(each.pointer).removeprefix("/") in asked
        ),
    )


def _panel_spec(question: Mapping[str, Any]) -> PanelSpec:
    moved = {name: question[name] for name in _MOVEMENT if name in question}
    return PanelSpec(
        kind=PanelKind.BOARDS,
        movement=MovementSpec(**moved) if moved else None,
        **{name: question[name] for name in _PANEL if name in question},
    )


def _judge(panel: PanelSpec, question: Mapping[str, Any]) -> None:
    """Hold the question against the rules of a ceiling, its sizes as openings wished for."""
    grid = GridSpec(
        length=RunSpec(wished_opening=question.get("length")),
        width=RunSpec(wished_opening=question["opening"]),
    )
    faults = check(CeilingSpec(room=RoomSpec(), grid=grid, panel=panel), _NOT_ASKED)
    if faults:
        raise SpecRefused(faults)


def _pointer(pointer: str) -> str:
    """A pointer into the spec of a ceiling as one into the question, which is flat."""
    places = {"/grid/length/wished_opening": "/length", "/grid/width/wished_opening": "/opening"}
    inside = pointer.removeprefix("/panel").removeprefix("/movement")
    return places.get(pointer, f"/{inside.split('/')[1]}" if inside else "")
