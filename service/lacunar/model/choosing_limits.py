"""How much a search for options may try: all of it bounds of counts, none of a clock."""

from fractions import Fraction

from lacunar.measure.length import Length
from lacunar.model.limits import Bounds

# Each combination of these is divided; the rest of the bounds keeps that under a second.
BEAM_WIDTHS = 8
WALL_CONDITIONS = 3
WAYS_THROUGH = 3
CENTERED_FEATURES = 10
CROWN_LENGTHS = 6
# Numbers of coffers along one run, for each width of beam and wall condition; fewer where all of
# them together would be more combinations than this.
COUNTS_OF_A_RUN = 15
COMBINATIONS = 6000
# Layouts and take-offs made in full, and how many coffers all of them may have together.
LAID_OUT = 60
COFFERS_LAID_OUT = 2400
# Makes a normal room take well under a second.
USUALLY_LAID_OUT = 24
WEIGHT = 1000

CROWN_STICK = Bounds(
    Length.of_inches(Fraction(24)),
    Length.of_inches(Fraction(480)),
    "crown is sold in sticks of 2 ft to 40 ft",
)
