"""Points on what a set of sheets must have somewhere: continuation sheets carry on its tables."""

from collections.abc import Iterator, Sequence

from lacunar.drawing.checker.plan_frame import plan_views
from lacunar.drawing.checker.records import Finding
from lacunar.drawing.checker.strings import marks_read
from lacunar.drawing.checker.subject import Subject

LISTED = ("face", "center", "member", "member_center")
TOLD = ("wall", *LISTED)


def every_face_listed(subjects: Sequence[Subject]) -> Iterator[Finding]:
    """Point 12: the set's marks tables list each face, center and member once, at both ends.

    Where both ends of a run are alike, one table tells them.
    """
    sheet, facts = subjects[0].sheet, subjects[0].facts
    listed = [
        (mark.run, mark.end, mark.kind, mark.of, mark.side)
        for subject in subjects
        for mark in marks_read(subject.sheet)
    ]
    for (run, end), marks in facts.marks.items():
        if end == "end" and not facts.unlike(run, TOLD):
            continue
        for mark in marks:
            count = listed.count((run, end, mark.kind, mark.of, mark.side))
            if mark.kind in LISTED and count != 1:
                message = f"the {mark.side} {mark.kind} of {mark.of} is listed {count} times"
                yield sheet.finding(12, f"marks-{run}" + ("-end" if end == "end" else ""), message)


def plan_in_set(subjects: Sequence[Subject]) -> Iterator[Finding]:
    """Point 12: one plan in the set, for its strings to be checked at all."""
    plans = [view for subject in subjects for view in plan_views(subject.sheet)]
    if len(plans) != 1:
        sheet = subjects[0].sheet
        yield sheet.finding(12, sheet.id, f"the set has {len(plans)} plans to be dimensioned")
