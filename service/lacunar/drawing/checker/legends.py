"""The point on the legend: it explains each sign that the plan has, and no other."""

from collections.abc import Callable, Iterator, Mapping, Sequence

from lacunar.drawing.checker.records import Finding, SheetRead
from lacunar.drawing.checker.subject import Subject


def _drawn(of_class: str, **data: str) -> Callable[[SheetRead], bool]:
    """Whether a view of a sheet has a group of a class, with what it must say of itself."""

    def found(sheet: SheetRead) -> bool:
        return any(
            all(group.data.get(name) == value for name, value in data.items())
            for view in sheet.of_kind("view")
            if view.data.get("view") == "reflected-ceiling-plan"
            for group in sheet.of_kind(of_class, view)
        )

    return found


SIGNS: Mapping[str, Callable[[SheetRead], bool]] = {
    "wall": _drawn("wall"),
    "wall-tag": _drawn("tag", kind="wall"),
    "coffer-tag": _drawn("tag", kind="coffer"),
    "crown": lambda sheet: _drawn("crown")(sheet) or _drawn("partial-crown")(sheet),
    "crosswise": _drawn("beam", on="length"),
    "lengthwise": _drawn("beam", on="width"),
    "wall-beam": _drawn("wall-beam"),
    "member": _drawn("member"),
    "direction": _drawn("direction"),
    "station": _drawn("station"),
    "column": _drawn("column"),
    "control-line": _drawn("control-line"),
    "datum": _drawn("datum"),
}
SPARED = ("station", "crown")
"""Signs that the plan may leave out where they have no room, and the legend says so."""


def legend_as_used(subjects: Sequence[Subject]) -> Iterator[Finding]:
    """Point 5: the set's legend has every sign of the plan once, and none the plan has not."""
    if not any(_drawn("coffer")(each.sheet) for each in subjects):
        return
    sheet = subjects[0].sheet
    told = [
        row.data.get("entry", "") for each in subjects for row in each.sheet.of_kind("legend-row")
    ]
    for sign, used in SIGNS.items():
        on_plan, count = any(used(each.sheet) for each in subjects), told.count(sign)
        if on_plan and count != 1:
            yield sheet.finding(5, f"legend {sign}", f"is on the plan, and explained {count} times")
        elif count and not on_plan and sign not in SPARED:
            yield sheet.finding(5, f"legend {sign}", "is explained, and not on the plan")
