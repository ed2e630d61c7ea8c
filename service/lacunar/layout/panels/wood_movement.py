"""How much boards shrink and swell over the year, from the moisture their wood will have."""

from fractions import Fraction

from lacunar.layout.board_records import BoardMovement, WoodMoistureContent
from lacunar.measure.figure import LengthFigure, NumberFigure, Rule, given
from lacunar.measure.length import Length
from lacunar.measure.moisture import equilibrium
from lacunar.model.board_tables import LEAST_MOISTURE, MOST_MOISTURE, movement_coefficient
from lacunar.model.boards import Air, Fastening, Moisture, Movement

PUBLISHED = Rule("published coefficient of the species and cut", "coefficient")
MOVING_BOARD = Rule("what moves as one: the cover of one nailed board", "cover")
MOVING_FIELD = Rule("what moves as one: the widest field of floating boards", "across")
SHRINK = Rule(
    "shrinks by width, coefficient and percent of moisture lost",
    "width * coefficient * max(now - driest, 0)",
)
SWELL = Rule(
    "swells by width, coefficient and percent of moisture gained",
    "width * coefficient * max(dampest - now, 0)",
)
LAP = Rule("what the trim laps over the boards: its cover less the gap", "trim_cover - gap")


def board_movement(movement: Movement, cover: Length, gap: Length, widest: Length) -> BoardMovement:
    """Turn what is known of the boards' wood into how much they move.

    Formula: width * coefficient * change of moisture in percent; valid between 6 and 14 percent,
    outside of which no movement is given. Source: Wood Handbook, FPL-GTR-190, equation 13-2.

    Parameters: `movement`; `cover` [length] of a board; `gap` [length] at the edges; `widest`
    [length], what courses fill in the widest field.
    """
    coefficient = _coefficient(movement)
    moving = MOVING_BOARD.gives(cover, cover=cover)
    if movement.fastening is Fastening.FLOATING:
        moving = MOVING_FIELD.gives(widest, across=widest)
    now, driest, dampest = (
        _moisture(each) for each in (movement.now, movement.driest, movement.dampest)
    )
    holds = all(
        LEAST_MOISTURE <= each.percent.value <= MOST_MOISTURE for each in (now, driest, dampest)
    )
    trim = movement.trim_cover
    return BoardMovement(
        species=movement.species,
        cut=movement.cut,
        fastening=movement.fastening,
        coefficient=coefficient,
        now=now,
        driest=driest,
        dampest=dampest,
        moving_width=moving,
        shrink=_shrink(moving, coefficient, now, driest) if holds else None,
        swell=_swell(moving, coefficient, now, dampest) if holds else None,
        lap=None if trim is None else LAP.gives(trim - gap, trim_cover=trim, gap=gap),
    )


def _coefficient(movement: Movement) -> NumberFigure:
    if movement.coefficient is not None:
        return given(movement.coefficient)
    if movement.species is None:
        raise ValueError("the species is open: the spec has not passed the rules")
    published = movement_coefficient(movement.species, movement.cut)
    return PUBLISHED.gives(published, coefficient=published)


def _moisture(moisture: Moisture) -> WoodMoistureContent:
    if isinstance(moisture, Air):
        sorption = equilibrium(moisture.humidity, moisture.temperature)
        return WoodMoistureContent(sorption.moisture, sorption)
    return WoodMoistureContent(given(moisture), None)


def _shrink(
    width: LengthFigure,
    coefficient: NumberFigure,
    now: WoodMoistureContent,
    driest: WoodMoistureContent,
) -> LengthFigure:
    """Always approximate: a coefficient is an average of trees."""
    start, end = now.percent.value, driest.percent.value
    return SHRINK.approximates(
        width.value * coefficient.value * max(start - end, Fraction(0)),
        width=width.value,
        coefficient=coefficient.value,
        now=start,
        driest=end,
    )


def _swell(
    width: LengthFigure,
    coefficient: NumberFigure,
    now: WoodMoistureContent,
    dampest: WoodMoistureContent,
) -> LengthFigure:
    start, end = now.percent.value, dampest.percent.value
    return SWELL.approximates(
        width.value * coefficient.value * max(end - start, Fraction(0)),
        width=width.value,
        coefficient=coefficient.value,
        dampest=end,
        now=start,
    )
