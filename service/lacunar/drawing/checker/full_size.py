"""What holds of strips at full size, whatever they show: whole, true, put together by crosses.

That a seam has something in common to be laid over, and crosses to meet, and that every page has
bars to be measured, is common practice, no source.
"""

from collections.abc import Iterator, Sequence
from itertools import pairwise
from math import dist, nan
from typing import NamedTuple

from lacunar.drawing.checker.geometry import TOLERANCE
from lacunar.drawing.checker.records import Finding, GroupRead, SheetRead
from lacunar.drawing.checker.shapes import Box

LEAST_OVERLAP = 12.7
CROSSES = 2
BARS = (150.0, 152.4)


class StripRead(NamedTuple):
    """A piece of a strip as read: its sheet, what it shows of the whole [mm], its outline."""

    sheet: SheetRead
    group: GroupRead
    first: float
    last: float
    outline: Box

    def place(self, x: float) -> float:
        """Which place of the whole lies at x on the sheet [mm]."""
        return self.first + x - self.outline.left

    def finding(self, point: int, message: str) -> Finding:
        """A finding about this piece."""
        return self.sheet.finding(point, self.group.id, message)


def strips_read(sheet: SheetRead, kind: str) -> Iterator[StripRead]:
    """The pieces of strips of a kind on a sheet."""
    for group in sheet.of_kind(kind):
        outlines = [path.around for path in sheet.own_paths(group) if path.closed]
        # Without an outline nothing of it stands where it says.
        outline = outlines[0] if outlines else Box(nan, nan, nan, nan)
        first, last = data_number(group, "from-mm"), data_number(group, "to-mm")
        yield StripRead(sheet, group, first, last, outline)


def data_number(group: GroupRead, name: str) -> float:
    """A figure that a group bears as data; no number at all where it has none."""
    try:
        return float(group.data.get(name, ""))
    except ValueError:
        return nan


def whole(
    point: int, strips: Sequence[StripRead], length: float, crosses: str
) -> Iterator[Finding]:
    """Whether pieces go from end to end, each as long as it says, and can be put together."""
    reached = 0.0
    for number, strip in enumerate(strips, start=1):
        drawn = strip.outline.right - strip.outline.left
        if not abs(drawn - (strip.last - strip.first)) <= TOLERANCE:
            yield strip.finding(point, f"is {drawn:.3f} mm long and says otherwise")
        if strip.group.data.get("piece") != f"{number} / {len(strips)}":
            yield strip.finding(point, "is not counted in its order")
        common = reached - strip.first
        if common < LEAST_OVERLAP if number > 1 else common != 0.0:
            yield strip.finding(point, f"has {common:.3f} mm in common with what is before it")
        reached = strip.last
    if not abs(reached - length) <= TOLERANCE:
        message = f"the whole ends at {reached:.3f} mm, not at {length:.3f} mm"
        yield strips[-1].finding(point, message)
    for one, other in pairwise(strips):
        yield from _seam(point, one, other, crosses)


def _seam(point: int, one: StripRead, other: StripRead, crosses: str) -> Iterator[Finding]:
    """Whether two crosses of both pieces meet, above the band and below it."""
    meeting = [
        (at, height)
        for at, height in _crosses(one, crosses)
        if any(dist((at, height), there) <= TOLERANCE for there in _crosses(other, crosses))
        and other.first <= at <= one.last
    ]
    if len(meeting) != CROSSES:
        yield other.finding(point, f"{len(meeting)} crosses meet those of the strip before it")


def _crosses(strip: StripRead, kind: str) -> list[tuple[float, float]]:
    """The crosses of a piece: where along the whole, and how far below the band's upper edge."""
    sheet = strip.sheet
    found = []
    for group in sheet.of_kind(kind, strip.group):
        boxes = [path.around for path in sheet.paths_in(group)]
        middle = Box(
            min(box.left for box in boxes),
            min(box.top for box in boxes),
            max(box.right for box in boxes),
            max(box.bottom for box in boxes),
        ).middle
        found.append((strip.place(middle.x), middle.y - strip.outline.top))
    return found


def page_true(point: int, sheet: SheetRead, digest: str) -> Iterator[Finding]:
    """Whether a page of strips has true check bars, and says which sheet of which input it is."""
    lengths = []
    for bar in sheet.of_kind("check-bar"):
        lines = [path.around for path in sheet.paths_in(bar)]
        length = max((line.right - line.left for line in lines), default=0.0)
        if not abs(length - data_number(bar, "length-mm")) <= TOLERANCE:
            yield sheet.finding(point, sheet.id, f"a check bar is {length:.3f} mm long")
        lengths.append(round(length, 1))
    if sorted(lengths) != list(BARS):
        yield sheet.finding(point, sheet.id, f"has check bars of {lengths} mm")
    feet = list(sheet.of_kind("page-foot"))
    words = " ".join(each.text for foot in feet for each in sheet.letterings_in(foot))
    if sheet.id not in words or not digest or digest[:12] not in words:
        yield sheet.finding(point, sheet.id, "does not say which sheet of which input it is")
