"""Cautions about joists, backing and what hangs from them. None of them is ever a verdict."""

from collections.abc import Iterator
from fractions import Fraction

from lacunar.layout.backing_records import Backing, BackingLine, Hold, JoistRelation
from lacunar.layout.records import Caution, Layout
from lacunar.measure.writing import decimal_text
from lacunar.model.fasteners import SIZES
from lacunar.model.fixing import BetweenJoists
from lacunar.model.room import JoistKind

_NAMED = 6
# Diameters a fastener keeps from an edge (the National Design Specification's advice, from memory).
EDGE_DISTANCE = Fraction(5, 2)

_CARRIED_BY = {
    BetweenJoists.BLOCKING: "by blocking let in between the joists while the ceiling is open",
    BetweenJoists.SKIN: "by a plywood skin screwed to the joists over the whole ceiling before"
    " backing goes up; blocking would need the ceiling opened, and anchors made for hollow"
    " ceilings carry less",
    BetweenJoists.ANCHORS: "by anchors made for hollow ceilings, used within what their maker"
    " publishes for a hung load; blocking, with the ceiling opened, or a plywood skin carries more",
}


def backing_cautions(layout: Layout) -> Iterator[Caution]:
    """Cautions of trusses, of joists as told, of beams between them, and of fasteners."""
    backing, joists = layout.backing, layout.ceiling.room.joists
    if joists is None:
        return
    if joists.kind is JoistKind.TRUSS:
        yield Caution(
            code="trusses_are_engineered",
            text="The ceiling hangs from trusses. Ask their designer what may be hung from them"
            " and where it may be fixed; never cut, notch or drill one.",
            figures={},
            pointer="/room/joists/kind",
        )
    yield Caution(
        code="joists_as_told",
        text="Joists are where the spec says, evenly spaced. Find each one before fixing: real ones"
        " wander, are doubled at openings, and pipes and wires run between them.",
        figures={"joists": backing.joists.count.value if backing.joists else 0},
        pointer="/room/joists",
    )
    if joists.first > joists.spacing:
        yield Caution(
            code="first_joist_far_in",
            text="The first joist is further from the start wall than joists are apart; one nearer"
            " to the wall may have been missed.",
            figures={"first": joists.first, "spacing": joists.spacing},
            pointer="/room/joists/first",
        )
    yield from _between_joists(backing)
    yield from _near_edge(layout)
    yield from _few_crossings(backing)
    yield from _shallow(layout)
    yield from _strength(layout)


def _between_joists(backing: Backing) -> Iterator[Caution]:
    between = [line for line in backing.lines if line.relation is JoistRelation.BETWEEN]
    if between and (way := between[0].carried_by):
        yield Caution(
            code="beams_between_joists",
            text=f"Beams run along the joists and lie between two of them: {_some(between)}. They"
            f" are laid out to be carried {_CARRIED_BY[way]}. Beams at walls can be fixed to the"
            " framing of the wall as well.",
            figures={"beams": _of(between), "carried_by": str(way)},
            pointer="/fixing/between_joists",
        )


def _near_edge(layout: Layout) -> Iterator[Caution]:
    fixing = layout.ceiling.fixing
    if fixing is None:
        return
    least = SIZES[fixing.fastener][fixing.size].diameter * EDGE_DISTANCE
    near = [
        line
        for line in layout.backing.lines
        if line.bearing is not None and line.bearing.value < least
    ]
    if near:
        yield Caution(
            code="fastener_near_joist_edge",
            text=f"A line of backing runs so near to a joist's edge that fasteners may split it, in"
            f" {_some(near)}. Drive them nearer to the middle of the joist, or move the beams.",
            figures={"beams": _of(near), "edge_distance": least},
            pointer="/room/joists/first",
        )


def _few_crossings(backing: Backing) -> Iterator[Caution]:
    few = [
        line
        for line in backing.lines
        if line.relation is JoistRelation.ACROSS
        and any(piece.count.value <= 1 for piece in line.pieces)
    ]
    if few:
        yield Caution(
            code="piece_under_one_joist",
            text=f"Pieces of backing cross no more than one joist, in {_some(few)}: one alone lets"
            " them turn. Fix them to the backing they butt against as well, or add blocking.",
            figures={"beams": _of(few)},
            pointer="/room/joists",
        )


def _of(lines: list[BackingLine]) -> str:
    return ", ".join(dict.fromkeys(line.beam for line in lines))


def _some(lines: list[BackingLine]) -> str:
    """The first few beams of a list that may be long, and how many more there are."""
    beams = list(dict.fromkeys(line.beam for line in lines))
    more = len(beams) - _NAMED
    told = ", ".join(beams[:_NAMED])
    return f"{told} and {more} more" if more > 0 else told


def _shallow(layout: Layout) -> Iterator[Caution]:
    fixing = layout.ceiling.fixing
    shallow = [hold for hold in layout.backing.holds if not hold.deep_enough]
    if fixing is None or not shallow:
        return
    least = min(hold.penetration.value for hold in shallow)
    yield Caution(
        code="fastener_not_deep_enough",
        text="The fastener reaches less far into the framing than wished, after all it passes"
        " through. Take a longer one, or counterbore.",
        figures={
            "penetration": least,
            "least_penetration": fixing.least_penetration,
            "profiles": ", ".join(hold.profile for hold in shallow),
        },
        pointer="/fixing/length",
    )


def _strength(layout: Layout) -> Iterator[Caution]:
    backing = layout.backing
    weights = backing.weights
    if weights is None or not backing.holds:
        return
    heaviest = max(backing.holds, key=lambda hold: hold.load_pounds.value)
    beam = next(each for each in weights.beams if each.profile == heaviest.profile)
    yield Caution(
        code="fixing_to_be_judged",
        text="Weights and holding figures are reference values for wood of published density in dry"
        " side grain; they prove nothing about this framing. A licensed engineer or the code"
        " official decides what may hang from it, and how it is fixed.",
        figures={
            "profile": heaviest.profile,
            "pounds_per_foot": _pounds(beam.pounds_per_foot.value),
            "pounds_per_square_foot": _pounds(weights.pounds_per_square_foot.value),
            **_held(heaviest),
        },
        pointer="/fixing",
    )


def _held(hold: Hold) -> dict[str, str]:
    figures = {
        "load_pounds_each": _pounds(hold.load_pounds.value),
        "withdrawal_pounds_each": _pounds(hold.withdrawal_pounds.value),
    }
    if hold.pull_through_pounds is not None:
        figures["pull_through_pounds_each"] = _pounds(hold.pull_through_pounds.value)
    return figures


def _pounds(number: Fraction) -> str:
    return decimal_text(number, places=2)
