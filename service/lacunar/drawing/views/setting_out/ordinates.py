"""Running dimensions about the plan: each line's distance from the datum, at its own extension."""

from collections.abc import Iterator, Sequence
from dataclasses import dataclass

from lacunar.drawing import style
from lacunar.drawing.elements import Group, Polyline, Pt, Text
from lacunar.drawing.plan.frame import WALL_BAND, PlanFrame
from lacunar.drawing.run_ends import End
from lacunar.drawing.spreading import spread
from lacunar.drawing.typeface import Typeface
from lacunar.drawing.views.setting_out.snap_lines import place_at_wall, snap_lines
from lacunar.drawing.wording import SheetWording, decimal_mm
from lacunar.layout.records import Mark, MarkKind
from lacunar.model.room import RunName

PITCH = 3.9
"""How near two figures may stand [mm]: their height and a little more than their clearance."""
STRAIGHT = 3.0
SLANT = 5.0
GAP = 0.9


class FiguresDoNotFit(Exception):
    """At this scale the figures of one side take more than the plan is long and its corners."""


@dataclass(frozen=True, slots=True)
class Figure:
    """One running dimension: its mark, and where its line meets the wall."""

    mark: Mark
    at: Pt


@dataclass(frozen=True, slots=True)
class Side:
    """The running dimensions of one run at one end of it."""

    run: RunName
    end: End
    figures: tuple[Figure, ...]

    @property
    def identity(self) -> str:
        """What its elements are known by."""
        return f"running-{self.run.value}-{self.end}"


def side_of(frame: PlanFrame, run: RunName, end: End) -> Side:
    """All faces of a run and both its walls, at one end."""
    number = 0 if end == "start" else 1
    marks = next(each for each in frame.layout.marks if (each.run, each.end) == (run, end))
    walls = [mark for mark in marks.marks if mark.kind is MarkKind.WALL]
    found = [Figure(mark, place_at_wall(frame, run, end, mark.exact.value)) for mark in walls]
    for line in snap_lines(frame, run, MarkKind.FACE):
        mark = line.marks[number]
        found.append(Figure(mark, place_at_wall(frame, run, end, mark.exact.value)))
    return Side(run, end, tuple(sorted(found, key=lambda figure: figure.mark.exact.value)))


def depth(side: Side, wording: SheetWording, typeface: Typeface) -> float:
    """How far a side's figures reach out from the room's outermost place [mm]."""
    longest = max(
        typeface.width(wording.dimension(figure.mark.mark), style.TEXT) for figure in side.figures
    )
    return WALL_BAND + style.EXTENSION_GAP + STRAIGHT + SLANT + GAP + longest


def drawn_side(
    frame: PlanFrame, side: Side, wording: SheetWording, room: tuple[float, float]
) -> Group:
    """The figures of a side, each led to from its line.

    `room` is from where to where along the run they may stand on paper [mm], the lower first.
    Errors: `FiguresDoNotFit`.
    """
    places = _sorted_places(side)
    low, high = room
    stands = spread([at for at, _ in places], PITCH, low, high)
    if stands[-1] > high + 1e-6 or PITCH * (len(places) - 1) > high - low + 1e-6:
        raise FiguresDoNotFit
    children = tuple(_figures(frame, side, wording, list(zip(places, stands, strict=True))))
    data = {"run": side.run.value, "end": side.end}
    return Group("running", children, id=side.identity, data=data)


def _sorted_places(side: Side) -> list[tuple[float, Figure]]:
    """Where along the side each figure would stand [mm of paper], from low to high."""
    level = side.run is RunName.LENGTH
    found = [(each.at.x if level else each.at.y, each) for each in side.figures]
    return sorted(found, key=lambda pair: pair[0])


def _figures(
    frame: PlanFrame,
    side: Side,
    wording: SheetWording,
    placed: Sequence[tuple[tuple[float, Figure], float]],
) -> Iterator[Group]:
    outer, outward = _outer(frame, side)
    gap = outward * (WALL_BAND + style.EXTENSION_GAP)
    bend = outer + gap + outward * STRAIGHT
    tip = bend + outward * SLANT
    level = side.run is RunName.LENGTH
    for number, ((at, figure), stand) in enumerate(placed, start=1):
        mark = figure.mark
        start = (figure.at.y if level else figure.at.x) + gap
        way = [_on(side, at, start), _on(side, at, bend), _on(side, stand, tip)]
        yield Group(
            "running-figure",
            (
                Polyline(tuple(way), style.DIMENSION),
                _text(side, wording.dimension(mark.mark), stand, tip + outward * GAP),
            ),
            id=f"{side.identity}-{number}",
            data={
                "of": mark.of,
                "kind": mark.kind.value,
                "side": mark.side,
                "value": wording.exact(mark.mark),
                "exact-mm": decimal_mm(mark.exact.value),
            },
        )


def _outer(frame: PlanFrame, side: Side) -> tuple[float, float]:
    """The room's outermost place on a side on paper, and which way is out: below 0 up or left."""
    low, high = frame.reach(side.run.other)
    at = low if side.end == "start" else high
    if side.run is RunName.LENGTH:
        return frame.origin.y - at, 1.0 if side.end == "start" else -1.0
    return frame.origin.x + at, -1.0 if side.end == "start" else 1.0


def _on(side: Side, along: float, out: float) -> Pt:
    return Pt(along, out) if side.run is RunName.LENGTH else Pt(out, along)


def _text(side: Side, words: str, stand: float, out: float) -> Text:
    """A figure beyond its line: turned along the length run, level along the width run."""
    half = style.TEXT / 2
    if side.run is RunName.LENGTH:
        # Turned text reads upward: below the plan it ends at its line, above it begins there.
        anchor = "end" if side.end == "start" else "start"
        at = Pt(stand + half, out)
        return Text(at, words, style.TEXT, anchor=anchor, turned=True)  # type: ignore[arg-type]
    anchor = "end" if side.end == "start" else "start"
    return Text(Pt(out, stand + half), words, style.TEXT, anchor=anchor)  # type: ignore[arg-type]
