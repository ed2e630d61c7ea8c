"""A crossing of beams as it is seen from below, drawn as it lies on the plan.

Each distinct crossing is drawn at its first place: the boards of both beams with their edges, walls
behind them, words at leaders for what runs through and how all else ends, and the beams' widths.
"""

from collections.abc import Iterator, Sequence

from lacunar.drawing import style
from lacunar.drawing.annotation import Block
from lacunar.drawing.details.break_lines import break_line
from lacunar.drawing.details.callouts import GAP, Column, place_callouts
from lacunar.drawing.details.extents import as_block, extent
from lacunar.drawing.elements import Element, Face, Fill, Group, Polyline, Pt, Segments, Text
from lacunar.drawing.hatching import behind_wall
from lacunar.drawing.paper import Scale
from lacunar.drawing.plan.clear_places import Occupied, text_box
from lacunar.drawing.typeface import Typeface
from lacunar.drawing.views.crossing.boards import Arm, SeenBoard
from lacunar.drawing.views.crossing.notes import Told, callouts
from lacunar.drawing.views.crossing.on_paper import OnPaper, words_on_left
from lacunar.drawing.views.crossing.scene import Scene, scene
from lacunar.drawing.views.crossing.widths import drawn_widths
from lacunar.drawing.wording import SheetWording
from lacunar.layout.crossing_records import Crossing
from lacunar.layout.records import Layout

ARM = 16.0
"""How far beams are drawn beyond a crossing before they break off [mm of paper]."""
WALL_BAND = 3.0
WALL_PITCH = 1.8
WORDS = 62.0
_ALONG = (0.62, 0.5, 0.74, 0.38)


def crossing_number(crossing: Crossing) -> int:
    """The number of a crossing's view: that of its id."""
    return int(crossing.id[1:])


def crossing_view(
    layout: Layout, crossing: Crossing, scale: Scale, wording: SheetWording, typeface: Typeface
) -> Block | None:
    """A crossing as a block, without its title; None where there is nothing of it to be drawn."""
    seen = scene(layout, crossing, ARM * scale.ratio)
    if seen is None:
        return None
    paper = OnPaper(scale.ratio)
    told = Told(layout, crossing, seen, paper, wording)
    drawn = (*_walls(seen, paper), *_boards(seen, paper), *_breaks(seen, paper))
    words = place_callouts(tuple(callouts(told)), _column(seen, drawn, typeface), typeface)
    ids = tuple(_ids(seen, paper, (*drawn, *words), typeface))
    widths = tuple(drawn_widths(crossing, seen, paper, wording, typeface))
    number = crossing_number(crossing)
    view = Group(
        "view",
        (Group("object", drawn, id=f"object-view-{number}"), *widths, *words, *ids),
        id=f"view-{number}",
        title=f"Crossing {crossing.id}",
        data={
            "view": "crossing",
            "crossing": crossing.id,
            "places": str(len(crossing.places)),
            "scale": str(scale.ratio),
            "scale-text": scale.text,
        },
    )
    return as_block((view,), typeface)


def _column(seen: Scene, drawn: Sequence[Element], typeface: Typeface) -> Column:
    box = extent(drawn, typeface)
    left = words_on_left(seen)
    return Column(box.left - GAP if left else box.right + GAP, WORDS, box.middle.y, left)


def _walls(seen: Scene, paper: OnPaper) -> Iterator[Element]:
    """Each wall with a band of hatching behind it."""
    for wall in seen.walls:
        start, end = paper.spot(wall.start), paper.spot(wall.end)
        if not wall.wall:
            yield Polyline((start, end), style.OBJECT)
            continue
        long = ((end.x - start.x) ** 2 + (end.y - start.y) ** 2) ** 0.5
        # What is behind lies to the left of the way in the room, and so it does on paper.
        back = Pt((end.y - start.y) / long * WALL_BAND, -(end.x - start.x) / long * WALL_BAND)
        corners = (start, end, end.moved(back.x, back.y), start.moved(back.x, back.y))
        out = Pt(back.x / WALL_BAND, back.y / WALL_BAND)
        yield Segments(behind_wall(corners, out, WALL_PITCH), style.HATCH)
        yield Polyline((start, end), style.WALL)


def _boards(seen: Scene, paper: OnPaper) -> Iterator[Element]:
    """Boards as they cover one another; what a bottom hides in dashes."""
    for board in (each for each in seen.boards if not each.covered):
        yield _board(board, paper)
    for board in (each for each in seen.boards if each.covered):
        yield _board(board, paper)


def _board(board: SeenBoard, paper: OnPaper) -> Group:
    pen = style.HIDDEN if board.covered else style.OBJECT
    fill = Fill.TINT if board.part == "side" else Fill.WHITE
    area = (
        ()
        if board.covered
        else (Polyline(paper.spots(board.corners), None, closed=True, fill=fill),)
    )
    return Group(
        "board",
        (*area, *(Polyline(paper.spots(line), pen) for line in board.lines)),
        data={
            "role": board.role,
            "beam": board.beam,
            "part": board.part,
            "side": board.side or "",
            "toward": board.toward or "",
        },
    )


def _breaks(seen: Scene, paper: OnPaper) -> Iterator[Element]:
    """Where beams go on that are not drawn further."""
    return (break_line(*paper.broken_end(arm, seen.reach)) for arm in seen.arms)


def _ids(
    seen: Scene, paper: OnPaper, drawn: Sequence[Element], typeface: Typeface
) -> Iterator[Text]:
    """Each beam's id in one of its arms, where no line passes."""
    busy = Occupied(typeface, drawn)
    for identity in dict.fromkeys(arm.beam.id for arm in seen.arms):
        places = (
            (spot, turned)
            for arm in seen.arms
            if arm.beam.id == identity
            for spot in _along(arm, seen, paper)
            for turned in (False, True)
        )
        for spot, turned in places:
            text = _id_text(identity, spot, turned=turned)
            if busy.is_free(text_box(text, typeface).grown(style.TEXT_CLEARANCE)):
                yield text
                break


def _along(arm: Arm, seen: Scene, paper: OnPaper) -> Iterator[Pt]:
    for share in _ALONG:
        yield paper.spot(arm.at(arm.beam.width / 2, -seen.reach * share))


def _id_text(words: str, middle: Pt, *, turned: bool) -> Text:
    half = style.TEXT / 2
    at = Pt(middle.x + half, middle.y) if turned else Pt(middle.x, middle.y + half)
    return Text(at, words, style.TEXT, Face.SEMIBOLD, "middle", turned)
