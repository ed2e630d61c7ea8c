"""The beams and wall beams of a ceiling as they stand: where they lie and how they are cut."""

from collections.abc import Iterator, Mapping
from dataclasses import dataclass

from lacunar.layout.beams.lines import Meeting, casing_faults, faces_between, row_of
from lacunar.layout.beams.profile_book import ProfileBook
from lacunar.layout.beams.through import CrossedRun, through_family
from lacunar.layout.fault_gathering import refuse
from lacunar.layout.records import Beam, BeamPiece, ElementKind, WallBeam, profiles_by_beam
from lacunar.layout.runs.run_division import WallStretch
from lacunar.layout.runs.run_records import DividedEnds, beam_record, wall_beams
from lacunar.model.beams import Through
from lacunar.model.room import RunName

Ends = Mapping[RunName, DividedEnds]


@dataclass(frozen=True, slots=True)
class StandingBeams:
    """All beams, what stands at the walls, and what decides which of them run through."""

    meeting: Meeting
    beams: tuple[Beam, ...]
    wall_beams: tuple[WallBeam, ...]


def square_meeting(ends: Ends, book: ProfileBook, through: Through) -> Meeting:
    """Turn the runs of a room with four walls and profiles into what meets what."""
    of = profiles_by_beam(book.profiles)
    return Meeting({name: row_of(ends[name], of) for name in RunName}, running(ends, through))


def running(ends: Ends, through: Through) -> RunName:
    """The run whose beams run through where nothing else decides."""
    return through_family(through, {name: CrossedRun.of(ends[name].at_start) for name in RunName})


def standing_beams(ends: Ends, book: ProfileBook, meeting: Meeting) -> StandingBeams:
    """Turn divided runs, profiles and what meets what into beams, each cut by those that stop it.

    Raises SpecRefused where a beam would hang open below a casing that it ends at.
    """
    refuse(list(casing_faults(meeting)))
    return StandingBeams(
        meeting, tuple(_beams(ends, book, meeting)), _at_walls(ends, book, meeting)
    )


def _at_walls(ends: Ends, book: ProfileBook, meeting: Meeting) -> tuple[WallBeam, ...]:
    cut = {
        line.id: meeting.pieces(line)
        for row in meeting.rows.values()
        for line in row.lines
        if line.wall
    }
    for name in RunName:
        between = faces_between(ends[name.other].at_start.zones)
        cut |= dict.fromkeys(_soffits(ends[name]), (between,))
    cut |= {soffit: (piece,) for soffit, piece in (meeting.soffits or {}).items()}
    found = [beam for name in RunName for beam in wall_beams(ends[name], book.of, cut)]
    ids = list(book.of)
    return tuple(sorted(found, key=lambda beam: ids.index(beam.id)))


def _soffits(ends: DividedEnds) -> Iterator[str]:
    for stretch in ends.at_start.stretches:
        if isinstance(stretch, WallStretch) and stretch.kind is ElementKind.SOFFIT:
            yield stretch.strip.id


def _beams(ends: Ends, book: ProfileBook, meeting: Meeting) -> Iterator[Beam]:
    """Every beam with its pieces, which beams that are stopped alike share."""
    for name in RunName:
        lines = {line.id: line for line in meeting.rows[name].lines}
        cut: dict[tuple[object, ...], tuple[BeamPiece, ...]] = {}
        for beam in ends[name].beams:
            line = lines.get(beam[0])
            if line is None:
                continue  # it stands nowhere in this room
            key: tuple[object, ...] = (line.cased, line.profile.id)
            if meeting.across is not None:
                key = (line.id,)
            if key not in cut:
                cut[key] = meeting.pieces(line)
            profile, across = book.of[beam[0]], ends[name.other].frame
            yield beam_record(beam, name, profile, cut[key], across)
