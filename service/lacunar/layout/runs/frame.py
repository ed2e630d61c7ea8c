"""The run between finished wall faces, and places along it measured from the datum."""

from dataclasses import dataclass

from lacunar.measure.figure import LengthFigure, Rule, given
from lacunar.measure.length import ZERO, Length
from lacunar.model.room import END_WALL, START_WALL, WALLS, MeasuredTo, Room, RunName

DATUM = Rule("the datum: the finished face of the start wall", "0")
SPAN_FROM_FRAMING = Rule(
    "span between finished wall faces: the distance between framing less both finishes",
    "between_framing - start_finish - end_finish",
)
PLACE_FROM_FRAMING = Rule(
    "place from the datum: as measured from the framing, less the start wall's finish",
    "from_framing - start_finish",
)


@dataclass(frozen=True, slots=True)
class RunFrame:
    """A run's span between finished faces, and the finish of its walls where that is known.

    `framing` says whether the room was measured to its framing, so that places given in the spec
    are from the framing too.
    """

    name: RunName
    span: LengthFigure
    start_finish: Length | None
    end_finish: Length | None
    framing: bool

    def place(self, measured: Length) -> LengthFigure:
        """Turn a place as it was measured [length] into its place from the datum [length]."""
        if not self.framing or self.start_finish is None:
            return given(measured)
        return PLACE_FROM_FRAMING.gives(
            measured - self.start_finish, from_framing=measured, start_finish=self.start_finish
        )


def datum() -> LengthFigure:
    """Where every mark is measured from."""
    return DATUM.gives(ZERO)


def run_frame(room: Room, name: RunName) -> RunFrame:
    """Turn a room as it was measured into one run between its finished wall faces.

    Formula: to finish, as measured; to framing, less the finish of both walls.
    """
    measured = room.length if name is RunName.LENGTH else room.width
    framing = room.measured_to is MeasuredTo.FRAMING
    start = _finish(room, START_WALL[name])
    end = _finish(room, END_WALL[name])
    span = given(measured)
    if framing and start is not None and end is not None:
        span = SPAN_FROM_FRAMING.gives(
            measured - start - end, between_framing=measured, start_finish=start, end_finish=end
        )
    return RunFrame(name, span, start, end, framing)


def _finish(room: Room, wall: str) -> Length | None:
    return None if room.wall_finish is None else room.wall_finish[WALLS.index(wall)]
