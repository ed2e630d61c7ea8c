"""Points on what leads from sheet to sheet: every reference hits a view, every detail is called."""

from collections.abc import Iterator, Sequence

from lacunar.drawing.checker.geometry import TOLERANCE
from lacunar.drawing.checker.plan_frame import plan_frames
from lacunar.drawing.checker.records import Finding, GroupRead
from lacunar.drawing.checker.subject import Subject

DETAILED = ("Z-201", "Z-301", "Z-501", "Z-502", "Z-503")
"""Sheets whose every view is called from one before it."""

View = tuple[str, str]


def references_hit(subjects: Sequence[Subject]) -> Iterator[Finding]:
    """Point 6: each reference hits a view on a sheet that is there, and says so in print.

    Each view of details, sections and elevations is called from a sheet before its own.
    """
    views = {
        (each.sheet.id, title.id.removeprefix("title-view-"))
        for each in subjects
        for title in each.sheet.of_kind("view-title")
    }
    called: set[View] = set()
    for subject in subjects:
        sheet = subject.sheet
        for where, target, texts in _references(subject):
            if target not in views:
                yield sheet.finding(6, where, f"leads to view {target[1]} on {target[0]}")
            elif target[0] not in texts:
                yield sheet.finding(6, where, f"does not print {target[0]}")
        of_sheet = {view for view in views if view[0] == sheet.id}
        detailed = sheet.id.startswith(DETAILED)
        for view in sorted(of_sheet - called) if detailed else ():
            yield sheet.finding(6, f"view-{view[1]}", "is called from no sheet before it")
        called |= {target for _, target, _ in _references(subject)}


def _references(subject: Subject) -> Iterator[tuple[str, View, str]]:
    """Each view that a sheet leads to: by which group, and what that prints."""
    sheet = subject.sheet
    for mark in sheet.of_kind("reference"):
        texts = [lettering.text for lettering in sheet.letterings_in(mark)]
        number = mark.data.get("view", "")
        joined = " ".join(texts) if number in texts else ""
        yield mark.id, (mark.data.get("sheet", ""), number), joined
    for row in sheet.of_kind("reference-row"):
        texts = [lettering.text for lettering in sheet.letterings_in(row)]
        for number in row.data.get("views", "").split():
            where = f"references {row.data.get('names', '')}"
            yield where, (row.data.get("sheet", ""), number), " ".join(texts)


def sections_marked(subject: Subject) -> Iterator[Finding]:
    """Point 135: the heavy ends of a section's line on the plan lie where the section is cut."""
    sheet = subject.sheet
    for frame in plan_frames(subject):
        for mark in sheet.of_kind("section-mark"):
            level = mark.data.get("run") == "length"
            heavy = [p for p in sheet.own_paths(mark) if p.pen and p.pen.name == "wall"]
            at = _at(mark)
            due = frame.origin.y - at / frame.ratio if level else frame.origin.x + at / frame.ratio
            spots = [spot for path in heavy for spot in path.spots]
            off = [abs((spot.y if level else spot.x) - due) for spot in spots]
            if not off or max(off) > TOLERANCE:
                yield sheet.finding(135, mark.id, "does not lie where the section is cut")


def _at(mark: GroupRead) -> float:
    try:
        return float(mark.data.get("at-mm", ""))
    except ValueError:
        return 0.0


def marks_as_cut(subjects: Sequence[Subject]) -> Iterator[Finding]:
    """Point 135: a section is cut where the plan marks it."""
    cut = {
        view.data.get("name"): view.data.get("at-mm")
        for each in subjects
        for view in each.sheet.of_kind("view")
        if view.data.get("view") == "section"
    }
    for each in subjects:
        for mark in each.sheet.of_kind("section-mark"):
            if cut.get(mark.data.get("name")) != mark.data.get("at-mm"):
                yield each.sheet.finding(135, mark.id, "is not where its section is cut")
