"""What a sheet says of the boards in its coffers."""

from collections.abc import Iterator, Sequence

from lacunar.drawing.wording import SheetWording
from lacunar.layout.board_records import BoardField, BoardLayout
from lacunar.layout.opening_records import TaperedField
from lacunar.model.boards import BoardRun, CenteredOn

LISTED = 3
# More sizes than these are a list, which belongs in a table.
LISTED_SIZES = 3


def board_notes(boards: BoardLayout, wording: SheetWording) -> Iterator[str]:
    """Sentences on cover and way of the boards, then a sentence a size of field."""
    how = "in each coffer by themselves"
    if boards.run is BoardRun.THROUGH:
        how = "running through above the beams"
    yield (
        f"Boards of {wording.size(boards.cover)} cover along the {boards.parallel_to} run, {how}:"
        f" {boards.boards.value} in all. Measure the cover on the boards that come."
    )
    for field in boards.fields[:LISTED_SIZES]:
        yield _field_note(field, wording)
    more = len(boards.fields) - LISTED_SIZES
    if more > 0:
        yield f"Fields of {more} more sizes: see the board plan."


def _field_note(field: BoardField, wording: SheetWording) -> str:
    laid = field.courses
    where = ", ".join(field.coffers[:LISTED])
    more = len(field.coffers) - LISTED
    if more > 0:
        where = f"{where} and {more} more"
    count = laid.courses.value
    length = wording.length(field.length.value)
    if count == 1:
        return f"{where}: one board {length} long, ripped to {wording.length(laid.edge.value)}."
    middle = "board" if laid.centered_on is CenteredOn.BOARD else "joint"
    return (
        f"{where}: {count} courses {length} long, a {middle} on the middle line; edge boards show"
        f" {wording.length(laid.edge.value)}, the first ripped to"
        f" {wording.length(laid.first_rip.value)} with its tongue."
    )


def tapered_notes(fields: Sequence[TaperedField], wording: SheetWording) -> Iterator[str]:
    """A sentence a coffer whose boards taper: what its edge boards show at both ends."""
    for field in fields[:LISTED_SIZES]:
        edges = "; ".join(
            f"toward {edge.toward} {wording.length(edge.start.value)} to"
            f" {wording.length(edge.end.value)}"
            for edge in field.edges
        )
        yield f"Boards of {field.coffer} taper. Faces of its edge boards, start to end: {edges}."
    more = len(fields) - LISTED_SIZES
    if more > 0:
        yield f"Boards of {more} more coffers taper: see the board plan."
