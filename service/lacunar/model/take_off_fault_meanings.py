"""What the faults of take-offs mean."""

from lacunar.model.fault_meaning import FaultMeaning

TAKE_OFF_FAULTS = {
    "waste_out_of_bounds": FaultMeaning(
        "Waste out of bounds",
        "Waste is given as something that is no share of what is needed.",
        "Write a tenth as 0.1.",
    ),
    "coats_out_of_bounds": FaultMeaning(
        "Too many coats",
        "More coats of primer or paint are asked for than anybody puts on.",
        "Check the figure.",
    ),
    "coverage_out_of_bounds": FaultMeaning(
        "Coverage out of bounds",
        "A volume of primer or paint is said to cover more or less than any does.",
        "Check the figure and its unit, ft2/gal or m2/L.",
    ),
    "pool_too_large": FaultMeaning(
        "Too much in one take-off",
        "The ceilings pooled in one take-off have more coffers than are taken off at once.",
        "Take them off in several parts.",
    ),
    "pack_out_of_bounds": FaultMeaning(
        "Pack out of bounds",
        "A pack is said to hold nothing, or more than is sold in one.",
        "Check the figure and its unit.",
    ),
    "pack_unit_unlike": FaultMeaning(
        "Pack in another unit",
        "A pack is said to hold so much of a unit in which what it is of is not told.",
        "Say how much it holds in the unit that the material list has, or its metric one.",
    ),
    "pool_empty": FaultMeaning(
        "No ceiling in a take-off",
        "A take-off was asked for with an empty list of ceilings.",
        "Send at least one ceiling.",
    ),
}
