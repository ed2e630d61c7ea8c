"""What every field of a cutting plan of sheets means, with its unit, by record and field."""

from lacunar.exchange.board_answer_words import Words

_NONE = "null where sheets have no prices"
_PART = {
    "part": "The part of the sheet: the whole `sheet`, or `1a` and `1b`, which cut 1 leaves.",
    "x": "Where it starts along the sheet's length [length].",
    "y": "Where it starts along the sheet's width [length].",
    "length": "How long it is along the sheet's length [length].",
    "width": "How long it is along the sheet's width [length].",
}
_SHEET = {
    "sheet": "Id of the sheet's size.",
    "length": "Its edge along the grain [length].",
    "width": "Its edge across the grain [length].",
}

SHEET_CUTTING_WORDS: Words = {
    "SheetCut": {
        "number": "Counted from 1 in the order in which cuts are made.",
        **_PART,
        "across": "Which edge of the part is divided: its length or its width.",
        "at": "How much of that is left before the saw, from x or y [length].",
    },
    "PanelOnSheet": {
        "panel": "Id of the panel.",
        **_PART,
        "turned": "Whether the panel's length lies along the sheet's width.",
    },
    "SheetOffcut": {**_PART, "usable": "Whether both edges are long enough to be kept."},
    "CutSheet": {
        "number": "Counted from 1.",
        **_SHEET,
        "pattern": "Sheets of one number are cut alike.",
        "cuts": "Every cut from edge to edge of a part, in order; trimmed edges come first.",
        "panels": "What is cut from it.",
        "offcuts": "What is left of it.",
    },
    "SheetTaken": {
        **_SHEET,
        "quantity": "How many are taken.",
        "cost": f"What they cost together; {_NONE}.",
    },
    "PanelValue": {
        "length": "One edge of the panel [length].",
        "width": "Its other edge [length].",
        "edges": "Both edges with one saw cut each, for each way it may lie [ticks].",
        "quantity": "How many are wanted.",
        "value": "What one is taken to be worth.",
    },
    "SheetHolds": {
        "sheet": "Id of the sheet's size.",
        "edges": "Both edges with one saw cut added, trimming taken off [ticks].",
        "price": "What one costs [units of cost].",
        "supply": "How many there are; null for as many as wanted.",
        "holds": "The most value that one can hold, by any cuts from edge to edge.",
    },
    "SheetCertificate": {
        "tick": "What edges are counted in [length].",
        "panels": "Values of the panels.",
        "sheets": "What the sheets can hold.",
        "factor": "The factor t from value to cost, as a fraction.",
        "proves": "t times the value of all panels, less supply times what t times holds is above"
        " the price, for each size with a supply; as a fraction [units of cost].",
        "rounded_up": "The least total of prices that is not below that [units of cost].",
        "unit": "One unit of cost, as money; where nothing has a price, as an area.",
    },
    "SheetPlan": {
        "material": "The material; empty where it has no name.",
        "panels": "How many panels are cut.",
        "cost": f"What it costs; {_NONE}.",
        "lower_bound": f"Proven: no plan costs less; {_NONE}.",
        "gap": f"The most that a cheaper plan could save; {_NONE}.",
        "area": "The area of all sheets taken, as a fraction [square feet].",
        "least_area": "Proven: no plan takes less [square feet]; null where sheets have prices.",
        "proven_best": "Whether no plan is better.",
        "proof": "bound: the certificate's bound is the cost; null where it is not proven.",
        "all_places": "Whether cuts were tried at every place that matters; if not, the bound is by"
        " area alone.",
        "taken": "What is taken of each size.",
        "sheets": "Every sheet.",
        "certificate": "Whole numbers by which anyone can check the lower bound.",
    },
    "SheetPlans": {
        "cost": "What all materials cost; null where sheets of one have no prices.",
        "lower_bound": "Proven: they cannot cost less; null likewise.",
        "plans": "The plan of each material.",
        "clock_struck": "Whether a clock ended it before its counts did, so that another machine"
        " could find another plan.",
    },
}
