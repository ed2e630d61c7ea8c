"""What the faults of searches for options mean."""

from lacunar.model.fault_meaning import FaultMeaning

CHOOSING_FAULTS = {
    "beams_are_up": FaultMeaning(
        "Beams are up",
        "Options were asked for a ceiling whose openings have been measured, so that its beams"
        " hang.",
        "Leave the measured openings out to compare with other layouts.",
    ),
    "choice_out_of_bounds": FaultMeaning(
        "Choice out of bounds",
        "A number that limits the search for options is none of its kind.",
        "Give a number within the bounds that are named.",
    ),
    "limits_crossed": FaultMeaning(
        "Limits crossed",
        "The least that is to be tried is more than the most.",
        "Exchange them, or give one of them alone.",
    ),
    "counts_follow_weights": FaultMeaning(
        "Counts follow from weights",
        "Numbers of coffers are to be tried along a run whose coffers have a weight each.",
        "Leave out the weights of the coffers, or the numbers to be tried.",
    ),
    "feature_not_there": FaultMeaning(
        "No such wall feature",
        "Coffers or beams are to be centered on a wall feature that the room does not have.",
        "Name a wall feature of the room.",
    ),
    "weights_all_zero": FaultMeaning(
        "All weights are zero",
        "Weights were given, and none of them counts for anything.",
        "Give one criterion a weight above 0, or leave the weights out.",
    ),
    "option_not_there": FaultMeaning(
        "No such option",
        "Small changes were asked for of an option that the search does not find.",
        "Give the number of an option that is there.",
    ),
    "crown_longer_than_sticks": FaultMeaning(
        "Crown longer than its sticks",
        "Every layout within the limits has pieces of crown that no stick is long enough for.",
        "Give longer sticks, or let there be more coffers.",
    ),
    "stock_without_prices": FaultMeaning(
        "Stock without prices",
        "What is sold and on hand was told for options, which use it for what they cost alone, and"
        " no prices were.",
        "Give a price list as well, or leave the stock out.",
    ),
    "no_option_in_limits": FaultMeaning(
        "Nothing within the limits",
        "No number of coffers gives openings between the smallest and the largest.",
        "Let openings be smaller or larger, or beams narrower.",
    ),
}
