"""Points on the setting-out plan: its running dimensions, its lines, and what it is checked by."""

from collections import Counter
from collections.abc import Iterator
from fractions import Fraction
from math import dist, hypot

from lacunar.drawing.checker.facts import WALLS_OF_RUN, LayoutFacts, MarkFacts, wall_along
from lacunar.drawing.checker.geometry import TOLERANCE
from lacunar.drawing.checker.plan_frame import SETTING_OUT, PlanFrame, plan_frames
from lacunar.drawing.checker.records import Finding, GroupRead
from lacunar.drawing.checker.shapes import Spot
from lacunar.drawing.checker.strings import in_words, printed
from lacunar.drawing.checker.subject import Subject

NUMBERED = ("wall", "face")
LINES = ("face", "center")
DIAGONALS = ("RISING", "FALLING")
LEGS = ("3 OF 3-4-5", "4 OF 3-4-5", "5 OF 3-4-5")


def running_as_marked(subject: Subject) -> Iterator[Finding]:
    """Point 11: running dimensions tell every face and wall at both ends of a run, as marked.

    Each leads to its place: so far from the datum as it says, along the wall it stands at.
    """
    sheet = subject.sheet
    for frame in plan_frames(subject, SETTING_OUT):
        for (run, end), marks in subject.facts.marks.items():
            expected = {(m.kind, m.of, m.side): m for m in marks if m.kind in NUMBERED}
            told: Counter[tuple[str, str, str]] = Counter()
            for name, figure in figures_told(subject, frame, run, end):
                told[name] += 1
                if name in expected:
                    of = run, end, expected[name]
                    for message in figure_faults(subject, frame, figure, of):
                        yield sheet.finding(11, figure.id, message)
            if told != Counter(expected.keys()):
                message = f"tells {sum(told.values())} places at the {end}, not {len(expected)}"
                yield sheet.finding(11, f"running-{run}-{end}", message)


def figures_told(
    subject: Subject, frame: PlanFrame, run: str, end: str
) -> Iterator[tuple[tuple[str, str, str], GroupRead]]:
    """The running dimensions of a run at one end of it, by what each is of."""
    for side in subject.sheet.of_kind("running", frame.view):
        if (side.data.get("run"), side.data.get("end")) == (run, end):
            for figure in subject.sheet.of_kind("running-figure", side):
                data = figure.data
                yield (data.get("kind", ""), data.get("of", ""), data.get("side", "")), figure


def figure_faults(
    subject: Subject, frame: PlanFrame, figure: GroupRead, of: tuple[str, str, MarkFacts]
) -> Iterator[str]:
    """What is wrong with a running dimension: what it tells, and where it leads to."""
    sheet, (run, end, mark) = subject.sheet, of
    words = " ".join(each.text for each in sheet.letterings_in(figure))
    # What it is of may stand before the figure.
    value = printed(words.rpartition(": ")[2], sheet)
    if value != mark.mark:
        words = in_words(value) if value is not None else "nothing"
        yield f"tells {words}, marked is {in_words(mark.mark)}"
    place = frame.on(run, _along(subject.facts, run, end, mark.exact), Fraction(0))
    level = run == "length"
    spots = [spot for path in sheet.paths_in(figure) for spot in path.spots][:1]
    off = [abs(spot.x - place.x if level else spot.y - place.y) for spot in spots]
    if not off or off[0] > TOLERANCE:
        yield "does not lead to its place"


def _along(facts: LayoutFacts, run: str, end: str, exact: Fraction) -> Fraction:
    """Where a place taped from the start wall at an end lies along the run.

    A grid that is square is taped along the edges of its clear rectangle, one along the walls from
    the corner.
    """
    if facts.outline_facts is not None:
        return exact
    if facts.followed is None:
        other = "width" if run == "length" else "length"
        across = Fraction(0) if end == "start" else facts.spans[other].at_start
        return facts.face_at(WALLS_OF_RUN[run][0], run, across) + exact
    along = 0 if run == "length" else 1
    first, last = sorted(facts.wall_ends(wall_along(run, end)), key=lambda corner: corner[along])
    span = Fraction(dist([float(x) for x in first], [float(x) for x in last]))
    return first[along] + (last[along] - first[along]) * exact / span


def lines_as_marked(subject: Subject) -> Iterator[Finding]:
    """Point 93: each face and center is a line on the floor, through its marks on both walls."""
    sheet, facts = subject.sheet, subject.facts
    for frame in plan_frames(subject, SETTING_OUT):
        drawn = {_name(line): line for line in sheet.of_kind("snap-line", frame.view)}
        for run in facts.spans:
            ends = [
                {(m.kind, m.of, m.side): m.exact for m in facts.marks[run, end]}
                for end in ("start", "end")
            ]
            for name, exact in ends[0].items():
                if name[0] not in LINES:
                    continue
                line = drawn.get((run, *name))
                if line is None:
                    message = f"there is no line for the {name[2]} {name[0]} of {name[1]}"
                    yield sheet.finding(93, frame.view.id, message)
                    continue
                places = [
                    float(_along(facts, run, end, place)) / frame.ratio
                    for end, place in (("start", exact), ("end", ends[1][name]))
                ]
                spots = [spot for path in sheet.paths_in(line) for spot in path.spots]
                if not _through(frame, run, spots, places):
                    message = f"the {name[2]} {name[0]} of {name[1]} is not where it is marked"
                    yield sheet.finding(93, frame.view.id, message)


def _name(line: GroupRead) -> tuple[str, str, str, str]:
    data = line.data
    return (
        data.get("on", ""),
        data.get("kind", ""),
        data.get("of", ""),
        data.get("side", ""),
    )


def _through(frame: PlanFrame, run: str, spots: list[Spot], places: list[float]) -> bool:
    """Whether a line starts and ends along its run where it is marked on both walls."""
    if run == "length":
        found = sorted((-spot.y, spot.x - frame.origin.x) for spot in spots)
    else:
        found = sorted((spot.x, frame.origin.y - spot.y) for spot in spots)
    ends = [found[0][1], found[-1][1]] if found else []
    return len(ends) == len(places) and all(
        abs(one - other) <= TOLERANCE for one, other in zip(ends, places, strict=True)
    )


def checks_add_up(subject: Subject) -> Iterator[Finding]:
    """Point 17: diagonals are those of the room's corners; three, four and five are a right angle.

    A diagonal may be half a step off, as it is rounded.
    """
    sheet = subject.sheet
    for table in sheet.of_kind("checks-table"):
        told = {
            row.data.get("of", ""): printed(lettering.text, sheet)
            for row in sheet.of_kind("check-row", table)
            for cell in sheet.of_kind("cell", row)
            for lettering in sheet.letterings_in(cell)
        }
        expected = dict(zip(DIAGONALS, _diagonals(subject.facts), strict=False))
        for name, length in expected.items():
            value = told.get(name)
            if value is None or abs(float(value) - length) > float(subject.facts.step) / 2 + 1e-3:
                yield sheet.finding(17, table.id, f"{name.lower()} is not {length:.3f} mm")
        legs = [told.get(name) for name in LEGS]
        if subject.facts.followed is not None:
            if legs != [None, None, None]:
                yield sheet.finding(17, table.id, "a grid along the walls has no right angle")
        elif None in legs or [leg * 5 for leg in legs if leg] != [
            (legs[2] or Fraction(0)) * part for part in (3, 4, 5)
        ]:
            yield sheet.finding(17, table.id, "its right angle is none")


def _diagonals(facts: LayoutFacts) -> tuple[float, ...]:
    """Rising from the datum, and falling; nothing in a room of other than four corners."""
    if facts.outline_facts is not None:
        return ()
    corners = [tuple(float(x) for x in corner) for corner in facts.outline]
    (a, b, c, d) = corners
    return hypot(c[0] - a[0], c[1] - a[1]), hypot(d[0] - b[0], d[1] - b[1])
