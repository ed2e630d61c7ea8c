"""Words beside a section stand in an order in which their leaders do not cross."""

from itertools import combinations

from hypothesis import given
from hypothesis import strategies as st

from lacunar.drawing.checker.leaders import crosses
from lacunar.drawing.checker.shapes import Spot, Stroke
from lacunar.drawing.elements import Pt
from lacunar.drawing.section.leader_order import uncrossed

PITCH = 5.0
places = st.lists(
    st.tuples(st.integers(0, 60), st.integers(0, 80)), min_size=1, max_size=9, unique=True
)


@given(places)
def test_no_leader_crosses_another_where_words_are_of_one_height(places):
    targets = [Pt(float(x), float(y)) for x, y in places]
    order = uncrossed(targets, [PITCH] * len(targets), Pt(70.0, 10.0))
    leaders = [
        Stroke(Spot(targets[n].x, targets[n].y), Spot(70.0, 10.0 + PITCH * row), 0)
        for row, n in enumerate(order)
    ]
    assert not any(crosses(one, other) for one, other in combinations(leaders, 2))


def test_leaders_that_fall_have_the_nearer_target_above_and_leaders_that_rise_below():
    # Targets at (0, 20) and (30, 19). Down to (40, 30) the farther leader passes x = 30 at 27.5,
    # under the nearer target; up to (40, 0) it passes there at 5, over it.
    assert uncrossed([Pt(0.0, 20.0), Pt(30.0, 19.0)], [5.0, 5.0], Pt(40.0, 30.0)) == [1, 0]
    assert uncrossed([Pt(0.0, 20.0), Pt(30.0, 19.0)], [5.0, 5.0], Pt(40.0, 0.0)) == [0, 1]
