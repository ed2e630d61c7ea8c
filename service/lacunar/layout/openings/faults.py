"""What makes measured openings impossible, and which measurement to take again."""

from collections.abc import Iterator, Mapping, Sequence

from lacunar.layout.names import from_to
from lacunar.layout.quadrilaterals import (
    Quadrilateral,
    diagonal_by_the_rest,
    is_triangle,
    side_by_the_rest,
)
from lacunar.layout.records import Coffer
from lacunar.measure.angle import Angle
from lacunar.measure.figure import LengthFigure
from lacunar.measure.length import Length
from lacunar.model.faults import Fault, FigureValue
from lacunar.model.openings import Openings

# Side k of a coffer, from corner k on, lies toward this wall.
SIDE_TOWARD = ("W4", "W3", "W2", "W1")
DIAGONALS = ("rising", "falling")
PLACE = "/measured_openings"

# Beams that are laid out square never stand this far off it: the figure is a slip (this project's
# choice).
LEAST_CORNER = Angle.of_degrees(60)
MOST_CORNER = Angle.of_degrees(120)


def grid_faults(
    openings: Openings, grid: str, coffers: Sequence[Coffer], cut: Sequence[str]
) -> Iterator[Fault]:
    """The fault of another grid, or those of coffers that it does not have or has otherwise."""
    known = {*(coffer.id for coffer in coffers), *cut}
    measured = [each.coffer for each in openings.coffers]
    if openings.grid != grid:
        yield Fault(
            code="measured_in_other_grid",
            pointer=f"{PLACE}/grid",
            message=f"The openings were measured in grid {openings.grid}, and this is {grid}.",
            remedy="Send the spec that was measured; or measure what changed, and name this grid.",
            figures={
                "measured_in": openings.grid,
                "grid": grid,
                "measured": ", ".join(measured),
                "orphans": ", ".join(each for each in measured if each not in known),
            },
        )
        return
    for number, each in enumerate(measured):
        if each not in known:
            yield Fault(
                code="coffer_not_in_grid",
                pointer=f"{PLACE}/coffers/{number}/coffer",
                message=f"The grid has no coffer {each}.",
                remedy=f"Take its id from the plan: {from_to([each.id for each in coffers])}.",
                figures={"coffer": each, "known": from_to([one.id for one in coffers])},
            )
    for number, one in enumerate(openings.coffers):
        if (one.coffer in cut and one.by_walls) or (one.coffer not in cut and one.by_numbers):
            way = "numbers of sides and corners" if one.coffer in cut else "walls"
            yield Fault(
                code="opening_told_otherwise",
                pointer=f"{PLACE}/coffers/{number}",
                message=f"{one.coffer} is measured by the {way}, and it is told otherwise.",
                remedy="Tell a whole coffer by sides and diagonals, a cut one by cut_sides and"
                " cut_diagonals.",
                figures={"coffer": one.coffer},
            )


def triangle_faults(place: str, coffer: str, shape: Quadrilateral) -> Iterator[Fault]:
    """The faults of a diagonal that two sides do not reach, or reach past."""
    for name, numbers, diagonal in shape.triangles():
        one, other = (shape.sides[number] for number in numbers)
        if not is_triangle(one, other, diagonal):
            walls = [SIDE_TOWARD[number] for number in numbers]
            yield Fault(
                code="opening_cannot_close",
                pointer=f"{place}/diagonals/{name}",
                message=f"The sides of {coffer} toward {walls[0]} and {walls[1]} and its {name}"
                " diagonal make no triangle.",
                remedy="Measure these three again.",
                figures={"coffer": coffer, walls[0]: one, walls[1]: other, name: diagonal},
            )


def corner_faults(place: str, coffer: str, corners: Sequence[Angle]) -> Iterator[Fault]:
    """The fault of a corner that no beams laid out square could leave."""
    for number, angle in enumerate(corners):
        if LEAST_CORNER <= angle <= MOST_CORNER:
            continue
        walls = f"{SIDE_TOWARD[number - 1]} and {SIDE_TOWARD[number]}"
        yield Fault(
            code="opening_cannot_close",
            pointer=f"{place}/diagonals",
            message=f"By its diagonal, {coffer} has a corner of {angle.tenths} between {walls},"
            " which no beams laid out square could leave.",
            remedy="Measure the diagonal and these two sides again.",
            figures={"coffer": coffer, "corner": angle.tenths, "between": walls},
        )
        return


def closing_faults(
    place: str,
    coffer: str,
    shape: Quadrilateral,
    planned: Mapping[str, Length],
    errors: tuple[LengthFigure, Length],
) -> Iterator[Fault]:
    """The fault of measurements that contradict each other, with the one to take again.

    Beams stand near their places. So of all measurements that could be the wrong one, the one is
    named that would come nearest to plan if it were mended by itself.

    Parameters: `place` and `coffer`; `shape` as measured; `planned` sizes by the names of the
    measurements; `errors`, the closing error and its limit.
    """
    error, limit = errors
    if abs(error.value) <= limit:
        return
    mended = {name: each for name, each in _mended(shape) if each is not None}
    ranked = sorted(mended, key=lambda name: abs(mended[name] - planned[name]))
    figures: dict[str, FigureValue] = {
        "coffer": coffer,
        "closing_error": error.value,
        "limit": limit,
    }
    told = "all of them"
    if ranked:
        told = _told(ranked[0])
        figures |= {"take_again": ranked[0], "would_close_at": mended[ranked[0]]}
    if len(ranked) > 1:
        figures |= {"or_else": ranked[1], "or_else_at": mended[ranked[1]]}
    yield Fault(
        code="opening_does_not_close",
        pointer=place,
        message=f"The sides and diagonals of {coffer} contradict each other by more than a tape is"
        " off.",
        remedy=f"Take {told} again; if it holds, take the others.",
        figures=figures,
    )


def _told(name: str) -> str:
    return f"the {name} diagonal" if name in DIAGONALS else f"the side toward {name}"


def _mended(shape: Quadrilateral) -> Iterator[tuple[str, Length | None]]:
    """What each measurement would have to be for all others to hold."""
    for name in DIAGONALS:
        yield name, diagonal_by_the_rest(shape, name)
    for number, wall in enumerate(SIDE_TOWARD):
        yield wall, side_by_the_rest(shape, number)
