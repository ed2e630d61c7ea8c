"""Counts a layout's pieces apart from the code that makes parts of them, and compares.

What is counted here is read off the layout's own lists, one by one.
"""

from collections import Counter
from collections.abc import Iterator

from lacunar.layout.outline_records import PartialCoffer
from lacunar.layout.records import Layout
from lacunar.measure.length import Length
from lacunar.model.boards import BoardRun
from lacunar.model.moulding import FlatPlace
from lacunar.model.room import RunName
from lacunar.takeoff.part_records import Part, PartKind

Counted = Counter[tuple[str, ...]]

_OF_BEAMS = (PartKind.SIDE, PartKind.BOTTOM, PartKind.UPPER_BOARD)
_OF_MOULDINGS = (PartKind.CROWN, PartKind.FLAT_MOULDING)


def unlike(layout: Layout, parts: tuple[Part, ...]) -> list[str]:
    """A line for each count of a layout that its parts do not have, or have otherwise."""
    found = []
    for what, told, counted in (
        ("boards of beams", _told_boards(layout), _beam_places(parts)),
        ("boards at crooked walls", _told_at_walls(layout), _at_walls(layout, parts)),
        ("mouldings", _told_mouldings(layout), _moulding_places(parts)),
        ("nailers", _told_nailers(layout), _in_coffers(parts, PartKind.NAILER)),
        ("panels", _told_panels(layout), _in_coffers(parts, PartKind.PANEL)),
        ("fields of boards", _told_fields(layout), _in_coffers(parts, PartKind.BOARD)),
        ("blocks", _told_blocks(layout), _in_coffers(parts, PartKind.BLOCKING)),
        ("strips", _told_strips(layout), _in_coffers(parts, PartKind.SEAM_STRIP)),
    ):
        if told != counted:
            found.append(f"{what}: {(told - counted) or ''} missing, {(counted - told) or ''} more")
    return found


def _told_boards(layout: Layout) -> Counted:
    square = Counter(
        (piece.part, place.beam, place.side or "", str(place.start), str(place.end))
        for piece in layout.pieces
        for place in piece.places
    )
    # Each beam at an angled wall has one side, and a bottom; a flat one its boards.
    angled = Counter(
        (part.name, beam.id, "", "None", "None")
        for beam in (layout.outlined.angled_beams if layout.outlined else ())
        for part in layout.profile(beam.profile).parts
        if part.name != "backing"
        for _ in range(part.quantity)
    )
    return square + angled


def _told_at_walls(layout: Layout) -> Counted:
    """What lies flat in beams at walls of a crooked room, with its width at both ends.

    Read off what the wall's strip is wider there than the beam, between the ends of the clear line.
    """
    crooked, found = layout.crooked, Counter[tuple[str, ...]]()
    if crooked is None or crooked.mode != "keep_square":
        return found
    strips = {wall.strip: wall for wall in crooked.walls}
    widths = {beam.id: beam.width.value for beam in layout.wall_beams}
    clear = {run.run: run.clear.value for run in crooked.runs}
    for piece in layout.pieces:
        for place in piece.places if piece.part in ("bottom", "upper_board") else ():
            wall = strips.get(place.beam)
            if wall is None:
                continue
            along = clear[RunName.WIDTH if wall.wall in ("W1", "W3") else RunName.LENGTH]
            straight = next(
                part.width.value
                for part in layout.profile_of[place.beam].parts
                if part.name == piece.part
            )
            start, end = (
                straight + there.value - widths[place.beam]
                for there in (wall.at_start, wall.at_end)
            )
            there = sorted(
                max(start + (end - start) * (at / along), Length.of_inches(0))
                for at in (place.start, place.end)
            )
            found[place.beam, piece.part, *(str(each) for each in there)] += 1
    return found


def _at_walls(layout: Layout, parts: tuple[Part, ...]) -> Counted:
    """The parts in beams at walls of a crooked room; those that do not taper have one width."""
    if layout.crooked is None or layout.crooked.mode != "keep_square":
        return Counter()
    strips = {wall.strip for wall in layout.crooked.walls}
    found: Counted = Counter()
    for part in parts:
        for place in part.places if part.kind in (PartKind.BOTTOM, PartKind.UPPER_BOARD) else ():
            if place.of[0] in strips and part.width is not None:
                ends = [end.width or part.width.value for end in (part.left, part.right)]
                told = (str(each) for each in sorted(ends))
                found[place.of[0], part.kind.value, *told] += place.quantity
    return found


def _cut(layout: Layout) -> tuple[PartialCoffer, ...]:
    return layout.outlined.coffers_as_cut if layout.outlined else ()


def _beam_places(parts: tuple[Part, ...]) -> Counted:
    return Counter(
        (part.kind.value, place.of[0], place.at, str(place.start), str(place.end))
        for part in parts
        if part.kind in _OF_BEAMS
        for place in part.places
        for _ in range(place.quantity)
    )


def _told_mouldings(layout: Layout) -> Counted:
    whole = Counter(
        (piece.moulding, coffer, wall, str(piece.long_point.value))
        for trim in layout.mouldings.coffers
        for coffer in trim.coffers
        for piece in trim.pieces
        for wall in piece.toward
    )
    cut = Counter(
        ("Crown", coffer.id, str(number), str(side.cut_from.value))
        for coffer in _cut(layout)
        for number, side in enumerate(coffer.all_sides, start=1)
        if side.cut_from is not None
    )
    return whole + cut + _told_strips_of_cut(layout)


def _told_strips_of_cut(layout: Layout) -> Counted:
    """Flat mouldings by what a side lies against: at the ceiling all round, else on beams only."""
    flats, beams = layout.ceiling.flat_mouldings, layout.profile_of
    found: Counted = Counter()
    for coffer in _cut(layout):
        for number, side in enumerate(coffer.all_sides, start=1):
            lengths = {strip.moulding: strip.cut_from for strip in side.strips if strip.has_room}
            short = {strip.moulding for strip in side.strips if not strip.has_room}
            for flat in flats:
                due = flat.at is FlatPlace.CEILING or side.against in beams
                if due and flat.name not in short:
                    found[flat.name, coffer.id, str(number), str(lengths[flat.name].value)] += 1
    return found


def _moulding_places(parts: tuple[Part, ...]) -> Counted:
    return Counter(
        (part.name, place.of[0], place.at, str(part.length.value))
        for part in parts
        if part.kind in _OF_MOULDINGS
        for place in part.places
        for _ in range(place.quantity)
    )


def _in_coffers(parts: tuple[Part, ...], kind: PartKind) -> Counted:
    found: Counted = Counter()
    for part in parts:
        for place in part.places if part.kind is kind else ():
            found[place.of] += place.quantity
    return found


def _told_nailers(layout: Layout) -> Counted:
    found: Counted = Counter()
    for trim in layout.mouldings.coffers:
        for coffer in trim.coffers:
            found[coffer,] += sum(nailer.quantity for nailer in trim.nailers)
    section = layout.mouldings.crown
    for cut in _cut(layout) if section is not None and section.nailer is not None else ():
        short = [s for side in cut.all_sides for s in side.strips if not s.has_room]
        found[cut.id,] += len(cut.all_sides) - sum(s.moulding == "Nailer" for s in short)
    return +found


def _told_panels(layout: Layout) -> Counted:
    whole = Counter(
        {
            (coffer,): (len(panel.seams_along_length) + 1) * (len(panel.seams_along_width) + 1)
            for panel in layout.panels
            for coffer in panel.coffers
        }
    )
    return whole + Counter((coffer.id,) for coffer in _cut(layout) if coffer.panel_length)


def _told_fields(layout: Layout) -> Counted:
    found: Counted = Counter()
    for field in layout.boards.fields if layout.boards else ():
        assert layout.boards is not None
        if layout.boards.run is BoardRun.THROUGH:
            found[field.coffers] += field.boards.value
            continue
        for coffer in field.coffers:
            found[coffer,] += field.boards.value // len(field.coffers)
    for cut in _cut(layout):
        found[cut.id,] += sum(course.boards for course in cut.courses)
    return +found


def _told_blocks(layout: Layout) -> Counted:
    found: Counted = Counter()
    for line in layout.backing.lines:
        found[line.beam,] += line.blocks.value if line.blocks and line.bay else 0
    return +found


def _told_strips(layout: Layout) -> Counted:
    return Counter(
        (coffer,)
        for panel in layout.panels
        for bearing in panel.seam_bearings
        if bearing.backing is not None
        for coffer in panel.coffers
    )


def backing_of(layout: Layout) -> Length:
    """The backing and cleats of a layout whose lines are told, end to end; flat beams have none."""
    lengths = [
        piece.length.value
        for line in layout.backing.lines
        if line.side != "middle" or _has_backing(layout, line.beam)
        for piece in line.pieces
    ]
    return sum(lengths, Length.of_inches(0))


def _has_backing(layout: Layout, beam: str) -> bool:
    return any(part.name == "backing" for part in layout.profile_of[beam].parts)


def stretches(parts: tuple[Part, ...], *kinds: PartKind) -> Iterator[tuple[str, Length, Length]]:
    """Where parts lie along beams: the beam with the side, from, to."""
    for part in parts:
        for place in part.places if part.kind in kinds else ():
            if place.start is not None and place.end is not None:
                yield f"{place.of[0]} {place.at}", place.start, place.end
