"""What the faults of joists, fasteners and blocks mean."""

from lacunar.model.fault_meaning import FaultMeaning

FIXING_FAULTS = {
    "joist_outside_room": FaultMeaning(
        "First joist outside the room",
        "The first joist does not lie between the walls.",
        "Measure its center from the finished start wall, the wall next the datum.",
    ),
    "joists_overlap": FaultMeaning(
        "Joists overlap",
        "The joists are as wide as they stand apart.",
        "Give the spacing from center to center.",
    ),
    "blocking_in_closed_ceiling": FaultMeaning(
        "Blocking in a closed ceiling",
        "Blocking cannot be let in between joists that a finish hides.",
        "Ask for a skin or anchors, or open the ceiling up.",
    ),
    "fastener_size_unknown": FaultMeaning(
        "Fastener size not known",
        "No fastener of this kind is published in this size.",
        "Write one of the sizes that are named.",
    ),
    "fastener_count": FaultMeaning(
        "Number of fasteners",
        "There are no fasteners, or more than can go into one joist.",
        "Ask for a number within the bounds that are named.",
    ),
    "ratio_too_fine": FaultMeaning(
        "Ratio too fine",
        "A specific gravity or a moisture content has more decimals than are known of any.",
        "Write at most 8 decimals.",
    ),
    "ratio_out_of_bounds": FaultMeaning(
        "Ratio out of bounds",
        "A specific gravity or a moisture content is no plausible one.",
        "Write gravity over water's, and moisture as a share such as 0.12.",
    ),
}
