"""The key plan: a small plan without dimensions that tells walls, rows and columns by name.

Beams are the gray between coffers, as on the reflected ceiling plan. Letters of rows stand left of
the room, numbers of columns below it; where they would be too close, some are left out in order.
"""

from collections.abc import Iterator, Mapping
from fractions import Fraction
from math import ceil

from lacunar.drawing import style
from lacunar.drawing.annotation import Block, Tag
from lacunar.drawing.elements import Element, Face, Fill, Group, Polyline, Pt, Text
from lacunar.drawing.plan.clear_places import Box, Occupied, lines_cross
from lacunar.drawing.plan.columns import column_sign
from lacunar.drawing.plan.frame import PlanFrame
from lacunar.drawing.plan.rings import on_paper, rings_on_paper
from lacunar.drawing.plan.walls import WallOnPaper, walls_of
from lacunar.drawing.typeface import Typeface
from lacunar.layout.records import Layout
from lacunar.model.room import RunName

NAME_OUT = 4.0
NAMES_END = 6.2
TAG_OUTS = (5.0, 7.0, 9.0, 11.5, 14.0, 17.0, 20.0, 24.0, 28.0)
LED_OUT = 13.0
"""From how far off a tag is led to its wall [mm]: beyond the row of names."""
ALONG = (0.5, 0.3, 0.7, 0.15, 0.85)
MARGIN = 15.0
NAME_PITCH = 4.6
DIGITS = "0123456789"

Names = Mapping[str, tuple[float, ...]]


def key_plan(layout: Layout, room: tuple[float, float], typeface: Typeface) -> Block:
    """The plan as large as fits in a room on paper [mm], to no standard scale."""
    bare = PlanFrame(layout, Fraction(1), Pt(0.0, 0.0))
    (left, right), (low, high) = (bare.reach(run) for run in RunName)
    wide, tall = right - left, high - low
    ratio = Fraction(ceil(max(wide / (room[0] - 2 * MARGIN), tall / (room[1] - 2 * MARGIN))))
    origin = Pt(MARGIN - left / ratio, MARGIN + high / ratio)
    frame = PlanFrame(layout, ratio, origin)
    plan = tuple(_plan(frame))
    names = tuple(_names(frame, typeface))
    busy = Occupied(typeface, (*plan, *names, *_rows_of_names(frame)))
    drawn = Group(
        "key-plan",
        (*plan, *names, *_wall_tags(frame, busy, typeface)),
        id="key-plan",
        title="Key plan",
        data={"ratio": str(ratio)},
    )
    return Block(wide / ratio + 2 * MARGIN, tall / ratio + 2 * MARGIN, (drawn,))


def _plan(frame: PlanFrame) -> Iterator[Element]:
    """The room with its beams gray, its coffers white, its columns, and its walls heavy."""
    layout = frame.layout
    outline = tuple(frame.point(corner) for corner in layout.outline)
    yield Polyline(outline, None, closed=True, fill=Fill.TINT)
    for name, corners in _coffers(frame).items():
        drawn = Polyline(corners, style.FINE, closed=True, fill=Fill.WHITE)
        yield Group("key-coffer", (drawn,), id=f"key-coffer-{name}", data={"id": name})
    yield Polyline(outline, style.WALL, closed=True)
    for column in layout.outlined.columns if layout.outlined else ():
        yield from column_sign(tuple(on_paper(frame, corner) for corner in column.corners))


def _coffers(frame: PlanFrame) -> dict[str, tuple[Pt, ...]]:
    """The corners of each coffer on paper, by its id."""
    layout = frame.layout
    cut = layout.outlined.partial_coffers if layout.outlined else ()
    found = {each.id: rings_on_paper(frame, each)[0] for each in cut}
    for coffer in layout.coffers:
        found[coffer.id] = tuple(frame.point(corner) for corner in coffer.corners)
    return found


def _names(frame: PlanFrame, typeface: Typeface) -> Iterator[Element]:
    """Letters of rows and numbers of columns, in the middle of what they name."""
    rows: dict[str, list[float]] = {}
    columns: dict[str, list[float]] = {}
    for name, corners in _coffers(frame).items():
        row = name.rstrip(DIGITS)
        rows.setdefault(row, []).extend(at.y for at in corners)
        columns.setdefault(name.removeprefix(row), []).extend(at.x for at in corners)
    left = frame.origin.x + frame.reach(RunName.LENGTH)[0] - NAME_OUT
    below = frame.origin.y - frame.reach(RunName.WIDTH)[0] + NAME_OUT + style.TEXT / 2
    wide = max(typeface.width(name, style.TEXT, Face.SEMIBOLD) for name in columns)
    for name, y in _apart(rows, NAME_PITCH):
        text = Text(Pt(left, y + style.TEXT / 2), name, style.TEXT, Face.SEMIBOLD, "middle")
        yield Group("row-name", (text,), data={"of": name})
    for name, x in _apart(columns, wide + 2 * style.TEXT_CLEARANCE):
        text = Text(Pt(x, below), name, style.TEXT, Face.SEMIBOLD, "middle")
        yield Group("column-number", (text,), data={"of": name})


def _rows_of_names(frame: PlanFrame) -> Iterator[Element]:
    """Lines outside the names, never drawn: no tag stands among the names, or close to them."""
    (left, right), (low, high) = (frame.reach(run) for run in RunName)
    corner = frame.origin.moved(left - NAMES_END, -low + NAMES_END)
    yield Polyline((corner, corner.moved(0.0, low - high - NAMES_END)), style.FINE)
    yield Polyline((corner, corner.moved(right - left + NAMES_END, 0.0)), style.FINE)


def _apart(names: Mapping[str, list[float]], pitch: float) -> Iterator[tuple[str, float]]:
    """Each name with its middle, those left out that come within the pitch of one before [mm]."""
    middles = {name: (min(places) + max(places)) / 2 for name, places in names.items()}
    taken: list[float] = []
    for name, middle in sorted(middles.items(), key=lambda each: (len(each[0]), each[0])):
        if all(abs(middle - other) >= pitch for other in taken):
            taken.append(middle)
            yield name, middle


def _wall_tags(frame: PlanFrame, busy: Occupied, typeface: Typeface) -> Iterator[Element]:
    """The tag of each wall outside the room beside it, led to it where it stands far off."""
    named: dict[str, WallOnPaper] = {}
    for wall in walls_of(frame):
        before = named.get(wall.name)
        if before is None or wall.span > before.span:
            named[wall.name] = wall
    leaders: list[tuple[Pt, Pt]] = []
    # Short walls first: the others have more places to choose from.
    for wall in sorted(named.values(), key=lambda each: each.span):
        tag = Tag("key-wall", wall.name, wall.name, round=True)
        radius = tag.long_side(typeface) / 2
        for out, share in ((out, share) for out in TAG_OUTS for share in ALONG):
            at, foot = (wall.point(wall.span * share, far) for far in (out, 0.0))
            leader = wall.point(wall.span * share, out - radius), foot
            led = out >= LED_OUT
            if led and (
                busy.crosses_text(leader) or any(lines_cross(leader, each) for each in leaders)
            ):
                continue
            if busy.is_free(Box.about(at, 2 * radius, 2 * radius).grown(style.TEXT_CLEARANCE)):
                extra = (Polyline(leader, style.LEADER),) if led else ()
                drawn = tag.drawn(at, typeface, *extra)
                busy.add((drawn,))
                leaders += [leader] if led else []
                yield drawn
                break
