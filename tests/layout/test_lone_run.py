"""One run by itself is divided as in a ceiling, and every figure of it tells its sum."""

import pytest

from lacunar.measure.length import Length
from lacunar.measure.units import Units
from lacunar.workflow.division import divide
from tests.layout.laying_out import figures_in
from tests.rule_evaluation import contradictions

inches = Length.of_inches

QUERIES = {
    "as assumed": {},
    "largest": {"largest_opening": inches(30)},
    "held": {"coffers": 5, "held": inches(40)},
    "soffit": {"coffers": 3, "start_soffit": inches(14), "units": Units.INCH},
}


@pytest.mark.parametrize("query", QUERIES.values(), ids=QUERIES)
def test_every_figure_is_what_its_rule_gives(query):
    division = divide({"span": inches(244), "beam_width": inches(6), **query})
    figures = list(figures_in(division.run))
    assert len(figures) > 10
    assert [line for figure in figures for line in contradictions(figure)] == []


@pytest.mark.parametrize("query", QUERIES.values(), ids=QUERIES)
def test_a_run_closes(query):
    run = divide({"span": inches(244), "beam_width": inches(6), **query}).run
    at_walls = sum((each.far.value - each.near.value for each in run.wall_beams), inches(0))
    between = run.beam_width.value * len(run.beams)
    openings = sum((opening.value for opening in run.openings), inches(0))
    assert at_walls + between + openings == run.span.value
