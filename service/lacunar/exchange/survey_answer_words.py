"""What the fields of a survey's answer mean, with their units."""

from lacunar.exchange.board_answer_words import Words

SURVEY_WORDS: Words = {
    "LengthCorrection": {
        "of": "Which measurement: W1 to W4, rising, falling.",
        "measured": "As it was measured [length].",
        "adjusted": "As it was taken [length].",
    },
    "AngleCorrection": {
        "of": "The corner, by its walls.",
        "measured": "As it was measured [degrees].",
        "adjusted": "As it was taken [degrees].",
    },
    "SurveyedCorner": {
        "id": "The walls that meet there.",
        "angle": "Angle inside the room [degrees].",
    },
    "SurveyedWall": {
        "wall": "W1 to W4.",
        "length": "From corner to corner, between finished faces [length].",
        "bow": "How far its middle stands into the room; below zero, out [length].",
    },
    "SurveyReport": {
        "kind": "What the shape rests on.",
        "closing_error": "By how much the survey contradicts itself [length]; null where nothing"
        " was measured that could.",
        "tolerance": "Up to where that is shared out [length].",
        "lengths": "Sides and diagonals that were changed for it.",
        "angles": "Angles that were changed for it.",
        "corners": "The corners, counter-clockwise from the datum.",
        "walls": "The walls, clockwise from W1.",
        "rising": "Diagonal from the datum, between finished faces [length].",
        "falling": "The other diagonal [length].",
    },
    "CrookedRun": {
        "run": "Which of the two runs.",
        "clear": "The narrowest clear line, which is divided [length].",
        "moved": "How far it was moved towards the end wall to share the excess [length].",
        "before_start": "How far the start wall lies before it, at the start of the other run"
        " [length].",
        "before_end": "The same at the end of the other run [length].",
        "span_at_start": "From wall to wall at the start of the other run [length].",
        "span_at_end": "From wall to wall at the end of the other run [length].",
    },
    "CrookedWall": {
        "wall": "W1 to W4.",
        "strip": "Id of the wall beam or soffit that takes the gap up; null at a bare wall.",
        "at_start": "Its width at the start of the run along the wall, gap included [length].",
        "at_end": "Its width at the end of that run [length].",
        "taper": "The difference of both [length].",
        "seen": "Whether the taper is past the threshold of the spec.",
        "scribe": "What is left on the edge at the wall for scribing [length].",
        "widest": "Width of the board to start from [length].",
        "boards": "The boards of a beam there that reach the wall; empty where none stands, at a"
        " soffit, and where the grid follows the walls.",
    },
    "StripBoard": {
        "part": "Which board it is.",
        "at_start": "Its width at the start of the run along the wall [length].",
        "at_end": "Its width at the end of that run [length].",
        "widest": "Width of the board to start from [length].",
        "stock": "What it is ripped from: the beam's own stock, or the next wider one of its kind.",
        "too_narrow": "Whether there is none of its kind that is wide enough.",
    },
    "ModeCorner": {
        "at": "Where it lies, from the clear rectangle's lower left corner.",
        "angle": "Angle inside the coffer [degrees].",
    },
    "ModeCoffer": {
        "id": "Row letter and column number.",
        "corners": "Its corners, counter-clockwise from the one next the datum.",
        "towards_w1": "Its side towards W1 [length].",
        "towards_w2": "Its side towards W2 [length].",
        "towards_w3": "Its side towards W3 [length].",
        "towards_w4": "Its side towards W4 [length].",
        "rising": "Its diagonal from the corner next the datum [length].",
        "falling": "Its other diagonal [length].",
        "out_of_square": "The most a corner is off a right angle [degrees].",
    },
    "CrookedMode": {
        "mode": "keep_square: beams square to the control line; follow_walls: each wall's line"
        " divided by itself.",
        "chosen": "Whether the layout is this one.",
        "shortest": "The shortest side along the length run [length].",
        "longest": "The longest side along the length run [length].",
        "narrowest": "The shortest side along the width run [length].",
        "widest": "The longest side along the width run [length].",
        "out_of_square": "The most any corner is off a right angle [degrees].",
        "coffers": "All coffers, by row and column.",
    },
    "CrookedRoom": {
        "survey": "The survey, closed.",
        "mode": "The way the grid is laid out.",
        "control": "The wall, or the member by its name, that the grid is square to; null where it"
        " follows the walls.",
        "control_by": "Whether control is a wall or a member; null where there is none.",
        "square": "Whether every wall is, so that nothing tapers.",
        "grid_diagonal": "Both diagonals of the clear rectangle, to check the grid by [length].",
        "runs": "Both runs at their two ends. All positions of the layout are from the lower left"
        " corner of the clear rectangle; marks are from the wall at their end.",
        "walls": "What stands at each wall takes up.",
        "modes": "Both ways to lay the grid out, to be compared.",
    },
}
