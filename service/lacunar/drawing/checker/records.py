"""What the checker reads off a sheet: flat records in millimeters of paper, y down.

The drawing is walked once, in painting order, and everything is numbered as it comes. A group
covers an unbroken stretch of each list, so "everything in this group" is a range.
"""

from collections.abc import Iterator, Mapping
from dataclasses import dataclass, field
from typing import NamedTuple

from lacunar.drawing.checker.shapes import Box, Spot, Stroke, farthest, nearest, passes


@dataclass(frozen=True, slots=True)
class Finding:
    """One thing wrong on a sheet: the point it fails, the sheet, where on it, and what is wrong."""

    point: int
    sheet: str
    where: str
    message: str


class PenSeen(NamedTuple):
    """How a line is drawn: the pen's stated name, its width [mm], dashes [mm] and color."""

    name: str
    width: float
    dashes: tuple[float, ...]
    color: str


class Path(NamedTuple):
    """Straight lines from spot to spot, and the upright box around their middle.

    `pen` is None for an area without outline; `fill` is the color as written, "none" where nothing
    is filled; `order` is that of painting.
    """

    spots: tuple[Spot, ...]
    around: Box
    closed: bool
    pen: PenSeen | None
    fill: str
    group: int
    order: int

    def touches(self, box: Box) -> bool:
        """Whether the path's middle line comes into a box."""
        return self.around.overlaps(box) and any(passes(one, box) for one in self.strokes())

    def strokes(self) -> Iterator[Stroke]:
        """The path's straight lines, the closing one included."""
        width = self.pen.width if self.pen else 0.0
        for start, end in zip(self.spots, self.spots[1:], strict=False):
            yield Stroke(start, end, width)
        if self.closed and len(self.spots) > 1:
            yield Stroke(self.spots[-1], self.spots[0], width)


class Ring(NamedTuple):
    """A circle, drawn as a line, filled, or both."""

    center: Spot
    radius: float
    pen: PenSeen | None
    fill: str
    group: int
    order: int

    @property
    def around(self) -> Box:
        """The upright box around the circle's middle line."""
        (x, y), reach = self.center, self.radius
        return Box(x - reach, y - reach, x + reach, y + reach)

    def touches(self, box: Box, half_width: float = 0.0) -> bool:
        """Whether the circle's line, so much wide on each side of its middle, comes into a box."""
        return (
            nearest(box, self.center) < self.radius + half_width
            and farthest(box, self.center) > self.radius - half_width
        )


class Lettering(NamedTuple):
    """One line of text and the box it takes; `height` is its capital height by metrics [mm]."""

    text: str
    box: Box
    height: float
    stated_height: str
    face: str
    family: str
    color: str
    angle: float
    group: int
    order: int

    @property
    def around(self) -> Box:
        """The text's box."""
        return self.box

    def touches(self, box: Box) -> bool:
        """Whether the text's box overlaps another."""
        return self.box.overlaps(box)


class Stretch(NamedTuple):
    """From which number to before which: a group's part of one of the sheet's lists."""

    first: int
    past: int


_NOTHING = Stretch(0, 0)
_NO_PAGE = Box(0, 0, 0, 0)


@dataclass(slots=True)
class GroupRead:
    """One group: its class, id and data, the group around it, and its part of each list."""

    number: int
    kind: str
    id: str
    title: str
    data: Mapping[str, str]
    around: int | None
    groups: Stretch = _NOTHING
    paths: Stretch = _NOTHING
    rings: Stretch = _NOTHING
    letterings: Stretch = _NOTHING


@dataclass(slots=True)
class SheetRead:
    """Everything on one sheet, in painting order.

    `style` is the text of its style sheets; `troubles` are (where, what) of everything that could
    not be read and so was not checked.
    """

    id: str
    data: Mapping[str, str]
    stated_width: str = ""
    stated_height: str = ""
    page: Box = _NO_PAGE
    titles: tuple[str, str] = ("", "")
    style: str = ""
    groups: list[GroupRead] = field(default_factory=list)
    paths: list[Path] = field(default_factory=list)
    rings: list[Ring] = field(default_factory=list)
    letterings: list[Lettering] = field(default_factory=list)
    troubles: list[tuple[str, str]] = field(default_factory=list)

    def finding(self, point: int, where: str, message: str) -> Finding:
        """A finding about this sheet."""
        return Finding(point, self.id, where, message)

    def of_kind(self, kind: str, within: GroupRead | None = None) -> Iterator[GroupRead]:
        """The groups of a class, on the whole sheet or inside one group."""
        groups = self.groups
        if within is not None:
            groups = groups[within.groups.first : within.groups.past]
        return (group for group in groups if group.kind == kind)

    def everything(self) -> Iterator[Path | Ring | Lettering]:
        """All that is drawn: the paths, then the circles, then the texts."""
        yield from self.paths
        yield from self.rings
        yield from self.letterings

    def is_within(self, number: int, group: GroupRead) -> bool:
        """Whether the group of a number is this one or stands somewhere in it."""
        return group.number <= number < max(group.groups.past, group.number + 1)

    def paths_in(self, group: GroupRead) -> list[Path]:
        """The paths in a group and in the groups inside it."""
        return self.paths[group.paths.first : group.paths.past]

    def own_paths(self, group: GroupRead) -> list[Path]:
        """The paths in a group itself, without the groups inside it."""
        return [path for path in self.paths_in(group) if path.group == group.number]

    def rings_in(self, group: GroupRead) -> list[Ring]:
        """The circles in a group and in the groups inside it."""
        return self.rings[group.rings.first : group.rings.past]

    def letterings_in(self, group: GroupRead) -> list[Lettering]:
        """The texts in a group and in the groups inside it."""
        return self.letterings[group.letterings.first : group.letterings.past]

    def around(self, group: GroupRead, kind: str) -> GroupRead | None:
        """The nearest group of a class that the group stands in, or None."""
        number = group.around
        while number is not None:
            group = self.groups[number]
            if group.kind == kind:
                return group
            number = group.around
        return None

    def place(self, number: int) -> str:
        """The name of a group to report: its id, or its class in the nearest group that has one."""
        if number < 0:
            return self.id
        group = self.groups[number]
        if group.id:
            return group.id
        around = self.place(group.around) if group.around is not None else self.id
        return f"{around} {group.kind}".strip()
