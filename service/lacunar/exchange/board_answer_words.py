"""What every field of an answer about boards means, with its unit, by record and field."""

from collections.abc import Mapping

Words = Mapping[str, Mapping[str, str]]

_BOARD = {
    "nominal": "The nominal size they were asked for by; null where there is none.",
    "cover": "The face that one board covers [length].",
    "tongue": "What a board is wider than it covers [length].",
    "gap": "Left open at both edges [length].",
}
_FACTORS = {
    "lineal_factor": "Lineal feet that cover a square foot.",
    "board_foot_factor": "Board feet that cover a square foot; null without a nominal size.",
    "movement": "How much they move; null where nothing was said of the wood.",
}

BOARD_WORDS: Words = {
    "Courses": {
        "across": "What the courses fill, gaps taken off [length].",
        "courses": "How many boards lie side by side.",
        "centered_on": "What lies on the middle line.",
        "edge": "The face that both edge boards show [length].",
        "first_rip": "What the first board is ripped to, its tongue kept [length].",
        "last_rip": "What the last board is ripped to, without its tongue [length].",
    },
    "PanelPlace": {
        "coffer": "The coffer it fills, or the first of those it covers.",
        "x": "Its corner next the datum, along the length run [length].",
        "y": "The same along the width run [length].",
    },
    "BoardField": {
        "coffers": "Ids of the coffers in these fields.",
        "fields": "How many fields of this size there are.",
        "length": "How long each board is [length].",
        "courses": "The boards side by side in one field.",
        "boards": "The boards of all these fields.",
        "lineal": "Those boards in a row [length].",
        "coverage": "The same by the rule of coverage, area over cover [length].",
        "places": "Where each field starts, as planned.",
    },
    "Sorption": {
        "w": "Value W of the sorption equation at the temperature.",
        "k": "Value K of the sorption equation at the temperature.",
        "k1": "Value K1 of the sorption equation at the temperature.",
        "k2": "Value K2 of the sorption equation at the temperature.",
        "moisture": "Moisture content that wood comes to [percent].",
    },
    "WoodMoistureContent": {
        "percent": "Moisture content [percent of the oven-dry weight].",
        "sorption": "How it follows from air; null where it was given.",
    },
    "BoardMovement": {
        "species": "The wood; null where a coefficient was given instead.",
        "cut": "How the boards lay in the log.",
        "fastening": "Whether each board moves by itself, or all as one.",
        "coefficient": "Part of its width a board gains for each percent of moisture.",
        "now": "Moisture when the boards go up.",
        "driest": "Their least moisture in the years to come.",
        "dampest": "Their greatest moisture in the years to come.",
        "moving_width": "What moves as one [length].",
        "shrink": "How much it shrinks [length]; null where no coefficient holds.",
        "swell": "How much it swells [length]; null where no coefficient holds.",
        "lap": "What the trim laps over the boards beside the gap [length]; null without trim.",
    },
    "BoardLayout": {
        "parallel_to": "The run they lie along.",
        "run": "Whether each coffer has its own, or they run through above the beams.",
        **_BOARD,
        "thickness": "Their thickness [length].",
        "overall_width": "Cover and tongue [length].",
        "fields": "What they fill, sizes alike together.",
        "boards": "All boards of the ceiling.",
        "lineal": "All of them in a row [length].",
        "coverage": "The same by the rule of coverage, area over cover [length].",
        **_FACTORS,
    },
    "SheetRip": {
        "part": "Which board of a beam is ripped from sheets.",
        "stock": "The sheet's trade name.",
        "profiles": "Ids of the profiles it is for.",
        "width": "What it is ripped to [length].",
        "strips": "How many a sheet gives, kerfs counted.",
        "one_more": "The widest strip of which a sheet gives one more [length].",
    },
    "LoneBoards": {
        "opening": "What was asked about, from face to face [length].",
        "length": "How long each board is [length]; null where that was not said.",
        **_BOARD,
        "courses": "The boards side by side.",
        "lineal": "All of them in a row [length]; null without a length.",
        "coverage": "The same by the rule of coverage [length]; null without a length.",
        **_FACTORS,
        "cautions": "Advice about craft.",
    },
}
