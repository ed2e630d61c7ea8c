"""What leaders point at in a crossing: what runs through, how all else ends, edges that differ."""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass

from lacunar.drawing.details.callouts import Callout
from lacunar.drawing.elements import Pt
from lacunar.drawing.views.crossing.boards import SeenBoard
from lacunar.drawing.views.crossing.on_paper import OnPaper, words_on_left
from lacunar.drawing.views.crossing.scene import Scene, beside_corner
from lacunar.drawing.views.crossing.words import edge_in_words, end_in_words, parts_in_words
from lacunar.drawing.wording import SheetWording
from lacunar.layout.crossing_records import BoardPart, Crossing, CrossingEnd, CrossingKind
from lacunar.layout.records import Beam, BeamProfile, Layout

EDGE_AT = 0.3
"""How far in from where it breaks off a leader points at a bottom's edge, of its length."""
BACK = 3.4
"""How far back from a board's end a leader points at it [mm of paper]."""


@dataclass(frozen=True, slots=True)
class Told:
    """What words are made of: the layout, a crossing of it, and what is seen of that on paper."""

    layout: Layout
    crossing: Crossing
    seen: Scene
    paper: OnPaper
    wording: SheetWording

    def beam(self, role: str) -> str:
        """The id of the beam that runs through, or of the one that ends, at the first place."""
        place = self.crossing.places[0]
        if role == "stopped":
            return place.stopped
        corner = self.crossing.kind in (CrossingKind.OUTSIDE_CORNER, CrossingKind.ANGLED_CORNER)
        return (beside_corner(self.layout, place) if corner else None) or place.through

    def profile(self, role: str) -> BeamProfile:
        """The profile of one of the two."""
        crossing = self.crossing
        own = crossing.through if role == "through" else crossing.stopped
        return self.layout.profile(own or crossing.stopped)


def callouts(told: Told) -> Iterator[Callout]:
    """All words beside a crossing with the places they belong to."""
    crossing = told.crossing
    if crossing.runs_past:
        words = parts_in_words(crossing.runs_past, told.profile("through"))
        target = _target(told, "through", crossing.runs_past, through=True)
        if target is not None:
            yield Callout(target, f"{words} OF {told.beam('through')}: RUN THROUGH")
    for role, parts, words in _alike_ends(told):
        target = _target(told, role, parts, through=False)
        if target is not None:
            boards = parts_in_words(parts, told.profile(role))
            yield Callout(target, f"{boards} OF {told.beam(role)}: {words}")
    yield from _edges(told)
    yield from _casing(told)


def _alike_ends(told: Told) -> Iterator[tuple[str, tuple[BoardPart, ...], str]]:
    """Boards of one beam that end alike, together."""
    alike: dict[tuple[str, str], list[BoardPart]] = {}
    for each in told.crossing.ends:
        alike.setdefault((each.beam, _end_words(told, each)), []).append(each.part)
    for (role, words), parts in alike.items():
        yield role, tuple(parts), words


def _end_words(told: Told, each: CrossingEnd) -> str:
    other = told.beam("stopped" if each.beam == "through" else "through")
    jutting = told.crossing.kind is CrossingKind.OUTSIDE_CORNER
    wall = told.crossing.places[0].through.upper() if jutting else ""
    return end_in_words(each.end, other.upper(), told.wording, wall)


def _target(told: Told, role: str, parts: Sequence[BoardPart], *, through: bool) -> Pt | None:
    """A place on the lowest of the boards, near its end, on the side where the words stand."""
    boards = [
        board
        for board in told.seen.boards
        if board.role == role and board.part in parts and (board.toward is None or not through)
    ]
    if not boards:
        return None
    lowest = max(board.lowest for board in boards)
    places = [
        _middle(told, board) if board.toward is None else _near_end(told, board)
        for board in boards
        if board.lowest == lowest
    ]
    sign = -1 if words_on_left(told.seen) else 1
    return max(places, key=lambda place: place.x * sign - abs(place.y))


def _middle(told: Told, board: SeenBoard) -> Pt:
    """In the middle of a board that runs through, a little aside so that ends have room."""
    spots = told.paper.spots(board.corners)
    return Pt(sum(s.x for s in spots) / len(spots), sum(s.y for s in spots) / len(spots))


def _near_end(told: Told, board: SeenBoard) -> Pt:
    """On a board's middle line, a little back from its end towards where it is broken off."""
    spots = told.paper.spots(board.corners)
    outer = _between(spots[0], spots[-1], 0.5)
    inner = _between(spots[1], spots[-2], 0.5)
    long = ((outer.x - inner.x) ** 2 + (outer.y - inner.y) ** 2) ** 0.5
    return _between(inner, outer, min(BACK / long, 0.5))


def _between(one: Pt, other: Pt, share: float) -> Pt:
    return one.moved((other.x - one.x) * share, (other.y - one.y) * share)


def _edges(told: Told) -> Iterator[Callout]:
    """Where bottoms stand off their sides' faces or lower edges, once for beams of one profile."""
    roles = ["through"] if told.crossing.through is not None else []
    known: dict[str, list[str]] = {}
    for role in (*roles, "stopped"):
        words = edge_in_words(told.profile(role), told.wording)
        if words:
            known.setdefault(words, []).append(role)
    for words, alike in known.items():
        target = _edge_target(told, alike[-1])
        if target is not None:
            beams = " AND ".join(told.beam(role) for role in alike)
            what = parts_in_words(("bottom",), told.profile(alike[-1]))
            yield Callout(target, f"{what} OF {beams}: {words}")


def _edge_target(told: Told, role: str) -> Pt | None:
    """On the edge of a bottom, half way out along an arm."""
    boards = [each for each in told.seen.boards if each.role == role and each.part == "bottom"]
    places = [_between(*line, EDGE_AT) for board in boards for line in _outer_edges(told, board)]
    sign = -1 if words_on_left(told.seen) else 1
    return max(places, key=lambda place: place.x * sign - place.y * 0.5, default=None)


def _outer_edges(told: Told, board: SeenBoard) -> Iterator[tuple[Pt, Pt]]:
    """Both edges from where the board breaks off; not the one at a wall."""
    spots = told.paper.spots(board.corners)
    both = (told.seen.led_by, told.seen.other)
    wall = next((each.wall for each in both if each and each.id == board.beam), None)
    if wall != "near":
        yield spots[0], spots[1]
    if wall != "far":
        yield spots[-1], spots[-2]


def _casing(told: Told) -> Iterator[Callout]:
    """That a beam holds a structural member."""
    roles = ("through", "stopped") if told.crossing.through is not None else ("stopped",)
    for role in roles:
        beam = next((b for b in told.layout.beams if b.id == told.beam(role)), None)
        target = _cased_target(told, role)
        if beam is not None and beam.member is not None and target is not None:
            yield Callout(target, _cased(beam))


def _cased(beam: Beam) -> str:
    assert beam.member is not None
    return f"{beam.id} CASES {beam.member.name.upper()}: DO NOT CUT OR DRILL"


def _cased_target(told: Told, role: str) -> Pt | None:
    """On its bottom, half way out."""
    for board in told.seen.boards:
        if board.role == role and board.part == "bottom":
            spots = told.paper.spots(board.corners)
            middle = _between(spots[0], spots[-1], 0.5)
            return _between(middle, _middle(told, board), 0.55)
    return None
