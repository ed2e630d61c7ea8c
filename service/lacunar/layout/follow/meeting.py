"""What meets what in a grid that follows the walls: a row for each beam, as each face meets it."""

from collections.abc import Iterator, Mapping
from dataclasses import dataclass, replace
from fractions import Fraction

from lacunar.layout.beams.lines import Line, Meeting, Row, RowLimit, between, row_of
from lacunar.layout.beams.profile_book import ProfileBook
from lacunar.layout.follow.grid import FollowedGrid, along_run
from lacunar.layout.records import BeamPiece, ElementKind, profiles_by_beam
from lacunar.layout.runs.run_division import BeamStretch, Stretch, WallStretch
from lacunar.layout.survey.along_walls import AlongWalls
from lacunar.layout.survey.along_walls import Line as Joined
from lacunar.measure.figure import LengthFigure, Rule
from lacunar.measure.plane import crossing, on_grid
from lacunar.model.room import RunName

MET_AT = Rule(
    "where a line crosses another, along the run that it lies along",
    "from_along + (to_along - from_along)"
    " * ((first_across - from_across) * (last_along - first_along)"
    " - (first_along - from_along) * (last_across - first_across))"
    " / ((to_across - from_across) * (last_along - first_along)"
    " - (to_along - from_along) * (last_across - first_across))",
)
# A root needs no more of how far a line goes aside.
_PARTS = 10**12


@dataclass(frozen=True, slots=True)
class Faces:
    """The faces of a beam, wall beam or soffit as lines between two walls, and its center line."""

    near: Joined
    far: Joined
    center: Joined


def faces_of(grid: FollowedGrid) -> Mapping[str, Faces]:
    """The faces of all that stands in a grid, by its id."""
    return {
        identity: _faces(along, start, end)
        for name, along in grid.along.items()
        for identity, start, end in _standing(grid, name)
    }


def _standing(grid: FollowedGrid, name: RunName) -> Iterator[tuple[str, Stretch, Stretch]]:
    beams = iter([beam_id for beam_id, _, _ in grid.ends[name].beams])
    for start, end in grid.along[name].pairs:
        if isinstance(start, WallStretch):
            yield start.strip.id, start, end
        elif isinstance(start, BeamStretch):
            yield next(beams), start, end


def _faces(along: AlongWalls, start: Stretch, end: Stretch) -> Faces:
    near, far = along.line(start.near, end.near), along.line(start.far, end.far)
    center = near
    if isinstance(start, BeamStretch) and isinstance(end, BeamStretch):
        center = along.line(start.center, end.center)
    elif isinstance(start, WallStretch):
        # What stands at a wall is cut by its face into the room.
        center = far if start.strip.wall in ("W1", "W4") else near
    return Faces(near, far, center)


def followed_meeting(grid: FollowedGrid, book: ProfileBook, family: RunName) -> Meeting:
    """Turn a grid that follows the walls, and profiles, into what meets what in it."""
    faces = faces_of(grid)
    of = profiles_by_beam(book.profiles)
    rows = {name: row_of(grid.ends[name], of) for name in RunName}
    across: dict[str, tuple[Row, ...]] = {}
    along_faces: dict[str, tuple[Row, Row]] = {}
    for row in rows.values():
        for line in row.lines:
            own, met = faces[line.id], rows[line.on.other]
            across[line.id] = (_row(grid, faces, own.center, met),)
            along_faces[line.id] = (
                _row(grid, faces, own.near, met),
                _row(grid, faces, own.far, met),
            )
    soffits = dict(_soffits(grid, faces, rows))
    return Meeting(rows, family, across, along_faces, soffits)


def _row(grid: FollowedGrid, faces: Mapping[str, Faces], line: Joined, row: Row) -> Row:
    """A row as a line meets it, in figures along the run that it lies along."""
    return Row(
        row.run,
        _limit(grid, faces, line, row.start),
        tuple(_met(line, each, faces[each.id]) for each in row.lines),
        _limit(grid, faces, line, row.end),
        _lean(line, row.run),
    )


def _met(line: Joined, crossing_line: Line, faces: Faces) -> Line:
    run = crossing_line.on
    center = crossing_line.center
    return replace(
        crossing_line,
        near=met_at(line, faces.near, run),
        far=met_at(line, faces.far, run),
        center=None if center is None else met_at(line, faces.center, run),
    )


def met_at(line: Joined, other: Joined, run: RunName) -> LengthFigure:
    """Where a line crosses another, along the run that the first one lies along."""
    place = along_run(crossing(line, other), run)
    (start, end), (first, last) = line, other
    return MET_AT.approximates(
        on_grid(place),
        **{
            f"{name}_{way}": along_run(spot, of)
            for name, spot in (("from", start), ("to", end), ("first", first), ("last", last))
            for way, of in (("along", run), ("across", run.other))
        },
    )


def _limit(
    grid: FollowedGrid, faces: Mapping[str, Faces], line: Joined, limit: RowLimit
) -> RowLimit:
    """A row's limit where a line meets it: a wall, or the face of a soffit."""
    if limit.kind == "soffit":
        run = next(r for r in RunName if any(i == limit.id for i, _, _ in _standing(grid, r)))
        return replace(limit, at=met_at(line, faces[limit.id].center, run))
    run = RunName.LENGTH if limit.id in ("W1", "W3") else RunName.WIDTH
    return replace(limit, at=met_at(line, _wall(grid.along[run.other], limit.id), run))


def _wall(along: AlongWalls, wall: str) -> Joined:
    """A wall's own line; a run is divided along the two walls that it lies along."""
    return (along.at_start if wall in ("W1", "W4") else along.at_end).wall


def _lean(line: Joined, run: RunName) -> Fraction:
    """How far a line that lies along a run goes aside on its way, of the way along the run."""
    way = line[1] - line[0]
    lean = along_run(way, run.other) / along_run(way, run)
    return Fraction(round(lean * _PARTS), _PARTS)


def _soffits(
    grid: FollowedGrid, faces: Mapping[str, Faces], rows: Mapping[RunName, Row]
) -> Iterator[tuple[str, BeamPiece]]:
    """The clear length of each soffit along its face, between what stands at its end walls."""
    for name in RunName:
        row = rows[name.other]
        first = next((each for each in row.lines if each.wall == "start"), None)
        last = next((each for each in row.lines if each.wall == "end"), None)
        for identity, start, _ in _standing(grid, name):
            if start.kind is not ElementKind.SOFFIT:
                continue
            line = faces[identity].center
            limits = (_limit(grid, faces, line, each).at for each in (row.start, row.end))
            low, high = limits
            if first is not None:
                low = _met(line, first, faces[first.id]).far
            if last is not None:
                high = _met(line, last, faces[last.id]).near
            yield identity, between(low, high, _lean(line, row.run))
