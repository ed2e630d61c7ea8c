"""Points on ceiling items: drawn where they are laid out, named, listed and explained."""

from collections import Counter
from collections.abc import Iterator, Sequence
from math import dist

from lacunar.drawing.checker.geometry import TOLERANCE
from lacunar.drawing.checker.item_facts import ItemFacts
from lacunar.drawing.checker.plan_frame import PlanFrame, plan_frames
from lacunar.drawing.checker.records import Finding, GroupRead
from lacunar.drawing.checker.shapes import Box, nearest
from lacunar.drawing.checker.subject import Subject

LEAST = 3.2
"""A side that would be shorter on paper [mm] is drawn this long, to be read at all."""
# An id stands close by what it names; farther off, a leader must tell.
ID_OFF_SYMBOL = 1.5
LEADER_TO_ID = 1.5
# What a legend shows by a word and not by lines.
IN_WORDS = ("item-tag",)


def items_as_laid_out(subject: Subject) -> Iterator[Finding]:
    """Point 75: each item is drawn once, about its center, to scale or as small as can be read."""
    wanted = Counter(item.id for item in subject.facts.items)
    known = {item.id: item for item in subject.facts.items}
    for frame in plan_frames(subject):
        groups = list(subject.sheet.of_kind("item", frame.view))
        drawn = Counter(group.data.get("id", "") for group in groups)
        for identity in sorted((wanted - drawn).keys() | (drawn - wanted).keys()):
            message = f"drawn {drawn[identity]} times, the layout has {wanted[identity]}"
            yield subject.sheet.finding(75, f"item-{identity}", message)
        for group in groups:
            item = known.get(group.data.get("id", ""))
            if item is not None:
                yield from _faults(subject, frame, group, item)


def _faults(
    subject: Subject, frame: PlanFrame, group: GroupRead, item: ItemFacts
) -> Iterator[Finding]:
    if group.data.get("kind") != item.kind:
        yield subject.sheet.finding(75, group.id, f"is drawn as no {item.kind}")
    outline = _outline(subject, group, rounded=item.round)
    if outline is None:
        yield subject.sheet.finding(75, group.id, "has no outline of its shape")
        return
    if dist(outline.middle, frame.spot(item.x, item.y)) > TOLERANCE:
        yield subject.sheet.finding(75, group.id, "is not where the layout has it")
    drawn = outline.right - outline.left, outline.bottom - outline.top
    sizes = (float(side) / frame.ratio for side in (item.length, item.width))
    if any(abs(one - max(size, LEAST)) > TOLERANCE for one, size in zip(drawn, sizes, strict=True)):
        yield subject.sheet.finding(75, group.id, "is not as large as the layout has it")


def _outline(subject: Subject, group: GroupRead, *, rounded: bool) -> Box | None:
    """The largest ring or closed path of the item itself, whichever its shape is."""
    sheet = subject.sheet
    if rounded:
        boxes = [ring.around for ring in sheet.rings_in(group) if ring.group == group.number]
    else:
        boxes = [path.around for path in sheet.own_paths(group) if path.closed]
    return max(boxes, key=lambda box: box.right - box.left, default=None)


def items_named(subject: Subject) -> Iterator[Finding]:
    """Point 77: an item's id stands by its symbol or at the end of a leader from it, once."""
    sheet = subject.sheet
    for frame in plan_frames(subject):
        tags = [tag for tag in sheet.of_kind("tag", frame.view) if tag.data.get("kind") == "item"]
        counts = Counter(tag.data.get("of", "") for tag in tags)
        symbols = {group.data.get("id", ""): group for group in sheet.of_kind("item", frame.view)}
        rounded = {item.id: item.round for item in subject.facts.items}
        for tag in tags:
            of = tag.data.get("of", "")
            texts = sheet.letterings_in(tag)
            if of not in symbols or counts[of] > 1 or [text.text for text in texts] != [of]:
                yield sheet.finding(77, tag.id, "does not name one item")
                continue
            outline = _outline(subject, symbols[of], rounded=rounded.get(of, False))
            if outline is not None and not _points_at(subject, tag, texts[0].box, outline):
                yield sheet.finding(77, tag.id, f"stands off {of} without a leader to it")


def _points_at(subject: Subject, tag: GroupRead, text: Box, outline: Box) -> bool:
    if text.overlaps(outline.grown(ID_OFF_SYMBOL)):
        return True
    return any(
        any(nearest(outline, spot) <= TOLERANCE for spot in path.spots)
        and any(nearest(text, spot) <= LEADER_TO_ID for spot in path.spots)
        for path in subject.sheet.own_paths(tag)
    )


def items_listed(subjects: Sequence[Subject]) -> Iterator[Finding]:
    """Point 75: the set's tables list every item once and no other; the legend has every kind.

    Where an item has no id on the plan, the legend says how it is found.
    """
    items, sheet = subjects[0].facts.items, subjects[0].sheet
    rows = [row for each in subjects for row in each.sheet.of_kind("item-row")]
    listed = Counter(row.data.get("of", "") for row in rows)
    wanted = Counter(item.id for item in items)
    for identity in sorted((listed - wanted).keys() | (wanted - listed).keys()):
        message = f"listed {listed[identity]} times, the layout has {wanted[identity]}"
        yield sheet.finding(75, f"item-{identity}", message)
    needed = {f"item-{item.kind}": f"the sign of a {item.kind}" for item in items}
    if any(True for each in subjects for _ in each.sheet.of_kind("item-clearance")):
        needed["clearance"] = "a dashed outline"
    named = {
        tag.data.get("of")
        for each in subjects
        for tag in each.sheet.of_kind("tag")
        if tag.data.get("kind") == "item"
    }
    if any(item.id not in named for item in items):
        needed["item-tag"] = "an item without an id"
    yield from unexplained(subjects, needed, 75)


def unexplained(
    subjects: Sequence[Subject], needed: dict[str, str], point: int
) -> Iterator[Finding]:
    """A finding for each entry that no legend of the set has, or has without a symbol."""
    explained = {
        row.data.get("entry", "")
        for each in subjects
        for row in each.sheet.of_kind("legend-row")
        if each.sheet.paths_in(row) or each.sheet.rings_in(row) or row.data.get("entry") in IN_WORDS
    }
    for entry, what in needed.items():
        if entry not in explained:
            message = f"does not say what {what} is"
            yield subjects[0].sheet.finding(point, "legend", message)
