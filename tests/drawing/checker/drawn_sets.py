"""Whole sets of sheets to be spoiled: a spec drawn, and the JSON they are held against."""

import json
from collections.abc import Sequence
from typing import Any

from lacunar.drawing.checker import check_set
from lacunar.drawing.painters.fonts import load_typeface
from lacunar.drawing.painters.svg import paint_svg
from lacunar.drawing.sheet_set import compose
from lacunar.workflow.prepare import layout_answer, prepare

Drawn = tuple[list[str], dict[str, Any]]


PLANS_AND_POLES = ["Z-101", "Z-102", "Z-701"]


def drawn_set(spec: dict[str, Any], sheets: Sequence[str] = PLANS_AND_POLES) -> Drawn:
    """The SVG of sheets of a spec, and the layout's JSON."""
    drawing = {"sheets": list(sheets), **spec.get("drawing", {})}
    prepared = prepare(json.dumps({**spec, "drawing": drawing}).encode())
    typeface = load_typeface()
    composed = compose(prepared.layout, prepared.digest, typeface).sheets
    svgs = [paint_svg(sheet, typeface, fonts=None) for sheet in composed]
    return svgs, dict(layout_answer(prepared, trace=False))


def found(svgs: list[str], answer: dict[str, Any]) -> set[tuple[int, str]]:
    """The points that are not kept, each with where."""
    return {(one.point, one.where) for one in check_set(svgs, answer, load_typeface())}


def points(svgs: list[str], answer: dict[str, Any]) -> set[int]:
    """The points that are not kept."""
    return {point for point, _ in found(svgs, answer)}
