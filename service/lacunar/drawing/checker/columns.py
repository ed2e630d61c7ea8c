"""The point on columns: drawn and hatched where they are laid out, each with its own name."""

from collections.abc import Iterator
from math import dist, inf

from lacunar.drawing.checker.geometry import DECIMALS, TOLERANCE
from lacunar.drawing.checker.outline_facts import ColumnFacts
from lacunar.drawing.checker.plan_frame import PlanFrame, plan_frames
from lacunar.drawing.checker.records import Finding, GroupRead
from lacunar.drawing.checker.shapes import extent, nearest
from lacunar.drawing.checker.subject import Subject

BESIDE = 5.0
"""How far off its column a corner of a name may be that has no leader [mm]."""


def columns_as_laid_out(subject: Subject) -> Iterator[Finding]:
    """Point 90: each column has its corners, its hatch and its faces; a name stands by its own."""
    sheet, odd = subject.sheet, subject.facts.outline_facts
    columns = {column.name: column for column in odd.columns} if odd else {}
    for frame in plan_frames(subject):
        groups = list(sheet.of_kind("column", frame.view))
        drawn = [group.data.get("id", "") for group in groups]
        if sorted(drawn) != sorted(columns):
            yield sheet.finding(90, frame.view.id, f"has columns {', '.join(drawn) or 'nowhere'}")
        for group in groups:
            if group.data.get("id") in columns:
                yield from _faults(subject, frame, group, columns[group.data["id"]])
        for name in sheet.of_kind("column-name", frame.view):
            yield from _name(subject, frame, name, columns)


def _faults(
    subject: Subject, frame: PlanFrame, group: GroupRead, column: ColumnFacts
) -> Iterator[Finding]:
    sheet, paths = subject.sheet, subject.sheet.own_paths(group)
    expected = [frame.spot(*corner) for corner in column.corners]
    outlines = [path.spots for path in paths if path.closed]
    same = len(outlines) == 1 and len(outlines[0]) == len(expected)
    if not same or any(
        min(dist(spot, corner) for spot in outlines[0]) > TOLERANCE for corner in expected
    ):
        yield sheet.finding(90, group.id, "is not where the layout has it")
    if not any(path.pen and path.pen.name == "hatch" for path in paths):
        yield sheet.finding(90, group.id, "is not hatched")
    for face, place in column.faces.items():
        try:
            off = abs(float(group.data.get(f"{face}-mm", "")) - float(place))
        except ValueError:
            off = inf
        if off > DECIMALS:
            yield sheet.finding(90, group.id, f"states {face}-mm other than the layout")


def _name(
    subject: Subject, frame: PlanFrame, group: GroupRead, columns: dict[str, ColumnFacts]
) -> Iterator[Finding]:
    """A name says which column it is of, as far as it is not cut short, and stands by it."""
    sheet, words = subject.sheet, subject.sheet.letterings_in(group)
    column = columns.get(group.data.get("of", ""))
    if column is None or len(words) != 1:
        yield sheet.finding(90, group.id, "is the name of no column")
        return
    text = words[0].text
    if text != column.name and not (text.endswith("…") and column.name.startswith(text[:-1])):
        yield sheet.finding(90, group.id, f"calls {column.name} “{text}”")
    around = extent([frame.spot(*corner) for corner in column.corners])
    leaders = [path for path in sheet.own_paths(group) if not path.closed]
    if leaders:
        off = min(nearest(around, spot) for path in leaders for spot in path.spots)
    else:
        off = min(nearest(around, spot) for spot in words[0].box.corners)
    if off > BESIDE:
        yield sheet.finding(90, group.id, f"stands off {column.name}, without a leader to it")
