"""Blocks on a page."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from lacunar.drawing.annotation import Block
from lacunar.drawing.painters.fonts import load_typeface
from lacunar.drawing.paper import PAPER_SIZES
from lacunar.drawing.sheets.placing import (
    BLOCK_GAP,
    FRAME_PAD,
    Box,
    band_below,
    below,
    beside,
    flow,
    frame_box,
)
from lacunar.drawing.sheets.tables import rows_that_fit
from lacunar.drawing.sheets.word_tables import TableSpace, WordColumn, in_blocks
from lacunar.model.drawing import Paper

FRAME = frame_box(PAPER_SIZES[Paper.ARCH_D])
TITLE = Block(96.0, 90.0, ())

heights = st.lists(st.floats(5, 200), max_size=12)


def blocks_of(heights):
    return [Block(91.0, height, ()) for height in heights]


def overlaps(one, other):
    return (
        one.x < other.x + other.block.width
        and other.x < one.x + one.block.width
        and one.y < other.y + other.block.height
        and other.y < one.y + one.block.height
    )


def held(placed):
    for n, one in enumerate(placed):
        assert FRAME.left <= one.x
        assert one.x + one.block.width <= FRAME.right
        assert FRAME.top <= one.y
        assert one.y + one.block.height <= FRAME.bottom
        assert not any(overlaps(one, other) for other in placed[n + 1 :])


@given(heights, st.integers(1, 3))
def test_columns_beside_a_plan_keep_blocks_apart_and_in_the_frame(heights, count):
    arrangement = beside(FRAME, count, blocks_of(heights), TITLE)
    held(arrangement.placed)
    assert len(arrangement.placed) - 1 + len(arrangement.left_over) == len(heights)
    assert all(one.x >= arrangement.plan_area.right for one in arrangement.placed)


@given(heights)
def test_a_band_below_a_plan_holds_every_block_or_is_not_made(heights):
    arrangement = below(FRAME, blocks_of(heights), TITLE)
    if arrangement is None:
        return
    held(arrangement.placed)
    assert len(arrangement.placed) == len(heights) + 1
    assert all(one.y >= arrangement.plan_area.bottom for one in arrangement.placed)


@given(heights)
def test_a_band_as_low_as_the_title_hands_back_what_it_does_not_hold(heights):
    arrangement = band_below(FRAME, TITLE.height, blocks_of(heights), TITLE)
    held(arrangement.placed)
    assert len(arrangement.placed) - 1 + len(arrangement.left_over) == len(heights)
    assert arrangement.plan_area.bottom == FRAME.bottom - TITLE.height


def test_a_column_passes_over_what_is_too_tall_and_takes_what_fits():
    blocks = blocks_of([60, 80, 20])
    placed, left_over = flow(blocks, [Box(0, 0, 91, 100)])
    assert [p.block for p in placed] == [blocks[0], blocks[2]]
    assert placed[1].y == 60 + BLOCK_GAP
    assert left_over == (blocks[1],)


@pytest.mark.parametrize("paper", Paper)
def test_the_longest_part_of_a_table_has_room_in_a_column(paper: Paper):
    # On ARCH C, 89 rows of 4.6 mm and the heads fill the column to the last digit.
    frame = frame_box(PAPER_SIZES[paper])
    column = Box(0.0, frame.top + FRAME_PAD, 88.0, frame.bottom - FRAME_PAD)
    space = TableSpace(88.0, rows_that_fit(column.height), load_typeface())
    cells = ("1",) * (space.rows * 2)
    columns = (WordColumn("A", cells), WordColumn("B", cells))
    blocks = tuple(in_blocks("row", "rows", "ROWS", columns, space))
    placed, left_over = flow(blocks, (column, column))
    assert (len(placed), left_over) == (2, ())


@given(st.lists(st.tuples(st.floats(5, 120), st.sampled_from(["", "a", "b"])), max_size=14))
def test_parts_of_one_thing_stand_in_their_order(parts):
    blocks = [
        Block(91.0 + n / 1000, height, (), series) for n, (height, series) in enumerate(parts)
    ]
    columns = [Box(100.0 * n, 0.0, 100.0 * n + 96.0, 150.0) for n in range(3)]
    placed, left_over = flow(blocks, columns)
    assert len(placed) + len(left_over) == len(blocks)
    for series in ("a", "b"):
        stand = [p.block for p in placed if p.block.series == series]
        wait = [block for block in left_over if block.series == series]
        assert [*stand, *wait] == [block for block in blocks if block.series == series]
