"""Coffers that walls cut, on paper: what crown leaves of them, and where there is room in them."""

from collections.abc import Sequence

from lacunar.drawing.elements import Pt
from lacunar.drawing.plan.clear_places import Box
from lacunar.drawing.plan.frame import PlanFrame
from lacunar.drawing.plan.rings import closed, largest_box, rings_on_paper, set_in
from lacunar.layout.outline_records import PartialCoffer
from lacunar.model.moulding import CrownMethod, FlatPlace


def seen_boxes(frame: PlanFrame) -> dict[str, Box]:
    """The largest upright rectangle that lies in what is seen of each cut coffer."""
    room = frame.layout.outlined
    return {
        coffer.id: largest_box(seen_rings(frame, coffer) or rings_on_paper(frame, coffer))
        for coffer in (room.partial_coffers if room else ())
    }


def seen_rings(frame: PlanFrame, coffer: PartialCoffer) -> tuple[tuple[Pt, ...], ...]:
    """What crown leaves to be seen of a cut coffer, as far as it leaves anything of every side.

    Nothing where two runs of crown would take the same place.
    """
    crown, asked = frame.layout.mouldings.crown, frame.layout.ceiling.crown
    if crown is None or asked is None or coffer.crown_meets:
        return ()
    flats = [
        float(flat.thickness.millimeters)
        for flat in frame.layout.ceiling.flat_mouldings
        if flat.at is FlatPlace.CEILING
    ]
    fit = asked.fit_total / 2 if asked.method is CrownMethod.BENCH_FRAME else asked.fit_total * 0
    inward = sum(flats) + float((fit + crown.projection.value).millimeters)
    rings = rings_on_paper(frame, coffer)
    found = tuple(set_in(ring, inward / frame.ratio) for ring in rings)
    return () if any(_turned(*pair) for pair in zip(rings, found, strict=True)) else found


def _turned(ring: Sequence[Pt], inner: Sequence[Pt]) -> bool:
    """Whether a side has nothing left, so that it would run the other way."""
    return any(
        (other.x - one.x) * (end.x - start.x) + (other.y - one.y) * (end.y - start.y) <= 0
        for (one, other), (start, end) in zip(closed(ring), closed(inner), strict=True)
    )
