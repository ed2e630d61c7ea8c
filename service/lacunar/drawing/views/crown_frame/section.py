"""The section of crown as it stands in its corner: its sizes, nailer, and what lies behind it."""

from collections.abc import Iterator
from fractions import Fraction

from lacunar.drawing import style
from lacunar.drawing.annotation import Block
from lacunar.drawing.details.callouts import GAP, Callout, Column, place_callouts
from lacunar.drawing.details.extents import as_block, extent
from lacunar.drawing.dimensions import Axis, Segment, Stop, String, drawn_string, place_strings
from lacunar.drawing.elements import Element, Group, Polyline, Pt, Segments
from lacunar.drawing.hatching import box_corners, diagonal_lines, falling_lines
from lacunar.drawing.paper import Scale
from lacunar.drawing.typeface import Typeface
from lacunar.drawing.views.crown_frame.frames import millimeters
from lacunar.drawing.wording import SheetWording, decimal_mm
from lacunar.layout.moulding_records import CrownSection
from lacunar.layout.records import Layout
from lacunar.measure.length import ZERO, Length
from lacunar.model.moulding import FlatMoulding, FlatPlace

BAND = 4.0
BEYOND = 6.0
WORDS = 60.0
GRAIN_PITCH = 1.3
FIRST_GAP = 1.0


def crown_section_view(
    layout: Layout, number: int, scale: Scale, wording: SheetWording, typeface: Typeface
) -> Block:
    """The crown's section as a block, the corner of side and ceiling at its upper left."""
    crown = layout.mouldings.crown
    assert crown is not None
    drawer = _Section(layout, crown, scale.ratio, wording, typeface)
    drawn = tuple(drawer.drawn())
    box = extent(drawn, typeface)
    column = Column(box.right + GAP, WORDS, box.middle.y)
    words = place_callouts(tuple(drawer.callouts()), column, typeface)
    view = Group(
        "view",
        (
            Group("object", drawn, id=f"object-view-{number}"),
            *drawer.strings(box.left, box.top),
            *words,
        ),
        id=f"view-{number}",
        title="Section of the crown",
        data={
            "view": "crown-section",
            "spring": crown.spring_from_wall.value.tenths,
            "scale": str(scale.ratio),
            "scale-text": scale.text,
        },
    )
    return as_block((view,), typeface)


class _Section:
    """What is drawn of the section, from the corner of side and ceiling: x out, y down."""

    def __init__(
        self,
        layout: Layout,
        crown: CrownSection,
        ratio: Fraction,
        wording: SheetWording,
        typeface: Typeface,
    ) -> None:
        self.crown = crown
        self.ratio = ratio
        self.wording = wording
        self.typeface = typeface
        flats = layout.ceiling.flat_mouldings
        self.flats = tuple(flat for flat in flats if flat.at is FlatPlace.CEILING)
        self.behind = sum((flat.thickness for flat in self.flats), ZERO)
        tall = max([crown.drop.value, *(flat.width for flat in self.flats)])
        self.right = self.on_paper(self.behind + crown.projection.value) + BEYOND
        self.low = self.on_paper(tall) + BEYOND

    def on_paper(self, length: Length) -> float:
        """A length as millimeters of paper."""
        return millimeters(length) / self.ratio

    def spot(self, out: Length, down: Length) -> Pt:
        """A place so far out from the side and down from the ceiling."""
        return Pt(self.on_paper(out), self.on_paper(down))

    def drawn(self) -> Iterator[Element]:
        """Ceiling and side, what lies behind the crown, and the crown."""
        ceiling = box_corners(-BAND, -BAND, self.right + BAND, BAND)
        side = box_corners(-BAND, 0.0, BAND, self.low)
        hatch = (*diagonal_lines(ceiling, 1.8), *falling_lines(side, 1.8))
        yield Segments(hatch, style.HATCH)
        yield Polyline((Pt(self.right, 0.0), Pt(0.0, 0.0), Pt(0.0, self.low)), style.CUT)
        for corners in self._flat_outlines():
            yield Segments(diagonal_lines(corners, GRAIN_PITCH), style.HATCH)
            yield Polyline(corners, style.CUT, closed=True)
        if self.crown.nailer is not None:
            height, depth = self.crown.nailer.height.value, self.crown.nailer.depth.value
            corners = (
                self.spot(self.behind, ZERO),
                self.spot(self.behind + depth, ZERO),
                self.spot(self.behind, height),
            )
            yield Group("nailer", (Polyline(corners, style.OBJECT, closed=True),))
        outline = self._outline()
        yield Group(
            "crown-outline",
            (
                Segments(falling_lines(outline, GRAIN_PITCH), style.HATCH),
                Polyline(outline, style.CUT, closed=True),
            ),
        )

    def _outline(self) -> tuple[Pt, ...]:
        crown, behind = self.crown, self.behind
        return (
            self.spot(behind, crown.drop.value),
            self.spot(behind + crown.projection.value, ZERO),
            self.spot(behind + crown.back_projection.value, ZERO),
            self.spot(behind, crown.back_drop.value),
        )

    def _flat_outlines(self) -> Iterator[tuple[Pt, ...]]:
        out = ZERO
        for flat in self.flats:
            left, width = self.on_paper(out), self.on_paper(flat.thickness)
            yield box_corners(left, 0.0, width, self.on_paper(flat.width))
            out += flat.thickness

    def callouts(self) -> Iterator[Callout]:
        """What each thing is, with its size."""
        crown, wording = self.crown, self.wording
        yield Callout(Pt(self.right - 2.0, -BAND / 2), "CEILING OR PANEL")
        outline = self._outline()
        middle = Pt(sum(s.x for s in outline) / 4, sum(s.y for s in outline) / 4)
        spring = crown.spring_from_wall.value.tenths
        yield Callout(
            middle, f"CROWN {wording.size(crown.face.value)}, SPRING {spring} FROM THE WALL"
        )
        if crown.nailer is not None:
            size = (
                f"{wording.length(crown.nailer.height.value)} x"
                f" {wording.length(crown.nailer.depth.value)}"
            )
            third = (crown.nailer.depth.value / 3, crown.nailer.height.value / 3)
            yield Callout(self.spot(self.behind + third[0], third[1]), f"NAILER {size}")
        if crown.land_opening is not None:
            opens = wording.detail(crown.land_opening.value)
            yield Callout(outline[1].moved(-0.4, 0.4), f"ITS FLATS OPEN BY {opens}")
        yield from self._flat_callouts()
        yield Callout(Pt(-BAND / 2, self.low - 2.0), "SIDE OF THE BEAM")

    def _flat_callouts(self) -> Iterator[Callout]:
        out = ZERO
        for flat in self.flats:
            low = self.spot(out + flat.thickness / 2, flat.width).moved(0.0, -1.0)
            yield Callout(low, flat_words(flat, self.wording))
            out += flat.thickness

    def strings(self, left: float, top: float) -> Iterator[Group]:
        """Projection above the ceiling, drop left of the side."""
        start = self.on_paper(self.behind)
        drop, out = self.crown.drop.value, self.crown.projection.value
        yield self._string("projection", out, Axis("x", top, start))
        yield self._string("drop", drop, Axis("y", left, -self.on_paper(drop)))

    def _string(self, name: str, length: Length, axis: Axis) -> Group:
        # These are never whole steps: they are told as they are marked.
        value = self.wording.rounded(length)
        segment = Segment(
            Stop("corner", 0.0, ZERO, ZERO),
            Stop("edge", self.on_paper(length), value, length),
            self.wording.dimension(length),
            self.wording.exact(value),
            decimal_mm(length),
        )
        string = String("crown-section", name, (segment,))
        return drawn_string(place_strings([string], self.typeface)[0], axis, FIRST_GAP)


def flat_words(flat: FlatMoulding, wording: SheetWording) -> str:
    """A flat moulding with its size."""
    return f"{flat.name.upper()} {wording.size(flat.thickness)} x {wording.size(flat.width)}"
