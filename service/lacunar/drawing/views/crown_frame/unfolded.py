"""The pieces of a crown frame unfolded: each as it lies on its back, the edge on the beam below.

Ends run back by the same angle as the saw turns for the piece on its back, so that the picture can
be held against the saw table.
"""

from fractions import Fraction

from lacunar.drawing import style
from lacunar.drawing.annotation import Block
from lacunar.drawing.details.extents import as_block, extent
from lacunar.drawing.elements import Element, Face, Group, Polyline, Pt, Text
from lacunar.drawing.typeface import Typeface
from lacunar.drawing.views.crown_frame.frames import CrownFrame, FramePiece, millimeters
from lacunar.drawing.wording import SheetWording, decimal_mm
from lacunar.layout.moulding_records import Hand, PieceEnd

END_GAP = 2.0
ROW_GAP = 5.0
COLUMN_GAP = 8.0
OFF_EDGE = 1.1
WALLS_NAMED = "W"


def unfolded(
    frame: CrownFrame,
    face: float,
    rows: int,
    ratio: Fraction,
    lettering: tuple[SheetWording, Typeface],
) -> Block:
    """All pieces of a frame as a block: one under the other, at most `rows` in a column.

    `face` is how wide the crown is across its face [mm].
    """
    typeface = lettering[1]
    blocks = [
        as_block(_piece(frame, number, face / ratio, ratio, lettering), typeface)
        for number in range(len(frame.pieces))
    ]
    columns = [blocks[start : start + rows] for start in range(0, len(blocks), rows)]
    children: list[Element] = []
    x = height = 0.0
    for column in columns:
        y = 0.0
        for block in column:
            children.extend(block.at(x, y))
            y += block.height + ROW_GAP
        height = max(height, y - ROW_GAP)
        x += max(block.width for block in column) + COLUMN_GAP
    return Block(x - COLUMN_GAP, height, tuple(children))


def _piece(
    frame: CrownFrame,
    number: int,
    face: float,
    ratio: Fraction,
    lettering: tuple[SheetWording, Typeface],
) -> tuple[Element, ...]:
    wording, typeface = lettering
    piece = frame.pieces[number]
    long = millimeters(piece.long_point.value) / ratio
    left, right = (back / ratio for back in piece.backs)
    low_left, low_right = Pt(0.0, 0.0), Pt(long, 0.0)
    top_left, top_right = Pt(left, -face), Pt(long - right, -face)
    lines = (
        Polyline((low_left, top_left, top_right, low_right), style.OBJECT),
        Polyline((low_left, low_right), style.CUT),
    )
    edges = (
        _edge_text("long-point", piece, Pt(long / 2, OFF_EDGE + style.TEXT), wording),
        _edge_text("short-point", piece, Pt((left + long - right) / 2, -face - OFF_EDGE), wording),
    )
    box = extent((*lines, *edges), typeface)
    ends = (
        *_end_texts(Hand.LEFT, piece.ends[0], Pt(box.left - END_GAP, -face / 2)),
        *_end_texts(Hand.RIGHT, piece.ends[1], Pt(box.right + END_GAP, -face / 2)),
    )
    title = Text(
        Pt(box.left, -face - OFF_EDGE - style.TEXT - 2.0),
        piece_words(piece, number + 1),
        style.TEXT,
        Face.SEMIBOLD,
    )
    data = {
        "frame": frame.name,
        "sides": " ".join(piece.sides),
        "quantity": str(piece.quantity),
        "left": piece.ends[0].value,
        "right": piece.ends[1].value,
        "long-mm": decimal_mm(piece.long_point.value),
        "short-mm": decimal_mm(piece.short_point.value),
    }
    return (Group("crown-piece", (*lines, *edges, *ends, title), data=data),)


def _edge_text(kind: str, piece: FramePiece, at: Pt, wording: SheetWording) -> Group:
    """How long an edge is; at a corner that juts in its points are not those of the word."""
    figure = piece.long_point if kind == "long-point" else piece.short_point
    points = min(piece.backs) >= 0
    if kind == "long-point":
        words = "LONG POINT" if points else "BEAM EDGE"
    else:
        words = "SHORT POINT" if points else "CEILING EDGE"
    text = Text(at, f"{words} {wording.detail(figure.value)}", style.TEXT, Face.MEDIUM, "middle")
    value = wording.exact(wording.detailed(figure.value))
    return Group("piece-length", (text,), data={"edge": kind, "value": value})


def _end_texts(hand: Hand, end: PieceEnd, at: Pt) -> tuple[Text, ...]:
    lines = (f"{hand.value.upper()} END", end.value.upper())
    first = at.y - style.LINE_PITCH / 2 + style.TEXT / 2
    return tuple(
        Text(
            Pt(at.x, first + n * style.LINE_PITCH),
            words,
            style.TEXT,
            anchor="end" if hand is Hand.LEFT else "start",
        )
        for n, words in enumerate(lines)
    )


def piece_words(piece: FramePiece, number: int) -> str:
    """Which piece it is, how often it is cut, and toward what it goes."""
    walls = piece.sides[0].startswith(WALLS_NAMED)
    sides = " AND ".join(piece.sides)
    where = f"TOWARD {sides}" if walls else f"SIDE {sides}"
    short = ", TOO SHORT TO BE CUT SAFELY" if piece.too_short else ""
    return f"{number}: {piece.quantity}x {where}{short}"
