"""How tests come by a material list, and how they hold one against parts and plans.

What is counted here is read off sticks and sheets one by one, apart from the code that makes lines.
"""

import json
from collections import Counter
from fractions import Fraction

from lacunar.workflow.material_list import PreparedMaterials, prepare_materials

FEET = Fraction(1, 12)


def listed(*specs, **stock) -> PreparedMaterials:
    """The material list of specs that are pooled, with what is said about stock."""
    document = {"ceilings": list(specs)}
    if stock:
        document["stock"] = stock
    return prepare_materials(json.dumps(document).encode())


def line(prepared, name):
    """The one line of a name."""
    (only,) = (each for each in prepared.listed.materials.lines if each.name == name)
    return only


def bought(prepared, name):
    """What is bought of a name: how many of each size."""
    return {each.name: each.quantity for each in line(prepared, name).bought}


def cut_pieces(prepared):
    """How many of each mark are cut from sticks and sheets, and in how many plans each is."""
    pieces, plans = Counter(), Counter()
    planned = prepared.planned
    for plan in planned.lengths.plans if planned.lengths else ():
        found = Counter(piece.piece for stick in plan.sticks for piece in stick.pieces)
        pieces += found
        plans += Counter(dict.fromkeys(found, 1))
    for plan in planned.sheets.plans if planned.sheets else ():
        found = Counter(panel.panel for sheet in plan.sheets for panel in sheet.panels)
        pieces += found
        plans += Counter(dict.fromkeys(found, 1))
    return pieces, plans


def lost(prepared):
    """A line for everything that take-off, plans and material list do not agree about."""
    parts = {part.mark: part.quantity for part in prepared.pooled.taken.parts}
    pieces, plans = cut_pieces(prepared)
    cut = [line for line in prepared.listed.materials.lines if line.plan is not None]
    on_lines = Counter()
    wanted = {}
    for each in cut:
        for part in each.parts:
            on_lines[part.mark] += part.quantity
            wanted[part.mark] = part.quantity * part.pieces_each
    found = [f"{mark} in {n} plans" for mark, n in plans.items() if n != 1]
    if on_lines != Counter(parts):
        found.append(f"lines have {on_lines}, the take-off {parts}")
    if Counter(wanted) != pieces:
        found.append(f"plans cut {pieces}, lines ask for {wanted}")
    found.extend(_unbalanced(prepared.listed.materials.lines))
    return found


def _unbalanced(lines):
    for each in lines:
        used = each.need.value + each.waste.value + each.left_over.value
        if used != each.amount.value + each.on_hand.value:
            yield f"{each.name}: {used} is not what is bought and on hand"
        if sum(b.quantity * b.holds.value for b in each.bought) != each.amount.value:
            yield f"{each.name}: what is bought is not its amount"
        if min(each.need.value, each.waste.value, each.left_over.value) < 0:
            yield f"{each.name}: less than nothing"


def on_sticks(prepared, name):
    """Of a material, read off its sticks: feet of sticks, of pieces, of offcuts that are kept."""
    (plan,) = (each for each in prepared.planned.lengths.plans if each.material == name)
    sticks = sum(stick.length.inches for stick in plan.sticks) * FEET
    pieces = sum(p.length.inches for stick in plan.sticks for p in stick.pieces) * FEET
    kept = sum(stick.offcut.inches for stick in plan.sticks if stick.usable) * FEET
    return sticks, pieces, kept
