"""Points on the file itself: all of it can be read, and its parts can be told apart and named."""

from collections import Counter
from collections.abc import Iterator

from lacunar.drawing.checker.records import Finding
from lacunar.drawing.checker.subject import Subject

TITLED = ("coffer", "beam")


def readable_and_named(subject: Subject) -> Iterator[Finding]:
    """Point 61: nothing on the sheet is beyond the checker, ids are unique, parts have titles."""
    sheet = subject.sheet
    for where, what in sheet.troubles:
        yield sheet.finding(61, where, f"not checked: {what}")
    ids = Counter([sheet.id, *(group.id for group in sheet.groups if group.id)])
    for identity, count in ids.items():
        if count > 1:
            yield sheet.finding(61, identity, f"an id given {count} times")
    if not (sheet.id and all(sheet.titles)):
        yield sheet.finding(61, sheet.id, "the sheet lacks its id, title or description")
    for kind in TITLED:
        for group in sheet.of_kind(kind):
            if not (group.id and group.title):
                yield sheet.finding(61, sheet.place(group.number), "has no id or no title")
