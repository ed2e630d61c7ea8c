"""What is told of the columns in a room."""

from collections.abc import Iterator, Sequence

from lacunar.layout.outline.columns import StandingColumn
from lacunar.layout.outline.corners import area_of
from lacunar.layout.outline.rows import Outlined
from lacunar.layout.outline_records import PartialCoffer, RoomColumn
from lacunar.measure.figure import LengthFigure, Rule
from lacunar.measure.length import Length
from lacunar.measure.rounding import Step, round_to
from lacunar.model.room import RunName

FACE = Rule("outermost place of a column along the run, from the datum", "at")


def room_columns(
    room: Outlined, cut: Sequence[PartialCoffer], step: Step
) -> tuple[RoomColumn, ...]:
    """Turn the columns of a room, and the coffers that are cut in it, into what is told of them."""
    return tuple(_column(room, column, cut, step) for column in room.columns)


def _column(
    room: Outlined, column: StandingColumn, cut: Sequence[PartialCoffer], step: Step
) -> RoomColumn:
    left, right = column.reach(RunName.LENGTH)
    lower, upper = column.reach(RunName.WIDTH)
    return RoomColumn(
        name=column.name,
        corners=column.corners,
        left=_at(left),
        left_mark=round_to(left, step),
        right=_at(right),
        right_mark=round_to(right, step),
        lower=_at(lower),
        lower_mark=round_to(lower, step),
        upper=_at(upper),
        upper_mark=round_to(upper, step),
        area=area_of(column.corners, approximate=False),
        stands_in=room.held.get(column.name, ()),
        stops=tuple(_stops(room, column)),
        leaves_beside=tuple(_beside(room, column)),
        cuts=tuple(
            coffer.id
            for coffer in cut
            if any(side.against == column.name for side in coffer.all_sides)
        ),
    )


def _at(place: Length) -> LengthFigure:
    return FACE.gives(place, at=place)


def _stops(room: Outlined, column: StandingColumn) -> Iterator[str]:
    """The beams of which a stretch ends at a face of the column."""
    for beam, spans in room.spans.items():
        if any(end.wall in column.faces for span in spans for end in (span.start, span.end)):
            yield beam


def _beside(room: Outlined, column: StandingColumn) -> Iterator[str]:
    """The beams it stops of whose width a part lies beside it."""
    faces = {
        beam_id: (run, beam.near.value, beam.far.value)
        for run in RunName
        for beam_id, beam, _ in room.ends[run].beams
    }
    for beam in _stops(room, column):
        run, near, far = faces[beam]
        low, high = column.reach(run)
        if near < low or high < far:
            yield beam
