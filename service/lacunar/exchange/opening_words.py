"""What every field of measured openings means, with its unit, by record and field."""

from collections.abc import Mapping

_DIFFERENCE = {
    "planned": "As planned [length].",
    "measured": "As measured [length]; null where it was not.",
    "difference": "As measured less as planned [length]; null where it was not measured.",
}
_BETWEEN = "The two walls toward which the sides at this corner lie."

OPENING_WORDS: Mapping[str, Mapping[str, str]] = {
    "MeasuredSide": {"toward": "The wall it lies toward, W1 to W4.", **_DIFFERENCE},
    "MeasuredDiagonal": {
        "name": "Rising or falling to the right on the plan.",
        **_DIFFERENCE,
    },
    "OpeningCorner": {
        "between": _BETWEEN,
        "angle": "The corner, by one diagonal or as the mean of both [degrees].",
        "by_rising": "By the rising diagonal [degrees]; null without it.",
        "by_falling": "By the falling diagonal [degrees]; null without it.",
        "lean": "How far its longer side stands off square at its other end [length].",
    },
    "MeasuredOpening": {
        "coffer": "Id of the coffer.",
        "sides": "Its sides toward W1, W2, W3 and W4.",
        "diagonals": "Its rising and its falling diagonal.",
        "fit_length": "What square things are sized by along the length run: the shorter side, or"
        " the planned size where not both were measured [length].",
        "fit_width": "The same along the width run [length].",
        "corners": "Its corners, counter-clockwise from the one next the datum; empty where not all"
        " sides and a diagonal were measured.",
        "closing_error": "What both diagonals contradict each other by [length]; null without"
        " both.",
        "out_of_square": "The greatest lean of any corner, or, corners not being known, half of"
        " what opposite sides differ [length]; null where sides were not measured.",
        "squareness": "Whether it takes a square frame, or whether nobody knows.",
        "missing": "What was not measured, in words.",
    },
    "CornerCut": {"between": _BETWEEN, "saw": "How the saw is set for this corner."},
    "OutOfSquareCrown": {
        "coffer": "Id of the coffer.",
        "chosen": "How its crown goes in, as the spec asks; coped where corners are not known.",
        "coped": "Its pieces, coped in place, in the order they go up.",
        "mitred": "Its pieces as a frame mitred to its own corners; empty without a diagonal.",
        "corners": "The saw at each of its corners; empty without a diagonal.",
    },
    "PanelCorner": {
        "between": _BETWEEN,
        "along": "Along the rectangle from its lower left corner [length].",
        "up": "Up the rectangle from its lower left corner [length].",
    },
    "TaperedPanel": {
        "coffer": "Id of the coffer.",
        "sides": "Its sides toward W1, W2, W3 and W4 [length].",
        "length": "The rectangle it is cut from, along its side toward W4 [length].",
        "width": "The rectangle it is cut from, square to that side [length].",
        "corners": "Where in that rectangle its corners lie.",
    },
    "TaperedRip": {
        "toward": "The wall toward which this edge board lies.",
        "start": "Its face at the end next the start of the run [length].",
        "end": "Its face at the other end [length]; nothing or less is a board that runs out.",
    },
    "TaperedCourse": {
        "number": "Counted from 1 at the near side.",
        "near_edge": "Length of its edge next the near side [length].",
        "far_edge": "Length of its other edge [length].",
        "cut_from": "The length of square board that it is cut from [length].",
    },
    "TaperedField": {
        "coffer": "Id of the coffer.",
        "turned": "How far its middle line is turned from the near side [degrees].",
        "start_cut": "How far end cuts are off square at the start of the run [degrees]; above"
        " zero, the near edge is set back.",
        "end_cut": "The same at the other end [degrees].",
        "edges": "Both edge boards, the near one first.",
        "courses": "Its courses from the near side.",
    },
    "MeasuredOpenings": {
        "grid": "The grid they were measured in.",
        "openings": "Every coffer that was measured, in the order of the grid.",
        "not_measured": "Ids of the coffers that stand as planned.",
        "crown": "Crown of the coffers out of square, both ways it can go in.",
        "panels": "Sheet panels that are no rectangles.",
        "boards": "Fields of boards that are no rectangles.",
    },
}
