"""The ceiling itself on the plan: coffers, beams, members and walls, without dimensions."""

from collections.abc import Mapping

from lacunar.drawing import style
from lacunar.drawing.elements import Element, Fill, Group, Polyline
from lacunar.drawing.plan.columns import column_groups
from lacunar.drawing.plan.faces import face_ends, outlined_faces
from lacunar.drawing.plan.frame import PlanFrame
from lacunar.drawing.plan.id_places import IdPlace
from lacunar.drawing.plan.walls import wall_groups
from lacunar.drawing.typeface import Typeface
from lacunar.drawing.views.reflected_ceiling_plan.crown_lines import crown_lines
from lacunar.drawing.views.reflected_ceiling_plan.following import (
    followed_centers,
    followed_faces,
)
from lacunar.drawing.views.reflected_ceiling_plan.odd_rooms import (
    angled_beams,
    beam_ends,
    partial_coffers,
    partial_crown,
)
from lacunar.drawing.wording import decimal_mm
from lacunar.layout.records import Beam, Coffer, WallBeam
from lacunar.model.room import START_WALL


def ceiling_elements(
    frame: PlanFrame, ids: Mapping[str, IdPlace], typeface: Typeface
) -> tuple[Element, ...]:
    """The ceiling itself, in painting order: field, coffers, crown, beams, members, walls.

    `ids` are the places of the coffers' ids.
    """
    layout = frame.layout
    outline = tuple(frame.point(point) for point in layout.outline)
    return (
        Polyline(outline, None, closed=True, fill=Fill.TINT),
        *(_coffer(frame, coffer, ids[coffer.id], typeface) for coffer in layout.coffers),
        *partial_coffers(frame, ids, typeface),
        *crown_lines(frame),
        *partial_crown(frame),
        *(_beam(frame, beam) for beam in layout.beams),
        *(_wall_beam(frame, beam) for beam in layout.wall_beams),
        *angled_beams(frame),
        *beam_ends(frame),
        *(_member(frame, beam) for beam in layout.beams if beam.member),
        *wall_groups(frame),
        *column_groups(frame),
    )


def _coffer(frame: PlanFrame, coffer: Coffer, place: IdPlace, typeface: Typeface) -> Group:
    """A coffer's clear opening with its id."""
    corners = tuple(frame.point(point) for point in coffer.corners)
    return Group(
        "coffer",
        (Polyline(corners, None, closed=True, fill=Fill.WHITE), place.drawn(typeface)),
        id=f"coffer-{coffer.id}",
        title=f"Coffer {coffer.id}",
        data={
            "id": coffer.id,
            "row": str(coffer.row),
            "column": str(coffer.column),
            "length-mm": decimal_mm(coffer.length.value),
            "width-mm": decimal_mm(coffer.width.value),
        },
    )


def _beam(frame: PlanFrame, beam: Beam) -> Group:
    """Both faces of each piece of a beam, and its center line from wall to wall."""
    faces = followed_faces(frame, beam) or tuple(
        frame.stretch(face, beam.on, ends)
        for piece in beam.pieces
        for face, ends in zip((beam.near, beam.far), face_ends(frame, beam, piece), strict=True)
    )
    centers = followed_centers(frame, beam) or tuple(
        frame.stretch(beam.center, beam.on, whole) for whole in frame.stretches(beam)
    )
    return Group(
        "beam",
        (
            *(Polyline(face, style.OBJECT) for face in faces),
            *(Polyline(center, style.CENTER) for center in centers),
        ),
        id=f"beam-{beam.id}",
        title=f"Beam {beam.id}",
        data={
            "id": beam.id,
            "kind": beam.kind.value,
            "on": beam.on.value,
            "near-mm": decimal_mm(beam.near.at_start.value),
            "far-mm": decimal_mm(beam.far.at_start.value),
        },
    )


def _wall_beam(frame: PlanFrame, beam: WallBeam) -> Group:
    """The face of each piece of what stands at a wall."""
    face = beam.far if beam.looks_as == START_WALL[beam.on] else beam.near
    lines = outlined_faces(frame, beam.id) or tuple(
        frame.stretch(face, beam.on, frame.piece_ends(beam.on, face, piece))
        for piece in beam.pieces
    )
    return Group(
        "wall-beam",
        tuple(Polyline(line, style.OBJECT) for line in lines),
        id=f"wall-beam-{beam.id}",
        title=f"Wall beam {beam.id} at {beam.wall}",
        data={
            "id": beam.id,
            "wall": beam.wall,
            "kind": beam.kind.value,
            "on": beam.on.value,
            "near-mm": decimal_mm(beam.near.at_start.value),
            "far-mm": decimal_mm(beam.far.at_start.value),
        },
    )


def _member(frame: PlanFrame, beam: Beam) -> Group:
    """The hidden faces of the structural member inside a cased beam, from its start to its end."""
    member = beam.member
    assert member is not None
    faces = tuple(
        Polyline(frame.member_face(beam.on, face, (member.start, member.end)), style.HIDDEN)
        for face in (member.near, member.far)
    )
    return Group(
        "member",
        faces,
        id=f"member-{beam.id}",
        title=f"Structural member {member.name}, cased by {beam.id}",
        data={"id": member.name, "beam": beam.id},
    )
