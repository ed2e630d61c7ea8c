"""Paper sizes, margins and standard drawing scales.

Sizes: ISO 216 (A series), ANSI/ASME Y14.1 (letter to ANSI D), the ARCH series, landscape [mm].
Margins: ISO 5457 for the A series (20 mm filing edge left, 10 mm elsewhere); half an inch all round
for the US sizes (common practice, no source). Scales: ISO 5455 reductions; US customary
architectural scales. Margins and ISO 5455 from memory of the standards.
"""

from dataclasses import dataclass, replace
from fractions import Fraction

from lacunar.measure.units import Units
from lacunar.model.drawing import Paper


@dataclass(frozen=True, slots=True)
class PaperSize:
    """A named paper in landscape: width, height, filing margin and other margins [mm].

    What is composed on it is made `enlargement` times as large in the end.
    """

    paper: Paper
    text: str
    width: float
    height: float
    filing: float
    margin: float
    enlargement: Fraction = Fraction(1)

    def composed_on(self, enlargement: Fraction) -> "PaperSize":
        """So much smaller, to be composed on with letters and lines of usual size."""
        return replace(
            self,
            width=float(self.width / enlargement),
            height=float(self.height / enlargement),
            filing=float(self.filing / enlargement),
            margin=float(self.margin / enlargement),
            enlargement=enlargement,
        )


def _iso(paper: Paper, width: float, height: float) -> PaperSize:
    return PaperSize(paper, paper.value.upper(), width, height, filing=20.0, margin=10.0)


def _us(paper: Paper, text: str, width: float, height: float) -> PaperSize:
    return PaperSize(paper, text, width * 25.4, height * 25.4, filing=12.7, margin=12.7)


PAPER_SIZES: dict[Paper, PaperSize] = {
    size.paper: size
    for size in (
        _us(Paper.LETTER, "LETTER 11 x 8 1/2 in", 11, 8.5),
        _us(Paper.TABLOID, "TABLOID 17 x 11 in", 17, 11),
        _us(Paper.ANSI_C, "ANSI C 22 x 17 in", 22, 17),
        _us(Paper.ANSI_D, "ANSI D 34 x 22 in", 34, 22),
        _us(Paper.ARCH_C, "ARCH C 24 x 18 in", 24, 18),
        _us(Paper.ARCH_D, "ARCH D 36 x 24 in", 36, 24),
        _iso(Paper.A4, 297, 210),
        _iso(Paper.A3, 420, 297),
        _iso(Paper.A2, 594, 420),
        _iso(Paper.A1, 841, 594),
    )
}

US_PAPERS = (
    Paper.LETTER,
    Paper.TABLOID,
    Paper.ANSI_C,
    Paper.ARCH_C,
    Paper.ANSI_D,
    Paper.ARCH_D,
)
ISO_PAPERS = (Paper.A4, Paper.A3, Paper.A2, Paper.A1)


def larger_papers(paper: Paper) -> tuple[Paper, ...]:
    """The papers of the same family that are larger than this one, smallest first."""
    family = ISO_PAPERS if paper in ISO_PAPERS else US_PAPERS
    return family[family.index(paper) + 1 :]


@dataclass(frozen=True, slots=True)
class Scale:
    """A standard scale: `ratio` millimeters of the thing to one of paper, and how it is written.

    The paper is the one that is composed on: for prints at half size, a smaller one.
    """

    ratio: Fraction
    text: str


ARCHITECTURAL_SCALES = (
    Scale(Fraction(1), "FULL SIZE"),
    Scale(Fraction(2), '6" = 1\'-0"'),
    Scale(Fraction(4), '3" = 1\'-0"'),
    Scale(Fraction(8), '1 1/2" = 1\'-0"'),
    Scale(Fraction(12), '1" = 1\'-0"'),
    Scale(Fraction(16), '3/4" = 1\'-0"'),
    Scale(Fraction(24), '1/2" = 1\'-0"'),
    Scale(Fraction(32), '3/8" = 1\'-0"'),
    Scale(Fraction(48), '1/4" = 1\'-0"'),
    Scale(Fraction(64), '3/16" = 1\'-0"'),
    Scale(Fraction(96), '1/8" = 1\'-0"'),
    Scale(Fraction(128), '3/32" = 1\'-0"'),
    Scale(Fraction(192), '1/16" = 1\'-0"'),
)
# 1:25 is not among the reductions ISO 5455 recommends; drawing offices use it for rooms (common
# practice, no source), and without it many rooms would fall from 1:20 to 1:50.
METRIC_SCALES = tuple(Scale(Fraction(n), f"1:{n}") for n in (1, 2, 5, 10, 20, 25, 50, 100, 200))


NOT_TO_SCALE = Scale(Fraction(1), "NTS")
"""What is written under a picture."""
HALF_SIZE = Fraction(7, 5)
"""How much larger all is that is printed at half size: capitals of 2.5 mm become 3.5, as the next
member of the ISO 3098 series asks, lines of 0.18 mm become 0.25. From memory of the standard."""


def scales(units: Units, *, smallest: int, largest: int) -> tuple[Scale, ...]:
    """Standard scales with a ratio from `largest` to `smallest`, largest drawing first."""
    table = ARCHITECTURAL_SCALES if units is Units.INCH else METRIC_SCALES
    return tuple(s for s in table if largest <= s.ratio <= smallest)
