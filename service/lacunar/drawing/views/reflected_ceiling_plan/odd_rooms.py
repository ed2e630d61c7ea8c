"""What only a room with other than four walls has on the plan: cut coffers, slanted ends.

Also the beams at angled walls, and where beams stop short of the rectangle about the room.
"""

from collections.abc import Iterator, Mapping

from lacunar.drawing import style
from lacunar.drawing.elements import Fill, Group, Polyline, Pt, Segments
from lacunar.drawing.plan.frame import PlanFrame
from lacunar.drawing.plan.id_places import IdPlace
from lacunar.drawing.plan.rings import on_paper, rings_on_paper
from lacunar.drawing.typeface import Typeface
from lacunar.drawing.views.reflected_ceiling_plan.cut_coffers import seen_rings
from lacunar.drawing.wording import decimal_mm
from lacunar.layout.outline_records import BeamSpan, PartialSide
from lacunar.layout.records import Beam, BeamPiece
from lacunar.model.room import RunName

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


def angled_beams(frame: PlanFrame) -> Iterator[Group]:
    """The face of each beam at an angled wall."""
    for beam in frame.layout.outlined.angled_beams if frame.layout.outlined else ():
        yield Group(
            "angled-beam",
            tuple(Polyline(line, style.OBJECT) for line in outlined_faces(frame, beam.id)),
            id=f"angled-beam-{beam.id}",
            title=f"Beam {beam.id} at {beam.wall}",
            data={"id": beam.id, "wall": beam.wall},
        )


def beam_ends(frame: PlanFrame) -> Iterator[Group]:
    """The ends of beams that are seen, where a wall or a column stops a part of their width."""
    across = {beam.id: beam.on for beam in frame.layout.beams}
    for coffer in frame.layout.outlined.partial_coffers if frame.layout.outlined else ():
        lines = tuple(
            (on_paper(frame, side.start), on_paper(frame, side.end))
            for side in coffer.all_sides
            if side.against in across and _lies_across(side, across[side.against])
        )
        if lines:
            yield Group("beam-ends", (Segments(lines, style.OBJECT),), data={"coffer": coffer.id})


def _lies_across(side: PartialSide, on: RunName) -> bool:
    """Whether a side lies along the run that a beam is across, and so at the beam's end."""
    return side.start.y == side.end.y if on is RunName.LENGTH else side.start.x == side.end.x


def partial_coffers(
    frame: PlanFrame, ids: Mapping[str, IdPlace], typeface: Typeface
) -> Iterator[Group]:
    """The coffers that walls cut, each with its id."""
    for coffer in frame.layout.outlined.partial_coffers if frame.layout.outlined else ():
        corners, *_ = rings_on_paper(frame, coffer)
        yield Group(
            "coffer",
            (
                Polyline(corners, None, closed=True, fill=Fill.WHITE),
                ids[coffer.id].drawn(typeface),
            ),
            id=f"coffer-{coffer.id}",
            title=f"Coffer {coffer.id}, cut by walls or columns",
            data={
                "id": coffer.id,
                "row": str(coffer.row),
                "column": str(coffer.column),
                "length-mm": decimal_mm(coffer.reach_length.value),
                "width-mm": decimal_mm(coffer.reach_width.value),
            },
        )


def partial_crown(frame: PlanFrame) -> Iterator[Group]:
    """In each cut coffer the line its crown ends at on the ceiling, and its miters."""
    for coffer in frame.layout.outlined.partial_coffers if frame.layout.outlined else ():
        seen, corners = seen_rings(frame, coffer), rings_on_paper(frame, coffer)
        if seen:
            miters = [
                miter
                for pair in zip(corners, seen, strict=True)
                for miter in zip(*pair, strict=True)
            ]
            yield Group(
                "partial-crown",
                (
                    *(Polyline(ring, style.FINE, closed=True) for ring in seen),
                    Segments(tuple(miters), style.FINE),
                ),
                id=f"crown-{coffer.id}",
                title=f"Crown in {coffer.id}",
                data={"id": coffer.id},
            )
