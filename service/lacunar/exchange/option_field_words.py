"""What every field of found options means, with its unit, by record and field."""

from collections.abc import Mapping

OPTION_WORDS: Mapping[str, Mapping[str, str]] = {
    "Judged": {
        "criterion": "What it is judged by: squareness, longer side by shorter of the coffer that"
        " is least square; seams of sheets in panels; joints, where beams meet or end, corners of"
        " mouldings and splices; cuts, both ends of each board and moulding; crown_left, crown that"
        " is bought and not used; cost, what is to be paid by the price list, where all layouts"
        " lack prices of the same things; headroom below the lowest beam; between_joists, lines of"
        " backing along the joists that lie on none; conflicts of ceiling items, and of beams with"
        " wall features; off_center, how far the middle of what is over a feature lies off its"
        " center."
        " Less is better, but for headroom. What says nothing of a ceiling is left out.",
        "figure": "What it comes to: a length [length], a count, a ratio or an amount.",
    },
    "OptionRun": {
        "run": "Which run it is.",
        "coffers": "How many coffers it has [count].",
        "start": "What stands at its start wall, and on the face of a soffit.",
        "end": "What stands at its end wall, and on the face of a soffit.",
        "smallest_opening": "Its smallest clear opening [length].",
        "largest_opening": "Its largest clear opening [length].",
        "beam_width": "Finished width of the beams that divide it [length].",
    },
    "SticksBought": {
        "length": "How long the sticks are [length].",
        "quantity": "How many are bought [count].",
    },
    "CrownStock": {
        "pieces": "How many pieces of crown there are [count].",
        "used": "All pieces, long points end to end [length].",
        "bought": "All sticks, end to end [length].",
        "sticks": "What is bought.",
        "proven_best": "Whether it is proven that no less crown can be bought.",
    },
    "OptionCost": {
        "currency": "What amounts are told in.",
        "materials": "All lines of materials.",
        "labor": "All lines of labor.",
        "others": "All other lines.",
        "total": "What is to be paid, with overhead, contingency, markup or margin, and tax: the"
        " total of an estimate of this option alone, by the same prices and stock.",
        "complete": "Whether everything has a price and is counted; if not, the total will be"
        " more.",
        "lacks": "What has no price, by the section of an estimate, or is built and not counted.",
    },
    "Behind": {
        "criterion": "The criterion in which it is furthest from the best, on the way from the best"
        " option to the worst.",
        "option": "Number of the option that is best in it.",
        "than": "What that one comes to, a length [length], a count, a ratio or an amount.",
    },
    "Option": {
        "number": "Its number, from 1; with weights the best first, else by the criteria in their"
        " order.",
        "coffers": "How many whole coffers it has [count].",
        "length": "The length run.",
        "width": "The width run.",
        "through": "Which beams run through at crossings.",
        "judged": "What it comes to by each criterion.",
        "crown": "Its crown and the sticks that are bought for it; null without crown.",
        "cost": "What it costs by the price list; null without one.",
        "fillers": "Pieces of panels narrower than a quarter of a sheet [count].",
        "grid_id": "Name of its grid, as in layouts.",
        "stands_out_by": "The fewest criteria of which no other option is as good in all; empty"
        " where another one comes to the same in everything, or there is no other.",
        "behind": "Where it comes off worst; null where it does nowhere.",
        "score": "0 for the best in all that has a weight, 1 for the worst; null without weights.",
    },
    "SearchCounts": {
        "combinations": "How many combinations were compared by their runs alone [count].",
        "passed_over": "How many of them were not to be laid out [count].",
        "to_lay_out": "How many were to be laid out and taken off in full [count].",
        "laid_out": "How many were [count].",
        "cannot_be_built": "How many of these cannot be built [count].",
        "short_of_headroom": "How many had less headroom than the limit, where others had enough"
        " [count].",
        "crown_too_long": "How many had pieces of crown longer than all sticks [count].",
        "short_of_stock": "How many have parts that the told stock is too short for, or there is"
        " too little of it [count].",
        "worth_considering": "How many are told, as no other is at least as good in everything and"
        " better in something [count].",
        "stopped": "Whether it was stopped before it was done.",
    },
    "NotSearched": {
        "code": "A word for what was left out.",
        "text": "What was left out.",
        "figures": "The figures it was left out by.",
    },
    "NudgeChange": {
        "criterion": "What changes.",
        "before": "What the option comes to, a length [length], a count, a ratio or an amount.",
        "after": "What it comes to after the change, of the same kind [length].",
        "better": "Whether that is better.",
    },
    "Nudge": {
        "kind": "What is changed: the width of all beams, or what stands at one wall.",
        "wider": "By how much beams are wider, below zero narrower [length]; null at a wall.",
        "wall": "At which wall; null where beams are wider.",
        "condition": "What stands there instead; null where beams are wider.",
        "changes": "The criteria in which it differs.",
        "sticks_saved": "Sticks of crown saved; below zero where it takes more [count].",
        "seams_saved": "Seams of sheets saved; below zero where there are more [count].",
        "fillers_saved": "Narrow pieces of panels saved; below zero where there are more [count].",
        "money_saved": "How much less is to be paid, below zero where it is more; null without"
        " prices, and where both lack prices of different things.",
        "saves": "Whether it saves sticks, seams, fillers or money, and takes more of none of"
        " them.",
    },
    "Nudges": {
        "option": "Number of the option that is changed.",
        "tried": "How many changes were tried [count].",
        "nudges": "Those that can be built, what saves something first, and most money.",
    },
}
