"""The reflected ceiling plan: the ceiling as in a mirror on the floor, dimensioned on two sides.

Strings stand above the plan for the length run and left of it for the width run, both from the
datum; beam tags stand below and right of it, wall tags on all four sides.
"""

from collections.abc import Mapping, Sequence
from dataclasses import dataclass

from lacunar.drawing.annotation import Block
from lacunar.drawing.elements import Element, Group, Pt
from lacunar.drawing.paper import Scale
from lacunar.drawing.plan.clear_places import Occupied
from lacunar.drawing.plan.control_line import control_line
from lacunar.drawing.plan.datum_mark import datum_mark
from lacunar.drawing.plan.directions import direction_arrows
from lacunar.drawing.plan.frame import PlanFrame
from lacunar.drawing.plan.id_places import IdPlace
from lacunar.drawing.typeface import Typeface
from lacunar.drawing.views.reflected_ceiling_plan.ceiling import ceiling_elements
from lacunar.drawing.views.reflected_ceiling_plan.coffer_places import (
    all_seen_boxes,
    coffer_id_places,
)
from lacunar.drawing.views.reflected_ceiling_plan.columns import column_names
from lacunar.drawing.views.reflected_ceiling_plan.feature_names import feature_names
from lacunar.drawing.views.reflected_ceiling_plan.inner_tags import inner_tags
from lacunar.drawing.views.reflected_ceiling_plan.item_ids import item_ids
from lacunar.drawing.views.reflected_ceiling_plan.items import PlacedSymbol, placed_symbols
from lacunar.drawing.views.reflected_ceiling_plan.placed_strings import (
    PlanStrings,
    drawn_strings,
    plan_strings,
)
from lacunar.drawing.views.reflected_ceiling_plan.stations import station_marks
from lacunar.drawing.views.reflected_ceiling_plan.tags import beam_tags, wall_tags
from lacunar.drawing.wording import SheetWording
from lacunar.layout.records import Layout
from lacunar.model.room import RunName

MARGIN = 1.0


@dataclass(frozen=True, slots=True)
class PlanView:
    """The plan with its strings and tags as a block, and the scale it is drawn at."""

    block: Block
    scale: Scale


@dataclass(frozen=True, slots=True)
class MeasuredPlan:
    """A plan at a scale before it is drawn: its size [mm], and where its strings will stand.

    `frame` has the datum where it lies from the upper left corner of that size.
    """

    scale: Scale
    width: float
    height: float
    frame: PlanFrame
    strings: PlanStrings


def measured_plan(
    layout: Layout, scale: Scale, wording: SheetWording, typeface: Typeface
) -> MeasuredPlan:
    """How large the layout's plan is at a scale, found without drawing it.

    Errors: `StringsDoNotFit` where figures would meet at this scale.
    """
    bare = PlanFrame(layout, scale.ratio, Pt(0.0, 0.0))
    strings = plan_strings(bare, wording, typeface)
    before, above, after, below = (each + MARGIN for each in strings.reach)
    (left, right), (low, high) = (bare.reach(run) for run in RunName)
    origin = Pt(before - left, above + high)
    frame = PlanFrame(layout, scale.ratio, origin)
    return MeasuredPlan(scale, origin.x + right + after, origin.y - low + below, frame, strings)


def reflected_ceiling_plan(plan: MeasuredPlan, typeface: Typeface) -> PlanView:
    """The measured plan drawn. Errors: `TagsDoNotFit` where ids would meet at its scale."""
    frame = plan.frame
    # First what may fail and is soon told: a ceiling of hundreds of coffers is long in drawing.
    tags = (*wall_tags(frame, typeface), *beam_tags(frame, typeface))
    symbols = placed_symbols(frame)
    ids, arrows = _in_coffers(frame, symbols, typeface)
    about: tuple[Element, ...] = (
        Group("object", ceiling_elements(frame, ids, typeface), id="object-view-1"),
        *arrows,
        *tags,
        *control_line(frame),
        *drawn_strings(plan.strings, frame, tags),
    )
    about = (*about, *inner_tags(frame, tags, Occupied(typeface, about), typeface))
    about = (*about, datum_mark(frame, about, typeface))
    view = Group(
        "view",
        (*about, *_signs_and_names(frame, symbols, about, typeface)),
        id="view-1",
        title="Reflected ceiling plan",
        data={
            "view": "reflected-ceiling-plan",
            "scale": str(plan.scale.ratio),
            "scale-text": plan.scale.text,
        },
    )
    return PlanView(Block(plan.width, plan.height, (view,)), plan.scale)


def _in_coffers(
    frame: PlanFrame, symbols: Sequence[PlacedSymbol], typeface: Typeface
) -> tuple[Mapping[str, IdPlace], tuple[Group, ...]]:
    """The places of coffers' ids, then the arrows: clear of items, and of clearances."""
    bare = Occupied(typeface, (e for each in symbols for e in each.symbol.drawn()))
    full = Occupied(typeface, (e for each in symbols for e in each.marks()))
    ids = coffer_id_places(frame, (full, bare), typeface)
    for busy in (full, bare):
        busy.add(place.drawn(typeface) for place in ids.values())
    boxes = all_seen_boxes(frame)
    return ids, direction_arrows(frame.layout, boxes, ids, (full, bare), typeface)


def _signs_and_names(
    frame: PlanFrame,
    symbols: Sequence[PlacedSymbol],
    about: tuple[Element, ...],
    typeface: Typeface,
) -> tuple[Group, ...]:
    """Items and stations with their ids, names of wall features: where nothing else is drawn."""
    layout = frame.layout
    columns = layout.outlined.columns if layout.outlined else ()
    if not symbols and not layout.wall_features and layout.levels is None and not columns:
        return ()
    busy = Occupied(typeface, about)
    drawn = tuple(symbol.drawn(busy) for symbol in symbols)
    busy.add(drawn)
    return (
        *drawn,
        *column_names(frame, busy, typeface),
        *item_ids(frame, symbols, busy, typeface),
        *station_marks(frame, busy, typeface),
        *feature_names(frame, busy, typeface),
    )
