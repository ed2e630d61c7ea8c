"""Angles as JSON."""

from typing import Any

from lacunar.exchange.length_json import decimal_number
from lacunar.measure.angle import Angle


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
        "text": angle.tenths,
        "degrees": decimal_number(angle.degrees),
    }
