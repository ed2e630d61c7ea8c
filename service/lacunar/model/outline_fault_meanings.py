"""What the faults of outlines mean."""

from lacunar.model.fault_meaning import FaultMeaning

OUTLINE_FAULTS = {
    "outline_kind_unclear": FaultMeaning(
        "Kind of outline unclear",
        "An outline is either sides with their corners' angles, or points, and it has both.",
        "Give one of them.",
    ),
    "outline_too_few_sides": FaultMeaning(
        "Too few sides",
        "No room has fewer than three walls.",
        "Give every side, clockwise from the lower left corner.",
    ),
    "corner_unknown": FaultMeaning(
        "Corner unknown",
        "A check is said to end at a corner that the outline does not have.",
        "Count corners from 1, where the first side starts, clockwise.",
    ),
    "outline_to_framing": FaultMeaning(
        "Outline to framing",
        "With the finish taken off the framing nothing is left of a side, or the sides cross.",
        "Look at the finish of that side and of those beside it.",
    ),
    "outline_side_unknown": FaultMeaning(
        "Side unknown",
        "A finish or bow is told of a side that the outline does not have, or told twice.",
        "Count sides from 1, clockwise, and tell each once.",
    ),
    "through_boards_in_outline": FaultMeaning(
        "Through boards in an outline",
        "Boards that run through above the beams are laid out in rooms with four walls alone.",
        "Lay boards per coffer.",
    ),
    "outline_does_not_close": FaultMeaning(
        "Outline does not close",
        "The way round the room does not end where it began, or a check disagrees with it, by more"
        " than the tolerance.",
        "Take the side that is named again first.",
    ),
    "outline_folded": FaultMeaning(
        "Outline crosses itself",
        "Going round the sides clockwise, the outline meets itself, or goes the other way.",
        "Look whether sides or corners were exchanged, and go round clockwise.",
    ),
    "outline_walls_in_line": FaultMeaning(
        "Two sides are one wall",
        "Two sides one after the other lie along the same way.",
        "Give them as one side.",
    ),
    "outline_wall_missing": FaultMeaning(
        "No wall furthest out",
        "A run starts or ends where the room reaches furthest, and there is a corner, not a wall.",
        "Turn the room so that a wall lies furthest out on each of its four sides.",
    ),
    "outline_wall_unknown": FaultMeaning(
        "Wall unknown",
        "It is said what stands at a wall that the outline does not have beyond W1 to W4.",
        "Name walls as the layout does, from W5 on; W1 to W4 are told in the grid.",
    ),
    "outline_wall_too_short": FaultMeaning(
        "Wall too short for what stands there",
        "What stands at walls next to each other leaves nothing of the wall between them.",
        "Let nothing stand at that wall, or narrower beams.",
    ),
    "outline_has_no_coffers": FaultMeaning(
        "No coffers in the room",
        "Beams and what stands at the walls leave no coffer within the outline.",
        "Give fewer coffers or narrower beams.",
    ),
}
