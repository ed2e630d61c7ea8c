"""Every code a fault can have: what it is called, what it means, and how it is mended.

A fault itself names the place and the figures; here stands what holds of all faults of a code. A
test holds that every code raised anywhere is here, and that every one here is raised.
"""

from collections.abc import Mapping
from types import MappingProxyType

from lacunar.model.choosing_fault_meanings import CHOOSING_FAULTS
from lacunar.model.column_fault_meanings import COLUMN_FAULTS
from lacunar.model.cutting_fault_meanings import CUTTING_FAULTS
from lacunar.model.fault_meaning import FaultMeaning
from lacunar.model.fixing_fault_meanings import FIXING_FAULTS
from lacunar.model.item_fault_meanings import ITEM_FAULTS
from lacunar.model.moulding_fault_meanings import MOULDING_FAULTS
from lacunar.model.opening_fault_meanings import OPENING_FAULTS
from lacunar.model.outline_fault_meanings import OUTLINE_FAULTS
from lacunar.model.panel_fault_meanings import PANEL_FAULTS
from lacunar.model.picture_fault_meanings import PICTURE_FAULTS
from lacunar.model.price_fault_meanings import PRICE_FAULTS
from lacunar.model.profile_fault_meanings import PROFILE_FAULTS
from lacunar.model.station_fault_meanings import STATION_FAULTS
from lacunar.model.survey_fault_meanings import SURVEY_FAULTS
from lacunar.model.take_off_fault_meanings import TAKE_OFF_FAULTS

_DOCUMENT = {
    "document_too_long": FaultMeaning(
        "Document too long",
        "The document has more bytes than are read.",
        "Send one ceiling in a document.",
    ),
    "document_not_utf8": FaultMeaning(
        "Document not UTF-8",
        "The bytes are not UTF-8 text, which JSON is written in.",
        "Save the document as UTF-8.",
    ),
    "document_too_deep": FaultMeaning(
        "Document nested too deeply",
        "Lists and objects lie in each other more deeply than in any spec.",
        "Look for a bracket that is never closed.",
    ),
    "not_json": FaultMeaning(
        "Not JSON",
        "The text is not JSON at the line and column that are named.",
        "Mend the text there.",
    ),
    "list_too_long": FaultMeaning(
        "List too long",
        "A list has more items than any a ceiling needs.",
        "Shorten it.",
    ),
    "object_too_large": FaultMeaning(
        "Object too large",
        "An object has more names than any a ceiling needs.",
        "Take out what is no part of the spec.",
    ),
    "name_not_readable": FaultMeaning(
        "Name not readable",
        "A name is too long, or holds signs that no name of a spec has.",
        "Take it out.",
    ),
    "name_doubled": FaultMeaning(
        "Name given twice",
        "One name stands twice in one object, and nothing says which is meant.",
        "Keep one of them.",
    ),
    "number_out_of_bounds": FaultMeaning(
        "Number out of bounds",
        "A number is not finite, or has more digits than can be measured.",
        "Write a finite number of reasonable length.",
    ),
    "text_has_half_a_character": FaultMeaning(
        "Half a character",
        "A text holds half of a surrogate pair.",
        "Write the whole character.",
    ),
}

_OUTLINE = {
    "wrong_type": FaultMeaning(
        "Wrong type of value",
        "A value is of another JSON type than what is read at its place.",
        "Write the type that is named.",
    ),
    "null_given": FaultMeaning(
        "Null given",
        "Null is no value of a spec.",
        "Leave the name out.",
    ),
    "name_unknown": FaultMeaning(
        "Name not known",
        "Nothing is read from this name at this place.",
        "Correct the spelling, or take it out.",
    ),
    "name_missing": FaultMeaning(
        "Name missing",
        "Something that cannot be assumed was left out.",
        "Give it.",
    ),
    "unknown_word": FaultMeaning(
        "Word not known",
        "The word is not among those that are known at its place.",
        "Write one of the words that are named.",
    ),
    "length_not_readable": FaultMeaning(
        "Length not readable",
        "The text is no length, or could be more than one.",
        "Write the length like 48 1/16, 12'-0 3/16\" or 1220.8 mm.",
    ),
    "step_not_known": FaultMeaning(
        "Marking step not known",
        "Nothing is marked to this step in the units of the spec.",
        "Write one of the steps that are named.",
    ),
    "stock_name_unknown": FaultMeaning(
        "Stock not known by that name",
        "No size is published for stock of this name, or the name does not say enough.",
        "Write a published name, or give the real thickness and width.",
    ),
    "text_too_long": FaultMeaning(
        "Text too long",
        "The text is longer than the place it is printed at.",
        "Shorten it.",
    ),
    "text_not_printable": FaultMeaning(
        "Text not printable",
        "The text holds a sign that no sheet can print.",
        "Leave out control characters and line breaks.",
    ),
    "not_a_date": FaultMeaning(
        "Not a date",
        "The text is no calendar date.",
        "Write year, month and day like 2026-03-02.",
    ),
    "too_many": FaultMeaning(
        "Too many of them",
        "The list has more items than are laid out.",
        "Make several ceilings of it.",
    ),
}

_ROOM = {
    "length_out_of_bounds": FaultMeaning(
        "Length out of bounds",
        "The length is so small or large that it must be a slip, or cannot be laid out.",
        "Check the figure and its unit.",
    ),
    "member_outside_room": FaultMeaning(
        "Member outside the room",
        "The member does not lie between the walls of the run it is measured along.",
        "Measure its center from the datum, the lower left corner of the plan.",
    ),
    "member_reaches_floor": FaultMeaning(
        "Member reaches the floor",
        "The member hangs as low as the floor.",
        "Give its drop from the finished ceiling.",
    ),
    "casing_too_narrow": FaultMeaning(
        "Casing too narrow",
        "The width asked for a casing does not hold the member, its clearance and the sides.",
        "Ask for a wider casing, or leave its width open.",
    ),
    "label_doubled": FaultMeaning(
        "Two things of one name",
        "Two members or fixed beams have the same name.",
        "Give each its own.",
    ),
}

_BEAMS = {
    "reveal_on_mitred_bottom": FaultMeaning(
        "Reveal on a mitred bottom",
        "A mitred bottom closes edge to edge with the sides.",
        "Leave the reveal out.",
    ),
    "overhang_without_under": FaultMeaning(
        "Overhang without a bottom under the sides",
        "Only a bottom under the sides can stand out past them.",
        "Put the bottom under the sides, or leave the overhang out.",
    ),
    "reveal_and_overhang": FaultMeaning(
        "Reveal and overhang at once",
        "A bottom is set in or out, not both.",
        "Give one of the two.",
    ),
    "mitred_thickness_differs": FaultMeaning(
        "Mitred boards of different thickness",
        "Boards that meet in a mitre must be equally thick.",
        "Take stock of one thickness.",
    ),
    "width_given_twice": FaultMeaning(
        "Beam width given twice",
        "Backing decides a beam's width, and another width is given beside it.",
        "Leave one of them out.",
    ),
    "beam_reaches_floor": FaultMeaning(
        "Beam reaches the floor",
        "The beam hangs as low as the floor.",
        "Give its drop from the finished ceiling.",
    ),
    "beam_too_narrow": FaultMeaning(
        "Beam too narrow",
        "The beam's width is taken up by its own sides.",
        "Ask for a wider beam or thinner sides.",
    ),
    "beam_too_shallow": FaultMeaning(
        "Beam too shallow",
        "The beam's drop does not leave what must be inside it.",
        "Ask for a deeper beam.",
    ),
    "reveal_too_large": FaultMeaning(
        "Reveal too large",
        "The reveal takes up the whole beam.",
        "Ask for a smaller reveal.",
    ),
    "no_room_for_backing": FaultMeaning(
        "No room for backing",
        "Nothing is left inside the beam for the framing that carries it.",
        "Ask for a wider beam, or less allowance.",
    ),
    "backing_too_thick": FaultMeaning(
        "Backing too thick",
        "The framing is deeper than the beam is inside.",
        "Take thinner backing, or a deeper beam.",
    ),
    "stock_too_narrow": FaultMeaning(
        "Stock too narrow",
        "A part cannot be ripped from the stock that is given for it.",
        "Take one of the boards that are named, or change the beam.",
    ),
    "sheet_edges_swapped": FaultMeaning(
        "Edges of the sheet swapped",
        "A sheet's width is its short edge.",
        "Exchange width and length.",
    ),
    "gap_too_large": FaultMeaning(
        "Gap too large",
        "The gaps at the edges of a panel leave nothing of it.",
        "Give a smaller gap.",
    ),
}

_GRID = {
    "counted_more_than_once": FaultMeaning(
        "Coffers counted in more than one way",
        "A count, a largest and a wished-for opening are answers to one question.",
        "Keep one of them.",
    ),
    "count_below_one": FaultMeaning(
        "No such number of coffers",
        "A count of coffers is less than one.",
        "Give a whole number from 1 up.",
    ),
    "too_many_coffers": FaultMeaning(
        "Too many coffers",
        "There are more coffers than are laid out on one ceiling.",
        "Ask for fewer, or make several ceilings of it.",
    ),
    "zone_counts_differ": FaultMeaning(
        "Counts do not match the zones",
        "There is not one count for each zone between fixed things.",
        "Give one count per zone, or one total.",
    ),
    "fewer_coffers_than_zones": FaultMeaning(
        "Fewer coffers than zones",
        "Members and fixed beams cut the run into more zones than it is to have coffers.",
        "Give at least one coffer for each zone.",
    ),
    "parity_contradicts_count": FaultMeaning(
        "Parity contradicts the count",
        "A count is given that is not odd, or not even, as it is asked to be.",
        "Leave the parity out, or change the count by one.",
    ),
    "weight_not_a_share": FaultMeaning(
        "Weight is no share",
        "A weight is not above zero, or out of all proportion.",
        "Give a number above 0.",
    ),
    "weights_differ_from_count": FaultMeaning(
        "Weights do not match the count",
        "There is not one weight for each coffer of the run.",
        "Give one weight per coffer.",
    ),
    "weights_with_opening": FaultMeaning(
        "Weights without a count",
        "Weights are one per coffer, and how many coffers there are is to be found.",
        "Give coffers as a number.",
    ),
    "held_cannot_be": FaultMeaning(
        "Inner coffers cannot be held",
        "Held coffers need an undivided run of at least three coffers, and nothing weighed.",
        "Leave out held, or what stands against it.",
    ),
    "held_too_large": FaultMeaning(
        "Held coffers too large",
        "The held coffers leave no border at the walls.",
        "Hold them at a smaller size, or ask for fewer.",
    ),
    "soffit_without_width": FaultMeaning(
        "Soffit without a width",
        "A soffit at a wall has a width of its own.",
        "Give it.",
    ),
    "fixed_beam_outside_room": FaultMeaning(
        "Fixed beam outside the room",
        "The beam does not lie between the walls of its run.",
        "Measure its center from the datum, the lower left corner of the plan.",
    ),
    "fixed_beam_outside_run": FaultMeaning(
        "Fixed beam runs into what is at a wall",
        "A beam with a given place does not stand clear of a wall, wall beam or soffit.",
        "Check its place and width, or what stands at that wall.",
    ),
    "fixed_beams_overlap": FaultMeaning(
        "Fixed beams overlap",
        "Two beams with given places, or two casings, take up the same space.",
        "Case both in one, or check their places and widths.",
    ),
    "zone_too_small": FaultMeaning(
        "Zone too small",
        "Two fixed things touch, so that no coffer lies between them.",
        "Move one, or make one beam of the two.",
    ),
    "no_room_left": FaultMeaning(
        "No room left",
        "Beams, or what stands at the walls, take up the whole space.",
        "Ask for fewer coffers or narrower beams.",
    ),
}

_QUERIES = {
    "number_not_there": FaultMeaning(
        "Not so many",
        "One of several was asked for by a number that none of them has.",
        "Ask for a number that is there.",
    ),
    "value_not_one": FaultMeaning(
        "Not one value",
        "A single value was asked for, and there is none, or more than one.",
        "Say which one is meant, or ask for the whole list.",
    ),
}

_SHEETS = {
    "second_units_alike": FaultMeaning(
        "Second units alike",
        "Dimensions are to be written in second units, and these are the ceiling's own.",
        "Name the other ones, or leave them out.",
    ),
    "no_sheets": FaultMeaning(
        "No sheets",
        "Sheets are to be chosen and none is, or this ceiling has nothing to show on those chosen.",
        "Name at least one that the ceiling has, or leave the choice out for all of them.",
    ),
    "paper_too_small": FaultMeaning(
        "Paper too small",
        "The plan does not fit the paper at any standard scale with legible figures.",
        "Ask for the paper that is named.",
    ),
    "sheet_not_in_set": FaultMeaning(
        "No such sheet",
        "A sheet was asked for that the set of this ceiling does not have.",
        "Ask for one of the sheets that are named.",
    ),
    "more_sheets_than_one": FaultMeaning(
        "More sheets than one",
        "A single sheet was asked for, and several are chosen.",
        "Name one of them, or ask for a format that holds several.",
    ),
}

FAULT_CODES: Mapping[str, FaultMeaning] = MappingProxyType(
    {
        **_DOCUMENT,
        **_OUTLINE,
        **_ROOM,
        **_BEAMS,
        **_GRID,
        **CHOOSING_FAULTS,
        **CUTTING_FAULTS,
        **FIXING_FAULTS,
        **ITEM_FAULTS,
        **MOULDING_FAULTS,
        **PANEL_FAULTS,
        **OUTLINE_FAULTS,
        **COLUMN_FAULTS,
        **SURVEY_FAULTS,
        **PRICE_FAULTS,
        **PICTURE_FAULTS,
        **PROFILE_FAULTS,
        **OPENING_FAULTS,
        **STATION_FAULTS,
        **TAKE_OFF_FAULTS,
        **_QUERIES,
        **_SHEETS,
    }
)
