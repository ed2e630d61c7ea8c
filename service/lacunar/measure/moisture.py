"""The moisture wood comes to in air of a humidity and temperature, without a float.

The equation has no root and no angle in it: it is a quotient of sums of products, so fractions hold
it, and only the last step rounds, to a hundredth of a percent.
"""

from dataclasses import dataclass
from fractions import Fraction

from lacunar.measure.figure import NumberFigure, Rule

# The equation and its constants stand in the Wood Handbook (Forest Products Laboratory,
# FPL-GTR-282, 2021), chapter 4, equation 4-5, for degrees Celsius.
SORPTION_W = Rule(
    "sorption value W at the temperature",
    "349 + 129 * celsius / 100 + 135 * celsius * celsius / 10000",
)
SORPTION_K = Rule(
    "sorption value K at the temperature",
    "805 / 1000 + 736 * celsius / 1000000 - 273 * celsius * celsius / 100000000",
)
SORPTION_K1 = Rule(
    "sorption value K1 at the temperature",
    "627 / 100 - 938 * celsius / 100000 - 303 * celsius * celsius / 1000000",
)
SORPTION_K2 = Rule(
    "sorption value K2 at the temperature",
    "191 / 100 + 407 * celsius / 10000 - 293 * celsius * celsius / 1000000",
)
EQUILIBRIUM = Rule(
    "moisture content in percent that wood comes to in such air (two-hydrate sorption equation),"
    " to a hundredth",
    "floor(100 * 1800 / w * (k * humidity / (1 - k * humidity)"
    " + (k1 * k * humidity + 2 * k1 * k2 * k * k * humidity * humidity)"
    " / (1 + k1 * k * humidity + k1 * k2 * k * k * humidity * humidity)) + 1 / 2) / 100",
)


@dataclass(frozen=True, slots=True)
class Temperature:
    """A temperature, held as degrees Celsius; 32 and 212 degrees Fahrenheit are 0 and 100.

    >>> Temperature.of_fahrenheit(Fraction(68)).celsius
    Fraction(20, 1)
    """

    celsius: Fraction

    @classmethod
    def of_fahrenheit(cls, degrees: Fraction) -> "Temperature":
        """Turn degrees Fahrenheit into a temperature."""
        return cls((degrees - 32) * Fraction(5, 9))

    @property
    def fahrenheit(self) -> Fraction:
        """The same temperature in degrees Fahrenheit."""
        return self.celsius * Fraction(9, 5) + 32


@dataclass(frozen=True, slots=True)
class Sorption:
    """What air makes of wood: the equation's values at its temperature, and the moisture content.

    `moisture` is a percentage of the oven-dry weight.
    """

    w: NumberFigure
    k: NumberFigure
    k1: NumberFigure
    k2: NumberFigure
    moisture: NumberFigure


def equilibrium(humidity: Fraction, temperature: Temperature) -> Sorption:
    """Turn the air about it into the moisture content that wood comes to.

    Parameters: `humidity`, relative [percent of saturation, 0 to 100]; `temperature`.
    Formula: 1800/W [Kh/(1-Kh) + (K1 K h + 2 K1 K2 K² h²)/(1 + K1 K h + K1 K2 K² h²)], h = humidity
    as a part of 1. Valid within about half a percent of moisture content, because other published
    equations differ by as much. Source: Wood Handbook, FPL-GTR-282, equation 4-5.

    >>> equilibrium(Fraction(50), Temperature(Fraction(20))).moisture.value
    Fraction(927, 100)
    """
    celsius = temperature.celsius
    w = SORPTION_W.gives(
        349 + 129 * celsius / 100 + 135 * celsius * celsius / 10_000, celsius=celsius
    )
    k = SORPTION_K.gives(
        Fraction(805, 1000) + 736 * celsius / 1_000_000 - 273 * celsius * celsius / 100_000_000,
        celsius=celsius,
    )
    k1 = SORPTION_K1.gives(
        Fraction(627, 100) - 938 * celsius / 100_000 - 303 * celsius * celsius / 1_000_000,
        celsius=celsius,
    )
    k2 = SORPTION_K2.gives(
        Fraction(191, 100) + 407 * celsius / 10_000 - 293 * celsius * celsius / 1_000_000,
        celsius=celsius,
    )
    h = humidity / 100
    moisture = _moisture(h, (w.value, k.value, k1.value, k2.value))
    return Sorption(
        w,
        k,
        k1,
        k2,
        EQUILIBRIUM.approximates(
            moisture, w=w.value, k=k.value, humidity=h, k1=k1.value, k2=k2.value
        ),
    )


def _moisture(h: Fraction, values: tuple[Fraction, Fraction, Fraction, Fraction]) -> Fraction:
    """The equation, rounded to a hundredth of a percent, a half upwards."""
    w, k, k1, k2 = values
    dissolved = k * h / (1 - k * h)
    first, second = k1 * k * h, k1 * k2 * k * k * h * h
    hydrated = (first + 2 * second) / (1 + first + second)
    return Fraction((100 * 1800 / w * (dissolved + hydrated) + Fraction(1, 2)) // 1, 100)
