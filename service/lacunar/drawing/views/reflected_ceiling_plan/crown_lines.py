"""Crown on the plan: in each coffer the line it ends at on the ceiling, and its miters."""

from lacunar.drawing import style
from lacunar.drawing.elements import Group, Polyline, Pt, Segments
from lacunar.drawing.hatching import box_corners
from lacunar.drawing.plan.frame import PlanFrame
from lacunar.drawing.views.reflected_ceiling_plan.following import seen_taper, tapering
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
    middle = Pt(sum(c.x for c in corners) / 4, sum(c.y for c in corners) / 4)
    length, width = (frame.on_paper(seen.value) for seen in (trim.seen_length, trim.seen_width))
    left, top = middle.x - length / 2, middle.y - width / 2
    # In the order of the coffer's corners: from the one next the datum, to the right, up.
    upper_left, upper_right, right, low = box_corners(left, top, length, width)
    seen: tuple[Pt, ...] = (low, right, upper_right, upper_left)
    if tapers:
        seen = seen_taper(frame, coffer, trim)
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
