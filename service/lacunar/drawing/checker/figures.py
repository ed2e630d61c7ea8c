"""Points on the figures: what is printed sums up, agrees with the table and with the layout.

Figures are read off the print, as text, by the rules anyone reads a tape measure's notation by.
"""

from collections.abc import Iterator, Mapping
from fractions import Fraction
from itertools import pairwise
from math import floor

from lacunar.drawing.checker.facts import WALLS_OF_RUN, BeamFacts, LayoutFacts
from lacunar.drawing.checker.naming import says
from lacunar.drawing.checker.plan_frame import plan_views
from lacunar.drawing.checker.records import Finding, GroupRead
from lacunar.drawing.checker.strings import (
    MarkRead,
    StringRead,
    in_words,
    marks_read,
    printed,
    run_strings,
    stated,
)
from lacunar.drawing.checker.subject import Subject

OVERALL = "overall"
OPENINGS = "openings"
CENTERS = "centers"
WALLS = "walls"
# Ends of neighboring dimension lines meet, but for the rounding of written coordinates.
MEETING = 0.01

Printed = Mapping[tuple[str, str], Fraction]


def strings_sum_up(subject: Subject) -> Iterator[Finding]:
    """Point 9: each string is an unbroken chain, and its printed figures sum to the overall."""
    sheet = subject.sheet
    for group in sheet.of_kind("dimension"):
        yield from _unreadable(subject, group)
    sums: dict[tuple[int, str, str], dict[str, Fraction]] = {}
    for string in run_strings(sheet):
        yield from _breaks(subject, string)
        figures = [printed(dimension.figure.text, sheet) for dimension in string.dimensions]
        total = sum((figure for figure in figures if figure is not None), Fraction(0))
        sums.setdefault((string.view, string.run, string.end), {})[string.name] = total
    for (_, run, end), totals in sums.items():
        for name, total in totals.items():
            where = f"string-{run}-{name}" + (" at the end" if end == "end" else "")
            if OVERALL not in totals:
                yield sheet.finding(9, where, "there is no overall to sum up to")
            elif total != totals[OVERALL]:
                message = f"sums to {in_words(total)}, the overall is {in_words(totals[OVERALL])}"
                yield sheet.finding(9, where, message)


def _unreadable(subject: Subject, group: GroupRead) -> Iterator[Finding]:
    """What is wrong with one dimension's figure by itself."""
    sheet = subject.sheet
    texts = [lettering.text for lettering in sheet.letterings_in(group)]
    figure = printed(texts[0], sheet) if len(texts) == 1 else None
    if figure is None:
        yield sheet.finding(9, group.id, f"prints {texts}, which is not one length")
    elif figure != stated(group):
        message = f"prints “{texts[0]}” but states the value “{group.data.get('value', '')}”"
        yield sheet.finding(9, group.id, message)


def _breaks(subject: Subject, string: StringRead) -> Iterator[Finding]:
    """Where a string does not go on at the place it had come to."""
    for before, after in pairwise(string.dimensions):
        apart = max(abs(before.end.x - after.start.x), abs(before.end.y - after.start.y))
        if before.target != after.source or apart > MEETING:
            message = f"starts at {after.source}, where {before.group.id} ends at {before.target}"
            yield subject.sheet.finding(9, after.group.id, message)


def overall_is_span(subject: Subject) -> Iterator[Finding]:
    """Point 10: the printed overall is the room's finished span, rounded to the marking step."""
    sheet, facts = subject.sheet, subject.facts
    for string in run_strings(sheet):
        if string.name != OVERALL:
            continue
        span = rounded(facts.span(string.run, string.end), facts.step)
        figures = [printed(dimension.figure.text, sheet) for dimension in string.dimensions]
        if figures != [span]:
            texts = ", ".join(f"“{one.figure.text}”" for one in string.dimensions)
            message = f"prints {texts or 'nothing'}, the finished span is {in_words(span)}"
            yield sheet.finding(10, string.group.id, message)


def rounded(length: Fraction, step: Fraction) -> Fraction:
    """A length from the datum rounded to whole steps, halves away from the datum."""
    return floor(length / step + Fraction(1, 2)) * step


def marks_agree(subject: Subject) -> Iterator[Finding]:
    """Point 11: the marks table is the layout's, and its differences are the strings' segments."""
    sheet = subject.sheet
    yield from _rows_named(subject)
    for mark in marks_read(sheet):
        yield from _mark_faults(subject, mark)
    for string in run_strings(sheet):
        places = _places(subject, string.run, string.end)
        for dimension in string.dimensions:
            start, end = places.get(dimension.source), places.get(dimension.target)
            figure = printed(dimension.figure.text, sheet)
            if start is None or end is None:
                message = f"goes from {dimension.source} to {dimension.target}: no such marks"
                yield sheet.finding(11, dimension.group.id, message)
            elif figure is not None and figure != end - start:
                message = f"prints {in_words(figure)}, the marks differ by {in_words(end - start)}"
                yield sheet.finding(11, dimension.group.id, message)


def _rows_named(subject: Subject) -> Iterator[Finding]:
    """Rows of a marks table whose first text is not what the row is of."""
    sheet = subject.sheet
    for table in sheet.of_kind("marks-table"):
        for row in sheet.of_kind("mark-row", table):
            texts = [one.text for one in sheet.letterings_in(row) if one.group == row.number]
            named = row.data.get("member") or row.data.get("of", "")
            if len(texts) != 1 or not says(texts[0], named):
                yield sheet.finding(11, f"{table.id} {row.data.get('of')}", f"is named {texts}")


def _mark_faults(subject: Subject, mark: MarkRead) -> Iterator[Finding]:
    sheet = subject.sheet
    figure = printed(mark.text, sheet)
    where = f"marks-{mark.run} {mark.of} {mark.side}"
    if figure is None or figure != stated(mark.group):
        message = f"prints “{mark.text}” but states the value “{mark.group.data.get('value', '')}”"
        yield sheet.finding(11, where, message)
    listed = [
        one.mark
        for one in subject.facts.marks.get((mark.run, mark.end), ())
        if (one.kind, one.of, one.side) == (mark.kind, mark.of, mark.side)
    ]
    if figure is not None and listed != [figure]:
        message = f"prints “{mark.text}”, the layout marks {[in_words(one) for one in listed]}"
        yield sheet.finding(11, where, message)


def _places(subject: Subject, run: str, end: str) -> dict[str, Fraction]:
    """Every place a string can stop at, from the wall: from the sheet's table, else the layout.

    Where the face of one thing is the face of the next, only one of the two may be marked.
    """
    facts = subject.facts
    before = facts.wall_before(run, end)
    stops = stop_places(facts, run, end)
    level = facts.level(run, end)
    places = {n: rounded((place + before) / level, facts.step) for n, place in stops.items()}
    for fact in facts.marks.get((run, end), ()):
        places[_stop_name(fact.kind, fact.of, fact.side)] = fact.mark
    for mark in marks_read(subject.sheet):
        figure = printed(mark.text, subject.sheet)
        if (mark.run, mark.end) == (run, end) and figure is not None:
            places[_stop_name(mark.kind, mark.of, mark.side)] = figure
    return places


def _stop_name(kind: str, of: str, side: str) -> str:
    """How a dimension names the place of a mark: `W1`, `XB-1:near`, `XB-1:center`."""
    if kind == "wall":
        return of
    if kind == "center":
        return f"{of}:center"
    return f"{of}:{side}" if kind == "face" else f"{of}:{side}:{kind}"


def faces_from_datum(subject: Subject) -> Iterator[Finding]:
    """Point 12: each run has its strings, and one of them stops at both faces of every beam."""
    sheet, facts = subject.sheet, subject.facts
    yield from _strings_missing(subject)
    for string in run_strings(sheet):
        if string.name != OPENINGS:
            continue
        stops = stop_places(facts, string.run, string.end)
        reached = {
            stops.get(dimension.target)
            for each in run_strings(sheet)
            if (each.view, each.run) == (string.view, string.run) and each.name in (OPENINGS, WALLS)
            for dimension in each.dimensions
        }
        for beam in (*facts.beams, *facts.wall_beams):
            if beam.on != string.run:
                continue
            for side in faces_to_show(beam):
                if stops.get(f"{beam.id}:{side}") not in reached:
                    message = f"does not stop at the {side} face of {beam.id}"
                    yield sheet.finding(12, string.group.id, message)


def _strings_missing(subject: Subject) -> Iterator[Finding]:
    """The strings a plan should have and has not; without beams, a run needs none of centers.

    All of a run's strings are to stand at one of its ends.
    """
    sheet, beams = subject.sheet, subject.facts.beams
    drawn = {(one.view, one.run, one.end, one.name) for one in run_strings(sheet)}
    for view in plan_views(sheet):
        for run in WALLS_OF_RUN:
            centers = (CENTERS,) if any(beam.on == run for beam in beams) else ()
            wanted = (OPENINGS, *centers, OVERALL)
            missing = min(
                (
                    [name for name in wanted if (view.number, run, end, name) not in drawn]
                    for end in ("start", "end")
                ),
                key=len,
            )
            for name in missing:
                message = f"the {run} run has no string of {name}"
                yield sheet.finding(12, view.id, message)


def faces_to_show(beam: BeamFacts) -> Iterator[str]:
    """The faces a beam has towards coffers; one at a wall has only the one away from it."""
    _, end_wall = WALLS_OF_RUN[beam.on]
    if beam.wall != end_wall:
        yield "far"
    if not beam.wall or beam.wall == end_wall:
        yield "near"


def stop_places(facts: LayoutFacts, run: str, end: str) -> dict[str, Fraction]:
    """Where the layout has each place that a dimension can name, along a run, unrounded."""
    start_wall, end_wall = WALLS_OF_RUN[run]
    before = facts.wall_before(run, end)
    level = facts.level(run, end)
    places = {start_wall: -before, end_wall: facts.span(run, end) * level - before}
    if facts.followed is not None:
        for mark in facts.marks[run, end]:
            places[_stop_name(mark.kind, mark.of, mark.side)] = mark.exact * level - before
        return _with_shared_faces(facts, run, places)
    if facts.outline_facts is not None:
        places |= dict(facts.outline_facts.places(run))
    for beam in (*facts.beams, *facts.wall_beams):
        if beam.on == run:
            places[f"{beam.id}:near"] = beam.near.at_start
            places[f"{beam.id}:far"] = beam.far.at_start
            places[f"{beam.id}:center"] = beam.center.at_start
    return places


def _with_shared_faces(
    facts: LayoutFacts, run: str, places: dict[str, Fraction]
) -> dict[str, Fraction]:
    """The places with the faces of what stands at walls that are marked as another's."""
    faces = {
        f"{beam.id}:{side}": line.at_start
        for beam in facts.wall_beams
        if beam.on == run
        for side, line in (("near", beam.near), ("far", beam.far))
    }
    at = {faces[name]: place for name, place in places.items() if name in faces}
    return {**{name: at[place] for name, place in faces.items() if place in at}, **places}


def strings_wall_to_wall(subject: Subject) -> Iterator[Finding]:
    """Point 13: every string of a run goes from its start wall, the datum, to its end wall."""
    for string in run_strings(subject.sheet):
        ends = (
            *(dimension.source for dimension in string.dimensions[:1]),
            *(dimension.target for dimension in string.dimensions[-1:]),
        )
        if ends != WALLS_OF_RUN[string.run]:
            message = f"goes from {' to '.join(ends) or 'nowhere to nowhere'}"
            yield subject.sheet.finding(13, string.group.id, message)
