"""What is sold of each material: as was said, or else usual lengths and the spec's own sheets."""

from collections.abc import Iterable, Iterator, Mapping, Sequence
from dataclasses import dataclass

from lacunar.measure.length import Length
from lacunar.measure.units import Units
from lacunar.measure.writing import LengthStyle, write_length
from lacunar.model.assuming import Assuming, FreeNames
from lacunar.model.defaults import DEFAULTS
from lacunar.model.stock import size_name
from lacunar.takeoff.buying.cut_materials import CutMaterial
from lacunar.takeoff.buying.said import StockSaid
from lacunar.takeoff.buying.stock_rules import STOCK
from lacunar.takeoff.buying.usual_stock import REASON, usual_lengths
from lacunar.takeoff.cutting.asked import Offcut, StockLength, StockSheet


@dataclass(frozen=True, slots=True)
class SheetRow:
    """A sheet that is sold, and its place in what was said; None where nothing was."""

    sheet: StockSheet
    place: int | None


class _Labels:
    """Ids for stock that has none; nobody needs to be told of them, as they are seen."""

    def __init__(self, prefix: str, given: Iterable[str | None]) -> None:
        self._names, self._unsaid = FreeNames(prefix, given), Assuming()

    def settle(self, said: str | None) -> str:
        """The id that was said, or the next free one."""
        return self._names.settle(said, "", self._unsaid)


@dataclass(frozen=True, slots=True)
class Offered:
    """What was said about stock, and the units it is told in."""

    said: StockSaid
    units: Units

    def lengths(self, longest: Mapping[str, Length], assuming: Assuming) -> tuple[StockLength, ...]:
        """The lengths that are sold of materials.

        Parameters: `longest`, how long boards of each material may be by its name [length].
        """
        labels = _Labels("S", self._racked())
        names_of = {name.casefold(): name for name in longest}
        rows = [
            StockLength(labels.settle(row.id), name, row.length, row.price, row.supply)
            for row in self.said.lengths
            if (name := names_of.get(row.material.casefold())) is not None
        ]
        told = {row.material for row in rows}
        usual: dict[tuple[Length, ...], list[str]] = {}
        for name, most in longest.items():
            if name not in told:
                usual.setdefault(usual_lengths(most, self.units), []).append(name)
        for lengths, of in usual.items():
            value = ", ".join(self._text(length) for length in lengths)
            assuming.note(f"{STOCK}/lengths", value, f"{REASON}; of {', '.join(of)}")
            rows += [
                StockLength(labels.settle(None), name, length, None, None)
                for name in of
                for length in lengths
            ]
        return tuple(rows)

    def offcuts(self, materials: Iterable[str], assuming: Assuming) -> tuple[Offcut, ...]:
        """What is on hand of materials."""
        labels = _Labels("R", self._racked())
        names_of = {name.casefold(): name for name in materials}
        found: list[Offcut] = []
        for place, row in enumerate(self.said.offcuts):
            label = labels.settle(row.id)
            name = names_of.get(row.material.casefold())
            if name is None:
                continue
            if row.salvage_value is None:
                pointer = f"{STOCK}/offcuts/{place}/salvage_value"
                assuming.note(pointer, "0.00", "it is used up before any is bought")
            worth = row.salvage_value or 0
            found.append(Offcut(label, name, row.length, row.quantity, worth))
        return tuple(found)

    def sheets(self, materials: Sequence[CutMaterial], assuming: Assuming) -> tuple[SheetRow, ...]:
        """The sheets that are sold of materials; each material's own where nothing was said."""
        labels = _Labels("SH", (row.id for row in self.said.sheets))
        names_of = {each.name.casefold(): each.name for each in materials}
        rows = [
            SheetRow(
                StockSheet(
                    labels.settle(row.id),
                    name,
                    row.length,
                    row.width,
                    row.price,
                    row.supply,
                ),
                place,
            )
            for place, row in enumerate(self.said.sheets)
            if (name := names_of.get(row.material.casefold())) is not None
        ]
        told = {row.sheet.material for row in rows}
        for each in materials:
            width, length = each.material.width, each.material.length
            if each.name in told or width is None or length is None:
                continue
            label = labels.settle(None)
            rows.append(SheetRow(StockSheet(label, each.name, length, width, None, None), None))
            size = size_name((width, length), self.units)
            assuming.note(f"{STOCK}/sheets", size, f"the sheet that the spec has; of {each.name}")
        return tuple(rows)

    def unused(self, materials: Iterable[CutMaterial]) -> Iterator[str]:
        """The names of stock that nothing is cut from."""
        of_lengths = {each.name.casefold() for each in materials if not each.is_sheet}
        of_sheets = {each.name.casefold() for each in materials if each.is_sheet}
        rows = [(row.material, of_lengths) for row in self.said.lengths]
        rows += [(row.material, of_lengths) for row in self.said.offcuts]
        rows += [(row.material, of_sheets) for row in self.said.sheets]
        yield from dict.fromkeys(name for name, used in rows if name.casefold() not in used)

    def _racked(self) -> Iterator[str | None]:
        yield from (row.id for row in self.said.lengths)
        yield from (row.id for row in self.said.offcuts)

    def _text(self, length: Length) -> str:
        style = LengthStyle(self.units, DEFAULTS[self.units].mark_to, with_unit=True)
        return write_length(length, style)
