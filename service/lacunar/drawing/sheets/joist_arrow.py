"""The arrow under a plan that says which way the joists run, and where they are."""

from lacunar.drawing import style
from lacunar.drawing.annotation import Block, arrow
from lacunar.drawing.elements import Group, Polyline, Pt, Text
from lacunar.drawing.typeface import Typeface
from lacunar.drawing.wording import SheetWording
from lacunar.model.room import START_WALL, JoistKind, Joists, RunName

REACH = 9.0
GAP = 2.5


def joist_arrow(
    joists: Joists, wording: SheetWording, typeface: Typeface, *, drawn: bool = False
) -> Block:
    """An arrow with two heads along the joists as they lie on the plan, and their places in words.

    It stands clear of the ceiling, so that it cannot be taken for a joist. `drawn` is whether the
    plan has the joists themselves.
    """
    lines = joist_words(joists, wording, drawn=drawn)
    middle = Pt(REACH / 2, REACH / 2)
    ends = (middle.moved(-REACH / 2, 0), middle.moved(REACH / 2, 0))
    if joists.parallel_to is RunName.WIDTH:
        ends = (middle.moved(0, -REACH / 2), middle.moved(0, REACH / 2))
    first, last = ends
    baseline = middle.y - style.LINE_PITCH * (len(lines) - 1) / 2 + style.TEXT / 2
    words = tuple(
        Text(Pt(REACH + GAP, baseline + style.LINE_PITCH * n), line, style.TEXT)
        for n, line in enumerate(lines)
    )
    group = Group(
        "joist-arrow",
        (Polyline(ends, style.OBJECT), arrow(first, last), arrow(last, first), *words),
        id="joist-arrow-view-1",
        title="Which way the joists run",
        data={
            "parallel-to": joists.parallel_to.value,
            "spacing": wording.exact(joists.spacing),
            "first": wording.exact(joists.first),
        },
    )
    width = REACH + GAP + max(typeface.width(line, style.TEXT) for line in lines)
    return Block(width, REACH, (group,))


def joist_words(joists: Joists, wording: SheetWording, *, drawn: bool = False) -> tuple[str, str]:
    """What the joists are, how far apart, which way they run, and where the first one is."""
    name = "TRUSSES" if joists.kind is JoistKind.TRUSS else "JOISTS"
    spacing, first = wording.size(joists.spacing), wording.detail(joists.first)
    return (
        f"{name} {spacing} OC, ALONG {joists.parallel_to.value.upper()}",
        f"FIRST CENTER {first} FROM {START_WALL[joists.on]}; {'DASHED' if drawn else 'NOT DRAWN'}",
    )
