"""How much a cutting problem may hold: bounds on lengths, on what is counted, and on money."""

from fractions import Fraction

from lacunar.measure.angle import Angle
from lacunar.measure.length import Length
from lacunar.model.limits import AngleBounds, Bounds

# What fits a document of 256 KiB, and what is still planned in seconds.
STOCK_ENTRIES = 60
OFFCUT_ENTRIES = 60
PIECE_ENTRIES = 1000
MATERIAL_ENTRIES = 40
# Choices of so many out of twelve lengths are tried one by one: 495 of four.
LENGTHS_OF_A_MATERIAL = 12
SHEET_SIZES_OF_A_MATERIAL = 6
MOST_LENGTHS = 4
QUANTITY = 10_000
PIECES_IN_ALL = 10_000
KINDS_OF_A_MATERIAL = 250
PANEL_KINDS_OF_A_MATERIAL = 40
PANELS_IN_ALL = 2_000
# No single stick, board or sheet for this work costs a million.
MONEY_CENTS = 100_000_000
CUT_ID = 24
MATERIAL_NAME = 60


def _inches(least: str, most: str, reason: str) -> Bounds:
    return Bounds(Length.of_inches(Fraction(least)), Length.of_inches(Fraction(most)), reason)


CUT_LENGTH = _inches("1/4", "720", "pieces are from 1/4 in to 60 ft long")
RACK_LENGTH = _inches("1", "720", "stock is from 1 in to 60 ft long")
END_TRIM = _inches("0", "24", "no more than 2 ft is cut off an end")
USABLE = _inches("0", "720", "an offcut is no longer than 60 ft")
CUT_EDGE = _inches("1/4", "480", "panels are from 1/4 in to 40 ft long")
CUT_SHEET_EDGE = _inches("3", "480", "sheets are from 3 in to 40 ft long")
MITER = AngleBounds(
    Angle.of_degrees(0), Angle.of_degrees(75), "ends are mitred up to 75 degrees from square"
)
# What ceilings ask for of one material: whole houses, planned within seconds by counts; from so
# many different sizes or pieces on with little effort, which costs less than a part in a thousand.
POOLED_KINDS = 400
POOLED_PIECES = 30_000
POOLED_PANEL_KINDS = 120
POOLED_PANELS = 10_000
MANY_KINDS = 120
MANY_PIECES = 5_000
MANY_PANEL_KINDS = 60
# A pack holds something, and no more than is sold in one.
PACK_HOLDS = (Fraction(1, 100), Fraction(1_000_000))
PACK_ENTRIES = 60
