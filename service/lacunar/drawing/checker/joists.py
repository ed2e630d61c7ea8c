"""The point on the joist arrow: it lies as joists do, and says where they are."""

from collections.abc import Iterator, Sequence

from lacunar.drawing.checker.facts import JoistFacts
from lacunar.drawing.checker.json_node import exact_millimeters
from lacunar.drawing.checker.plan_frame import BACKING, plan_views
from lacunar.drawing.checker.records import Finding, GroupRead
from lacunar.drawing.checker.shapes import extent
from lacunar.drawing.checker.subject import Subject

BACKING_SHEET = "Z-103"


def joists_shown(subjects: Sequence[Subject]) -> Iterator[Finding]:
    """Point 78: where joists are known the set has one arrow along them, else none.

    That on the sheet of the backing is another one.
    """
    others = [each for each in subjects if not each.sheet.id.startswith(BACKING_SHEET)]
    if others:
        yield from _shown(others, 0 if others[0].facts.joists is None else 1)


def joists_shown_with_backing(subjects: Sequence[Subject]) -> Iterator[Finding]:
    """Point 78: so it has beside its plan of the backing."""
    found = [each for each in subjects if each.sheet.id.startswith(BACKING_SHEET)]
    plans = [view for each in found for view in plan_views(each.sheet, BACKING)]
    if found:
        yield from _shown(found, len(plans) if found[0].facts.joists is not None else 0)


def _shown(subjects: Sequence[Subject], wanted: int) -> Iterator[Finding]:
    joists = subjects[0].facts.joists
    arrows = [(each, one) for each in subjects for one in each.sheet.of_kind("joist-arrow")]
    if len(arrows) != wanted:
        message = f"{len(arrows)} arrows, while there should be {wanted}"
        yield subjects[0].sheet.finding(78, "joist-arrow", message)
    if joists is not None:
        for subject, arrow in arrows:
            for message in _faults(subject, arrow, joists):
                yield subject.sheet.finding(78, arrow.id, message)


def _faults(subject: Subject, arrow: GroupRead, joists: JoistFacts) -> Iterator[str]:
    spots = [spot for path in subject.sheet.paths_in(arrow) for spot in path.spots]
    if not spots:
        yield "is not drawn"
        return
    around = extent(spots)
    along_length = around.right - around.left > around.bottom - around.top
    drawn = "length" if along_length else "width"
    words = " ".join(lettering.text for lettering in subject.sheet.letterings_in(arrow))
    if drawn != joists.parallel_to:
        yield f"lies along the {drawn} run, while joists lie along the {joists.parallel_to} run"
    if f"ALONG {joists.parallel_to.upper()}" not in words:
        yield "does not say which run the joists lie along"
    for name, place in (("spacing", joists.spacing), ("first", joists.first)):
        try:
            told = exact_millimeters(arrow.data.get(name, ""))
        except ValueError:
            told = None
        if told != place:
            yield f"tells another {name} than is laid out"
