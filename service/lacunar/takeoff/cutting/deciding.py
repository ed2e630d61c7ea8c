"""From a cutting problem as it was asked for to one with nothing open, and what was assumed."""

from collections.abc import Iterator
from dataclasses import dataclass

from lacunar.measure.length import ZERO, Length
from lacunar.measure.rounding import Step
from lacunar.measure.units import Units
from lacunar.model.assuming import Assuming, FreeNames
from lacunar.model.ceiling import Assumption
from lacunar.model.defaults import DEFAULTS
from lacunar.model.faults import Fault, SpecRefused
from lacunar.takeoff.cutting.asked import (
    EffortWord,
    Grain,
    LengthsAsked,
    Material,
    Offcut,
    Panel,
    Piece,
    SecondAim,
    Section,
    SheetsAsked,
    SheetTerms,
    StockLength,
    StockSheet,
    Terms,
)
from lacunar.takeoff.cutting.miters import SQUARE, end_cuts
from lacunar.takeoff.cutting.rules import RULES
from lacunar.takeoff.cutting.said import CuttingSpec, MaterialSpec
from lacunar.takeoff.cutting.sheet_fit import sheet_faults

USABLE = {Units.INCH: Length.of_inches(24), Units.MILLIMETER: Length.of_millimeters(600)}


@dataclass(frozen=True, slots=True)
class Decided:
    """What is to be planned; None where nothing of the kind was asked."""

    lengths: LengthsAsked | None
    sheets: SheetsAsked | None
    mark_to: Step
    assumptions: tuple[Assumption, ...]


def decide(said: CuttingSpec) -> Decided:
    """Turn a problem as asked into one to be planned.

    Errors: `SpecRefused` with every fault.
    """
    faults = [fault for rule in RULES for fault in rule(said)]
    if faults:
        raise SpecRefused(faults)
    assuming = Assuming()
    usual = DEFAULTS[said.units]
    kerf = assuming.settle(said.kerf, "/kerf", usual.kerf, "a usual saw blade")
    usable = assuming.settle(
        said.usable_offcut, "/usable_offcut", USABLE[said.units], "shorter ones are seldom kept"
    )
    effort = said.effort or EffortWord.USUAL
    lengths = sheets = None
    if said.pieces:
        lengths = _lengths(said, _terms(said, kerf, usable, assuming), assuming)
        faults += _length_faults(lengths)
    if said.panels:
        trim = assuming.settle(said.edge_trim, "/edge_trim", ZERO, "sheets are cut to their edges")
        sheets = _sheets(said, SheetTerms(kerf, trim, usable, effort), assuming)
        faults += sheet_faults(sheets)
    if faults:
        raise SpecRefused(faults)
    return Decided(lengths, sheets, said.mark_to or usual.mark_to, assuming.made)


def _terms(said: CuttingSpec, kerf: Length, usable: Length, assuming: Assuming) -> Terms:
    return Terms(
        kerf=kerf,
        end_trim=assuming.settle(said.end_trim, "/end_trim", ZERO, "stock is cut to its ends"),
        usable_offcut=usable,
        most_lengths=said.most_lengths,
        second_aim=said.second_aim or SecondAim.FEWEST_PATTERNS,
        effort=said.effort or EffortWord.USUAL,
        units=said.units,
    )


def _lengths(said: CuttingSpec, terms: Terms, assuming: Assuming) -> LengthsAsked:
    taken = [*(row.id for row in said.stock), *(row.id for row in said.offcuts)]
    names = FreeNames("S", taken)
    unsaid = Assuming()  # names that nobody chose are seen in the answer
    stock = tuple(
        StockLength(
            names.settle(row.id, "", unsaid), row.material, row.length, row.price, row.supply
        )
        for row in said.stock
    )
    offcuts = tuple(
        Offcut(
            names.settle(row.id, "", unsaid),
            row.material,
            row.length,
            row.quantity,
            _salvage(row.salvage_value, place, assuming),
        )
        for place, row in enumerate(said.offcuts)
    )
    labels = FreeNames("P", (row.id for row in said.pieces))
    pieces = tuple(
        Piece(labels.settle(row.id, "", unsaid), row.material, row.length, row.quantity)
        for row in said.pieces
    )
    told = {material.name: material for material in said.materials}
    materials = tuple(
        _material(told.get(name, MaterialSpec(name)))
        for name in dict.fromkeys(piece.material for piece in pieces)
    )
    return LengthsAsked(stock, offcuts, pieces, materials, terms)


def _salvage(said: int | None, place: int, assuming: Assuming) -> int:
    if said is None:
        pointer = f"/offcuts/{place}/salvage_value"
        assuming.note(pointer, "0.00", "it is used up before any is bought")
    return said or 0


def _material(said: MaterialSpec) -> Material:
    return Material(
        name=said.name,
        section=said.section or Section.SQUARE,
        miter=said.miter or SQUARE,
        width=said.width,
        nested=said.nested,
    )


def _length_faults(asked: LengthsAsked) -> Iterator[Fault]:
    """What does not fit the stock there is of its material."""
    materials = {material.name: material for material in asked.materials}
    longest: dict[str, Length] = {}
    rack = [(f"/stock/{n}", row.material, row.length) for n, row in enumerate(asked.stock)]
    rack += [(f"/offcuts/{n}", row.material, row.length) for n, row in enumerate(asked.offcuts)]
    for pointer, material, length in rack:
        left = length - asked.terms.end_trim * 2
        longest[material] = max(left, longest.get(material, ZERO))
        if left.inches <= 0:
            yield used_up(f"{pointer}/length", length, asked.terms.end_trim)
    for place, piece in enumerate(asked.pieces):
        pointer = f"/pieces/{place}"
        if piece.material not in {row.material for row in asked.stock}:
            yield _not_stocked(pointer, piece.material)
        elif piece.length > longest[piece.material]:
            yield _too_long(pointer, piece.length, longest[piece.material])
        shared = end_cuts(materials[piece.material], asked.terms).shared
        if piece.length < shared * 2:
            yield _too_short(pointer, piece.length, shared * 2)


def used_up(pointer: str, length: Length, trim: Length) -> Fault:
    """The fault for a stick of which trimming leaves nothing."""
    return Fault(
        code="stock_used_up_by_trim",
        pointer=pointer,
        message="Trimming both ends leaves nothing of it.",
        remedy="Trim less, or leave this stock out.",
        figures={"length": length, "end_trim": trim},
    )


def _not_stocked(pointer: str, material: str) -> Fault:
    return Fault(
        code="material_not_stocked",
        pointer=f"{pointer}/material",
        message="No stock is of this material.",
        remedy="Give stock of that material, or correct the name.",
        figures={"material": material},
    )


def _too_long(pointer: str, length: Length, longest: Length) -> Fault:
    return Fault(
        code="piece_longer_than_stock",
        pointer=f"{pointer}/length",
        message="The piece is longer than all stock of its material, trimmed ends taken off.",
        remedy="Give longer stock, or splice the piece and give its parts.",
        figures={"length": length, "longest": longest},
    )


def _too_short(pointer: str, length: Length, least: Length) -> Fault:
    return Fault(
        code="piece_shorter_than_miters",
        pointer=f"{pointer}/length",
        message="Both miters of the piece would take more than its length.",
        remedy="Check its length, which is that of its long edge.",
        figures={"length": length, "least": least},
    )


def _sheets(said: CuttingSpec, terms: SheetTerms, assuming: Assuming) -> SheetsAsked:
    names = FreeNames("SH", (row.id for row in said.sheets))
    labels = FreeNames("N", (row.id for row in said.panels))
    unsaid = Assuming()
    sheets = tuple(
        StockSheet(
            names.settle(row.id, "", unsaid),
            row.material,
            row.length,
            row.width,
            row.price,
            row.supply,
        )
        for row in said.sheets
    )
    panels = tuple(
        Panel(
            labels.settle(row.id, "", unsaid),
            row.material,
            row.length,
            row.width,
            row.quantity,
            assuming.settle(
                row.grain, f"/panels/{place}/grain", Grain.FREE, "nothing was said of its grain"
            ),
        )
        for place, row in enumerate(said.panels)
    )
    return SheetsAsked(sheets, panels, terms)
