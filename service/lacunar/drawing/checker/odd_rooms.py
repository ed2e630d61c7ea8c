"""Points on rooms with other than four walls: crown in cut coffers, and what their tables list."""

from collections import Counter
from collections.abc import Iterator, Sequence
from fractions import Fraction
from math import dist, hypot

from lacunar.drawing.checker.figures import rounded
from lacunar.drawing.checker.geometry import TOLERANCE
from lacunar.drawing.checker.outline_facts import Cell, CutFacts
from lacunar.drawing.checker.plan_frame import PlanFrame, plan_frames
from lacunar.drawing.checker.records import Finding, GroupRead
from lacunar.drawing.checker.shapes import Spot
from lacunar.drawing.checker.subject import Subject
from lacunar.drawing.checker.told_cells import cell_told

KINDS = ("outline-wall", "cut-side", "angled-board", "column")


def cut_crown_as_laid_out(subject: Subject) -> Iterator[Finding]:
    """Point 91: in a cut coffer crown lies along every side at one distance, mitred between.

    Where it leaves nothing of a side, or two runs of it meet, there is none.
    """
    sheet, odd = subject.sheet, subject.facts.outline_facts
    coffers = {coffer.id: coffer for coffer in odd.coffers} if odd else {}
    for frame in plan_frames(subject):
        groups = list(sheet.of_kind("partial-crown", frame.view))
        drawn = Counter(group.data.get("id", "") for group in groups)
        for identity, each in coffers.items():
            due = 1 if each.crowned and _has_room(subject, frame, each) else 0
            if drawn[identity] != due:
                message = f"drawn {drawn[identity]} times, and not {due}"
                yield sheet.finding(91, f"crown-{identity}", message)
        for group in groups:
            coffer = coffers.get(group.data.get("id", ""))
            if coffer is None:
                yield sheet.finding(91, group.id, "is in no coffer that is cut")
            elif not _as_set_in(subject, frame, group, coffer):
                yield sheet.finding(91, group.id, "does not end where the layout has it end")


def _rings(frame: PlanFrame, coffer: CutFacts) -> list[list[Spot]]:
    return [[frame.spot(*at) for at in ring] for ring in (coffer.corners, *coffer.holes)]


def _set_in(ring: Sequence[Spot], inward: float) -> list[Spot] | None:
    """A ring with each line moved to its left; None where a line has nothing left."""
    lines = []
    for one, other in zip(ring, (*ring[1:], ring[0]), strict=True):
        long = dist(one, other)
        # On paper y goes down, so that left of the way is the other hand.
        aside = (other.y - one.y) / long * inward, (one.x - other.x) / long * inward
        lines.append((one.x + aside[0], one.y + aside[1], other.x - one.x, other.y - one.y))
    found = [_met(lines[at - 1], line) for at, line in enumerate(lines)]
    for (one, other), line in zip(
        zip(found, (*found[1:], found[0]), strict=True), lines, strict=True
    ):
        if (other.x - one.x) * line[2] + (other.y - one.y) * line[3] <= 0:
            return None
    return found


def _met(one: tuple[float, ...], other: tuple[float, ...]) -> Spot:
    """Where two lines cross, each by a place and a way."""
    x, y, dx, dy = one
    u, v, du, dv = other
    share = ((u - x) * dv - (v - y) * du) / (dx * dv - dy * du)
    return Spot(x + dx * share, y + dy * share)


def _inward(subject: Subject, frame: PlanFrame) -> float:
    return float(subject.facts.crown_reach) / frame.ratio


def _has_room(subject: Subject, frame: PlanFrame, coffer: CutFacts) -> bool:
    inward = _inward(subject, frame)
    return all(_set_in(ring, inward) is not None for ring in _rings(frame, coffer))


def _as_set_in(subject: Subject, frame: PlanFrame, group: GroupRead, coffer: CutFacts) -> bool:
    """Whether the lines are those of the rings set in, and the miters go from corner to corner."""
    inward, paths = _inward(subject, frame), subject.sheet.own_paths(group)
    rings = _rings(frame, coffer)
    inner = [ring for each in rings if (ring := _set_in(each, inward)) is not None]
    drawn = [path.spots for path in paths if path.closed]
    miters = [path.spots for path in paths if not path.closed]
    if len(drawn) != len(rings) or len(inner) != len(rings):
        return False
    if not all(_same(one, other) for one, other in zip(drawn, inner, strict=True)):
        return False
    wanted = [
        ends
        for ring, seen in zip(rings, inner, strict=True)
        for ends in zip(ring, seen, strict=True)
    ]
    return len(miters) == len(wanted) and all(
        any(_same(miter, ends) for miter in miters) for ends in wanted
    )


def _same(drawn: Sequence[Spot], expected: Sequence[Spot]) -> bool:
    return len(drawn) == len(expected) and all(
        hypot(one.x - other.x, one.y - other.y) <= TOLERANCE
        for one, other in zip(drawn, expected, strict=True)
    )


def odd_rooms_listed(subjects: Sequence[Subject]) -> Iterator[Finding]:
    """Point 92: the set lists walls, cut coffers, angled boards and columns once, as laid out."""
    odd, first = subjects[0].facts.outline_facts, subjects[0]
    step = first.facts.step
    wanted = Counter(_rounded(cell, step) for cell in (odd.listed if odd else ()))
    told = Counter(
        (kind, row.data.get("of", ""), cell.data.get("name", ""), cell_told(each, cell))
        for each in subjects
        for kind in KINDS
        for row in each.sheet.of_kind(f"{kind}-row")
        for cell in each.sheet.of_kind("cell", row)
    )
    for kind in KINDS:
        over = list((told - wanted).elements())
        missing = list((wanted - told).elements())
        if not _alike([c for c in over if c[0] == kind], [c for c in missing if c[0] == kind]):
            yield first.sheet.finding(92, f"{kind}s-table", "does not list what the layout has")


Told = tuple[str, str, str, Fraction | str | None]


def _rounded(cell: Cell, step: Fraction) -> Told:
    kind, of, name, figure = cell
    return kind, of, name, None if figure is None else rounded(figure, step)


def _alike(told: list[Told], wanted: list[Told]) -> bool:
    """Whether cells are the same but for names that had to be cut short."""
    left = list(wanted)
    for kind, of, name, figure in told:
        start = of[:-1] if of.endswith("…") else ""
        found = next(
            (
                cell
                for cell in left
                if start
                and cell[1].startswith(start)
                and (kind, name, figure) == (*cell[:1], *cell[2:])
            ),
            None,
        )
        if found is None:
            return False
        left.remove(found)
    return not left
