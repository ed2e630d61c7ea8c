"""Tables beside the backing plan: what backing is of, its pieces and forms, and what holds it."""

from collections import Counter
from collections.abc import Iterator, Mapping, Sequence
from fractions import Fraction

from lacunar.drawing.annotation import Block
from lacunar.drawing.run_ends import RunEnd
from lacunar.drawing.sheets.word_tables import (
    TableSpace,
    WordColumn,
    counts_column,
    in_blocks,
    lengths_column,
)
from lacunar.drawing.wording import SheetWording
from lacunar.layout.backing.lines import Side, backing_stretches
from lacunar.layout.backing.weights import KILOGRAMS
from lacunar.layout.backing_records import BackingLine, JoistRelation, Weights
from lacunar.layout.records import Beam, BeamProfile, Layout, WallBeam
from lacunar.measure.length import Length
from lacunar.measure.units import Units
from lacunar.model.wall_kind import WallKind

MOST_SIZES = 60
"""Pieces of more sizes than these are a cut list, which has a sheet of its own."""
_FORMS = (
    ("crosses", "CROSSES"),
    ("tees", "TEES"),
    ("ells", "ELLS"),
    ("wall_ends", "WALL ENDS"),
    ("soffit_ends", "SOFFIT ENDS"),
    ("mid_spans", "MIDDLES"),
    ("in_all", "IN ALL"),
)


def backing_tables(layout: Layout, space: TableSpace, wording: SheetWording) -> Iterator[Block]:
    """All tables of the sheet that the layout has something for."""
    yield from _sections(layout, space, wording)
    yield from _lines(layout, space, wording)
    yield from _pieces(layout, space, wording)
    yield from _forms(layout, space)
    weights = layout.backing.weights
    if weights is not None:
        yield from _weights(weights, space, wording)
        yield from _holds(layout, space, wording)


def _sections(layout: Layout, space: TableSpace, wording: SheetWording) -> Iterator[Block]:
    """How thick and how wide the backing of each profile is, and how far in from its face."""
    found = [
        (profile, part)
        for profile in layout.profiles
        for part in profile.parts
        if part.name == "backing"
    ]
    if not found:
        return
    columns = (
        WordColumn("PROFILE", tuple(profile.id for profile, _ in found)),
        _details("T", "thickness", [part.thickness.value for _, part in found], wording),
        _details("W", "width", [part.width.value for _, part in found], wording),
        _details(
            "OFFSET",
            "offset",
            [each.backing_offset.value for each, _ in found if each.backing_offset],
            wording,
        ),
        WordColumn("BEAMS", tuple(str(len(profile.used_by)) for profile, _ in found)),
    )
    yield from in_blocks("backing-section", "backing-sections", "BACKING", columns, space)


def _details(head: str, name: str, lengths: Sequence[Length], wording: SheetWording) -> WordColumn:
    """Sizes as they are printed, to the finer step that holds them exactly."""
    exact = tuple(wording.exact(wording.detailed(length)) for length in lengths)
    return WordColumn(head, tuple(map(wording.detail, lengths)), name, exact)


def _lines(layout: Layout, space: TableSpace, wording: SheetWording) -> Iterator[Block]:
    """Each line of backing: where it is, what it is fixed to, blocks and fasteners."""
    lines = layout.backing.lines
    if not lines:
        return
    known = layout.backing.joists is not None
    walls = {beam.id: beam.wall for beam in layout.wall_beams}
    columns = [WordColumn("LINE", tuple(_name(line, walls) for line in lines))]
    if layout.followed is None:
        places = [RunEnd.of(layout, ln.on, "start").from_wall("", ln.position) for ln in lines]
        columns.append(lengths_column("MIDDLE", "middle", places, wording))
    columns.append(WordColumn("FIXED TO", tuple(_fixed_to(line, wording) for line in lines)))
    if any(line.blocks for line in lines):
        columns.append(counts_column("BLOCKS", "blocks", [_blocks(line) for line in lines]))
    if known:
        columns.append(counts_column("DRIVEN", "fasteners", [_fasteners(line) for line in lines]))
    yield from in_blocks("backing-line", "backing-lines", "WHERE IT IS FIXED", columns, space)


def _name(line: BackingLine, walls: Mapping[str, str]) -> str:
    """The beam, with the wall it stands at, or which side of a casing it is."""
    if line.side != "middle":
        return f"{line.beam} {line.side.upper()}"
    return f"{line.beam}, {walls[line.beam]}" if line.beam in walls else line.beam


def _fixed_to(line: BackingLine, wording: SheetWording) -> str:
    places = sum(piece.count.value for piece in line.pieces)
    if line.relation is JoistRelation.ACROSS:
        return f"{places} JOISTS" if places != 1 else "1 JOIST"
    if line.relation is JoistRelation.ON_JOIST:
        return f"{line.joist}, {wording.detail(line.bearing.value) if line.bearing else ''} IN"
    if line.bay is None:
        return f"AT {places} PLACES"
    near, far = line.bay.near or "WALL", line.bay.far or "WALL"
    return f"{near} TO {far}"


def _blocks(line: BackingLine) -> int:
    return line.blocks.value if line.blocks else 0


def _fasteners(line: BackingLine) -> int:
    return sum(piece.fasteners.value for piece in line.pieces if piece.fasteners)


def _pieces(layout: Layout, space: TableSpace, wording: SheetWording) -> Iterator[Block]:
    """The clear lengths of backing, those alike counted."""
    counted = Counter(_lengths(layout))
    if not counted:
        return
    ordered = sorted(counted.items(), key=lambda each: (each[0][0], -each[0][1]))
    shown = ordered[:MOST_SIZES]
    title = "PIECES OF BACKING"
    if len(ordered) > MOST_SIZES:
        title = f"PIECES OF BACKING, {MOST_SIZES} OF {len(ordered)} SIZES"
    columns = (
        WordColumn("PROFILE", tuple(name for (name, _), _ in shown)),
        lengths_column("LENGTH", "length", [length for (_, length), _ in shown], wording),
        counts_column("PIECES", "pieces", [count for _, count in shown]),
    )
    yield from in_blocks("backing-piece", "backing-pieces", title, columns, space)


def _lengths(layout: Layout) -> Iterator[tuple[str, Length]]:
    """Every clear length by its profile, and whether it is a cleat's."""
    profiles = layout.profile_of
    walls = (beam for beam in layout.wall_beams if beam.kind is not WallKind.SOFFIT)
    every: tuple[Beam | WallBeam, ...] = (*layout.beams, *walls)
    for beam in every:
        profile = profiles[beam.id]
        for side, _, clears in backing_stretches(beam, profile):
            name = _of(profile, side)
            for clear in clears if name else ():
                yield name, clear.length.value


def _of(profile: BeamProfile, side: Side) -> str:
    """What a piece is of: nothing where a flat beam is fixed by itself."""
    if side != "middle":
        return f"{profile.id} CLEAT"
    return profile.id if any(part.name == "backing" for part in profile.parts) else ""


def _forms(layout: Layout, space: TableSpace) -> Iterator[Block]:
    """Backing as forms to be built, by where each stands in the grid."""
    forms = layout.backing.forms
    counted = [(words, getattr(forms, name).value) for name, words in _FORMS]
    shown = [(words, count) for words, count in counted if count]
    if shown:
        columns = (
            WordColumn("FORM", tuple(words for words, _ in shown)),
            counts_column("HOW MANY", "forms", [count for _, count in shown]),
        )
        yield from in_blocks("backing-form", "backing-forms", "FORMS", columns, space)


def _weights(weights: Weights, space: TableSpace, wording: SheetWording) -> Iterator[Block]:
    """What hangs, by the foot or the meter of each profile."""
    metric = wording.units is Units.MILLIMETER
    by_length = [
        each.kilograms_per_meter.value if metric else each.pounds_per_foot.value
        for each in weights.beams
    ]
    if by_length:
        columns = (
            WordColumn("PROFILE", tuple(each.profile for each in weights.beams)),
            _decimals("KG PER METER" if metric else "LB PER FOOT", "weight", by_length),
        )
        yield from in_blocks(
            "backing-weight", "backing-weights", "WEIGHT THAT HANGS", columns, space
        )


def _holds(layout: Layout, space: TableSpace, wording: SheetWording) -> Iterator[Block]:
    """What one fastener carries of each profile, and its reference value, for whoever judges."""
    holds = layout.backing.holds
    metric = wording.units is Units.MILLIMETER
    in_unit, unit = (KILOGRAMS, "KG") if metric else (Fraction(1), "LB")
    if holds:
        columns = (
            WordColumn("PROFILE", tuple(hold.profile for hold in holds)),
            WordColumn("DEEP", tuple(wording.detail(hold.penetration.value) for hold in holds)),
            _decimals(
                f"CARRIES, {unit}", "carries", [each.load_pounds.value * in_unit for each in holds]
            ),
            _decimals(
                f"HOLDS, {unit}",
                "holds",
                [each.withdrawal_pounds.value * in_unit for each in holds],
            ),
        )
        yield from in_blocks("backing-hold", "backing-holds", "EACH FASTENER", columns, space)


def _decimals(head: str, name: str, numbers: list[Fraction]) -> WordColumn:
    texts = tuple(f"{float(round(number, 1)):.1f}" for number in numbers)
    return WordColumn(head, texts, name, texts)
