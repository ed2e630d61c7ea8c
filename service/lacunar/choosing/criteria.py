"""What a layout comes to by each criterion it can be judged by."""

from collections.abc import Iterator, Sequence
from decimal import Decimal
from fractions import Fraction

from lacunar.choosing.fronts import Key, Value
from lacunar.choosing.laying import LaidOut
from lacunar.choosing.records import MORE_IS_BETTER, AnyFigure, Criterion, Judged
from lacunar.layout.backing_records import JoistRelation
from lacunar.layout.crossing_records import EndsAt
from lacunar.layout.item_records import Meeting, WallFeatureCheck
from lacunar.layout.records import Layout
from lacunar.measure.figure import CountFigure, LengthFigure, NumberFigure, Rule
from lacunar.measure.length import ZERO, Length
from lacunar.model.panel import PanelKind
from lacunar.takeoff.part_records import Part, PartKind

SQUARENESS = Rule("longer side by shorter, of the coffer that is least square", "longer / shorter")
SEAMS = Rule("seams of sheets in all panels", "seams")
JOINTS = Rule(
    "joints: where beams meet or end, corners of mouldings, splices",
    "crossings + corners + splices",
)
CUTS = Rule("cuts: both ends of each board and each piece of moulding", "2 * (boards + mouldings)")
CROWN_LEFT = Rule("crown that is bought and not used", "bought - used")
BETWEEN_JOISTS = Rule("lines of backing along the joists that lie on none", "lines")
CONFLICTS = Rule(
    "conflicts: of items, of beams over edges of wall features, and lower than their heads",
    "of_items + over_edges + lower_than_heads",
)
OFF_CENTER = Rule("from the middle of what is over a feature to its center", "abs(off_center)")

_BOARDS = frozenset({PartKind.SIDE, PartKind.BOTTOM, PartKind.UPPER_BOARD})
_MOULDINGS = frozenset({PartKind.CROWN, PartKind.FLAT_MOULDING})


def judged(laid: LaidOut, center_on: Sequence[str]) -> tuple[Judged, ...]:
    """Turn a layout and its take-off into figures, those only that say something of it.

    Parameters: `laid`; `center_on`, names of the wall features to be centered on.
    """
    return tuple(Judged(criterion, figure) for criterion, figure in _figures(laid, center_on))


def key_of(figures: Sequence[Judged]) -> Key:
    """Figures as values of which less is better."""
    return tuple(value_of(each.criterion, each.figure) for each in figures)


def value_of(criterion: Criterion, figure: AnyFigure) -> Value:
    """A figure as a value of which less is better."""
    value = figure.value
    plain: Value = _exact(value)
    return -plain if criterion in MORE_IS_BETTER else plain


def _exact(value: Length | Fraction | Decimal | int) -> Value:
    if isinstance(value, Length):
        return value.inches
    return Fraction(value) if isinstance(value, Decimal) else value


def without_cost(figures: Sequence[Judged]) -> tuple[Judged, ...]:
    """Figures without that of cost, where costs cannot be compared."""
    return tuple(each for each in figures if each.criterion is not Criterion.COST)


def lacks(laid: LaidOut) -> frozenset[str]:
    """What the cost of a layout leaves out; costs are compared where they leave out the same."""
    return frozenset() if laid.costed is None else frozenset(laid.costed.cost.lacks)


def _figures(laid: LaidOut, center_on: Sequence[str]) -> Iterator[tuple[Criterion, AnyFigure]]:
    layout, room = laid.layout, laid.layout.ceiling.room
    yield Criterion.SQUARENESS, _squareness(layout)
    if layout.ceiling.panel.kind is PanelKind.SHEET_GOODS:
        yield Criterion.SEAMS, _seams(layout)
    yield Criterion.JOINTS, _joints(layout)
    yield Criterion.CUTS, _cuts(laid.parts)
    if laid.crown is not None:
        yield Criterion.CROWN_LEFT, _crown_left(laid.crown.bought.value, laid.crown.used.value)
    if laid.costed is not None:
        yield Criterion.COST, laid.costed.cost.total
    yield Criterion.HEADROOM, layout.heights.worst_height
    if layout.backing.joists is not None:
        lines = [each for each in layout.backing.lines if each.relation is JoistRelation.BETWEEN]
        yield Criterion.BETWEEN_JOISTS, BETWEEN_JOISTS.gives(len(lines), lines=len(lines))
    if room.ceiling_items or room.wall_features:
        yield Criterion.CONFLICTS, _conflicts(layout)
    centers = [each for each in layout.wall_features if each.name in center_on]
    if centers:
        yield Criterion.OFF_CENTER, _off_center(centers)


def _squareness(layout: Layout) -> NumberFigure:
    def ratio(sides: tuple[Length, Length]) -> Fraction:
        return max(sides) / min(sides)

    sizes = [(each.length.value, each.width.value) for each in layout.coffers]
    worst = max(sizes, key=ratio)
    return SQUARENESS.gives(ratio(worst), longer=max(worst), shorter=min(worst))


def _seams(layout: Layout) -> CountFigure:
    seams = seams_of(layout)
    return SEAMS.gives(seams, seams=seams)


def seams_of(layout: Layout) -> int:
    """The seams of sheets in all coffers; none where coffers are filled otherwise."""
    return sum(panel.seams.value * len(panel.coffers) for panel in layout.panels)


def _joints(layout: Layout) -> CountFigure:
    crossings = sum(len(each.places) for each in layout.crossings)
    corners = sum(
        piece.quantity * len(trim.coffers)
        for trim in layout.mouldings.coffers
        for piece in trim.pieces
    )
    ends = sum(
        piece.quantity
        for piece in layout.pieces
        for end in (piece.start, piece.end)
        if end.ends_at is EndsAt.SPLICE
    )
    splices = ends // 2
    return JOINTS.gives(
        crossings + corners + splices, crossings=crossings, corners=corners, splices=splices
    )


def _cuts(parts: Sequence[Part]) -> CountFigure:
    boards = sum(part.quantity for part in parts if part.kind in _BOARDS)
    mouldings = sum(part.quantity for part in parts if part.kind in _MOULDINGS)
    return CUTS.gives(2 * (boards + mouldings), boards=boards, mouldings=mouldings)


def _crown_left(bought: Length, used: Length) -> LengthFigure:
    return CROWN_LEFT.gives(bought - used, bought=bought, used=used)


def _conflicts(layout: Layout) -> CountFigure:
    of_items = sum(len(item.conflicts) for item in layout.items.items)
    over_edges = sum(
        beam.meeting is Meeting.OVER_EDGE for each in layout.wall_features for beam in each.beams
    )
    lower = sum(
        beam.over_head is not None and beam.over_head.value < ZERO
        for each in layout.wall_features
        for beam in each.beams
    )
    lower += sum(len(each.along_wall) for each in layout.wall_features)
    return CONFLICTS.gives(
        of_items + over_edges + lower,
        of_items=of_items,
        over_edges=over_edges,
        lower_than_heads=lower,
    )


def _off_center(centers: Sequence[WallFeatureCheck]) -> LengthFigure:
    off = max((each.off_center.value for each in centers), key=abs)
    return OFF_CENTER.gives(abs(off), off_center=off)
