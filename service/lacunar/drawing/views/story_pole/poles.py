"""The poles of a ceiling: one to a run, or one to each of its ends where these are unlike."""

from collections.abc import Iterator, Mapping
from dataclasses import dataclass

from lacunar.drawing.run_ends import End, unlike, wall_at
from lacunar.layout.records import Layout, Mark, MarkKind, RunMarks
from lacunar.measure.length import Length
from lacunar.model.room import END_WALL, START_WALL, RunName

SHOWN = (
    MarkKind.WALL,
    MarkKind.FACE,
    MarkKind.CENTER,
    MarkKind.BACKING,
    MarkKind.MEMBER,
)
"""What a pole carries."""


@dataclass(frozen=True, slots=True)
class Stretch:
    """From one line on a pole to another, as marked: a beam, its backing, or a member in it."""

    of: str
    near: Length
    far: Length


@dataclass(frozen=True, slots=True)
class Pole:
    """A run's marks at one end of it, from its start wall.

    `at` is the wall that the pole is held along, empty where the marks are alike at both.
    """

    run: RunName
    end: End
    at: str
    marks: tuple[Mark, ...]

    @property
    def length(self) -> Length:
        """From wall to wall, as marked."""
        return self.marks[-1].mark

    @property
    def walls(self) -> tuple[str, str]:
        """The walls it goes between."""
        return START_WALL[self.run], END_WALL[self.run]

    @property
    def name(self) -> str:
        """What it is called on sheets: `LENGTH POLE FROM W1`, or `LENGTH POLE FROM W1 AT W4`."""
        at = f" AT {self.at}" if self.at else ""
        return f"{self.run.value.upper()} POLE FROM {self.walls[0]}{at}"

    @property
    def identity(self) -> str:
        """What its elements are known by."""
        return f"pole-{self.run.value}" + (f"-{self.end}" if self.at else "")

    def of_kind(self, *kinds: MarkKind) -> Iterator[Mark]:
        """Its marks of some kinds, from the start."""
        return (mark for mark in self.marks if mark.kind in kinds)

    def beams(self) -> tuple[Stretch, ...]:
        """What stands on the ceiling along the run, what stands at walls included."""
        return self._stretches(MarkKind.FACE)

    def members(self) -> tuple[Stretch, ...]:
        """Members inside casings."""
        return self._stretches(MarkKind.MEMBER)

    def _stretches(self, kind: MarkKind) -> tuple[Stretch, ...]:
        """From near to far mark of each thing; what stands at a wall goes on to what is behind."""
        sides: dict[str, dict[str, Length]] = {}
        for mark in self.of_kind(kind):
            sides.setdefault(mark.of, {})[mark.side] = mark.mark
        return tuple(
            Stretch(
                of,
                found["near"] if "near" in found else self._behind(found["far"], sides, "far"),
                found["far"] if "far" in found else self._behind(found["near"], sides, "near"),
            )
            for of, found in sides.items()
        )

    def _behind(self, face: Length, sides: Mapping[str, Mapping[str, Length]], side: str) -> Length:
        """The next face toward the wall of what shows one face alone, or the wall itself."""
        others = [found[side] for found in sides.values() if len(found) == 1 and side in found]
        if side == "far":
            return max((each for each in others if each < face), default=self.marks[0].mark)
        return min((each for each in others if each > face), default=self.length)


def poles(layout: Layout) -> tuple[Pole, ...]:
    """The poles of a layout, those of the length run first."""
    return tuple(_poles(layout))


def _poles(layout: Layout) -> Iterator[Pole]:
    for marks in layout.marks:
        differ = unlike(layout, marks.run, SHOWN)
        if marks.end == "start" or differ:
            at = wall_at(marks.run, marks.end) if differ else ""
            yield Pole(marks.run, marks.end, at, _shown(marks))


def _shown(marks: RunMarks) -> tuple[Mark, ...]:
    shown = (mark for mark in marks.marks if mark.kind in SHOWN)
    return tuple(sorted(shown, key=lambda mark: mark.mark))
