"""The ceiling along one beam: shims, side heights and scribes, and how far it sags."""

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass
from itertools import pairwise

from lacunar.layout.level_records import BeamLevel, LevelPlace, Sag, StationLevel
from lacunar.layout.records import Beam, ProfilePart, RunLayout
from lacunar.measure.figure import LengthFigure, Rule
from lacunar.measure.length import ZERO, Length
from lacunar.model.room import RunName
from lacunar.model.stations import PanelsTo

AT_STATION = Rule("rise of the ceiling at a station on the beam", "rise")
BETWEEN = Rule(
    "rise between two stations, as on a straight line",
    "near_rise + (far_rise - near_rise) * (at - near) / (far - near)",
)
BEYOND = Rule("rise beyond the last station, as at that station", "nearest_rise")
PLACE = Rule("place along the beam", "at")
SHIM = Rule("shim behind the backing: from the plane up to the ceiling", "rise")
SIDE_TO_CEILING = Rule("side: its planned height, and the rise of the ceiling", "planned + rise")
SIDE_TO_PLANE = Rule("side: its planned height, as it ends at the plane", "planned")
BOARD = Rule("side as ripped: as tall as at the highest station of the beam", "planned + most_rise")
BOARD_TO_PLANE = Rule("side as ripped: its planned height", "planned")
SCRIBE = Rule("cut off the upper edge of the side as ripped", "board - side")
HIDDEN = Rule("open above what hangs in the plane", "rise")
NOT_HIDDEN = Rule("nothing open: sides go up to the ceiling", "0")
MOST_SIDE = Rule("tallest side that can be planned: the stock less the rise", "stock - most_rise")
VARIATION = Rule("tallest side less the shortest", "tallest - shortest")
CHORD = Rule("chord: between a beam's outermost stations", "last - first")
DEPARTURE = Rule(
    "departure from the chord: the rise less that of the straight line",
    "rise - first_rise - (last_rise - first_rise) * (at - first) / (last - first)",
)
FAIR_ARC = Rule(
    "radius of a fair arc over the chord", "span * span / (8 * abs(departure)) + abs(departure) / 2"
)
# How many stations it takes to depart from a chord.
_BENT = 3


@dataclass(frozen=True, slots=True)
class BeamLine:
    """A beam's side, and from where to where along its run stations count for it."""

    id: str
    on: RunName
    near: Length
    far: Length
    side: ProfilePart


@dataclass(frozen=True, slots=True)
class LevelTask:
    """What is the same for all beams."""

    panels: PanelsTo
    uneven: Length
    stations: tuple[StationLevel, ...]
    runs: Mapping[RunName, RunLayout]
    crossing: Mapping[RunName, Sequence[Beam]]


@dataclass(frozen=True, slots=True)
class _Read:
    """A station as it is read along a beam."""

    at: Length
    rise: Length
    station: str


def beam_level(line: BeamLine, task: LevelTask) -> BeamLevel | None:
    """Turn the stations on a beam into what it needs along its line; None where none lies on it.

    Where two stations lie at one place along the beam, the higher ceiling counts: a side that is
    cut too short cannot be mended. Formulas: side = planned + rise, or planned where panels hang
    in the plane; scribe = board - side; R = c² / 8 h + h / 2.
    """
    read = _reads(line, task)
    if not read:
        return None
    planned = line.side.width.value
    follows = task.panels is PanelsTo.CEILING
    most_rise = max(each.rise for each in read)
    board = (
        BOARD.gives(planned + most_rise, planned=planned, most_rise=most_rise)
        if follows
        else BOARD_TO_PLANE.gives(planned, planned=planned)
    )
    places = tuple(_place(spot, planned, board.value, task) for spot in _spots(line, read, task))
    sides = [place.side.value for place in places]
    tallest, shortest = max(sides), min(sides)
    stock = line.side.stock.width if line.side.stock is not None else None
    counted = most_rise if follows else ZERO
    return BeamLevel(
        beam=line.id,
        board=board,
        stock_width=stock,
        most_side=None
        if stock is None
        else MOST_SIDE.gives(stock - counted, stock=stock, most_rise=counted),
        variation=VARIATION.gives(tallest - shortest, tallest=tallest, shortest=shortest),
        even=tallest - shortest <= task.uneven,
        sag=_sag(read),
        places=places,
    )


def _reads(line: BeamLine, task: LevelTask) -> list[_Read]:
    """The stations on a beam in order, the highest of those at one place."""
    found: dict[Length, _Read] = {}
    for station in task.stations:
        if line.id not in station.beams:
            continue
        at = (station.y if line.on is RunName.LENGTH else station.x).value
        if at not in found or station.rise.value > found[at].rise:
            found[at] = _Read(at, station.rise.value, station.id)
    return [found[at] for at in sorted(found)]


@dataclass(frozen=True, slots=True)
class _Spot:
    """A place along a beam whose rise is known, and from what."""

    at: Length
    rise: LengthFigure
    station: str | None


def _spots(line: BeamLine, read: Sequence[_Read], task: LevelTask) -> Iterator[_Spot]:
    """The stations, both walls and all crossings, in order along a beam."""
    stations = {each.at: each for each in read}
    span = task.runs[line.on.other].span.at_start.value
    centers = [beam.center.at_start.value for beam in task.crossing[line.on.other]]
    for at in sorted({ZERO, span, *centers, *stations}):
        if at in stations:
            rise = stations[at].rise
            yield _Spot(at, AT_STATION.gives(rise, rise=rise), stations[at].station)
        else:
            yield _Spot(at, _between(at, read), None)


def _between(at: Length, read: Sequence[_Read]) -> LengthFigure:
    for near, far in pairwise(read):
        if near.at < at < far.at:
            return BETWEEN.gives(
                near.rise + (far.rise - near.rise) * ((at - near.at) / (far.at - near.at)),
                near_rise=near.rise,
                far_rise=far.rise,
                at=at,
                near=near.at,
                far=far.at,
            )
    nearest = read[0] if at < read[0].at else read[-1]
    return BEYOND.gives(nearest.rise, nearest_rise=nearest.rise)


def _place(spot: _Spot, planned: Length, board: Length, task: LevelTask) -> LevelPlace:
    rise, follows = spot.rise.value, task.panels is PanelsTo.CEILING
    side = (
        SIDE_TO_CEILING.gives(planned + rise, planned=planned, rise=rise)
        if follows
        else SIDE_TO_PLANE.gives(planned, planned=planned)
    )
    return LevelPlace(
        at=PLACE.gives(spot.at, at=spot.at),
        station=spot.station,
        known="measured"
        if spot.station
        else ("between" if spot.rise.rule == BETWEEN else "beyond"),
        rise=spot.rise,
        shim=SHIM.gives(rise, rise=rise),
        side=side,
        scribe=SCRIBE.gives(board - side.value, board=board, side=side.value),
        hidden_gap=NOT_HIDDEN.gives(ZERO) if follows else HIDDEN.gives(rise, rise=rise),
    )


def _sag(read: Sequence[_Read]) -> Sag | None:
    """The station that departs most from the straight line between the outermost ones."""
    if len(read) < _BENT:
        return None
    first, last = read[0], read[-1]
    span = last.at - first.at
    slope = (last.rise - first.rise) / span
    departs = {each: each.rise - first.rise - (each.at - first.at) * slope for each in read[1:-1]}
    most = max(departs, key=lambda each: abs(departs[each]))
    departure = departs[most]
    return Sag(
        station=most.station,
        span=CHORD.gives(span, last=last.at, first=first.at),
        departure=DEPARTURE.gives(
            departure,
            rise=most.rise,
            first_rise=first.rise,
            last_rise=last.rise,
            at=most.at,
            first=first.at,
            last=last.at,
        ),
        radius=_radius(span, departure),
    )


def _radius(span: Length, departure: Length) -> LengthFigure | None:
    if not departure:
        return None
    height = abs(departure)
    arc = Length.of_inches(span.inches * span.inches / (8 * height.inches)) + height / 2
    return FAIR_ARC.gives(arc, span=span, departure=departure)
