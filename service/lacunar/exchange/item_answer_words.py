"""What every field told of ceiling items and wall features means, with its unit."""

from lacunar.exchange.board_answer_words import Words

ITEM_WORDS: Words = {
    "ItemConflict": {
        "meets": "What kind of thing the item meets.",
        "id": "Id of what it meets: a beam, joist, wall or item, or the name of a moulding.",
        "along": "The run along which it reaches into it.",
        "overlap": "How far it reaches into it, its clearance included [length].",
    },
    "ClearPlace": {
        "x": "Center of the item there, along the length run [length].",
        "y": "Center of the item there, along the width run [length].",
        "coffer": "The coffer it lies in.",
        "move_x": "How far to move along the length run, away from the datum [length].",
        "move_y": "How far to move along the width run, away from the datum [length].",
        "beam_margin": "Left free there to beams, mouldings and walls, beyond the clearance"
        " [length].",
        "joist_margin": "Left free there to joists [length]; null where none matter.",
        "item_margin": "Left free there to other items, beyond the clearance [length]; null where"
        " there are none.",
    },
    "CeilingItem": {
        "id": "L-1 and so on, letters by its kind.",
        "kind": "What it is.",
        "name": "What it was called; empty where it was not.",
        "x": "Its center along the length run [length].",
        "y": "Its center along the width run [length].",
        "length": "How much it takes up along the length run [length].",
        "width": "How much it takes up along the width run [length].",
        "round": "Whether it is round.",
        "clearance": "What must be free on every side of it [length].",
        "mounting": "Whether its body goes up between the joists.",
        "mobility": "Whether it can be moved.",
        "coffer": "The coffer its center lies in; null on a beam.",
        "clear_height": "Height below it [length]; null where its drop is not known.",
        "conflicts": "All it meets.",
        "nearest_clear": "The nearest place at which it meets nothing, in a straight line; null"
        " where it meets nothing as it is, or where no place is clear.",
    },
    "ClearCount": {
        "coffers": "The number of coffers along the run [count].",
        "smallest_opening": "The smallest clear opening it gives [length].",
        "largest_opening": "The largest clear opening it gives [length].",
        "pitch": "From center to center of beams [length]; null where openings differ.",
    },
    "CountSearch": {
        "run": "The run that was searched.",
        "fewest": "The fewest coffers tried [count].",
        "most": "The most coffers tried: the last with openings of at least 6 in [count].",
        "clear": "Those with which no beam of the run meets a fixed item.",
    },
    "BeamAtFeature": {
        "beam": "Id of the beam.",
        "meeting": "How it stands to the feature: on its center, within it, or over an edge.",
        "offset": "From the feature's center to the beam's, away from the datum [length].",
        "past_edge": "How far it reaches past the nearer edge; negative within [length].",
        "over_head": "From the head up to the beam's lowest edge; negative where the beam hangs"
        " lower [length]; null where no head was told.",
    },
    "WallFeatureCheck": {
        "name": "What it is called.",
        "kind": "What it is.",
        "wall": "The wall it is at.",
        "near": "Its edge next the datum, or next the start of an angled wall, along it [length].",
        "far": "Its other edge, along the wall [length].",
        "on": "What is over its center: id of a beam, or row letter or column number; in a room"
        " with other than four walls the id of the coffer.",
        "off_center": "From its center to the middle of that, away from the datum [length].",
        "beams": "Beams that end over it.",
        "along_wall": "Ids of wall beams along its wall that hang lower than its head.",
        "side": "Number of the outline's side it is in; null in a room with four walls.",
    },
    "ItemLayout": {
        "items": "Every item, patterns written out.",
        "counts_clear_of_fixed": "The counts searched for each run; empty without a fixed item.",
    },
}
