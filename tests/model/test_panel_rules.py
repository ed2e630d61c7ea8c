"""Rules about boards and their movement, and what is assumed of them."""

from dataclasses import replace
from fractions import Fraction
from typing import Any

import pytest

from lacunar.measure.moisture import Temperature
from lacunar.measure.units import Units
from lacunar.model.assumptions import resolve
from lacunar.model.boards import (
    Air,
    BoardName,
    BoardRun,
    Boards,
    BoardSpecies,
    Cut,
    Fastening,
)
from lacunar.model.panel import Panel, PanelKind, SeamPlaces, Seat
from lacunar.model.room import RunName
from lacunar.model.rules import check
from lacunar.model.spec import MovementSpec, PanelSpec
from tests.model.specs import ROOM, SOUND, inches

OAK = MovementSpec(species=BoardSpecies.RED_OAK)


def found(panel: PanelSpec) -> list[tuple[str, str]]:
    return [(fault.code, fault.pointer) for fault in check(replace(SOUND, panel=panel))]


def boarded(**fields: Any) -> PanelSpec:
    return PanelSpec(kind=PanelKind.BOARDS, **fields)


def moving(**fields: Any) -> PanelSpec:
    return boarded(movement=replace(OAK, **fields))


def decided(panel: PanelSpec, **changes: Any) -> tuple[Panel, dict[str, object]]:
    """The panel, and what was assumed of it."""
    resolution = resolve(replace(SOUND, panel=panel, **changes))
    made = {
        each.pointer.removeprefix("/panel/"): each.value
        for each in resolution.assumptions
        if each.pointer.startswith("/panel/")
    }
    return resolution.ceiling.panel, made


def boards_of(panel: Panel) -> Boards:
    assert panel.boards is not None
    return panel.boards


@pytest.mark.parametrize(
    ("panel", "expected"),
    [
        (boarded(cover=inches(5)), []),
        (PanelSpec(cover=inches(5)), []),
        (
            PanelSpec(kind=PanelKind.SHEET_GOODS, cover=inches(5)),
            [("panel_field_unsuited", "/panel/cover")],
        ),
        (
            PanelSpec(kind=PanelKind.EXISTING, grain=RunName.LENGTH),
            [("panel_field_unsuited", "/panel/grain")],
        ),
        (boarded(seams=SeamPlaces.EQUAL), [("panel_field_unsuited", "/panel/seams")]),
        (
            PanelSpec(cover=inches(5), grain=RunName.LENGTH),
            [("panel_kind_unclear", "/panel/kind")],
        ),
        (boarded(run=BoardRun.THROUGH, seat=Seat.ABOVE_BACKING), []),
        (
            boarded(run=BoardRun.THROUGH, seat=Seat.BETWEEN_SIDES),
            [("through_boards_seated_lower", "/panel/seat")],
        ),
        (boarded(cover=inches("1/2")), [("length_out_of_bounds", "/panel/cover")]),
        (boarded(thickness=inches("1/16")), [("length_out_of_bounds", "/panel/thickness")]),
        (moving(), []),
        (boarded(movement=MovementSpec()), [("wood_not_said", "/panel/movement/species")]),
        (
            moving(coefficient=Fraction(2, 1000)),
            [("coefficient_given_twice", "/panel/movement/coefficient")],
        ),
        (
            boarded(movement=MovementSpec(coefficient=Fraction(1, 10))),
            [("measure_out_of_bounds", "/panel/movement/coefficient")],
        ),
        (moving(now=Fraction(31)), [("measure_out_of_bounds", "/panel/movement/now")]),
        (
            moving(driest=Air(Fraction(100), Temperature(Fraction(70)))),
            [
                ("measure_out_of_bounds", "/panel/movement/driest/humidity"),
                ("measure_out_of_bounds", "/panel/movement/driest/temperature"),
            ],
        ),
        (
            moving(driest=Fraction(10), dampest=Fraction(9)),
            [("moisture_range_reversed", "/panel/movement/driest")],
        ),
        # 50 percent at 20 C is 9.27 percent of moisture
        (
            moving(driest=Air(Fraction(50), Temperature(Fraction(20))), dampest=Fraction(9)),
            [("moisture_range_reversed", "/panel/movement/driest")],
        ),
    ],
)
def test_rules(panel: PanelSpec, expected: list[tuple[str, str]]):
    assert found(panel) == expected


def test_rules_are_silent_about_what_could_not_be_read():
    panel = moving(driest=Fraction(10), dampest=Fraction(9))
    spec = replace(SOUND, panel=panel)
    assert check(spec, frozenset({"/panel/movement/dampest"})) == ()
    spec = replace(SOUND, panel=PanelSpec(kind=PanelKind.EXISTING, cover=inches(5)))
    assert check(spec, frozenset({"/panel/kind"})) == ()


def test_boards_of_which_nothing_is_said():
    panel, made = decided(boarded())
    boards = boards_of(panel)
    assert (boards.nominal, boards.cover) == (BoardName.ONE_BY_SIX, inches("41/8"))
    assert (panel.seat, panel.thickness) == (Seat.BETWEEN_SIDES, inches("3/4"))
    assert made.keys() == {
        *("board", "cover", "tongue", "parallel_to", "run", "thickness", "seat", "gap"),
    }
    assert boards.movement is None


def test_metric_boards_have_a_metric_cover():
    panel, made = decided(boarded(), units=Units.MILLIMETER)
    assert boards_of(panel).nominal is None
    assert boards_of(panel).cover.millimeters == 96
    assert "board" not in made


@pytest.mark.parametrize(("width", "run"), [(178, RunName.LENGTH), (300, RunName.WIDTH)])
def test_boards_run_the_long_way_of_the_room(width: int, run: RunName):
    panel, made = decided(boarded(), room=replace(ROOM, width=inches(width)))
    assert boards_of(panel).parallel_to is run
    assert made["parallel_to"] == str(run)


def test_through_boards_are_taken_to_lie_above_the_backing():
    panel, made = decided(boarded(run=BoardRun.THROUGH))
    assert panel.seat is Seat.ABOVE_BACKING
    assert made["seat"] == "above_backing"


def test_movement_of_which_only_the_wood_is_said():
    panel, made = decided(boarded(movement=OAK))
    movement = boards_of(panel).movement
    assert movement is not None
    assert (movement.cut, movement.fastening) == (Cut.FLATSAWN, Fastening.NAILED)
    assert (movement.now, movement.driest, movement.dampest) == (8, 6, 10)
    assert made["movement/now"] == "8 percent"


def test_a_described_board_is_taken_for_boards_and_grain_for_sheets():
    assert decided(PanelSpec(cover=inches(5)))[0].kind is PanelKind.BOARDS
    assert decided(PanelSpec(grain=RunName.LENGTH))[0].kind is PanelKind.SHEET_GOODS
    assert decided(PanelSpec(gap=inches(0)))[0].kind is PanelKind.SHEET_GOODS
