"""What the faults of surveyed rooms mean."""

from lacunar.model.fault_meaning import FaultMeaning

SURVEY_FAULTS = {
    "room_measured_twice": FaultMeaning(
        "Room measured twice",
        "Length or width is given beside a survey, and nothing says which of them holds.",
        "Leave length and width out: the survey has them.",
    ),
    "survey_kind_unclear": FaultMeaning(
        "Kind of survey unclear",
        "A survey is either four sides or four points, and it has both, or neither.",
        "Give the four sides with a diagonal or angles, or the four points alone.",
    ),
    "diagonal_missing": FaultMeaning(
        "Diagonal missing",
        "Four sides alone do not fix a room's shape: it can lean either way.",
        "Measure a diagonal, better both, or the four corner angles.",
    ),
    "crooked_not_surveyed": FaultMeaning(
        "Nothing surveyed",
        "It is said how the grid lies in a crooked room, and the room is given as a rectangle.",
        "Give a survey, or leave that out.",
    ),
    "control_line_unknown": FaultMeaning(
        "Control line unknown",
        "The grid is to be square to something that is neither a wall nor a named member.",
        "Name a wall or a member.",
    ),
    "mode_without_setting": FaultMeaning(
        "Not of this way to lay out",
        "Something is said that only the other way to lay out a grid in a crooked room knows.",
        "Leave it out, or choose the other way.",
    ),
    "strip_without_room": FaultMeaning(
        "No room for a strip",
        "Half of the excess was moved to one end, and at the other nothing is left for what stands"
        " at the wall.",
        "Leave the excess at the end where it lies, or make that strip wider.",
    ),
    "survey_impossible": FaultMeaning(
        "Survey impossible",
        "Sides and diagonals that were measured make no four-cornered room.",
        "Take the measurements that are named again.",
    ),
    "survey_does_not_close": FaultMeaning(
        "Survey does not close",
        "What was measured contradicts itself by more than the tolerance.",
        "Take the measurement that is named again first.",
    ),
    "survey_folded": FaultMeaning(
        "Room folded over or mirrored",
        "The corners do not go round the room counter-clockwise, all of them turning left.",
        "Look whether corners, sides or angles were exchanged.",
    ),
    "crooked_wall_bare": FaultMeaning(
        "Bare wall out of square",
        "Nothing stands at a wall that is out of square, so that coffers would have to taper.",
        "Put a half or full beam or a soffit there, which takes the taper up.",
    ),
    "room_too_crooked": FaultMeaning(
        "Room too crooked",
        "The walls leave no rectangle that is square to the control line.",
        "Look whether the survey is right, or name another control line.",
    ),
}
