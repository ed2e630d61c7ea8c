"""The signs a written length is made of: numbers, fractions, units and dashes, each with its place.

What is written in several ways (primes and quotation marks, fraction characters, slashes, dashes,
spaces) becomes one sign here, so that `notation` need not know how it looked.
"""

import re
from dataclasses import dataclass
from enum import Enum
from fractions import Fraction

from lacunar.measure.length import Length
from lacunar.measure.refusal import LengthTextError

EXAMPLES = 'Write it like 48 1/16", 12\'-0 3/16" or 1220.8 mm.'

# More decimals than any instrument gives; what has more was computed, and belongs in a number.
MOST_DECIMALS = 12


class Unit(Enum):
    """What an amount counts, with its length."""

    INCH = Length.of_inches(1)
    FOOT = Length.of_feet(1)
    MILLIMETER = Length.of_millimeters(1)
    CENTIMETER = Length.of_millimeters(10)
    METER = Length.of_millimeters(1000)


class Kind(Enum):
    """What a sign is."""

    WHOLE = "whole number"
    DECIMAL = "decimal"
    FRACTION = "fraction"
    UNIT = "unit"
    DASH = "dash"
    MINUS = "minus"
    END = "end"


NUMBERS = (Kind.WHOLE, Kind.DECIMAL, Kind.FRACTION)


@dataclass(frozen=True, slots=True)
class Sign:
    """One sign and where it stands: from `start` up to, not including, `end`.

    `value` is a number's, and `denominator` a fraction's as it is written; `unit` is a unit's, and
    `spelled` tells that it is a word and no mark.
    """

    kind: Kind
    start: int
    end: int
    value: Fraction = Fraction(0)
    denominator: int = 1
    unit: Unit | None = None
    spelled: bool = False


_WORDS = {
    **dict.fromkeys(("in", "in.", "inch", "inches"), Unit.INCH),
    **dict.fromkeys(("ft", "ft.", "foot", "feet"), Unit.FOOT),
    "mm": Unit.MILLIMETER,
    "cm": Unit.CENTIMETER,
    "m": Unit.METER,
}
_MARKS = {"inch": Unit.INCH, "foot": Unit.FOOT}
_FRACTION_CHARACTERS = {
    "½": Fraction(1, 2),
    "¼": Fraction(1, 4),
    "¾": Fraction(3, 4),
    "⅛": Fraction(1, 8),
    "⅜": Fraction(3, 8),
    "⅝": Fraction(5, 8),
    "⅞": Fraction(7, 8),
}
_STRAY = {
    ",": (
        "A comma could be a decimal point or could part thousands.",
        "Write decimals with a point, and the digits of thousands together.",
    ),
    ".": (
        "A decimal point has no digits after it.",
        "Write the digits, or leave the point out.",
    ),
    **dict.fromkeys(
        "/\u2044\u2215",
        (
            "A slash does not stand between two whole numbers.",
            "Write a fraction without spaces, like 1/16.",
        ),
    ),
}

# Thin spaces (U+2009, U+202F) part the digits of thousands where exactly three follow; elsewhere
# they are spaces like others. The slashes are the typed one, U+2044 and U+2215; the dashes the
# typed one, U+2010, U+2011 and U+2013; U+2212 is a minus and nothing else.
_SIGN = re.compile(
    r"""
      (?P<space>    [ \u00a0\u2000-\u200a\u202f\u205f\u3000]+ )
    | (?P<decimal>  (?: GROUPED | [0-9]* ) \. [0-9]+ )
    | (?P<fraction> [0-9]+ [/\u2044\u2215] [0-9]+ )
    | (?P<whole>    GROUPED (?! [0-9/\u2044\u2215] ) | [0-9]+ )
    | (?P<shape>    [½¼¾⅛⅜⅝⅞] )
    | (?P<inch>     ["\u2033\u201c\u201d] | '' | \u2032\u2032 | \u2019\u2019 )
    | (?P<foot>     ['\u2032\u2018\u2019] )
    | (?P<word>     [A-Za-z]+ \.? )
    | (?P<dash>     [-\u2010\u2011\u2013] )
    | (?P<minus>    \u2212 )
    """.replace("GROUPED", r"[0-9]{1,3} (?: [\u2009\u202f] [0-9]{3} )+"),
    re.VERBOSE,
)
_THIN_SPACES = re.compile("[\u2009\u202f]")


def scan(text: str) -> list[Sign]:
    """Turn text into its signs, with a sign for the end last; spaces show only as gaps.

    Raises LengthTextError for a character, a word or a fraction that no length has.
    """
    signs = []
    position = 0
    while position < len(text):
        found = _SIGN.match(text, position)
        if found is None:
            raise _stray(text, position)
        if found.lastgroup != "space":
            signs.append(_sign(found))
        position = found.end()
    return [*signs, Sign(Kind.END, position, position)]


def _sign(found: re.Match[str]) -> Sign:
    """Make the sign for one match of the pattern."""
    start, end = found.span()
    match found.lastgroup:
        case "whole" | "decimal":
            return _number(found)
        case "fraction" | "shape":
            return _fraction(found)
        case "word":
            return Sign(Kind.UNIT, start, end, unit=_unit_of(found), spelled=True)
        case "inch" | "foot" as mark:
            return Sign(Kind.UNIT, start, end, unit=_MARKS[mark])
        case line:
            return Sign(Kind.MINUS if line == "minus" else Kind.DASH, start, end)


def _number(found: re.Match[str]) -> Sign:
    start, end = found.span()
    _, point, decimals = found[0].partition(".")
    if len(decimals) > MOST_DECIMALS:
        raise LengthTextError(
            f"There are more than {MOST_DECIMALS} decimals.",
            end - len(decimals) + MOST_DECIMALS,
            found.string,
            "Write fewer decimals, or a fraction with its unit like 145/3 in.",
        )
    kind = Kind.DECIMAL if point else Kind.WHOLE
    return Sign(kind, start, end, Fraction(_THIN_SPACES.sub("", found[0])))


def _fraction(found: re.Match[str]) -> Sign:
    start, end = found.span()
    if found.lastgroup == "shape":
        value = _FRACTION_CHARACTERS[found[0]]
        return Sign(Kind.FRACTION, start, end, value, value.denominator)
    above, below = re.split("[/\u2044\u2215]", found[0])
    if not int(below):
        raise LengthTextError(
            "Nothing can be divided into zero parts.",
            end - len(below),
            found.string,
            "Write a fraction like 1/16.",
        )
    return Sign(Kind.FRACTION, start, end, Fraction(int(above), int(below)), int(below))


def _unit_of(found: re.Match[str]) -> Unit:
    unit = _WORDS.get(found[0].lower())
    if unit is None:
        raise LengthTextError(
            f'"{found[0]}" is no unit that is read here.',
            found.start(),
            found.string,
            "Write in, ft, mm, cm or m, or the marks ' and \".",
        )
    return unit


def _stray(text: str, position: int) -> LengthTextError:
    character = text[position]
    reason = f"The character {character!a} has no place in a length."
    reason, remedy = _STRAY.get(character, (reason, EXAMPLES))
    return LengthTextError(reason, position, text, remedy)
