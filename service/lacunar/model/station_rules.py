"""Rules about the places at which the ceiling's height was measured."""

from collections import Counter
from collections.abc import Iterator

from lacunar.measure.length import ZERO, Length
from lacunar.model.faults import Fault
from lacunar.model.panel import PanelKind
from lacunar.model.rule_case import RuleCase, missing
from lacunar.model.spec import PanelSpec
from lacunar.model.stations import PanelsTo, StationSpec

_PLACE = "/room/stations"
_KINDS = ("height", "above_line")


def _stations(case: RuleCase) -> Iterator[tuple[str, StationSpec]]:
    for position, station in enumerate(case.spec.room.stations):
        place = f"{_PLACE}/{position}"
        if case.sound(place):
            yield place, station


def stations_have_a_place(case: RuleCase) -> Iterator[Fault]:
    """A station is a place along both runs; neither can be assumed."""
    for place, station in _stations(case):
        for name in ("length", "width"):
            if getattr(station, name) is None:
                yield missing(f"{place}/{name}", f"The station's {name}")


def stations_are_of_one_kind(case: RuleCase) -> Iterator[Fault]:
    """Each station has one height; all are read from the floor, or all from one level line."""
    stations = list(_stations(case))
    told = [[kind for kind in _KINDS if getattr(each, kind) is not None] for _, each in stations]
    first = next((kinds[0] for kinds in told if len(kinds) == 1), None)
    for (place, _), kinds in zip(stations, told, strict=True):
        if len(kinds) == 1 and kinds[0] == first:
            continue
        yield Fault(
            code="station_kind",
            pointer=place,
            message="The station has no height, two heights, or another kind than those before it.",
            remedy="Give each station height, above the floor, or give each above_line, from one"
            " level line up to the ceiling.",
        )


def stations_lie_in_the_room(case: RuleCase) -> Iterator[Fault]:
    """A station lies between the walls."""
    room = case.spec.room
    for place, station in _stations(case):
        for name, at, span in (
            ("length", station.length, room.length),
            ("width", station.width, room.width),
        ):
            if at is None or span is None or not case.sound(f"/room/{name}"):
                continue
            if not ZERO <= at <= span:
                yield Fault(
                    code="station_outside_room",
                    pointer=f"{place}/{name}",
                    message="The station does not lie between the walls.",
                    remedy="Measure its place from the datum, the lower left corner of the plan.",
                    figures={"given": at, "span": span},
                )


def stations_differ(case: RuleCase) -> Iterator[Fault]:
    """Two stations have neither one name nor one place."""
    stations = list(_stations(case))
    names = Counter(each.name for _, each in stations if each.name is not None)
    places = Counter((each.length, each.width) for _, each in stations)
    for place, station in stations:
        doubled = names[station.name] > 1 if station.name is not None else False
        if doubled or places[station.length, station.width] > 1:
            yield Fault(
                code="station_doubled",
                pointer=place,
                message="Another station has the same name or the same place.",
                remedy="Give each place once, under a name of its own or none.",
            )


def height_agrees_with_stations(case: RuleCase) -> Iterator[Fault]:
    """The room's height is that of its lowest station."""
    height = case.spec.room.height
    read: list[Length] = [each.height for _, each in _stations(case) if each.height is not None]
    if height is None or not read or not case.sound("/room/height", _PLACE):
        return
    if height != min(read):
        yield Fault(
            code="height_contradicts_stations",
            pointer="/room/height",
            message="The height of the room is not the height of its lowest station.",
            remedy="Leave height out, or give the height of the lowest station.",
            figures={"height": height, "lowest": min(read)},
        )


def leveling_has_stations(case: RuleCase) -> Iterator[Fault]:
    """Nothing is leveled where no heights are known."""
    room = case.spec.room
    if room.leveling is not None and not room.stations and case.sound("/room/leveling", _PLACE):
        yield Fault(
            code="leveling_without_stations",
            pointer="/room/leveling",
            message="Leveling is told, but no station that it could start from.",
            remedy="Give stations, or leave leveling out.",
        )


def existing_ceiling_stays(case: RuleCase) -> Iterator[Fault]:
    """A ceiling that is left as it is cannot be brought into a plane."""
    leveling, panel = case.spec.room.leveling, case.spec.panel
    pointer = "/room/leveling/panels"
    if leveling is None or leveling.panels is not PanelsTo.PLANE:
        return
    stays = panel in (None, PanelSpec()) or (panel and panel.kind is PanelKind.EXISTING)
    if stays and case.sound(pointer, "/panel"):
        yield Fault(
            code="existing_ceiling_to_plane",
            pointer=pointer,
            message="The existing ceiling stays as it is and cannot hang in a plane.",
            remedy="Let panels be to_ceiling, or fill the coffers with sheet goods or boards.",
        )


STATION_RULES = (
    stations_have_a_place,
    stations_are_of_one_kind,
    stations_lie_in_the_room,
    stations_differ,
    height_agrees_with_stations,
    leveling_has_stations,
    existing_ceiling_stays,
)
