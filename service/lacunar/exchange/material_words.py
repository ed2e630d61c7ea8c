"""What every field of a material list means, with its unit, by record and field."""

from lacunar.exchange.board_answer_words import Words

_COST = "null where stock has no prices"

MATERIAL_WORDS: Words = {
    "Bought": {
        "name": "What one is called: its length, its size, or what a pack holds.",
        "stock": "Its id in the cutting plan; empty where nothing is cut from it.",
        "length": "How long it is [length]; null of packs.",
        "width": "How wide a sheet is [length]; null of sticks and packs.",
        "holds": "How much of the line's unit one has.",
        "quantity": "How many are bought [count].",
        "cost": f"What they cost together; {_COST}, and of packs.",
    },
    "PartOnLine": {
        "mark": "Part mark, as in the take-off of the same ceilings.",
        "quantity": "How many there are [count].",
        "pieces_each": "Of how many pieces one is joined because it is longer than all stock"
        " [count]; else 1.",
    },
    "LinePlan": {
        "cost": f"What it costs, salvage of offcuts used included; {_COST}.",
        "lower_bound": f"Proven: no plan costs less; {_COST}.",
        "least_amount": "Proven: no plan buys less of the line's unit; null where stock has"
        " prices.",
        "proven_best": "Whether no plan is better.",
        "proof": "What shows it, as in cutting plans; null where it is not proven.",
        "yield_percent": "How much of what is bought, or taken from what is on hand, goes into"
        " parts [percent].",
        "one_length": "What buying one length alone would come to, for each that is long enough.",
    },
    "MaterialLine": {
        "number": "Counted from 1 [count].",
        "kind": "How it is sold: as a stick, a sheet, a board that fills coffers, in packs or"
        " singly, by area or by volume.",
        "name": "What it is called; by this name, stock and packs are told.",
        "material": "The material; null where it is none that parts are cut from.",
        "used_for": "What it goes into.",
        "unit": "What amounts are numbers of: ft, ft2, gal (US gallon), cartridge, or count.",
        "need": "What the parts are together, or what a quantity takes, in the unit.",
        "waste": "What is used up beside that, in the unit: saw cuts, trimmed ends and short"
        " offcuts; of packs, the share that specs state.",
        "left_over": "What can be used again, in the unit: offcuts from usable_offcut on, or the"
        " rest of the last pack.",
        "on_hand": "What is taken from offcuts on hand, in the unit.",
        "amount": "What is bought, in the unit: need, waste and left_over less on_hand.",
        "board_feet": "What is bought in board feet (144 cubic inches) by nominal size; null where"
        " it has none.",
        "bought": "What to buy.",
        "parts": "The parts behind it; empty where it is for the room as a whole.",
        "plan": "What is proven of the cutting plan; null where nothing is cut.",
        "metric_unit": "The metric unit beside the unit; null where there is none.",
        "metric_need": "The need in the metric unit; null where there is none.",
        "metric_amount": "What is bought in the metric unit; null where there is none.",
    },
    "BoardDirection": {
        "material": "The boards.",
        "amount": "Feet bought as asked for [ft].",
        "other_amount": "Feet bought if boards ran the other way in every coffer [ft].",
        "cost": f"What they cost as asked for; {_COST}.",
        "other_cost": f"What they would cost the other way; {_COST}.",
    },
    "MaterialList": {
        "lines": "Each material to be ordered: sticks, sheets, boards, what is counted, areas,"
        " volumes.",
        "cost": "What all that is cut costs; null where stock of one material has no prices.",
        "lower_bound": "Proven: it cannot cost less; null likewise.",
        "directions": "Boards compared with boards the other way; empty where coffers are filled"
        " otherwise, or could not be.",
        "cautions": "What is joined, what is not counted, what stock is not used.",
    },
}
