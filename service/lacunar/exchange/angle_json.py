"""Angles as JSON and in words."""

from typing import Any

from lacunar.exchange.length_json import decimal_number
from lacunar.measure.angle import Angle
from lacunar.measure.writing import decimal_text


def angle_to_json(angle: Angle) -> dict[str, Any]:
    """Turn an angle into what every angle in an answer is.

    `exact` loses nothing; `text` is to a tenth of a degree, as a saw is set; `degrees` is rounded
    to 6 places.

    >>> from fractions import Fraction
    >>> angle_to_json(Angle.of_degrees(Fraction(135, 2)))
    {'exact': '67.5 deg', 'text': '67.5°', 'degrees': 67.5}
    """
    return {
        "exact": f"{angle.number} deg",
        "text": angle_in_words(angle),
        "degrees": decimal_number(angle.degrees),
    }


def angle_in_words(angle: Angle, places: int = 1) -> str:
    """Turn an angle into words, to a tenth of a degree: a saw is set no finer.

    A tenth of a degree opens a joint 4 5/8 in wide by 0.008 in, less than a sheet of paper folded.

    >>> angle_in_words(Angle.of_degrees(38))
    '38°'
    """
    return f"{decimal_text(angle.degrees, places)}°"
