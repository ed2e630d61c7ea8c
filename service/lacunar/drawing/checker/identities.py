"""Points on what a program reads off a sheet: ids and stated sizes are the layout's.

That each coffer and beam is drawn once, and where, is checked by how the plan lies. Here it is
checked that what a group says of itself in words and numbers is true as well.
"""

from collections.abc import Iterator, Mapping
from math import inf

from lacunar.drawing.checker.facts import CofferFacts
from lacunar.drawing.checker.figures import stop_places
from lacunar.drawing.checker.geometry import DECIMALS
from lacunar.drawing.checker.plan_frame import PlanFrame, plan_frames
from lacunar.drawing.checker.records import Finding, GroupRead
from lacunar.drawing.checker.strings import run_strings
from lacunar.drawing.checker.subject import Subject

NAMED = ("coffer", "beam", "wall-beam", "angled-beam")
"""Classes whose groups are named by what they are of."""

_CORNERS = 4
_PLACES = 2


def ids_as_in_layout(subject: Subject) -> Iterator[Finding]:
    """Point 62: groups and labels are named by what they are of, dimensions by their string."""
    sheet = subject.sheet
    for frame in plan_frames(subject):
        for kind in NAMED:
            for group in sheet.of_kind(kind, frame.view):
                due = f"{kind}-{group.data.get('id', '')}"
                if group.id != due:
                    yield sheet.finding(62, sheet.place(group.number), f"has not the id {due}")
        yield from _labels_of_nothing(subject, frame)
    for string in sheet.of_kind("dimension-string"):
        name = string.id.removeprefix("string-")
        for number, dimension in enumerate(sheet.of_kind("dimension", string), start=1):
            if dimension.id != f"dim-{name}-{number}":
                message = f"is not dim-{name}-{number}, as its string and place in it ask"
                yield sheet.finding(62, sheet.place(dimension.number), message)


def _labels_of_nothing(subject: Subject, frame: PlanFrame) -> Iterator[Finding]:
    """Labels in balloons that name what the layout does not have."""
    known = _known(subject)
    for tag in subject.sheet.of_kind("tag", frame.view):
        kind, of = tag.data.get("kind", ""), tag.data.get("of", "")
        if kind in known and of not in known[kind]:
            yield subject.sheet.finding(62, tag.id, f"names {kind} {of}, which the layout lacks")


def _known(subject: Subject) -> Mapping[str, set[str]]:
    """The ids that balloons of each kind can bear."""
    facts = subject.facts
    beams = (*facts.beams, *facts.wall_beams, *facts.angled_beams)
    return {
        "coffer": {coffer.id for coffer in facts.coffers},
        "beam": {beam.id for beam in beams},
        "member": {member.id for member in facts.members},
        "item": {item.id for item in facts.items},
    }


def sizes_as_in_layout(subject: Subject) -> Iterator[Finding]:
    """Point 170: sizes that groups state are the layout's, to six decimals.

    Lines and figures are held by other points; a program that reads the file goes by these.
    """
    for frame in plan_frames(subject):
        yield from _coffers(subject, frame)
    yield from _exact_sizes(subject)


def _coffers(subject: Subject, frame: PlanFrame) -> Iterator[Finding]:
    records = {coffer.id: coffer for coffer in subject.facts.coffers}
    for group in subject.sheet.of_kind("coffer", frame.view):
        record = records.get(group.data.get("id", ""))
        if record is None or not _square(record):
            continue
        for side, name in enumerate(("length-mm", "width-mm")):
            places = [corner[side] for corner in record.corners]
            if abs(_number(group, name) - float(max(places) - min(places))) > DECIMALS:
                message = f"states {name} other than the layout"
                yield subject.sheet.finding(170, group.id, message)


def _square(coffer: CofferFacts) -> bool:
    """Whether a coffer is a rectangle along the runs, so that its corners tell both its sizes."""
    sides = list(zip(*coffer.corners, strict=True))
    return len(coffer.corners) == _CORNERS and {len(set(one)) for one in sides} == {_PLACES}


def _exact_sizes(subject: Subject) -> Iterator[Finding]:
    """Dimensions of a plan's strings whose exact size is not that between the layout's places."""
    facts = subject.facts
    for string in run_strings(subject.sheet):
        places = stop_places(facts, string.run, string.end)
        level = float(facts.level(string.run, string.end))
        for dimension in string.dimensions:
            if not {dimension.source, dimension.target} <= places.keys():
                continue
            along = float(places[dimension.target] - places[dimension.source])
            if abs(_number(dimension.group, "exact-mm") * level - along) > 2 * DECIMALS:
                message = f"states exact-mm other than from {dimension.source} to"
                where = dimension.group.id
                yield subject.sheet.finding(170, where, f"{message} {dimension.target}")


def _number(group: GroupRead, name: str) -> float:
    """A stated number; none that fits where there is none."""
    try:
        return float(group.data.get(name, ""))
    except ValueError:
        return inf
