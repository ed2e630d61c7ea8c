"""Stations and leveling: what is refused, and what is taken for what was left open."""

from fractions import Fraction

import pytest

from lacunar.measure.length import Length
from lacunar.model.assumptions import resolve
from lacunar.model.panel import PanelKind, Seat
from lacunar.model.rules import check
from lacunar.model.spec import CeilingSpec, FixingSpec, PanelSpec, RoomSpec
from lacunar.model.stations import LevelingSpec, PanelsTo, StationSpec

inch = Length.of_inches


def station(x: int, y: int, **told: object) -> StationSpec:
    lengths = {
        name: inch(value) if isinstance(value, int | Fraction) else value
        for name, value in told.items()
    }
    return StationSpec(inch(x), inch(y), **lengths)  # type: ignore[arg-type]


def spec(*stations: StationSpec, height: int | None = 108, **more: object) -> CeilingSpec:
    leveling = more.pop("leveling", None)
    room = RoomSpec(
        inch(240),
        inch(180),
        None if height is None else inch(height),
        stations=stations,
        leveling=leveling,  # type: ignore[arg-type]
    )
    return CeilingSpec(room, **more)  # type: ignore[arg-type]


def found(ceiling: CeilingSpec) -> list[tuple[str, str]]:
    return [(fault.code, fault.pointer) for fault in check(ceiling)]


SOUND = station(10, 10, above_line=20)


@pytest.mark.parametrize(
    ("stations", "code", "pointer"),
    [
        ([SOUND, station(20, 10)], "station_kind", "/room/stations/1"),
        (
            [SOUND, station(20, 10, above_line=20, height=108)],
            "station_kind",
            "/room/stations/1",
        ),
        ([SOUND, station(20, 10, height=108)], "station_kind", "/room/stations/1"),
        (
            [SOUND, station(241, 10, above_line=20)],
            "station_outside_room",
            "/room/stations/1/length",
        ),
        (
            [SOUND, station(10, 181, above_line=20)],
            "station_outside_room",
            "/room/stations/1/width",
        ),
    ],
)
def test_a_station_that_tells_nothing_or_two_things_is_refused(stations, code, pointer):
    assert found(spec(*stations)) == [(code, pointer)]


@pytest.mark.parametrize(("x", "y", "name"), [(241, 10, "length"), (10, 181, "width")])
def test_a_station_lies_between_the_walls(x: int, y: int, name: str):
    outside = [("station_outside_room", f"/room/stations/1/{name}")]
    assert found(spec(SOUND, station(x, y, above_line=20))) == outside


def test_two_stations_have_neither_one_name_nor_one_place():
    doubled = [("station_doubled", f"/room/stations/{n}") for n in (0, 1)]
    assert found(spec(SOUND, station(10, 10, above_line=21))) == doubled
    named = (station(n, 10, above_line=20, name="H1") for n in (10, 20))
    assert found(spec(*named)) == doubled


def test_a_station_without_a_place_is_refused():
    lacking = StationSpec(inch(10), None, above_line=inch(20))
    assert found(spec(lacking)) == [("name_missing", "/room/stations/0/width")]


def test_the_height_of_the_room_is_that_of_its_lowest_station():
    stations = station(10, 10, height=107), station(20, 10, height=109)
    refused = [("height_contradicts_stations", "/room/height")]
    assert found(spec(*stations)) == refused
    assert found(spec(*stations, height=107)) == []
    assert found(spec(*stations, height=None)) == []
    assert found(spec(SOUND, height=None)) == [("height_missing", "/room/height")]
    resolution = resolve(spec(*stations, height=None))
    assert resolution.ceiling.room.height == inch(107)
    assert "/room/height" in {each.pointer for each in resolution.assumptions}


def test_leveling_needs_stations():
    assert found(spec(leveling=LevelingSpec())) == [("leveling_without_stations", "/room/leveling")]


@pytest.mark.parametrize("panel", [None, PanelSpec(), PanelSpec(kind=PanelKind.EXISTING)])
def test_a_ceiling_that_stays_cannot_hang_in_a_plane(panel: PanelSpec | None):
    level = LevelingSpec(panels=PanelsTo.PLANE)
    pointer = "/room/leveling/panels"
    assert found(spec(SOUND, leveling=level, panel=panel)) == [
        ("existing_ceiling_to_plane", pointer)
    ]
    filled = PanelSpec(kind=PanelKind.SHEET_GOODS)
    assert found(spec(SOUND, leveling=level, panel=filled)) == []


@pytest.mark.parametrize(
    ("panel", "to"),
    [
        (None, PanelsTo.CEILING),
        (PanelSpec(kind=PanelKind.SHEET_GOODS, seat=Seat.BETWEEN_SIDES), PanelsTo.CEILING),
        (PanelSpec(kind=PanelKind.SHEET_GOODS, seat=Seat.BETWEEN_BACKING), PanelsTo.PLANE),
        (PanelSpec(kind=PanelKind.SHEET_GOODS, seat=Seat.ABOVE_BACKING), PanelsTo.PLANE),
    ],
)
def test_what_goes_up_before_the_sides_is_taken_to_hang_level(
    panel: PanelSpec | None, to: PanelsTo
):
    resolution = resolve(spec(SOUND, panel=panel))
    assert resolution.ceiling.room.leveling is not None
    assert resolution.ceiling.room.leveling.panels is to
    assert "/room/leveling/panels" in {each.pointer for each in resolution.assumptions}


def test_no_stations_assume_nothing_of_leveling():
    resolution = resolve(spec())
    assert resolution.ceiling.room.leveling is None
    told = {each.pointer for each in resolution.assumptions}
    assert not [pointer for pointer in told if "leveling" in pointer or "station" in pointer]


def test_packing_is_taken_to_be_what_the_highest_station_needs():
    stations = SOUND, station(20, 10, above_line=Fraction(83, 4))
    fixing = resolve(spec(*stations, fixing=FixingSpec())).ceiling.fixing
    assert fixing is not None
    assert fixing.shim == inch(Fraction(3, 4))
