"""What the faults of panels, and of the wood boards are made of, mean."""

from lacunar.model.fault_meaning import FaultMeaning

PANEL_FAULTS = {
    "panel_field_unsuited": FaultMeaning(
        "Field of another kind of panel",
        "Something is said that has no meaning for the kind of panel asked for.",
        "Leave it out, or ask for another kind.",
    ),
    "through_boards_seated_lower": FaultMeaning(
        "Through boards seated below the beams",
        "Boards that run through from coffer to coffer are to end at the beams.",
        "Leave the seat out, or let each coffer have boards of its own.",
    ),
    "panel_kind_unclear": FaultMeaning(
        "Kind of panel unclear",
        "What is said of the panel belongs partly to sheets, partly to boards.",
        "Give the kind, and leave out what belongs to the other.",
    ),
    "wood_not_said": FaultMeaning(
        "Wood not said",
        "Movement is asked for of boards of which nobody says what wood they are.",
        "Give the species, or a coefficient of its own.",
    ),
    "coefficient_given_twice": FaultMeaning(
        "Coefficient of movement given twice",
        "A species with a published coefficient and another coefficient are given.",
        "Keep one of them.",
    ),
    "measure_out_of_bounds": FaultMeaning(
        "Percentage, temperature or coefficient out of bounds",
        "A number lies where no such thing lies, so that it is surely a slip of the pen.",
        "Check the figure and what it counts.",
    ),
    "moisture_range_reversed": FaultMeaning(
        "Range of moisture reversed",
        "The driest moisture is more than the dampest.",
        "Exchange the two.",
    ),
}
