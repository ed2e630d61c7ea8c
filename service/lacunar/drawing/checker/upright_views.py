"""Points on sections and elevations: cut, seen, high and marked as the layout has it, to scale."""

from collections.abc import Iterator, Sequence
from fractions import Fraction

from lacunar.drawing.checker.dimension_lines import dimension_line
from lacunar.drawing.checker.facts import MarkFacts
from lacunar.drawing.checker.figures import rounded
from lacunar.drawing.checker.geometry import TOLERANCE
from lacunar.drawing.checker.records import Finding, GroupRead, SheetRead
from lacunar.drawing.checker.shapes import Spot
from lacunar.drawing.checker.strings import in_words, printed
from lacunar.drawing.checker.subject import Subject
from lacunar.drawing.checker.upright_facts import HeightFacts
from lacunar.drawing.checker.upright_frame import (
    ELEVATION,
    SECTION,
    Places,
    UprightFrame,
    WallSeen,
    places_in_section,
    places_on_wall,
    upright_frames,
    wall_seen,
)

CUT = ("cut-beam", "cut-wall-beam")
FLOOR, LIMIT = "floor", "limit"
NOT_DRAWN = "Not drawn"


def _frames(subject: Subject) -> Iterator[tuple[UprightFrame, Places]]:
    for frame in upright_frames(subject, SECTION):
        yield frame, places_in_section(subject.facts, frame.view)
    for frame in upright_frames(subject, ELEVATION):
        yield frame, places_on_wall(subject.facts, frame.view)


def cuts_as_laid_out(subject: Subject) -> Iterator[Finding]:
    """Point 130: what is cut has its faces and its underside where the layout has them.

    So has what is seen beyond; in a room of four walls no beam of the run is missing.
    """
    heights = subject.facts.heights
    if heights is None:
        return
    for frame, places in _frames(subject):
        sheet = subject.sheet
        groups = [group for kind in CUT for group in sheet.of_kind(kind, frame.view)]
        for group in groups:
            for message in _cut_faults(sheet, frame, group, places):
                yield sheet.finding(130, group.id, message)
        for group in (*groups, *sheet.of_kind("beyond", frame.view)):
            yield from _underside(subject, frame, group, heights)
        drawn = sorted(group.data.get("id", "") for group in groups)
        wanted = _wanted(subject, frame)
        if wanted is not None and drawn != wanted:
            message = f"cuts {', '.join(drawn)}, the layout has {', '.join(wanted)}"
            yield sheet.finding(130, frame.view.id, message)


def _spots(sheet: SheetRead, group: GroupRead) -> list[Spot]:
    return [spot for path in sheet.paths_in(group) for spot in path.spots]


def _cut_faults(
    sheet: SheetRead, frame: UprightFrame, group: GroupRead, places: Places
) -> Iterator[str]:
    """Faces of a beam that is cut which do not lie where they are laid out."""
    xs = [spot.x for spot in _spots(sheet, group)]
    for side in ("near", "far"):
        place = places.get(f"{group.data.get('id')}:{side}")
        wall_side = group.kind == "cut-wall-beam" and side == _wall_side(group)
        if place is None or wall_side:
            continue
        if not any(abs(x - frame.x(place)) <= TOLERANCE for x in xs):
            yield f"does not have its {side} face where the layout has it"


def _wall_side(group: GroupRead) -> str:
    """Which face of what stands at a wall is the wall, or another strip: the outer one."""
    left = group.data.get("left", "")
    other = {"near": "far", "far": "near"}.get(left, "")
    return left if group.data.get("at-wall") == "left" else other


def _underside(
    subject: Subject, frame: UprightFrame, group: GroupRead, heights: HeightFacts
) -> Iterator[Finding]:
    """The lowest edge of what is cut or seen, which is not its profile's."""
    beam = group.data.get("id") or group.data.get("of", "")
    if beam not in heights.profiles:
        if group.kind in CUT or group.data.get("profile"):
            yield subject.sheet.finding(130, group.id, f"is of {beam}, which the layout has not")
        return
    lowest = max((spot.y for spot in _spots(subject.sheet, group)), default=0.0)
    due = frame.y(heights.under(beam))
    if abs(lowest - due) > TOLERANCE:
        message = f"ends {abs(lowest - due):.3f} mm off the underside of {beam}"
        yield subject.sheet.finding(130, group.id, message)


def _wanted(subject: Subject, frame: UprightFrame) -> list[str] | None:
    """What a view of a room with four walls must cut: all beams across its run, at walls too."""
    facts = subject.facts
    if facts.outline_facts is not None:
        return None
    run = frame.view.data.get("run", "")
    return sorted(beam.id for beam in (*facts.beams, *facts.wall_beams) if beam.on == run)


def heights_as_stacked(subject: Subject) -> Iterator[Finding]:
    """Point 131: strings of heights stop at the layout's heights, and print what these differ by.

    A wall's length is that between its corners.
    """
    heights, sheet = subject.facts.heights, subject.sheet
    if heights is None:
        return
    for frame, _ in _frames(subject):
        heads = {
            f"head:{number}": head for number, head in enumerate(heights.heads, start=1) if head
        }
        known = {FLOOR: Fraction(0), LIMIT: heights.limit, **heads, **heights.levels}
        for string in sheet.of_kind("dimension-string", frame.view):
            if string.data.get("run", "").startswith("heights-"):
                for group in sheet.of_kind("dimension", string):
                    for message in _height_faults(subject, frame, group, known):
                        yield sheet.finding(131, group.id, message)
        yield from _length_told(subject, frame)


def _height_faults(
    subject: Subject, frame: UprightFrame, group: GroupRead, known: dict[str, Fraction]
) -> Iterator[str]:
    line = dimension_line(subject.sheet, group)
    names = (group.data.get("from", ""), group.data.get("to", ""))
    if line is None or not known.keys() >= set(names):
        yield f"goes from {names[0]} to {names[1]}, which the layout has not"
        return
    for name, spot in zip(names, (line.start, line.end), strict=True):
        if abs(spot.y - frame.y(known[name])) > TOLERANCE:
            yield f"does not end at the height of {name}"
    step = subject.facts.step
    due = rounded(known[names[1]], step) - rounded(known[names[0]], step)
    if printed(line.figure.text, subject.sheet) != due:
        yield f"prints “{line.figure.text}”, the heights differ by {in_words(due)}"


def _length_told(subject: Subject, frame: UprightFrame) -> Iterator[Finding]:
    """A wall whose view is not as long as it is, or whose string prints another length."""
    wall = wall_seen(subject.facts, frame.view, taped=False)
    if wall is None:
        return
    sheet = subject.sheet
    drawn = frame.ends[1] - frame.ends[0]
    if abs(drawn - wall.length / frame.ratio) > TOLERANCE:
        message = f"is {drawn:.3f} mm long, {wall.length / frame.ratio:.3f} mm is to scale"
        yield sheet.finding(131, frame.view.id, message)
    for string in sheet.of_kind("dimension-string", frame.view):
        if string.data.get("run", "").startswith("wall-"):
            for group in sheet.of_kind("dimension", string):
                line = dimension_line(sheet, group)
                figure = printed(line.figure.text, sheet) if line else None
                off = abs(float(figure or 0) - wall.length)
                if off > float(subject.facts.step) / 2 + 1e-3:
                    yield sheet.finding(131, group.id, f"the wall is {wall.length:.3f} mm long")


def features_in_walls(subject: Subject) -> Iterator[Finding]:
    """Point 132: each wall feature is in its wall's elevation, at its place and as high as told."""
    if subject.facts.heights is None:
        return
    for frame in upright_frames(subject, ELEVATION):
        yield from _features_of(subject, frame, subject.facts.heights)


def _features_of(subject: Subject, frame: UprightFrame, heights: HeightFacts) -> Iterator[Finding]:
    facts, sheet = subject.facts, subject.sheet
    wall = wall_seen(facts, frame.view, taped=False)
    if wall is None:
        yield sheet.finding(132, frame.view.id, "is of a wall that the layout has not")
        return
    seen = (frame.view.data.get("wall"), frame.view.data.get("side", ""))
    drawn = {group.data.get("id"): group for group in sheet.of_kind("wall-opening", frame.view)}
    for feature, head in zip(facts.features, heights.heads, strict=False):
        if (feature.wall, feature.side) != seen:
            continue
        group = drawn.pop(feature.name, None)
        if group is None:
            yield sheet.finding(132, frame.view.id, f"does not show {feature.name}")
            continue
        places = sorted(
            min(max(wall.along(edge), 0.0), wall.length) for edge in (feature.near, feature.far)
        )
        for message in _feature_faults(sheet, frame, group, (places[0], places[1], head)):
            yield sheet.finding(132, group.id, message)
    for stray in drawn.values():
        yield sheet.finding(132, stray.id, f"is not in {seen[0]}")


def _feature_faults(
    sheet: SheetRead,
    frame: UprightFrame,
    group: GroupRead,
    due: tuple[float, float, Fraction | None],
) -> Iterator[str]:
    """What is wrong with one feature, whose edges and head are due."""
    *places, head = due
    edges = [path for path in sheet.own_paths(group) if path.pen and path.pen.name == "object"]
    xs = [spot.x for path in edges for spot in path.spots]
    for place, edge in zip(places, (min(xs, default=0.0), max(xs, default=0.0)), strict=True):
        if abs(edge - frame.x(place)) > TOLERANCE:
            yield "does not have its edges where the layout has them"
            break
    top = min((spot.y for path in edges for spot in path.spots), default=0.0)
    if head is not None and abs(top - frame.y(head)) > TOLERANCE:
        yield "does not have its head as high as told"


def marks_on_walls(subject: Subject) -> Iterator[Finding]:
    """Point 133: running marks over an elevation are the layout's, each over its place.

    All marked faces of what is cut are told, or none is.
    """
    for frame in upright_frames(subject, ELEVATION):
        wall = wall_seen(subject.facts, frame.view, taped=True)
        groups = list(subject.sheet.of_kind("running-mark", frame.view))
        if wall is None or not groups:
            continue
        marks = subject.facts.marks.get((wall.run, wall.end), ())
        known = {(mark.kind, mark.of, mark.side): mark for mark in marks}
        told = {_key(group): group for group in groups}
        for key, group in told.items():
            for message in _mark_faults(subject.sheet, frame, group, (wall, known.get(key))):
                yield subject.sheet.finding(133, group.id, message)
        for kind in CUT:
            for beam in subject.sheet.of_kind(kind, frame.view):
                of = beam.data.get("id")
                if any(k[:2] == ("face", of) and k not in told for k in known):
                    yield subject.sheet.finding(133, beam.id, "is cut, and not all its marks told")


def _key(group: GroupRead) -> tuple[str, str, str]:
    return group.data.get("kind", ""), group.data.get("of", ""), group.data.get("side", "")


def _mark_faults(
    sheet: SheetRead,
    frame: UprightFrame,
    group: GroupRead,
    due: tuple[WallSeen, MarkFacts | None],
) -> Iterator[str]:
    wall, mark = due
    figure = printed(" ".join(text.text for text in sheet.letterings_in(group)), sheet)
    if mark is None or figure != mark.mark:
        yield "is no mark of the layout"
        return
    spots = _spots(sheet, group)[:1]
    if not spots or abs(spots[0].x - frame.x(wall.along(mark.exact))) > TOLERANCE:
        yield "does not stand over its place"


def all_walls_seen(subjects: Sequence[Subject]) -> Iterator[Finding]:
    """Point 134: every wall has its elevation, unless the notes tell that one is not drawn."""
    facts = subjects[0].facts
    odd = facts.outline_facts
    walls = [(f"W{n}", "") for n in range(1, len(facts.outline) + 1)]
    if odd is not None:
        walls = [(side.wall, side.side) for side in odd.sides]
    shown = [
        (view.data.get("wall"), view.data.get("side", ""))
        for each in subjects
        for view in each.sheet.of_kind("view")
        if view.data.get("view") == ELEVATION
    ]
    yield from _missing(subjects, [w for w in walls if shown.count(w) != 1], "Z-201")


def both_runs_cut(subjects: Sequence[Subject]) -> Iterator[Finding]:
    """Point 134: there is a section along each run, unless the notes tell that it is not drawn."""
    shown = [
        view.data.get("run")
        for each in subjects
        for view in each.sheet.of_kind("view")
        if view.data.get("view") == SECTION
    ]
    missing = [(run, "") for run in ("length", "width") if shown.count(run) != 1]
    yield from _missing(subjects, missing, "Z-301")


def _missing(
    subjects: Sequence[Subject], names: Sequence[tuple[str, str]], sheet: str
) -> Iterator[Finding]:
    if subjects[0].facts.heights is None:
        return
    told = any(
        lettering.text.startswith(NOT_DRAWN)
        for each in subjects
        if each.sheet.id.startswith(sheet)
        for lettering in each.sheet.letterings
    )
    for name, side in names if not told else ():
        yield Finding(134, sheet, " ".join((name, side)).strip(), "is not shown once")
