"""What the faults of measured openings mean."""

from lacunar.model.fault_meaning import FaultMeaning

OPENING_FAULTS = {
    "measured_in_other_grid": FaultMeaning(
        "Measured in another grid",
        "The openings were measured in another grid than this ceiling has: beams were moved, or"
        " coffers became more or fewer, since. Nothing tells which sizes still hold.",
        "Send the spec that was measured; or measure what changed, and name the new grid.",
    ),
    "coffer_not_in_grid": FaultMeaning(
        "No such coffer",
        "A coffer was measured that the grid does not have.",
        "Take its id from the plan: a row letter and a column number.",
    ),
    "opening_told_otherwise": FaultMeaning(
        "Coffer told otherwise",
        "A whole coffer is measured by the walls its sides lie toward, a cut one by the numbers of"
        " its sides and corners.",
        "Tell it as the layout does.",
    ),
    "coffer_measured_twice": FaultMeaning(
        "Coffer measured twice",
        "There are two sets of sizes for one coffer.",
        "Keep the one that holds.",
    ),
    "opening_cannot_close": FaultMeaning(
        "Opening cannot close",
        "No opening has these sides with this diagonal, or none that beams could leave.",
        "Measure the three lengths that are named again.",
    ),
    "opening_does_not_close": FaultMeaning(
        "Opening does not close",
        "Sides and diagonals of a coffer contradict each other by more than a tape is off.",
        "Take the measurement that is named again; if it holds, the others.",
    ),
}
