"""Points on cutting diagrams: read off as they are drawn, to scale, and held against the lists."""

from collections import Counter
from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from itertools import combinations, pairwise

from lacunar.drawing.checker.geometry import TOLERANCE
from lacunar.drawing.checker.list_facts import ListFacts, PartFacts
from lacunar.drawing.checker.overlaps import WRITTEN_TO
from lacunar.drawing.checker.plan_frame import ratio
from lacunar.drawing.checker.records import Finding, GroupRead, SheetRead
from lacunar.drawing.checker.shapes import Box
from lacunar.drawing.checker.subject import Subject

_HAIR = 2 * WRITTEN_TO
"""Two edges may each be off by what a written coordinate is rounded by [mm on paper]."""


@dataclass(frozen=True, slots=True)
class PieceDrawn:
    """A piece or panel as drawn: its part mark, its outline, whether it is turned."""

    group: GroupRead
    mark: str
    box: Box
    turned: bool


@dataclass(frozen=True, slots=True)
class StockDrawn:
    """A stick or sheet as drawn, `times` of it, at a scale, with what is cut from it."""

    sheet: SheetRead
    group: GroupRead
    ratio: float
    times: int
    outline: Box | None
    pieces: tuple[PieceDrawn, ...]

    def finding(self, point: int, message: str) -> Finding:
        """A finding about it."""
        return self.sheet.finding(point, self.group.id, message)

    def on_paper(self, length: float) -> float:
        """A length to its scale [mm]."""
        return length / self.ratio


def _drawn(subjects: Sequence[Subject], kind: str) -> Iterator[StockDrawn]:
    """All sticks or sheets of a set; those without scale or count are told by other points."""
    of_pieces = "stick-piece" if kind == "stick" else "sheet-panel"
    outline = "stick-outline" if kind == "stick" else "sheet-outline"
    for subject in subjects:
        sheet = subject.sheet
        for group in sheet.of_kind(kind):
            view = sheet.around(group, "view")
            scale = ratio(view) if view else None
            times = group.data.get("times", "")
            yield StockDrawn(
                sheet,
                group,
                scale or 1.0,
                int(times) if times.isdecimal() else 0,
                _box_of(sheet, next(sheet.of_kind(outline, group), None)),
                tuple(_pieces(sheet, group, of_pieces)),
            )


def _pieces(sheet: SheetRead, group: GroupRead, kind: str) -> Iterator[PieceDrawn]:
    for piece in sheet.of_kind(kind, group):
        box = _box_of(sheet, piece)
        if box is not None:
            turned = piece.data.get("turned") == "yes"
            yield PieceDrawn(piece, piece.data.get("mark", ""), box, turned)


def _box_of(sheet: SheetRead, group: GroupRead | None) -> Box | None:
    """The outline a group is drawn with: its closed path."""
    paths = sheet.own_paths(group) if group is not None else []
    return next((path.around for path in paths if path.closed), None)


def pieces_as_listed(subjects: Sequence[Subject]) -> Iterator[Finding]:
    """Point 51: all that is drawn is the cut list: each piece as long, and as often, as listed."""
    lists = subjects[0].lists
    if lists is None or lists.lines is None:
        return
    counted: Counter[str] = Counter()
    parts = {part.mark: part for part in lists.parts}
    for kind in ("stick", "cut-sheet"):
        for stock in _drawn(subjects, kind):
            for piece in stock.pieces:
                counted[piece.mark] += stock.times
                if piece.mark in parts:
                    yield from _size(stock, piece, parts[piece.mark], lists)
    for mark in sorted({*counted, *parts}):
        due = parts[mark].quantity * lists.pieces_of(mark) if mark in parts else 0
        if counted[mark] != due:
            message = f"{counted[mark]} drawn, {due} are to be cut"
            yield subjects[0].sheet.finding(51, mark, message)


def _size(
    stock: StockDrawn, piece: PieceDrawn, part: PartFacts, lists: ListFacts
) -> Iterator[Finding]:
    """Each side as drawn is what the list says, or a tape's step more: never less."""
    drawn = [piece.box.right - piece.box.left]
    due = [part.sizes["cut_length"]]
    if stock.group.kind == "cut-sheet":
        drawn.append(piece.box.bottom - piece.box.top)
        due.append(part.sizes["cut_width"])
        if piece.turned:
            due.reverse()
    if lists.pieces_of(piece.mark) > 1:
        return
    for side, size in zip(drawn, due, strict=True):
        least = stock.on_paper(float(size or 0))
        most = stock.on_paper(float((size or 0) + lists.taped))
        if not least - _HAIR <= side <= most + _HAIR:
            message = f"{piece.mark} is drawn {side * stock.ratio:.2f} mm long or wide"
            yield stock.finding(51, f"{message}, {float(size or 0):.2f} mm is listed")


def pieces_clear(subjects: Sequence[Subject]) -> Iterator[Finding]:
    """Point 51: pieces lie within their stick or sheet, and a saw cut apart."""
    lists = subjects[0].lists
    if lists is None:
        return
    kerf = float(lists.kerf)
    for kind in ("stick", "cut-sheet"):
        for stock in _drawn(subjects, kind):
            yield from _outside(stock)
            pairs = combinations(stock.pieces, 2) if kind == "cut-sheet" else _in_order(stock)
            for one, other in pairs:
                if _apart(one.box, other.box) < stock.on_paper(kerf) - _HAIR:
                    message = f"{one.mark} and {other.mark} are less than a saw cut apart"
                    yield stock.finding(51, message)


def _in_order(stock: StockDrawn) -> Iterator[tuple[PieceDrawn, PieceDrawn]]:
    return pairwise(sorted(stock.pieces, key=lambda piece: piece.box.left))


def _apart(one: Box, other: Box) -> float:
    """How far two outlines are apart along the paper's edges; less than 0 where they overlap."""
    across = max(one.left, other.left) - min(one.right, other.right)
    down = max(one.top, other.top) - min(one.bottom, other.bottom)
    return max(across, down)


def _outside(stock: StockDrawn) -> Iterator[Finding]:
    if stock.outline is None:
        yield stock.finding(51, "has no outline")
        return
    for piece in stock.pieces:
        if not stock.outline.grown(_HAIR).holds(piece.box):
            yield stock.finding(25, f"{piece.mark} is longer or wider than what it is cut from")


def drawn_to_scale(subjects: Sequence[Subject]) -> Iterator[Finding]:
    """Point 160: sticks and sheets are as long and wide as they say, and leave what they say."""
    for kind, names in (("stick", ("length-mm",)), ("cut-sheet", ("length-mm", "width-mm"))):
        for stock in _drawn(subjects, kind):
            if stock.outline is None:
                continue
            box = stock.outline
            drawn = (box.right - box.left, box.bottom - box.top)
            for name, side in zip(names, drawn, strict=False):
                due = stock.on_paper(_stated(stock.group, name))
                if abs(side - due) > TOLERANCE:
                    message = f"is {side:.3f} mm on paper, {due:.3f} mm is to scale"
                    yield stock.finding(160, message)
            yield from _left_over(stock)


def _stated(group: GroupRead, name: str) -> float:
    try:
        return float(group.data.get(name, ""))
    except ValueError:
        return 0.0


def _left_over(stock: StockDrawn) -> Iterator[Finding]:
    """What is hatched at the end of a stick is what is said to be left of it."""
    due = stock.on_paper(_stated(stock.group, "offcut-mm"))
    offcut = _box_of(stock.sheet, next(stock.sheet.of_kind("stick-offcut", stock.group), None))
    drawn = offcut.right - offcut.left if offcut else 0.0
    if stock.group.kind == "stick" and abs(drawn - due) > TOLERANCE:
        yield stock.finding(160, f"leaves {drawn:.3f} mm on paper, {due:.3f} mm is to scale")


def stock_as_bought(subjects: Sequence[Subject]) -> Iterator[Finding]:
    """Point 161: as many sticks and sheets are drawn as the material list buys, of each size."""
    lists = subjects[0].lists
    if lists is None or lists.lines is None:
        return
    drawn: Counter[tuple[str, str]] = Counter()
    for kind in ("stick", "cut-sheet"):
        for stock in _drawn(subjects, kind):
            data = stock.group.data
            drawn[data.get("material", ""), data.get("stock", "")] += stock.times
    bought = Counter(
        {
            (line.name, each.stock): each.quantity
            for line in lists.lines
            if line.cut
            for each in line.bought
        }
    )
    for key in sorted({*drawn, *bought}):
        if drawn[key] != bought[key]:
            message = f"{drawn[key]} of {key[1]} are drawn, {bought[key]} bought"
            yield subjects[0].sheet.finding(161, key[0], message)


def grain_as_asked(subjects: Sequence[Subject]) -> Iterator[Finding]:
    """Point 162: only panels whose grain does not matter are turned on their sheet."""
    lists = subjects[0].lists
    if lists is None:
        return
    turns = {part.mark for part in lists.parts if part.turns}
    for stock in _drawn(subjects, "cut-sheet"):
        for piece in stock.pieces:
            if piece.turned and piece.mark not in turns:
                yield stock.finding(162, f"{piece.mark} lies across the grain")
