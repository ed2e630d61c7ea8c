"""The run between finished wall faces, and places along it measured from the datum."""

from dataclasses import dataclass

from lacunar.layout.survey_records import CrookedRun
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

PLACE_FROM_CLEAR = Rule(
    "place from the clear line: from the start wall, less how far that lies before it",
    "from_wall - before",
)


@dataclass(frozen=True, slots=True)
class RunFrame:
    """A run's span between finished faces, and the finish of its walls where that is known.

    `framing` says whether the room was measured to its framing, so that places given in the spec
    are from the framing too. In a surveyed room `span` is the narrowest clear line and the datum
    its start; the start wall lies so far before it at the start and at the end of the other run,
    and from wall to wall there are the two spans. `kept_to` is the member that the grid is square
    to, by its name, and its place, which is the same at both its ends.
    """

    name: RunName
    span: LengthFigure
    start_finish: Length | None
    end_finish: Length | None
    framing: bool
    before_start: LengthFigure | None = None
    before_end: LengthFigure | None = None
    span_at_start: LengthFigure | None = None
    span_at_end: LengthFigure | None = None
    kept_to: tuple[str, LengthFigure] | None = None

    @property
    def unlike_ends(self) -> bool:
        """Whether the walls lie otherwise at the end of the other run than at its start."""
        start, end = self.span_at_start, self.span_at_end
        before, after = self.before_start, self.before_end
        if start is None or end is None or before is None or after is None:
            return False
        return start.value != end.value or before.value != after.value

    def place(self, measured: Length, *, at_end: bool = False) -> LengthFigure:
        """Turn a place as it was measured [length] into its place from the datum [length].

        `at_end` where it was measured at the end of the other run, not at its start.
        """
        place = given(measured)
        if self.framing and self.start_finish is not None:
            place = PLACE_FROM_FRAMING.gives(
                measured - self.start_finish, from_framing=measured, start_finish=self.start_finish
            )
        lies_before = self.before_end if at_end else self.before_start
        if lies_before is None or not lies_before.value:
            return place
        before = lies_before.value
        return PLACE_FROM_CLEAR.gives(place.value - before, from_wall=place.value, before=before)


def datum() -> LengthFigure:
    """Where every mark is measured from."""
    return DATUM.gives(ZERO)


BETWEEN_FURTHEST = Rule("span between the walls furthest out at both ends", "end - start")


def outlined_frame(
    room: Room, name: RunName, span: Length, finish: tuple[Length | None, Length | None]
) -> RunFrame:
    """Turn how far a room with other than four walls reaches [length] into its run.

    `finish` is that of the walls furthest out at both ends.
    """
    between = BETWEEN_FURTHEST.gives(span, end=span, start=ZERO)
    return RunFrame(name, between, *finish, framing=room.measured_to is MeasuredTo.FRAMING)


def run_frame(room: Room, name: RunName, surveyed: CrookedRun | None = None) -> RunFrame:
    """Turn a room as it was measured into one run between its finished wall faces.

    Formula: to finish, as measured; to framing, less the finish of both walls; `surveyed`, as the
    survey gives its narrowest clear line.
    """
    measured = room.length if name is RunName.LENGTH else room.width
    framing = room.measured_to is MeasuredTo.FRAMING
    start = _finish(room, START_WALL[name])
    end = _finish(room, END_WALL[name])
    if surveyed is not None:
        return RunFrame(
            name,
            surveyed.clear,
            start,
            end,
            framing,
            before_start=surveyed.before_start,
            before_end=surveyed.before_end,
            span_at_start=surveyed.span_at_start,
            span_at_end=surveyed.span_at_end,
        )
    span = given(measured)
    if framing and start is not None and end is not None:
        span = SPAN_FROM_FRAMING.gives(
            measured - start - end, between_framing=measured, start_finish=start, end_finish=end
        )
    return RunFrame(name, span, start, end, framing)


def _finish(room: Room, wall: str) -> Length | None:
    return None if room.wall_finish is None else room.wall_finish[WALLS.index(wall)]
