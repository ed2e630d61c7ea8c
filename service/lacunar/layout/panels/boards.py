"""Boards over the whole ceiling: a field for each coffer, or fields that run on above the beams."""

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass

from lacunar.layout.board_records import BoardField, BoardLayout, Courses, PanelPlace
from lacunar.layout.fault_gathering import refuse
from lacunar.layout.panels.courses import board_foot_factor, lay_courses, lineal_factor
from lacunar.layout.panels.sheet_goods import (
    NOTHING_MEASURED,
    AsMeasured,
    PanelRun,
    gap_faults,
    measured_sizes,
    panel_sizes,
    panel_starts,
)
from lacunar.layout.panels.wood_movement import board_movement
from lacunar.layout.records import Coffer, ElementKind
from lacunar.layout.runs.run_division import BeamStretch, Stretch
from lacunar.layout.runs.run_records import member_reach
from lacunar.measure.figure import CountFigure, LengthFigure, Rule
from lacunar.measure.length import ZERO, Length
from lacunar.model.board_tables import PUBLISHED_BOARDS
from lacunar.model.boards import BoardRun, Boards
from lacunar.model.panel import Panel
from lacunar.model.room import RunName

THROUGH_FIELD = Rule(
    "through boards: between walls, soffits and members, less a gap at each edge",
    "far - near - 2 * gap",
)
THROUGH_START = Rule("where through boards start: a gap in from what they start at", "near + gap")
OVERALL = Rule("whole width of a board: its cover and its tongue", "cover + tongue")
FIELDS = Rule("fields of this size", "fields")
BOARDS = Rule("boards: the courses of every field", "fields * courses")
LINEAL = Rule("all boards in a row", "boards * length")
COVERAGE = Rule("by the rule of coverage: area over cover", "fields * length * across / cover")


@dataclass(frozen=True, slots=True)
class _Span:
    """A stretch of a run that boards fill or lie along, its rows or columns, and its start."""

    size: LengthFigure
    coffers: tuple[int, ...]
    start: LengthFigure


@dataclass(frozen=True, slots=True)
class _Size:
    """A field's two sizes, as the boards lie."""

    length: LengthFigure
    across: LengthFigure


@dataclass(frozen=True, slots=True)
class _Laid:
    """Boards of one length, their courses, and where each field of them starts."""

    length: LengthFigure
    courses: Courses
    places: tuple[PanelPlace, ...]


def board_layout(
    panel: Panel,
    runs: Mapping[RunName, PanelRun],
    coffers: Sequence[Coffer],
    measured: AsMeasured = NOTHING_MEASURED,
) -> BoardLayout | None:
    """Turn coffers into fields of boards, those of one size together; None without boards.

    Per coffer a field is as large as a sheet panel of the same seat. Through boards reach from wall
    to wall, but for soffits, at which they end, and members, at which they are parted. A coffer
    that was measured is a field by itself; where it tapers, boards are as cut from square.

    Raises SpecRefused where gaps leave no field.
    """
    boards = panel.boards
    if boards is None or not coffers:
        return None
    spans = {name: _spans(panel, boards, run) for name, run in runs.items()}
    refuse(gap_faults(panel, [span.size for each in spans.values() for span in each]))
    taken = {}
    if boards.run is not BoardRun.THROUGH:
        taken = measured_sizes(panel, runs, measured)
    fields = tuple(_with_measured(panel, _fields(boards, spans, coffers), measured, taken))
    published = PUBLISHED_BOARDS[boards.nominal] if boards.nominal else None
    widest = max(field.courses.across.value for field in fields)
    movement = boards.movement
    return BoardLayout(
        parallel_to=boards.parallel_to,
        run=boards.run,
        nominal=boards.nominal,
        cover=boards.cover,
        tongue=boards.tongue,
        thickness=panel.thickness,
        gap=panel.gap,
        overall_width=OVERALL.gives(
            boards.cover + boards.tongue, cover=boards.cover, tongue=boards.tongue
        ),
        fields=fields,
        boards=_boards_in_all([field.boards.value for field in fields]),
        lineal=_in_all("all boards in a row", [field.lineal for field in fields]),
        coverage=_in_all("by the rule of coverage", [field.coverage for field in fields]),
        lineal_factor=lineal_factor(boards.cover),
        board_foot_factor=(
            board_foot_factor(published.nominal_width, boards.cover) if published else None
        ),
        movement=board_movement(movement, boards.cover, panel.gap, widest) if movement else None,
    )


def _spans(panel: Panel, boards: Boards, run: PanelRun) -> list[_Span]:
    if boards.run is BoardRun.THROUGH:
        return list(_through(run.divided.stretches, panel.gap))
    sized = zip(panel_sizes(panel, run), panel_starts(panel, run), strict=True)
    return [_Span(size, (number,), start) for number, (size, start) in enumerate(sized, start=1)]


def _through(stretches: Sequence[Stretch], gap: Length) -> Iterator[_Span]:
    """A span between each two things that part through boards: walls, soffits, members."""
    near = stretches[0].near
    coffers: list[int] = []
    counted = 0
    for stretch in stretches:
        if stretch.kind is ElementKind.COFFER:
            counted += 1
            coffers.append(counted)
        elif stretch.kind is ElementKind.SOFFIT and not coffers:
            near = stretch.far
        elif stretch.kind is ElementKind.SOFFIT:
            yield _span(near, stretch.near, gap, coffers)
            return
        elif isinstance(stretch, BeamStretch) and stretch.kind is ElementKind.CASED_BEAM:
            before, after = member_reach(stretch)
            yield _span(near, before, gap, coffers)
            near, coffers = after, []
    yield _span(near, stretches[-1].far, gap, coffers)


def _span(near: LengthFigure, far: LengthFigure, gap: Length, coffers: Sequence[int]) -> _Span:
    size = far.value - near.value - gap * 2
    reach = THROUGH_FIELD.gives(size, far=far.value, near=near.value, gap=gap)
    start = THROUGH_START.gives(near.value + gap, near=near.value, gap=gap)
    return _Span(reach, tuple(coffers), start)


def _fields(
    boards: Boards, spans: Mapping[RunName, Sequence[_Span]], coffers: Sequence[Coffer]
) -> Iterator[BoardField]:
    """The fields, those of one size together, in the order of their first coffers."""
    ids = {(coffer.column, coffer.row): coffer.id for coffer in coffers}
    alike: dict[tuple[Length, Length], list[tuple[_Span, _Span]]] = {}
    for up in spans[RunName.WIDTH]:
        for along in spans[RunName.LENGTH]:
            if (along.coffers[0], up.coffers[0]) not in ids:
                continue  # a coffer that walls cut, or that lies outside the room
            size = along.size.value, up.size.value
            alike.setdefault(size, []).append((along, up))
    for group in alike.values():
        along, up = group[0]
        lies_along = boards.parallel_to is RunName.LENGTH
        laid = _Size(along.size, up.size) if lies_along else _Size(up.size, along.size)
        inside = tuple(
            ids[column, row] for a, u in group for row in u.coffers for column in a.coffers
        )
        places = tuple(
            PanelPlace(ids[a.coffers[0], u.coffers[0]], a.start, u.start) for a, u in group
        )
        yield _field(boards, laid, inside, places)


def _with_measured(
    panel: Panel,
    fields: Iterator[BoardField],
    measured: AsMeasured,
    taken: Mapping[str, tuple[LengthFigure, LengthFigure]],
) -> Iterator[BoardField]:
    """The fields with those of measured coffers taken out of them, and following by themselves.

    `taken` are the sizes of these; none where boards run through.
    """
    boards = panel.boards
    if boards is None or not taken:
        yield from fields
        return
    planned: dict[str, PanelPlace] = {}
    for field in fields:
        planned |= {place.coffer: place for place in field.places}
        rest = tuple(coffer for coffer in field.coffers if coffer not in taken)
        if rest:
            places = tuple(planned[coffer] for coffer in rest)
            yield _filled(boards, _Laid(field.length, field.courses, places), rest)
    refuse(gap_faults(panel, [size for pair in taken.values() for size in pair]))
    tapered = {each.coffer: (each, laid) for each, laid in measured.tapered_boards}
    for coffer, (length, width) in taken.items():
        if coffer in tapered:
            each, laid = tapered[coffer]
            cut_from = [course.cut_from for course in each.courses]
            longest = max(cut_from, key=lambda figure: figure.value)
            yield _filled(boards, _Laid(longest, laid, (planned[coffer],)), (coffer,))
            continue
        lies_along = boards.parallel_to is RunName.LENGTH
        size = _Size(length, width) if lies_along else _Size(width, length)
        yield _field(boards, size, (coffer,), (planned[coffer],))


def _field(
    boards: Boards, size: _Size, coffers: tuple[str, ...], places: tuple[PanelPlace, ...]
) -> BoardField:
    laid = lay_courses(size.across, boards.cover, boards.tongue, boards.centered_on)
    return _filled(boards, _Laid(size.length, laid, places), coffers)


def _filled(boards: Boards, laid: _Laid, coffers: tuple[str, ...]) -> BoardField:
    length, across = laid.length.value, laid.courses.across.value
    fields = len(laid.places)
    count = fields * laid.courses.courses.value
    approximate = laid.length.approximate
    return BoardField(
        coffers=coffers,
        fields=FIELDS.gives(fields, fields=fields),
        length=laid.length,
        courses=laid.courses,
        boards=BOARDS.gives(count, fields=fields, courses=laid.courses.courses.value),
        lineal=(LINEAL.approximates if approximate else LINEAL.gives)(
            length * count, boards=count, length=length
        ),
        coverage=(COVERAGE.approximates if approximate else COVERAGE.gives)(
            length * (across / boards.cover) * fields,
            fields=fields,
            length=length,
            across=across,
            cover=boards.cover,
        ),
        places=laid.places,
    )


def _in_all(name: str, parts: Sequence[LengthFigure]) -> LengthFigure:
    """Lengths of several fields added up, each under its number."""
    numbered = {f"field_{number}": part.value for number, part in enumerate(parts, start=1)}
    rule = Rule(f"{name}, in all", " + ".join(numbered))
    gives = rule.approximates if any(part.approximate for part in parts) else rule.gives
    return gives(sum(numbered.values(), ZERO), **numbered)


def _boards_in_all(counts: Sequence[int]) -> CountFigure:
    numbered = {f"field_{number}": count for number, count in enumerate(counts, start=1)}
    return Rule("boards in all", " + ".join(numbered)).gives(sum(counts), **numbered)
