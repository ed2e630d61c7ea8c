"""Points on crossings: all are drawn and counted, and boards lie and end as they are laid out."""

import re
from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass
from fractions import Fraction
from math import hypot

from lacunar.drawing.checker.crossing_facts import CrossingFacts, ProfileFacts
from lacunar.drawing.checker.geometry import TOLERANCE
from lacunar.drawing.checker.plan_frame import plan_views, ratio
from lacunar.drawing.checker.records import Finding, GroupRead
from lacunar.drawing.checker.shapes import Spot
from lacunar.drawing.checker.subject import Subject

VIEW = "crossing"
_LEFT_OUT = re.compile(r"Not drawn here: (.+?)\. ")
_RANGE = re.compile(r"(\d+), from (\w+) to (\w+)")
_START_WALLS = ("W1", "W4")
_STRAIGHT = 1e-3


def crossings_drawn(subjects: Sequence[Subject]) -> Iterator[Finding]:
    """Point 150: every crossing is listed with its places, and drawn once or said not to be."""
    sheet, facts = subjects[0].sheet, subjects[0].facts
    drawn: list[str] = []
    for subject in subjects:
        for view in plan_views(subject.sheet, VIEW):
            drawn.append(view.data.get("crossing", ""))
            yield from _counted(subject, view)
    listed = [
        (row.data.get("of", ""), cell.data.get("value", ""))
        for subject in subjects
        for row in subject.sheet.of_kind("crossing-row")
        for cell in subject.sheet.of_kind("cell", row)
        if cell.data.get("name") == "places"
    ]
    wanted = [(each.id, str(len(each.places))) for each in facts.details.crossings]
    if sorted(listed) != sorted(wanted):
        yield sheet.finding(150, "crossings-table", "does not list the crossings with their places")
    left_out = _left_out(subjects, [each.id for each in facts.details.crossings])
    for identity in sorted({*drawn, *(each.id for each in facts.details.crossings)}):
        due = int(
            any(each.id == identity for each in facts.details.crossings)
            and identity not in left_out
        )
        if drawn.count(identity) != due:
            message = f"{identity} is drawn {drawn.count(identity)} times, and not {due}"
            yield sheet.finding(150, identity, message)


def _counted(subject: Subject, view: GroupRead) -> Iterator[Finding]:
    """A view's title tells as many places as the crossing has, in figures that can be read."""
    fact = next(
        (f for f in subject.facts.details.crossings if f.id == view.data.get("crossing")), None
    )
    titles = subject.sheet.of_kind("view-title")
    title = next((each for each in titles if each.id == f"title-{view.id}"), None)
    if fact is None or title is None:
        yield subject.sheet.finding(150, view.id, "is of no crossing, or has no title")
        return
    count = len(fact.places)
    words = [lettering.text for lettering in subject.sheet.letterings_in(title)]
    if not any(re.match(rf"{count} PLACES?:", text) for text in words):
        yield subject.sheet.finding(150, view.id, f"does not say that it has {count} places")


def _left_out(subjects: Sequence[Subject], names: list[str]) -> set[str]:
    """The crossings that the notes say are not drawn."""
    found: set[str] = set()
    for subject in subjects:
        for sentence in subject.sheet.of_kind("sentence"):
            words = " ".join(each.text for each in subject.sheet.letterings_in(sentence))
            match = _LEFT_OUT.search(words)
            if match is None:
                continue
            between = _RANGE.fullmatch(match[1])
            if between and between[2] in names and between[3] in names:
                first, last = names.index(between[2]), names.index(between[3])
                found |= set(names[first : last + 1])
            else:
                found |= set(match[1].split(", "))
    return found


@dataclass(frozen=True, slots=True)
class _Seen:
    """A board as drawn: whose it is, what it is, its two long edges from where it is broken off.

    `corners` go from one broken end round its own end to the other.
    """

    role: str
    beam: str
    part: str
    side: str
    toward: str
    corners: tuple[Spot, ...]

    @property
    def upright(self) -> bool:
        """Whether it lies up the sheet."""
        start, end = self.corners[0], self.corners[1]
        return abs(end.y - start.y) > abs(end.x - start.x)

    @property
    def along_sheet(self) -> bool:
        """Whether it lies exactly along the sheet or up it."""
        start, end = self.corners[0], self.corners[1]
        return min(abs(end.x - start.x), abs(end.y - start.y)) < _STRAIGHT

    def places(self) -> tuple[float, float]:
        """Where its two edges lie across the beam, up or to the right [mm]."""
        first, last = self.corners[0], self.corners[-1]
        return (first.x, last.x) if self.upright else (-first.y, -last.y)

    @property
    def width(self) -> float:
        """How far its second edge lies from the line of the first [mm]."""
        (ax, ay), (bx, by), (cx, cy) = self.corners[0], self.corners[1], self.corners[-1]
        long = hypot(bx - ax, by - ay)
        return abs((bx - ax) * (cy - ay) - (by - ay) * (cx - ax)) / long


def boards_as_laid_out(subject: Subject) -> Iterator[Finding]:
    """Point 151: boards at crossings are as wide, lie and end as they are laid out."""
    for view in plan_views(subject.sheet, VIEW):
        fact = next(
            (f for f in subject.facts.details.crossings if f.id == view.data.get("crossing")), None
        )
        scale = ratio(view)
        if fact is None or scale is None:
            continue
        boards = [each for each in _boards(subject, view) if len(each.corners) > _EDGES]
        if {(each.role, each.part) for each in boards if each.role != "beside"} != _due(fact):
            yield subject.sheet.finding(151, view.id, "does not have the boards that meet there")
            continue
        for message in _faults(subject, fact, boards, scale):
            yield subject.sheet.finding(151, view.id, message)


_EDGES = 3


def _due(fact: CrossingFacts) -> set[tuple[str, str]]:
    """The boards that are seen, by role: those that run past and those that end."""
    return {*(("through", part) for part in fact.runs_past), *fact.ends}


def _boards(subject: Subject, view: GroupRead) -> Iterator[_Seen]:
    for group in subject.sheet.of_kind("board", view):
        data = group.data
        paths = subject.sheet.own_paths(group)
        lines = [path.spots for path in paths if not path.closed]
        # What runs through is drawn as two edges, each by itself.
        corners = lines[0] if len(lines) == 1 else (*lines[0], *lines[1])
        yield _Seen(
            data.get("role", ""),
            data.get("beam", ""),
            data.get("part", ""),
            data.get("side", ""),
            data.get("toward", ""),
            corners,
        )


def _faults(
    subject: Subject, fact: CrossingFacts, boards: Sequence[_Seen], scale: float
) -> Iterator[str]:
    near: dict[str, float] = {}
    own = [board for board in boards if board.role != "beside"]
    for board in own:
        profile = subject.facts.details.profiles[fact.profiles[board.role]]
        thick, wide = profile.boards[board.part]
        due = float(thick if board.part == "side" else wide) / scale
        if abs(board.width - due) > TOLERANCE:
            yield f"{board.part} of {board.beam} is {board.width:.3f} mm wide, not {due:.3f}"
        if board.along_sheet:
            face = min(board.places()) - float(_lowest(subject, profile, board)) / scale
            if abs(near.setdefault(board.role, face) - face) > TOLERANCE:
                yield f"{board.part} of {board.beam} does not lie where it is laid out"
    faces = {
        role: (at, at + float(subject.facts.details.profiles[fact.profiles[role]].width) / scale)
        for role, at in near.items()
    }
    for board in own:
        yield from _tip_faults(board, fact, faces, scale)


def _lowest(subject: Subject, profile: ProfileFacts, board: _Seen) -> Fraction:
    """How far from the near face of its beam the nearer edge of a board lies."""
    wall = next((each.wall for each in subject.facts.wall_beams if each.id == board.beam), "")
    thick, wide = profile.boards[board.part]
    if board.part == "side":
        return Fraction(0) if board.side == "near" else profile.width - thick
    edge = profile.edges[board.part]
    if wall in _START_WALLS:
        return profile.width + edge - wide
    return -edge


def _tip_faults(
    board: _Seen, fact: CrossingFacts, faces: Mapping[str, tuple[float, float]], scale: float
) -> Iterator[str]:
    """An end reaches past the face of the other beam as far as it is laid out to.

    Where both beams lie along the sheet: else their faces are no level or upright lines.
    """
    other = faces.get("stopped" if board.role == "through" else "through")
    end = fact.ends.get((board.role, board.part))
    if end is None or other is None or board.role not in faces or not board.toward:
        return
    face, sign = (other[1], 1) if board.toward == "far" else (other[0], -1)
    # Across the other beam is along this one.
    tip = [-spot.y if board.upright else spot.x for spot in board.corners[1:-1]]
    reached = sorted((face - at) * sign for at in tip)
    long, short = float(end.past) / scale, float(end.short) / scale
    due = {"mitred": [long, short], "pointed": [short, long, short]}.get(end.cut, [long, long])
    if len(reached) != len(due) or any(
        abs(one - other) > TOLERANCE for one, other in zip(reached, sorted(due), strict=True)
    ):
        yield f"{board.part} of {board.beam} does not end where it is laid out"
