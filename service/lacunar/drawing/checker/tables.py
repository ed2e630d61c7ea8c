"""Points on what a set of sheets must have somewhere: continuation sheets carry on its tables."""

from collections.abc import Iterator, Sequence

from lacunar.drawing.checker.plan_frame import plan_views
from lacunar.drawing.checker.records import Finding
from lacunar.drawing.checker.strings import marks_read
from lacunar.drawing.checker.subject import Subject

LISTED = ("face", "center")


def every_face_listed(subjects: Sequence[Subject]) -> Iterator[Finding]:
    """Point 12: the set's marks tables list each face and center of every beam once."""
    sheet, facts = subjects[0].sheet, subjects[0].facts
    listed = [
        (mark.run, mark.of, mark.side) for subject in subjects for mark in marks_read(subject.sheet)
    ]
    for run, marks in facts.marks.items():
        for mark in marks:
            count = listed.count((run, mark.of, mark.side))
            if mark.kind in LISTED and count != 1:
                message = f"the {mark.side} {mark.kind} of {mark.of} is listed {count} times"
                yield sheet.finding(12, f"marks-{run}", message)


def plan_in_set(subjects: Sequence[Subject]) -> Iterator[Finding]:
    """Point 12: one plan in the set, for its strings to be checked at all."""
    plans = [view for subject in subjects for view in plan_views(subject.sheet)]
    if len(plans) != 1:
        sheet = subjects[0].sheet
        yield sheet.finding(12, sheet.id, f"the set has {len(plans)} plans to be dimensioned")
