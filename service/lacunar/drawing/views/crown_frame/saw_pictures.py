"""How pieces of crown lie on the saw, seen from above by whoever stands at it.

Not to scale, but for the angle that the table is turned by. The fence is at the top, the handle at
the bottom, so a table turned to the left has its cut run down to the left.
"""

from collections.abc import Sequence
from math import radians, tan

from lacunar.drawing import style
from lacunar.drawing.annotation import Block
from lacunar.drawing.details.break_lines import break_line
from lacunar.drawing.details.extents import as_block
from lacunar.drawing.elements import Element, Face, Fill, Group, Polyline, Pt, Segments, Text
from lacunar.drawing.hatching import box_corners, diagonal_lines
from lacunar.drawing.typeface import Typeface
from lacunar.layout.moulding_records import Edge, Hand, Lies, SawCut, SawSettings

HALF = 27.0
"""How far a picture reaches to each side of the cut [mm]."""
FENCE = 2.4
DEPTHS = {Lies.NESTED: 8.0, Lies.FLAT: 12.0}
RUN_OUT = 5.0
GAP_ACROSS, GAP_DOWN = 10.0, 8.0
_EDGES = {Edge.WALL: "EDGE ON THE BEAM", Edge.CEILING: "EDGE ON THE CEILING"}
_LIES = {Lies.NESTED: "NESTED, UPSIDE DOWN", Lies.FLAT: "FLAT ON ITS BACK"}


def saw_pictures(
    corners: Sequence[tuple[str, SawSettings]], width: float, typeface: Typeface
) -> Block:
    """Every cut of some corners as a picture, in rows no wider than `width` [mm]."""
    blocks = [
        as_block((_picture(name, saw, cut),), typeface) for name, saw in corners for cut in saw.cuts
    ]
    count = max(1, int((width + GAP_ACROSS) // (max(b.width for b in blocks) + GAP_ACROSS)))
    children: list[Element] = []
    y = widest = 0.0
    for start in range(0, len(blocks), count):
        row = blocks[start : start + count]
        x = 0.0
        for block in row:
            children.extend(block.at(x, y))
            x += block.width + GAP_ACROSS
        widest = max(widest, x - GAP_ACROSS)
        y += max(block.height for block in row) + GAP_DOWN
    return Block(widest, y - GAP_DOWN, tuple(children))


def _picture(name: str, saw: SawSettings, cut: SawCut) -> Group:
    depth = DEPTHS[cut.lies]
    miter = (saw.nested_miter if cut.lies is Lies.NESTED else saw.flat_miter).value
    lean = tan(radians(float(miter.degrees)))
    down = -lean if cut.table is Hand.LEFT else lean
    foot = Pt(down * depth, depth)
    sign = -1.0 if cut.keep is Hand.LEFT else 1.0
    kept = (Pt(HALF * sign, 0.0), Pt(0.0, 0.0), foot, Pt(HALF * sign, depth))
    rest = (Pt(0.0, 0.0), Pt(-HALF * sign, 0.0), Pt(-HALF * sign, depth), foot)
    fence = box_corners(-HALF - 2.0, -FENCE, 2 * HALF + 4.0, FENCE)
    blade = (Pt(0.0, 0.0), Pt(down * (depth + RUN_OUT), depth + RUN_OUT))
    drawn: tuple[Element, ...] = (
        Segments(diagonal_lines(fence, 1.8), style.HATCH),
        Group("kept", (Polyline(kept, None, closed=True, fill=Fill.TINT),)),
        Polyline((kept[0], kept[1]), style.OBJECT),
        Polyline((kept[2], kept[3]), style.OBJECT),
        Polyline((rest[0], rest[1]), style.FINE),
        Polyline((rest[2], rest[3]), style.FINE),
        break_line(Pt(-HALF, 0.0), Pt(-HALF, depth)),
        break_line(Pt(HALF, 0.0), Pt(HALF, depth)),
        Polyline((Pt(-HALF - 2.0, 0.0), Pt(HALF + 2.0, 0.0)), style.WALL),
        Group("blade", (Polyline(blade, style.CUT),)),
    )
    data = {
        "corner": name,
        "lies": cut.lies.value,
        "end": cut.end.value,
        "fence": cut.against_fence.value,
        "table": cut.table.value,
        "keep": cut.keep.value,
        "miter": miter.tenths,
    }
    return Group("saw-picture", (*drawn, *_words(name, saw, cut, foot)), data=data)


def _words(name: str, saw: SawSettings, cut: SawCut, foot: Pt) -> Sequence[Text]:
    depth = DEPTHS[cut.lies]
    sign = -1.0 if cut.keep is Hand.LEFT else 1.0
    middle = (HALF + abs(foot.x)) / 2 if foot.x * sign > 0 else HALF / 2
    left = -HALF - 2.0
    tilt = f", BLADE {saw.flat_bevel.value.tenths} LEFT" if cut.lies is Lies.FLAT else ""
    miter = (saw.nested_miter if cut.lies is Lies.NESTED else saw.flat_miter).value.tenths
    below = depth + RUN_OUT + style.TEXT + 1.2
    return (
        Text(
            Pt(left, -FENCE - 1.6 - style.LINE_PITCH),
            f"{cut.end.value.upper()} END, {name} CORNER",
            style.TEXT,
            Face.SEMIBOLD,
        ),
        Text(
            Pt(left, -FENCE - 1.2),
            f"{_EDGES[cut.against_fence]} AT THE FENCE",
            style.TEXT,
        ),
        Text(
            Pt(middle * sign, depth / 2 + style.TEXT / 2),
            "KEEP",
            style.TEXT,
            Face.SEMIBOLD,
            "middle",
        ),
        Text(Pt(left, below), _LIES[cut.lies], style.TEXT, Face.MEDIUM),
        Text(
            Pt(left, below + style.LINE_PITCH),
            f"TABLE {miter} {cut.table.value.upper()}{tilt}",
            style.TEXT,
        ),
    )
