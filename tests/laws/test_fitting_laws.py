"""Laws of the order of fitting, on specs as they might come in."""

import json
from itertools import pairwise

import pytest

from lacunar.exchange.spec_json import read_spec
from lacunar.layout.ceiling_layout import lay_out
from lacunar.layout.fitting_records import Because, Stage
from lacunar.layout.records import Layout
from lacunar.measure.length import ZERO
from lacunar.model.assumptions import resolve
from lacunar.model.faults import SpecRefused
from lacunar.model.room import RunName
from tests.laws.random_specs import random_specs

DRAWN = 160


@pytest.fixture(scope="module")
def layouts() -> list[Layout]:
    """Those of the specs drawn that can be built."""
    found = []
    for spec in random_specs(DRAWN, seed=71):
        try:
            found.append(lay_out(resolve(read_spec(json.dumps(spec).encode())).ceiling))
        except SpecRefused:
            continue
    assert len(found) > DRAWN // 2
    return found


def test_law_every_step_comes_after_all_that_it_waits_for(layouts: list[Layout]):
    for layout in layouts:
        steps = layout.fitting.steps
        assert [step.number for step in steps] == list(range(1, len(steps) + 1))
        assert len({step.stage for step in steps}) == len(steps)
        for step in steps:
            assert step.of
            for wait in step.needs:
                assert wait.number < step.number
                assert steps[wait.number - 1].stage is wait.stage


def test_law_everything_is_fitted_once(layouts: list[Layout]):
    """By the boards of the profiles, without asking the stages."""
    for layout in layouts:
        of = {step.stage: set(step.of) for step in layout.fitting.steps}
        sided = {
            user
            for profile in layout.profiles
            if any(part.name == "side" for part in profile.parts)
            for user in profile.used_by
        }
        sides, folded = of.get(Stage.SIDES, set()), of.get(Stage.FOLDED_BEAMS, set())
        assert sides | folded == sided
        assert not sides & folded
        flat = {
            user
            for profile in layout.profiles
            if {part.name for part in profile.parts} in ({"bottom"}, {"bottom", "upper_board"})
            for user in profile.used_by
        }
        assert of.get(Stage.BOTTOMS, set()) == sides | flat
        filled = of.get(Stage.PANELS, set()) | of.get(Stage.BOARDS, set())
        everywhere = {coffer.id for coffer in layout.coffers}
        assert filled == (everywhere if layout.ceiling.panel.kind != "existing" else set())


def test_law_what_does_not_pass_the_mouth_is_up_before_it_narrows(layouts: list[Layout]):
    met = 0
    for layout in layouts:
        number = {step.stage: step.number for step in layout.fitting.steps}
        for passing in layout.fitting.passing:
            fits = (
                passing.length.value <= passing.mouth_length.value
                and passing.width.value <= passing.mouth_width.value
            )
            assert fits is (passing.too_small_after is None)
            if passing.too_small_after is not None:
                met += 1
                lifted = {"panel": "panels", "board": "boards", "crown_frame": "crown_frames"}
                assert number[Stage(lifted[passing.piece])] < number[passing.too_small_after]
    assert met


def test_law_every_reason_is_met(layouts: list[Layout]):
    met = {w.because for layout in layouts for s in layout.fitting.steps for w in s.needs}
    assert met == set(Because)


def test_law_no_piece_of_a_panel_is_longer_than_its_sheet_and_all_make_up_the_panel(
    layouts: list[Layout],
):
    on_joists = 0
    for layout in layouts:
        sheet = layout.ceiling.panel.sheet
        for panel in layout.panels:
            along = panel.long_edge is RunName.LENGTH
            edges = (sheet.length, sheet.width) if along else (sheet.width, sheet.length)
            ways = (
                (panel.length, panel.seams_along_length),
                (panel.width, panel.seams_along_width),
            )
            for (size, seams), edge in zip(ways, edges, strict=True):
                places = [ZERO, *(seam.value for seam in seams), size.value]
                assert all(ZERO < far - near <= edge for near, far in pairwise(places))
            for bearing in panel.seam_bearings:
                on_joists += bearing.bearing is not None
                assert (bearing.bearing is None) is (bearing.backing is not None)
    assert on_joists
