"""What every field about heights, joists, backing and weights means, with its unit."""

from collections.abc import Mapping

Words = Mapping[str, Mapping[str, str]]

_PUBLISHED = "a reference value, for an engineer or the code official to judge"

BACKING_WORDS: Words = {
    "Joist": {
        "id": "J1 next the start wall, and so on.",
        "center": "Its center, along the run joists are measured on [length].",
    },
    "JoistLines": {
        "parallel_to": "The run the joists run along.",
        "on": "The run their centers are measured along.",
        "spacing": "From center to center [length].",
        "width": "Thickness of each as seen from below [length].",
        "count": "How many have their center in the room.",
        "joists": "All of them, from the datum.",
    },
    "BackingPiece": {
        "start": "Where the piece starts, along the run it lies along [length].",
        "end": "Where it ends [length].",
        "length": "Clear length between what stops it [length].",
        "count": "How many places it is fixed at.",
        "places": "Those places, along the run it lies along [length]: crossings with joists, else"
        " blocks or fasteners at even distances.",
        "fasteners": "How many fasteners go into them; null where the joists are unknown.",
    },
    "Bay": {
        "near": "The joist next the datum; null where a wall ends the bay.",
        "far": "The joist on the other side; null where a wall ends the bay.",
        "block": "Length of a block that fills the bay [length].",
    },
    "BackingLine": {
        "beam": "Id of the beam or wall beam it holds.",
        "side": "In the beam's middle, or on which side of a casing.",
        "on": "The run its position is measured along.",
        "position": "Where the line lies [length].",
        "relation": "How it lies to the joists.",
        "joist": "The nearest joist, where the line runs along them.",
        "offset": "How far beyond that joist's center it lies, away from the datum [length].",
        "bearing": "From a line on a joist to the joist's nearer edge [length].",
        "bay": "The space between joists it lies in; null where it lies on one or across them.",
        "carried_by": "What holds it there.",
        "blocks": "How many blocks are let in, where blocking holds it.",
        "pieces": "Its clear lengths, with where each is fixed.",
    },
    "Forms": {
        "crosses": "Where two beams meet.",
        "tees": "Where a beam meets a beam at a wall.",
        "ells": "Corners with a beam at both walls.",
        "wall_ends": "Ends at a bare wall.",
        "soffit_ends": "Ends at a bare soffit.",
        "mid_spans": "Middle pieces, one for each side of a coffer that a beam runs along.",
        "in_all": "All forms together.",
    },
    "BeamWeight": {
        "profile": "Id of the profile.",
        "sides_pounds_per_foot": "Its sides [lb/ft].",
        "bottom_pounds_per_foot": "Its bottom [lb/ft].",
        "backing_pounds_per_foot": "Its backing [lb/ft].",
        "pounds_per_foot": "All of it [lb/ft].",
        "kilograms_per_meter": "All of it [kg/m].",
        "length": "Clear length of all beams that have it [length].",
        "pounds": "What they weigh together [lb].",
    },
    "Weights": {
        "trim_pounds_per_cubic_foot": "Density of sides and bottoms [lb/ft3].",
        "backing_pounds_per_cubic_foot": "Density of backing [lb/ft3].",
        "beams": "Each profile.",
        "panel_pounds_per_square_foot": "What a panel weighs [lb/ft2].",
        "panels_pounds": "All panels [lb].",
        "pounds": "All that hangs [lb].",
        "pounds_per_square_foot": "All that hangs, over the room's area [lb/ft2].",
        "kilograms_per_square_meter": "The same [kg/m2].",
    },
    "Hold": {
        "profile": "Id of the profile.",
        "penetration": "How deep a fastener is in the framing [length].",
        "deep_enough": "Whether that is as deep as the spec wishes.",
        "spacing": "How far apart joists are that a beam across them is fixed to [length].",
        "load_pounds": "What one fastener carries of such a beam [lb].",
        "withdrawal_pounds_per_inch": f"Withdrawal by the inch [lb/in], {_PUBLISHED}.",
        "withdrawal_pounds": "The same for one fastener so deep, under a permanent load and in the"
        " service the spec tells [lb].",
        "pull_through_pounds": f"Of its head through the backing [lb], {_PUBLISHED}; null where"
        " none is published for its kind.",
    },
    "Backing": {
        "joists": "Where the joists are; null where the spec does not tell of them.",
        "lines": "Lines along which beams are held.",
        "forms": "Backing counted as forms to be built.",
        "weights": "What hangs; null where the spec tells neither of joists nor of fixing.",
        "holds": "Reference figures of fasteners, by profile.",
    },
    "Level": {
        "kind": "What surface it is the underside of.",
        "of": "Id of the profile, name of the member, or the kind again.",
        "height": "Above the finished floor [length].",
    },
    "BeamGap": {
        "run": "The run that is looked along.",
        "opening": "The least clear opening [length].",
        "centers": "The least between the centers of two beams [length]; null with fewer than two.",
    },
    "Heights": {
        "levels": "Surfaces above the floor, from the top down.",
        "worst": "Whose are lowest.",
        "worst_height": "How high the lowest is above the finished floor [length].",
        "limit": "The headroom asked for [length].",
        "code_edition": "What that was taken from; empty where the spec does not tell.",
        "most_drop": "How deep a beam may hang and leave it [length].",
        "spare": "What is left over at the lowest place [length]; negative where it is too low.",
        "gaps": "How far beams are apart, which some editions of codes ask.",
    },
}
