"""Running dimensions about the plan: each line's distance from the datum, at its own extension."""

from collections.abc import Callable, Iterable, Iterator, Sequence
from dataclasses import dataclass
from math import dist

from lacunar.drawing import style
from lacunar.drawing.elements import Group, Polyline, Pt, Text
from lacunar.drawing.paper import Scale
from lacunar.drawing.plan.frame import WALL_BAND, PlanFrame
from lacunar.drawing.run_ends import End, RunEnd
from lacunar.drawing.spreading import spread
from lacunar.drawing.typeface import Typeface
from lacunar.drawing.wording import SheetWording, decimal_mm
from lacunar.layout.records import Mark
from lacunar.measure.length import Length
from lacunar.model.room import END_WALL, START_WALL, RunName

OVER_CORNER = 9.0
"""How far figures may stand beyond the room's corners, clear of those of the next side [mm]."""
ENDS: tuple[End, End] = ("start", "end")
MARGIN = 1.0
PITCH = 3.9
"""How near two figures may stand [mm]: their height and a little more than their clearance."""
STRAIGHT = 3.0
SLANT = 5.0
GAP = 0.9


class FiguresDoNotFit(Exception):
    """At this scale the figures of one side take more than the plan is long and its corners."""


@dataclass(frozen=True, slots=True)
class Figure:
    """One running dimension: of what it is, how far that is, and where its line meets the wall.

    `value` is what is told, rounded, `exact` the place itself; `name` stands before the figure, or
    alone where no figure is `told`.
    """

    of: str
    kind: str
    side: str
    value: Length
    exact: Length
    at: Pt
    name: str = ""
    told: bool = True

    @classmethod
    def of_mark(cls, mark: Mark, at: Pt) -> "Figure":
        """The running dimension of a mark."""
        return cls(mark.of, mark.kind.value, mark.side, mark.mark, mark.exact.value, at)

    def words(self, wording: SheetWording) -> str:
        """What is told of it."""
        figure = wording.dimension(self.value) if self.told else ""
        return ": ".join(each for each in (self.name, figure) if each)


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


@dataclass(frozen=True, slots=True)
class RunningPlan:
    """A plan with running dimensions before it is drawn: its scale, size [mm], frame and sides."""

    scale: Scale
    width: float
    height: float
    frame: PlanFrame
    sides: tuple[Side, ...]

    def drawn_sides(self, wording: SheetWording) -> tuple[Group, ...]:
        """All its running dimensions. Errors: `FiguresDoNotFit`."""
        return tuple(
            drawn_side(self.frame, side, wording, room_for(self.frame, side)) for side in self.sides
        )


def running_plan(
    bare: PlanFrame,
    scale: Scale,
    told: Callable[[PlanFrame], Iterable[Side]],
    wording: SheetWording,
    typeface: Typeface,
) -> RunningPlan:
    """How large a plan with running dimensions is at a scale, found without drawing it.

    `bare` is its frame about any origin, `told` gives what is told on its sides for a frame.
    """
    depths = {(side.run, side.end): depth(side, wording, typeface) + MARGIN for side in told(bare)}
    least: dict[tuple[RunName, End], float] = dict.fromkeys(
        ((run, end) for run in RunName for end in ENDS), OVER_CORNER
    )
    reach = {at: max(depths.get(at, 0.0), most) for at, most in least.items()}
    (left, right), (low, high) = (bare.reach(run) for run in RunName)
    before, above = reach[RunName.WIDTH, "start"], reach[RunName.LENGTH, "end"]
    frame = PlanFrame(bare.layout, scale.ratio, Pt(before - left, above + high))
    width = before + right - left + reach[RunName.WIDTH, "end"]
    height = above + high - low + reach[RunName.LENGTH, "start"]
    return RunningPlan(scale, width, height, frame, tuple(told(frame)))


def depth(side: Side, wording: SheetWording, typeface: Typeface) -> float:
    """How far a side's figures reach out from the room's outermost place [mm]."""
    longest = max(
        (typeface.width(figure.words(wording), style.TEXT) for figure in side.figures),
        default=0.0,
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
        start = (figure.at.y if level else figure.at.x) + gap
        way = [_on(side, at, start), _on(side, at, bend), _on(side, stand, tip)]
        yield Group(
            "running-figure",
            (
                Polyline(tuple(way), style.DIMENSION),
                _text(side, figure.words(wording), stand, tip + outward * GAP),
            ),
            id=f"{side.identity}-{number}",
            data={
                "of": figure.of,
                "kind": figure.kind,
                "side": figure.side,
                "value": wording.exact(figure.value),
                "exact-mm": decimal_mm(figure.exact),
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


def room_for(frame: PlanFrame, side: Side) -> tuple[float, float]:
    """From where to where along its run a side's figures may stand on paper [mm]."""
    low, high = frame.reach(side.run)
    origin = frame.origin
    if side.run is RunName.LENGTH:
        return origin.x + low - OVER_CORNER, origin.x + high + OVER_CORNER
    return origin.y - high - OVER_CORNER, origin.y - low + OVER_CORNER


def place_at_wall(frame: PlanFrame, run: RunName, end: End, place: Length) -> Pt:
    """Where a place along a run, told from its start wall at an end, meets the wall there."""
    wall = (START_WALL if end == "start" else END_WALL)[run.other]
    if frame.layout.followed is not None:
        return _along_wall(frame, run, wall, frame.on_paper(place))
    at = frame.on_paper(place - RunEnd.of(frame.layout, run, end).before)
    return frame.along(run, at, frame.face_at(wall, run.other, at))


def _along_wall(frame: PlanFrame, run: RunName, wall: str, far: float) -> Pt:
    """So far along a wall from the corner next the start wall of the run [mm]."""
    corners = [frame.point(corner) for corner in frame.wall_ends(wall)]
    lowest = min if run is RunName.LENGTH else max
    start = lowest(corners, key=lambda at: at.x if run is RunName.LENGTH else at.y)
    (end,) = (corner for corner in corners if corner != start)
    share = far / dist((start.x, start.y), (end.x, end.y))
    return start.moved((end.x - start.x) * share, (end.y - start.y) * share)
