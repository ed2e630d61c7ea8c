"""What every field of a take-off means, with its unit, by record and field."""

from collections.abc import Mapping

TAKE_OFF_WORDS: Mapping[str, Mapping[str, str]] = {
    "Material": {
        "kind": "What it is: section is framing whose size is known and whose stock is not.",
        "name": "Trade name, or size; with units of the first ceiling that has it.",
        "thickness": "Its thickness [length]; null where it is of no rectangular section.",
        "width": "Width of the stock: of crown its face, of boards cover and tongue, of a sheet"
        " its short edge [length]; null where it is of no rectangular section.",
        "length": "Long edge of a sheet [length]; null where it is sold by the length.",
        "nominal_thickness": "What its trade name says [length]; null where it has none.",
        "nominal_width": "What its trade name says [length]; null where it has none.",
        "drop": "Of crown and nailers: how far down the side [length]; else null.",
        "projection": "Of crown and nailers: how far out along the ceiling [length]; else null.",
    },
    "PartEnd": {
        "cut": "How the end is cut.",
        "angle": "Its angle from a square cut [degrees]; null where it is square or a moulding's.",
        "corner": "The corner a moulding meets there [degrees]; null where it meets none.",
        "notch_along": "Corner taken out, along the board [length]; null where none is.",
        "notch_up": "Corner taken out, up from the lower edge [length]; null where none is.",
        "width": "Width of a board that tapers from end to end, at this end [length]; else null.",
    },
    "PartPlace": {
        "ceiling": "Number of the ceiling, as in ceilings.",
        "of": "Ids of the beam, wall beam or coffer; of all coffers a field of boards runs over.",
        "at": "Side near or far, wall W1 to W4, course, or column and row of a parted panel; empty"
        " where there is but one.",
        "start": "Long point towards the datum along the run [length]; null where it is in a"
        " coffer.",
        "end": "The other long point along the run [length]; null where it is in a coffer.",
        "quantity": "How many go there [count].",
    },
    "Part": {
        "mark": "Two letters for what it is, and its number, the longest first; one for all"
        " ceilings of the take-off.",
        "kind": "What it is in the ceiling.",
        "name": "What it is called.",
        "material": "What it is ripped or cut from.",
        "quantity": "How many there are [count].",
        "thickness": "Net thickness [length]; null where nobody said.",
        "width": "Net width; of crown its face [length]; null where nobody said.",
        "length": "Net length between long points [length].",
        "short_length": "Net length between short points [length].",
        "cut_length": "Length with the allowance that the spec states [length].",
        "cut_width": "Width with the allowance that the spec states, as far as the stock goes"
        " [length]; null where nobody said.",
        "left": "The end to the left, seen on the face that shows, lower edge towards whoever"
        " looks; of the bottom of a wall beam, edge at the wall away.",
        "right": "The end to the right.",
        "mitred_edges": "How many long edges are mitred along their whole length [count].",
        "face": "Where the face looks that shows: down, or out from the beam; null where none"
        " shows.",
        "grain": "Whether the grain lies lengthwise, or either way so that it may be turned.",
        "tapered": "Whether it is no rectangle: cut from one of this size to what was measured"
        " where it goes, to the widths at its ends, or to its corners.",
        "places": "Everywhere it goes.",
        "corners": "Corners of a part that is no rectangle, from the lower left one of the"
        " rectangle it is cut from, as it lies on the plan; empty where it is one.",
    },
    "Quantity": {
        "kind": "What is counted.",
        "of": "What it is called: material, fastener, or what is covered.",
        "used_for": "What it goes into.",
        "material": "The material; null where it is none that parts are cut from.",
        "unit": "What need, waste and with_waste are numbers of: ft, ft2, board_ft (144 cubic"
        " inches), gal (US gallon), cartridge, or count.",
        "need": "What is needed, in the unit.",
        "waste": "What is added for waste, in the unit.",
        "with_waste": "Both together, in the unit.",
        "metric_unit": "The metric unit beside it; null where there is none.",
        "metric_need": "What is needed, in the metric unit; null where there is none.",
        "metric_with_waste": "With waste, in the metric unit; null where there is none.",
    },
    "TakenCeiling": {
        "number": "Its number, counted from 1, by which places name it [count].",
        "name": "What it is called.",
        "coffers": "How many coffers it has [count].",
    },
}
