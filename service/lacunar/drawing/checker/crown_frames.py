"""Points on crown frames: long points, saw angles, lengths in tables, and pieces to scale."""

from collections.abc import Iterator, Sequence
from fractions import Fraction
from math import asin, atan, cos, degrees, hypot, radians, sin, tan

from lacunar.drawing.checker.crown_facts import CornerFacts, CrownFacts, FrameFacts, PieceFacts
from lacunar.drawing.checker.geometry import TOLERANCE
from lacunar.drawing.checker.plan_frame import plan_views, ratio
from lacunar.drawing.checker.records import Finding, GroupRead, SheetRead
from lacunar.drawing.checker.shapes import Spot
from lacunar.drawing.checker.strings import printed
from lacunar.drawing.checker.subject import Subject

VIEW = "crown-frame"
CROWN_TABLE, SAW_TABLE = "lengths-1-table", "saws-table"
STOP = "Tables stop after"
TENTH = 0.05 + 1e-6

_Row = tuple[SheetRead, GroupRead, dict[str, str]]


def saw_matches_spring(subjects: Sequence[Subject]) -> Iterator[Finding]:
    """Point 24: printed miters and bevels follow from the spring and the corner.

    tan M = sin S / tan(C/2), sin B = cos S cos(C/2), and nested half of what the corner is off
    straight.
    """
    crown = subjects[0].facts.details.crown
    for sheet, row, told in _rows(subjects, "saw", SAW_TABLE, "angle"):
        of = row.data.get("of", "")
        corner = None if crown is None else _corner(crown, of, told.get("angle", ""))
        if crown is None or corner is None:
            yield sheet.finding(24, of, "is no corner that crown turns")
            continue
        half, spring = radians(corner.corner / 2), radians(crown.spring)
        due = {
            "nested": abs(90 - corner.corner / 2),
            "miter": abs(degrees(atan(sin(spring) / tan(half)))),
            "bevel": abs(degrees(asin(cos(spring) * cos(half)))),
        }
        for name, angle in due.items():
            if abs(_angle(told.get(name, "")) - angle) > TENTH:
                message = f"{name} {told.get(name, '')} is not {angle:.2f} at {corner.corner:.2f}"
                yield sheet.finding(24, of, message)


def _corner(crown: CrownFacts, of: str, told: str) -> CornerFacts | None:
    return next(
        (
            each
            for each in crown.corners
            if each.of == of and abs(each.corner - _angle(told)) <= TENTH
        ),
        None,
    )


def _angle(text: str) -> float:
    try:
        return float(text.removesuffix("°"))
    except ValueError:
        return float("inf")


def _cells(sheet: SheetRead, row: GroupRead) -> dict[str, str]:
    """What is printed in the cells of a row, by their names."""
    return {
        cell.data.get("name", ""): " ".join(each.text for each in sheet.letterings_in(cell))
        for cell in sheet.of_kind("cell", row)
    }


def long_points_fit(subjects: Sequence[Subject]) -> Iterator[Finding]:
    """Point 24: the long point of a square frame's piece is its opening less the fit."""
    facts = subjects[0].facts
    crown = facts.details.crown
    if crown is None or crown.fit is None:
        return
    lengths = _lengths(subjects)
    for frame, rows in zip(crown.frames, _by_frame(crown.frames, lengths), strict=False):
        if frame.size is None:
            continue
        for sheet, row, told in rows:
            along = 0 if told["sides"].startswith(("W2", "W4")) else 1
            due = frame.size[along] - crown.behind - crown.fit
            long = printed(told["long"], sheet)
            if long is None or abs(long - due) > facts.step / 2:
                message = f"{told['long']} is not the opening less the fit, {float(due):.3f} mm"
                yield sheet.finding(24, row.data.get("of", ""), message)


def _lengths(subjects: Sequence[Subject]) -> list[_Row]:
    """The rows of the tables of crown in their order."""
    return _rows(subjects, "length", CROWN_TABLE, "sides")


def _rows(subjects: Sequence[Subject], kind: str, table: str, first: str) -> list[_Row]:
    """The rows of a table that may be parted: by rows, or where it is wide by columns.

    A part with the column `first` begins rows; others go on with those that lack their columns.
    """
    found: list[_Row] = []
    for subject in subjects:
        for part in subject.sheet.of_kind(f"{kind}s-table"):
            if not part.id.startswith(table):
                continue
            for row in subject.sheet.of_kind(f"{kind}-row", part):
                cells = _cells(subject.sheet, row)
                begun = next((each for each in found if not each[2].keys() & cells.keys()), None)
                if first in cells or begun is None:
                    found.append((subject.sheet, row, cells))
                else:
                    begun[2].update(cells)
    return found


def _by_frame(frames: Sequence[FrameFacts], rows: list[_Row]) -> Iterator[list[_Row]]:
    start = 0
    for frame in frames:
        yield rows[start : start + len(frame.pieces)]
        start += len(frame.pieces)


def lengths_listed(subjects: Sequence[Subject]) -> Iterator[Finding]:
    """Point 152: the set lists each piece of each crown frame, as long as it is laid out."""
    facts = subjects[0].facts
    if facts.details.crown is None:
        return
    rows = _lengths(subjects)
    wanted = [piece for frame in facts.details.crown.frames for piece in frame.pieces]
    if _stopped(subjects):
        wanted = wanted[: len(rows)]
    if len(rows) != len(wanted):
        message = f"lists {len(rows)} pieces of crown, and not {len(wanted)}"
        yield subjects[0].sheet.finding(152, CROWN_TABLE, message)
        return
    for (sheet, row, told), piece in zip(rows, wanted, strict=True):
        if not _as_told(sheet, told, piece, facts.step):
            message = f"{told} is not the piece toward {piece.sides}"
            yield sheet.finding(152, row.data.get("of", ""), message)


def _stopped(subjects: Sequence[Subject]) -> bool:
    texts = (each.text for subject in subjects for each in subject.sheet.letterings)
    return any(text.startswith(STOP) for text in texts)


def _as_told(sheet: SheetRead, told: dict[str, str], piece: PieceFacts, step: Fraction) -> bool:
    if told.get("sides") != piece.sides or told.get("quantity") != str(piece.quantity):
        return False
    return all(
        (figure := printed(told.get(name, ""), sheet)) is not None
        and abs(figure - exact) <= step / 2
        for name, exact in (("long", piece.long), ("short", piece.short))
    )


def frames_to_scale(subject: Subject) -> Iterator[Finding]:
    """Point 153: a frame's pieces are those laid out, to scale, and crown is set in as far."""
    crown = subject.facts.details.crown
    for view in plan_views(subject.sheet, VIEW):
        scale, coffers = ratio(view), tuple(view.data.get("coffers", "").split())
        frames = crown.frames if crown else ()
        frame = next((each for each in frames if each.coffers == coffers), None)
        groups = list(subject.sheet.of_kind("crown-piece", view))
        if crown is None or scale is None or frame is None or len(groups) != len(frame.pieces):
            yield subject.sheet.finding(153, view.id, "is of no frame, or lacks pieces of it")
            continue
        for group, piece in zip(groups, frame.pieces, strict=True):
            for message in _piece_faults(subject, crown, (group, piece), scale):
                yield subject.sheet.finding(153, view.id, f"toward {piece.sides}: {message}")
        yield from _set_in(subject, view, scale)


def _piece_faults(
    subject: Subject, crown: CrownFacts, drawn: tuple[GroupRead, PieceFacts], scale: float
) -> Iterator[str]:
    sheet, (group, piece) = subject.sheet, drawn
    ends = group.data.get("left", ""), group.data.get("right", "")
    sides = group.data.get("sides", "").split()
    if ends != piece.ends or ", ".join(sides) != piece.sides:
        yield "is another piece, or ends otherwise"
    words = [each.text for each in sheet.letterings_in(group)]
    edges = piece.short > piece.long or any("BEAM EDGE" in text for text in words)
    names = ("BEAM EDGE", "CEILING EDGE") if edges else ("LONG POINT", "SHORT POINT")
    for name, exact in zip(names, (piece.long, piece.short), strict=True):
        told = [printed(text.removeprefix(name).strip(), sheet) for text in words if name in text]
        if len(told) != 1 or told[0] is None or abs(told[0] - exact) > subject.facts.step / 2:
            yield f"does not tell its {name.lower()}"
    yield from _outline_faults(subject, crown, drawn, scale)


def _outline_faults(
    subject: Subject, crown: CrownFacts, drawn: tuple[GroupRead, PieceFacts], scale: float
) -> Iterator[str]:
    """Both edges of a piece are as long as laid out, and its ends run back as they are cut."""
    sheet, (group, piece) = subject.sheet, drawn
    outline = next((path.spots for path in sheet.own_paths(group) if len(path.spots) > _LINE), ())
    if len(outline) != _CORNERS:
        yield "has no outline"
        return
    low_left, top_left, top_right, low_right = outline
    due = (
        ("long edge", low_right.x - low_left.x, piece.long),
        ("short edge", top_right.x - top_left.x, piece.short),
        ("face", low_left.y - top_left.y, crown.face),
    )
    for name, long, exact in due:
        if abs(long - float(exact) / scale) > TOLERANCE:
            yield f"its {name} is {long:.3f} mm, {float(exact) / scale:.3f} is to scale"
    backs = (top_left.x - low_left.x, low_right.x - top_right.x)
    for end, back in zip(piece.ends, backs, strict=True):
        whole = piece.sides.startswith("W")
        if whole and (end == "square") is not (abs(back) <= TOLERANCE):
            yield f"an end that is {end} runs back by {back:.3f} mm"


_LINE, _CORNERS = 2, 4


def _set_in(subject: Subject, view: GroupRead, scale: float) -> Iterator[Finding]:
    """What is seen inside the crown lies as far in from the coffer's sides as crown reaches."""
    sheet = subject.sheet
    objects = list(sheet.of_kind("object", view))
    outer = [path.spots for each in objects for path in sheet.own_paths(each) if path.closed]
    inner = [
        path.spots for each in sheet.of_kind("seen-edge", view) for path in sheet.own_paths(each)
    ]
    due = float(subject.facts.crown_reach) / scale
    for ring, seen in zip(outer, inner, strict=False):
        for number, corner in enumerate(ring):
            other = ring[(number + 1) % len(ring)]
            if abs(_off(corner, other, seen[number]) - due) > TOLERANCE:
                message = f"crown does not reach {due:.3f} mm in from a side"
                yield sheet.finding(153, view.id, message)
                return


def _off(start: Spot, end: Spot, spot: Spot) -> float:
    long = hypot(end.x - start.x, end.y - start.y)
    across = (end.x - start.x) * (spot.y - start.y) - (end.y - start.y) * (spot.x - start.x)
    return abs(across) / long
