"""Whether stock can make a part, and which could."""

from collections.abc import Iterator
from dataclasses import dataclass

from lacunar.measure.length import Length
from lacunar.model.faults import Fault
from lacunar.model.stock import Stock, boards_at_least, same_stock_at_least

_NAMED_BOARDS = 3


@dataclass(frozen=True, slots=True)
class PartStock:
    """The stock a part is to come from, and where the spec names it.

    `wider_allowed` says whether the next wider board of the same kind may take its place, as for a
    beam wider than its family's.
    """

    part: str
    pointer: str
    stock: Stock
    needed: Length
    wider_allowed: bool

    @property
    def taken(self) -> Stock:
        """The stock itself, or the next wider one where it may be taken and is needed."""
        if self.needed <= self.stock.width or not self.wider_allowed:
            return self.stock
        return same_stock_at_least(self.stock, self.needed) or self.stock


def stock_faults(part: PartStock) -> Iterator[Fault]:
    """The fault of stock that is narrower than the part to be made from it."""
    if part.needed <= part.taken.width:
        return
    boards = boards_at_least(part.needed, part.stock)[:_NAMED_BOARDS]
    names = " or ".join(board.name for board in boards)
    wider = f"Take wider stock, such as {names}" if boards else "Take glued-up or sheet stock"
    beams = (
        "shallower beams; stepped depth lets each family keep its own"
        if part.part == "side"
        else "narrower beams"
    )
    yield Fault(
        code="stock_too_narrow",
        pointer=part.pointer,
        message=f"{part.stock.name} is too narrow for the {part.part} of the beams.",
        remedy=f"{wider}, or ask for {beams}.",
        figures={
            "needed": part.needed,
            "stock_width": part.stock.width,
            "stock": part.stock.name,
        },
    )
