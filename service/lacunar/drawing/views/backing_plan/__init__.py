"""The backing plan: what holds the beams, and what that is fixed to.

Backing is worked back from the finished faces, which are drawn as thin lines beside it where the
scale leaves room; joists are dashed through it, dots are the places to fix at.
"""

from collections.abc import Iterator, Sequence
from math import dist

from lacunar.drawing import style
from lacunar.drawing.annotation import Block, Tag, dot
from lacunar.drawing.elements import Circle, Element, Fill, Group, Polyline, Pt, Segments
from lacunar.drawing.paper import Scale
from lacunar.drawing.plan.broken import Boxes, broken
from lacunar.drawing.plan.clear_places import Box, Occupied, text_box
from lacunar.drawing.plan.columns import column_groups
from lacunar.drawing.plan.control_line import control_line
from lacunar.drawing.plan.datum_mark import datum_mark
from lacunar.drawing.plan.frame import PlanFrame
from lacunar.drawing.plan.names import beam_tags, tag_box, wall_tags
from lacunar.drawing.plan.ordinates import FiguresDoNotFit, RunningPlan, Side, running_plan
from lacunar.drawing.plan.rings import closed, coffer_rings
from lacunar.drawing.plan.walls import wall_groups
from lacunar.drawing.typeface import Typeface
from lacunar.drawing.views.backing_plan.framing import blocking, joist_lines
from lacunar.drawing.views.backing_plan.keep_out import keep_out_zones, zone_names
from lacunar.drawing.views.backing_plan.strips import (
    BackingStrip,
    Quad,
    angled_strips,
    backing_strips,
)
from lacunar.drawing.views.backing_plan.told_sides import told_sides
from lacunar.drawing.wording import SheetWording, decimal_mm
from lacunar.layout.records import Layout

VIEW = "backing-plan"
SEEN_APART = 0.55
"""Finished faces nearer to the backing than this on paper [mm] would run into its lines."""
DOT = 1.6
DOTS_APART = 1.8
"""Places to fix at are drawn where no two of a line are nearer than this [mm]."""

Line = tuple[Pt, Pt]

__all__ = ["VIEW", "FiguresDoNotFit", "backing_plan", "measured_backing_plan"]


def measured_backing_plan(
    layout: Layout, scale: Scale, wording: SheetWording, typeface: Typeface
) -> RunningPlan:
    """How large the plan is at a scale, found without drawing it."""

    def told(frame: PlanFrame) -> Iterator[Side]:
        return told_sides(frame, wording)

    bare = PlanFrame(layout, scale.ratio, Pt(0.0, 0.0))
    return running_plan(bare, scale, told, wording, typeface)


def backing_plan(
    plan: RunningPlan, number: int, wording: SheetWording, typeface: Typeface
) -> Block:
    """The plan drawn, as view `number`. Errors: `FiguresDoNotFit` at this scale."""
    frame = plan.frame
    sides = plan.drawn_sides(wording)
    tags = tuple(beam_tags(frame, typeface))
    boxes = [tag_box(tag, center, typeface) for tag, center in tags]
    strips = tuple(backing_strips(frame))
    solid: tuple[Element, ...] = (
        *(_strip(strip, boxes) for strip in strips),
        *(_angled(beam, quad, boxes) for beam, quad in angled_strips(frame)),
        *_faces(frame, boxes),
        *wall_groups(frame),
        *column_groups(frame),
    )
    names = _names(frame, (*solid, *_drawn(tags, typeface), *sides), typeface)
    texts = [*boxes, *_text_boxes(names, typeface)]
    about: tuple[Element, ...] = (
        Group("object", solid, id=f"object-view-{number}"),
        *_framing(frame, texts),
        *(_dots(strip, texts) for strip in strips if strip.places),
        *keep_out_zones(frame, texts),
        *_drawn(tags, typeface),
        *names,
        *control_line(frame),
        *sides,
    )
    view = Group(
        "view",
        (*about, datum_mark(frame, about, typeface, crowded=True)),
        id=f"view-{number}",
        title="Backing plan",
        data={"view": VIEW, "scale": str(plan.scale.ratio), "scale-text": plan.scale.text},
    )
    return Block(plan.width, plan.height, (view,))


def _drawn(tags: Sequence[tuple[Tag, Pt]], typeface: Typeface) -> tuple[Group, ...]:
    return tuple(tag.drawn(center, typeface) for tag, center in tags)


def _names(frame: PlanFrame, about: tuple[Element, ...], typeface: Typeface) -> tuple[Group, ...]:
    """Walls' names and items' ids, clear of all but joists, which stop at them."""
    zones = tuple(keep_out_zones(frame, ()))
    walls = tuple(wall_tags(frame, (*about, *zones), typeface))
    busy = Occupied(typeface, (*about, *zones, *walls))
    return (*walls, *zone_names(frame, busy, typeface))


def _text_boxes(names: Sequence[Group], typeface: Typeface) -> Iterator[tuple[Pt, ...]]:
    """What lines keep clear of about names: their rings, or their words."""
    for element in (each for group in names for each in group.children):
        if isinstance(element, Circle):
            across = 2 * element.radius + 1.0
            yield Box.about(element.center, across, across).corners
        elif not isinstance(element, Polyline | Segments | Group):
            yield text_box(element, typeface).grown(style.TEXT_CLEARANCE + 0.2).corners


def _strip(strip: BackingStrip, boxes: Boxes) -> Group:
    """One line of backing: its pieces, or the middle line of a flat beam, which has none."""
    drawn: tuple[Element, ...] = tuple(
        element for quad in strip.quads for element in _piece(quad, boxes)
    )
    if not strip.quads:
        drawn = broken(strip.axes, boxes, style.CENTER)
    width = {} if strip.width is None else {"width-mm": decimal_mm(strip.width)}
    return Group(
        "backing",
        drawn,
        id=f"backing-{strip.beam}-{strip.side}",
        title=f"Backing of {strip.beam}",
        data={
            "of": strip.beam,
            "side": strip.side,
            "on": strip.on.value,
            "middle-mm": decimal_mm(strip.middle.value),
            "pieces": str(len(strip.axes)),
            **width,
        },
    )


def _angled(beam: str, quad: Quad, boxes: Boxes) -> Group:
    title, identity = f"Backing of {beam}, at an angled wall", f"backing-{beam}"
    return Group("angled-backing", _piece(quad, boxes), id=identity, title=title, data={"of": beam})


def _piece(quad: Quad, boxes: Boxes) -> tuple[Element, ...]:
    field = Polyline(quad, None, closed=True, fill=Fill.TINT)
    return (field, *broken(tuple(closed(quad)), boxes, style.OBJECT))


def _faces(frame: PlanFrame, boxes: Boxes) -> Iterator[Group]:
    """The finished faces about each coffer, where they stand clear of the backing behind them."""
    offsets = [p.backing_offset.value for p in frame.layout.profiles if p.backing_offset]
    if offsets and frame.on_paper(min(offsets)) < SEEN_APART:
        return
    for coffer, rings in coffer_rings(frame).items():
        edges = tuple(edge for ring in rings for edge in closed(ring))
        yield Group("finished-face", broken(edges, boxes, style.FINE), data={"of": coffer})


def _framing(frame: PlanFrame, texts: Boxes) -> Iterator[Group]:
    """Joists, then blocks between them."""
    joists = frame.layout.backing.joists
    for joist in joists.joists if joists else ():
        assert joists is not None
        yield Group(
            "joist",
            broken(joist_lines(frame, joists, joist), texts, style.HIDDEN),
            id=f"joist-{joist.id}",
            title=f"Joist {joist.id}",
            data={
                "id": joist.id,
                "on": joists.on.value,
                "center-mm": decimal_mm(joist.center.value),
            },
        )
    for line in frame.layout.backing.lines:
        blocks = tuple(blocking(frame, line))
        if blocks:
            data = {"of": line.beam, "side": line.side, "count": str(len(blocks))}
            yield Group("blocking", broken(blocks, texts, style.CUT), data=data)


def _dots(strip: BackingStrip, texts: Boxes) -> Group:
    """The places a line is fixed at, but for those under a name."""
    boxes = [Box.around(corners) for corners in texts]
    near = min((dist((a.x, a.y), (b.x, b.y)) for a, b in _pairs(strip)), default=DOTS_APART)
    shown = strip.places if near >= DOTS_APART else ()
    clear = (at for at in shown if not any(Box.about(at, DOT, DOT).meets(box) for box in boxes))
    data = {"of": strip.beam, "side": strip.side, "count": str(len(strip.places))}
    return Group("fixed-at", tuple(dot(at) for at in clear), data=data)


def _pairs(strip: BackingStrip) -> Iterator[Line]:
    yield from zip(strip.places, strip.places[1:], strict=False)
