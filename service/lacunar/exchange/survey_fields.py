"""Values of a survey: one for each wall, one for each corner."""

from collections.abc import Mapping
from decimal import Decimal
from typing import Any

from lacunar.exchange.fields import Degrees, Distance, SpecField, Text, refusal, wrong_type
from lacunar.exchange.shaped_fields import members_of
from lacunar.measure.length import ZERO, Length
from lacunar.measure.plane import Spot
from lacunar.model.room import WALLS
from lacunar.model.survey import CORNERS, FourAngles, FourLengths, FourSpots

_DISTANCE = Distance("")
_DEGREES = Degrees("")


class ControlLine(Text):
    """What a grid is square to, by its name."""


class WallLengths(SpecField[FourLengths]):
    """A length for each wall."""

    def read(self, value: object) -> FourLengths:
        """Lengths of W1, W2, W3, W4."""
        if not isinstance(value, dict):
            raise wrong_type(value, "an object with W1, W2, W3 and W4")
        read = members_of(value, dict.fromkeys(WALLS, _DISTANCE), *WALLS)
        first, second, third, fourth = (read[wall] for wall in WALLS)
        return first, second, third, fourth


class CornerAngles(SpecField[FourAngles]):
    """An angle for each corner."""

    def read(self, value: object) -> FourAngles:
        """Angles by `CORNERS`."""
        if not isinstance(value, dict):
            raise wrong_type(value, f"an object with {', '.join(CORNERS)}")
        read = members_of(value, dict.fromkeys(CORNERS, _DEGREES), *CORNERS)
        datum, right, top, left = (read[corner] for corner in CORNERS)
        return datum, right, top, left


class Signed(SpecField[Length]):
    """A length that may lie to either side of its origin."""

    def read(self, value: object) -> Length:
        """A length, above or below zero."""
        if isinstance(value, str) and value.startswith("-"):
            return -_DISTANCE.read(value[1:])
        if isinstance(value, int | Decimal) and not isinstance(value, bool) and value < 0:
            return -_DISTANCE.read(-value)
        return _DISTANCE.read(value)


class CornerPoint(SpecField[Spot]):
    """A place by x and y."""

    readers: Mapping[str, SpecField[Any]] = {"x": Signed(""), "y": Signed("")}

    def read(self, value: object) -> Spot:
        """Both of its measures."""
        if not isinstance(value, dict):
            raise wrong_type(value, "an object with x and y")
        read = members_of(value, self.readers, "x", "y")
        return Spot(read["x"], read["y"])


class CornerPoints(SpecField[FourSpots]):
    """A place for each corner."""

    def read(self, value: object) -> FourSpots:
        """Places by `CORNERS`."""
        if not isinstance(value, dict):
            raise wrong_type(value, f"an object with {', '.join(CORNERS)}")
        read = members_of(value, dict.fromkeys(CORNERS, CornerPoint("")), *CORNERS)
        datum, right, top, left = (read[corner] for corner in CORNERS)
        return datum, right, top, left


class Bow(SpecField[Length]):
    """How far the middle of a wall stands in or out; above zero into the room."""

    readers: Mapping[str, SpecField[Any]] = {"in": _DISTANCE, "out": _DISTANCE}

    def read(self, value: object) -> Length:
        """A length, above zero where the wall bows into the room."""
        if not isinstance(value, dict):
            raise wrong_type(value, 'an object with "in" or "out"')
        read = members_of(value, self.readers)
        if len(read) != 1:
            raise refusal(
                "value_not_one",
                "A wall bows in or out, not both and not neither.",
                'Give "in" or "out", or leave the wall out if it is straight.',
            )
        inward: Length | None = read.get("in")
        outward: Length = read.get("out", ZERO)
        return -outward if inward is None else inward


class WallBows(SpecField[FourLengths]):
    """What walls bow; those left out are straight."""

    def read(self, value: object) -> FourLengths:
        """Bows of W1, W2, W3, W4."""
        if not isinstance(value, dict):
            raise wrong_type(value, "an object with walls that bow")
        read = members_of(value, dict.fromkeys(WALLS, Bow("")))
        first, second, third, fourth = (read.get(wall, ZERO) for wall in WALLS)
        return first, second, third, fourth
