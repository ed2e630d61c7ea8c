"""A beam's profile as a section of its own: every part in a balloon, sized, and hatched.

What is seen from the room is drawn heavy. A beam at a wall has the wall left of it.
"""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass, replace
from fractions import Fraction

from lacunar.drawing import style
from lacunar.drawing.annotation import Block
from lacunar.drawing.dimensions import (
    Axis,
    PlacedString,
    StringsDoNotFit,
    drawn_string,
    place_strings,
)
from lacunar.drawing.elements import Element, Group, Polyline, Pt
from lacunar.drawing.paper import Scale
from lacunar.drawing.section.cut import Cut
from lacunar.drawing.section.hatches import hatched
from lacunar.drawing.section.mouldings import standing_behind
from lacunar.drawing.section.records import SectionOf
from lacunar.drawing.section.room_side import mirrored, room_side
from lacunar.drawing.typeface import Typeface
from lacunar.drawing.views.profile_detail.around import (
    EXISTING_RISING,
    WALL_SHOWN,
    Reach,
    ceiling_band,
    joists_band,
    parts_around,
    wall_corners,
)
from lacunar.drawing.views.profile_detail.balloons import (
    STAGGER,
    BalloonColumn,
    Numbers,
    balloons,
    column_height,
    pitch_over,
)
from lacunar.drawing.views.profile_detail.figures import (
    above,
    below,
    beside,
    clear_figures,
    written,
)
from lacunar.drawing.views.profile_detail.parts import DetailOf, NamedPart, ShownPart, board_parts
from lacunar.drawing.views.profile_detail.trim_parts import trim_parts
from lacunar.drawing.wording import SheetWording, decimal_mm
from lacunar.measure.length import ZERO
from lacunar.model.moulding import FlatPlace

__all__ = ["DetailOf", "NamedPart", "StringsDoNotFit", "named_parts", "profile_detail"]

BEYOND = 9.0
"""How far ceiling and panel go on beside the beam [mm]."""
TO_BALLOONS = 9.0
RING = 6.4
WIDER_HATCH = {Fraction(1): 1.8, Fraction(2): 1.3}
"""How much further apart hatch lines are in a large section, by its scale."""


def named_parts(detail: DetailOf, wording: SheetWording) -> tuple[NamedPart, ...]:
    """What a profile's view has balloons for, from the ceiling down and outward."""
    cut = Cut(detail.of, Fraction(1), 0.0, 0.0)
    shown = _shown(detail, cut, Reach(-BEYOND, BEYOND), wording)
    return tuple(dict.fromkeys(part.part for part in shown))


def _shown(
    detail: DetailOf, cut: Cut, reach: Reach, wording: SheetWording
) -> tuple[ShownPart, ...]:
    return (
        *parts_around(detail, cut, reach),
        *board_parts(detail, cut),
        *trim_parts(detail, cut, wording),
    )


@dataclass(frozen=True, slots=True)
class _Strings:
    """The dimensions of a view, placed about it."""

    above: tuple[PlacedString, ...]
    beside: tuple[PlacedString, ...]
    below: tuple[PlacedString, ...]

    @property
    def height_above(self) -> float:
        return max((one.outer_edge for one in self.above), default=0.0)

    @property
    def width_beside(self) -> float:
        return self.beside[-1].outer_edge

    @property
    def height_below(self) -> float:
        return self.below[-1].outer_edge

    @property
    def overrun_right(self) -> float:
        return max(one.overrun_after for one in (*self.above, *self.below))

    @property
    def overrun_left(self) -> float:
        return max(one.overrun_before for one in self.below)


def profile_detail(
    detail: DetailOf,
    scale: Scale,
    numbers: Numbers,
    written_as: tuple[SheetWording, Typeface],
    staggered: bool = False,
) -> Block:
    """A profile at a scale, with its dimensions, and a balloon to each part by its number.

    `staggered` balloons stand in two columns, which are half as tall.

    Errors: `StringsDoNotFit` where figures cannot be kept apart at this scale.
    """
    wording, typeface = written_as
    bare = Cut(detail.of, scale.ratio, 0.0, 0.0)
    out = _standing_out(bare) + BEYOND
    parts = len(named_parts(detail, wording))
    width = bare.on_paper(detail.of.profile.finished_width.value)
    drop = bare.on_paper(detail.of.profile.drop.value)
    band = ceiling_band(detail, scale.ratio) + joists_band(detail)
    tall = band + drop
    spare = max(0.0, column_height(parts, staggered) - tall - _foot(detail.of))
    strings = _placed(detail, bare, written_as, spare)
    left_out = WALL_SHOWN if detail.of.at_wall else out
    left = strings.width_beside + 1.0 + max(left_out, strings.overrun_left)
    top = strings.height_above + 1.0 + band
    cut = Cut(detail.of, scale.ratio, left, top)
    reach = Reach(left if detail.of.at_wall else left - out, left + width + out)
    shown = _shown(detail, cut, reach, wording)
    rings = max(reach.right + TO_BALLOONS, left + width + strings.overrun_right + 2.0)
    pitch = pitch_over(tall, parts, staggered)
    column = BalloonColumn(rings, top - band, pitch, typeface, staggered)
    children = (
        Group("object", tuple(_object(detail, cut, reach, shown)), f"object-view-{cut.of.number}"),
        *_drawn_strings(cut, strings, (top - band, left - left_out)),
        *balloons(cut.of.number, shown, numbers, column),
    )
    height = top + drop + _foot(detail.of) + strings.height_below + 1.0
    right = rings + 2 * RING + (STAGGER if staggered else 0.0)
    return Block(right, height, (_view(detail, scale, children),))


def _standing_out(cut: Cut) -> float:
    """How far mouldings or a bottom stand out from a face [mm]."""
    profile, trim = cut.of.profile, cut.of.trim
    crown = ZERO if trim.crown is None else trim.crown.projection.value
    mouldings = max(
        standing_behind(FlatPlace.CEILING, trim.flats) + crown,
        standing_behind(FlatPlace.BOTTOM_EDGE, trim.flats),
    )
    bottom = profile.overall_width.value - profile.finished_width.value
    return cut.on_paper(max(mouldings, bottom / profile.sides))


def _placed(
    detail: DetailOf, bare: Cut, written_as: tuple[SheetWording, Typeface], spare: float
) -> _Strings:
    """The strings about a section; those under it keep `spare` [mm] for balloons further down."""
    wording, typeface = written_as
    chains = above(detail), beside(detail), below(detail)
    words = written(bare, wording, [one for side in chains for one in side])
    return _Strings(
        *(
            clear_figures(
                place_strings([words.string(one, far=far) for one in side], typeface, out), typeface
            )
            for side, far, out in zip(chains, (False, False, True), (0.0, 0.0, spare), strict=True)
        )
    )


def _drawn_strings(cut: Cut, strings: _Strings, corner: tuple[float, float]) -> Iterator[Group]:
    """The strings on paper; `corner` is the upper edge and the left edge of what is drawn."""
    upper, left = corner
    lowest = cut.top + cut.on_paper(cut.of.profile.drop.value)
    for one in strings.above:
        yield drawn_string(one, Axis("x", upper, cut.left), 0.8)
    for one in strings.beside:
        yield drawn_string(one, Axis("y", left, -lowest), 0.8)
    for one in strings.below:
        axis = Axis("x", lowest + _foot(cut.of), cut.left, far=True)
        yield drawn_string(one, axis, 0.8 - _foot(cut.of))


def _foot(of: SectionOf) -> float:
    """How far what is drawn goes on below the lowest edge: a wall does [mm]."""
    return WALL_SHOWN if of.at_wall else 0.0


def _object(
    detail: DetailOf, cut: Cut, reach: Reach, shown: Sequence[ShownPart]
) -> Iterator[Element]:
    """Everything that is cut, each part in a group of its own, then the line the room sees."""
    wall = wall_corners(detail, cut)
    if wall is not None:
        yield Group("wall", hatched(EXISTING_RISING, wall))
    for part in shown:
        if part.outlines:
            yield _part(part, cut.ratio)
    yield Group("room-side", _room_line(detail.of, cut, reach, wall is not None))


def _part(shown: ShownPart, ratio: Fraction) -> Group:
    """One part: its hatch, its outline where it is cut, and dashed where it lies elsewhere."""
    part, hatch = shown.part, shown.hatch
    if hatch is not None:
        hatch = replace(hatch, pitch=hatch.pitch * WIDER_HATCH.get(ratio, 1.0))
    hatches = [
        each for corners in shown.outlines for each in (hatched(hatch, corners) if hatch else ())
    ]
    lines = [Polyline(corners, style.CUT, closed=True) for corners in shown.outlines]
    ghosts = [Polyline(corners, style.HIDDEN, closed=True) for corners in shown.ghosts]
    sizes = {"thickness-mm": part.thickness, "width-mm": part.width}
    data = {name: decimal_mm(size) for name, size in sizes.items() if size is not None}
    told = {"part": part.name, "substance": hatch.substance.name.lower() if hatch else ""}
    children: tuple[Element, ...] = (*hatches, *lines, *ghosts)
    return Group("profile-part", children, title=part.words, data={**told, **data})


def _room_line(of: SectionOf, cut: Cut, reach: Reach, at_wall: bool) -> tuple[Element, ...]:
    """What is seen from the room in one heavy line, and the face of the wall below it."""
    right = room_side(of)
    line = [Pt(reach.right, cut.spot(*right[0]).y), *cut.placed(right)]
    if at_wall:
        foot = line[-1]
        line.append(foot.moved(0.0, WALL_SHOWN))
    else:
        line.extend(cut.placed(mirrored(of, right)))
        line.append(Pt(reach.left, line[-1].y))
    return (Polyline(tuple(line), style.WALL),)


def _view(detail: DetailOf, scale: Scale, children: tuple[Element, ...]) -> Group:
    """All that belongs to a profile's view, under its number and scale."""
    of = detail.of
    return Group(
        "view",
        children,
        id=f"view-{of.number}",
        title=f"Beam profile {of.profile.id}",
        data={
            "view": "profile-detail",
            "profile": of.profile.id,
            "scale": str(scale.ratio),
            "scale-text": scale.text,
        },
    )
