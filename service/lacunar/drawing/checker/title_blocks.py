"""The point on title blocks: every field there, legible, and saying what was put in.

The fields are those that ISO 7200 asks of a title block (from memory of the standard), and what a
shop drawing needs beside them.
"""

from collections.abc import Iterator, Sequence

from lacunar.drawing.checker.records import Finding, GroupRead, SheetRead
from lacunar.drawing.checker.subject import Subject

GIVEN = ("owner", "number", "date", "status", "creator", "approver", "revision")
"""Fields that repeat what the spec's drawing section says; blank where that is."""
FIELDS = (
    *GIVEN,
    *("ceiling", "drawing", "type", "scale", "paper", "units", "digest", "projection"),
    *("sheet", "page"),
)
BLANK = (*GIVEN, "ceiling", "projection")
"""Fields that may be blank: the projection's is a symbol."""
DIGITS = 12
SCHEDULES = "Z-6"
"""How numbers of lists and cutting diagrams begin, whose bars and sheets are no projections."""


def fields_filled(subjects: Sequence[Subject]) -> Iterator[Finding]:
    """Point 4: every sheet's title block has each field once, as put in."""
    for subject in subjects:
        sheet = subject.sheet
        for block in sheet.of_kind("title-block"):
            groups = list(sheet.of_kind("field", block))
            for name in FIELDS:
                named = [group for group in groups if group.data.get("field") == name]
                for message in _faults(subject, name, named):
                    yield sheet.finding(4, f"{block.id} {name}", message)


def views_explained(subjects: Sequence[Subject]) -> Iterator[Finding]:
    """Point 7: a sheet with a view to scale says its units, and how one looks, with its symbol."""
    for subject in subjects:
        yield from _unexplained(subject.sheet)


def _unexplained(sheet: SheetRead) -> Iterator[Finding]:
    if sheet.id.startswith(SCHEDULES):
        return
    scaled = [view for view in sheet.of_kind("view") if view.data.get("scale")]
    for block in sheet.of_kind("title-block") if scaled else ():
        if len(list(sheet.of_kind("projection-symbol", block))) != 1:
            yield sheet.finding(7, block.id, "does not show how one looks at the views")
        units = [f for f in sheet.of_kind("field", block) if f.data.get("field") == "units"]
        wanted = {"in": "ft-in", "mm": "mm"}.get(sheet.data.get("units", ""))
        if [field.data.get("value") for field in units] != [wanted]:
            yield sheet.finding(7, block.id, "does not say what units its figures are in")


def _faults(subject: Subject, name: str, named: list[GroupRead]) -> Iterator[str]:
    if len(named) != 1:
        yield f"the field is there {len(named)} times"
        return
    value = named[0].data.get("value", "")
    expected = _expected(subject, name)
    if expected is not None and value != expected:
        yield f"says “{value}”, while it is “{expected}” that was put in"
    if not value and name not in BLANK:
        yield "is blank"
    shown = [lettering.text for lettering in subject.sheet.letterings_in(named[0])][1:]
    if not _says(shown, value):
        yield f"is lettered {shown} for “{value}”"


def _says(shown: list[str], value: str) -> bool:
    """Whether what is lettered is the value, or its beginning and an ellipsis."""
    if not value:
        return not shown
    cut = len(shown) == 1 and shown[0].endswith("…") and value.startswith(shown[0][:-1])
    return shown == [value] or cut


def _expected(subject: Subject, name: str) -> str | None:
    """What a field must say by the layout or by the sheet itself; None where neither tells."""
    facts = subject.facts
    if name == "digest":
        return facts.digest[:DIGITS] if facts.digest else None
    if name == "sheet":
        return subject.sheet.data.get("sheet")
    return facts.title.get(name) if facts.title else None
