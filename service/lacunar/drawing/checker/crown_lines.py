"""The point on crown: it ends on the plan where the layout has it end."""

from collections.abc import Iterator, Sequence
from fractions import Fraction
from math import dist

from lacunar.drawing.checker.facts import CofferFacts, SeenFacts
from lacunar.drawing.checker.geometry import TOLERANCE
from lacunar.drawing.checker.plan_frame import PlanFrame, plan_frames
from lacunar.drawing.checker.records import Finding
from lacunar.drawing.checker.shapes import Spot
from lacunar.drawing.checker.subject import Subject


def crown_as_laid_out(subject: Subject) -> Iterator[Finding]:
    """Point 68: crown is drawn once in each coffer that has it, mitred into its corners."""
    for frame in plan_frames(subject):
        coffers = {coffer.id: coffer for coffer in subject.facts.coffers}
        drawn = [group.data.get("id", "") for group in subject.sheet.of_kind("crown", frame.view)]
        wanted = [seen.id for seen in subject.facts.seen]
        for identity in sorted({*drawn, *wanted}):
            if drawn.count(identity) != wanted.count(identity):
                message = (
                    f"drawn {drawn.count(identity)} times, the layout has {wanted.count(identity)}"
                )
                yield subject.sheet.finding(68, f"crown-{identity}", message)
        for seen in subject.facts.seen:
            if seen.id in coffers and drawn.count(seen.id) == 1:
                yield from _crown(subject, frame, coffers[seen.id], seen)


def _crown(
    subject: Subject, frame: PlanFrame, coffer: CofferFacts, seen: SeenFacts
) -> Iterator[Finding]:
    """The line of the seen opening in the coffer's middle, and a miter to each corner."""
    groups = subject.sheet.of_kind("crown", frame.view)
    group = next(group for group in groups if group.data.get("id") == seen.id)
    corners = [frame.spot(x, y) for x, y in coffer.corners]
    expected = _seen_corners(frame, coffer, seen)
    followed = subject.facts.followed
    if followed is not None and coffer.id in followed.tapering:
        size = min(followed.sizes[coffer.id][wall] for wall in (1, 3))
        expected = _set_in(corners, float((size - seen.length) / 2) / frame.ratio)
    paths = subject.sheet.own_paths(group)
    outlines = [path.spots for path in paths if path.closed]
    if len(outlines) != 1 or not _same(outlines[0], expected):
        yield subject.sheet.finding(68, group.id, "does not end where the layout has it end")
    miters = [path.spots for path in paths if not path.closed]
    wanted = zip(corners, expected, strict=True)
    if len(miters) != len(corners) or not all(
        any(_same(miter, ends) for miter in miters) for ends in wanted
    ):
        yield subject.sheet.finding(68, group.id, "is not mitred into the corners")


def _seen_corners(frame: PlanFrame, coffer: CofferFacts, seen: SeenFacts) -> list[Spot]:
    """The corners of the seen opening, in the order of the coffer's."""
    x = sum((x for x, _ in coffer.corners), Fraction(0)) / len(coffer.corners)
    y = sum((y for _, y in coffer.corners), Fraction(0)) / len(coffer.corners)
    return [
        frame.spot(
            x + (seen.length if corner[0] > x else -seen.length) / 2,
            y + (seen.width if corner[1] > y else -seen.width) / 2,
        )
        for corner in coffer.corners
    ]


def _set_in(corners: Sequence[Spot], inward: float) -> list[Spot]:
    """Corners, counter-clockwise as they lie, with every side moved inward: where lines cross."""
    moved = []
    for number, corner in enumerate(corners):
        after = corners[(number + 1) % len(corners)]
        long = dist(corner, after)
        x, y = (after.y - corner.y) / long * inward, (corner.x - after.x) / long * inward
        moved.append((Spot(corner.x + x, corner.y + y), Spot(after.x + x, after.y + y)))
    return [_crossing(moved[number - 1], line) for number, line in enumerate(moved)]


def _crossing(one: tuple[Spot, Spot], other: tuple[Spot, Spot]) -> Spot:
    (x1, y1), (x2, y2) = one
    (x3, y3), (x4, y4) = other
    turned = (x2 - x1) * (y4 - y3) - (y2 - y1) * (x4 - x3)
    share = ((x3 - x1) * (y4 - y3) - (y3 - y1) * (x4 - x3)) / turned
    return Spot(x1 + (x2 - x1) * share, y1 + (y2 - y1) * share)


def _same(drawn: Sequence[Spot], expected: Sequence[Spot]) -> bool:
    return len(drawn) == len(expected) and all(
        any(dist(spot, one) <= TOLERANCE for one in drawn) for spot in expected
    )
