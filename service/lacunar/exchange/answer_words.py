"""What every field of an answer means, with its unit, by record and field.

A length is an object of its own, told exactly and in decimals; `[length]` marks it. Positions are
from the datum, the lower left corner of the plan, along the run.
"""

from lacunar.exchange.backing_field_words import BACKING_WORDS
from lacunar.exchange.board_answer_words import BOARD_WORDS, Words
from lacunar.exchange.crossing_words import CROSSING_WORDS
from lacunar.exchange.cutting_words import CUTTING_WORDS
from lacunar.exchange.estimate_words import ESTIMATE_WORDS
from lacunar.exchange.fitting_words import FITTING_WORDS
from lacunar.exchange.followed_words import FOLLOWED_WORDS
from lacunar.exchange.item_answer_words import ITEM_WORDS
from lacunar.exchange.level_words import LEVEL_WORDS
from lacunar.exchange.material_words import MATERIAL_WORDS
from lacunar.exchange.opening_words import OPENING_WORDS
from lacunar.exchange.option_field_words import OPTION_WORDS
from lacunar.exchange.outline_answer_words import OUTLINE_WORDS
from lacunar.exchange.sheet_index import SHEET_WORDS
from lacunar.exchange.survey_answer_words import SURVEY_WORDS
from lacunar.exchange.take_off_words import TAKE_OFF_WORDS

_POINT = {"x": "Along the length run [length].", "y": "Along the width run [length]."}

_PLACE = {
    "near": "Its side next the datum [length].",
    "far": "Its side away from the datum [length].",
}

LAYOUT_WORDS: Words = {
    "Point": _POINT,
    "EndPositions": {
        "at_start": "Where the line crosses the run at the start of the other run [length].",
        "at_end": "Where it crosses the run at the end of the other run [length].",
    },
    "RunElement": {
        "kind": "What stands there.",
        "id": "Id of the beam, or row letter or column number of the coffers.",
        **_PLACE,
    },
    "Zone": {
        "number": "Counted from 1 at the datum.",
        "start": "The face it starts at [length].",
        "end": "The face it ends at [length].",
        "coffers": "How many coffers it holds.",
        "clear_total": "What its coffers have of it together [length].",
        "openings": "The clear opening of each coffer, from the datum [length].",
    },
    "RunLayout": {
        "name": "Which of the two runs it is.",
        "span": "From finished wall face to finished wall face [length].",
        "zones": "The parts that fixed beams cut it into, from the datum.",
        "elements": "All that stands along it, from the datum.",
    },
    "ProfilePart": {
        "name": "Which board it is.",
        "thickness": "Its thickness [length].",
        "width": "Its width as ripped [length].",
        "stock": "What it is ripped from; null where that is left to the builder.",
        "quantity": "How many of it a beam has across.",
    },
    "BeamProfile": {
        "id": "Such as P1.",
        "kind": "What is built.",
        "profile": "How its family is built.",
        "sides": "How many side boards, or seen edges where flat, it has: 2, or 1 at a wall.",
        "bottom_joint": "How the bottom meets the sides; null where flat.",
        "finished_width": "Between side faces, or from a wall to the face [length].",
        "overall_width": "Between the outermost edges [length].",
        "drop": "From the finished ceiling to the lowest edge [length].",
        "net_depth": "What of the drop hangs below the panel [length].",
        "exposed_side": "How much of a side shows below the panel [length].",
        "inside_width": "Between the sides [length]; null where flat.",
        "inside_depth": "From the ceiling to the bottom board [length]; null where flat.",
        "girth": "The surface across that is painted [length].",
        "reveal": "How far the bottom is set in or up [length].",
        "overhang": "How far the bottom is set out [length].",
        "parts": "Its boards.",
        "used_by": "Ids of the beams and wall beams that have it.",
    },
    "BeamPiece": {
        "start": "The face it starts at, along the other run [length].",
        "end": "The face it ends at, along the other run [length].",
        "length": "Clear length between the two faces [length].",
    },
    "CasedMember": {
        "name": "What the member is called.",
        "start": "Where it starts along the other run [length].",
        "end": "Where it ends along the other run [length].",
        "near": "The member's side next the datum, at its start and at its end [length].",
        "far": "The member's side away from the datum, at its start and at its end [length].",
        "drop": "How far it hangs below the finished ceiling [length].",
        "drop_at_end": "How far it hangs at its end [length].",
        "clad": "Thickness of what it is clad with, each side and below [length].",
        "cleat": "Thickness of what each side of its casing is fixed to [length].",
        "skew": "How far its center at one end is off that at the other [length].",
        "shift": "How far the casing stands off the member's center, away from the datum [length].",
        "shift_limit": "The most it can stand off either way [length].",
    },
    "Beam": {
        "id": "XB-1 and so on crosswise, LB-1 and so on lengthwise.",
        "kind": "What it is.",
        "on": "The run its place is measured along.",
        **_PLACE,
        "center": "Its centerline [length].",
        "width": "Finished width between side faces [length].",
        "profile": "Id of its profile.",
        "through": "Whether it runs from wall to wall in one piece.",
        "pieces": "Its pieces, from the start of the other run.",
        "member": "The structural member inside it; null where there is none.",
    },
    "WallBeam": {
        "id": "WB-1 and so on, round the room from wall W1.",
        "wall": "The wall it stands at, W1 to W4.",
        "looks_as": "Which of W1 to W4 its wall is, or looks the same way as.",
        "kind": "What it is.",
        "on": "The run its place is measured along.",
        **_PLACE,
        "width": "From its wall side to its face [length].",
        "profile": "Id of its profile.",
        "pieces": "Its pieces, from the start of the other run.",
    },
    "Coffer": {
        "id": "Row letter and column number, A1 at the datum.",
        "row": "Counted from 1 at the datum, up the plan.",
        "column": "Counted from 1 at the datum, to the right.",
        "corners": "Its four corners, counter-clockwise from the one next the datum.",
        "length": "Clear opening along the length run [length].",
        "width": "Clear opening along the width run [length].",
    },
    "SeamBearing": {
        "along": "The run its place is measured along.",
        "place": "Where it lies, from the panel's near edge [length].",
        "offset": "How far beyond the nearest joist's center, in the first coffer [length].",
        "bearing": "From the seam to that joist's nearer edge [length]; null between joists.",
        "backing": "The strip that has to carry it between joists [length]; null on a joist.",
    },
    "PanelFit": {
        "coffers": "Ids of the coffers it fills.",
        "length": "Size along the length run [length].",
        "width": "Size along the width run [length].",
        "long_edge": "The run that the sheets' long edge lies along.",
        "seams": "How many seams one needs where it is larger than the sheet.",
        "seams_along_length": "Seams along the length run, from the panel's near edge [length].",
        "seams_along_width": "Seams along the width run, from the panel's near edge [length].",
        "seam_bearings": "What seams along the joists rest on; empty where no joists were told.",
    },
    "Mark": {
        "kind": "What is marked.",
        "of": "Id of the beam or wall it belongs to.",
        "side": "Near or far face or edge; at, for a center or a wall.",
        "exact": "The exact place [length].",
        "mark": "The place rounded once to the marking step [length].",
        "from_framing": "The same place from the start wall's framing [length]; null where the"
        " finish is not known.",
        "mark_from_framing": "That place rounded once [length]; null as above.",
    },
    "RunMarks": {
        "run": "The run they are measured along.",
        "end": "At which end of the other run.",
        "marks": "All marks, in order from the datum.",
    },
    "Clearance": {
        "profile": "Id of the profile it is under.",
        "clear_height": "From the finished floor to the beam's lowest edge [length].",
        "limit": "What the spec asks for [length].",
        "enough": "Whether the height reaches the limit.",
    },
    "Caution": {
        "code": "A word programs can tell it by.",
        "text": "The advice, in a sentence.",
        "figures": "The figures it is about, by name.",
        "pointer": "JSON pointer (RFC 6901) into the spec; empty where it is about the whole.",
    },
    "CasingChoice": {
        "beam": "Id of the cased beam.",
        "chosen": "Which of the two the layout has.",
        "centered_openings": "Openings beside it with the casing centered [length].",
        "shifted_openings": "Openings beside it with the casing shifted [length].",
        "shift": "How far it would be shifted [length].",
    },
    "Stock": {
        "name": "Trade name, or the size where it has none.",
        "kind": "Which published list it is from, or that its size was given.",
        "thickness": "Real thickness [length].",
        "width": "Real width [length].",
        "thickness_range": "What a sheet's thickness may be; absent for lumber.",
    },
    "Assumption": {
        "pointer": "JSON pointer (RFC 6901) to what was left open.",
        "value": "What was taken for it: a length, a count, or a word.",
        "reason": "Why.",
    },
}

MOULDING_WORDS: Words = {
    "SawCut": {
        "lies": "Nested as it stands, upside down; or flat on its back.",
        "end": "Which end of the piece, to one who faces it in its place.",
        "against_fence": "The edge that goes to the saw's fence.",
        "table": "The side the table is turned to.",
        "keep": "The side of the blade that the piece is kept on.",
    },
    "SawSettings": {
        "corner": "The angle between the walls, inside the room [degrees].",
        "nested_miter": "Miter from a square cut, the crown nested [degrees].",
        "flat_miter": "Miter from a square cut, the crown flat [degrees].",
        "flat_bevel": "Tilt of the blade from upright, the crown flat [degrees].",
        "nested_within_limits": "Whether the saw goes so far, nested.",
        "flat_within_limits": "Whether the saw goes so far, flat.",
        "cuts": "The cuts of both ends both ways; flat, the blade tilts to the left.",
    },
    "RakedMeeting": {
        "slope": "How steep the raked run is, above level [degrees].",
        "rake": "Which way it goes, away from the corner.",
        "meets": "Whether one profile meets in one flat joint.",
        "raked_height": "How high the raked run's edge at the ceiling passes that of the level run,"
        " above the edges on the walls [length]; the level one is there by its drop. Null where"
        " they meet, or without a face.",
        "apart": "How far apart these edges pass [length]; null as before.",
        "run_drop": "Drop, square to the rake, of a profile run for it [length]; null as before,"
        " and where none can be run.",
        "run_face": "Face of a profile run for the rake [length]; null as before.",
        "wider": "By how much that face is wider, below zero narrower [length]; null as before.",
    },
    "SawSheet": {
        "spring_from_wall": "The crown's spring, from the wall [degrees].",
        "settings": "How the saw is set.",
        "face": "Width across the face [length]; null where it was not given.",
        "drop": "How far it comes down the wall [length]; null without a face.",
        "projection": "How far it comes out along the ceiling [length]; null without a face.",
        "ceiling_edge": "What the edge at the ceiling is shorter by than the edge at the wall, at"
        " each end; at an outside corner, longer [length]. Null without a face or corner.",
        "fence_height": "The tallest crown the saw takes nested [length]; null where not given.",
        "raked": "A raked run at this corner; null where none was asked for.",
    },
    "Nailer": {
        "height": "Against the side [length].",
        "depth": "Against the ceiling or panel [length].",
    },
    "CrownSection": {
        "face": "Width across the face [length].",
        "spring_from_wall": "The spring it stands at, from the beam's side [degrees].",
        "drop": "How far it comes down the side [length].",
        "projection": "How far it comes out along the ceiling [length].",
        "back_drop": "Where its back meets the side, from the ceiling [length].",
        "back_projection": "Where its back meets the ceiling, from the side [length].",
        "land_opening": "What its flats open by, standing off the spring it is milled to [length];"
        " null where it stands as it is milled.",
        "nailer": "The strip behind it; null where there is no room for one.",
        "saw": "How a saw is set for its square corners.",
    },
    "MouldingPiece": {
        "moulding": "Crown, or the name of a flat moulding.",
        "along": "The run it lies along.",
        "toward": "The walls toward which its sides of the coffer lie, one for each piece.",
        "quantity": "How many of it are in one coffer.",
        "left_end": "How its left end is cut, to one who faces it from inside.",
        "right_end": "How its right end is cut.",
        "long_point": "Its length at the edge on the beam [length].",
        "short_point": "Its length at the edge furthest out [length].",
    },
    "NailerPiece": {
        "along": "The run it lies along.",
        "quantity": "How many there are in a coffer [count].",
        "length": "Its length, cut square [length].",
    },
    "CofferTrim": {
        "coffers": "Ids of the coffers that are trimmed alike.",
        "seen_length": "What mouldings leave to be seen, along the length run [length].",
        "seen_width": "What mouldings leave to be seen, along the width run [length].",
        "mouth_length": "What passes between the lower edges, along the length run [length].",
        "mouth_width": "What passes between the lower edges, along the width run [length].",
        "pieces": "The pieces of moulding in one coffer.",
        "nailers": "The strips behind the crown of one coffer; empty without any.",
        "running_length": "Crown in one coffer, long points end to end [length]; null without any.",
        "frame_passes_mouth": "Whether a bench frame passes the mouth, lifted in level; null where"
        " there is no frame.",
    },
    "SideCover": {
        "profile": "Id of the profile.",
        "side_left": "What is left of its side between mouldings [length].",
    },
    "Mouldings": {
        "crown": "The crown's section; null where there is none.",
        "sides": "What mouldings leave of the sides of each profile.",
        "coffers": "Coffers by size and what is about them, with what goes into them.",
    },
}

DIVISION_WORDS: Words = {
    "LoneBeam": {"id": "Id of the beam.", **_PLACE, "center": "Its centerline [length]."},
    "LoneWallBeam": {
        "id": "WB-1 and so on.",
        "wall": "The wall it stands at.",
        "kind": "What it is.",
        **_PLACE,
    },
    "LoneRun": {
        "span": "From finished wall face to finished wall face [length].",
        "beam_width": "Finished width of each beam [length].",
        "coffers": "How many coffers there are.",
        "clear_total": "What the coffers have of the span together [length].",
        "openings": "The clear opening of each coffer, from the datum [length].",
        "beams": "The beams between coffers, from the datum, with faces and center.",
        "wall_beams": "What stands at the two walls.",
        "marks": "Running marks, in order from the datum.",
    },
}

STOCK_WORDS: Words = {
    "PublishedSize": {
        "name": "Trade name.",
        "kind": "Which published list it is in.",
        "thickness": "Real thickness [length].",
        "width": "Real width [length]; null for hardwood, which is sold in random widths.",
        "least": "The least thickness a sheet may have [length]; null for lumber.",
        "most": "The greatest thickness a sheet may have [length]; null for lumber.",
        "common": "Whether most yards keep it.",
    }
}

ALL_WORDS: Words = {
    **LAYOUT_WORDS,
    **BACKING_WORDS,
    **MOULDING_WORDS,
    **BOARD_WORDS,
    **SURVEY_WORDS,
    **FOLLOWED_WORDS,
    **OUTLINE_WORDS,
    **CROSSING_WORDS,
    **CUTTING_WORDS,
    **FITTING_WORDS,
    **ITEM_WORDS,
    **LEVEL_WORDS,
    **MATERIAL_WORDS,
    **DIVISION_WORDS,
    **STOCK_WORDS,
    **OPENING_WORDS,
    **SHEET_WORDS,
    **TAKE_OFF_WORDS,
    **OPTION_WORDS,
    **ESTIMATE_WORDS,
}
