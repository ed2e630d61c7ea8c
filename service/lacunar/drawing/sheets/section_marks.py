"""Where sections are cut, on the plan: heavy ends of their lines outside all else, with arrows.

The line itself is left out, as is usual, so that it runs through no id and no figure. Marks stand
only where the page has room left about the plan at its scale; the table of what other sheets show
tells of sections in any case.
"""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass, replace
from itertools import chain, combinations

from lacunar.drawing import style
from lacunar.drawing.annotation import Block, arrow
from lacunar.drawing.elements import Element, Group, Polyline, Pt
from lacunar.drawing.reference_mark import Reference, mark_radius, reference_mark
from lacunar.drawing.sheets.pages import SheetSource
from lacunar.drawing.typeface import Typeface
from lacunar.drawing.upright.sections import section_cut, section_name
from lacunar.drawing.views.reflected_ceiling_plan import MeasuredPlan, PlanView
from lacunar.drawing.wording import decimal_mm
from lacunar.measure.length import ZERO, Length
from lacunar.model.room import RunName

GAP = 1.5
HEAVY = 8.0
ARROW_IN = 1.6
ARROW = 6.0
HEAD = 3.0


@dataclass(frozen=True, slots=True)
class _Mark:
    """A section's line: the run it goes along, its place along the other run, where it leads."""

    run: RunName
    at: Length
    reference: Reference


def marked_plan(
    view: PlanView, plan: MeasuredPlan, source: SheetSource, spare: tuple[float, float]
) -> PlanView:
    """The drawn plan with as many section marks as the room left across and down [mm] holds."""
    marks = tuple(_marks(source))
    for chosen in chain.from_iterable(combinations(marks, n) for n in range(len(marks), 0, -1)):
        before, after = _margins(chosen, source.typeface)
        if before.x + after.x <= spare[0] and before.y + after.y <= spare[1]:
            return _with_marks(view, plan, chosen, source.typeface)
    return view


def _marks(source: SheetSource) -> Iterator[_Mark]:
    for run in RunName:
        reference = source.references.get(section_name(run))
        if reference is not None:
            at = section_cut(source.layout, run).at
            yield _Mark(run, at if at is not None else ZERO, reference)


def _margins(marks: Sequence[_Mark], typeface: Typeface) -> tuple[Pt, Pt]:
    """What marks take left of the plan and above it, and right of it and below it [mm]."""
    before, after = Pt(0.0, 0.0), Pt(0.0, 0.0)
    end = GAP + HEAVY
    for mark in marks:
        whole = end + 2 * mark_radius(mark.reference, typeface)
        if mark.run is RunName.LENGTH:
            before, after = replace(before, x=whole), replace(after, x=end)
        else:
            before, after = replace(before, y=whole), replace(after, y=end)
    return before, after


def _with_marks(
    view: PlanView, plan: MeasuredPlan, marks: Sequence[_Mark], typeface: Typeface
) -> PlanView:
    before, after = _margins(marks, typeface)
    drawn = view.block.at(before.x, before.y)
    width, height = view.block.width, view.block.height
    for mark in marks:
        frame = replace(plan.frame, origin=plan.frame.origin.moved(before.x, before.y))
        place = frame.along(mark.run.other, frame.on_paper(mark.at), 0.0)
        if mark.run is RunName.LENGTH:
            ends = Pt(before.x, place.y), Pt(before.x + width, place.y)
        else:
            ends = Pt(place.x, before.y), Pt(place.x, before.y + height)
        drawn = (*drawn, _drawn(mark, ends, typeface))
    whole = Block(width + before.x + after.x, height + before.y + after.y, drawn)
    return replace(view, block=whole)


def _drawn(mark: _Mark, ends: tuple[Pt, Pt], typeface: Typeface) -> Group:
    """Both heavy ends with their arrows, and the ring with view and sheet by the first."""
    along = Pt(1.0, 0.0) if mark.run is RunName.LENGTH else Pt(0.0, 1.0)
    children: list[Element] = []
    for end, way in zip(ends, (-1, 1), strict=True):
        inner, outer = (end.moved(along.x * way * d, along.y * way * d) for d in (GAP, GAP + HEAVY))
        children.append(Polyline((inner, outer), style.WALL))
        foot = outer.moved(-along.x * way * ARROW_IN, -along.y * way * ARROW_IN)
        # Seen are W2 from a section along the length run, W1 from one along the width run.
        tip = foot.moved(-along.y * ARROW, -along.x * ARROW)
        children.append(Polyline((foot, tip), style.FINE))
        children.append(arrow(tip, foot, HEAD))
        if way < 0:
            radius = mark_radius(mark.reference, typeface)
            center = outer.moved(-along.x * radius, -along.y * radius)
            children.append(reference_mark(mark.reference, center, typeface))
    data = {"name": mark.reference.name, "run": mark.run.value, "at-mm": decimal_mm(mark.at)}
    return Group("section-mark", tuple(children), id=f"section-mark-{mark.run.value}", data=data)
