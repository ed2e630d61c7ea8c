"""What is put on by the area: insulation, the skin under joists, primer and paint."""

from collections.abc import Iterator, Mapping, Sequence
from fractions import Fraction

from lacunar.layout.outline_records import PartialCoffer
from lacunar.layout.records import Coffer, ElementKind, Layout, RunLayout
from lacunar.measure.figure import NumberFigure, Operand, Rule
from lacunar.measure.length import Length
from lacunar.model.fixing import BetweenJoists
from lacunar.model.moulding import FlatPlace
from lacunar.model.room import RunName
from lacunar.model.take_off import Coverage, FinishKind, InsulationOver
from lacunar.takeoff.part_records import Part, PartKind
from lacunar.takeoff.quantities.quantity_records import (
    FOOT,
    Item,
    Quantity,
    QuantityKind,
    QuantityUnit,
    Terms,
    UsedFor,
    needed,
)

WITH_CUT = Rule("openings of coffers, whole ones and those that walls cut", "whole + cut")
SEEN_WITH_CUT = Rule("what is seen of whole coffers, and of cut ones", "whole + cut")
ROOM = Rule("area of the room", "length * width / (foot * foot)")
ALL_PAINTED = Rule("area to be painted, in all", "beams + mouldings + coffers")
GALLONS = Rule("gallons: area by coats over coverage", "area * coats / square_feet_per_gallon")

BARE = Rule("painted undersides: the room but for the coffers", "room - coffers")

_RECTANGLES = "count * length * width"
_IN_SQUARE_FEET = " / (foot * foot)"
_NONE = Fraction(0)
Sizes = dict[tuple[Length, Length], int]


def surfaces(layout: Layout, parts: Sequence[Part]) -> Iterator[Quantity]:
    """Turn a ceiling into areas and what covers them."""
    yield from _skin(layout)
    yield from _insulation(layout)
    if layout.ceiling.take_off.finish.kind is not FinishKind.NONE:
        yield from _finish(layout, parts)


def _room(layout: Layout) -> NumberFigure:
    if layout.outlined is not None:
        return layout.outlined.area
    if layout.followed is not None:
        return layout.followed.room
    length, width = layout.length.span.at_start.value, layout.width.span.at_start.value
    area = (length / FOOT) * (width / FOOT)
    return ROOM.gives(area, length=length, width=width, foot=FOOT)


def _skin(layout: Layout) -> Iterator[Quantity]:
    """Plywood over the whole ceiling, where that is what carries beams between joists."""
    if any(line.carried_by is BetweenJoists.SKIN for line in layout.backing.lines):
        item = Item(
            QuantityKind.SHEET_AREA, "skin under joists", UsedFor.SKIN, QuantityUnit.SQUARE_FOOT
        )
        yield needed(item, _room(layout), layout.ceiling.take_off.waste.sheets)


def _insulation(layout: Layout) -> Iterator[Quantity]:
    over = layout.ceiling.take_off.insulation
    if over is InsulationOver.NONE:
        return
    used_for = UsedFor.ROOM if over is InsulationOver.ROOM else UsedFor.COFFERS
    need = _room(layout)
    if over is InsulationOver.COFFERS:
        need = _openings(layout)
    item = Item(QuantityKind.INSULATION, "insulation", used_for, QuantityUnit.SQUARE_FOOT)
    yield needed(item, need, layout.ceiling.take_off.waste.finish)


def _add(sizes: Sizes, size: tuple[Length, Length], count: int = 1) -> None:
    sizes[size] = sizes.get(size, 0) + count


def _area(name: str, sizes: Sizes, *, approximate: bool = False) -> NumberFigure:
    """So many rectangles added up, in square feet."""
    if not sizes:
        return Rule(name, "0").gives(_NONE)
    area = sum((_square_feet(size) * count for size, count in sizes.items()), _NONE)
    terms = Terms(_RECTANGLES, _rows(sizes))
    return terms.figure(name, _IN_SQUARE_FEET, area, approximate=approximate, foot=FOOT)


def _rows(sizes: Sizes) -> list[Mapping[str, Operand]]:
    return [
        {"count": count, "length": length, "width": width}
        for (length, width), count in sizes.items()
    ]


def _square_feet(size: tuple[Length, Length]) -> Fraction:
    return (size[0] / FOOT) * (size[1] / FOOT)


def _finish(layout: Layout, parts: Sequence[Part]) -> Iterator[Quantity]:
    take_off = layout.ceiling.take_off
    finish, share = take_off.finish, take_off.waste.finish
    painted = {
        UsedFor.BEAMS: _beams(layout),
        UsedFor.MOULDINGS: _mouldings(parts),
        UsedFor.COFFERS: _coffers(layout),
    }
    for used_for, figure in painted.items():
        if not figure.value:
            continue
        item = Item(QuantityKind.PAINTED_AREA, used_for.value, used_for, QuantityUnit.SQUARE_FOOT)
        yield needed(item, figure, _NONE)
    approximate = any(figure.approximate for figure in painted.values())
    gives = ALL_PAINTED.approximates if approximate else ALL_PAINTED.gives
    area = gives(
        sum((figure.value for figure in painted.values()), _NONE),
        **{used_for.value: figure.value for used_for, figure in painted.items()},
    )
    if finish.kind is FinishKind.PRIMER_AND_PAINT:
        need = _gallons(area, finish.primer_coats, finish.primer_coverage)
        yield needed(_can(QuantityKind.PRIMER), need, share)
    need = _gallons(area, finish.paint_coats, finish.paint_coverage)
    yield needed(_can(QuantityKind.PAINT), need, share)


def _can(kind: QuantityKind) -> Item:
    return Item(kind, kind.value, UsedFor.ALL, QuantityUnit.GALLON)


def _gallons(area: NumberFigure, coats: int, coverage: Coverage) -> NumberFigure:
    each = coverage.square_feet_per_gallon
    gives = GALLONS.approximates if area.approximate else GALLONS.gives
    return gives(
        area.value * coats / each, area=area.value, coats=coats, square_feet_per_gallon=each
    )


def _beams(layout: Layout) -> NumberFigure:
    """Undersides, which are all of the room but the coffers, and sides as far as they are seen."""
    room, openings = _room(layout).value, _openings(layout).value
    profiles = layout.profile_of
    seen = {cover.profile: cover.side_left for cover in layout.mouldings.sides}
    sides: Sizes = {}
    for coffer in layout.coffers:
        for along, beam_id in _sides(layout, coffer):
            profile = profiles[beam_id]
            _add(sides, (along, seen.get(profile.id, profile.exposed_side).value))
    for cut in layout.outlined.partial_coffers if layout.outlined else ():
        for side in cut.all_sides:
            if side.against in profiles:
                profile = profiles[side.against]
                exposed = seen.get(profile.id, profile.exposed_side).value
                _add(sides, (side.length.value, exposed))
    if not sides:
        return BARE.gives(room - openings, room=room, coffers=openings)
    area = sum((_square_feet(size) * count for size, count in sides.items()), room - openings)
    return Terms(_RECTANGLES, _rows(sides)).figure(
        "painted beams: sides round the coffers as far as they are seen, and undersides, which are"
        " the room but for the coffers",
        f"{_IN_SQUARE_FEET} + room - coffers",
        area,
        approximate=layout.followed is not None or any(s.approximate for s in seen.values()),
        foot=FOOT,
        room=room,
        coffers=openings,
    )


def _openings(layout: Layout) -> NumberFigure:
    """The coffers' clear openings together, with those that walls cut."""
    whole = _whole_openings(layout)
    if layout.outlined is None or not layout.outlined.partial_coffers:
        return whole
    areas = [coffer.area for coffer in layout.outlined.partial_coffers]
    cut = sum((area.value for area in areas), _NONE)
    tell = WITH_CUT.approximates if any(a.approximate for a in areas) else WITH_CUT.gives
    return tell(whole.value + cut, whole=whole.value, cut=cut)


def _whole_openings(layout: Layout) -> NumberFigure:
    if layout.followed is not None:
        return layout.followed.openings
    openings: Sizes = {}
    for coffer in layout.coffers:
        _add(openings, (coffer.length.value, coffer.width.value))
    return _area("area of the coffers", openings)


def _sides(layout: Layout, coffer: Coffer) -> Iterator[tuple[Length, str]]:
    """The sides of a coffer that are beams': how long each is, and whose."""
    w1, w2, w3, w4 = _lengths(layout, coffer)
    for run, number, lengths in (
        (layout.run(RunName.LENGTH), coffer.column, (w1, w3)),
        (layout.run(RunName.WIDTH), coffer.row, (w4, w2)),
    ):
        for beam_id, along in zip(_beside(run, number), lengths, strict=True):
            if beam_id is not None:
                yield along, beam_id


def _lengths(layout: Layout, coffer: Coffer) -> tuple[Length, ...]:
    """A coffer's sides towards W1 to W4; they are unlike where the grid follows the walls."""
    if layout.followed is None or layout.crooked is None:
        length, width = coffer.length.value, coffer.width.value
        return width, length, width, length
    mode = next(each for each in layout.crooked.modes if each.chosen)
    own = next(each for each in mode.coffers if each.id == coffer.id)
    return tuple(side.value for side in own.sides)


def _beside(run: RunLayout, number: int) -> Iterator[str | None]:
    """The beams on both sides of a column or row, counted from 1; None at a bare wall."""
    at = [i for i, element in enumerate(run.elements) if element.kind is ElementKind.COFFER]
    place = at[number - 1]
    for beside in (place - 1, place + 1):
        yield run.elements[beside].id if 0 <= beside < len(run.elements) else None


def _mouldings(parts: Sequence[Part]) -> NumberFigure:
    """Crown and flat mouldings: their face by their length."""
    sizes: Sizes = {}
    approximate = False
    for part in parts:
        if part.kind in (PartKind.CROWN, PartKind.FLAT_MOULDING) and part.width is not None:
            _add(sizes, (part.length.value, part.width.value), part.quantity)
            approximate |= part.length.approximate or part.width.approximate
    return _area("painted mouldings: face by length", sizes, approximate=approximate)


def _coffers(layout: Layout) -> NumberFigure:
    """What is seen of the panels, boards or the ceiling between the mouldings."""
    sizes: Sizes = {}
    approximate = False
    for trim in layout.mouldings.coffers:
        _add(sizes, (trim.seen_length.value, trim.seen_width.value), len(trim.coffers))
        approximate |= trim.seen_length.approximate or trim.seen_width.approximate
    whole = _area("painted coffers: their seen openings", sizes, approximate=approximate)
    cut = layout.outlined.partial_coffers if layout.outlined else ()
    if not cut:
        return whole
    seen = sum((_seen_of_cut(coffer, layout) for coffer in cut), _NONE)
    return SEEN_WITH_CUT.approximates(whole.value + seen, whole=whole.value, cut=seen)


def _seen_of_cut(coffer: PartialCoffer, layout: Layout) -> Fraction:
    """What is seen of a cut coffer [ft2]: without what mouldings at the ceiling cover.

    Each of these covers a trapezoid along its side.
    """
    crown, covered = layout.mouldings.crown, _NONE
    flats = layout.ceiling.flat_mouldings
    out = {flat.name: flat.thickness for flat in flats if flat.at is FlatPlace.CEILING}
    for side in coffer.all_sides:
        if crown is not None and side.long_point is not None and side.short_point is not None:
            middle = (side.long_point.value + side.short_point.value) / 2
            covered += _square_feet((middle, crown.projection.value))
        for strip in side.strips:
            if strip.has_room and strip.moulding in out:
                middle = (strip.long_point.value + strip.short_point.value) / 2
                covered += _square_feet((middle, out[strip.moulding]))
    return max(coffer.area.value - covered, _NONE)
