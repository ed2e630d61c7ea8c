"""What the cover says of a ceiling in words: its data, and the ids and abbreviations in use."""

from collections.abc import Iterator

from lacunar.drawing.sheets.cover_tables import Told
from lacunar.drawing.sheets.pages import SheetSource
from lacunar.drawing.wording import SheetWording
from lacunar.layout.records import Layout
from lacunar.measure.length import ZERO, Length
from lacunar.measure.units import Units
from lacunar.model.drawing import SheetNumber
from lacunar.model.room import RunName

MOST_PROFILES = 6


def data_lines(source: SheetSource) -> Iterator[Told]:
    """The ceiling in figures: its room, what is in it, its headroom, and what it was made from."""
    layout, wording = source.layout, source.wording
    room = layout.ceiling.room
    crooked = layout.crooked is not None and not layout.crooked.square
    what = "CLEAR" if crooked else "OVER ALL" if layout.outlined else "ROOM"
    for run in RunName:
        span = layout.run(run).span.at_start.value
        label = f"{what}, {run.value.upper()} RUN"
        yield _length(label, f"room-{run.value}", span, wording)
    yield _length("CEILING HEIGHT", "height", room.height, wording)
    yield from _counts(layout)
    yield from _sizes(layout, wording)
    yield from _headroom(layout, wording)
    inches = wording.units is Units.INCH
    yield Told(
        "UNITS",
        "FEET AND INCHES" if inches else "MILLIMETERS",
        "units",
        wording.units.value,
    )
    step = f"{wording.step.text} IN" if inches else wording.step.text.upper()
    yield Told("MARKED TO", step, "step", wording.step.text)
    yield Told("INPUT DIGEST", source.fields.digest, "digest", source.fields.digest)
    if source.fields.revision:
        yield Told("REVISION", source.fields.revision, "revision", source.fields.revision)


def _length(label: str, name: str, length: Length, wording: SheetWording) -> Told:
    return Told(label, wording.length(length), name, wording.exact(length))


def _counts(layout: Layout) -> Iterator[Told]:
    room = layout.outlined
    whole, cut = len(layout.coffers), len(room.partial_coffers) if room else 0
    words = f"{whole} WHOLE, {cut} CUT" if cut else str(whole)
    yield Told("COFFERS", words, "coffers", str(whole + cut))
    yield Told("BEAMS", str(len(layout.beams)), "beams", str(len(layout.beams)))
    at_walls = len(layout.wall_beams) + (len(room.angled_beams) if room else 0)
    yield Told("BEAMS AT WALLS", str(at_walls), "wall-beams", str(at_walls))


def _sizes(layout: Layout, wording: SheetWording) -> Iterator[Told]:
    """Width and drop of each profile, the first few of many."""
    for profile in layout.profiles[:MOST_PROFILES]:
        width, drop = profile.finished_width.value, profile.drop.value
        words = f"{wording.detail(width)} x {wording.detail(drop)} DEEP"
        value = f"{wording.exact(width)} x {wording.exact(drop)}"
        yield Told(f"BEAM {profile.id}", words, profile.id, value)


def _headroom(layout: Layout, wording: SheetWording) -> Iterator[Told]:
    heights = layout.heights
    yield _length("LOWEST HEADROOM", "headroom", heights.worst_height.value, wording)
    short = heights.spare.value < ZERO
    limit = f"{wording.length(heights.limit)}, {'NOT MET' if short else 'MET'}"
    yield Told("HEADROOM LIMIT", limit, "limit", wording.exact(heights.limit))


def abbreviation_lines(source: SheetSource) -> Iterator[Told]:
    """Ids and signs, those alone that this set uses."""
    layout = source.layout
    yield _use("W1", "WALLS, CLOCKWISE FROM THE LEFT")
    yield _use("A1", "COFFERS BY ROW AND COLUMN")
    for run, letters, words in (
        (RunName.LENGTH, "XB", "BEAMS ACROSS THE LENGTH RUN"),
        (RunName.WIDTH, "LB", "BEAMS ACROSS THE WIDTH RUN"),
    ):
        if any(beam.on is run for beam in layout.beams):
            yield _use(letters, words)
    if layout.wall_beams:
        yield _use("WB", "BEAMS AND SOFFITS AT WALLS")
    if layout.profiles:
        yield _use("P1", "BEAM PROFILES")
    numbers = {page.number[:5] for page in source.issued}
    for sheet, letters, words, used in (
        (SheetNumber.CROSSINGS, "K1", "CROSSINGS AND ENDS OF BEAMS", bool(layout.crossings)),
        (SheetNumber.BACKING, "J1", "JOISTS", layout.backing.joists is not None),
    ):
        if used and sheet.value in numbers:
            yield _use(letters, words)
    yield _use("NTS", "NOT TO SCALE")
    yield _use("RING", "DATUM, WHERE BOTH RUNS START")


def _use(letters: str, words: str) -> Told:
    return Told(letters, words, letters, "")
