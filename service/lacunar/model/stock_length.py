"""How long the boards and strips of sheet are that beams are made of."""

from lacunar.measure.length import Length
from lacunar.model.assuming import Assuming
from lacunar.model.beams import Beams, FamilyBeam, Flat
from lacunar.model.ceiling import StockRules
from lacunar.model.defaults import Defaults
from lacunar.model.spec import StockSpec
from lacunar.model.stock import Stock, StockKind


def decide_stock(said: StockSpec, beams: Beams, usual: Defaults, assuming: Assuming) -> StockRules:
    """Turn what was said of all stock into rules with nothing open.

    How long sheets are matters to nothing where no board of a beam is ripped from one, so that it
    is not listed then.
    """
    families = (beams.crosswise, beams.lengthwise)
    from_sheets = any(
        board.kind is StockKind.SHEET for family in families for board in _boards(family)
    )
    noted = assuming if from_sheets else Assuming()
    return StockRules(
        kerf=assuming.settle(said.kerf, "/stock/kerf", usual.kerf, "a usual saw blade"),
        longest_board=assuming.settle(
            said.longest_board, "/stock/longest_board", usual.longest_board, "most yards keep it"
        ),
        longest_sheet=noted.settle(
            said.longest_sheet, "/stock/longest_sheet", usual.sheet.length, "a usual sheet"
        ),
    )


def _boards(family: FamilyBeam) -> tuple[Stock, ...]:
    if isinstance(family, Flat):
        return (
            (family.bottom,) if family.upper_board is None else (family.bottom, family.upper_board)
        )
    return family.sides, family.bottom


def longest_of(kind: StockKind | None, stock: StockRules) -> tuple[str, Length]:
    """The field that says how long stock of a kind is, and that length [length]."""
    if kind is StockKind.SHEET:
        return "longest_sheet", stock.longest_sheet
    return "longest_board", stock.longest_board
