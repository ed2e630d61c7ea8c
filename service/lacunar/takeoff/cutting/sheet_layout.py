"""A way to cut a sheet as cuts in order, with panels and offcuts where they lie."""

from collections.abc import Callable
from dataclasses import dataclass, field, replace

from lacunar.measure.length import ZERO, Length
from lacunar.takeoff.cutting.asked import Grain, SheetTerms
from lacunar.takeoff.cutting.guillotine import NOTHING, Node, Shape, Split
from lacunar.takeoff.cutting.sheet_records import PanelOnSheet, SheetCut, SheetOffcut

WHOLE = "sheet"


@dataclass(frozen=True, slots=True)
class Part:
    """A rectangle of a sheet, named after the cut it came from."""

    name: str
    x: Length
    y: Length
    length: Length
    width: Length


@dataclass(frozen=True, slots=True)
class Lying:
    """A panel as it lies: its id, its edges along and across the sheet, whether it is turned."""

    id: str
    length: Length
    width: Length
    turned: bool


@dataclass(slots=True)
class SheetCutter:
    """Cuts one sheet; `lying` gives the next panel of a shape, None where no more is wanted."""

    terms: SheetTerms
    tick: Length
    lying: Callable[[Shape], Lying | None]
    cuts: list[SheetCut] = field(default_factory=list)
    panels: list[PanelOnSheet] = field(default_factory=list)
    offcuts: list[SheetOffcut] = field(default_factory=list)

    def cut(self, node: Node, length: Length, width: Length) -> None:
        """Cut a sheet of that size, its edges trimmed first."""
        trim = self.terms.edge_trim
        self._parted(node, Part(WHOLE, trim, trim, length - trim * 2, width - trim * 2))

    def _parted(self, node: Node, part: Part) -> None:
        if isinstance(node, Split):
            at = self.tick * node.at - self.terms.kerf
            first, second = self._sawn(part, at, across_length=node.across_length)
            self._parted(node.first, first)
            if second is not None:
                self._parted(node.second, second)
        elif node == NOTHING:
            self._keep(part)
        else:
            assert node.shape is not None
            panel = self.lying(node.shape)
            if panel is None:
                self._keep(part)
            else:
                self._lay(panel, part)

    def _lay(self, panel: Lying, part: Part) -> None:
        """Cut a part down to its panel."""
        rests = []
        for across_length in (True, False):
            wanted = panel.length if across_length else panel.width
            there = part.length if across_length else part.width
            if there < wanted:
                raise AssertionError(f"panel {panel.id} is larger than its part")
            if there > wanted:
                part, rest = self._sawn(part, wanted, across_length=across_length)
                rests.append(rest)
        self.panels.append(
            PanelOnSheet(panel.id, part.name, part.x, part.y, part.length, part.width, panel.turned)
        )
        for rest in rests:
            if rest is not None:
                self._keep(rest)

    def _sawn(self, part: Part, at: Length, *, across_length: bool) -> tuple[Part, Part | None]:
        """The two parts of one that is cut; the second is None where the saw takes all of it."""
        number = len(self.cuts) + 1
        across = Grain.LENGTH if across_length else Grain.WIDTH
        self.cuts.append(
            SheetCut(number, part.name, part.x, part.y, part.length, part.width, across, at)
        )
        past = at + self.terms.kerf
        first, second = f"{number}a", f"{number}b"
        if across_length:
            rest = replace(part, name=second, x=part.x + past, length=part.length - past)
            return replace(part, name=first, length=at), rest if rest.length > ZERO else None
        rest = replace(part, name=second, y=part.y + past, width=part.width - past)
        return replace(part, name=first, width=at), rest if rest.width > ZERO else None

    def _keep(self, part: Part) -> None:
        usable = min(part.length, part.width) >= self.terms.usable_offcut
        self.offcuts.append(SheetOffcut(part.name, part.x, part.y, part.length, part.width, usable))
