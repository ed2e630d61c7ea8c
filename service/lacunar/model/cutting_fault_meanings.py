"""What the faults of cutting plans mean."""

from lacunar.model.fault_meaning import FaultMeaning

CUTTING_FAULTS = {
    "nothing_to_cut": FaultMeaning(
        "Nothing to cut",
        "A cutting plan was asked for without any pieces, or without what they are cut from.",
        "Give pieces and stock, or panels and sheets.",
    ),
    "money_not_readable": FaultMeaning(
        "Amount not readable",
        "An amount of money is negative, too large, or finer than is paid: than hundredths, or of"
        " the price of one in a price list than hundredths of those.",
        "Write an amount with at most two decimals, in a price list four.",
    ),
    "quantity_out_of_bounds": FaultMeaning(
        "Quantity out of bounds",
        "A number of pieces or of stock is none of its kind.",
        "Check the figure.",
    ),
    "too_many_pieces": FaultMeaning(
        "Too many pieces",
        "There are more pieces, or more different ones, than are planned at once.",
        "Make several problems of it.",
    ),
    "too_many_stock_sizes": FaultMeaning(
        "Too many sizes of stock",
        "There are more sizes of one material than are planned with.",
        "Leave out those that are not to be bought.",
    ),
    "prices_incomplete": FaultMeaning(
        "Prices incomplete",
        "Some stock of a material has a price and some has none, so that costs cannot be compared.",
        "Give all of it a price, or none.",
    ),
    "salvage_without_prices": FaultMeaning(
        "Salvage value without prices",
        "What is on hand has a value in money, and what would be bought has none.",
        "Give the stock prices, or leave the value out.",
    ),
    "material_not_stocked": FaultMeaning(
        "Material not in stock",
        "A piece is to be cut from a material that no stock is of.",
        "Give stock of that material, or correct the name.",
    ),
    "piece_longer_than_stock": FaultMeaning(
        "Piece longer than all stock",
        "A piece fits none of the stock of its material, trimmed ends taken off.",
        "Give longer stock, or splice the piece and give its parts.",
    ),
    "panel_larger_than_sheets": FaultMeaning(
        "Panel larger than all sheets",
        "A panel fits none of the sheets of its material, trimmed edges taken off.",
        "Give a larger sheet, let the panel be turned, or part it at a seam.",
    ),
    "stock_runs_out": FaultMeaning(
        "Stock runs out",
        "No plan was found that does with as much stock as there is.",
        "Give more stock, or leave out the supply of what can be bought.",
    ),
    "stock_used_up_by_trim": FaultMeaning(
        "Stock used up by trimming",
        "Trimming the ends or edges leaves nothing of the stock.",
        "Trim less, or leave this stock out.",
    ),
    "sprung_never_nested": FaultMeaning(
        "Sprung moulding nested",
        "Pieces are nested by turning every other one over, which swaps the edges of crown.",
        "Leave nested out for this material.",
    ),
    "nesting_incomplete": FaultMeaning(
        "Nesting told in part",
        "Pieces are nested at their miters, and no miter or no width of the face is given.",
        "Give both the miter and the width.",
    ),
    "piece_shorter_than_miters": FaultMeaning(
        "Piece shorter than its miters",
        "The miters of a piece would meet before they have crossed its face.",
        "Check its length, which is that of its long edge.",
    ),
}
