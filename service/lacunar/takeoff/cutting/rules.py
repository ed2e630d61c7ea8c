"""Holds a cutting problem against what can be planned, and tells all it finds at once."""

from collections import Counter
from collections.abc import Callable, Iterator, Sequence

from lacunar.measure.length import Length
from lacunar.model import cutting_limits as limits
from lacunar.model.faults import Fault
from lacunar.model.limits import KERF, MOULDING_WIDTH, Bounds
from lacunar.model.moulding_rules import angle_out_of_bounds
from lacunar.model.rules import length_out_of_bounds
from lacunar.takeoff.cutting.asked import Section
from lacunar.takeoff.cutting.said import CutPanelSpec, CutPieceSpec, CuttingSpec

Rule = Callable[[CuttingSpec], Iterator[Fault]]


def something_is_cut(said: CuttingSpec) -> Iterator[Fault]:
    """There are pieces with stock, or panels with sheets; neither stands without the other."""
    if not (said.pieces or said.panels):
        yield _nothing("", "There are no pieces and no panels.", "Give pieces or panels.")
    if said.pieces and not said.stock:
        yield _nothing("/stock", "There is no stock to cut the pieces from.", "Give stock.")
    if said.panels and not said.sheets:
        yield _nothing("/sheets", "There are no sheets to cut the panels from.", "Give sheets.")


def _nothing(pointer: str, message: str, remedy: str) -> Fault:
    return Fault(code="nothing_to_cut", pointer=pointer, message=message, remedy=remedy)


def lengths_lie_within_bounds(said: CuttingSpec) -> Iterator[Fault]:
    """A length beyond its bounds is a slip of the pen."""
    for pointer, length, bounds in _lengths(said):
        if length is not None and not bounds.least <= length <= bounds.most:
            yield length_out_of_bounds(pointer, length, bounds)


def _lengths(said: CuttingSpec) -> Iterator[tuple[str, Length | None, Bounds]]:
    yield "/kerf", said.kerf, KERF
    yield "/end_trim", said.end_trim, limits.END_TRIM
    yield "/edge_trim", said.edge_trim, limits.END_TRIM
    yield "/usable_offcut", said.usable_offcut, limits.USABLE
    for place, stock in enumerate(said.stock):
        yield f"/stock/{place}/length", stock.length, limits.RACK_LENGTH
    for place, offcut in enumerate(said.offcuts):
        yield f"/offcuts/{place}/length", offcut.length, limits.RACK_LENGTH
    for place, piece in enumerate(said.pieces):
        yield f"/pieces/{place}/length", piece.length, limits.CUT_LENGTH
    for place, material in enumerate(said.materials):
        yield f"/materials/{place}/width", material.width, MOULDING_WIDTH
    for place, sheet in enumerate(said.sheets):
        yield f"/sheets/{place}/length", sheet.length, limits.CUT_SHEET_EDGE
        yield f"/sheets/{place}/width", sheet.width, limits.CUT_SHEET_EDGE
    for place, panel in enumerate(said.panels):
        yield f"/panels/{place}/length", panel.length, limits.CUT_EDGE
        yield f"/panels/{place}/width", panel.width, limits.CUT_EDGE


def quantities_lie_within_bounds(said: CuttingSpec) -> Iterator[Fault]:
    """A quantity is a number of things; of stock there may be none left."""
    for pointer, number, least, most in _quantities(said):
        if number is not None and not least <= number <= most:
            yield Fault(
                code="quantity_out_of_bounds",
                pointer=pointer,
                message=f"There can be from {least} to {most} here.",
                remedy="Check the figure.",
                figures={"given": number, "least": least, "most": most},
            )


def _quantities(said: CuttingSpec) -> Iterator[tuple[str, int | None, int, int]]:
    yield "/most_lengths", said.most_lengths, 1, limits.MOST_LENGTHS
    for place, stock in enumerate(said.stock):
        yield f"/stock/{place}/supply", stock.supply, 0, limits.QUANTITY
    for place, sheet in enumerate(said.sheets):
        yield f"/sheets/{place}/supply", sheet.supply, 0, limits.QUANTITY
    for place, offcut in enumerate(said.offcuts):
        yield f"/offcuts/{place}/quantity", offcut.quantity, 1, limits.QUANTITY
    for place, piece in enumerate(said.pieces):
        yield f"/pieces/{place}/quantity", piece.quantity, 1, limits.QUANTITY
    for place, panel in enumerate(said.panels):
        yield f"/panels/{place}/quantity", panel.quantity, 1, limits.QUANTITY


def no_more_than_is_planned(said: CuttingSpec) -> Iterator[Fault]:
    """What is planned at once is bounded."""
    kinds = _kinds({(row.material, row.length) for row in said.pieces})
    yield from _too_many_pieces("/pieces", said.pieces, limits.PIECES_IN_ALL)
    yield from _too_many_kinds("/pieces", kinds, limits.KINDS_OF_A_MATERIAL)
    sizes = _kinds({(row.material, row.length, row.width, row.grain) for row in said.panels})
    yield from _too_many_pieces("/panels", said.panels, limits.PANELS_IN_ALL)
    yield from _too_many_kinds("/panels", sizes, limits.PANEL_KINDS_OF_A_MATERIAL)
    yield from _too_many_sizes(
        "/stock", Counter(row.material for row in said.stock), limits.LENGTHS_OF_A_MATERIAL
    )
    yield from _too_many_sizes(
        "/sheets", Counter(row.material for row in said.sheets), limits.SHEET_SIZES_OF_A_MATERIAL
    )


def _kinds(rows: set[tuple[object, ...]]) -> "Counter[object]":
    return Counter(row[0] for row in rows)


def _too_many_pieces(
    pointer: str, rows: Sequence[CutPieceSpec | CutPanelSpec], most: int
) -> Iterator[Fault]:
    number = sum(row.quantity for row in rows)
    if number > most:
        yield Fault(
            code="too_many_pieces",
            pointer=pointer,
            message=f"There are {number} pieces; at most {most} are planned at once.",
            remedy="Make several problems of it.",
            figures={"pieces": number, "most": most},
        )


def _too_many_kinds(pointer: str, kinds: "Counter[object]", most: int) -> Iterator[Fault]:
    for number in kinds.values():
        if number > most:
            yield Fault(
                code="too_many_pieces",
                pointer=pointer,
                message=f"One material has {number} different sizes; at most {most} are planned.",
                remedy="Make several problems of it.",
                figures={"sizes": number, "most": most},
            )


def _too_many_sizes(pointer: str, sizes: "Counter[str]", most: int) -> Iterator[Fault]:
    for name, number in sizes.items():
        if number > most:
            yield Fault(
                code="too_many_stock_sizes",
                pointer=pointer,
                message=f"There are {number} sizes of one material; at most {most} are tried.",
                remedy="Leave out those that are not to be bought.",
                figures={"material": name, "sizes": number, "most": most},
            )


def ids_are_given_once(said: CuttingSpec) -> Iterator[Fault]:
    """What has an id is told apart by it: stock and offcuts together, pieces, sheets, panels."""
    racks = [(f"/stock/{n}/id", row.id) for n, row in enumerate(said.stock)]
    racks += [(f"/offcuts/{n}/id", row.id) for n, row in enumerate(said.offcuts)]
    lists: list[list[tuple[str, str | None]]] = [
        racks,
        [(f"/pieces/{n}/id", row.id) for n, row in enumerate(said.pieces)],
        [(f"/sheets/{n}/id", row.id) for n, row in enumerate(said.sheets)],
        [(f"/panels/{n}/id", row.id) for n, row in enumerate(said.panels)],
        [(f"/materials/{n}/name", row.name) for n, row in enumerate(said.materials)],
    ]
    for named in lists:
        seen: set[str] = set()
        for pointer, name in named:
            if name is not None and name in seen:
                yield Fault(
                    code="label_doubled",
                    pointer=pointer,
                    message="This name is given to another one already.",
                    remedy="Give each a name of its own, or none.",
                    figures={"name": name},
                )
            seen.add(name or "")


def prices_are_whole(said: CuttingSpec) -> Iterator[Fault]:
    """All stock of a material has a price, or none has; what is on hand is valued likewise."""
    stock = [(f"/stock/{n}", row.material, row.price) for n, row in enumerate(said.stock)]
    sheets = [(f"/sheets/{n}", row.material, row.price) for n, row in enumerate(said.sheets)]
    for rows in (stock, sheets):
        known = {material for _, material, price in rows if price is not None}
        for pointer, material, price in rows:
            if price is None and material in known:
                yield Fault(
                    code="prices_incomplete",
                    pointer=pointer,
                    message="This has no price, and other stock of its material has one.",
                    remedy="Give it a price, or give none a price.",
                )
    priced = {row.material for row in said.stock if row.price is not None}
    for place, offcut in enumerate(said.offcuts):
        if offcut.salvage_value is not None and offcut.material not in priced:
            yield Fault(
                code="salvage_without_prices",
                pointer=f"/offcuts/{place}/salvage_value",
                message="A salvage value says nothing where no stock of the material has a price.",
                remedy="Give the stock prices, or leave the value out.",
            )


def materials_can_be_cut(said: CuttingSpec) -> Iterator[Fault]:
    """Sprung moulding is never turned over; nesting needs a miter and the face it goes across."""
    for place, material in enumerate(said.materials):
        pointer = f"/materials/{place}"
        miter = material.miter
        if miter is not None and not limits.MITER.least <= miter <= limits.MITER.most:
            yield angle_out_of_bounds(f"{pointer}/miter", miter, limits.MITER)
        if not material.nested:
            continue
        if material.section is Section.SPRUNG:
            yield Fault(
                code="sprung_never_nested",
                pointer=f"{pointer}/nested",
                message="Turned over, sprung moulding has its edges swapped.",
                remedy="Leave nested out for this material.",
            )
        elif not miter or material.width is None:
            yield Fault(
                code="nesting_incomplete",
                pointer=f"{pointer}/nested",
                message="Pieces are nested at their miters, across a face of known width.",
                remedy="Give both the miter and the width.",
            )


RULES: tuple[Rule, ...] = (
    something_is_cut,
    lengths_lie_within_bounds,
    quantities_lie_within_bounds,
    no_more_than_is_planned,
    ids_are_given_once,
    prices_are_whole,
    materials_can_be_cut,
)
