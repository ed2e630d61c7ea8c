"""Cautions about columns: beams cut round them, strips left beside them, panels that go round."""

from collections.abc import Iterator

from lacunar.layout.names import first_few
from lacunar.layout.outline_records import OutlinedRoom
from lacunar.layout.records import Caution

_COLUMNS = "/room/columns"


def column_cautions(room: OutlinedRoom) -> Iterator[Caution]:
    """What columns ask of beams and panels."""
    held = [column.name for column in room.columns if column.stands_in]
    if held:
        yield Caution(
            code="column_in_beam",
            text=f"Beams go on about {first_few(held)}: their bottoms are cut round what stands in"
            " them, boards and backing end at it. A structural column is never cut, notched or"
            " drilled.",
            figures={"columns": len(held)},
            pointer=_COLUMNS,
        )
    beside = [column.name for column in room.columns if column.leaves_beside]
    if beside:
        yield Caution(
            code="column_beside_beam",
            text=f"Beams end at {first_few(beside)} though a part of their width would pass beside:"
            " what is left there belongs to the coffer. A fixed beam in line with the column, or"
            " one wide enough to hold it, reads better.",
            figures={"columns": len(beside)},
            pointer=_COLUMNS,
        )
    round_it = [coffer.id for coffer in room.partial_coffers if coffer.holes]
    if round_it and any(coffer.panel_length for coffer in room.partial_coffers):
        yield Caution(
            code="panel_round_column",
            text=f"Panels of {first_few(round_it)} go round a column that stands there already:"
            " part them at it.",
            figures={"coffers": len(round_it)},
            pointer=_COLUMNS,
        )
    tight = [coffer.id for coffer in room.partial_coffers if coffer.crown_meets]
    if tight:
        yield Caution(
            code="crown_meets_in_cut_coffer",
            text=f"In {first_few(tight)} two runs of crown would meet where the coffer is narrow,"
            " beside a column or a wall: end the crown there, or take a smaller one.",
            figures={"coffers": len(tight)},
            pointer="/crown",
        )
