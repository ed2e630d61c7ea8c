"""Running marks: every place to be put on a pole, floor or ceiling, rounded once from the datum."""

from collections.abc import Iterator
from dataclasses import dataclass, replace
from typing import Literal

from lacunar.layout.records import ElementKind, Mark, MarkKind, RunMarks
from lacunar.layout.runs.frame import RunFrame, datum
from lacunar.layout.runs.run_division import BeamStretch, DividedRun, WallStretch
from lacunar.layout.runs.run_records import DividedEnds, member_faces
from lacunar.measure.figure import LengthFigure, Rule
from lacunar.measure.rounding import Step, round_to
from lacunar.model.beams import Box
from lacunar.model.room import END_WALL, START_WALL

FROM_FRAMING = Rule(
    "place from the framing: from the datum, plus the start wall's finish",
    "from_datum + start_finish",
)
FROM_WALL = Rule(
    "place from the wall at this end: from the clear line, and how far the wall lies before it",
    "from_clear + before",
)
BACKING_NEAR = Rule(
    "near edge of the backing: inside the side and half the play", "near + side + allowance / 2"
)
BACKING_FAR = Rule(
    "far edge of the backing: inside the side and half the play", "far - side - allowance / 2"
)
WALL_BACKING_NEAR = Rule(
    "edge of the backing of a wall beam: inside its side and the play", "near + side + allowance"
)
WALL_BACKING_FAR = Rule(
    "edge of the backing of a wall beam: inside its side and the play", "far - side - allowance"
)

Side = Literal["near", "far", "at"]
End = Literal["start", "end"]


@dataclass(frozen=True, slots=True)
class _Place:
    """A place to be marked."""

    kind: MarkKind
    of: str
    side: Side
    exact: LengthFigure


def run_marks(ends: DividedEnds, box: Box | None, step: Step) -> tuple[RunMarks, RunMarks]:
    """Turn a divided run into its marks at both ends, in order from the datum.

    Parameters: `ends`; `box` of the family that divides the run, None where only the width of its
    beams is known and nothing of their backing; `step` marks are rounded to. Each mark is the exact
    place rounded once, a tie away from the datum; from framing, the exact place from there rounded
    once. A cased beam's member is marked in place of backing, at the ends of the run where it
    reaches the wall.
    """
    ids = [beam_id for beam_id, _, _ in ends.beams]
    frame = ends.frame
    one = _places(frame, (ends.at_start, "start"), (box, ids))
    start = _marks(frame, _from_wall(frame, one, 0), step)
    end = start
    unlike = ends.at_end is not ends.at_start or any(map(_differs, ends.at_end.beams))
    if unlike or frame.unlike_ends:
        other = _places(frame, (ends.at_end, "end"), (box, ids))
        end = _marks(frame, _from_wall(frame, other, 1), step)
    return RunMarks(frame.name, "start", start), RunMarks(frame.name, "end", end)


def _from_wall(frame: RunFrame, places: Iterator[_Place], end: Literal[0, 1]) -> Iterator[_Place]:
    """Places from the wall's face at one end, where it lies before the clear line."""
    before = (frame.before_start, frame.before_end)[end]
    span = (frame.span_at_start, frame.span_at_end)[end]
    if before is None or span is None or span.value == frame.span.value:
        yield from places
        return
    for place in places:
        if place.kind is MarkKind.WALL:
            yield replace(place, exact=span) if place.exact.value else place
            continue
        exact, rough = place.exact, before.approximate or place.exact.approximate
        tell = FROM_WALL.approximates if rough else FROM_WALL.gives
        figure = tell(exact.value + before.value, from_clear=exact.value, before=before.value)
        yield replace(place, exact=figure)


def _differs(beam: BeamStretch) -> bool:
    """Whether a beam's member is not at one place at both walls."""
    member = beam.thing.member if beam.thing else None
    return member is not None and (member.partial or bool(member.skew))


def _marks(frame: RunFrame, places: Iterator[_Place], step: Step) -> tuple[Mark, ...]:
    ordered = sorted(places, key=lambda place: place.exact.value)
    return tuple(_mark(frame, place, step) for place in ordered)


def _mark(frame: RunFrame, place: _Place, step: Step) -> Mark:
    exact, finish = place.exact.value, frame.start_finish
    framing = None
    if finish is not None:
        framing = FROM_FRAMING.gives(exact + finish, from_datum=exact, start_finish=finish)
    return Mark(
        kind=place.kind,
        of=place.of,
        side=place.side,
        exact=place.exact,
        mark=round_to(exact, step),
        from_framing=framing,
        mark_from_framing=None if framing is None else round_to(framing.value, step),
    )


def _places(
    frame: RunFrame, at: tuple[DividedRun, End], beams: tuple[Box | None, list[str]]
) -> Iterator[_Place]:
    (divided, end), (box, ids) = at, beams
    middle = divided.zones[0].start.value
    yield _Place(MarkKind.WALL, START_WALL[frame.name], "at", datum())
    beam_ids = iter(ids)
    for stretch in divided.stretches:
        if isinstance(stretch, WallStretch):
            yield from _at_wall(stretch, box, at_start=stretch.far.value <= middle)
        elif isinstance(stretch, BeamStretch):
            yield from _of_beam(next(beam_ids), (stretch, end), box)
    yield _Place(MarkKind.WALL, END_WALL[frame.name], "at", frame.span)


def _at_wall(stretch: WallStretch, box: Box | None, *, at_start: bool) -> Iterator[_Place]:
    """The face into the room of what stands at a wall, and the edge of its backing behind it."""
    of = stretch.strip.id
    if at_start:
        yield _Place(MarkKind.FACE, of, "far", stretch.far)
    else:
        yield _Place(MarkKind.FACE, of, "near", stretch.near)
    if box is not None and stretch.kind is not ElementKind.SOFFIT:
        yield _wall_backing(stretch, box, at_start=at_start)


def _wall_backing(stretch: WallStretch, box: Box, *, at_start: bool) -> _Place:
    of, side, allowance = stretch.strip.id, box.sides.thickness, box.allowance
    near, far = stretch.near.value, stretch.far.value
    if at_start:
        edge = WALL_BACKING_FAR.gives(
            far - side - allowance, far=far, side=side, allowance=allowance
        )
    else:
        edge = WALL_BACKING_NEAR.gives(
            near + side + allowance, near=near, side=side, allowance=allowance
        )
    return _Place(MarkKind.BACKING, of, "far" if at_start else "near", edge)


def _of_beam(of: str, at: tuple[BeamStretch, End], box: Box | None) -> Iterator[_Place]:
    beam, end = at
    member = beam.thing.member if beam.thing else None
    short = None if member is None else member.starts_at if end == "start" else member.ends_at
    yield _Place(MarkKind.FACE, of, "near", beam.near)
    yield _Place(MarkKind.CENTER, of, "at", beam.center)
    yield _Place(MarkKind.FACE, of, "far", beam.far)
    if member is not None and short is None:
        number = 0 if end == "start" else 1
        near, far = member_faces(beam)[number]
        yield _Place(MarkKind.MEMBER, of, "near", near)
        if beam.thing is not None and beam.thing.member_ends is not None:
            yield _Place(MarkKind.MEMBER_CENTER, of, "at", beam.thing.member_ends[number])
        yield _Place(MarkKind.MEMBER, of, "far", far)
    elif box is not None:
        yield from _backing(of, beam, box)


def _backing(of: str, beam: BeamStretch, box: Box) -> Iterator[_Place]:
    side, allowance = box.sides.thickness, box.allowance
    near, far = beam.near.value, beam.far.value
    inside = side + allowance / 2
    yield _Place(
        MarkKind.BACKING,
        of,
        "near",
        BACKING_NEAR.gives(near + inside, near=near, side=side, allowance=allowance),
    )
    yield _Place(
        MarkKind.BACKING,
        of,
        "far",
        BACKING_FAR.gives(far - inside, far=far, side=side, allowance=allowance),
    )
