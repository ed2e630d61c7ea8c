"""Crown, its nailer and flat mouldings as parts of a section: the envelope of their sizes."""

from collections.abc import Iterator

from lacunar.drawing.elements import Pt
from lacunar.drawing.section.cut import Cut
from lacunar.drawing.section.hatches import Hatch, Substance, Way
from lacunar.drawing.section.mouldings import (
    crown_outline,
    flat_outline,
    nailer_outline,
    on_side,
    standing_behind,
)
from lacunar.drawing.section.records import Outline
from lacunar.drawing.views.profile_detail.parts import (
    FRAMING,
    Corners,
    DetailOf,
    NamedPart,
    ShownPart,
)
from lacunar.drawing.wording import SheetWording
from lacunar.layout.moulding_records import CrownSection
from lacunar.model.moulding import CrownMethod, FlatPlace

ENVELOPE = "drawn as its envelope"
CROWN_PITCH = 1.0
EDGE_PITCH = 1.9


def trim_parts(detail: DetailOf, cut: Cut, wording: SheetWording) -> Iterator[ShownPart]:
    """The mouldings on both sides of a beam, or on the one that shows."""
    of = detail.of
    for number, flat in enumerate(of.trim.flats):
        before = [each for each in of.trim.flats[:number] if each.at is flat.at]
        # The side's grain rises: what lies on it falls, what lies on that rises.
        way = Way.RISING if len(before) % 2 else Way.FALLING
        pitch = CROWN_PITCH if flat.at is FlatPlace.CEILING else EDGE_PITCH
        part = NamedPart(
            "flat-moulding",
            flat.name.upper(),
            flat.thickness,
            flat.width,
            Substance.FINISH_WOOD.value,
            ENVELOPE,
        )
        hatch = Hatch(Substance.FINISH_WOOD, way, pitch)
        yield _shown(detail, cut, part, flat_outline(of, number), hatch)
    if of.trim.crown is not None:
        yield from _crown_parts(detail, cut, of.trim.crown, wording)


def _crown_parts(
    detail: DetailOf, cut: Cut, crown: CrownSection, wording: SheetWording
) -> Iterator[ShownPart]:
    asked = detail.layout.ceiling.crown
    assert asked is not None
    behind = [each for each in detail.of.trim.flats if each.at is FlatPlace.CEILING]
    way = Way.RISING if len(behind) % 2 else Way.FALLING
    remark = (
        f"drop {wording.detail(crown.drop.value)}, projection"
        f" {wording.detail(crown.projection.value)},"
        f" {crown.spring_from_wall.value.tenths} from the wall; {ENVELOPE}"
    )
    part = NamedPart(
        "crown",
        "CROWN",
        asked.thickness,
        crown.face.value,
        Substance.FINISH_WOOD.value,
        remark,
    )
    hatch = Hatch(Substance.FINISH_WOOD, way, CROWN_PITCH)
    yield _shown(detail, cut, part, crown_outline(detail.of, crown), hatch)
    if crown.nailer is not None:
        size = crown.nailer.depth.value, crown.nailer.height.value
        nailer = NamedPart(
            "nailer", "NAILER", *size, Substance.FRAMING.value, "depth by height of a triangle"
        )
        yield _shown(detail, cut, nailer, nailer_outline(detail.of, crown.nailer), FRAMING)
    if asked.method is CrownMethod.BENCH_FRAME and asked.fit_total:
        out = standing_behind(FlatPlace.CEILING, detail.of.trim.flats)
        upper, _ = detail.of.side_ends
        width = detail.of.profile.finished_width.value
        at = cut.spot(width + out, upper + crown.drop.value)
        fit = NamedPart("fit", "FIT OF THE FRAME", asked.fit_total, None, "", "both sides together")
        yield ShownPart(fit, at)


def _shown(
    detail: DetailOf, cut: Cut, part: NamedPart, outline: Outline, hatch: Hatch
) -> ShownPart:
    """A moulding right of the beam, and mirrored left of it where it has a left side."""
    ways = (True,) if detail.of.at_wall else (False, True)
    placed = tuple(cut.placed(on_side(detail.of, outline, right=right)) for right in ways)
    return ShownPart(part, _middle(placed[-1]), placed, hatch)


def _middle(corners: Corners) -> Pt:
    return Pt(
        sum(at.x for at in corners) / len(corners), sum(at.y for at in corners) / len(corners)
    )
