"""Sets with cut list, cutting diagrams and material list, and the JSON they are held against."""

import json
from collections.abc import Callable, Mapping
from dataclasses import dataclass, field, replace
from typing import Any

from lacunar.drawing.checker import check_set
from lacunar.drawing.painters.fonts import load_typeface
from lacunar.drawing.painters.svg import paint_svg
from lacunar.workflow.draw import compose_sheets
from lacunar.workflow.lists import drawn_lists, list_answers
from lacunar.workflow.prepare import layout_answer, prepare
from tests.drawing.checker.spoiled import Spoiled

LISTS = ("Z-601", "Z-602", "Z-603")


@dataclass(frozen=True)
class ListedSet:
    """The SVG of each sheet by its id, the layout's JSON, and that of both lists."""

    svgs: Mapping[str, str]
    layout: dict[str, Any]
    lists: dict[str, Any] = field(default_factory=dict)

    def points(self) -> set[int]:
        """The points that are not kept."""
        found = check_set(list(self.svgs.values()), self.layout, load_typeface(), self.lists)
        return {finding.point for finding in found}

    def spoiled(self, sheet: str, spoil: Callable[[Spoiled], object]) -> "ListedSet":
        """The set with one sheet spoiled."""
        opened = Spoiled(self.svgs[sheet])
        spoil(opened)
        return replace(self, svgs={**self.svgs, sheet: opened.svg})

    def rewritten(self, sheet: str, old: str, new: str, count: int = 1) -> "ListedSet":
        """The set with some of a sheet's text exchanged."""
        assert old in self.svgs[sheet], old
        svg = self.svgs[sheet].replace(old, new, count)
        return replace(self, svgs={**self.svgs, sheet: svg})

    def listed(self, change: Callable[[dict[str, Any]], object]) -> "ListedSet":
        """The set held against other lists."""
        lists = json.loads(json.dumps(self.lists))
        change(lists)
        return replace(self, lists=lists)


def listed_set(spec: Mapping[str, Any]) -> ListedSet:
    """A spec's sheets of lists."""
    drawing = {**spec.get("drawing", {}), "sheets": list(LISTS)}
    prepared = prepare(json.dumps({**spec, "drawing": drawing}).encode())
    lists = drawn_lists(prepared)
    assert lists is not None
    sheets, typeface = compose_sheets(prepared, lists)
    svgs = {sheet.id: paint_svg(sheet, typeface, fonts=None) for sheet in sheets.sheets}
    return ListedSet(svgs, dict(layout_answer(prepared, trace=False)), dict(list_answers(lists)))
