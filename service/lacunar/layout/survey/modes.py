"""The two ways a grid can lie in a crooked room, side by side: square, or along the walls."""

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass
from fractions import Fraction

from lacunar.layout.names import coffer_id
from lacunar.layout.records import ElementKind
from lacunar.layout.runs.run_division import DividedRun
from lacunar.layout.survey.along_walls import AlongWalls, Line
from lacunar.layout.survey.report import apart, corner_angles
from lacunar.layout.survey.square_frame import SquareFrame
from lacunar.layout.survey_records import CrookedMode, Mode, ModeCoffer, ModeCorner
from lacunar.measure.angle import Angle
from lacunar.measure.figure import AngleFigure, LengthFigure, Rule
from lacunar.measure.length import ZERO, Length
from lacunar.measure.plane import Spot, along, crossing, snapped
from lacunar.model.room import RunName

OUT_OF_SQUARE = Rule("how far a corner is off a right angle", "abs(corner - 90)")
_RIGHT_ANGLE = Angle.of_degrees(90)

Ways = tuple[Line, Line]


@dataclass(frozen=True, slots=True)
class Grids:
    """A grid both ways: divided square, and along the walls; None where a way has no room."""

    square: Mapping[RunName, DividedRun] | None
    along: Mapping[RunName, AlongWalls] | None


def crooked_modes(frame: SquareFrame, grids: Grids, chosen: Mode) -> tuple[CrookedMode, ...]:
    """Turn a surveyed room and its grid both ways into what each gives, to be compared."""
    modes = []
    if grids.square is not None:
        square = {
            name: tuple(_lines_square(divided, name, frame))
            for name, divided in grids.square.items()
        }
        modes.append(_mode("keep_square", square, chosen, approximate=frame.approximate))
    if grids.along is not None:
        following = {name: tuple(_lines_along(along)) for name, along in grids.along.items()}
        rough = frame.approximate or not frame.square
        modes.append(_mode("follow_walls", following, chosen, approximate=rough))
    return tuple(modes)


def _lines_square(divided: DividedRun, name: RunName, frame: SquareFrame) -> Iterator[Ways]:
    """The two sides of each coffer stretch of a run, as lines square to it."""
    across = frame.runs[name.other].clear.value
    for stretch in divided.stretches:
        if stretch.kind is ElementKind.COFFER:
            near, far = (
                (_spot(name, place.value, ZERO), _spot(name, place.value, across))
                for place in (stretch.near, stretch.far)
            )
            yield near, far


def _spot(name: RunName, along: Length, across: Length) -> Spot:
    return Spot(along, across) if name is RunName.LENGTH else Spot(across, along)


def _lines_along(along: AlongWalls) -> Iterator[Ways]:
    """The two sides of each coffer stretch, each from one wall to the other."""
    for start, end in along.pairs:
        if start.kind is ElementKind.COFFER:
            yield along.line(start.near, end.near), along.line(start.far, end.far)


def _mode(
    mode: Mode, lines: Mapping[RunName, Sequence[Ways]], chosen: Mode, *, approximate: bool
) -> CrookedMode:
    coffers = [
        _coffer(coffer_id(row, column), columns, rows, approximate=approximate)
        for row, rows in enumerate(lines[RunName.WIDTH], start=1)
        for column, columns in enumerate(lines[RunName.LENGTH], start=1)
    ]
    lengths = [side for each in coffers for side in (each.towards_w4, each.towards_w2)]
    widths = [side for each in coffers for side in (each.towards_w1, each.towards_w3)]
    return CrookedMode(
        mode=mode,
        chosen=mode == chosen,
        shortest=min(lengths, key=_value),
        longest=max(lengths, key=_value),
        narrowest=min(widths, key=_value),
        widest=max(widths, key=_value),
        out_of_square=max(
            (each.out_of_square for each in coffers), key=lambda angle: angle.value.degrees
        ),
        coffers=tuple(coffers),
    )


def _value(figure: LengthFigure) -> Length:
    return figure.value


def _coffer(name: str, columns: Ways, rows: Ways, *, approximate: bool) -> ModeCoffer:
    (left, right), (low, high) = columns, rows
    met = [crossing(*pair) for pair in ((left, low), (right, low), (right, high), (left, high))]
    corners = [snapped(spot) for spot in met] if approximate else met
    sides = [
        apart(corner, corners[(place + 1) % 4], approximate=approximate)
        for place, corner in enumerate(corners)
    ]
    angles = corner_angles(corners, approximate=approximate)
    first, second, third, fourth = map(ModeCorner, corners, angles)
    return ModeCoffer(
        id=name,
        corners=(first, second, third, fourth),
        towards_w4=sides[0],
        towards_w3=sides[1],
        towards_w2=sides[2],
        towards_w1=sides[3],
        rising=apart(corners[0], corners[2], approximate=approximate),
        falling=apart(corners[1], corners[3], approximate=approximate),
        out_of_square=_out_of_square(corners, angles, approximate=approximate),
    )


def _out_of_square(
    corners: Sequence[Spot], angles: Sequence[AngleFigure], *, approximate: bool
) -> AngleFigure:
    """The most that a corner is off a right angle."""
    worst = angles[max(range(len(corners)), key=lambda place: _lean(corners, place))]
    off = abs(worst.value - _RIGHT_ANGLE)
    tell = OUT_OF_SQUARE.approximates if off or approximate else OUT_OF_SQUARE.gives
    return tell(off, corner=worst.value)


def _lean(corners: Sequence[Spot], place: int) -> Fraction:
    """The square of a corner's cosine: the larger, the further it is off a right angle."""
    one = corners[place - 1] - corners[place]
    other = corners[(place + 1) % len(corners)] - corners[place]
    return along(one, other) ** 2 / (along(one, one) * along(other, other))
