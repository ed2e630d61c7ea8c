"""The point on what a file gives away: nothing of the machine and the person that drew it."""

import re
from collections.abc import Iterable, Iterator

from lacunar.drawing.checker.records import Finding
from lacunar.drawing.checker.subject import Subject

_TELLING = {
    "a path": re.compile(r"""(?:^|[\s"'(=:])(?:/[\w.~-]+){2,}|\b[A-Za-z]:\\"""),
    "an address": re.compile(r"\w://|\bfile:"),
    "a person": re.compile(r"\w@\w"),
}
_LOADED = re.compile(r"url\(\s*['\"]?(?!data:)")


def nothing_given_away(subject: Subject) -> Iterator[Finding]:
    """Point 66: no path, address or person in what describes the file, and nothing it would load.

    What the spec's own title fields say may stand there, whatever it is.
    """
    sheet = subject.sheet
    for text in (*sheet.titles, sheet.id, *sheet.data.values()):
        own = _without(text, subject.facts.title.values())
        for what, pattern in _TELLING.items():
            if pattern.search(own):
                yield sheet.finding(66, sheet.id, f"tells {what}: “{text}”")
    if _LOADED.search(sheet.style):
        yield sheet.finding(66, sheet.id, "would load something from elsewhere")


def _without(text: str, given: Iterable[str]) -> str:
    """A text without what was put in for a title block, the longest first."""
    for one in sorted(filter(None, given), key=len, reverse=True):
        text = text.replace(one, "")
    return text
