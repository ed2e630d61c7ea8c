"""What only a room with other than four walls has on the plan: cut coffers, ends of beams.

Also the beams at angled walls.
"""

from collections.abc import Iterator, Mapping

from lacunar.drawing import style
from lacunar.drawing.elements import Fill, Group, Polyline, Segments
from lacunar.drawing.plan.cut_coffers import seen_rings
from lacunar.drawing.plan.faces import outlined_faces
from lacunar.drawing.plan.frame import PlanFrame
from lacunar.drawing.plan.id_places import IdPlace
from lacunar.drawing.plan.rings import on_paper, rings_on_paper
from lacunar.drawing.typeface import Typeface
from lacunar.drawing.wording import decimal_mm
from lacunar.layout.outline_records import PartialSide
from lacunar.model.room import RunName


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
