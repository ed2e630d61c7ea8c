"""The point on arrows: which way boards or grain lie is said as it is laid out."""

from collections.abc import Iterator

from lacunar.drawing.checker.plan_frame import PANELS, plan_frames
from lacunar.drawing.checker.records import Finding, GroupRead
from lacunar.drawing.checker.shapes import Box, extent
from lacunar.drawing.checker.subject import Subject


def arrows_as_laid_out(subject: Subject) -> Iterator[Finding]:
    """Point 67: arrows lie in their coffers, the way that boards or grain lie; one at least."""
    sheet, way = subject.sheet, subject.facts.direction
    for frame in (*plan_frames(subject), *plan_frames(subject, PANELS)):
        arrows = list(sheet.of_kind("direction", frame.view))
        if way and not arrows:
            yield sheet.finding(67, frame.view.id, f"does not show what lies along the {way} run")
        coffers = {
            coffer.id: extent([frame.spot(*corner) for corner in coffer.corners])
            for coffer in subject.facts.coffers
        }
        for arrow in arrows:
            for message in _faults(subject, arrow, way, coffers):
                yield sheet.finding(67, arrow.id, message)


def _faults(subject: Subject, arrow: GroupRead, way: str, coffers: dict[str, Box]) -> Iterator[str]:
    spots = [spot for path in subject.sheet.paths_in(arrow) for spot in path.spots]
    if not spots:
        yield "is not drawn"
        return
    around = extent(spots)
    along_length = around.right - around.left > around.bottom - around.top
    drawn = "length" if along_length else "width"
    if drawn != way or arrow.data.get("parallel-to") != way:
        yield f"lies along the {drawn} run, while it is “{way}” that is laid out"
    coffer = coffers.get(arrow.data.get("of", ""))
    if coffer is None or not coffer.holds(around):
        yield "does not lie in its coffer"
