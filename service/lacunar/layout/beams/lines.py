"""Beams as they meet each other: which runs through where two meet, and which is cut."""

from collections.abc import Callable, Iterator, Mapping, Sequence
from dataclasses import dataclass, replace
from fractions import Fraction
from typing import Literal

from lacunar.layout.records import BeamPiece, BeamProfile, ElementKind, Zone
from lacunar.layout.runs.run_division import BeamStretch, WallStretch
from lacunar.layout.runs.run_records import DividedEnds
from lacunar.measure.angle import Angle
from lacunar.measure.figure import LengthFigure, Rule
from lacunar.measure.length import Length
from lacunar.measure.plane import on_grid
from lacunar.measure.roots import square_root
from lacunar.model.beams import FamilyProfile
from lacunar.model.faults import Fault
from lacunar.model.room import END_WALL, START_WALL, RunName

PIECE = Rule("clear length of a beam between the faces that stop it", "end - start")
PIECE_ASLANT = Rule(
    "clear length of a beam that lies aslant, along it, between the faces that stop it",
    "(end - start) * sqrt(1 + lean * lean)",
)

RowEnd = Literal["start", "end"]


@dataclass(frozen=True, slots=True)
class Line:
    """A beam or wall beam as others meet it; `wall` is the end of its run it stands at, if any."""

    id: str
    on: RunName
    near: LengthFigure
    far: LengthFigure
    center: LengthFigure | None
    profile: BeamProfile
    cased: bool
    wall: RowEnd | None

    @property
    def width(self) -> Length:
        """Between its faces [length]."""
        return self.far.value - self.near.value

    @property
    def flat(self) -> bool:
        """Whether it is of boards against the ceiling, with no sides to end against."""
        return self.profile.profile is FamilyProfile.FLAT


@dataclass(frozen=True, slots=True)
class Slant:
    """An angled face at which a beam ends: how far each of its sides goes on, and the angle.

    The angle is from a square cut; one of the two sides does not go on.
    """

    past_near: Length
    past_far: Length
    angle: Angle
    beam: bool


@dataclass(frozen=True, slots=True)
class RowLimit:
    """Where a row ends: a finished wall, or the face of a soffit.

    In a room with other than four walls also at a corner that juts in, `outside`, with what stands
    round it if anything does; at a corner that is not square, `angled`; and at an angled face,
    `slanted`.
    """

    kind: Literal["wall", "soffit", "outside", "angled", "slanted"]
    id: str
    at: LengthFigure
    round_it: Line | None = None
    corner: Angle | None = None
    slant: Slant | None = None


@dataclass(frozen=True, slots=True)
class Row:
    """All lines in one run, in order, as a beam along that run meets them, between two limits.

    `lean` is how far the beam goes aside on its way, of the way along the run.
    """

    run: RunName
    start: RowLimit
    lines: tuple[Line, ...]
    end: RowLimit
    lean: Fraction = Fraction(0)

    def limit(self, end: RowEnd) -> RowLimit:
        """The limit at one end."""
        return self.start if end == "start" else self.end


@dataclass(frozen=True, slots=True)
class Stop:
    """What a stretch of a line ends at: the face of a line, or else the limit of the row."""

    at: LengthFigure
    line: Line | None
    limit: RowLimit


@dataclass(frozen=True, slots=True)
class Stretch:
    """A line between two stops, and its clear length.

    Where lines do not cross square, `faces` are the clear lengths along its near and its far face.
    """

    start: Stop
    end: Stop
    clear: BeamPiece
    faces: tuple[BeamPiece, BeamPiece] | None = None

    def beside(self, side: Literal["near", "far"] | None) -> BeamPiece:
        """The clear length along a face; the longer one for what goes from face to face."""
        if self.faces is None:
            return self.clear
        near, far = self.faces
        longer = far if far.length.value > near.length.value else near
        return {"near": near, "far": far}[side] if side else longer


@dataclass(frozen=True, slots=True)
class Meeting:
    """What decides who runs through: the rows of both runs, and the family that is to.

    In a room with other than four walls a line meets, in each stretch in which it stands, the row
    `across` it there, by its id; in one with four walls the whole row of the other run. Where a
    grid follows the walls, `along_faces` are the same rows as its near and its far face meet them,
    and `soffits` the clear lengths of these.
    """

    rows: Mapping[RunName, Row]
    family: RunName
    across: Mapping[str, tuple[Row, ...]] | None = None
    along_faces: Mapping[str, tuple[Row, Row]] | None = None
    soffits: Mapping[str, BeamPiece] | None = None

    def rows_across(self, line: Line) -> tuple[Row, ...]:
        """What a line meets, one row for each stretch in which it stands."""
        if self.across is None:
            return (self.rows[line.on.other],)
        return self.across[line.id]

    def meet(self, one: Line, other: Line) -> bool:
        """Whether two lines of the two runs meet anywhere."""
        return self.across is None or any(
            met.id == other.id for row in self.rows_across(one) for met in row.lines
        )

    def stops(self, crossing: Line, line: Line) -> bool:
        """Whether a line ends where a crossing line meets it.

        A casing holds a structural member and always runs through; then a box where the other is
        flat, and the deeper beam, both of which would end open below the other; then beams at
        walls, which go round the room; then the family that is to run through.
        """
        if crossing.cased is not line.cased:
            return crossing.cased
        if crossing.flat is not line.flat:
            return line.flat
        drop, other = crossing.profile.drop.value, line.profile.drop.value
        if drop != other:
            return drop > other
        if (crossing.wall is None) is not (line.wall is None):
            return crossing.wall is not None
        return crossing.on is self.family

    def level(self, crossing: Line, line: Line) -> bool:
        """Whether two lines are boxes that end at one depth, so that either may be cut."""
        boxes = not (crossing.flat or line.flat)
        return boxes and crossing.profile.drop.value == line.profile.drop.value

    def pieces(self, line: Line) -> tuple[BeamPiece, ...]:
        """The clear lengths of a line between the faces that stop it."""
        return tuple(stretch.clear for stretch in self.stretches(line, lambda _: False))

    def stretches(self, line: Line, also_cut_at: Callable[[Line], bool]) -> tuple[Stretch, ...]:
        """Cut a line between the faces that stop it; what is at a wall stops what is at another.

        Parameters: `also_cut_at`, which of the lines that do not stop it cut it all the same.
        """
        found = tuple(
            stretch
            for row in self.rows_across(line)
            for stretch in self._stretches(line, row, also_cut_at)
        )
        if self.along_faces is None:
            return found
        near, far = (self._stretches(line, row, also_cut_at) for row in self.along_faces[line.id])
        return tuple(
            replace(stretch, faces=(one.clear, other.clear))
            for stretch, one, other in zip(found, near, far, strict=True)
        )

    def _stretches(
        self, line: Line, row: Row, also_cut_at: Callable[[Line], bool]
    ) -> tuple[Stretch, ...]:
        start, end = Stop(row.start.at, None, row.start), Stop(row.end.at, None, row.end)
        starts, ends = [], []
        for crossing in row.lines:
            corner = line.wall and crossing.wall
            if not (self.stops(crossing, line) or corner or also_cut_at(crossing)):
                continue
            if crossing.wall == "start":
                start = Stop(crossing.far, crossing, row.start)
            elif crossing.wall == "end":
                end = Stop(crossing.near, crossing, row.end)
            else:
                starts.append(Stop(crossing.far, crossing, row.start))
                ends.append(Stop(crossing.near, crossing, row.end))
        return tuple(
            Stretch(left, right, between(left.at, right.at, row.lean))
            for left, right in zip([start, *starts], [*ends, end], strict=True)
        )


def faces_between(zones: Sequence[Zone]) -> BeamPiece:
    """The clear length of a soffit between the faces of what stands at the walls it runs to."""
    return between(zones[0].start, zones[-1].end)


def between(start: LengthFigure, end: LengthFigure, lean: Fraction = Fraction(0)) -> BeamPiece:
    """The clear length between two places; `lean` is how far a beam goes aside, of its way."""
    if lean:
        aside = square_root(1 + lean * lean)
        long = on_grid((end.value - start.value) * aside)
        told = PIECE_ASLANT.approximates(long, end=end.value, start=start.value, lean=lean)
        return BeamPiece(start, end, told)
    length = PIECE.gives(end.value - start.value, end=end.value, start=start.value)
    return BeamPiece(start, end, length)


def row_of(ends: DividedEnds, profiles: Mapping[str, BeamProfile]) -> Row:
    """Turn a divided run into the row of its lines; `profiles` by the ids of beams."""
    name, stretches = ends.frame.name, ends.at_start.stretches
    walls = [each for each in stretches if isinstance(each, WallStretch)]
    soffits = [each for each in walls if each.kind is ElementKind.SOFFIT]
    limits: dict[RowEnd, RowLimit] = {
        "start": RowLimit("wall", START_WALL[name], stretches[0].near),
        "end": RowLimit("wall", END_WALL[name], stretches[-1].far),
    }
    for soffit in soffits:
        end = _end_of(soffit)
        face = soffit.far if end == "start" else soffit.near
        limits[end] = RowLimit("soffit", soffit.strip.id, face)
    at_walls = {
        _end_of(each): _wall_line(name, each, profiles[each.strip.id])
        for each in walls
        if each.kind is not ElementKind.SOFFIT
    }
    beams = tuple(
        _beam_line(name, profiles[beam_id], beam_id, beam) for beam_id, beam, _ in ends.beams
    )
    first = (at_walls["start"],) if "start" in at_walls else ()
    last = (at_walls["end"],) if "end" in at_walls else ()
    return Row(name, limits["start"], (*first, *beams, *last), limits["end"])


def _wall_line(run: RunName, stretch: WallStretch, profile: BeamProfile) -> Line:
    return Line(
        id=stretch.strip.id,
        on=run,
        near=stretch.near,
        far=stretch.far,
        center=None,
        profile=profile,
        cased=False,
        wall=_end_of(stretch),
    )


def _beam_line(run: RunName, profile: BeamProfile, beam_id: str, beam: BeamStretch) -> Line:
    return Line(
        id=beam_id,
        on=run,
        near=beam.near,
        far=beam.far,
        center=beam.center,
        profile=profile,
        cased=beam.kind is ElementKind.CASED_BEAM,
        wall=None,
    )


def _end_of(stretch: WallStretch) -> RowEnd:
    return "start" if stretch.strip.wall in START_WALL.values() else "end"


def casing_faults(meeting: Meeting) -> Iterator[Fault]:
    """The fault of a beam deeper than a casing it meets: it would hang open below the casing."""
    lines = [line for row in meeting.rows.values() for line in row.lines]
    found: set[str] = set()
    for casing in (line for line in lines if line.cased):
        for line in meeting.rows[casing.on.other].lines:
            if line.cased or line.profile.drop.value <= casing.profile.drop.value:
                continue
            if line.profile.id in found:
                continue
            found.add(line.profile.id)
            yield Fault(
                code="beam_deeper_than_casing",
                pointer="/beams/depth",
                message=f"{line.id} is deeper than the casing {casing.id} that it ends at, and"
                " would hang open below it.",
                remedy="Let all beams be equally deep, or make these shallower than the casing.",
                figures={
                    "drop": line.profile.drop.value,
                    "casing_drop": casing.profile.drop.value,
                },
            )
