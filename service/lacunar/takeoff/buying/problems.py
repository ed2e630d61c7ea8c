"""Parts and what was said about stock as cutting problems, each material from its own stock."""

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass, replace

from lacunar.layout.records import Layout
from lacunar.measure.length import ZERO, Length
from lacunar.measure.units import Units
from lacunar.model import cutting_limits as limits
from lacunar.model.assuming import Assuming
from lacunar.model.ceiling import Assumption
from lacunar.model.faults import Fault, SpecRefused
from lacunar.takeoff.buying.cut_materials import CutAs, CutMaterial, cut_as, cut_materials, taped
from lacunar.takeoff.buying.offered import Offered, SheetRow
from lacunar.takeoff.buying.said import PackSpec, StockSaid
from lacunar.takeoff.buying.stock_rules import STOCK, stock_faults
from lacunar.takeoff.cutting.asked import (
    EffortWord,
    LengthsAsked,
    Panel,
    Piece,
    SecondAim,
    Section,
    SheetsAsked,
    SheetTerms,
    Terms,
)
from lacunar.takeoff.cutting.asked import Grain as Lies
from lacunar.takeoff.cutting.asked import Material as Ends
from lacunar.takeoff.cutting.deciding import USABLE, used_up
from lacunar.takeoff.cutting.sheet_fit import sheet_faults
from lacunar.takeoff.part_records import Grain, MaterialKind, Part

_LIES = {Grain.LENGTHWISE: Lies.LENGTH, Grain.EITHER: Lies.FREE}


@dataclass(frozen=True, slots=True)
class CutFrom:
    """A material with its parts as they are planned."""

    of: CutMaterial
    cuts: tuple[CutAs, ...]


@dataclass(frozen=True, slots=True)
class Asked:
    """What is to be planned for a take-off, and what packs are sold.

    `unused` are the names of stock that nothing is cut from.
    """

    units: Units
    materials: tuple[CutFrom, ...]
    lengths: LengthsAsked | None
    sheets: SheetsAsked | None
    packs: tuple[PackSpec, ...]
    unused: tuple[str, ...]
    assumptions: tuple[Assumption, ...]


def problems(layouts: Sequence[Layout], parts: Sequence[Part], said: StockSaid) -> Asked:
    """Turn all parts of a take-off into cutting problems.

    Parameters: `layouts` of its ceilings, whose own kerf and longest boards count where `said` says
    nothing; `parts`; `said`. Errors: `SpecRefused` with every fault, pointers into what was said.
    """
    _refuse(stock_faults(said))
    units = layouts[0].ceiling.units
    materials = cut_materials(parts, units)
    assuming = Assuming()
    terms = _terms(said, layouts, assuming)
    offered = Offered(said, units)
    longest = {each.name: _longest(layouts, each) for each in materials if not each.is_sheet}
    flat = [each for each in materials if each.is_sheet]
    lengths = LengthsAsked(
        offered.lengths(longest, assuming), offered.offcuts(longest, assuming), (), (), terms
    )
    rows = offered.sheets(flat, assuming)
    trim = ZERO
    if flat:
        trim = assuming.settle(
            said.edge_trim, f"{STOCK}/edge_trim", ZERO, "sheets are cut to their edges"
        )
    sheets = SheetsAsked(
        tuple(row.sheet for row in rows),
        (),
        SheetTerms(terms.kerf, trim, terms.usable_offcut, terms.effort),
    )
    _refuse(_used_up(said, terms.end_trim))
    cuts = _cuts(materials, _room(lengths, sheets), units)
    effort = _effort(said, cuts, assuming)
    lengths = replace(lengths, terms=replace(terms, effort=effort))
    sheets = replace(sheets, terms=replace(sheets.terms, effort=effort))
    lengths, sheets = _with_pieces(lengths, cuts), _with_panels(sheets, cuts, units)
    _refuse((*_too_much(cuts), *_of_sheets(sheets, rows)))
    return Asked(
        units=units,
        materials=cuts,
        lengths=lengths if lengths.pieces else None,
        sheets=sheets if sheets.panels else None,
        packs=said.packs,
        unused=tuple(offered.unused(materials)),
        assumptions=assuming.made,
    )


def _refuse(faults: Iterator[Fault] | Sequence[Fault]) -> None:
    found = tuple(faults)
    if found:
        raise SpecRefused(found)


def _terms(said: StockSaid, layouts: Sequence[Layout], assuming: Assuming) -> Terms:
    units = layouts[0].ceiling.units
    kerf = max(layout.ceiling.stock.kerf for layout in layouts)
    usable = "shorter ones are seldom kept"
    return Terms(
        kerf=assuming.settle(said.kerf, f"{STOCK}/kerf", kerf, "as the ceiling has it"),
        end_trim=assuming.settle(
            said.end_trim, f"{STOCK}/end_trim", ZERO, "stock is cut to its ends"
        ),
        usable_offcut=assuming.settle(
            said.usable_offcut, f"{STOCK}/usable_offcut", USABLE[units], usable
        ),
        most_lengths=said.most_lengths,
        second_aim=said.second_aim or SecondAim.FEWEST_PATTERNS,
        effort=said.effort or EffortWord.USUAL,
        units=units,
    )


def _longest(layouts: Sequence[Layout], material: CutMaterial) -> Length:
    """How long boards may be in the ceilings that have some of a material."""
    numbers = {place.ceiling for part in material.parts for place in part.places}
    return max(layouts[number - 1].ceiling.stock.longest_board for number in numbers)


def _used_up(said: StockSaid, trim: Length) -> Iterator[Fault]:
    rows = [("lengths", place, row.length) for place, row in enumerate(said.lengths)]
    rows += [("offcuts", place, row.length) for place, row in enumerate(said.offcuts)]
    for name, place, length in rows:
        if length <= trim * 2:
            yield used_up(f"{STOCK}/{name}/{place}/length", length, trim)


def _room(lengths: LengthsAsked, sheets: SheetsAsked) -> Mapping[str, Length]:
    """The longest that one piece of each material can be."""
    found: dict[str, Length] = {}
    for row in lengths.stock:
        left = row.length - lengths.terms.end_trim * 2
        found[row.material] = max(left, found.get(row.material, ZERO))
    for sheet in sheets.sheets:
        left = sheet.length - sheets.terms.edge_trim * 2
        found[sheet.material] = max(left, found.get(sheet.material, ZERO))
    return found


def _cuts(
    materials: Sequence[CutMaterial], room: Mapping[str, Length], units: Units
) -> tuple[CutFrom, ...]:
    found: list[CutFrom] = []
    faults: list[Fault] = []
    for each in materials:
        longest = room[each.name]
        planned = [cut_as(part, longest, units) for part in each.parts]
        cuts = tuple(cut for cut in planned if cut is not None)
        if len(cuts) < len(planned):
            faults.append(_no_joint(each, longest))
        found.append(CutFrom(each, cuts))
    _refuse(faults)
    return tuple(found)


def _no_joint(material: CutMaterial, longest: Length) -> Fault:
    length = max(part.cut_length.value for part in material.parts)
    return Fault(
        code="piece_longer_than_stock",
        pointer=f"{STOCK}/{'sheets' if material.is_sheet else 'lengths'}",
        message="Parts are longer than all stock of their material, too short even for joints.",
        remedy="Give longer stock.",
        figures={"material": material.name, "length": length, "longest": longest},
    )


def _with_pieces(lengths: LengthsAsked, cuts: Sequence[CutFrom]) -> LengthsAsked:
    of_lengths = [each for each in cuts if not each.of.is_sheet]
    pieces = tuple(
        Piece(cut.part.mark, each.of.name, cut.length, cut.part.quantity * cut.pieces_each)
        for each in of_lengths
        for cut in each.cuts
    )
    ends = tuple(
        Ends(
            name=each.of.name,
            section=Section.SPRUNG
            if each.of.material.kind is MaterialKind.CROWN
            else Section.SQUARE,
            miter=each.of.miter,
            width=None,
            nested=False,
        )
        for each in of_lengths
    )
    return replace(lengths, pieces=pieces, materials=ends)


def _with_panels(sheets: SheetsAsked, cuts: Sequence[CutFrom], units: Units) -> SheetsAsked:
    trim = sheets.terms.edge_trim * 2
    widest: dict[str, Length] = {}
    for sheet in sheets.sheets:
        widest[sheet.material] = max(sheet.width - trim, widest.get(sheet.material, ZERO))
    panels = [
        Panel(
            id=cut.part.mark,
            material=each.of.name,
            length=cut.length,
            width=taped(_width(cut), widest[each.of.name], units),
            quantity=cut.part.quantity * cut.pieces_each,
            grain=_LIES[cut.part.grain],
        )
        for each in cuts
        if each.of.is_sheet
        for cut in each.cuts
    ]
    return replace(sheets, panels=tuple(panels))


def _width(cut: CutAs) -> Length:
    if cut.width is None:
        raise ValueError(f"{cut.part.mark} is cut from a sheet and has no width")
    return cut.width


def _of_sheets(sheets: SheetsAsked, rows: Sequence[SheetRow]) -> Iterator[Fault]:
    """What does not fit sheets, told where the sheets are, and which part it is."""
    for fault in sheet_faults(sheets):
        _, what, place = fault.pointer.split("/")[:3]
        number = int(place)
        if what == "panels":
            pointer = f"{STOCK}/sheets"
            figures = {"part": sheets.panels[number].id, **fault.figures}
            yield replace(fault, pointer=pointer, figures=figures)
            continue
        said = rows[number].place
        pointer = f"{STOCK}/edge_trim" if said is None else f"{STOCK}/sheets/{said}"
        yield replace(fault, pointer=pointer)


def _kinds(each: CutFrom) -> int:
    """Of how many different sizes a material's pieces are."""
    return len({(cut.length, cut.width if each.of.is_sheet else None) for cut in each.cuts})


def _pieces(each: CutFrom) -> int:
    """Into how many pieces a material is cut."""
    return sum(cut.part.quantity * cut.pieces_each for cut in each.cuts)


def _effort(said: StockSaid, cuts: Sequence[CutFrom], assuming: Assuming) -> EffortWord:
    """What was said; else little for large jobs, so that they take seconds."""
    if said.effort is not None:
        return said.effort
    for each in cuts:
        kinds, pieces = _kinds(each), _pieces(each)
        most = limits.MANY_PANEL_KINDS if each.of.is_sheet else limits.MANY_KINDS
        if kinds > most or pieces > limits.MANY_PIECES:
            reason = f"{each.of.name} is cut into {pieces} pieces of {kinds} different sizes"
            assuming.note(f"{STOCK}/effort", EffortWord.QUICK, reason)
            return EffortWord.QUICK
    return EffortWord.USUAL


def _too_much(cuts: Sequence[CutFrom]) -> Iterator[Fault]:
    """What is planned at once is bounded, however many ceilings it is for."""
    for each in cuts:
        kinds, sheets = _kinds(each), each.of.is_sheet
        pieces = _pieces(each)
        most_kinds = limits.POOLED_PANEL_KINDS if sheets else limits.POOLED_KINDS
        most = limits.POOLED_PANELS if sheets else limits.POOLED_PIECES
        if kinds > most_kinds or pieces > most:
            yield Fault(
                code="too_many_pieces",
                pointer="",
                message=f"{each.of.name} is cut into {pieces} pieces of {kinds} different sizes;"
                f" {most} of {most_kinds} are planned at once.",
                remedy="Take the ceilings in several parts.",
                figures={"material": each.of.name, "pieces": pieces, "sizes": kinds},
            )
