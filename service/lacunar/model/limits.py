"""How large, how many and how long anything in a spec may be, each bound with its reason.

A bound is no code rule and no advice: it is where a figure is surely a slip of the pen (a room of
203 feet for one of 20'-3"), or where the work of laying out and drawing would grow past a sheet.
"""

from dataclasses import dataclass
from fractions import Fraction

from lacunar.measure.angle import Angle
from lacunar.measure.length import Length

# The document. The largest ceiling in these bounds needs under 60 KiB; the rest is room for layout
# by hand and long names.
DOCUMENT_BYTES = 256 * 1024
# The outline of a spec is 6 deep; more is a bracket never closed, or an attack on the reader.
JSON_DEPTH = 32
# More digits than any tape or any survey gives, few enough to convert in no time.
NUMBER_CHARACTERS = 64
NUMBER_EXPONENT = 30
# One list item for each coffer in all is the longest list there is.
LIST_ITEMS = 1000
# The largest object of a spec has under 20 names.
OBJECT_MEMBERS = 100
# Property names: the longest known one has under 20 characters.
NAME_CHARACTERS = 64

# Things counted. A room with more members than this is a building; a run with more coffers, or a
# grid with more cells, can no longer be drawn with legible ids on the largest paper.
MEMBERS = 20
OUTLINE_SIDES = 40
COLUMNS = 20
STATIONS = 200
FIXED_BEAMS_PER_RUN = 20
FLAT_MOULDINGS = 10
CEILING_ITEMS = 100
# With all patterns written out: one in each coffer, and some more.
ITEMS_IN_ALL = 1000
WALL_FEATURES = 40
COFFERS_PER_RUN = 60
COFFERS_IN_ALL = 900
# Two borders and one coffer between them.
HELD_COFFERS = 3
# More fasteners than this split what they are driven into.
FASTENERS_AT_CROSSING = 12
# More coats than this are a slip of the pen.
COATS = 9
# A take-off of a house has a dozen ceilings; of those with most coffers, it takes two.
POOLED_CEILINGS = 50
POOLED_COFFERS = 2 * COFFERS_IN_ALL
# A share a thousand times as large as another is no coffer beside it.
WEIGHT = 1000

# Texts, in characters. ISO 7200 proposes lengths for title-block fields (30 for a title, 20 for
# persons, 2 for a revision index, 16 for an identification number; figures from memory); these are
# no shorter, because offices use longer ones.
CEILING_NAME = 80
WALL_NAME = 4
LABEL = 24
COFFER_ID = 6
MOULDING_NAME = 24
DOCUMENT_NUMBER = 32
REVISION = 4
STATUS = 24
PERSON = 40
STOCK_NAME = 24
CODE_EDITION = 80
FASTENER_SIZE = 8
GRID_ID = 16
COFFER_ID = 8


# Ratios. Balsa to the heaviest hardwoods and fiber boards; wood soaked through holds its dry weight
# in water.
GRAVITY = (Fraction(1, 20), Fraction(3, 2))
MOISTURE = (Fraction(0), Fraction(1))
# As a share of what is needed, and one coat in square feet to a US gallon.
WASTE = (Fraction(0), Fraction(1))
COVERAGE = (Fraction(20), Fraction(2000))


# What boards' movement is worked out from. Moisture is a percentage of the oven-dry weight: past 30
# wood no longer swells (Wood Handbook, FPL-GTR-190, chapter 4: fiber saturation). Temperatures are
# those for which moisture in equilibrium with air is tabled there, in degrees Celsius (30 to 150
# degrees Fahrenheit, the rooms of a house among them).
MOISTURE_PERCENT = (Fraction(0), Fraction(30))
HUMIDITY_PERCENT = (Fraction(0), Fraction(99))
ROOM_CELSIUS = (Fraction(-10, 9), Fraction(590, 9))
# No published coefficient lies outside: a part of the width for each percent of moisture.
MOVEMENT_COEFFICIENT = (Fraction(1, 10_000), Fraction(1, 100))


@dataclass(frozen=True, slots=True)
class Bounds:
    """The least and the greatest a length may be, both allowed, and why."""

    least: Length
    most: Length
    reason: str


def _inches(least: str, most: str, reason: str) -> Bounds:
    return Bounds(Length.of_inches(Fraction(least)), Length.of_inches(Fraction(most)), reason)


ROOM_SIDE = _inches("12", "3600", "a ceiling is laid out from a closet of 1 ft to a hall of 300 ft")
OUTLINE_SIDE = _inches("1", "3600", "a shorter side is no wall")
ROOM_DIAGONAL = _inches("12", "5100", "no room of these sides has a longer diagonal")
SURVEY_POINT = _inches("-3600", "3600", "points are measured from a place in or near the room")
BOW = _inches("0", "12", "a wall that bows more is two walls")
CLOSING = _inches("0", "12", "a survey off by more is no survey")
TAPER = _inches("0", "12", "a taper of 12 in is seen by anybody")
ROOM_HEIGHT = _inches("48", "720", "ceilings lie from 4 ft to 60 ft above the floor")
WALL_FINISH = _inches("0", "12", "no wall finish is thicker than 12 in")
HEADROOM = _inches("12", "720", "headroom is for what passes below the beams")
COLUMN_SIZE = _inches("1", "600", "a column is from a pipe's casing to a core of 50 ft")
POSITION = _inches("0", "3600", "places are measured from the datum into the room")
MEMBER_WIDTH = _inches("1/4", "120", "a member is from a plate's thickness to 10 ft wide")
MEMBER_DROP = _inches("1/16", "360", "a member to be cased hangs below the ceiling")
STATION_LINE = _inches("0", "720", "a level line lies below the ceiling")
LEVEL_REACH = _inches("0", "36", "a station over 3 ft off a beam tells nothing of it")
UNEVEN = _inches("1/64", "6", "sides that differ by over 6 in read uneven to anyone")
CLEARANCE = _inches("0", "12", "more air than 12 in about a member is no casing")
CLADDING = _inches("0", "6", "more than 6 in on a member is part of it")
CLEAT = _inches("0", "4", "a cleat thicker than 4 in is framing")
BEAM_WIDTH = _inches("1", "120", "a box beam is from 1 in to 10 ft wide")
BEAM_DROP = _inches("1/2", "360", "a beam lower than 1/2 in is no beam")
SMALL_OFFSET = _inches("0", "6", "a reveal or overhang of over 6 in is no detail of a beam")
ALLOWANCE = _inches("0", "2", "more play than 2 in does not hold the sides")
OPENING = _inches("1", "3600", "a clear opening is from 1 in to the whole room")
CUT_SIDE = _inches("1/16", "3600", "a side of a cut coffer is as short as a corner may leave it")
SOFFIT_WIDTH = _inches("1", "3600", "a soffit is from 1 in wide to as wide as the room")
STOCK_THICKNESS = _inches("1/16", "12", "boards are from veneer to timber")
STOCK_WIDTH = _inches("1/4", "240", "boards and strips are from 1/4 in to 20 ft wide")
SHEET_EDGE = _inches("6", "480", "sheets are from 6 in to 40 ft long")
SHEET_THICKNESS = _inches("1/32", "4", "sheets are from 1/32 in to 4 in thick")
GAP = _inches("0", "2", "a gap of over 2 in is not covered by any moulding")
BOARD_COVER = _inches("1", "24", "a board covers from 1 in to 2 ft")
BOARD_TONGUE = _inches("0", "2", "a tongue or lap is under 2 in wide")
BOARD_THICKNESS = _inches("1/8", "4", "boards are from 1/8 in to 4 in thick")
TRIM_COVER = _inches("0", "24", "trim reaches at most 2 ft over a ceiling")
JOIST_SPACING = _inches("6", "240", "joists and trusses stand 6 in to 20 ft apart")
JOIST_WIDTH = _inches("1/2", "24", "a joist is from 1/2 in to 2 ft thick")
EXISTING_FINISH = _inches("0", "12", "no ceiling finish is thicker than 12 in")
FASTENER_LENGTH = _inches("1/2", "24", "fasteners are from 1/2 in to 2 ft long")
PENETRATION = _inches("0", "24", "no fastener reaches deeper than 2 ft")
SHIM = _inches("0", "12", "packing of over 12 in is framing")
BLOCK_THROUGH = _inches("1/4", "12", "a fastener passes through 1/4 in to 12 in of a block")
BLOCK_SPACING = _inches("6", "240", "what carries a beam stands 6 in to 20 ft apart")
END_DISTANCE = _inches("0", "24", "the outer fasteners are within 2 ft of a piece's end")
STOCK_LENGTH = _inches("24", "720", "boards and sheets are from 2 ft to 60 ft long")
ITEM_SIZE = _inches("1/2", "240", "an item is from 1/2 in to 20 ft large")
ITEM_CLEARANCE = _inches("0", "240", "no more than 20 ft is kept free about an item")
ITEM_DROP = _inches("0", "720", "an item hangs above the floor")
ITEM_PITCH = _inches("1", "3600", "items of a grid are from 1 in to the room apart")
FEATURE_WIDTH = _inches("1", "3600", "a feature is no wider than its wall")
FEATURE_HEAD = _inches("1", "720", "a feature ends between floor and ceiling")
KERF = _inches("0", "1/2", "no saw for this work cuts wider than 1/2 in")
CROWN_FACE = _inches("1/2", "24", "crown is from 1/2 in to 2 ft wide")
FENCE_HEIGHT = _inches("1/4", "24", "a saw takes crown from 1/4 in to 2 ft tall")
CROWN_LEG = _inches("1/8", "24", "crown drops and projects from 1/8 in to 2 ft")
MOULDING_THICKNESS = _inches("1/16", "6", "mouldings are from 1/16 in to 6 in thick")
MOULDING_WIDTH = _inches("1/4", "24", "mouldings are from 1/4 in to 2 ft wide")
FIT = _inches("0", "1", "a frame fitted with more than 1 in of play is no fit")
LAND = _inches("1/16", "6", "the flats of crown are from 1/16 in to 6 in wide")
DIAGONAL = _inches("1", "5100", "a diagonal is from 1 in to that of the largest room")
OUT_OF_SQUARE = _inches("1/64", "4", "no tape tells less than 1/64 in; 4 in is out of all square")
CLOSING = _inches("1/64", "4", "no tape tells less than 1/64 in; 4 in is no reading")
DIFFERENCE = _inches("0", "24", "beams set more than 2 ft off are another ceiling")
PART_ALLOWANCE = _inches("0", "24", "a part cut more than 2 ft over is another part")
CLEAT_WIDTH = _inches("1/2", "24", "a cleat is from 1/2 in to 2 ft wide")
NAIL_SPACING = _inches("1", "120", "nails of a row are from 1 in to 10 ft apart")
BEAD = _inches("12", "12000", "a cartridge gives from 1 ft to 1000 ft of bead")
BEAD_SPACING = _inches("1", "120", "beads lie from 1 in to 10 ft apart")
SHORTEST_PIECE = _inches("0", "48", "pieces of over 4 ft are no short ones")


@dataclass(frozen=True, slots=True)
class AngleBounds:
    """The least and the greatest an angle may be, both allowed, and why."""

    least: Angle
    most: Angle
    reason: str


SPRING = AngleBounds(
    Angle.of_degrees(5),
    Angle.of_degrees(85),
    "a moulding that lies nearly flat on wall or ceiling is not sprung",
)
SAW = AngleBounds(Angle.of_degrees(0), Angle.of_degrees(90), "no saw turns or tilts past square")
SLOPE = AngleBounds(
    Angle.of_degrees(0), Angle.of_degrees(60), "ceilings rake by up to 60 degrees above level"
)
CORNER = AngleBounds(
    Angle.of_degrees(15),
    Angle.of_degrees(345),
    "walls meet at from 15 to 345 degrees, measured inside the room",
)

LEAST_DPI = 20
MOST_DPI = 600
USUAL_DPI = 150
PICTURE_PIXELS = 40_000_000
"""Of a sheet as a picture: pixels to the inch, and altogether, a byte of memory each."""
