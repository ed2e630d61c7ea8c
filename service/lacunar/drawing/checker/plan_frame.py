"""Where a plan has its datum on paper, read off the walls, and what belongs where from there."""

from collections.abc import Iterator
from dataclasses import dataclass
from fractions import Fraction
from itertools import product
from math import dist

from lacunar.drawing.checker.records import GroupRead, SheetRead
from lacunar.drawing.checker.shapes import Spot
from lacunar.drawing.checker.subject import Subject

PLAN = "reflected-ceiling-plan"
SETTING_OUT = "setting-out"
BACKING = "backing-plan"
PANELS = "panel-plan"


@dataclass(frozen=True, slots=True)
class PlanFrame:
    """A plan: its group, how much smaller than life it is, its datum on paper.

    `origin` is where places are from: the datum, or the clear rectangle's corner in a crooked room.
    """

    view: GroupRead
    ratio: float
    datum: Spot
    origin: Spot

    def spot(self, along_length: Fraction, along_width: Fraction) -> Spot:
        """Where a place on the ceiling belongs on paper: to the right and up from the origin."""
        return Spot(
            self.origin.x + float(along_length) / self.ratio,
            self.origin.y - float(along_width) / self.ratio,
        )

    def on(self, run: str, along: Fraction, across: Fraction) -> Spot:
        """Where a place `along` a run and `across` along the other belongs on paper."""
        return self.spot(along, across) if run == "length" else self.spot(across, along)


def ratio(view: GroupRead) -> float | None:
    """How much smaller than life a view says it is; None where it says nothing of use."""
    try:
        number = float(view.data.get("scale", ""))
    except ValueError:
        return None
    return number if number > 0 else None


def plan_views(sheet: SheetRead, kind: str = PLAN) -> Iterator[GroupRead]:
    """The views that say they are plans of a kind."""
    return (view for view in sheet.of_kind("view") if view.data.get("view") == kind)


def plan_frames(subject: Subject, kind: str = PLAN) -> Iterator[PlanFrame]:
    """The plans of a kind with a scale, and a datum where left and lower wall meet."""
    sheet = subject.sheet
    x, y = subject.facts.outline[0]
    for view in plan_views(sheet, kind):
        scale, left, lower = ratio(view), wall_face(sheet, view, "W1"), wall_face(sheet, view, "W4")
        if scale and left and lower:
            one, other = min(product(left, lower), key=lambda pair: dist(*pair))
            datum = Spot(one.x, other.y)
            if subject.facts.outline_facts is not None:
                # Walls that are not quite square have their innermost places on the axes; one that
                # bows in has them further in than its corners.
                inner, above = subject.facts.outline_facts.innermost_corners()
                datum = origin = Spot(
                    max(at.x for at in left) - float(inner) / scale,
                    min(at.y for at in lower) + float(above) / scale,
                )
                yield PlanFrame(view, scale, datum, origin)
                continue
            origin = Spot(datum.x - float(x) / scale, datum.y + float(y) / scale)
            yield PlanFrame(view, scale, datum, origin)


def side_faces(sheet: SheetRead, view: GroupRead) -> list[tuple[GroupRead, tuple[Spot, ...]]]:
    """Each wall's group, and the ends of its finish face, the line in the wall pen."""
    return [
        (group, path.spots)
        for group in sheet.of_kind("wall", view)
        for path in sheet.own_paths(group)
        if path.pen and path.pen.name == "wall"
    ]


def wall_face(sheet: SheetRead, view: GroupRead, wall: str) -> tuple[Spot, ...]:
    """The ends of a wall's finish face, the line in the wall pen; empty where it is not drawn."""
    for group in sheet.of_kind("wall", view):
        if group.data.get("wall") == wall:
            for path in sheet.own_paths(group):
                if path.pen and path.pen.name == "wall":
                    return path.spots
    return ()
