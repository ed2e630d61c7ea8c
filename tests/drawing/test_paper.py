"""Paper and scales against the published series."""

import pytest

from lacunar.drawing.paper import (
    ARCHITECTURAL_SCALES,
    PAPER_SIZES,
    larger_papers,
    scales,
)
from lacunar.measure.units import Units
from lacunar.model.drawing import Paper

# ISO 216, trimmed sizes [mm], long edge first.
ISO_216 = {Paper.A1: (841, 594), Paper.A2: (594, 420), Paper.A3: (420, 297), Paper.A4: (297, 210)}

# ANSI/ASME Y14.1 sizes A to D and the ARCH series [in], long edge first.
US_INCHES = {
    Paper.LETTER: (11, 8.5),
    Paper.TABLOID: (17, 11),
    Paper.ANSI_C: (22, 17),
    Paper.ANSI_D: (34, 22),
    Paper.ARCH_C: (24, 18),
    Paper.ARCH_D: (36, 24),
}


@pytest.mark.parametrize(("paper", "size"), ISO_216.items())
def test_a_series_papers_are_those_of_iso_216(paper, size):
    assert (PAPER_SIZES[paper].width, PAPER_SIZES[paper].height) == size


@pytest.mark.parametrize(("paper", "size"), US_INCHES.items())
def test_us_papers_are_those_of_the_ansi_and_arch_series(paper, size):
    width, height = size
    assert PAPER_SIZES[paper].width == pytest.approx(width * 25.4)
    assert PAPER_SIZES[paper].height == pytest.approx(height * 25.4)


def test_every_named_paper_has_a_size():
    assert set(PAPER_SIZES) == set(Paper)


def test_an_architectural_scale_is_twelve_inches_over_the_inches_it_gives_a_foot():
    # US customary: 1/16, 3/32, 1/8, 3/16, 1/4, 3/8, 1/2, 3/4, 1, 1 1/2, 3, 6 in to the foot are
    # 192, 128, 96, 64, 48, 32, 24, 16, 12, 8, 4, 2 to one (published scale factors).
    published = [192, 128, 96, 64, 48, 32, 24, 16, 12, 8, 4, 2]
    assert sorted((s.ratio for s in ARCHITECTURAL_SCALES if s.ratio > 1), reverse=True) == published


def test_metric_reductions_include_those_iso_5455_recommends():
    # ISO 5455: 1:2, 1:5, 1:10 and their tenfolds (from memory of the standard).
    ratios = {s.ratio for s in scales(Units.MILLIMETER, smallest=200, largest=1)}
    assert {2, 5, 10, 20, 50, 100, 200} <= ratios


def test_scales_come_largest_drawing_first_and_within_the_bounds():
    ratios = [s.ratio for s in scales(Units.INCH, smallest=96, largest=16)]
    assert ratios == [16, 24, 32, 48, 64, 96]


def test_papers_to_turn_to_are_larger_and_of_the_same_family():
    assert larger_papers(Paper.A3) == (Paper.A2, Paper.A1)
    assert larger_papers(Paper.ANSI_D) == (Paper.ARCH_D,)
    assert larger_papers(Paper.A1) == ()
