"""Crown on the plan: in each coffer the line it ends at on the ceiling, and its miters."""

from lacunar.drawing import style
from lacunar.drawing.elements import Group, Polyline, Segments
from lacunar.drawing.plan.following import seen_opening, tapering
from lacunar.drawing.plan.frame import PlanFrame
from lacunar.drawing.wording import decimal_mm
from lacunar.layout.moulding_records import CofferTrim
from lacunar.layout.records import Coffer


def crown_lines(frame: PlanFrame) -> tuple[Group, ...]:
    """The crown of every coffer; nothing where there is none."""
    mouldings = frame.layout.mouldings
    if mouldings.crown is None:
        return ()
    trims = {coffer: trim for trim in mouldings.coffers for coffer in trim.coffers}
    tapers = tapering(frame)
    return tuple(
        _crown(frame, each, trims[each.id], tapers=each.id in tapers)
        for each in frame.layout.coffers
    )


def _crown(frame: PlanFrame, coffer: Coffer, trim: CofferTrim, *, tapers: bool) -> Group:
    """The seen opening in the middle of a coffer, joined to its corners by the miters."""
    corners = tuple(frame.point(point) for point in coffer.corners)
    seen = seen_opening(frame, coffer, trim, tapers=tapers)
    return Group(
        "crown",
        (
            Polyline(seen, style.FINE, closed=True),
            Segments(tuple(zip(corners, seen, strict=True)), style.FINE),
        ),
        id=f"crown-{coffer.id}",
        title=f"Crown in {coffer.id}",
        data={
            "id": coffer.id,
            "seen-length-mm": decimal_mm(trim.seen_length.value),
            "seen-width-mm": decimal_mm(trim.seen_width.value),
        },
    )
