"""What only a grid along the walls has on the plan: beams aslant, crown in coffers that taper."""

from lacunar.drawing.elements import Pt
from lacunar.drawing.plan.cut_coffers import on_paper, set_in
from lacunar.drawing.plan.frame import PlanFrame
from lacunar.layout.followed_records import FollowedBeam
from lacunar.layout.moulding_records import CofferTrim
from lacunar.layout.records import Beam, Coffer

Line = tuple[Pt, Pt]


def followed_faces(frame: PlanFrame, beam: Beam) -> tuple[Line, ...]:
    """Both faces of each piece of a beam; none where the grid is square."""
    return tuple(
        (on_paper(frame, face.start), on_paper(frame, face.end))
        for own in _own(frame, beam)
        for piece in own.pieces
        for face in (piece.near, piece.far)
    )


def followed_centers(frame: PlanFrame, beam: Beam) -> tuple[Line, ...]:
    """The center line of a beam from wall to wall; none where the grid is square."""
    return tuple(
        (on_paper(frame, own.center[0]), on_paper(frame, own.center[1]))
        for own in _own(frame, beam)
    )


def _own(frame: PlanFrame, beam: Beam) -> tuple[FollowedBeam, ...]:
    followed = frame.layout.followed
    return tuple(each for each in (followed.beams if followed else ()) if each.id == beam.id)


def tapering(frame: PlanFrame) -> frozenset[str]:
    """The ids of coffers in which crown lies along sides that are not square."""
    followed = frame.layout.followed
    return frozenset(each.coffer for each in (followed.coffers if followed else ()) if each.tapers)


def seen_taper(frame: PlanFrame, coffer: Coffer, trim: CofferTrim) -> tuple[Pt, ...]:
    """What crown leaves of a coffer that tapers: its corners, each side set in by as much."""
    inward = (coffer.length.value - trim.seen_length.value) / 2
    corners = tuple(frame.point(corner) for corner in coffer.corners)
    return set_in(corners, frame.on_paper(inward))
