"""A layout as pieces are read from it."""

from dataclasses import dataclass

from lacunar.layout.records import Layout
from lacunar.measure.figure import LengthFigure, given
from lacunar.measure.length import Length
from lacunar.model.boards import BoardName
from lacunar.model.panel import SheetSize
from lacunar.model.stock import SHEET_WIDTH, Stock, StockKind, nominal_size, size_name
from lacunar.model.take_off import TakeOff
from lacunar.takeoff.part_records import Material, MaterialKind, PartPlace, Pieces, Shape


@dataclass(frozen=True, slots=True)
class Source:
    """One ceiling of a take-off, counted from 1, with its layout."""

    number: int
    layout: Layout

    @property
    def take_off(self) -> TakeOff:
        """What the spec says about the take-off."""
        return self.layout.ceiling.take_off

    @property
    def panel_thickness(self) -> LengthFigure:
        """Thickness of what fills the coffers [length]."""
        return given(self.layout.ceiling.panel.thickness)

    def place(self, *of: str, at: str = "", quantity: int = 1) -> PartPlace:
        """So many of a part, in or on what has these ids."""
        return PartPlace(self.number, of, at, None, None, quantity)

    def lumber(self, stock: Stock) -> Material:
        """Stock as material; a strip of sheet is cut from the whole sheet."""
        if stock.kind is StockKind.SHEET:
            edges = SheetSize(SHEET_WIDTH, self.layout.ceiling.stock.longest_sheet)
            return Material(
                MaterialKind.SHEET, stock.name, stock.thickness, edges.width, edges.length
            )
        thickness, width = nominal_size(stock) or (None, None)
        return Material(
            MaterialKind.LUMBER,
            stock.name,
            stock.thickness,
            stock.width,
            nominal_thickness=thickness,
            nominal_width=width,
        )

    def sheet(self) -> Material:
        """The sheet that panels are cut from."""
        panel = self.layout.ceiling.panel
        sizes = (panel.thickness, panel.sheet.width, panel.sheet.length)
        return Material(MaterialKind.SHEET, self.named("sheet", *sizes), *sizes)

    def boards(self, nominal: BoardName | None, thickness: Length, width: Length) -> Material:
        """Boards that fill coffers, by their nominal size or their real one."""
        if nominal is None:
            name = self.named("boards", thickness, width)
            return Material(MaterialKind.BOARDS, name, thickness, width)
        named = (Length.of_inches(int(each)) for each in nominal.split("x"))
        return Material(MaterialKind.BOARDS, f"{nominal} boards", thickness, width, None, *named)

    def section(self, thickness: Length, width: Length) -> Material:
        """Framing of a section of which no stock is named."""
        name = self.named("framing", thickness, width)
        return Material(MaterialKind.SECTION, name, thickness, width)

    def named(self, what: str, *sizes: Length) -> str:
        """What something is called by its exact size."""
        return f"{what} {size_name(sizes, self.layout.ceiling.units)}"


def lying(shape: Shape, *places: PartPlace) -> Pieces:
    """Pieces of a shape at these places."""
    return Pieces(shape, places)
