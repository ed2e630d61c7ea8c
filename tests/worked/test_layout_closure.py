"""Sums that must close over a whole ceiling, worked by hand."""

from fractions import Fraction
from itertools import pairwise

from lacunar.layout.records import Layout, MarkKind
from lacunar.measure.length import Length
from lacunar.measure.rounding import STEPS, round_to
from tests.layout.laying_out import box, inches, laid_out, room, run

SIXTEENTH = STEPS[1]


def six_inch_beams(length: object, width: object, coffers: tuple[int, int]) -> Layout:
    """A room with beams 6 in wide and nothing at the walls."""
    return laid_out(
        {
            "room": room(length, width),
            "beams": {"crosswise": box(bottom="1x6", width=6), "through": "crosswise"},
            "grid": {"length": run(coffers[0]), "width": run(coffers[1])},
        }
    )


# Algebra. A room of 168 x 144 with 3 beams across and 2 along, 6 wide: 12 coffers of 37 1/2 x 44
# are 19800 square inches; beams 3 * 6 * 144 + 2 * 6 * 168 - 6 crossings of 36 = 4392; together
# 24192 = 168 square feet.
def test_coffers_and_beams_cover_the_room():
    layout = six_inch_beams(168, 144, (4, 3))
    coffers = sum(c.length.value.inches * c.width.value.inches for c in layout.coffers)
    pieces = sum(
        beam.width.value.inches * piece.length.value.inches
        for beam in layout.beams
        for piece in beam.pieces
    )
    assert len(layout.coffers) == 12
    assert coffers == 19800
    assert pieces == 4392
    assert coffers + pieces == 24192 == 168 * 144


# Algebra. 163 3/8 with 4 beams of 5 1/2: (163 3/8 - 22)/5 = 28 11/40. Shown to the sixteenth each
# space is 28 1/4, and 5 * 28 1/4 + 22 = 163 1/4: an eighth short. Marks from one datum are not.
def test_rounding_each_space_would_not_close_but_marks_from_the_datum_do():
    layout = laid_out(
        {
            "room": room("163 3/8", 40),
            "mark_to": "1/16",
            "beams": {"crosswise": box(bottom="1x6", width=5.5)},
            "grid": {"length": run(5), "width": run(1)},
        }
    )
    (opening,) = {opening.value for opening in layout.length.zones[0].openings}
    assert opening.inches == Fraction(28275, 1000)
    naive = round_to(opening, SIXTEENTH) * 5 + inches("5 1/2") * 4
    assert naive == inches("163 1/4")

    faces = [
        mark.mark for mark in layout.marks[0].marks if mark.kind in (MarkKind.WALL, MarkKind.FACE)
    ]
    spaces = [after - before for before, after in pairwise(faces)]
    assert sum(spaces, Length.of_inches(0)) == inches("163 3/8")
    # 28 11/40 - 28 1/4 = 1/40; so no space is off by more than a sixteenth
    assert set(spaces[::2]) == {inches("28 1/4"), inches("28 5/16")}
