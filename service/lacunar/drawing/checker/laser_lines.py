"""The point on the lines a laser is set up on: off their walls as told, one square to the other."""

from collections.abc import Iterator

from lacunar.drawing.checker.facts import WALLS_OF_RUN
from lacunar.drawing.checker.geometry import TOLERANCE
from lacunar.drawing.checker.plan_frame import SETTING_OUT, plan_frames
from lacunar.drawing.checker.records import Finding, GroupRead
from lacunar.drawing.checker.subject import Subject


def lasers_as_told(subject: Subject) -> Iterator[Finding]:
    """Point 94: where a grid is square, a line off a wall of each run, each where it says it is."""
    sheet, facts = subject.sheet, subject.facts
    for frame in plan_frames(subject, SETTING_OUT):
        lines = list(sheet.of_kind("laser-line", frame.view))
        wanted = [] if facts.followed is not None else sorted(facts.spans)
        if sorted(line.data.get("on", "") for line in lines) != wanted:
            yield sheet.finding(94, frame.view.id, "has not one line for a laser across each run")
        for line in lines:
            due = _due(subject, line)
            level = line.data.get("on") == "length"
            spots = [spot for path in sheet.paths_in(line) for spot in path.spots]
            places = (
                spot.x - frame.origin.x if level else frame.origin.y - spot.y for spot in spots
            )
            if due is None or any(abs(at - due / frame.ratio) > TOLERANCE for at in places):
                yield sheet.finding(94, line.id, "does not lie off its wall as it says")


def _due(subject: Subject, line: GroupRead) -> float | None:
    """How far along its run a line lies [mm], by its wall; None where it says nothing of use."""
    run, wall = line.data.get("on", ""), line.data.get("wall", "")
    try:
        offset = float(line.data.get("offset-mm", ""))
    except ValueError:
        return None
    if wall not in WALLS_OF_RUN.get(run, ()):
        return None
    span = float(subject.facts.spans[run].at_start)
    return offset if wall == WALLS_OF_RUN[run][0] else span - offset
