"""What the faults of ceiling items and wall features mean."""

from lacunar.model.fault_meaning import FaultMeaning

ITEM_FAULTS = {
    "item_not_sized": FaultMeaning(
        "Item not sized",
        "An item has no size, or one told in two ways.",
        "Give a diameter, or else a length and a width.",
    ),
    "item_grid_incomplete": FaultMeaning(
        "Grid of items told in part",
        "A grid of items lacks a count, or a pitch along a run on which it has several.",
        "Give columns and rows, and the pitch along each run with more than one.",
    ),
    "item_place_unclear": FaultMeaning(
        "Place of an item unclear",
        "Where an item is to be is told in part, or in two ways.",
        "Give x and y, or neither to have one in the middle of each coffer.",
    ),
    "too_many_items": FaultMeaning(
        "Too many items",
        "There are more ceiling items than are laid out on one ceiling.",
        "Ask for fewer.",
    ),
    "item_outside_room": FaultMeaning(
        "Item outside the room",
        "An item does not lie between the walls.",
        "Measure its center from the datum, the lower left corner of the plan.",
    ),
    "coffer_not_there": FaultMeaning(
        "No such coffer",
        "An item is to go into a coffer that the grid does not have.",
        "Name one of the coffers there are.",
    ),
    "feature_outside_wall": FaultMeaning(
        "Feature outside its wall",
        "A door, window, fireplace or cabinet does not lie between the ends of its wall.",
        "Measure its center from the datum's end of the wall.",
    ),
    "feature_wall_unknown": FaultMeaning(
        "No such wall",
        "A door, window, fireplace or cabinet is at a wall that the room does not have.",
        "Name a wall as the layout does.",
    ),
    "feature_above_ceiling": FaultMeaning(
        "Feature above the ceiling",
        "The head of a wall feature is higher than the ceiling.",
        "Give its height above the finished floor.",
    ),
}
