"""Rules about columns that need no setting out."""

from collections.abc import Iterator

from lacunar.model.columns import FEWEST_CORNERS, ColumnSpec, is_convex
from lacunar.model.faults import Fault
from lacunar.model.rule_case import RuleCase, missing

_COLUMNS = "/room/columns"


def columns_are_told_in_one_way(case: RuleCase) -> Iterator[Fault]:
    """A center and both sizes, or corners; never some of each."""
    for number, column in enumerate(case.spec.room.columns):
        place = f"{_COLUMNS}/{number}"
        if not case.sound(place):
            continue
        said = {name: getattr(column, name) for name in ("x", "y", "length", "width")}
        if column.points is None:
            for name in (name for name, each in said.items() if each is None):
                yield missing(f"{place}/{name}", f"The column's {name}")
        elif any(each is not None for each in said.values()):
            yield Fault(
                code="column_unclear",
                pointer=place,
                message="Where the column stands is told by its corners and beside them.",
                remedy="Give x, y, length and width, or its corners as points, not both.",
            )
        else:
            yield from _polygon(place, column)


def _polygon(place: str, column: ColumnSpec) -> Iterator[Fault]:
    points = column.points or ()
    if len(points) < FEWEST_CORNERS or not is_convex(points):
        yield Fault(
            code="column_not_convex",
            pointer=f"{place}/points",
            message="A column has at least three corners, goes round once, and no corner of it"
            " turns inward or lies in a side.",
            remedy="Tell one that turns inward as a chimney breast in the outline, or give the"
            " polygon about it.",
            figures={"corners": len(points)},
        )


def columns_have_names_of_their_own(case: RuleCase) -> Iterator[Fault]:
    """Columns are known by their names on sheets and in tables."""
    seen: set[str] = set()
    for number, column in enumerate(case.spec.room.columns):
        pointer = f"{_COLUMNS}/{number}/name"
        if column.name in seen and case.sound(pointer):
            yield Fault(
                code="label_doubled",
                pointer=pointer,
                message="Another column has the same name.",
                remedy="Give each its own name, or leave the names out.",
                figures={"name": column.name or ""},
            )
        seen |= {column.name} if column.name else set()


def columns_stand_in_rooms_that_hold_them(case: RuleCase) -> Iterator[Fault]:
    """A surveyed room of four walls has no place for columns; an outline of it has."""
    room = case.spec.room
    if room.columns and room.survey is not None and case.sound(_COLUMNS, "/room/survey"):
        yield Fault(
            code="columns_in_survey",
            pointer=_COLUMNS,
            message="Columns are laid out in rooms told by length and width or by an outline, and"
            " this one is surveyed.",
            remedy="Give the room as an outline with its corners as points, or with its sides and"
            " corner angles.",
        )


COLUMN_RULES = (
    columns_are_told_in_one_way,
    columns_have_names_of_their_own,
    columns_stand_in_rooms_that_hold_them,
)
