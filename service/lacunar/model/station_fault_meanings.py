"""What the faults of stations and leveling mean."""

from lacunar.model.fault_meaning import FaultMeaning

STATION_FAULTS = {
    "height_missing": FaultMeaning(
        "Height not given",
        "Neither the room nor its stations say how high the ceiling is above the floor.",
        "Give the room's height, at the lowest place of its ceiling.",
    ),
    "station_kind": FaultMeaning(
        "Station without one height",
        "A station has no height or two, or is read from something else than the others.",
        "Read all stations from the finished floor, or all from one level line.",
    ),
    "station_outside_room": FaultMeaning(
        "Station outside the room",
        "A place where the ceiling was measured does not lie between the walls.",
        "Measure it from the datum, the lower left corner of the plan.",
    ),
    "station_doubled": FaultMeaning(
        "Station given twice",
        "Two stations have one name, or lie at one place.",
        "Keep one of them, or give the other its own name.",
    ),
    "height_contradicts_stations": FaultMeaning(
        "Height contradicts the stations",
        "The height of the room is another than that of its lowest station.",
        "Leave the room's height out, or measure again.",
    ),
    "leveling_without_stations": FaultMeaning(
        "Leveling without stations",
        "What is leveled to what is told, but no height to start from.",
        "Give stations, or leave leveling out.",
    ),
    "existing_ceiling_to_plane": FaultMeaning(
        "Existing ceiling in a plane",
        "A ceiling that stays as it is cannot hang level.",
        "Let panels follow the ceiling, or fill the coffers otherwise.",
    ),
}
