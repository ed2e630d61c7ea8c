"""What a beam meets: joists, ceiling, wall, panel, and the structural member that it cases."""

from collections.abc import Iterator
from dataclasses import dataclass
from fractions import Fraction

from lacunar.drawing.elements import Pt
from lacunar.drawing.hatching import box_corners
from lacunar.drawing.section.boards import (
    panel_edges,
    panel_inset,
    panel_runs_through,
    rectangle_of,
)
from lacunar.drawing.section.cut import Cut
from lacunar.drawing.section.hatches import Hatch, Substance, Way
from lacunar.drawing.views.profile_detail.parts import (
    Corners,
    DetailOf,
    NamedPart,
    ShownPart,
    profile_side,
    within,
)
from lacunar.layout.records import Beam, CasedMember, WallBeam
from lacunar.measure.length import ZERO, Length
from lacunar.model.panel import PanelKind

JOISTS_SHOWN = 9.0
"""How much is shown of joists, whose depth is not known [mm]."""
CEILING_SHOWN = 4.0
"""How much is shown of a ceiling whose thickness is not known [mm]."""
WALL_SHOWN = 7.0
JOIST = Hatch(Substance.EXISTING, Way.RISING, 2.2)
EXISTING_RISING = Hatch(Substance.EXISTING, Way.RISING, 3.0)
EXISTING_FALLING = Hatch(Substance.EXISTING, Way.FALLING, 3.0)
CLADDING = Hatch(Substance.EXISTING, Way.FALLING, 2.0)
BOARDS = Hatch(Substance.FINISH_WOOD, Way.FALLING, 1.8)
SHEETS = Hatch(Substance.SHEET, level=True)
CLEAT = Hatch(Substance.FRAMING)


@dataclass(frozen=True, slots=True)
class Reach:
    """How far what a beam meets is drawn [mm of paper]: from `left` to `right`."""

    left: float
    right: float


def ceiling_band(detail: DetailOf, ratio: Fraction) -> float:
    """How thick the ceiling is drawn above the panel [mm]: as it is, where that is known."""
    joists = detail.layout.ceiling.room.joists
    return CEILING_SHOWN if joists is None else float(joists.existing_finish.millimeters / ratio)


def joists_band(detail: DetailOf) -> float:
    """How much is shown of joists, whether or not one lies over the beam [mm]."""
    return JOISTS_SHOWN if detail.layout.backing.joists is not None else 0.0


def parts_around(detail: DetailOf, cut: Cut, reach: Reach) -> Iterator[ShownPart]:
    """Everything that the beam meets, from the top down."""
    yield from _joists(detail, cut, reach)
    yield from _ceiling(detail, cut, reach)
    yield from _panel(detail, cut, reach)
    member = detail.member
    if member is not None and isinstance(detail.at, Beam):
        yield from _member(detail, cut, detail.at, member)


def wall_corners(detail: DetailOf, cut: Cut) -> Corners | None:
    """The wall that a beam stands at, left of it, as far as it is shown; None elsewhere."""
    if not detail.of.at_wall:
        return None
    below = cut.on_paper(detail.of.profile.drop.value) + WALL_SHOWN
    return box_corners(cut.left - WALL_SHOWN, cut.top, WALL_SHOWN, below)


def _joists(detail: DetailOf, cut: Cut, reach: Reach) -> Iterator[ShownPart]:
    lines = detail.layout.backing.joists
    if lines is None:
        return
    low = cut.top - ceiling_band(detail, cut.ratio)
    part = NamedPart(
        "joist", "JOIST", lines.width, None, Substance.EXISTING.value, "depth not given"
    )
    if lines.on is not detail.at.on:
        corners = box_corners(
            reach.left, low - JOISTS_SHOWN, reach.right - reach.left, JOISTS_SHOWN
        )
        yield ShownPart(part, within(corners, 0.9, 0.5), (corners,), JOIST)
        return
    width, half = detail.of.profile.finished_width.value, lines.width / 2
    middles = [_from_left_face(detail, joist.center.value) for joist in lines.joists]
    found = []
    for middle in (each for each in middles if -half < each < width + half):
        left = max(cut.left + cut.on_paper(middle - half), reach.left)
        right = min(cut.left + cut.on_paper(middle + half), reach.right)
        found.append(box_corners(left, low - JOISTS_SHOWN, right - left, JOISTS_SHOWN))
    if found:
        yield ShownPart(part, within(found[-1], 0.5, 0.5), tuple(found), JOIST)


def _from_left_face(detail: DetailOf, place: Length) -> Length:
    """Where a place of the run lies in the section; a wall always stands left of its beam."""
    near, far = detail.at.near.at_start.value, detail.at.far.at_start.value
    at_far_wall = isinstance(detail.at, WallBeam) and detail.at.looks_as in ("W2", "W3")
    return far - place if at_far_wall else place - near


def _ceiling(detail: DetailOf, cut: Cut, reach: Reach) -> Iterator[ShownPart]:
    band = ceiling_band(detail, cut.ratio)
    if not band:
        return
    joists = detail.layout.ceiling.room.joists
    finish = None if joists is None else joists.existing_finish
    known = finish is not None
    hatch = Hatch(Substance.FINISH) if known else EXISTING_FALLING
    remark = "" if known else "thickness not given"
    part = NamedPart("ceiling", "CEILING", finish, None, hatch.substance.value, remark)
    corners = box_corners(reach.left, cut.top - band, reach.right - reach.left, band)
    yield ShownPart(part, Pt(reach.right - 3.0, cut.top - band / 2), (corners,), hatch)


def _panel(detail: DetailOf, cut: Cut, reach: Reach) -> Iterator[ShownPart]:
    of, panel = detail.of, detail.of.panel
    if panel.kind is PanelKind.EXISTING:
        return
    top, low = (cut.top + cut.on_paper(edge) for edge in panel_edges(of))
    boards = panel.kind is PanelKind.BOARDS
    hatch = BOARDS if boards else SHEETS
    words = "BOARDS" if boards else "PANEL"
    part = NamedPart("panel", words, panel.thickness, None, hatch.substance.value)
    width, inset = of.profile.finished_width.value, panel_inset(of)
    inner = (cut.left + cut.on_paper(inset), cut.left + cut.on_paper(width - inset))
    spans = [(inner[1], reach.right)]
    if panel_runs_through(of):
        spans = [(cut.left if of.at_wall else reach.left, reach.right)]
    elif not of.at_wall:
        spans.insert(0, (reach.left, inner[0]))
    placed = tuple(box_corners(start, top, end - start, low - top) for start, end in spans)
    yield ShownPart(part, Pt(reach.right - 3.0, (top + low) / 2), placed, hatch)
    if panel.gap and not panel_runs_through(of):
        gap = NamedPart("panel-gap", "GAP AT THE PANEL", panel.gap, None, "", "at each edge")
        yield ShownPart(gap, Pt(inner[1], (top + low) / 2))


def _member(detail: DetailOf, cut: Cut, beam: Beam, member: CasedMember) -> Iterator[ShownPart]:
    """The member as it lies at its start, with its cladding and the cleats beside it."""
    box = beam.near.at_start.value
    near, far = member.near.at_start.value - box, member.far.at_start.value - box
    bare = cut.placed(rectangle_of(near, ZERO, far - near, member.drop))
    size = far - near
    elsewhere = _elsewhere(cut, beam, member)
    remark = "do not cut or drill"
    if elsewhere:
        remark += "; as at its start, dashed as at its end"
    part = NamedPart(
        "member",
        f"MEMBER {member.name.upper()}",
        size,
        member.drop,
        Substance.EXISTING.value,
        remark,
    )
    yield ShownPart(part, within(bare, 0.75, 0.3), (bare,), EXISTING_RISING, elsewhere)
    if member.clad:
        yield _cladding(cut, (near, far), member)
    yield from _cleats(detail, cut, member)


def _elsewhere(cut: Cut, beam: Beam, member: CasedMember) -> tuple[Corners, ...]:
    """The member as it lies at its end, where that is not as at its start."""
    box = beam.near.at_end.value
    near, far = member.near.at_end.value - box, member.far.at_end.value - box
    at_start = member.near.at_start.value - beam.near.at_start.value
    if near == at_start and member.drop == member.drop_at_end:
        return ()
    return (cut.placed(rectangle_of(near, ZERO, far - near, member.drop_at_end)),)


def _cladding(cut: Cut, faces: tuple[Length, Length], member: CasedMember) -> ShownPart:
    """What is on a member: on both its sides, and below."""
    (near, far), clad, drop = faces, member.clad, member.drop
    outlines = (
        rectangle_of(near - clad, ZERO, clad, drop + clad),
        rectangle_of(near, drop, far - near, clad),
        rectangle_of(far, ZERO, clad, drop + clad),
    )
    placed = tuple(cut.placed(outline) for outline in outlines)
    part = NamedPart("cladding", "CLADDING", clad, None, Substance.EXISTING.value)
    return ShownPart(part, within(placed[-1], 0.5, 0.6), placed, CLADDING)


def _cleats(detail: DetailOf, cut: Cut, member: CasedMember) -> Iterator[ShownPart]:
    """What each side of a casing is fixed to, where it has room beside the member."""
    of, wide = detail.of, detail.layout.ceiling.take_off.cleat_width
    inside, side = of.profile.inside_depth, profile_side(of)
    if not member.cleat or inside is None or wide > inside.value:
        return
    top = panel_edges(of)[1] if panel_runs_through(of) else ZERO
    width = of.profile.finished_width.value
    lefts = (side, width - side - member.cleat)
    placed = tuple(cut.placed(rectangle_of(x, top, member.cleat, wide)) for x in lefts)
    part = NamedPart("cleat", "CLEAT", member.cleat, wide, Substance.FRAMING.value)
    yield ShownPart(part, within(placed[-1], 0.5, 0.8), placed, CLEAT)
