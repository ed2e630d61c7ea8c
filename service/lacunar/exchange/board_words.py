"""Boards, their movement and ripped sheets in sentences, for `explain`."""

from collections.abc import Callable, Iterable, Iterator
from typing import Any

from lacunar.layout.board_records import (
    BoardField,
    BoardLayout,
    BoardMovement,
    Courses,
    PanelPlace,
    SheetRip,
    WoodMoistureContent,
)
from lacunar.measure.figure import Figure

# Words one figure after a label.
Tell = Callable[[str, Figure[Any]], str]


def boards_in_words(boards: BoardLayout, tell: Tell) -> Iterator[str]:
    """Every figure of the boards, then of their movement."""
    yield f"Boards lie along the {boards.parallel_to} run, {boards.run.replace('_', ' ')}."
    yield tell("Width of a board", boards.overall_width)
    yield tell("Lineal feet to a square foot", boards.lineal_factor)
    if boards.board_foot_factor is not None:
        yield tell("Board feet to a square foot", boards.board_foot_factor)
    for field in boards.fields:
        yield from _field(field, tell)
    yield tell("Boards of the ceiling", boards.boards)
    yield tell("All boards of the ceiling in a row", boards.lineal)
    yield tell("Boards of the ceiling by the rule of coverage", boards.coverage)
    if boards.movement is not None:
        yield from movement_in_words(boards.movement, tell)


def _field(field: BoardField, tell: Tell) -> Iterator[str]:
    name = f"Boards in {field.coffers[0]}"
    if len(field.coffers) > 1:
        yield f"Boards in {', '.join(field.coffers)} are alike."
    yield tell(f"{name}, fields", field.fields)
    yield tell(f"{name}, length", field.length)
    yield from courses_in_words(name, field.courses, tell)
    yield tell(f"{name}, how many", field.boards)
    yield tell(f"{name}, in a row", field.lineal)
    yield tell(f"{name}, by the rule of coverage", field.coverage)
    yield from places_in_words(field.places, tell)


def places_in_words(places: Iterable[PanelPlace], tell: Tell) -> Iterator[str]:
    """Where panels, or fields of boards, start."""
    for place in places:
        yield tell(f"Panel or boards of {place.coffer} start along the length", place.x)
        yield tell(f"Panel or boards of {place.coffer} start along the width", place.y)


def courses_in_words(name: str, courses: Courses, tell: Tell) -> Iterator[str]:
    """The courses across one field."""
    yield tell(f"{name}, across", courses.across)
    yield tell(f"{name}, courses", courses.courses)
    yield f"{name}: a {courses.centered_on} lies on the middle line."
    yield tell(f"{name}, face of the edge boards", courses.edge)
    yield tell(f"{name}, first board ripped to", courses.first_rip)
    yield tell(f"{name}, last board ripped to", courses.last_rip)


def movement_in_words(movement: BoardMovement, tell: Tell) -> Iterator[str]:
    """How boards move, and what the trim laps over them."""
    wood = movement.species.replace("_", " ") if movement.species else "wood of that coefficient"
    yield f"Movement of {movement.cut} {wood}, {movement.fastening}:"
    yield tell("Movement, coefficient for each percent of moisture", movement.coefficient)
    for name in ("now", "driest", "dampest"):
        yield from _moisture(f"Movement, percent of moisture {name}", getattr(movement, name), tell)
    yield tell("Movement, width", movement.moving_width)
    for name in ("shrink", "swell", "lap"):
        figure = getattr(movement, name)
        if figure is not None:
            yield tell(f"Movement, {name}", figure)


def _moisture(label: str, moisture: WoodMoistureContent, tell: Tell) -> Iterator[str]:
    if moisture.sorption is not None:
        for name in ("w", "k", "k1", "k2"):
            yield tell(f"{label}, {name.upper()}", getattr(moisture.sorption, name))
    yield tell(label, moisture.percent)


def rip_in_words(rip: SheetRip, tell: Tell) -> Iterator[str]:
    """How many strips of one width a sheet gives."""
    name = f"{rip.part.capitalize()} of {', '.join(rip.profiles)} from {rip.stock}"
    yield tell(f"{name}, width", rip.width)
    yield tell(f"{name}, strips to a sheet", rip.strips)
    yield tell(f"{name}, widest for one strip more", rip.one_more)
