"""Mouldings in sentences: crown, its pieces and what they leave, each size with its sum."""

from collections.abc import Callable, Iterator

from lacunar.layout.moulding_records import CofferTrim, CrownSection, MouldingPiece, Mouldings
from lacunar.measure.figure import AngleFigure, LengthFigure

Lines = Iterator[str]
Tell = Callable[[str, LengthFigure | AngleFigure], str]


def explain_mouldings(mouldings: Mouldings, tell: Tell) -> Lines:
    """Turn mouldings into lines; `tell` words one figure with its label."""
    if mouldings.crown is not None:
        yield from _crown(mouldings.crown, tell)
    for cover in mouldings.sides:
        yield tell(f"Side of {cover.profile} left to be seen", cover.side_left)
    for trim in mouldings.coffers:
        yield from _trim(trim, tell)


def _crown(crown: CrownSection, tell: Tell) -> Lines:
    yield tell("Face of the crown", crown.face)
    yield tell("Spring of the crown", crown.spring_from_wall)
    yield tell("Drop of the crown", crown.drop)
    yield tell("Projection of the crown", crown.projection)
    yield tell("Back of the crown, down the side", crown.back_drop)
    yield tell("Back of the crown, along the ceiling", crown.back_projection)
    if crown.land_opening is not None:
        yield tell("Opening under the flats of the crown", crown.land_opening)
    if crown.nailer is not None:
        yield tell("Nailer, height", crown.nailer.height)
        yield tell("Nailer, depth", crown.nailer.depth)
    yield tell("Saw at a square corner, crown nested, miter", crown.saw.nested_miter)
    yield tell("Saw at a square corner, crown flat, miter", crown.saw.flat_miter)
    yield tell("Saw at a square corner, crown flat, bevel", crown.saw.flat_bevel)


def _trim(trim: CofferTrim, tell: Tell) -> Lines:
    ids = ", ".join(trim.coffers)
    yield tell(f"{ids}, seen length", trim.seen_length)
    yield tell(f"{ids}, seen width", trim.seen_width)
    yield tell(f"{ids}, mouth along the length", trim.mouth_length)
    yield tell(f"{ids}, mouth along the width", trim.mouth_width)
    for piece in trim.pieces:
        name = piece_in_words(piece)
        yield tell(f"{name} for {ids}, long point", piece.long_point)
        yield tell(f"{name} for {ids}, short point", piece.short_point)
    for nailer in trim.nailers:
        yield tell(f"Nailer along the {nailer.along} for {ids}, length", nailer.length)
    if trim.running_length is not None:
        yield tell(f"Crown of one of {ids}", trim.running_length)
    if trim.frame_passes_mouth is not None:
        verdict = "passes" if trim.frame_passes_mouth else "does not pass"
        yield f"The bench frame for {ids} {verdict} the mouth, lifted in level."


def piece_in_words(piece: MouldingPiece) -> str:
    """A piece by what it is, where it lies and how its ends are cut."""
    toward = f", toward {piece.toward[0]}" if piece.quantity == 1 else ""
    return (
        f"{piece.moulding} along the {piece.along}, {piece.quantity} a coffer{toward},"
        f" left end {piece.left_end}, right end {piece.right_end},"
    ).removesuffix(",")
