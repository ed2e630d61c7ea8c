"""Points on the panel plan: seams and joints where they are laid out, rips that add up, tables."""

from collections.abc import Iterator, Sequence
from fractions import Fraction
from math import hypot

from lacunar.drawing.checker.facts import CofferFacts
from lacunar.drawing.checker.geometry import TOLERANCE
from lacunar.drawing.checker.panel_facts import (
    CutFacts,
    FieldFacts,
    LaidFacts,
    PanelFacts,
    SheetFacts,
)
from lacunar.drawing.checker.plan_frame import PANELS, PlanFrame, plan_frames
from lacunar.drawing.checker.records import Finding, GroupRead, Path
from lacunar.drawing.checker.shapes import Spot, extent
from lacunar.drawing.checker.subject import Subject
from lacunar.drawing.checker.told_cells import RowTold, Told, same_rows, told_rows

JOINTS_APART = 0.9
"""Joints nearer to each other on paper [mm] are left out between the edge boards."""
HIDDEN_BY_SIGNS = 30.0
"""A joint shorter than this on paper [mm] may be hidden by ids and signs as a whole."""
MOST_ROWS = 90
HAIR = Fraction(1, 1000)

Places = dict[str, list[float]]


def _plans(subject: Subject) -> Iterator[tuple[PlanFrame, PanelFacts]]:
    panels = subject.facts.panels
    for frame in plan_frames(subject, PANELS) if panels else ():
        assert panels is not None
        yield frame, panels


def joints_as_laid_out(subject: Subject) -> Iterator[Finding]:
    """Point 124: seams and joints are drawn where each field has them, and nowhere else."""
    sheet = subject.sheet
    for frame, panels in _plans(subject):
        wanted = _wanted(subject, frame, panels)
        drawn = {g.data.get("of", ""): g for g in sheet.of_kind("field-of", frame.view)}
        filled = wanted.keys() | {name for name in panels.tapered if name in drawn}
        if drawn.keys() != filled:
            message = f"has {len(drawn)} fields, the layout {len(filled)}"
            yield sheet.finding(124, frame.view.id, message)
        for name, group in drawn.items():
            if name in panels.tapered:
                yield from _tapered(subject, frame, group, panels)
            elif name in wanted and not _as_wanted(subject, group, wanted[name]):
                message = "has seams or joints elsewhere than the layout"
                yield sheet.finding(124, group.id, message)


def _wanted(subject: Subject, frame: PlanFrame, panels: PanelFacts) -> dict[str, Places]:
    """Where joints of each field lie on paper: x of upright ones, y of level ones."""
    found: dict[str, Places] = {}
    for fit in panels.sheets:
        for coffer, (x, y) in fit.places.items():
            found[coffer] = {
                "length": [frame.spot(x + seam, y).x for seam in fit.seams["length"]],
                "width": [frame.spot(x, y + seam).y for seam in fit.seams["width"]],
            }
    for field in panels.fields:
        for coffer, place in field.places.items():
            start = place[1] if panels.parallel_to == "length" else place[0]
            found[coffer] = _joints(frame, panels, start, field.laid)
    coffers = {coffer.id: coffer for coffer in subject.facts.coffers}
    for cut in panels.cut_drawn:
        if cut.laid is not None:
            start = _cut_start(coffers[cut.coffer], panels, cut.laid)
            found[cut.coffer] = _joints(frame, panels, start, cut.laid)
    return {name: each for name, each in found.items() if name not in panels.tapered}


def _joints(frame: PlanFrame, panels: PanelFacts, start: Fraction, laid: LaidFacts) -> Places:
    numbers = range(laid.courses - 1)
    if float(panels.cover) / frame.ratio < JOINTS_APART:
        numbers = range(0, laid.courses - 1, max(laid.courses - 2, 1))
    places = [start + laid.edge + panels.cover * number for number in numbers]
    if panels.parallel_to == "length":
        return {"length": [], "width": [frame.spot(Fraction(0), at).y for at in places]}
    return {"length": [frame.spot(at, Fraction(0)).x for at in places], "width": []}


def _cut_start(coffer: CofferFacts, panels: PanelFacts, laid: LaidFacts) -> Fraction:
    """Courses of a cut coffer lie about the middle of the rectangle about it."""
    along = 1 if panels.parallel_to == "length" else 0
    places = [corner[along] for corner in coffer.corners]
    return (min(places) + max(places) - laid.across) / 2


def _strokes(subject: Subject, group: GroupRead) -> list[Path]:
    sheet = subject.sheet
    return [path for each in sheet.of_kind("joints", group) for path in sheet.paths_in(each)]


def _as_wanted(subject: Subject, group: GroupRead, wanted: Places) -> bool:
    """Whether all that is drawn lies at a place wanted, and each place has something drawn."""
    seen: Places = {"length": [], "width": []}
    reach = 0.0
    for path in _strokes(subject, group):
        box = extent(path.spots)
        upright = box.bottom - box.top > box.right - box.left
        run, at = ("length", path.spots[0].x) if upright else ("width", path.spots[0].y)
        slack = box.right - box.left if upright else box.bottom - box.top
        if slack > TOLERANCE or not any(abs(at - each) <= TOLERANCE for each in wanted[run]):
            return False
        seen[run].append(at)
        reach = max(reach, hypot(box.right - box.left, box.bottom - box.top))
    missing = [
        at
        for run, places in wanted.items()
        for at in places
        if not any(abs(at - each) <= TOLERANCE for each in seen[run])
    ]
    return not missing or reach < HIDDEN_BY_SIGNS


def _tapered(
    subject: Subject, frame: PlanFrame, group: GroupRead, panels: PanelFacts
) -> Iterator[Finding]:
    """Joints of a coffer that tapers lie in it, the first as far in as its edge board is."""
    coffers = {coffer.id: coffer for coffer in subject.facts.coffers}
    coffer = coffers.get(group.data.get("of", ""))
    if coffer is None:
        return
    corners = [frame.spot(*corner) for corner in coffer.corners]
    around = extent(corners).grown(TOLERANCE)
    strokes = _strokes(subject, group)
    if any(not around.holds(path.around) for path in strokes):
        yield subject.sheet.finding(124, group.id, "has joints outside its coffer")
    edge = panels.tapered[coffer.id]
    if edge is not None and strokes:
        near = min(_off(corners[0], path.spots) for path in strokes)
        slack = (float(panels.gap) * 2 + 1.0) / frame.ratio + TOLERANCE
        if abs(near - max(float(edge), 0.0) / frame.ratio) > slack:
            yield subject.sheet.finding(124, group.id, "starts with another edge board")


def _off(at: Spot, line: Sequence[Spot]) -> float:
    """How far a place is from a straight line [mm]."""
    start, end = line[0], line[-1]
    x, y = end.x - start.x, end.y - start.y
    return abs((at.x - start.x) * y - (at.y - start.y) * x) / hypot(x, y)


def coffers_named(subject: Subject) -> Iterator[Finding]:
    """Point 126: each coffer bears its id once, within its opening."""
    sheet = subject.sheet
    for frame, _ in _plans(subject):
        for coffer in subject.facts.coffers:
            around = extent([frame.spot(*corner) for corner in coffer.corners])
            tags = [
                lettering
                for tag in sheet.of_kind("tag", frame.view)
                if (tag.data.get("kind"), tag.data.get("of")) == ("coffer", coffer.id)
                for lettering in sheet.letterings_in(tag)
            ]
            if [tag.text for tag in tags] != [coffer.id] or not around.holds(tags[0].box):
                message = "does not bear its id, once and in its opening"
                yield sheet.finding(126, f"coffer-{coffer.id}", message)


def starts_shown(subject: Subject) -> Iterator[Finding]:
    """Point 127: arrows from where boards start lie across them, from the start wall's side on."""
    sheet = subject.sheet
    for frame, panels in _plans(subject):
        coffers = {coffer.id: coffer for coffer in subject.facts.coffers}
        for sign in sheet.of_kind("laying-start", frame.view):
            coffer = coffers.get(sign.data.get("of", ""))
            if coffer is None or not _starts(subject, frame, sign, (panels, coffer)):
                yield sheet.finding(127, sign.id, "does not lie across from where boards start")


def _starts(
    subject: Subject, frame: PlanFrame, sign: GroupRead, of: tuple[PanelFacts, CofferFacts]
) -> bool:
    panels, coffer = of
    paths = subject.sheet.paths_in(sign)
    shafts = [path.spots for path in paths if path.pen and path.pen.name == "fine"]
    if len(shafts) != 1:
        return False
    tail, tip = shafts[0][0], shafts[0][-1]
    box = extent([frame.spot(*corner) for corner in coffer.corners])
    if not box.holds(extent([tail, tip])):
        return False
    if panels.parallel_to == "length":
        return tip.y < tail.y and abs(tip.x - tail.x) <= TOLERANCE and tail.y > box.middle.y
    return tip.x > tail.x and abs(tip.y - tail.y) <= TOLERANCE and tail.x < box.middle.x


def sizes_counted(subject: Subject) -> Iterator[Finding]:
    """Point 128: a size that is marked once says how many there are of it, exactly."""
    sheet = subject.sheet
    for frame, panels in _plans(subject):
        counts = [(fit.coffers, len(fit.coffers)) for fit in panels.sheets]
        counts += [(field.coffers, field.fields) for field in panels.fields]
        for mark in sheet.of_kind("field-size", frame.view):
            texts = [lettering.text for lettering in sheet.letterings_in(mark)]
            told = texts[0][:-1] if texts and texts[0].endswith("X") else "1"
            of = mark.data.get("of", "")
            expected = [str(count) for coffers, count in counts if of in coffers]
            if expected != [told]:
                message = f"says {told} of a size, the layout has {' or '.join(expected)}"
                yield sheet.finding(128, mark.id, message)


def _own(subjects: Sequence[Subject]) -> list[Subject]:
    """The sheets of panels and boards."""
    return [each for each in subjects if each.sheet.id.startswith("Z-104")]


def rips_add_up(subjects: Sequence[Subject]) -> Iterator[Finding]:
    """Point 22: edge boards and whole covers fill what is across, edges over half a cover.

    As the layout has them, and as tables tell them; half a cover or less only where the spec says
    what is to lie on the middle line.
    """
    own = _own(subjects)
    panels = subjects[0].facts.panels
    if panels is None or not panels.parallel_to or not own:
        return
    first = own[0]
    for field in panels.fields:
        for message in _ripped(panels, field):
            yield first.sheet.finding(22, f"field-{field.coffers[0]}", message)
    step = first.facts.step
    for row in told_rows(own, "board-field"):
        courses, across, edge = (row.cells.get(name) for name in ("courses", "across", "edge"))
        if not isinstance(across, Fraction) or not isinstance(edge, Fraction):
            yield first.sheet.finding(22, "board-fields-table", f"{row.of} has no rips")
            continue
        count = int(courses) if isinstance(courses, str) and courses.isdigit() else 0
        filled = edge * 2 + panels.cover * (count - 2) if count > 1 else edge
        # Two edges and one whole, each rounded by half a step.
        if abs(filled - across) > step * 3 / 2 + HAIR:
            yield first.sheet.finding(22, "board-fields-table", f"{row.of} does not add up")


def _ripped(panels: PanelFacts, field: FieldFacts) -> Iterator[str]:
    laid = field.laid
    tapers = any(coffer in panels.tapered for coffer in field.coffers)
    filled = laid.edge if laid.courses == 1 else laid.edge * 2 + panels.cover * (laid.courses - 2)
    if abs(filled - laid.across) > HAIR:
        yield "rips and whole covers do not fill what is across"
    narrow = laid.edge * 2 <= panels.cover and laid.courses > 1
    if narrow and not panels.asked_for_middle and not tapers:
        yield "edge boards are half a cover or less"


def tables_tell_panels(subjects: Sequence[Subject]) -> Iterator[Finding]:
    """Point 125: tables tell panels and boards that are alike with their sizes and counts."""
    own = _own(subjects)
    panels = subjects[0].facts.panels
    if panels is None or not own:
        return
    first = own[0]
    slack = first.facts.step / 2 + HAIR
    seamed = any(fit.seam_count for fit in panels.sheets)
    for kind, rows in (
        ("panel-size", [_sheet_row(fit, seamed) for fit in panels.sheets]),
        ("panel-seam", [row for fit in panels.sheets for row in _seam_rows(fit)]),
        ("panel-side", [_side_row(coffer, sides) for coffer, sides in panels.sides]),
        ("cut-panel", [row for cut in panels.cut_listed for row in _cut_panel_rows(cut)]),
        ("board-field", [_field_row(field) for field in panels.fields]),
        ("board-taper", [RowTold(of, {"start": a, "end": b}) for of, a, b in panels.edges]),
        ("cut-board-field", [row for cut in panels.cut_listed for row in _cut_field_rows(cut)]),
        ("cut-board", [row for cut in panels.cut_listed for row in _cut_rows(cut)]),
    ):
        if not same_rows(list(told_rows(own, kind)), rows, slack, MOST_ROWS):
            message = "does not tell what the layout has"
            yield first.sheet.finding(125, f"{kind}s-table", message)


def _in(coffers: Sequence[str]) -> str:
    more = len(coffers) - 1
    return f"{coffers[0]} + {more}" if more else coffers[0]


def _sheet_row(fit: SheetFacts, seamed: bool) -> RowTold:
    cells: dict[str, Told] = {
        "length": fit.length,
        "width": fit.width,
        "panels": str(len(fit.coffers)),
    }
    if seamed:
        cells["seams"] = str(fit.seam_count) if fit.seam_count else None
    return RowTold(_in(fit.coffers), cells)


def _field_row(field: FieldFacts) -> RowTold:
    laid = field.laid
    return RowTold(
        _in(field.coffers),
        {
            "fields": str(field.fields),
            "courses": str(laid.courses),
            "boards": str(field.boards),
            "length": field.length,
            "across": laid.across,
            "edge": laid.edge,
            "first-rip": laid.first_rip,
            "last-rip": laid.last_rip,
        },
    )


def _seam_rows(fit: SheetFacts) -> Iterator[RowTold]:
    for seams in fit.seams.values():
        yield from (RowTold(_in(fit.coffers), {"at": seam}) for seam in seams)


def _side_row(coffer: str, sides: Sequence[Fraction]) -> RowTold:
    return RowTold(coffer, {f"w{number}": side for number, side in enumerate(sides, start=1)})


def _cut_panel_rows(cut: CutFacts) -> Iterator[RowTold]:
    if cut.cut_from is not None:
        length, width, corners = cut.cut_from
        yield RowTold(cut.coffer, {"length": length, "width": width, "corners": str(corners)})


def _cut_field_rows(cut: CutFacts) -> Iterator[RowTold]:
    if cut.laid is not None:
        laid = cut.laid
        cells: dict[str, Told] = {"across": laid.across, "edge": laid.edge}
        yield RowTold(cut.coffer, {"courses": str(laid.courses), **cells})


def _cut_rows(cut: CutFacts) -> Iterator[RowTold]:
    for length, boards in cut.boards:
        yield RowTold(cut.coffer, {"length": length, "boards": str(boards)})
