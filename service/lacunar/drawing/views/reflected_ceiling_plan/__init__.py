"""The reflected ceiling plan: the ceiling as in a mirror on the floor, dimensioned on two sides.

Strings stand above the plan for the length run and left of it for the width run, both from the
datum; beam tags stand below and right of it, wall tags on all four sides.
"""

from collections.abc import Mapping, Sequence
from dataclasses import dataclass

from lacunar.drawing import style
from lacunar.drawing.annotation import Block
from lacunar.drawing.dimensions import Axis, PlacedString, drawn_string, place_strings
from lacunar.drawing.elements import Circle, Element, Fill, Group, Pt, Text
from lacunar.drawing.paper import Scale
from lacunar.drawing.typeface import Typeface
from lacunar.drawing.views.reflected_ceiling_plan.ceiling import ceiling_elements
from lacunar.drawing.views.reflected_ceiling_plan.clear_places import Occupied
from lacunar.drawing.views.reflected_ceiling_plan.coffer_places import IdPlace, coffer_id_places
from lacunar.drawing.views.reflected_ceiling_plan.directions import direction_arrows
from lacunar.drawing.views.reflected_ceiling_plan.feature_names import feature_names
from lacunar.drawing.views.reflected_ceiling_plan.frame import WALL_BAND, PlanFrame
from lacunar.drawing.views.reflected_ceiling_plan.item_ids import item_ids
from lacunar.drawing.views.reflected_ceiling_plan.items import PlacedSymbol, placed_symbols
from lacunar.drawing.views.reflected_ceiling_plan.stations import station_marks
from lacunar.drawing.views.reflected_ceiling_plan.strings import run_strings
from lacunar.drawing.views.reflected_ceiling_plan.tags import (
    beam_tags,
    row_deepened,
    tags_reach,
    wall_tags,
)
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
    strings: Mapping[RunName, tuple[PlacedString, ...]]


def measured_plan(
    layout: Layout, scale: Scale, wording: SheetWording, typeface: Typeface
) -> MeasuredPlan:
    """How large the layout's plan is at a scale, found without drawing it.

    Errors: `StringsDoNotFit` where figures would meet at this scale.
    """
    bare = PlanFrame(layout, scale.ratio, Pt(0.0, 0.0))
    placed = {
        run: place_strings(
            run_strings(bare, run, wording),
            typeface,
            WALL_BAND + row_deepened(bare, run.other, typeface),
        )
        for run in RunName
    }
    along, up = placed[RunName.LENGTH], placed[RunName.WIDTH]
    left = max(up[-1].outer_edge, *(s.overrun_before for s in along)) + MARGIN
    above = along[-1].outer_edge + MARGIN
    origin = Pt(left, above + bare.span(RunName.WIDTH))
    right = max(tags_reach(bare, RunName.WIDTH, typeface), *(s.overrun_after for s in along))
    below = max(tags_reach(bare, RunName.LENGTH, typeface), *(s.overrun_before for s in up))
    width = left + bare.span(RunName.LENGTH) + right + MARGIN
    frame = PlanFrame(layout, scale.ratio, origin)
    return MeasuredPlan(scale, width, origin.y + below + MARGIN, frame, placed)


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
        _datum_mark(frame.origin),
        *_drawn_strings(plan.strings, frame),
    )
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
    return ids, direction_arrows(frame, ids, (full, bare), typeface)


def _signs_and_names(
    frame: PlanFrame,
    symbols: Sequence[PlacedSymbol],
    about: tuple[Element, ...],
    typeface: Typeface,
) -> tuple[Group, ...]:
    """Items and stations with their ids, names of wall features: where nothing else is drawn."""
    layout = frame.layout
    if not symbols and not layout.wall_features and layout.levels is None:
        return ()
    busy = Occupied(typeface, about)
    drawn = tuple(symbol.drawn(busy) for symbol in symbols)
    busy.add(drawn)
    return (
        *drawn,
        *item_ids(frame, symbols, busy, typeface),
        *station_marks(frame, busy, typeface),
        *feature_names(frame, busy, typeface),
    )


def _drawn_strings(
    placed: Mapping[RunName, tuple[PlacedString, ...]], frame: PlanFrame
) -> tuple[Group, ...]:
    """Both runs' strings, measured outward from the finish faces of W2 (top) and W1 (left)."""
    top = frame.along(RunName.WIDTH, frame.span(RunName.WIDTH), 0.0)
    axes = {
        RunName.LENGTH: Axis("x", top.y, frame.origin.x),
        RunName.WIDTH: Axis("y", frame.origin.x, -frame.origin.y),
    }
    gap = WALL_BAND + style.EXTENSION_GAP
    return tuple(drawn_string(string, axes[run], gap) for run in RunName for string in placed[run])


def _datum_mark(origin: Pt) -> Group:
    """A ring about the corner both runs are measured from, and the word."""
    ring = Circle(origin, 1.6, style.LEADER, Fill.NONE)
    word = Text(origin.moved(1.0, 8.2), "DATUM", style.TEXT, anchor="end")
    return Group("datum", (ring, word), id="datum", title="Datum: both runs start here")
