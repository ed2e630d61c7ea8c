"""Where strings stand about the plan, at both ends of a run where its walls lie unlike, drawn."""

from collections.abc import Iterable, Mapping
from dataclasses import dataclass

from lacunar.drawing import style
from lacunar.drawing.dimensions import Axis, PlacedString, String, drawn_string, place_strings
from lacunar.drawing.elements import Group
from lacunar.drawing.plan.frame import WALL_BAND, PlanFrame
from lacunar.drawing.typeface import Typeface
from lacunar.drawing.views.reflected_ceiling_plan.broken_lines import broken_about, tag_boxes
from lacunar.drawing.views.reflected_ceiling_plan.strings import far_strings, run_strings
from lacunar.drawing.views.reflected_ceiling_plan.tags import row_deepened, tags_reach
from lacunar.drawing.wording import SheetWording
from lacunar.model.room import RunName

BEYOND_TAGS = 1.5
"""What lies between tags and the figures of a string beyond them [mm]."""

Placed = Mapping[RunName, tuple[PlacedString, ...]]


@dataclass(frozen=True, slots=True)
class PlanStrings:
    """The strings above and left of the plan, those below and right, and all reach about it [mm].

    `reach` is from the room's outermost places: left, above, right, below.
    """

    main: Placed
    far: Placed
    reach: tuple[float, float, float, float]


def plan_strings(frame: PlanFrame, wording: SheetWording, typeface: Typeface) -> PlanStrings:
    """Place all strings about a plan. Errors: `StringsDoNotFit`."""
    length, width = RunName.LENGTH, RunName.WIDTH
    main = {
        run: place_strings(
            run_strings(frame, run, wording),
            typeface,
            WALL_BAND + row_deepened(frame, run.other, typeface),
        )
        for run in RunName
    }
    along, up = main[length], main[width]
    # No figure at the end of one side's strings may reach into those of another.
    right = max(tags_reach(frame, width, typeface), *(s.overrun_after for s in along))
    far_up = _beyond(far_strings(frame, width, wording), right, typeface)
    below = max(tags_reach(frame, length, typeface), *(s.overrun_before for s in (*up, *far_up)))
    far_along = _beyond(far_strings(frame, length, wording), below, typeface)
    level = (*along, *far_along)
    reach = (
        max(up[-1].outer_edge, *(s.overrun_before for s in level)),
        max(along[-1].outer_edge, *(s.overrun_after for s in (*up, *far_up))),
        max(right, *(s.outer_edge for s in far_up), *(s.overrun_after for s in level)),
        max(below, *(s.outer_edge for s in far_along)) if far_along else below,
    )
    return PlanStrings(main, {length: far_along, width: far_up}, reach)


def _beyond(
    strings: tuple[String, ...], reach: float, typeface: Typeface
) -> tuple[PlacedString, ...]:
    """Strings on the side of the tags, clear of all that reaches so far out there [mm]."""
    inward = style.TEXT_ABOVE_LINE + style.TEXT + BEYOND_TAGS
    return place_strings(strings, typeface, max(reach + inward - style.FIRST_STRING, WALL_BAND))


def drawn_strings(
    strings: PlanStrings, frame: PlanFrame, tags: Iterable[Group]
) -> tuple[Group, ...]:
    """All strings on paper, measured outward from the room's outermost places.

    Where extension lines come upon one of the `tags` they are broken about it.
    """
    boxes = [box for tag in tags for box in tag_boxes(tag)]
    (left, right), (low, high) = (frame.reach(run) for run in RunName)
    x, y = frame.origin.x, frame.origin.y
    length, width = RunName.LENGTH, RunName.WIDTH
    main = {length: Axis("x", y - high, x), width: Axis("y", x + left, -y)}
    far = {
        length: Axis("x", y - low, x, far=True),
        width: Axis("y", x + right, -y, far=True),
    }
    gap = WALL_BAND + style.EXTENSION_GAP
    return tuple(
        broken_about(drawn_string(string, axes[run], gap), boxes)
        for placed, axes in ((strings.main, main), (strings.far, far))
        for run in RunName
        for string in placed[run]
    )
