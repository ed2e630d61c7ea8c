"""What of panels does not fit the sheets there are of their material."""

from collections.abc import Iterator

from lacunar.measure.length import Length
from lacunar.model.faults import Fault
from lacunar.takeoff.cutting.asked import Grain, Panel, SheetsAsked

Edges = tuple[Length, Length]


def ways_to_lie(panel: Panel) -> tuple[Edges, ...]:
    """The ways a panel may lie: along the sheet's length, and across it."""
    straight, turned = (panel.length, panel.width), (panel.width, panel.length)
    if panel.grain is Grain.LENGTH or panel.length == panel.width:
        return (straight,)
    return (turned,) if panel.grain is Grain.WIDTH else (straight, turned)


def sheet_faults(asked: SheetsAsked) -> Iterator[Fault]:
    """Sheets that trimming uses up, panels without sheets, panels larger than all of them."""
    room: dict[str, list[Edges]] = {}
    for place, sheet in enumerate(asked.sheets):
        trim = asked.terms.edge_trim * 2
        left = (sheet.length - trim, sheet.width - trim)
        room.setdefault(sheet.material, []).append(left)
        if min(left).inches <= 0:
            yield Fault(
                code="stock_used_up_by_trim",
                pointer=f"/sheets/{place}",
                message="Trimming its edges leaves nothing of the sheet.",
                remedy="Trim less, or leave this sheet out.",
                figures={"width": min(sheet.length, sheet.width), "edge_trim": trim / 2},
            )
    for place, panel in enumerate(asked.panels):
        if panel.material not in room:
            yield Fault(
                code="material_not_stocked",
                pointer=f"/panels/{place}/material",
                message="No sheet is of this material.",
                remedy="Give sheets of that material, or correct the name.",
                figures={"material": panel.material},
            )
        elif not _fits(panel, room[panel.material]):
            yield Fault(
                code="panel_larger_than_sheets",
                pointer=f"/panels/{place}",
                message="The panel fits no sheet of its material as its grain has to lie.",
                remedy="Give a larger sheet, let the panel be turned, or part it at a seam.",
                figures={"length": panel.length, "width": panel.width},
            )


def _fits(panel: Panel, room: list[Edges]) -> bool:
    return any(
        along <= length and across <= width
        for along, across in ways_to_lie(panel)
        for length, width in room
    )
