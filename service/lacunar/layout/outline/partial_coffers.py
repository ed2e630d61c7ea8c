"""Coffers that walls cut: their sides, the crown in them, and what fills them."""

from collections.abc import Callable, Iterator, Mapping, Sequence
from dataclasses import dataclass
from itertools import combinations, pairwise

from lacunar.layout.board_records import Courses
from lacunar.layout.moulding_records import PieceEnd
from lacunar.layout.mouldings.saw_settings import saw_settings
from lacunar.layout.outline.cells import Cell
from lacunar.layout.outline.corners import area_of, corner_of_ring
from lacunar.layout.outline.edge_lengths import EdgeLengths, edge_lengths, set_in
from lacunar.layout.outline.filling import Filling
from lacunar.layout.outline.side_strips import StripSide, side_strips
from lacunar.layout.outline_records import (
    CourseLength,
    Joint,
    PartialCoffer,
    PartialCorner,
    PartialHole,
    PartialSide,
)
from lacunar.layout.panels.courses import lay_courses
from lacunar.layout.survey.report import apart
from lacunar.measure.angle import Angle
from lacunar.measure.figure import AngleFigure, LengthFigure, Rule
from lacunar.measure.length import ZERO, Length
from lacunar.measure.plane import Spot, crossing, moved_left, snapped
from lacunar.measure.polygon import (
    Line,
    Polygon,
    edges,
    extent,
    gap_squared,
    joined,
    outside,
    within_box,
)
from lacunar.model.beams import Box
from lacunar.model.boards import Boards
from lacunar.model.moulding import Crown, CrownMethod
from lacunar.model.panel import Panel, PanelKind, Seat
from lacunar.model.room import RunName

REACH = Rule("how far a cut coffer reaches", "far - near")
SPRUNG = Rule("piece sprung in between inside corners", "side + sprung_allowance")
BETWEEN_SIDES = Rule(
    "panel: how far the coffer reaches, less a gap at each edge", "reach - 2 * gap"
)
PAST_SIDES = Rule(
    "panel: how far the coffer reaches and goes past its faces, less a gap at each edge",
    "reach + 2 * past - 2 * gap",
)
IN_COURSE = Rule(
    "board: how far the coffer reaches along it within its course, less a gap at each end",
    "far - near - 2 * gap",
)

_STRAIGHT = Angle.of_degrees(180)


def partial_coffers(cells: Sequence[Cell], filling: Filling) -> tuple[PartialCoffer, ...]:
    """Turn the cells that walls cut into coffers."""
    return tuple(_coffer(cell, filling) for cell in cells if not cell.whole)


def _coffer(cell: Cell, filling: Filling) -> PartialCoffer:
    low, high = extent(cell.corners)
    reach = {
        RunName.LENGTH: _reach(low.x, high.x, filling),
        RunName.WIDTH: _reach(low.y, high.y, filling),
    }
    panel = filling.ceiling.panel
    length = width = None
    if panel.kind is PanelKind.SHEET_GOODS:
        length, width = (_panel(panel, reach[run], filling, run) for run in RunName)
    laid = _laid(panel, reach, filling)
    return PartialCoffer(
        id=cell.id,
        row=cell.row,
        column=cell.column,
        sides=tuple(_sides(cell.corners, cell.against, filling)),
        area=area_of(
            cell.corners,
            approximate=filling.approximate,
            holes=[corners for corners, _ in cell.holes],
        ),
        reach_length=reach[RunName.LENGTH],
        reach_width=reach[RunName.WIDTH],
        panel_length=length,
        panel_width=width,
        courses=tuple(_courses(cell, panel, laid, filling)) if laid else (),
        holes=tuple(PartialHole(tuple(_sides(*hole, filling))) for hole in cell.holes),
        crown_meets=_crown_meets(cell, filling),
        panel_corners=_panel_corners(cell, panel, filling) if length else (),
        laid=laid,
    )


def _panel_corners(cell: Cell, panel: Panel, filling: Filling) -> tuple[Spot, ...]:
    """The corners of a panel from the lower left corner of the piece it is cut from.

    Each of its sides lies as far past that of the coffer, or short of it, as the panel's seat asks.
    """
    ways = [_past(panel, filling, run) - panel.gap for run in RunName]
    sides = list(edges(cell.corners))
    lines = [moved_left(line, -(ways[0] if _is_upright(line) else ways[1])) for line in sides]
    met = [crossing(lines[at - 1], line) for at, line in enumerate(lines)]
    low, _ = extent(cell.corners)
    start = low - Spot(*ways)
    found = tuple(spot - start for spot in met)
    return tuple(snapped(spot) for spot in found) if filling.approximate else found


def _is_upright(line: Line) -> bool:
    return abs(line[1].y - line[0].y) > abs(line[1].x - line[0].x)


def _crown_meets(cell: Cell, filling: Filling) -> bool:
    """Whether two sides of a coffer, not neighbors, are nearer than the crown of both is deep."""
    if filling.crown is None:
        return False
    deep = (filling.crown.projection.value + filling.behind) * 2
    rings = [list(edges(ring)) for ring in (cell.corners, *(corners for corners, _ in cell.holes))]
    lines = [(ring, at, line) for ring, found in enumerate(rings) for at, line in enumerate(found)]
    for (ring, at, line), (other_ring, other_at, other) in combinations(lines, 2):
        beside = ring == other_ring and (other_at - at) % len(rings[ring]) in (
            1,
            len(rings[ring]) - 1,
        )
        if not beside and gap_squared(line, other) < deep.inches**2:
            return True
    return False


def _told(rule: Rule, filling: Filling) -> Callable[..., LengthFigure]:
    return rule.approximates if filling.approximate else rule.gives


def _reach(near: Length, far: Length, filling: Filling) -> LengthFigure:
    return _told(REACH, filling)(far - near, far=far, near=near)


def _panel(panel: Panel, reach: LengthFigure, filling: Filling, run: RunName) -> LengthFigure:
    gap, value = panel.gap, reach.value
    if panel.seat is Seat.BETWEEN_SIDES:
        return _told(BETWEEN_SIDES, filling)(value - gap * 2, reach=value, gap=gap)
    past = _past(panel, filling, run)
    return _told(PAST_SIDES, filling)(value + past * 2 - gap * 2, reach=value, past=past, gap=gap)


def _past(panel: Panel, filling: Filling, run: RunName) -> Length:
    """How far a panel goes past the faces of beams along a run, by its seat."""
    beams = filling.ceiling.beams
    built = beams.crosswise if run is RunName.LENGTH else beams.lengthwise
    if panel.seat is Seat.BETWEEN_SIDES or not isinstance(built, Box):
        return ZERO
    if panel.seat is Seat.BETWEEN_BACKING:
        return built.sides.thickness + built.allowance
    return built.sides.thickness * 2 + built.bottom.width / 2


def _sides(corners: Polygon, against: Sequence[str], filling: Filling) -> Iterator[PartialSide]:
    """The sides of a ring about what is inside: counter-clockwise outside, clockwise of a hole."""
    count, rough = len(corners), filling.approximate
    angles = [
        corner_of_ring(corners[at - 1], corner, corners[(at + 1) % count], approximate=rough)
        for at, corner in enumerate(corners)
    ]
    crown = filling.ceiling.crown
    beams = [each in filling.beams for each in against]
    for at, (start, end) in enumerate(edges(corners)):
        # Who faces a side from inside has its end, counter-clockwise, at the left hand.
        right, left = angles[at], angles[(at + 1) % count]
        length = apart(start, end, approximate=rough)
        piece: _Piece | None = None
        if crown is not None and filling.crown is not None:
            piece = _piece(length, (left.value, right.value), crown, filling)
        yield PartialSide(
            start=start,
            end=end,
            length=length,
            against=against[at],
            corner=left,
            left_end=piece.ends[0] if piece else None,
            right_end=piece.ends[1] if piece else None,
            long_point=piece.edges.long_point if piece else None,
            short_point=piece.edges.short_point if piece else None,
            too_short=piece.too_short if piece else None,
            cut_from=piece.edges.cut_from if piece else None,
            between_ends=piece.edges.between_ends if piece else None,
            strips=tuple(side_strips(_strip_side(length, (left, right), beams, at), filling)),
        )


def _strip_side(
    length: LengthFigure,
    corners: tuple[AngleFigure, AngleFigure],
    beams: Sequence[bool],
    at: int,
) -> StripSide:
    """A side by its place in the ring; the one to its left comes after it."""
    beside = beams[(at + 1) % len(beams)], beams[at - 1]
    return StripSide(length, corners, beams[at], beside)


@dataclass(frozen=True, slots=True)
class _Piece:
    ends: tuple[PieceEnd, PieceEnd]
    edges: EdgeLengths
    too_short: bool


def _piece(
    length: LengthFigure, corners: tuple[Angle, Angle], crown: Crown, filling: Filling
) -> _Piece:
    """The crown along one side: mitred at both ends in a frame, else coped where corners allow."""
    section = filling.crown
    if section is None:
        raise ValueError("there is no crown")
    framed = crown.method is CrownMethod.BENCH_FRAME
    distance = filling.behind + (crown.fit_total / 2 if framed else ZERO)
    side = set_in(length, distance, (corners[0] / 2, corners[1] / 2))
    ends = _ends(corners, framed=framed)
    if not framed and PieceEnd.COPED in ends:
        tell = SPRUNG.approximates if side.approximate else SPRUNG.gives
        side = tell(
            side.value + crown.sprung_allowance,
            side=side.value,
            sprung_allowance=crown.sprung_allowance,
        )
    edges = edge_lengths(side, section.projection.value, _cuts(corners, ends))
    shorter = min(side.value, edges.short_point.value)
    return _Piece(ends, edges, shorter < crown.shortest_piece)


def _cuts(corners: tuple[Angle, Angle], ends: tuple[PieceEnd, PieceEnd]) -> tuple[Angle, Angle]:
    """Between side and cut: half the corner, but all of it where an end butts against a wall."""
    left, right = (
        corner if end is PieceEnd.SQUARE else corner / 2
        for corner, end in zip(corners, ends, strict=True)
    )
    return left, right


def _ends(corners: tuple[Angle, Angle], *, framed: bool) -> tuple[PieceEnd, PieceEnd]:
    """Left and right end: coped to the left at an inside corner, where the right one is square."""
    left, right = corners
    if framed:
        return PieceEnd.MITRED, PieceEnd.MITRED
    return (
        PieceEnd.COPED if left < _STRAIGHT else PieceEnd.MITRED,
        PieceEnd.SQUARE if right < _STRAIGHT else PieceEnd.MITRED,
    )


def partial_corners(
    coffers: Sequence[PartialCoffer], filling: Filling
) -> tuple[PartialCorner, ...]:
    """Turn cut coffers into the distinct corners that their crown turns, sharpest first."""
    crown, section = filling.ceiling.crown, filling.crown
    if crown is None or section is None:
        return ()
    found: dict[Angle, tuple[AngleFigure, list[str]]] = {}
    for coffer in coffers:
        for side in coffer.all_sides:
            _, ids = found.setdefault(side.corner.value, (side.corner, []))
            if coffer.id not in ids:
                ids.append(coffer.id)
    framed = crown.method is CrownMethod.BENCH_FRAME
    return tuple(
        PartialCorner(
            corner=figure,
            juts_in=angle > _STRAIGHT,
            joint=Joint.MITRED if framed or angle > _STRAIGHT else Joint.COPED,
            settings=saw_settings(
                section.spring_from_wall, angle, crown.most_miter, crown.most_bevel
            ),
            coffers=tuple(ids),
        )
        for angle, (figure, ids) in sorted(found.items(), key=lambda each: each[0].degrees)
    )


def _laid(panel: Panel, reach: Mapping[RunName, LengthFigure], filling: Filling) -> Courses | None:
    """The courses side by side across a cut coffer, as if it were whole."""
    boards = panel.boards
    if boards is None:
        return None
    run = boards.parallel_to.other
    across = _panel(panel, reach[run], filling, run)
    return lay_courses(across, boards.cover, boards.tongue, boards.centered_on)


def _courses(
    cell: Cell, panel: Panel, courses: Courses, filling: Filling
) -> Iterator[CourseLength]:
    """The boards of a cut coffer, those of one length together, the longest first."""
    boards = panel.boards
    if boards is None:
        return
    lengths: dict[Length, tuple[LengthFigure, int]] = {}
    for figure in _in_courses(cell, panel, boards, courses, filling):
        before = lengths.get(figure.value, (figure, 0))
        lengths[figure.value] = (before[0], before[1] + 1)
    for figure, count in sorted(lengths.values(), key=lambda each: each[0].value, reverse=True):
        yield CourseLength(figure, count)


def _in_courses(
    cell: Cell, panel: Panel, boards: Boards, courses: Courses, filling: Filling
) -> Iterator[LengthFigure]:
    low, high = extent(cell.corners)
    run = boards.parallel_to
    first, last = (low.y, high.y) if run is RunName.LENGTH else (low.x, high.x)
    count, edge = courses.courses.value, courses.edge.value
    # What the gaps leave lies in the middle; the outermost courses are read up to the walls.
    start = (first + last - courses.across.value) / 2
    inner = [start + edge + boards.cover * number for number in range(count - 1)]
    places = [first, *inner, last]
    for near, far in pairwise(places):
        one, other = (low.x, near), (high.x, far)
        if run is RunName.WIDTH:
            one, other = (near, low.y), (far, high.y)
        for part in _between(cell, Spot(*one), Spot(*other)):
            ends = extent(part)
            at = [spot.x if run is RunName.LENGTH else spot.y for spot in ends]
            size = at[1] - at[0] - panel.gap * 2
            if size > ZERO:
                yield _told(IN_COURSE, filling)(size, far=at[1], near=at[0], gap=panel.gap)


def _between(cell: Cell, low: Spot, high: Spot) -> Iterator[Polygon]:
    """What of a coffer lies in a rectangle, without what columns take."""
    for part in within_box(cell.corners, low, high):
        pieces = [part]
        for hole, _ in cell.holes:
            pieces = [left for each in pieces for left in outside(each, hole[::-1])]
        yield from (one.corners for one in joined(pieces)) if cell.holes else [part]
