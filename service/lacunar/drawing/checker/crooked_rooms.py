"""Points on rooms out of square: outline, tapers, strings at both ends, control line, tables."""

from collections import Counter
from collections.abc import Callable, Iterator, Mapping, Sequence
from fractions import Fraction
from math import dist

from lacunar.drawing.checker.crooked_facts import StripFacts
from lacunar.drawing.checker.facts import WALLS_OF_RUN
from lacunar.drawing.checker.figures import OVERALL, faces_to_show, rounded, stop_places
from lacunar.drawing.checker.geometry import TOLERANCE
from lacunar.drawing.checker.plan_frame import PlanFrame, plan_frames, side_faces, wall_face
from lacunar.drawing.checker.records import Finding, GroupRead
from lacunar.drawing.checker.shapes import Spot
from lacunar.drawing.checker.strings import in_words, printed, run_strings, stated
from lacunar.drawing.checker.subject import Subject

DIMENSIONED = ("wall", "face", "center")
BESIDE_WALL = 10.0
"""How far off its wall a control line may stand [mm]."""


def _walls_in_order(subject: Subject) -> list[str]:
    """The names of the walls clockwise; in a room with other than four, two may share one."""
    facts = subject.facts
    if facts.outline_facts is not None:
        return [side.wall for side in facts.outline_facts.sides]
    return [f"W{number}" for number in range(1, len(facts.outline) + 1)]


def _faces_in_order(
    subject: Subject, frame: PlanFrame, walls: Sequence[str]
) -> Iterator[tuple[Spot, ...]]:
    """The finish faces of the walls as they are drawn, clockwise."""
    sheet, odd = subject.sheet, subject.facts.outline_facts
    if odd is None:
        yield from (wall_face(sheet, frame.view, wall) for wall in walls)
        return
    drawn = {group.data.get("side", ""): face for group, face in side_faces(sheet, frame.view)}
    yield from (drawn.get(side.side, ()) for side in odd.sides)


def outline_as_laid_out(subject: Subject) -> Iterator[Finding]:
    """Point 79: the walls close about the room, and their corners are the layout's."""
    sheet, facts = subject.sheet, subject.facts
    for frame in plan_frames(subject):
        corners = [frame.spot(*corner) for corner in facts.outline]
        walls = _walls_in_order(subject)
        drawn = [group.data.get("wall", "") for group in sheet.of_kind("wall", frame.view)]
        if Counter(drawn) != Counter(walls):
            yield sheet.finding(79, frame.view.id, f"has walls {', '.join(drawn)}")
            continue
        faces = list(_faces_in_order(subject, frame, walls))
        for number, (wall, face) in enumerate(zip(walls, faces, strict=True)):
            if not face or not faces[number - 1] or _apart(faces[number - 1][-1], face[0]):
                message = f"{wall} does not start where {walls[number - 1]} ends"
                yield sheet.finding(79, f"wall-{wall}", message)
        fields = [
            path.spots
            for one in sheet.of_kind("object", frame.view)
            for path in sheet.own_paths(one)
            if path.closed and path.pen is None
        ]
        if not any(_same_outline(field, corners) for field in fields):
            yield sheet.finding(79, frame.view.id, "the room's field has not the layout's corners")


def _apart(one: Spot, other: Spot) -> bool:
    return dist(one, other) > TOLERANCE


def _same_outline(drawn: Sequence[Spot], expected: Sequence[Spot]) -> bool:
    return len(drawn) == len(expected) and not any(
        _apart(one, other) for one, other in zip(drawn, expected, strict=True)
    )


def tapers_as_laid_out(subject: Subject) -> Iterator[Finding]:
    """Point 80: each strip is as wide at both ends as the layout says, and its table says it."""
    crooked = subject.facts.crooked
    if crooked is None or subject.facts.followed is not None:
        return
    for frame in plan_frames(subject):
        for strip in crooked.strips:
            if strip.strip:
                yield from _drawn_widths(subject, frame, strip)
    yield from _told_widths(subject, crooked.strips)


def _drawn_widths(subject: Subject, frame: PlanFrame, strip: StripFacts) -> Iterator[Finding]:
    """The strip measured on paper, from its face to its wall, at both ends of the clear line."""
    sheet, facts = subject.sheet, subject.facts
    run = next(name for name, walls in WALLS_OF_RUN.items() if strip.wall in walls)
    other = "width" if run == "length" else "length"
    axis = 0 if run == "length" else 1
    face = wall_face(sheet, frame.view, strip.wall)
    lines = [
        path.spots
        for group in sheet.of_kind("wall-beam", frame.view)
        if group.data.get("id") == strip.strip
        for path in sheet.own_paths(group)
    ]
    if not face or not lines:
        yield sheet.finding(80, f"wall-beam-{strip.strip}", "has no face to be measured from")
        return
    for end, place, wanted in (
        ("start", Fraction(0), strip.at_start),
        ("end", facts.spans[other].at_start, strip.at_end),
    ):
        at = frame.on(run, Fraction(0), place)[1 - axis]
        wall = _on_line(face, at, axis)
        width = abs(lines[0][0][axis] - wall)
        if abs(width - float(wanted) / frame.ratio) > TOLERANCE:
            message = f"is {width:.3f} mm wide at its {end}, to scale it is {in_words(wanted)}"
            yield sheet.finding(80, f"wall-beam-{strip.strip}", message)


def _on_line(line: Sequence[Spot], at: float, axis: int) -> float:
    """Where a line is along one axis, at a place along the other."""
    start, end = line[0], line[-1]
    share = (at - start[1 - axis]) / (end[1 - axis] - start[1 - axis])
    return start[axis] + (end[axis] - start[axis]) * share


def _told_widths(subject: Subject, strips: Sequence[StripFacts]) -> Iterator[Finding]:
    """The tables' figures against the layout's: widths are differences of marks, to a step.

    So a taper, which is the difference of both widths as printed, may be two steps off.
    """
    sheet, step = subject.sheet, subject.facts.step
    for table in sheet.of_kind("strips-table"):
        told = {
            (cell.data.get("name"), row.data.get("of")): cell
            for row in sheet.of_kind("strip-row", table)
            for cell in sheet.of_kind("cell", row)
        }
        walls = {wall for wall, _ in told}
        for strip in (each for each in strips if each.wall in walls):
            cells = {row: told.get((strip.wall, row)) for row in (STRIP, *WIDTHS)}
            for message in _strip_faults(subject, strip, cells, step):
                yield sheet.finding(80, f"{table.id} {strip.wall}", message)


STRIP, TAPER, BOARD = "STRIP", "TAPER", "BOARD"
WIDTHS: Mapping[str, Callable[[StripFacts], Fraction]] = {
    "AT W4/W1": lambda strip: strip.at_start,
    "AT W2/W3": lambda strip: strip.at_end,
    TAPER: lambda strip: strip.taper,
    "SCRIBE": lambda strip: strip.scribe,
    BOARD: lambda strip: strip.widest,
}


def _strip_faults(
    subject: Subject,
    strip: StripFacts,
    cells: Mapping[str, GroupRead | None],
    step: Fraction,
) -> Iterator[str]:
    """What a table says of one strip other than the layout."""
    if _printed(subject, cells[STRIP]) != [strip.strip or "GAP"]:
        yield "is told under another id"
    told = {row: _told(subject, cell) for row in WIDTHS if (cell := cells[row])}
    for row, width in WIDTHS.items():
        if row == BOARD and not strip.strip:
            if _printed(subject, cells[BOARD]) != ["-"]:
                yield "starts from a board, though nothing stands there"
            continue
        figure, wanted = told.get(row), width(strip)
        if figure is None or abs(figure - wanted) > (2 * step if row == TAPER else step):
            yield f"does not tell the layout's {row}"
        elif row == BOARD and figure < wanted:
            yield "starts from a board that is too narrow"
    ends = [width for row, width in told.items() if row.startswith("AT ") and width is not None]
    taper = told.get(TAPER)
    if taper is not None and len(ends) > 1 and max(ends) - min(ends) != taper:
        yield "has a taper other than its ends make"


def _printed(subject: Subject, cell: GroupRead | None) -> list[str]:
    return [one.text for one in subject.sheet.letterings_in(cell)] if cell else []


def _rows(subject: Subject, kind: str) -> Iterator[tuple[str, list[GroupRead]]]:
    """The rows of tables of a kind: whose they are, and the cells that bear a name."""
    sheet = subject.sheet
    for row in sheet.of_kind(kind):
        yield row.data.get("of", ""), list(sheet.of_kind("cell", row))


def _told(subject: Subject, cell: GroupRead) -> Fraction | None:
    """What a cell prints, if it is what it states."""
    texts = [one.text for one in subject.sheet.letterings_in(cell)]
    figure = printed(texts[0], subject.sheet) if len(texts) == 1 else None
    return figure if figure is not None and figure == stated(cell) else None


def both_ends_dimensioned(subject: Subject) -> Iterator[Finding]:
    """Point 81: where a run's ends are unlike, each has an overall and stops at every strip."""
    sheet, facts = subject.sheet, subject.facts
    for frame in plan_frames(subject):
        for run in WALLS_OF_RUN:
            strings = [
                one for one in run_strings(sheet) if (one.view, one.run) == (frame.view.number, run)
            ]
            for end in ("start", "end") if facts.unlike(run, DIMENSIONED) else ():
                at_end = [one for one in strings if one.end == end]
                if not any(one.name == OVERALL for one in at_end):
                    message = f"the {run} run has no overall at its {end}"
                    yield sheet.finding(81, frame.view.id, message)
                stops = stop_places(facts, run, end)
                reached = {
                    stops.get(line.target)
                    for one in at_end
                    if one.name != OVERALL
                    for line in one.dimensions
                }
                for beam in facts.wall_beams:
                    (side,) = faces_to_show(beam)
                    if beam.on == run and stops.get(f"{beam.id}:{side}") not in reached:
                        message = f"no string of the {run} run stops at {beam.id} at its {end}"
                        yield sheet.finding(81, frame.view.id, message)


def control_line_drawn(subject: Subject) -> Iterator[Finding]:
    """Point 82: the control line lies along the wall that the grid is square to, if it is one."""
    sheet, crooked = subject.sheet, subject.facts.crooked
    for frame in plan_frames(subject):
        lines = list(sheet.of_kind("control-line", frame.view))
        by_wall = crooked is not None and bool(crooked.control)
        if len(lines) != int(by_wall):
            yield sheet.finding(82, frame.view.id, f"has {len(lines)} control lines")
        elif crooked is not None and by_wall:
            face = wall_face(sheet, frame.view, crooked.control)
            drawn = sheet.own_paths(lines[0])
            if not face or not drawn or not _beside(drawn[0].spots, face):
                message = f"does not lie along {crooked.control}, which the grid is square to"
                yield sheet.finding(82, lines[0].id, message)


def _beside(line: Sequence[Spot], face: Sequence[Spot]) -> bool:
    """Whether a line goes along a wall's face, a little off it."""
    return len(line) == len(face) and all(
        dist(one, other) <= BESIDE_WALL for one, other in zip(line, face, strict=True)
    )


def survey_listed(subjects: Sequence[Subject]) -> Iterator[Finding]:
    """Point 83: the set lists each strip, each length surveyed, and both ways to lay out, once."""
    crooked, first = subjects[0].facts.crooked, subjects[0]
    if crooked is None:
        return
    step = first.facts.step
    walls = Counter(
        cell.data.get("name", "")
        for each in subjects
        for of, cells in _rows(each, "strip-row")
        for cell in cells
        if of == STRIP
    )
    strips = crooked.strips if first.facts.followed is None else ()
    if walls != Counter(strip.wall for strip in strips):
        yield first.sheet.finding(83, "strips-table", "does not list what stands at every wall")
    lengths = {name: rounded(length, step) for name, length in crooked.lengths.items()}
    told = {
        of: _told(each, cells[0])
        for each in subjects
        for of, cells in _rows(each, "wall-length-row")
        if cells
    }
    if told != lengths:
        yield first.sheet.finding(83, "wall-lengths-table", "does not list the walls as surveyed")
    if len(crooked.modes) > 1:
        yield from _modes_told(subjects, crooked.modes)


def coffer_sizes_listed(subjects: Sequence[Subject]) -> Iterator[Finding]:
    """Point 85: where the grid follows the walls, each side and diagonal is listed, once."""
    first, followed = subjects[0], subjects[0].facts.followed
    told: dict[tuple[str, str], list[Fraction | None]] = {}
    for each in subjects:
        for of, cells in _rows(each, "coffer-size-row"):
            for cell in cells:
                told.setdefault((of, cell.data.get("name", "")), []).append(_told(each, cell))
    wanted = {
        (coffer, name): [rounded(size, first.facts.step)]
        for coffer, sizes in (followed.sizes if followed else {}).items()
        for name, size in zip(SIZE_NAMES, sizes, strict=True)
    }
    for key in sorted({*told, *wanted}):
        if told.get(key) != wanted.get(key):
            message = f"does not tell {' '.join(key)} as it is laid out"
            yield first.sheet.finding(85, "coffer-sizes-table", message)


SIZE_NAMES = ("W1", "W2", "W3", "W4", "RISING", "FALLING")


def _modes_told(
    subjects: Sequence[Subject], modes: Mapping[str, tuple[Fraction, ...]]
) -> Iterator[Finding]:
    first = subjects[0]
    told: dict[str, list[Fraction | None]] = {mode: [] for mode in modes}
    for each in subjects:
        # The first row is of angles, which are not read here.
        for _, cells in list(_rows(each, "mode-row"))[1:]:
            for cell in cells:
                told.setdefault(cell.data.get("name", ""), []).append(_told(each, cell))
    wanted = {
        mode: [rounded(side, first.facts.step) for side in sides] for mode, sides in modes.items()
    }
    if told != wanted:
        yield first.sheet.finding(83, "modes-table", "does not compare both ways to lay out")
