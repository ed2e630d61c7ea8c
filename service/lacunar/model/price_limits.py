"""How much a price list may hold: bounds on rows, on shares, on what is counted, and on money."""

from decimal import Decimal
from fractions import Fraction

from lacunar.measure.length import Length
from lacunar.model.limits import Bounds

MATERIAL_PRICES = 400
WORK_ROWS = 100
OTHER_ROWS = 100
# All that can be counted of parts, joints and settings of a saw; see `takeoff.estimate.words`.
WORK_WORDS = 40
ALTERNATES = 6
NAME = 60
CURRENCY = 3
# Nothing that a ceiling is made of costs ten million by the piece; nails cost less than a cent.
PRICE = Decimal(10_000_000)
PRICE_DECIMALS = 4

NO_SHARE = Fraction(0)
OVERHEAD = Fraction(5)
CONTINGENCY = Fraction(1)
MARKUP = Fraction(10)
# A price of which more than this is earned is a slip of the pen.
MARGIN = Fraction(9, 10)
TAX = Fraction(1)
LEAST_FRAMES = Fraction(1, 20)
FRAMES = Fraction(20)
QUANTITY = Fraction(100_000)
HOURS = Fraction(1_000)
SIZE = Bounds(Length.of_inches(1), Length.of_inches(720), "stock is from 1 in to 60 ft long")
