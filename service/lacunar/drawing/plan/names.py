"""Names of beams and walls within a plan, where they meet nothing."""

from collections.abc import Iterator
from itertools import pairwise

from lacunar.drawing.annotation import Tag
from lacunar.drawing.elements import Element, Group, Pt
from lacunar.drawing.hatching import box_corners
from lacunar.drawing.plan.clear_places import Box, Occupied
from lacunar.drawing.plan.columns import column_groups
from lacunar.drawing.plan.frame import PlanFrame
from lacunar.drawing.plan.walls import walls_of
from lacunar.drawing.typeface import Typeface
from lacunar.layout.records import ElementKind
from lacunar.model.room import RunName

OFF_TAG = 0.8
WITHIN = (6.0, 7.5, 9.0, 11.0, 14.0, 18.0, 24.0)
SHARES = tuple(sorted((number / 24 for number in range(1, 24)), key=lambda share: abs(share - 0.5)))
"""Where a wall's name may stand: so far from its face [mm], at such a share of its length."""


def tag_box(tag: Tag, center: Pt, typeface: Typeface) -> tuple[Pt, ...]:
    """The corners of what lines keep clear of about a tag."""
    width, height = (size + 2 * OFF_TAG for size in tag.size(typeface))
    return box_corners(center.x - width / 2, center.y - height / 2, width, height)


def beam_tags(frame: PlanFrame, typeface: Typeface) -> Iterator[tuple[Tag, Pt]]:
    """The id of each beam on its center, in the middle of a coffer it passes.

    Clear of columns and of other ids; the coffer nearest the beam's middle that is. An id without
    room is left out: the reflected ceiling plan has them all.
    """
    busy = Occupied(typeface, tuple(column_groups(frame)))
    crowded = _crowded(frame, typeface)
    for beam in frame.layout.beams:
        stretches = frame.stretches(beam)
        first, last = max(stretches, key=lambda ends: ends[1] - ends[0])
        middle = (first + last) / 2
        openings = [
            (frame.on_paper(each.near.at_start.value) + frame.on_paper(each.far.at_start.value)) / 2
            for each in frame.layout.run(beam.on.other).elements
            if each.kind is ElementKind.COFFER
        ]
        turned = crowded and beam.on is RunName.LENGTH
        tag = Tag("beam", beam.id, beam.id, turned=turned, bare=crowded)
        centers = [
            frame.line_at(beam.center, beam.on, across)
            for across in sorted(openings, key=lambda place: abs(place - middle))
            if first < across < last
        ]
        clear = (
            at for at in centers if busy.is_free(Box.about(at, *tag.size(typeface)).grown(OFF_TAG))
        )
        center = next(clear, None)
        if center is not None:
            busy.add((tag.drawn(center, typeface),))
            yield tag, center


def _crowded(frame: PlanFrame, typeface: Typeface) -> bool:
    """Whether ids of neighboring beams across the length run would meet side by side.

    Then they stand upright, and all ids have no outline.
    """
    beams = [beam for beam in frame.layout.beams if beam.on is RunName.LENGTH]
    places = sorted(frame.on_paper(beam.center.at_start.value) for beam in beams)
    widest = max((Tag("beam", b.id, b.id).size(typeface)[0] for b in beams), default=0.0)
    return any(other - one < widest + 2 * OFF_TAG for one, other in pairwise(places))


def wall_tags(frame: PlanFrame, about: tuple[Element, ...], typeface: Typeface) -> Iterator[Group]:
    """The name of each wall inside the room, by the middle of the wall where there is room."""
    busy = Occupied(typeface, about)
    named: set[str] = set()
    for wall in sorted(walls_of(frame), key=lambda each: -each.span):
        if wall.name in named:
            continue
        tag = Tag("wall", wall.name, wall.name, round=True)
        width, height = tag.size(typeface)
        for within in WITHIN:
            centers = (wall.point(wall.span * share, -within) for share in SHARES)
            free = (at for at in centers if busy.is_free(Box.about(at, width + 1, height + 1)))
            center = next(free, None)
            if center is not None:
                drawn = tag.drawn(center, typeface)
                busy.add((drawn,))
                named.add(wall.name)
                yield drawn
                break
