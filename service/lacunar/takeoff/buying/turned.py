"""Boards that fill coffers, if they ran the other way: what else could be bought."""

from collections.abc import Sequence
from dataclasses import replace

from lacunar.layout.ceiling_layout import lay_out
from lacunar.layout.records import Layout
from lacunar.model.ceiling import Ceiling
from lacunar.model.faults import SpecRefused
from lacunar.model.room import RunName
from lacunar.takeoff.part_records import Part
from lacunar.takeoff.parts import parts_from
from lacunar.takeoff.sources.boards import board_pieces
from lacunar.takeoff.sources.source import Source

_OTHER = {RunName.LENGTH: RunName.WIDTH, RunName.WIDTH: RunName.LENGTH}


def turned_boards(layouts: Sequence[Layout]) -> tuple[Part, ...]:
    """Turn ceilings into the boards they would have the other way, in all of them.

    Empty where there are no boards, or where one ceiling cannot have them so.
    """
    made: dict[int, Layout] = {}
    for layout in layouts:
        boards = layout.ceiling.panel.boards
        if boards is None or id(layout) in made:
            continue
        panel = replace(
            layout.ceiling.panel, boards=replace(boards, parallel_to=_OTHER[boards.parallel_to])
        )
        ceiling: Ceiling = replace(layout.ceiling, panel=panel)
        try:
            made[id(layout)] = lay_out(ceiling)
        except SpecRefused:
            return ()
    return parts_from(
        pieces
        for number, layout in enumerate(layouts, start=1)
        if id(layout) in made
        for pieces in board_pieces(Source(number, made[id(layout)]))
    )
