"""A side of the room as a wall: which way it looks, and where it is along a run."""

from dataclasses import dataclass
from fractions import Fraction

from lacunar.layout.runs.wall_strips import run_of_wall
from lacunar.measure.length import Length
from lacunar.measure.plane import Spot
from lacunar.measure.polygon import Line
from lacunar.model.room import START_WALL, WALLS, RunName

NEARLY_SQUARE = Fraction(1, 12)

# Going clockwise, the way of a side tells the way its wall looks: W1 goes up the plan.
_WAYS = {"W1": (0, 1), "W2": (1, 0), "W3": (0, -1), "W4": (-1, 0)}


def place(run: RunName, at: Spot) -> Length:
    """How far a place lies along a run."""
    return at.x if run is RunName.LENGTH else at.y


def look_of(line: Line) -> tuple[str, bool]:
    """The wall of W1 to W4 that looks most the same way, and whether this one is nearly square."""
    way = line[1] - line[0]
    ahead = {wall: way.x * x + way.y * y for wall, (x, y) in _WAYS.items()}
    # At 45 degrees W2 and W4 win, so that a mirror image has the same at its walls.
    looks = max(WALLS, key=lambda wall: (ahead[wall], wall in ("W2", "W4")))
    x, y = _WAYS[looks]
    aside = abs(way.x * y - way.y * x)
    return looks, aside <= ahead[looks] * NEARLY_SQUARE


@dataclass(frozen=True, slots=True)
class Wall:
    """A side of the room as a wall, before anything stands at it.

    `line` is from corner to corner, clockwise; `at` is its innermost place if it is not angled.
    """

    name: str
    side: int
    looks_as: str
    line: Line
    at: Length | None

    @property
    def angled(self) -> bool:
        """Whether it lies along neither run."""
        return self.at is None

    @property
    def on(self) -> RunName:
        """The run across which it stands, or nearly does."""
        return run_of_wall(self.looks_as)

    @property
    def at_start(self) -> bool:
        """Whether the room goes on from it in the direction of its run."""
        return self.looks_as in START_WALL.values()

    @classmethod
    def of_column(cls, name: str, side: int, line: Line) -> "Wall":
        """A face of a column, which has a place along a run if it lies exactly across it."""
        looks, _ = look_of(line)
        across = place(run_of_wall(looks), line[0])
        straight = across == place(run_of_wall(looks), line[1])
        return cls(name, side, looks, line, across if straight else None)
