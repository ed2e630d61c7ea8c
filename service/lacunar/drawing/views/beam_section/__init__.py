"""A beam's cross-section, to scale, with every part named and sized by a leader.

The finished width is dimensioned above it and the drop left of it, so the section and the plan can
be held against each other.
"""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass

from lacunar.drawing import style
from lacunar.drawing.annotation import Block, dot, wrapped
from lacunar.drawing.dimensions import Axis, Segment, Stop, String, drawn_string, place_strings
from lacunar.drawing.elements import Element, Group, Polyline, Pt, Segments, Text
from lacunar.drawing.hatching import box_corners, diagonal_lines
from lacunar.drawing.paper import Scale
from lacunar.drawing.section.boards import (
    backing_outline,
    board_outlines,
    panel_edges,
    panel_inset,
    panel_runs_through,
    rectangle_of,
)
from lacunar.drawing.section.cut import Cut
from lacunar.drawing.section.leader_order import uncrossed
from lacunar.drawing.section.records import SectionOf
from lacunar.drawing.typeface import Typeface
from lacunar.drawing.views.beam_section.mouldings import (
    drawn_mouldings,
    moulding_notes,
    moulding_reach,
)
from lacunar.drawing.wording import SheetWording, decimal_mm
from lacunar.layout.panel_stack import panel_stack
from lacunar.layout.records import Beam, ProfilePart
from lacunar.measure.length import ZERO, Length
from lacunar.model.beams import BottomJoint, FamilyProfile

CEILING_BAND = 3.0
CEILING_REACH = 2.6
NOTE_GAP = 6.4
NOTE_PITCH = 5.2
LEAST_NOTE_WIDTH = 36.0
GRAIN_PITCH = 1.3


@dataclass(frozen=True, slots=True)
class _Note:
    """A leader's target in the section and the words at its other end."""

    target: Pt
    words: str


class SectionTooWide(Exception):
    """At this scale the section leaves no room for the words beside it."""


def beam_section(
    of: SectionOf, scale: Scale, wording: SheetWording, typeface: Typeface, width: float
) -> Block:
    """A beam profile as a block `width` [mm] wide: section, two dimensions, leaders, at a scale.

    Errors: `SectionTooWide` where the scale is too large for the width.
    """
    profile = of.profile
    bare = Cut(of, scale.ratio, 0.0, 0.0)
    run = place_strings(
        [_string(bare, "finished-width", profile.finished_width.value, wording)], typeface
    )[0]
    drop = place_strings([_string(bare, "drop", profile.drop.value, wording)], typeface)[0]
    overhang = max(
        0.0, bare.on_paper(profile.overall_width.value - profile.finished_width.value) / 2
    )
    out = max(overhang, moulding_reach(bare))
    ceiling_out = max(CEILING_REACH, out + 1.0 if moulding_reach(bare) else 0.0)
    left = max(drop.outer_edge + max(overhang, ceiling_out), run.overrun_before) + 1.0
    cut = Cut(of, scale.ratio, left, run.outer_edge + 1.0 + CEILING_BAND)
    notes = _notes(cut, wording)
    right = cut.left + cut.on_paper(profile.finished_width.value) + out
    note_x = right + NOTE_GAP
    if width - note_x < LEAST_NOTE_WIDTH:
        raise SectionTooWide(scale.text)
    lines = [wrapped(note.words, width - note_x, typeface) for note in notes]
    leaders, note_bottom = _leaders(notes, lines, Pt(note_x, cut.top - CEILING_BAND))
    lowest = cut.top + cut.on_paper(profile.drop.value)
    bottom = max(lowest + max(2.0, drop.overrun_before + 1.0), note_bottom)
    strings = (
        drawn_string(run, Axis("x", cut.top - CEILING_BAND, cut.left), 0.6),
        drawn_string(drop, _drop_axis(cut, max(overhang, ceiling_out)), 0.8),
    )
    drawn = Group(
        "object",
        _section(cut, cut.left - ceiling_out, right + CEILING_REACH),
        id=f"object-view-{of.number}",
    )
    return Block(width, bottom, (_view(of, scale, (drawn, *strings, *leaders)),))


def _view(of: SectionOf, scale: Scale, children: tuple[Element, ...]) -> Group:
    """All that belongs to a section, under its view's number and scale."""
    return Group(
        "view",
        children,
        id=f"view-{of.number}",
        title=f"Beam section {of.profile.id}",
        data={
            "view": "beam-section",
            "profile": of.profile.id,
            "scale": str(scale.ratio),
            "scale-text": scale.text,
        },
    )


def _drop_axis(cut: Cut, reach: float) -> Axis:
    """The drop runs up from the lowest edge to the ceiling, left of all that is drawn."""
    lowest = cut.top + cut.on_paper(cut.of.profile.drop.value)
    return Axis("y", cut.left - reach, -lowest)


def _string(cut: Cut, name: str, length: Length, wording: SheetWording) -> String:
    """One dimension of the section as a string of one segment."""
    value = wording.detailed(length)
    start = Stop("near", 0.0, ZERO, ZERO)
    end = Stop("far", cut.on_paper(length), value, length)
    text, exact = wording.detailed_dimension(length), wording.exact(value)
    segment = Segment(start, end, text, exact, decimal_mm(length))
    return String(f"section-{cut.of.number}", name, (segment,))


def _section(cut: Cut, left: float, right: float) -> tuple[Element, ...]:
    """Ceiling and panel from `left` to `right` on paper, member, backing, boards, mouldings."""
    beam = next((beam for beam in cut.of.beams if beam.member), None)
    top = cut.top - CEILING_BAND
    band = (
        Polyline((Pt(left, cut.top), Pt(right, cut.top)), style.CUT),
        Segments(
            diagonal_lines(box_corners(left, top, right - left, CEILING_BAND), 1.8),
            style.HATCH,
        ),
    )
    inside = _member(cut, beam) if beam else _backing(cut)
    return (*band, *_panel(cut, left, right), *inside, *_boards(cut), *drawn_mouldings(cut))


def _panel(cut: Cut, left: float, right: float) -> tuple[Element, ...]:
    """A sheet panel under the ceiling, as far in as its seat lets it: through, or to both sides."""
    if not panel_stack(cut.of.panel).thickness:
        return ()
    width, (top, low) = cut.of.profile.finished_width.value, _panel_edges(cut)
    if panel_runs_through(cut.of):
        return (Polyline((Pt(left, low), Pt(right, low)), style.OBJECT),)
    inset = panel_inset(cut.of)
    return tuple(
        Polyline((Pt(outer, low), Pt(edge, low), Pt(edge, top)), style.OBJECT)
        for outer, edge in (
            (left, cut.left + cut.on_paper(inset)),
            (right, cut.left + cut.on_paper(width - inset)),
        )
    )


def _panel_edges(cut: Cut) -> tuple[float, float]:
    """Where the upper and the lower face of a panel lie on paper [mm]."""
    upper, lower = panel_edges(cut.of)
    return cut.top + cut.on_paper(upper), cut.top + cut.on_paper(lower)


def _backing(cut: Cut) -> tuple[Element, ...]:
    """Backing centered in the box under what it is fixed to: full diagonals mark framing."""
    outline = backing_outline(cut.of)
    if outline is None:
        return ()
    corners = cut.placed(outline)
    cross = ((corners[0], corners[2]), (corners[1], corners[3]))
    return (Polyline(corners, style.OBJECT, closed=True), Segments(cross, style.HATCH))


def _member(cut: Cut, beam: Beam) -> tuple[Element, ...]:
    """The structural member and its cladding in hidden lines, off the casing's middle by a shift.

    Cleats are left to the profile's own sheet.
    """
    member = beam.member
    assert member is not None
    x = member.near.at_start.value - beam.near.at_start.value
    width = member.far.at_start.value - member.near.at_start.value
    bare = Polyline(
        cut.placed(rectangle_of(x, ZERO, width, member.drop)), style.HIDDEN, closed=True
    )
    clad = member.clad
    if not clad:
        return (bare,)
    around = cut.placed(rectangle_of(x - clad, ZERO, width + clad * 2, member.drop + clad))
    return (bare, Polyline(around, style.HIDDEN, closed=True))


def _boards(cut: Cut) -> tuple[Element, ...]:
    """Sides and bottom in the cut pen, with grain lines."""
    found = board_outlines(cut.of)
    outlines = [cut.placed(outline) for boards in found.values() for outline in boards]
    grain = tuple(line for corners in outlines for line in diagonal_lines(corners, GRAIN_PITCH))
    return (
        Segments(grain, style.HATCH),
        *(Polyline(corners, style.CUT, closed=True) for corners in outlines),
    )


def _flat_notes(cut: Cut, wording: SheetWording) -> Iterator[_Note]:
    """What leaders point at in a flat beam's boards."""
    width, at = cut.of.profile.finished_width.value, cut.of.profile.drop.value
    for name, words in (("bottom", "FACE BOARD"), ("upper_board", "UPPER BOARD")):
        if (part := cut.of.part(name)) is not None:
            middle = at - part.thickness.value / 2
            at -= part.thickness.value
            target = cut.spot((width + part.width.value) / 2 - width / 8, middle)
            yield _Note(target, f"{words} {_size(part, wording)}")


def _notes(cut: Cut, wording: SheetWording) -> tuple[_Note, ...]:
    """What each leader points at."""
    profile = cut.of.profile
    width = profile.finished_width.value
    beside = cut.left + cut.on_paper(width) + 2.0
    notes = [_Note(Pt(beside, cut.top - CEILING_BAND / 2), "CEILING")]
    panel = panel_stack(cut.of.panel).thickness
    if panel:
        at_panel = Pt(beside, sum(_panel_edges(cut)) / 2)
        what = "BOARDS" if cut.of.panel.boards else "PANEL"
        notes.append(_Note(at_panel, f"{what} {wording.size(panel)}"))
    notes.extend(_Note(at, words) for at, words in moulding_notes(cut, wording))
    flat = profile.profile is FamilyProfile.FLAT
    notes.extend(_flat_notes(cut, wording) if flat else _box_notes(cut, wording))
    return tuple(notes)


def _box_notes(cut: Cut, wording: SheetWording) -> Iterator[_Note]:
    """What leaders point at in a box: what is inside it, its boards and its reveal."""
    profile, side, bottom = cut.of.profile, cut.of.part("side"), cut.of.part("bottom")
    assert side is not None
    assert bottom is not None
    assert profile.inside_depth is not None
    width, drop = profile.finished_width.value, profile.drop.value
    thickness, sole = side.thickness.value, bottom.thickness.value
    reveal = profile.reveal if profile.bottom_joint is BottomJoint.BETWEEN else ZERO
    yield _inside_note(cut, width / 2, wording)
    at_side = cut.spot(width - thickness / 2, profile.inside_depth.value / 2)
    yield _Note(at_side, f"SIDE {_size(side, wording)}")
    at_sole = cut.spot(width - thickness * 2, drop - reveal - sole / 2)
    yield _Note(at_sole, f"BOTTOM {_size(bottom, wording)}")
    if reveal:
        edge = cut.spot(width - thickness / 2, drop - reveal / 2)
        yield _Note(edge, f"REVEAL {wording.length(reveal)}")


def _inside_note(cut: Cut, middle: Length, wording: SheetWording) -> _Note:
    """The note on what is inside the box: backing, or the structural member."""
    beam = next((beam for beam in cut.of.beams if beam.member), None)
    if beam is not None and beam.member is not None:
        member = beam.member
        x = member.far.at_start.value - beam.near.at_start.value
        at = cut.spot(x, member.drop / 3)
        return _Note(at, f"{', '.join(cut.of.members)}: DO NOT CUT OR DRILL")
    backing = cut.of.part("backing")
    assert backing is not None
    down = panel_stack(cut.of.panel).above_backing + backing.thickness.value / 4
    at = cut.spot(middle + backing.width.value / 4, down)
    return _Note(at, f"BACKING {_size(backing, wording)}")


def _size(part: ProfilePart, wording: SheetWording) -> str:
    """Thickness by width, and the stock's name where it has one."""
    return f"{wording.size(part.thickness.value)} x {wording.size(part.width.value)}"


def _leaders(
    notes: Sequence[_Note], lines: Sequence[Sequence[str]], at: Pt
) -> tuple[tuple[Element, ...], float]:
    """A column of words from `at` down, each joined to its place in the section; and its end."""
    drawn: list[Element] = []
    y = at.y
    heights = [NOTE_PITCH + (len(texts) - 1) * style.LINE_PITCH for texts in lines]
    first = Pt(at.x - 2.6, y + style.TEXT / 2)
    for number in uncrossed([note.target for note in notes], heights, first):
        note, texts = notes[number], lines[number]
        middle = y + style.TEXT / 2
        line = (note.target, Pt(at.x - 2.6, middle), Pt(at.x - 0.6, middle))
        words = tuple(
            Text(Pt(at.x, y + style.TEXT + n * style.LINE_PITCH), text, style.TEXT)
            for n, text in enumerate(texts)
        )
        drawn.append(Group("leader", (Polyline(line, style.LEADER), dot(note.target), *words)))
        y += heights[number]
    return tuple(drawn), y
