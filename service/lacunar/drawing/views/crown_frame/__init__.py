"""A crown frame: as it is seen from below, and its pieces unfolded beside it, at one scale."""

from math import ceil

from lacunar.drawing.annotation import Block
from lacunar.drawing.details.extents import as_block
from lacunar.drawing.elements import Group
from lacunar.drawing.paper import Scale
from lacunar.drawing.typeface import Typeface
from lacunar.drawing.views.crown_frame.frames import CrownFrame
from lacunar.drawing.views.crown_frame.from_below import from_below
from lacunar.drawing.views.crown_frame.unfolded import unfolded
from lacunar.drawing.wording import SheetWording

BETWEEN = 12.0
ROWS = 4
"""How many pieces stand one under the other: more go into columns of even height."""


def frame_view(
    frame: CrownFrame,
    face: float,
    scale: Scale,
    number: int,
    lettering: tuple[SheetWording, Typeface],
) -> Block:
    """A frame as a block, without its title; `face` is the crown's width across its face [mm]."""
    typeface = lettering[1]
    below = as_block(from_below(frame, scale.ratio, number, lettering), typeface)
    children = tuple(below.at(0.0, 0.0))
    if frame.pieces:
        columns = ceil(len(frame.pieces) / ROWS)
        rows = ceil(len(frame.pieces) / columns)
        pieces = unfolded(frame, face, rows, scale.ratio, lettering)
        height = max(below.height, pieces.height)
        children = (
            *below.at(0.0, (height - below.height) / 2),
            *pieces.at(below.width + BETWEEN, (height - pieces.height) / 2),
        )
    view = Group(
        "view",
        children,
        id=f"view-{number}",
        title=f"Crown frame {frame.name}",
        data={
            "view": "crown-frame",
            "frame": frame.name,
            "coffers": " ".join(frame.coffers),
            "scale": str(scale.ratio),
            "scale-text": scale.text,
        },
    )
    return as_block((view,), typeface)
