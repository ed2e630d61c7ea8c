"""The fault for stock that is not enough."""

from lacunar.model.faults import Fault


def runs_out(pointer: str, material: str) -> Fault:
    """The fault at a list of stock, of a material that may have no name."""
    of_it = f" of {material}" if material else ""
    return Fault(
        code="stock_runs_out",
        pointer=pointer,
        message=f"No plan was found with as much stock{of_it} as there is.",
        remedy="Give more of it, or leave out the supply of what can be bought.",
    )
