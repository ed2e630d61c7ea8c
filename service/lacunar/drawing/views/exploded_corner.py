"""A coffer's corner pulled apart downward in the order of fitting, with the steps' numbers."""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass

from lacunar.drawing import style
from lacunar.drawing.annotation import Block, Tag, dot
from lacunar.drawing.elements import Group, Polyline, Pt
from lacunar.drawing.solids.corner import Corner
from lacunar.drawing.solids.corner_boards import beam_boards, panel_bodies
from lacunar.drawing.solids.corner_trim import trim_bodies
from lacunar.drawing.solids.exploding import pulled_apart
from lacunar.drawing.solids.pictures import Picture, edge_groups, fitted_picture
from lacunar.drawing.solids.space import Place, Sight, Solid
from lacunar.drawing.spreading import spread
from lacunar.drawing.typeface import Typeface
from lacunar.layout.fitting_records import FittingStep, Stage
from lacunar.model.room import RunName

SIGHT = Sight(turned=40.0, raised=32.0)
GAP = 25.0
MARGIN = 4.0
BALLOON_ROOM = 16.0
BALLOON_PITCH = 8.0
BOARDS = ("backing", "side", "bottom", "upper_board", "panel", "board", "flat", "moulding")
PENS = dict.fromkeys(BOARDS, style.OBJECT)


@dataclass(frozen=True, slots=True)
class Pulled:
    """A step of fitting that has parts in the corner, and these where they are pulled to."""

    step: FittingStep
    solids: tuple[Solid, ...]


def pulled_corner(corner: Corner) -> tuple[Pulled, ...]:
    """The corner's parts in the order of fitting, from the ceiling down."""
    found: dict[Stage, list[Solid]] = {}
    puts = (*(put for run in RunName for put in beam_boards(corner, run)), *panel_bodies(corner))
    for stage, solid in (*puts, *trim_bodies(corner)):
        found.setdefault(stage, []).append(solid)
    steps = [step for step in corner.layout.fitting.steps if step.stage in found]
    groups = pulled_apart([found[step.stage] for step in steps], SIGHT, GAP)
    return tuple(Pulled(step, solids) for step, solids in zip(steps, groups, strict=True))


def exploded_corner(
    pulled: Sequence[Pulled], room: tuple[float, float], typeface: Typeface
) -> Block:
    """The picture as large as fits in a room on paper [mm], numbers of steps left of it."""
    solids = [solid for each in pulled for solid in each.solids]
    places = [corner for solid in solids for corner in solid.corners]
    bare = fitted_picture(places, SIGHT, (room[0] - BALLOON_ROOM, room[1]), MARGIN)
    datum = bare.datum.moved(BALLOON_ROOM, 0.0)
    picture = Picture(SIGHT, bare.size, datum, bare.width + BALLOON_ROOM, bare.height)
    drawn = Group(
        "exploded",
        (*edge_groups(solids, picture, PENS), *_balloons(pulled, picture, typeface)),
        id="exploded",
        title="A corner in the order of fitting",
        data={"view": "exploded-corner", **picture.axes},
    )
    return Block(picture.width, picture.height, (drawn,))


def _balloons(pulled: Sequence[Pulled], picture: Picture, typeface: Typeface) -> Iterator[Group]:
    """A ring with each step's number, led to the end of its part that lies furthest left."""
    targets = sorted(
        ((_target(each.solids, picture), each.step) for each in pulled), key=lambda each: each[0].y
    )
    tags = [Tag("step", f"{step.number}", f"{step.number}", round=True) for _, step in targets]
    radius = max(tag.long_side(typeface) for tag in tags) / 2
    levels = spread(
        [at.y for at, _ in targets], BALLOON_PITCH, radius + 0.5, picture.height - radius - 0.5
    )
    for (at, _), tag, y in zip(targets, tags, levels, strict=True):
        center = Pt(radius + 0.5, y)
        own = tag.long_side(typeface) / 2
        far = ((at.x - center.x) ** 2 + (at.y - y) ** 2) ** 0.5
        start = center.moved((at.x - center.x) / far * own, (at.y - y) / far * own)
        yield tag.drawn(center, typeface, Polyline((start, at), style.LEADER), dot(at))


def _target(solids: Sequence[Solid], picture: Picture) -> Pt:
    """The middle of the end of a part that is furthest left in the picture."""
    return min((_left_end(solid, picture) for solid in solids), key=lambda at: at.x)


def _left_end(solid: Solid, picture: Picture) -> Pt:
    least = min(corner.x for corner in solid.corners)
    end = [corner for corner in solid.corners if corner.x == least]
    count = len(end)
    middle = (sum(each) / count for each in zip(*end, strict=True))
    return picture.at(Place(*middle))
