"""Backing, joists and heights of real situations, worked by hand."""

import pytest

from lacunar.layout.backing_records import Forms, JoistRelation
from lacunar.layout.records import Layout
from lacunar.measure.length import Length
from tests.layout.laying_out import Spec, box, inches, laid_out, room, run

WIDTHWISE = {"parallel_to": "width", "spacing": 16, "first": 8}


def framed(**more: object) -> Spec:
    """A spec of a room 192 x 144 with four by three coffers."""
    return {
        "room": room(192, 144, joists=WIDTHWISE),
        "beams": {"crosswise": box()},
        "grid": {"length": run(4, "half"), "width": run(3, "half")},
        **more,
    }


def counts(forms: Forms) -> tuple[int, ...]:
    """Crosses, tees, ells, wall ends, soffit ends, middle pieces, all."""
    return tuple(getattr(forms, name).value for name in Forms.__slots__)


# A trade article on standard box beams: bottom 1x4 between sides 1x6, 5 wide and 5 1/2 deep, reveal
# 1/4; blocks about every 2 ft. Block width 5 - 1 1/2 = 3 1/2, height 5 1/2 - 3/4 - 1/4 = 4 1/2. A
# beam of 14 ft takes ceil(168/24) + 1 = 8 blocks.
def test_a_beam_of_14_feet_along_the_joists_takes_eight_blocks():
    layout = laid_out(
        {
            "room": room(240, 168, joists={**WIDTHWISE, "ceiling": "open"}),
            "beams": {
                "crosswise": {
                    "sides": "1x6",
                    "bottom": "1x4",
                    "bottom_joint": "between",
                    "reveal": "1/4",
                }
            },
            "grid": {"length": run(2), "width": run(1)},
        }
    )
    (profile,) = layout.profiles
    block = next(part for part in profile.parts if part.name == "backing")
    assert (profile.finished_width.value, profile.drop.value) == (inches("5"), inches("5 1/2"))
    assert (block.width.value, block.thickness.value) == (inches("3 1/2"), inches("4 1/2"))
    (line,) = layout.backing.lines
    (piece,) = line.pieces
    assert piece.length.value == inches("168")
    assert piece.count.value == 8
    # From 2 in at each end, seven steps of 164/7 = 23 3/7: about 2 ft.
    assert [place.value.inches for place in piece.places[:2]] == [2, 2 + inches("164").inches / 7]
    assert piece.places[-1].value == inches("166")


# The same article: screws into joists where the beam crosses them, hollow-wall anchors where it
# runs along between two. Joists at 8, 24, ...: the eighth at 8 + 7 * 16 = 120, the beam's center.
def test_a_beam_along_the_joists_is_on_one_or_between_two():
    on = laid_out(
        {"room": room(240, 168, joists=WIDTHWISE), "grid": {"length": run(2), "width": run(1)}}
    ).backing.lines[0]
    assert (on.relation, on.joist) == (JoistRelation.ON_JOIST, "J8")
    # With the first joist at 14 the neighbors of 120 are 110 and 126: a block of 16 - 1 1/2.
    between = laid_out(
        {
            "room": room(240, 168, joists={**WIDTHWISE, "first": 14}),
            "grid": {"length": run(2), "width": run(1)},
        }
    ).backing.lines[0]
    assert between.relation is JoistRelation.BETWEEN
    assert between.bay is not None
    assert (between.bay.near, between.bay.far) == ("J7", "J8")
    assert between.bay.block.value == inches("14 1/2")


# A trade article on a production method builds backing as forms. Three by four coffers with beams
# at all walls: 2 * 3 = 6 crosses, 2 * 3 + 2 * 2 = 10 tees, 4 ells, 5 * 3 + 4 * 4 = 31 middle
# pieces, 51 forms. With nothing at the walls: the 6 crosses, no tees or ells, 3 * 3 + 2 * 4 = 17
# middle pieces, 2 * 3 + 2 * 2 = 10 ends at walls.
@pytest.mark.parametrize(
    ("walls", "expected"),
    [
        ("half", (6, 10, 4, 0, 0, 31, 51)),
        ("full", (6, 10, 4, 0, 0, 31, 51)),
        ("none", (6, 0, 0, 10, 0, 17, 33)),
    ],
)
def test_forms_of_a_production_method(walls: str, expected: tuple[int, ...]):
    layout = laid_out(framed(grid={"length": run(4, walls), "width": run(3, walls)}))
    assert counts(layout.backing.forms) == expected


# Mixed walls, counted off a sketch of four by three coffers: half beams at W1 and W2, a bare wall
# W3, a soffit at W4. Beams: 3 crosswise, 2 lengthwise: 6 crosses. Tees: 3 at W2, 2 at W1. Ell:
# W1/W2. Ends at walls: 2 lengthwise and the beam of W2 at W3: 3. At the soffit: 3 crosswise and the
# beam of W1: 4. Middle pieces: 3 * 3 + 2 * 4 inside, 3 along W1, 4 along W2: 24. In all 43.
def test_forms_with_mixed_walls():
    grid = {
        "length": {"coffers": 4, "start": "half", "end": "none"},
        "width": {"coffers": 3, "start": {"soffit": 12}, "end": "half"},
    }
    assert counts(laid_out(framed(grid=grid)).backing.forms) == (6, 5, 1, 3, 4, 24, 43)


# An owner's account of panels set by joists 16 in apart: each gap of 1/8 pushes what follows off
# the joists, 1/2 in after four, of 3/4 in bearing: 1/4 is left. Here a beam is pushed off instead.
def test_half_an_inch_off_a_joist_leaves_a_quarter_of_bearing():
    line = laid_out(
        {
            "room": room(240, 168, joists={**WIDTHWISE, "first": "7 1/2"}),
            "grid": {"length": run(2), "width": run(1)},
        }
    ).backing.lines[0]
    assert line.relation is JoistRelation.ON_JOIST
    assert line.offset is not None
    assert line.bearing is not None
    assert (line.offset.value, line.bearing.value) == (inches("1/2"), inches("1/4"))


def heights_of(height: object, drop: object, **more: object) -> Layout:
    """A room of that height with beams of that drop."""
    return laid_out(
        {
            "room": room(192, 144, height, **more),
            "beams": {"crosswise": box("1x8", drop=drop)},
            "grid": {"length": run(4), "width": run(3)},
        }
    )


# A forum of code officials on how low beams may hang: 7'-6 less 6 is 7'-0, the model code's least
# height (International Residential Code, R305.1), and passes; 7'-2 less 6 is 6'-8 and passes only
# where an older text lets beams at least 4 ft apart hang 6 in below it, that is, a limit of 6'-6.
# The limit and its edition are input; no figure of ours says what a code allows.
@pytest.mark.parametrize(
    ("height", "more", "enough"),
    [
        (90, {}, True),
        (86, {}, False),
        (86, {"headroom": 78, "code_edition": "2006 text, beams 4 ft apart"}, True),
    ],
)
def test_how_low_a_beam_may_hang_is_asked_of_the_spec(
    height: int, more: dict[str, object], enough: bool
):
    layout = heights_of(height, 6, **more)
    assert layout.heights.worst_height.value == inches(str(height - 6))
    assert all(clear.enough for clear in layout.headroom) is enough
    assert layout.heights.code_edition == more.get("code_edition", "")


# International Residential Code R305.1: 7 ft, 2134 mm, in habitable rooms. Local codes change it.
def test_the_limit_taken_is_the_model_codes_height():
    assert heights_of(96, 6).heights.limit == Length.of_feet(7)
    metric = laid_out({"units": "mm", "room": room(5000, 4000, 2600)})
    assert metric.heights.limit == Length.of_millimeters(2134)


# A recent text, as arithmetic only: where beams are 36 in clear apart they may come down to 78 in.
# In a room of 8 ft that is 96 - 78 = 18 in of beam; how far apart they are is told beside it.
def test_the_deepest_beam_and_the_gap_between_beams_are_told_together():
    layout = heights_of(96, 7, headroom=78)
    assert layout.heights.most_drop.value == inches("18")
    # 192 less three beams of 5, in four: 44 1/4; 144 less two, in three: 44 2/3.
    along, across = layout.heights.gaps
    assert along.opening.value == inches("44 1/4")
    assert across.opening.value == inches("44 2/3")
    assert along.centers is not None
    assert along.centers.value == inches("49 1/4")


def test_the_caution_names_the_edition_the_limit_was_taken_from():
    layout = heights_of(86, 6, code_edition="Residential code 2021, as adopted here")
    (caution,) = (c for c in layout.cautions if c.code == "headroom_below_limit")
    assert "Residential code 2021, as adopted here" in caution.text
    (plain,) = (c for c in heights_of(86, 6).cautions if c.code == "headroom_below_limit")
    assert "taken from" not in plain.text
