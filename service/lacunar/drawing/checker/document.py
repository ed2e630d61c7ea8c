"""Points on the file itself: all of it can be read, and its parts can be told apart and named."""

from collections import Counter
from collections.abc import Iterator

from lacunar.drawing.checker.records import Finding
from lacunar.drawing.checker.subject import Subject

TITLED = ("coffer", "beam")


def readable_and_named(subject: Subject) -> Iterator[Finding]:
    """Point 61: all can be read, ids are unique, parts have titles, the sheet tells its origin."""
    sheet = subject.sheet
    for where, what in sheet.troubles:
        yield sheet.finding(61, where, f"not checked: {what}")
    ids = Counter([sheet.id, *(group.id for group in sheet.groups if group.id)])
    for identity, count in ids.items():
        if count > 1:
            yield sheet.finding(61, identity, f"an id given {count} times")
    for message in (*_titles(subject), *_origin(subject)):
        yield sheet.finding(61, sheet.id, message)
    for kind in TITLED:
        for group in sheet.of_kind(kind):
            if not (group.id and group.title):
                yield sheet.finding(61, sheet.place(group.number), "has no id or no title")


def _titles(subject: Subject) -> Iterator[str]:
    if not (subject.sheet.id and all(subject.sheet.titles)):
        yield "the sheet lacks its id, title or description"


def _origin(subject: Subject) -> Iterator[str]:
    """What the sheet says of itself other than it is, or than the layout it was drawn from."""
    sheet, facts = subject.sheet, subject.facts
    told = {"sheet": sheet.id, "step": facts.step_text, "digest": facts.digest}
    for name, value in told.items():
        if value and sheet.data.get(name) != value:
            yield f"says {name} “{sheet.data.get(name, '')}” instead of “{value}”"
