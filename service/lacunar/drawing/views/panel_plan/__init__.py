"""The panel plan: what fills each coffer, where its seams or joints lie, and where boards start."""

from collections.abc import Iterator, Mapping, Sequence

from lacunar.drawing import style
from lacunar.drawing.annotation import Block, TagsDoNotFit, arrow
from lacunar.drawing.elements import Circle, Element, Fill, Group, Polyline, Pt, Text, walk
from lacunar.drawing.paper import Scale
from lacunar.drawing.plan.broken import broken
from lacunar.drawing.plan.clear_places import Box, Occupied, text_box
from lacunar.drawing.plan.columns import column_groups
from lacunar.drawing.plan.control_line import control_line
from lacunar.drawing.plan.datum_mark import datum_mark
from lacunar.drawing.plan.directions import direction_arrows
from lacunar.drawing.plan.frame import PlanFrame
from lacunar.drawing.plan.id_places import IdPlace, id_places
from lacunar.drawing.plan.names import wall_tags
from lacunar.drawing.plan.ordinates import RunningPlan, running_plan
from lacunar.drawing.plan.rings import Rings, closed, coffer_rings, largest_box
from lacunar.drawing.plan.walls import wall_groups
from lacunar.drawing.typeface import Typeface
from lacunar.drawing.views.panel_plan.fields import FieldOnPaper, fields_on_paper
from lacunar.drawing.views.panel_plan.size_marks import size_marks
from lacunar.drawing.wording import SheetWording
from lacunar.layout.records import Layout
from lacunar.model.room import RunName

VIEW = "panel-plan"
CLEAR = 0.8
START_REACH = 5.0
HEAD = 2.2
START_SHARES = (0.2, 0.8, 0.35, 0.65)
"""Where along the first board its start may be shown, as shares of the coffer."""

Line = tuple[Pt, Pt]

__all__ = ["VIEW", "TagsDoNotFit", "measured_panel_plan", "panel_plan", "start_sign"]


def measured_panel_plan(
    layout: Layout, scale: Scale, wording: SheetWording, typeface: Typeface
) -> RunningPlan:
    """How large the plan is at a scale, found without drawing it; nothing is told on its sides."""
    bare = PlanFrame(layout, scale.ratio, Pt(0.0, 0.0))
    return running_plan(bare, scale, lambda frame: (), wording, typeface)


def panel_plan(plan: RunningPlan, number: int, wording: SheetWording, typeface: Typeface) -> Block:
    """The plan drawn, as view `number`. Errors: `TagsDoNotFit` where a coffer has no room."""
    frame = plan.frame
    rings = coffer_rings(frame)
    boxes = {coffer: largest_box(each) for coffer, each in rings.items()}
    fields = tuple(fields_on_paper(frame))
    busy = Occupied(typeface, tuple(column_groups(frame)))
    ids = id_places(boxes, (busy,), typeface)
    busy.add(place.drawn(typeface) for place in ids.values())
    arrows = direction_arrows(frame.layout, boxes, ids, (busy,), typeface)
    busy.add(arrows)
    starts = tuple(_starts(frame.layout, fields, boxes, busy))
    signs = (*arrows, *starts, *size_marks(frame.layout, boxes, busy, wording, typeface))
    still = (*_coffers(frame, rings, ids, typeface), *signs, *wall_groups(frame))
    edges = tuple(_edges(coffer, each, ()) for coffer, each in rings.items())
    names = tuple(wall_tags(frame, (*still, *edges, *column_groups(frame)), typeface))
    texts = [_box(place, typeface).corners for place in ids.values()]
    texts += [_around(sign, typeface).corners for sign in (*signs, *names)]
    about: tuple[Element, ...] = (
        Group(
            "object",
            (
                *_coffers(frame, rings, ids, typeface),
                *(_field(field, texts) for field in fields),
                *(_edges(coffer, each, texts) for coffer, each in rings.items()),
                *wall_groups(frame),
                *column_groups(frame),
            ),
            id=f"object-view-{number}",
        ),
        *signs,
        *names,
        *control_line(frame),
    )
    view = Group(
        "view",
        (*about, datum_mark(frame, about, typeface, crowded=True)),
        id=f"view-{number}",
        title="Panel plan",
        data={"view": VIEW, "scale": str(plan.scale.ratio), "scale-text": plan.scale.text},
    )
    return Block(plan.width, plan.height, (view,))


def _coffers(
    frame: PlanFrame, rings: Mapping[str, Rings], ids: Mapping[str, IdPlace], typeface: Typeface
) -> Iterator[Element]:
    """The ceiling between beams, white, each coffer with its id."""
    outline = tuple(frame.point(corner) for corner in frame.layout.outline)
    yield Polyline(outline, None, closed=True, fill=Fill.TINT)
    for coffer, (outer, *_) in rings.items():
        yield Group(
            "coffer",
            (Polyline(outer, None, closed=True, fill=Fill.WHITE), ids[coffer].drawn(typeface)),
            id=f"coffer-{coffer}",
            title=f"Coffer {coffer}",
            data={"id": coffer},
        )


def _field(field: FieldOnPaper, texts: Sequence[tuple[Pt, ...]]) -> Group:
    """The joints of what fills a coffer; seams of sheets heavier than joints of boards."""
    pen = style.OBJECT if field.kind == "sheet" else style.FINE
    drawn: tuple[Element, ...] = (Group("joints", broken(field.joints, texts, pen)),)
    if field.edges:
        drawn = (*drawn, Group("hidden-edges", broken(field.edges, texts, style.HIDDEN)))
    data = {"of": field.coffer, "kind": field.kind, "joints": str(len(field.joints))}
    return Group("field-of", drawn, id=f"field-{field.coffer}", data=data)


def _edges(coffer: str, rings: Rings, texts: Sequence[tuple[Pt, ...]]) -> Group:
    lines = tuple(edge for ring in rings for edge in closed(ring))
    return Group("finished-face", broken(lines, texts, style.OBJECT), data={"of": coffer})


def _starts(
    layout: Layout, fields: Sequence[FieldOnPaper], boxes: Mapping[str, Box], busy: Occupied
) -> Iterator[Group]:
    """An arrow from the first board on, in each field that has room for it."""
    boards = layout.ceiling.panel.boards
    for field in fields if boards else ():
        assert boards is not None
        box = boxes[field.coffer]
        for share in START_SHARES:
            tail, way = _start(box, boards.parallel_to, share)
            tip = tail.moved(way.x * START_REACH, way.y * START_REACH)
            room = Box.around((tail, tip)).grown(HEAD / 3 + CLEAR)
            if room.within(box.grown(CLEAR)) and busy.is_free(room):
                sign = Group(
                    "laying-start",
                    start_sign(tail, tip),
                    id=f"start-{field.coffer}",
                    title=f"Boards of {field.coffer} start here",
                    data={"of": field.coffer, "parallel-to": boards.parallel_to.value},
                )
                busy.add((sign,))
                yield sign
                break


def _start(box: Box, run: RunName, share: float) -> tuple[Pt, Pt]:
    """Where an arrow begins at the first board's outer edge, and its way, one millimeter of it."""
    if run is RunName.LENGTH:
        at = box.left + (box.right - box.left) * share
        return Pt(at, box.bottom - CLEAR), Pt(0.0, -1.0)
    at = box.bottom - (box.bottom - box.top) * share
    return Pt(box.left + CLEAR, at), Pt(1.0, 0.0)


def start_sign(tail: Pt, tip: Pt) -> tuple[Element, ...]:
    """An arrow away from where boards start, with a bar at its tail."""
    dx, dy = (tip.y - tail.y) / START_REACH, (tail.x - tip.x) / START_REACH
    bar = (tail.moved(-dx * HEAD / 2, -dy * HEAD / 2), tail.moved(dx * HEAD / 2, dy * HEAD / 2))
    return Polyline(bar, style.CUT), Polyline((tail, tip), style.FINE), arrow(tip, tail, HEAD)


def _box(place: IdPlace, typeface: Typeface) -> Box:
    return Box.about(place.at, *place.tag.size(typeface)).grown(CLEAR)


def _extent(element: Text | Polyline | Circle, typeface: Typeface) -> Box:
    match element:
        case Text():
            return text_box(element, typeface)
        case Circle():
            return Box.about(element.center, 2 * element.radius, 2 * element.radius)
        case Polyline():
            return Box.around(element.points)


def _around(sign: Group, typeface: Typeface) -> Box:
    """What a sign takes up, with what lines keep clear of it."""
    boxes = [
        _extent(element, typeface)
        for element in walk((sign,))
        if isinstance(element, Text | Polyline | Circle)
    ]
    return Box(
        min(box.left for box in boxes),
        min(box.top for box in boxes),
        max(box.right for box in boxes),
        max(box.bottom for box in boxes),
    ).grown(CLEAR)
