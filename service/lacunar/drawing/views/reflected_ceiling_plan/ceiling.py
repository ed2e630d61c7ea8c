"""The ceiling itself on the plan: coffers, beams, members and walls, without dimensions."""

from collections.abc import Mapping

from lacunar.drawing import style
from lacunar.drawing.annotation import Tag, TagsDoNotFit
from lacunar.drawing.elements import Element, Fill, Group, Polyline, Pt, Segments
from lacunar.drawing.hatching import box_corners, diagonal_lines
from lacunar.drawing.typeface import Typeface
from lacunar.drawing.views.reflected_ceiling_plan.clear_places import Box
from lacunar.drawing.views.reflected_ceiling_plan.crown_lines import crown_lines
from lacunar.drawing.views.reflected_ceiling_plan.frame import WALL_BAND, PlanFrame
from lacunar.drawing.views.reflected_ceiling_plan.items import feature_signs
from lacunar.drawing.wording import decimal_mm
from lacunar.layout.records import Beam, BeamPiece, Coffer, WallBeam
from lacunar.model.room import END_WALL, START_WALL, RunName

HATCH_PITCH = 1.8


def ceiling_elements(
    frame: PlanFrame, tags: Mapping[str, Box], typeface: Typeface
) -> tuple[Element, ...]:
    """The ceiling itself, in painting order: field, coffers, crown, beams, members, walls.

    Parameters: `tags`, where the id of each coffer goes.
    """
    layout = frame.layout
    outline = tuple(frame.point(point) for point in layout.outline)
    return (
        Polyline(outline, None, closed=True, fill=Fill.TINT),
        *(_coffer(frame, coffer, tags[coffer.id], typeface) for coffer in layout.coffers),
        *crown_lines(frame, typeface),
        *(_beam(frame, beam) for beam in layout.beams),
        *(_wall_beam(frame, beam) for beam in layout.wall_beams),
        *(_member(frame, beam) for beam in layout.beams if beam.member),
        *_walls(frame),
        *feature_signs(frame),
    )


def _coffer(frame: PlanFrame, coffer: Coffer, at: Box, typeface: Typeface) -> Group:
    """A coffer's clear opening with its id."""
    corners = tuple(frame.point(point) for point in coffer.corners)
    tag = Tag("coffer", coffer.id, coffer.id)
    if tag.long_side(typeface) + 1.0 > frame.on_paper(coffer.length.value):
        raise TagsDoNotFit(coffer.id)
    return Group(
        "coffer",
        (Polyline(corners, None, closed=True, fill=Fill.WHITE), tag.drawn(at.middle, typeface)),
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
    faces = tuple(
        Polyline(frame.stretch(face, beam.on, _across(frame, piece)), style.OBJECT)
        for piece in beam.pieces
        for face in (beam.near, beam.far)
    )
    whole = (0.0, frame.span(beam.on.other))
    center = Polyline(frame.stretch(beam.center, beam.on, whole), style.CENTER)
    return Group(
        "beam",
        (*faces, center),
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


def _across(frame: PlanFrame, piece: BeamPiece) -> tuple[float, float]:
    """A piece's ends along the run it spans [mm of paper]."""
    return frame.on_paper(piece.start.value), frame.on_paper(piece.end.value)


def _wall_beam(frame: PlanFrame, beam: WallBeam) -> Group:
    """The face of each piece of what stands at a wall."""
    face = beam.far if beam.wall == START_WALL[beam.on] else beam.near
    return Group(
        "wall-beam",
        tuple(
            Polyline(frame.stretch(face, beam.on, _across(frame, piece)), style.OBJECT)
            for piece in beam.pieces
        ),
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
    start, end = member.start.value, member.end.value
    faces = tuple(
        Polyline(frame.between(beam.on, (face.at_start, start), (face.at_end, end)), style.HIDDEN)
        for face in (member.near, member.far)
    )
    return Group(
        "member",
        faces,
        id=f"member-{beam.id}",
        title=f"Structural member {member.name}, cased by {beam.id}",
        data={"id": member.name, "beam": beam.id},
    )


def _walls(frame: PlanFrame) -> tuple[Group, ...]:
    """Each wall's finish face in the heavy pen, with a hatched band outward of it."""
    length, width = frame.span(RunName.LENGTH), frame.span(RunName.WIDTH)
    left, bottom = frame.origin.x, frame.origin.y
    right, top = left + length, bottom - width
    band = WALL_BAND
    rows = (
        (
            START_WALL[RunName.LENGTH],
            (Pt(left, bottom), Pt(left, top)),
            (left - band, top, band, width),
        ),
        (
            END_WALL[RunName.WIDTH],
            (Pt(left, top), Pt(right, top)),
            (left, top - band, length, band),
        ),
        (END_WALL[RunName.LENGTH], (Pt(right, top), Pt(right, bottom)), (right, top, band, width)),
        (
            START_WALL[RunName.WIDTH],
            (Pt(right, bottom), Pt(left, bottom)),
            (left, bottom, length, band),
        ),
    )
    return tuple(
        Group(
            "wall",
            (
                Segments(diagonal_lines(box_corners(*box), HATCH_PITCH), style.HATCH),
                Polyline(face, style.WALL),
            ),
            id=f"wall-{name}",
            title=f"Wall {name}, finish face",
            data={"wall": name},
        )
        for name, face, box in rows
    )
