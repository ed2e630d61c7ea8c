"""Where faces of beams start and end: slanted at angled walls, and along walls of odd rooms."""

from lacunar.drawing.elements import Pt
from lacunar.drawing.plan.frame import PlanFrame
from lacunar.drawing.plan.rings import on_paper
from lacunar.layout.outline_records import BeamSpan
from lacunar.layout.records import Beam, BeamPiece

Ends = tuple[float, float]


def face_ends(frame: PlanFrame, beam: Beam, piece: BeamPiece) -> tuple[Ends, Ends]:
    """Where a piece's near and its far face start and end along the beam [mm of paper]."""
    near, far = (frame.piece_ends(beam.on, face, piece) for face in (beam.near, beam.far))
    for span in frame.layout.outlined.spans if frame.layout.outlined else ():
        if span.beam == beam.id:
            near, far = _slanted(frame, span, piece, (near, far))
    return near, far


def _slanted(
    frame: PlanFrame, span: BeamSpan, piece: BeamPiece, ends: tuple[Ends, Ends]
) -> tuple[Ends, Ends]:
    """The ends with those that go on at an angled wall."""
    (near_start, near_end), (far_start, far_end) = ends
    if span.start_slant is not None and piece.start.value == span.start.value:
        on = frame.on_paper(span.start_slant.value)
        if span.start_longer == "near":
            near_start -= on
        else:
            far_start -= on
    if span.end_slant is not None and piece.end.value == span.end.value:
        on = frame.on_paper(span.end_slant.value)
        if span.end_longer == "near":
            near_end += on
        else:
            far_end += on
    return (near_start, near_end), (far_start, far_end)


def outlined_faces(frame: PlanFrame, beam: str) -> tuple[tuple[Pt, Pt], ...]:
    """The faces of what stands at the walls of a room with other than four, by its id."""
    room = frame.layout.outlined
    return tuple(
        (on_paper(frame, wall.face_start), on_paper(frame, wall.face_end))
        for wall in (room.walls if room else ())
        if wall.beam == beam and wall.face_start is not None and wall.face_end is not None
    )
