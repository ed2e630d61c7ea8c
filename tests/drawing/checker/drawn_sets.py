"""Whole sets of sheets to be spoiled: a spec drawn, and the JSON they are held against."""

import json
from typing import Any

from lacunar.drawing.checker import check_set
from lacunar.drawing.painters.fonts import load_typeface
from lacunar.drawing.painters.svg import paint_svg
from lacunar.drawing.sheet_set import compose
from lacunar.workflow.prepare import layout_answer, prepare

Drawn = tuple[list[str], dict[str, Any]]


def drawn_set(spec: dict[str, Any]) -> Drawn:
    """The SVG of every sheet of a spec, and the layout's JSON."""
    prepared = prepare(json.dumps(spec).encode())
    typeface = load_typeface()
    sheets = compose(prepared.layout, prepared.digest, typeface).sheets
    svgs = [paint_svg(sheet, typeface, fonts=None) for sheet in sheets]
    return svgs, dict(layout_answer(prepared, trace=False))


def found(svgs: list[str], answer: dict[str, Any]) -> set[tuple[int, str]]:
    """The points that are not kept, each with where."""
    return {(one.point, one.where) for one in check_set(svgs, answer, load_typeface())}


def points(svgs: list[str], answer: dict[str, Any]) -> set[int]:
    """The points that are not kept."""
    return {point for point, _ in found(svgs, answer)}
