"""The point on ceiling items: drawn where they are laid out, listed, and explained."""

from collections.abc import Iterator, Sequence
from math import dist

from lacunar.drawing.checker.facts import ItemFacts
from lacunar.drawing.checker.geometry import TOLERANCE
from lacunar.drawing.checker.plan_frame import PlanFrame, plan_frames
from lacunar.drawing.checker.records import Finding, GroupRead
from lacunar.drawing.checker.shapes import extent
from lacunar.drawing.checker.subject import Subject


def items_as_laid_out(subject: Subject) -> Iterator[Finding]:
    """Point 75: what is drawn of an item is one the layout has, once, about its center."""
    known = {item.id: item for item in subject.facts.items}
    for frame in plan_frames(subject.sheet):
        drawn: set[str] = set()
        for group in subject.sheet.of_kind("item", frame.view):
            identity = group.data.get("id", "")
            if identity not in known or identity in drawn:
                yield subject.sheet.finding(75, group.id, "is not laid out, or drawn twice")
            elif not _in_place(subject, frame, group, known[identity]):
                yield subject.sheet.finding(75, group.id, "is not where the layout has it")
            drawn.add(identity)


def items_listed(subjects: Sequence[Subject]) -> Iterator[Finding]:
    """Point 75: the set's tables list every item and no other; the legend has every kind."""
    items, sheet = subjects[0].facts.items, subjects[0].sheet
    listed = {row.data.get("of", "") for each in subjects for row in each.sheet.of_kind("item-row")}
    for identity in sorted(listed ^ {item.id for item in items}):
        yield sheet.finding(75, f"item-{identity}", "is listed and not laid out, or not listed")
    explained = {
        row.data.get("entry", "") for each in subjects for row in each.sheet.of_kind("legend-row")
    }
    for kind in sorted({item.kind for item in items}):
        if f"item-{kind}" not in explained:
            yield sheet.finding(75, "legend", f"does not say what the sign of a {kind} is")


def _in_place(subject: Subject, frame: PlanFrame, group: GroupRead, item: ItemFacts) -> bool:
    """Whether a ring or path of the sign has its middle at the item's center."""
    at = frame.spot(item.x, item.y)
    middles = [ring.around.middle for ring in subject.sheet.rings_in(group)]
    middles += [extent(path.spots).middle for path in subject.sheet.paths_in(group)]
    return any(dist(at, middle) <= TOLERANCE for middle in middles)
