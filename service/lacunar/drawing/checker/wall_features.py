"""Points on wall features: gaps in their walls where they are laid out, listed and explained."""

from collections import Counter
from collections.abc import Iterator, Sequence
from math import dist

from lacunar.drawing.checker.facts import WALLS_OF_RUN
from lacunar.drawing.checker.geometry import TOLERANCE
from lacunar.drawing.checker.item_facts import FeatureFacts
from lacunar.drawing.checker.items import unexplained
from lacunar.drawing.checker.outline_facts import SideFacts
from lacunar.drawing.checker.plan_frame import PlanFrame, plan_frames
from lacunar.drawing.checker.records import Finding, GroupRead
from lacunar.drawing.checker.shapes import Spot
from lacunar.drawing.checker.subject import Subject


def features_as_laid_out(subject: Subject) -> Iterator[Finding]:
    """Point 76: each feature has its jambs on its wall, and the wall's hatch stops at them."""
    sheet = subject.sheet
    wanted = Counter(feature.name for feature in subject.facts.features)
    for frame in plan_frames(subject):
        groups = list(sheet.of_kind("wall-feature", frame.view))
        drawn = Counter(group.data.get("id", "") for group in groups)
        for name in sorted((wanted - drawn).keys() | (drawn - wanted).keys()):
            message = f"{name} drawn {drawn[name]} times, the layout has {wanted[name]}"
            yield sheet.finding(76, "wall-features", message)
        for group, feature in zip(groups, subject.facts.features, strict=False):
            yield from _faults(subject, frame, group, feature)


def _faults(
    subject: Subject, frame: PlanFrame, group: GroupRead, feature: FeatureFacts
) -> Iterator[Finding]:
    sheet = subject.sheet
    told = (group.data.get("id"), group.data.get("kind"), group.data.get("wall"))
    if told != (feature.name, feature.kind, feature.wall):
        yield sheet.finding(76, group.id, f"is not {feature.name}, which the layout has in turn")
        return
    first, last = _jambs(subject, frame, feature)
    starts = [
        path.spots[0] for path in sheet.own_paths(group) if path.pen and path.pen.name == "object"
    ]
    if len(starts) != len((first, last)) or any(
        all(dist(start, jamb) > TOLERANCE for start in starts) for jamb in (first, last)
    ):
        yield sheet.finding(76, group.id, "does not have its jambs where the layout has them")
    if _hatched(subject, frame, feature, (first, last)):
        yield sheet.finding(76, group.id, f"is covered by the hatch of {feature.wall}")


def _jambs(subject: Subject, frame: PlanFrame, feature: FeatureFacts) -> tuple[Spot, Spot]:
    """Where the feature's edges meet the finish face of its wall; the room's corners end it."""
    odd = subject.facts.outline_facts
    if feature.side and odd is not None:
        return _in_side(frame, next(s for s in odd.sides if s.side == feature.side), feature)
    run = next(run for run, walls in WALLS_OF_RUN.items() if feature.wall in walls)
    other = "width" if run == "length" else "length"
    facts = subject.facts
    corners = sorted(end[0 if other == "length" else 1] for end in facts.wall_ends(feature.wall))
    near, far = max(feature.near, corners[0]), min(feature.far, corners[1])
    first, last = (
        frame.on(run, facts.face_at(feature.wall, run, edge), edge) for edge in (near, far)
    )
    return first, last


def _in_side(frame: PlanFrame, side: SideFacts, feature: FeatureFacts) -> tuple[Spot, Spot]:
    """Where a feature's edges meet a side of an odd room: by its run, or from its start."""
    start, end = (frame.spot(*at) for at in side.ends)
    if side.on:
        along = 1 if side.on == "length" else 0
        low, high = side.ends[0][along], side.ends[1][along]
        shares = [float((edge - low) / (high - low)) for edge in (feature.near, feature.far)]
    else:
        long = dist(start, end) * frame.ratio
        shares = [float(edge) / long for edge in (feature.near, feature.far)]
    first, last = (
        Spot(start.x + (end.x - start.x) * share, start.y + (end.y - start.y) * share)
        for share in shares
    )
    return first, last


def _hatched(
    subject: Subject, frame: PlanFrame, feature: FeatureFacts, jambs: tuple[Spot, Spot]
) -> bool:
    """Whether hatch of a wall lies between two places on its face."""
    (x1, y1), (x2, y2) = jambs
    square = (x2 - x1) ** 2 + (y2 - y1) ** 2
    sheet = subject.sheet
    for group in sheet.of_kind("wall", frame.view):
        same = not feature.side or group.data.get("side") == feature.side
        if group.data.get("wall") == feature.wall and same:
            for path in sheet.own_paths(group):
                middle = path.around.middle
                along = ((middle.x - x1) * (x2 - x1) + (middle.y - y1) * (y2 - y1)) / square
                if path.pen and path.pen.name == "hatch" and 0 < along < 1:
                    return True
    return False


def features_listed(subjects: Sequence[Subject]) -> Iterator[Finding]:
    """Point 76: the set's tables list every feature once; the legend has every kind."""
    features, sheet = subjects[0].facts.features, subjects[0].sheet
    rows = [row for each in subjects for row in each.sheet.of_kind("wall-feature-row")]
    listed = Counter((row.data.get("of"), row.data.get("wall")) for row in rows)
    wanted = Counter((feature.name, feature.wall) for feature in features)
    if listed != wanted:
        yield sheet.finding(76, "wall-features-table", "does not list the layout's wall features")
    kinds = {f"wall-feature-{feature.kind}": f"a {feature.kind}" for feature in features}
    yield from unexplained(subjects, kinds, 76)
