"""The coffers: the stretches of both runs, crossed."""

from itertools import chain

from lacunar.layout.names import coffer_id
from lacunar.layout.records import Coffer, ElementKind, Point
from lacunar.layout.runs.run_division import DividedRun


def coffers(length: DividedRun, width: DividedRun) -> tuple[Coffer, ...]:
    """Turn both divided runs into coffers, row by row from the datum.

    Columns count along the length run to the right, rows along the width run upwards.
    """
    columns = [each for each in length.stretches if each.kind is ElementKind.COFFER]
    rows = [each for each in width.stretches if each.kind is ElementKind.COFFER]
    lengths = list(chain.from_iterable(zone.openings for zone in length.zones))
    widths = list(chain.from_iterable(zone.openings for zone in width.zones))
    found = []
    for row, across in enumerate(rows):
        low, high = across.near.value, across.far.value
        for column, along in enumerate(columns):
            left, right = along.near.value, along.far.value
            found.append(
                Coffer(
                    id=coffer_id(row + 1, column + 1),
                    row=row + 1,
                    column=column + 1,
                    corners=(
                        Point(left, low),
                        Point(right, low),
                        Point(right, high),
                        Point(left, high),
                    ),
                    length=lengths[column],
                    width=widths[row],
                )
            )
    return tuple(found)
