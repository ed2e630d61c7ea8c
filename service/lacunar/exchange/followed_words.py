"""What the fields of a grid along the walls mean, with their units; and the same in sentences."""

from collections.abc import Callable, Iterator
from typing import Any

from lacunar.exchange.board_answer_words import Words
from lacunar.exchange.explain_openings import explain_crown, explain_field, explain_panel
from lacunar.layout.followed_records import FollowedBeam, FollowedWalls
from lacunar.layout.records import Beam, Layout, WallBeam
from lacunar.measure.figure import Figure

Tell = Callable[[str, Figure[Any]], str]

FOLLOWED_WORDS: Words = {
    "FollowedFace": {
        "start": "Where it starts.",
        "end": "Where it ends.",
        "length": "How long it is [length].",
    },
    "FollowedPiece": {
        "near": "Its near face.",
        "far": "Its far face.",
        "start_cut": "How far its start is off a square cut [degrees]; above zero where the far"
        " face goes further.",
        "end_cut": "The same at its end [degrees].",
    },
    "FollowedBeam": {
        "id": "Which beam.",
        "center": "Its center line from wall to wall; of what stands at a wall, the face into the"
        " room.",
        "pieces": "Its pieces, between what stops it.",
    },
    "CofferTaper": {
        "coffer": "Which coffer.",
        "out_of_square": "How far a side stands off square at its other end, the most of any corner"
        " [length].",
        "tapers": "Whether what goes into it goes by its corners.",
    },
    "FollowedWalls": {
        "out_of_square": "How crown goes into coffers that taper.",
        "out_of_square_limit": "Up to where a coffer takes square frames and panels [length].",
        "room": "Area between the walls [ft2].",
        "openings": "Area of all coffers [ft2].",
        "beams": "Beams and what stands at walls, as they lie.",
        "coffers": "Coffers that nobody measured yet.",
        "crown": "Crown of those that taper, both ways it can go in.",
        "panels": "Panels of those that taper.",
        "boards": "Boards of those that taper.",
    },
}


def followed_in_words(followed: FollowedWalls, layout: Layout, tell: Tell) -> Iterator[str]:
    """Turn a grid along the walls into sentences: marks from each wall, beams, what tapers."""
    yield from _places(layout, tell)
    yield tell("Area between the walls, in square feet", followed.room)
    yield tell("Area of all coffers, in square feet", followed.openings)
    for followed_beam in followed.beams:
        yield from _beam(followed_beam, tell)
    for coffer in followed.coffers:
        yield tell(f"{coffer.coffer} stands off square by", coffer.out_of_square)
    for crown in followed.crown:
        yield from explain_crown(crown, tell)
    for panel in followed.panels:
        yield from explain_panel(panel, tell)
    for field in followed.boards:
        yield from explain_field(field, tell)


def _places(layout: Layout, tell: Tell) -> Iterator[str]:
    """Places that are told nowhere else: marks along each wall, and where pieces start and end."""
    for marks in layout.marks:
        for mark in marks.marks:
            name = f"{mark.of}, {mark.side}, along the {marks.run} run's {marks.end} wall"
            yield tell(name, mark.exact)
    beams: tuple[Beam | WallBeam, ...] = (*layout.beams, *layout.wall_beams)
    for beam in beams:
        for number, piece in enumerate(beam.pieces, start=1):
            yield tell(f"{beam.id}, start of piece {number} along the other run", piece.start)
            yield tell(f"{beam.id}, end of piece {number} along the other run", piece.end)


def _beam(beam: FollowedBeam, tell: Tell) -> Iterator[str]:
    for number, piece in enumerate(beam.pieces, start=1):
        name = f"{beam.id}, piece {number}" if len(beam.pieces) > 1 else beam.id
        yield tell(f"{name}, near face", piece.near.length)
        yield tell(f"{name}, far face", piece.far.length)
        yield tell(f"{name}, off a square cut at its start", piece.start_cut)
        yield tell(f"{name}, off a square cut at its end", piece.end_cut)
