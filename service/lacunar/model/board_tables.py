"""Published face covers of boards and coefficients of wood movement, as data with their sources."""

from collections.abc import Mapping
from dataclasses import dataclass
from fractions import Fraction
from types import MappingProxyType

from lacunar.measure.length import Length
from lacunar.model.boards import BoardName, BoardSpecies, Cut


@dataclass(frozen=True, slots=True)
class PublishedBoard:
    """A board's nominal width, its whole width with the tongue, and the face it covers."""

    nominal_width: Length
    overall: Length
    cover: Length


def _inches(text: str) -> Length:
    return Length.of_inches(sum((Fraction(part) for part in text.split()), Fraction(0)))


def _board(nominal: str, overall: str, cover: str) -> PublishedBoard:
    return PublishedBoard(_inches(nominal), _inches(overall), _inches(cover))


# Western Wood Products Association, coverage estimator, tongue and groove, drop and channel rustic
# (as two siding guides reproduce it). The face is not universal: dealers list 1x6 at 5 and 1x8 at
# 6 3/4, so a cover that is measured governs.
PUBLISHED_BOARDS: Mapping[BoardName, PublishedBoard] = MappingProxyType(
    {
        BoardName.ONE_BY_FOUR: _board("4", "3 3/8", "3 1/8"),
        BoardName.ONE_BY_SIX: _board("6", "5 3/8", "5 1/8"),
        BoardName.ONE_BY_EIGHT: _board("8", "7 1/8", "6 7/8"),
        BoardName.ONE_BY_TEN: _board("10", "9 1/8", "8 7/8"),
    }
)

# Wood Handbook (Forest Products Laboratory, FPL-GTR-190, 2010), Table 13-5: quartersawn (radial),
# then flatsawn (tangential), the part of its width that a board gains for each percent of moisture
# content between 6 and 14. Of the softwoods and yellow-poplar some were seen only as quoted, some
# are from memory; a test regenerates those from the shrinkages of Table 4-3.
_COEFFICIENTS = {
    BoardSpecies.CHERRY: ("0.00126", "0.00248"),
    BoardSpecies.RED_MAPLE: ("0.00137", "0.00289"),
    BoardSpecies.SILVER_MAPLE: ("0.00102", "0.00252"),
    BoardSpecies.SUGAR_MAPLE: ("0.00165", "0.00353"),
    BoardSpecies.RED_OAK: ("0.00158", "0.00369"),
    BoardSpecies.WHITE_OAK: ("0.00180", "0.00365"),
    BoardSpecies.BLACK_WALNUT: ("0.00190", "0.00274"),
    BoardSpecies.WHITE_ASH: ("0.00169", "0.00274"),
    BoardSpecies.BEECH: ("0.00190", "0.00431"),
    BoardSpecies.YELLOW_POPLAR: ("0.00158", "0.00289"),
    BoardSpecies.DOUGLAS_FIR: ("0.00165", "0.00267"),
    BoardSpecies.WESTERN_HEMLOCK: ("0.00144", "0.00274"),
    BoardSpecies.EASTERN_WHITE_PINE: ("0.00071", "0.00212"),
    BoardSpecies.PONDEROSA_PINE: ("0.00133", "0.00216"),
}
# The same source: between these percentages a width changes evenly with its moisture.
LEAST_MOISTURE = Fraction(6)
MOST_MOISTURE = Fraction(14)


def movement_coefficient(species: BoardSpecies, cut: Cut) -> Fraction:
    """The part of its width that a board gains for each percent of moisture content.

    >>> movement_coefficient(BoardSpecies.RED_OAK, Cut.FLATSAWN)
    Fraction(369, 100000)
    """
    quartersawn, flatsawn = _COEFFICIENTS[species]
    return Fraction(flatsawn if cut is Cut.FLATSAWN else quartersawn)
