"""What sheets of upright views have in common: titles, the common scale, what cuts look like."""

from collections.abc import Iterator, Sequence
from functools import partial

from lacunar.drawing import style
from lacunar.drawing.annotation import Block, ColumnSpace, headed_parts
from lacunar.drawing.elements import Element, Group, Polyline, Pt, Segments, walk
from lacunar.drawing.hatching import box_corners, diagonal_lines, falling_lines
from lacunar.drawing.paper import Scale
from lacunar.drawing.sheets.blocks import listed
from lacunar.drawing.sheets.pages import SheetSource, stacked
from lacunar.drawing.sheets.plan_key import KeyEntry, key_row
from lacunar.drawing.sheets.scale_bar import scale_bar, view_title
from lacunar.drawing.typeface import Typeface
from lacunar.drawing.upright.cut import UprightCut
from lacunar.drawing.upright.object import BAND_PITCH, MEMBER_PITCH, cut_board
from lacunar.drawing.upright.view import Hand

TITLE_GAP = 3.0
BAR = 40.0
BAR_GAP = 8.0
LARGEST, SMALLEST = 8, 200


def under_view(hand: Hand, name: str, notes: Sequence[str]) -> Block:
    """A view's title with its notes, its scale bar beside it."""
    title = view_title(hand.number, name, hand.scale, tuple(notes), hand.typeface)
    bar = scale_bar(hand.number, hand.scale.ratio, hand.wording.units, BAR)
    height = max(title.height, bar.height)
    x = title.width + BAR_GAP
    children = (*title.at(0.0, height - title.height), *bar.at(x, height - bar.height))
    return Block(x + bar.width, height, children)


def over_title(drawn: Block, under: Block) -> Block:
    """A view over its title."""
    return stacked((drawn, under), TITLE_GAP)


def standard_scales(source: SheetSource) -> tuple[Scale, ...]:
    """The scales upright views are tried at, the largest drawing first."""
    return source.scales(smallest=SMALLEST, largest=LARGEST)


def hand_for(source: SheetSource, number: int, scale: Scale) -> Hand:
    """What a view of a number is drawn with at a scale."""
    return Hand(number, scale, source.wording, source.typeface)


def without_room(title: str, cut: UprightCut, drawn: Block) -> Iterator[str]:
    """The sentence that tells what a drawn view cuts where not every id has found room in it."""
    tags = [e for e in walk(drawn.children) if isinstance(e, Group) and e.kind == "tag"]
    named = {(tag.data["kind"], tag.data["of"]) for tag in tags}
    ids = [beam.id for beam in cut.beams]
    beyond = list(dict.fromkeys(each.id for each in cut.behind if each.profile is not None))
    if not named.issuperset(("cut", each) for each in ids):
        yield f"{title}: beams cut, from the left: {listed(ids)}."
    if not named.issuperset(("beyond", each) for each in beyond):
        yield f"{title}: beyond the cut: {listed(beyond)}."


def cut_legend(
    cuts: Sequence[UprightCut], column: ColumnSpace, typeface: Typeface
) -> tuple[Block, ...]:
    """What cuts look like on the sheet, as used, each with its word."""
    rows = [
        key_row("cut", KeyEntry(name, words, partial(_sample, name)), column.width, typeface)
        for name, words in _used(cuts)
    ]
    return headed_parts("cut-legend", "AS CUT", rows, column)


def _used(cuts: Sequence[UprightCut]) -> Iterator[tuple[str, str]]:
    yield "existing", "Wall, floor or ceiling as it is; its thickness is not shown"
    beams = [beam for cut in cuts for beam in cut.beams]
    if any(beam.profile.parts for beam in beams):
        yield "board", "Finish board or moulding; black where it is thin on paper"
    if any(p.name == "backing" for b in beams if b.member is None for p in b.profile.parts):
        yield "backing", "Backing: framing or blocks fixed to the ceiling"
    if any(beam.member is not None for beam in beams):
        yield "member", "Structural member within: do not cut or drill"
    if any(beam.profile.kind == "soffit" for beam in beams):
        yield "soffit", "Soffit, as a block"
    if any(cut.columns for cut in cuts):
        yield "column", "Column"
    if any(cut.layout.backing.joists is not None for cut in cuts):
        yield "joist", "Joist; its height is not shown"
    yield "beyond", "Edge of a beam or moulding beyond"


def _sample(name: str, middle: Pt) -> tuple[Element, ...]:
    """A patch of what a kind of part looks like."""
    corners = box_corners(1.2, middle.y - 1.8, 12.0, 3.6)
    if name == "board":
        return tuple(cut_board(corners))
    if name == "backing":
        cross = ((corners[0], corners[2]), (corners[1], corners[3]))
        return (Polyline(corners, style.OBJECT, closed=True), Segments(cross, style.HATCH))
    if name == "joist":
        open_top = (corners[0], corners[3], corners[2], corners[1])
        return (Polyline(open_top, style.OBJECT),)
    if name == "beyond":
        line = (Pt(corners[0].x, middle.y), Pt(corners[1].x, middle.y))
        return (Polyline(line, style.OBJECT),)
    if name == "existing":
        face = Polyline((corners[3], corners[2]), style.WALL)
        return (Segments(diagonal_lines(corners, BAND_PITCH), style.HATCH), face)
    pitch = MEMBER_PITCH * 2 if name == "column" else MEMBER_PITCH
    lines = diagonal_lines if name == "member" else falling_lines
    pen = style.OBJECT if name == "member" else style.CUT
    outline = Polyline(corners, pen, closed=True)
    return (Segments(lines(corners, pitch), style.HATCH), outline)
