"""What every field of a cutting plan means, with its unit, by record and field."""

from lacunar.exchange.board_answer_words import Words
from lacunar.exchange.sheet_cutting_words import SHEET_CUTTING_WORDS

_NONE = "null where stock has no prices"
_IDS = {"stock": "Id of the stock.", "length": "How long it is [length]."}

CUTTING_WORDS: Words = {
    **SHEET_CUTTING_WORDS,
    "PieceOnStick": {
        "piece": "Id of the piece.",
        "length": "Its length [length].",
        "start": "Where it starts, from the stick's end before trimming [length].",
        "end": "Where it ends [length].",
    },
    "Stick": {
        "number": "Counted from 1, the longest first.",
        "stock": "Id of the stock it is.",
        "length": "How long it is [length].",
        "pattern": "Number of the pattern it is cut to.",
        "pieces": "What is cut from it, in this order.",
        "offcut": "What is left behind the last saw cut, the far end's trim included [length].",
        "usable": "Whether that is long enough to be kept.",
    },
    "PatternPart": {
        "length": "A length of piece [length].",
        "quantity": "How many of it the pattern has.",
    },
    "CutPattern": {
        "number": "Counted from 1, the longest first.",
        "stock": "Id of the stock that is cut so.",
        "times": "How many sticks are cut so.",
        "parts": "The pieces of one stick, the longest first.",
        "offcut": "What is left of each [length].",
    },
    "StockTaken": {
        **_IDS,
        "quantity": "How many are taken.",
        "cost": f"What they cost together; {_NONE}.",
    },
    "PieceValue": {
        "length": "The piece [length].",
        "size": "What it takes of a stick, one saw cut counted [ticks].",
        "quantity": "How many are wanted.",
        "value": "What one is taken to be worth.",
    },
    "StockHolds": {
        "stock": "Id of the stock.",
        "capacity": "What it has for pieces, one saw cut added [ticks].",
        "price": "What one costs [units of cost].",
        "supply": "How many there are; null for as many as wanted.",
        "holds": "The most value that one of it can hold, by any cut.",
    },
    "Certificate": {
        "tick": "What sizes and capacities are counted in [length].",
        "pieces": "Values of the pieces.",
        "stock": "What the stock can hold.",
        "factor": "The factor t from value to cost, as a fraction.",
        "proves": "t times the value of all pieces, less supply times what t times holds is above"
        " the price, for each stock with a supply; as a fraction [units of cost].",
        "rounded_up": "The least total of prices that is not below that [units of cost].",
        "unit": "One unit of cost, as money; where nothing has a price, as a length.",
    },
    "LengthChoice": {
        "stock": "Ids of the stock chosen.",
        "lower_bound": f"No plan from these costs less; {_NONE}.",
        "least_bought": "No plan from these buys less [length]; null where stock has prices.",
    },
    "OneLength": {
        **_IDS,
        "quantity": "How many of it are bought.",
        "cost": f"What the plan costs; {_NONE}.",
        "more": f"What it costs more than the plan; {_NONE}.",
        "more_bought": "How much more length is bought [length]; 0 where stock has prices.",
        "proven_best": "Whether no plan from this length alone is cheaper.",
    },
    "LengthPlans": {
        "cost": "What all materials cost; null where stock of one has no prices.",
        "lower_bound": "Proven: they cannot cost less; null likewise.",
        "plans": "The plan of each material.",
        "clock_struck": "Whether a clock ended it before its counts did, so that another machine"
        " could find another plan.",
    },
    "MaterialPlan": {
        "material": "The material; empty where it has no name.",
        "pieces": "How many pieces are cut.",
        "cost": f"What it costs, salvage of offcuts used included; {_NONE}.",
        "lower_bound": f"Proven: no plan costs less; {_NONE}.",
        "gap": f"The most that a cheaper plan could save; {_NONE}.",
        "bought": "All lengths that are bought, in a row [length].",
        "least_bought": "Proven: no plan buys less [length]; null where stock has prices.",
        "proven_best": "Whether no plan is better.",
        "proof": "bound: the certificate's bound is the cost; search: every pattern that a better"
        " plan could hold was written out, and none makes one; null where it is not proven.",
        "exact_sizes": "Whether all sizes are whole ticks; if not, pieces are planned a little"
        " larger than they are, and the bound is for pieces a little smaller.",
        "taken": "What is taken of each stock.",
        "patterns": "The different ways in which sticks are cut.",
        "sticks": "Every stick.",
        "certificate": "Whole numbers by which anyone can check a lower bound.",
        "choices": "With most_lengths: each choice of lengths, and what is proven of it.",
        "one_length": "What buying one length alone would cost, for each that is long enough.",
    },
}
