"""How numbers, texts and names are written into a drawing; what must not get into one is refused.

Neither svgwrite nor cairosvg checks these: a number that is not finite makes a line vanish, and a
control character makes the whole file unreadable.
"""

import re

PAPER_LIMIT = 10_000.0
"""No coordinate on paper reaches this [mm]: ten times the longest side of the largest ISO sheet."""

_NAME = re.compile(r"[A-Za-z_][A-Za-z0-9_.-]*")
_DATA_NAME = re.compile(r"[a-z][a-z0-9]*(-[a-z0-9]+)*")
_BREAKS = re.compile(r"[\t\n\v\f\r\x85\u2028\u2029]")
_UNPRINTABLE = re.compile(
    "[\x00-\x08\x0e-\x1f\x7f-\x84\x86-\x9f"  # control characters, line breaks aside
    "\u200e\u200f\u202a-\u202e\u2066-\u2069"  # marks that reorder the letters around them
    "\ud800-\udfff\ufdd0-\ufdef\ufffe\uffff]"  # halves of surrogate pairs and noncharacters
)
_SPACES = re.compile(" {2,}")


def number(value: float) -> str:
    """A coordinate [mm of paper] as written in a drawing: at most three decimals, no exponent.

    Raises `ValueError` for a number that is not finite or not within 10 m of the sheet's corner.

    >>> number(25.4), number(3.0), number(-0.0001), number(1 / 3)
    ('25.4', '3', '0', '0.333')
    """
    if not -PAPER_LIMIT < value < PAPER_LIMIT:  # nor is a number that is none
        raise ValueError(f"{value!r} mm is not a position or a size on paper")
    text = f"{value:.3f}".rstrip("0").rstrip(".")
    return "0" if text == "-0" else text


def positive(value: float) -> str:
    """Like `number`, for a size: what would be written as 0 or less is refused as well.

    >>> positive(0.25)
    '0.25'
    """
    text = number(value)
    if text == "0" or value < 0:
        raise ValueError(f"{value!r} mm is not a size on paper")
    return text


def printable(text: str) -> str:
    r"""The text as it can stand in a drawing: one line, without characters no file can carry.

    Line breaks and tabs become spaces, runs of spaces one space (both engines draw them so), and
    control characters, noncharacters and marks that reorder letters are left out.

    >>> printable("Music\troom\x00,  north")
    'Music room, north'
    """
    return _SPACES.sub(" ", _UNPRINTABLE.sub("", _BREAKS.sub(" ", text)))


def name(text: str) -> str:
    """An id or a class: one word of letters, digits, `_`, `.` and `-`, or else `ValueError`.

    >>> name("Z-101")
    'Z-101'
    """
    if not _NAME.fullmatch(text):
        raise ValueError(f"{text!r} cannot be an id or a class in a drawing")
    return text


def data_name(text: str) -> str:
    """The attribute for a data name: lower case with hyphens, or else `ValueError`.

    >>> data_name("cut-length")
    'data-cut-length'
    """
    if not _DATA_NAME.fullmatch(text):
        raise ValueError(f"{text!r} cannot be the name of a data attribute")
    return f"data-{text}"
