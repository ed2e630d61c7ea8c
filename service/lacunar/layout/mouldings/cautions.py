"""Cautions about mouldings: what to measure, what not to cut, what goes up first."""

from collections.abc import Iterator

from lacunar.layout.moulding_records import CrownSection, RakedMeeting, SawSheet
from lacunar.layout.mouldings.pieces import CROWN
from lacunar.layout.records import Caution, Layout
from lacunar.measure.angle import Angle
from lacunar.measure.length import ZERO, Length
from lacunar.model.moulding import Crown, CrownMethod

_EVEN_SPRING = Angle.of_degrees(45)
# From here on an opening under the flats is seen, and a strip of side reads as left over (common
# practice, no source).
_SEEN_GAP = Length.of_inches(1) / 64
_SEEN_STRIP = Length.of_inches(1) / 4


def moulding_cautions(layout: Layout) -> Iterator[Caution]:
    """Everything a careful hand would say about crown and flat mouldings."""
    crown, asked = layout.mouldings.crown, layout.ceiling.crown
    if crown is not None and asked is not None:
        yield from _spring(crown, asked)
        yield from _saw(crown, asked)
        yield from _short_pieces(layout, asked)
        yield from _mouth(layout, asked)
    yield from _strips(layout)


def _spring(crown: CrownSection, asked: Crown) -> Iterator[Caution]:
    opening, spring = crown.land_opening, crown.spring_from_wall.value
    if opening is not None and opening.value >= _SEEN_GAP:
        yield Caution(
            code="crown_flats_open",
            text=f"At its measured sizes the crown stands at {spring.tenths} from the wall and"
            " not at the spring it is milled to: its flats open a little at one edge. Caulk or"
            " plane them, or set the crown back to its own drop.",
            figures={"opening": opening.value, "stands_at": spring.text},
            pointer="/crown/spring_from_wall",
        )
    if asked.drop is None and asked.projection is None:
        yield from _steep(spring, "/crown/spring_from_wall")


def _steep(spring: Angle, pointer: str) -> Iterator[Caution]:
    """A spring over 45 is most often one taken from the ceiling by mistake."""
    if spring > _EVEN_SPRING:
        yield Caution(
            code="spring_from_ceiling",
            text=f"The crown is to stand out further than it comes down: {spring.tenths} from the"
            " wall. Most crown is 38° or 45° from the wall; a 52° is usually taken from the"
            " ceiling. Hold a piece in a square and measure its drop and projection.",
            figures={"spring_from_wall": spring.tenths},
            pointer=pointer,
        )


def saw_cautions(sheet: SawSheet) -> Iterator[Caution]:
    """What goes with every sheet for the saw, and a spring that is rather one from the ceiling."""
    yield from _steep(sheet.spring_from_wall.value, "/spring_from_wall")
    if sheet.raked is not None and not sheet.raked.meets:
        yield _raked(sheet.raked)
    if sheet.fence_height is not None and sheet.drop is not None:
        yield from _too_tall(sheet.drop.value, sheet.fence_height)
    yield Caution(
        code="cut_test_pieces",
        text="Cut test pieces first and hold them in the corner: few corners are what they should"
        " be. Never hold a short piece by hand, and follow the saw maker's instructions.",
        figures={},
    )


def _raked(raked: RakedMeeting) -> Caution:
    """What is done where profiles do not meet (common practice, no source)."""
    sizes = {"apart": raked.apart, "face": raked.run_face}
    return Caution(
        code="raked_run_does_not_meet",
        text="A level run and a raked one of the same profile do not meet in one flat joint: these"
        " settings are those of level runs. Put a transition piece between them, as a short level"
        " return, or have a profile run for the rake. See how either lies on its ceiling.",
        figures={
            "slope": raked.slope.text,
            **{name: size.value for name, size in sizes.items() if size is not None},
        },
        pointer="/slope",
    )


def _too_tall(drop: Length, fence_height: Length) -> Iterator[Caution]:
    if drop > fence_height:
        yield Caution(
            code="crown_taller_than_fence",
            text="Nested, the crown stands taller than the saw takes. Cut it flat, or cope it.",
            figures={"drop": drop, "fence_height": fence_height},
            pointer="/fence_height",
        )


def _saw(crown: CrownSection, asked: Crown) -> Iterator[Caution]:
    saw = crown.saw
    mitred = asked.method is CrownMethod.BENCH_FRAME
    if mitred and not saw.nested_within_limits and not saw.flat_within_limits:
        yield Caution(
            code="saw_cannot_miter",
            text="The saw neither turns nor tilts far enough for the corners of the frames. Cope"
            " the crown in place, or cut the miters on another saw.",
            figures={
                "nested_miter": saw.nested_miter.value.tenths,
                "flat_miter": saw.flat_miter.value.tenths,
                "flat_bevel": saw.flat_bevel.value.tenths,
            },
            pointer="/crown/most_miter",
        )


def _short_pieces(layout: Layout, asked: Crown) -> Iterator[Caution]:
    trims = layout.mouldings.coffers
    shortest = min(
        (
            piece.short_point.value
            for trim in trims
            for piece in trim.pieces
            if piece.moulding == CROWN
        ),
        default=None,
    )
    if shortest is not None and shortest < asked.shortest_piece:
        yield Caution(
            code="short_crown_pieces",
            text="Some pieces of crown are too short to be held safely at the saw. Cut the miter on"
            " a long piece first and the piece off it last, with a stop and a hold-down; never"
            " hold a short piece by hand.",
            figures={"short_point": shortest, "shortest_piece": asked.shortest_piece},
            pointer="/crown/shortest_piece",
        )


def _mouth(layout: Layout, asked: Crown) -> Iterator[Caution]:
    stuck = [trim for trim in layout.mouldings.coffers if trim.frame_passes_mouth is False]
    if asked.method is CrownMethod.BENCH_FRAME and stuck:
        yield Caution(
            code="frame_larger_than_mouth",
            text="Bench frames are larger than the mouths of their coffers. Put them up before"
            " what would shut them out, as the order of fitting does, or cope the crown in place.",
            figures={
                "coffer": stuck[0].coffers[0],
                "mouth_length": stuck[0].mouth_length.value,
                "mouth_width": stuck[0].mouth_width.value,
            },
            pointer="/crown/method",
        )


def _strips(layout: Layout) -> Iterator[Caution]:
    thin = [cover for cover in layout.mouldings.sides if ZERO < cover.side_left.value < _SEEN_STRIP]
    if thin:
        yield Caution(
            code="sides_nearly_covered",
            text="Mouldings cover the sides of beams but for a strip that reads as a mistake. Let"
            " them cover all of it, or leave more.",
            figures={"profile": thin[0].profile, "side_left": thin[0].side_left.value},
            pointer="/crown" if layout.ceiling.crown is not None else "/flat_mouldings",
        )
