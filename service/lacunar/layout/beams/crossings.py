"""The catalogue of crossings: every distinct way in which beams meet or end, and where."""

from collections.abc import Iterator, Mapping
from dataclasses import replace

from lacunar.layout.beams.board_ends import EndRules, levels
from lacunar.layout.beams.lines import Line, Row, RowEnd, Stop
from lacunar.layout.crossing_records import (
    BoardPart,
    Crossing,
    CrossingEnd,
    CrossingKind,
    CrossingPlace,
)
from lacunar.layout.fault_gathering import refuse
from lacunar.model.beams import BottomJoint
from lacunar.model.faults import Fault
from lacunar.model.look import JointLook, SideLook
from lacunar.model.room import RunName

_END_KINDS: Mapping[str, CrossingKind] = {
    "wall": CrossingKind.END_AT_WALL,
    "soffit": CrossingKind.END_AT_SOFFIT,
    "outside": CrossingKind.OUTSIDE_CORNER,
    "angled": CrossingKind.ANGLED_CORNER,
    "slanted": CrossingKind.END_AT_ANGLED_WALL,
}
_SQUARE = ("wall", "soffit")

Found = tuple[tuple[object, ...], CrossingPlace, Crossing]


def crossings(rules: EndRules) -> tuple[Crossing, ...]:
    """Turn beams into the kinds of crossing they make, in the order in which they first occur.

    Crossings are alike where the same profiles meet in the same way. Every beam that crosses
    another, and every end at a wall or soffit, is at one place of one kind.

    Raises SpecRefused where bottoms are to be mitred and sides run on between them.
    """
    refuse(list(_look_faults(rules)))
    alike: dict[tuple[object, ...], list[CrossingPlace]] = {}
    first: dict[tuple[object, ...], Crossing] = {}
    for key, place, crossing in (*_meetings(rules), *_ends(rules)):
        alike.setdefault(key, []).append(place)
        first.setdefault(key, crossing)
    return tuple(
        replace(crossing, id=f"K{number}", places=tuple(alike[key]))
        for number, (key, crossing) in enumerate(first.items(), start=1)
    )


def _meetings(rules: EndRules) -> Iterator[Found]:
    """Each two lines that meet."""
    rows = rules.meeting.rows
    known: dict[tuple[object, ...], Crossing] = {}
    for one in rows[RunName.LENGTH].lines:
        for other in rows[RunName.WIDTH].lines:
            if not rules.meeting.meet(one, other):
                continue
            if rules.meeting.stops(one, other):
                through, stopped = one, other
            else:
                through, stopped = other, one
            key = (through.profile.id, stopped.profile.id, _kind(one, other), bool(through.wall))
            if key not in known:
                known[key] = _crossing(rules, _kind(one, other), through, stopped)
            yield key, CrossingPlace(through.id, stopped.id), known[key]


def _kind(one: Line, other: Line) -> CrossingKind:
    at_walls = bool(one.wall) + bool(other.wall)
    return (CrossingKind.CROSS, CrossingKind.TEE, CrossingKind.ELL)[at_walls]


def _crossing(rules: EndRules, kind: CrossingKind, through: Line, stopped: Line) -> Crossing:
    runs_past: list[BoardPart] = []
    ends: list[CrossingEnd] = []
    for level in levels(through.profile):
        if _is_cut(rules, through, stopped, level.part):
            end = rules.end(through, level.part, _stop(rules, through, stopped))
            ends.append(CrossingEnd("through", level.part, end))
        else:
            runs_past.append(level.part)
    for level in levels(stopped.profile):
        end = rules.end(stopped, level.part, _stop(rules, stopped, through))
        ends.append(CrossingEnd("stopped", level.part, end))
    return Crossing(
        id="",
        kind=kind,
        through=through.profile.id,
        stopped=stopped.profile.id,
        runs_past=tuple(runs_past),
        ends=tuple(ends),
        places=(),
    )


def _is_cut(rules: EndRules, through: Line, stopped: Line, part: BoardPart) -> bool:
    """Whether a board of the beam that runs through ends at the crossing all the same."""
    if through.wall and stopped.wall:
        return True
    return rules.cuts(through, part, stopped)


def _stop(rules: EndRules, line: Line, at: Line) -> Stop:
    """The stop that a line has at another."""
    row = rules.meeting.rows[at.on]
    return Stop(at.near if line.wall == "end" else at.far, at, row.start)


def _ends(rules: EndRules) -> Iterator[Found]:
    """Each line's ends at a wall or soffit that nothing stands at."""
    rows = rules.meeting.rows
    for name in RunName:
        for line in rows[name].lines:
            for row in rules.meeting.rows_across(line):
                for end in _free_ends(row):
                    yield _end(rules, line, row, end)


def _free_ends(row: Row) -> Iterator[RowEnd]:
    taken = {line.wall for line in row.lines}
    ends: tuple[RowEnd, ...] = ("start", "end")
    yield from (end for end in ends if end not in taken)


def _end(rules: EndRules, line: Line, row: Row, end: RowEnd) -> Found:
    limit = row.limit(end)
    stop = Stop(limit.at, None, limit)
    kind = _END_KINDS[limit.kind]
    ends = tuple(
        CrossingEnd("stopped", level.part, rules.end(line, level.part, stop))
        for level in levels(line.profile)
    )
    crossing = Crossing("", kind, None, line.profile.id, (), ends, ())
    key = (kind, line.profile.id, *_looks(ends)) if limit.kind not in _SQUARE else ()
    return key or (kind, line.profile.id), CrossingPlace(limit.id, line.id), crossing


def _looks(ends: tuple[CrossingEnd, ...]) -> Iterator[tuple[object, ...]]:
    """What tells ends apart that are not simply square."""
    for each in ends:
        yield each.part, each.end.cut, each.end.past.value, each.end.past_short.value


def _look_faults(rules: EndRules) -> Iterator[Fault]:
    """The fault of bottoms to be mitred where sides that run past lie between them."""
    look = rules.look
    if look.bottoms is not JointLook.MITRED or look.sides is SideLook.PER_COFFER:
        return
    for one in rules.meeting.rows[RunName.LENGTH].lines:
        for other in rules.meeting.rows[RunName.WIDTH].lines:
            joints = {one.profile.bottom_joint, other.profile.bottom_joint}
            if rules.pointed(one, other) and joints != {BottomJoint.UNDER}:
                yield Fault(
                    code="sides_between_mitred_bottoms",
                    pointer="/beams/look/bottoms",
                    message="Bottoms are to be mitred where beams cross, and sides that run past"
                    " lie between them.",
                    remedy='Cut the sides per coffer, set bottom_joint to "under", or butt the'
                    " bottoms.",
                    figures={"through": one.id, "crossed": other.id},
                )
                return
