"""How a saw is set for sprung moulding at a corner of any angle."""

from lacunar.layout.moulding_records import Edge, Hand, Lies, SawCut, SawSettings
from lacunar.measure.angle import Angle, flat_bevel, flat_miter, over_tangent
from lacunar.measure.figure import AngleFigure, LengthFigure, Rule

# The two formulas are published for sprung mouldings at any corner ("Crown molding: formulas and
# example calculations", which calls half of the corner its wall angle).
NESTED_MITER = Rule(
    "miter with the crown nested: from a square cut, half of what the corner is off straight",
    "abs(90 - corner / 2)",
)
FLAT_MITER = Rule(
    "miter with the crown flat: from a square cut", "abs(atan(sin(spring) / tan(corner / 2)))"
)
FLAT_BEVEL = Rule(
    "bevel with the crown flat: from upright", "abs(asin(cos(spring) * cos(corner / 2)))"
)
EDGE_SHORTER = Rule(
    "an end's edge at the ceiling is shorter than its edge on the wall by this much",
    "projection / tan(corner / 2)",
)
EDGE_LONGER = Rule(
    "an end's edge at the ceiling is longer than its edge on the wall by this much",
    "projection / tan((360 - corner) / 2)",
)

SQUARE_CORNER = Angle.of_degrees(90)
# Nested, the wall's edge is at the fence. Flat, one edge or the other is, so that the blade always
# tilts to the left. Worked out from how a piece lies, with vectors, in the tests.
_INSIDE = (
    SawCut(Lies.NESTED, Hand.LEFT, Edge.WALL, Hand.LEFT, Hand.LEFT),
    SawCut(Lies.NESTED, Hand.RIGHT, Edge.WALL, Hand.RIGHT, Hand.RIGHT),
    SawCut(Lies.FLAT, Hand.LEFT, Edge.WALL, Hand.LEFT, Hand.LEFT),
    SawCut(Lies.FLAT, Hand.RIGHT, Edge.CEILING, Hand.RIGHT, Hand.LEFT),
)
_OUTSIDE = (
    SawCut(Lies.NESTED, Hand.LEFT, Edge.WALL, Hand.RIGHT, Hand.LEFT),
    SawCut(Lies.NESTED, Hand.RIGHT, Edge.WALL, Hand.LEFT, Hand.RIGHT),
    SawCut(Lies.FLAT, Hand.LEFT, Edge.CEILING, Hand.RIGHT, Hand.RIGHT),
    SawCut(Lies.FLAT, Hand.RIGHT, Edge.WALL, Hand.LEFT, Hand.RIGHT),
)

STRAIGHT = Angle.of_degrees(180)
FULL_TURN = Angle.of_degrees(360)


def saw_settings(
    spring: AngleFigure, corner: Angle, most_miter: Angle, most_bevel: Angle
) -> SawSettings:
    """Turn a spring angle and a corner [deg] into saw settings, and hold them to the saw's limits.

    Formula: nested |90 - C/2|; flat miter |atan(sin S / tan(C/2))|, bevel |asin(cos S cos(C/2))|,
    for 0 <= S <= 90 from the wall and 0 < C < 360, measured inside the room: past 180 the corner is
    an outside one.

    >>> from lacunar.measure.figure import given
    >>> angle = Angle.of_degrees
    >>> flat = saw_settings(given(angle(45)), angle(90), angle(50), angle(45))
    >>> flat.nested_miter.value, flat.flat_bevel.value, flat.flat_within_limits
    (Angle(45 deg), Angle(30 deg), True)
    """
    half = corner / 2
    sprung = spring.value
    nested = NESTED_MITER.gives(abs(SQUARE_CORNER - half), corner=corner)
    miter = FLAT_MITER.approximates(flat_miter(sprung, half), spring=sprung, corner=corner)
    bevel = FLAT_BEVEL.approximates(flat_bevel(sprung, half), spring=sprung, corner=corner)
    return SawSettings(
        corner=corner,
        nested_miter=nested,
        flat_miter=miter,
        flat_bevel=bevel,
        nested_within_limits=nested.value <= most_miter,
        flat_within_limits=miter.value <= most_miter and bevel.value <= most_bevel,
        cuts=() if corner == STRAIGHT else _OUTSIDE if corner > STRAIGHT else _INSIDE,
    )


def ceiling_edge(projection: LengthFigure, corner: Angle) -> LengthFigure:
    """Turn a projection [length] and a corner [deg] into what one mitred end changes [length].

    Formula: at an inside corner the ceiling edge is shorter by p / tan(C/2); at an outside one, C
    past 180, it is longer by p / tan((360 - C)/2).

    >>> from lacunar.measure.figure import given
    >>> from lacunar.measure.length import Length
    >>> two = given(Length.of_inches(2))
    >>> inside, outside = (ceiling_edge(two, Angle.of_degrees(corner)) for corner in (90, 270))
    >>> inside.value == outside.value == two.value, inside.rule == outside.rule
    (True, False)
    """
    outside = corner > STRAIGHT
    half = (FULL_TURN - corner if outside else corner) / 2
    rule = EDGE_LONGER if outside else EDGE_SHORTER
    reach = over_tangent(projection.value, half)
    return rule.approximates(reach, projection=projection.value, corner=corner)
