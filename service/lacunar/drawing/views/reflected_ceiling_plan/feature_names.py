"""Names of wall features outside their walls, where there is room for them.

A name stands over its feature, between the jambs where it can, clear of strings and tags. Where it
cannot the table of wall features alone tells it.
"""

from collections.abc import Iterator

from lacunar.drawing import style
from lacunar.drawing.elements import Group, Text
from lacunar.drawing.plan.clear_places import Occupied, text_box
from lacunar.drawing.plan.frame import WALL_BAND, PlanFrame
from lacunar.drawing.plan.walls import (
    WallOnPaper,
    edges_on_paper,
    wall_of,
    walls_of,
)
from lacunar.drawing.typeface import Typeface
from lacunar.layout.item_records import WallFeatureCheck

GAP = 1.0
BELOW = 1.0
"""What letters may hang below their baseline [mm]."""
STEP = 1.5
"""A name is moved along its wall by so much at a time until it meets nothing [mm]."""


def feature_names(frame: PlanFrame, busy: Occupied, typeface: Typeface) -> tuple[Group, ...]:
    """The names of features for which there is room. What is placed is added to `busy`."""
    walls = walls_of(frame)
    names = []
    for number, check in enumerate(frame.layout.wall_features, start=1):
        for text in _places(frame, wall_of(walls, check), check, typeface):
            if busy.is_free(text_box(text, typeface).grown(style.TEXT_CLEARANCE)):
                group = _tag(check, text, number)
                busy.add((group,))
                names.append(group)
                break
    return tuple(names)


def _places(
    frame: PlanFrame, wall: WallOnPaper, check: WallFeatureCheck, typeface: Typeface
) -> Iterator[Text]:
    """The name over the middle of its feature, then further and further off it to both sides."""
    near, far = edges_on_paper(frame, wall, check)
    half = typeface.width(check.name, style.TEXT) / 2
    way = wall.outward
    turned = abs(way.x) > abs(way.y)
    # Letters stand on their baseline: towards the wall above and left of the plan, else away.
    above = (way.x if turned else way.y) < 0
    # Where the wall leans, the name must clear it with its nearer end.
    leaning = half * min(abs(way.x), abs(way.y))
    out = WALL_BAND + GAP + leaning + (BELOW if above else style.TEXT)
    middle = (near + far) / 2
    for number in range(int((far - near) / STEP) + 1):
        step = (number + 1) // 2 * STEP * (1 if number % 2 else -1)
        at = middle + step
        if at - half >= 0.0 and at + half <= wall.span:
            place = wall.point(at, out)
            yield Text(place, check.name, style.TEXT, anchor="middle", turned=turned)


def _tag(check: WallFeatureCheck, text: Text, number: int) -> Group:
    return Group(
        "tag",
        (text,),
        id=f"tag-wall-feature-{number}",
        title=check.name,
        data={"kind": "wall-feature", "of": check.name},
    )
