"""What the backing sheet says in words: how backing is set off and fixed, and what stays whole."""

from collections.abc import Iterator

from lacunar.drawing.run_ends import unlike
from lacunar.drawing.wording import SheetWording
from lacunar.layout.backing_records import Weights
from lacunar.layout.records import Layout, MarkKind
from lacunar.measure.units import Units
from lacunar.model.fixing import BetweenJoists, Fixing
from lacunar.model.room import RunName

TOLD = (MarkKind.WALL, MarkKind.BACKING)
_CARRIED = {
    BetweenJoists.BLOCKING: "Where backing lies between two joists, blocks are let in between them"
    " first; the ceiling has to be open for it.",
    BetweenJoists.SKIN: "Where backing lies between two joists, a plywood skin is screwed up to all"
    " joists first, and backing to the skin.",
    BetweenJoists.ANCHORS: "Where backing lies between two joists, it hangs by fasteners made for"
    " hollow ceilings: ask whoever answers for the structure first.",
}


def backing_notes(layout: Layout, wording: SheetWording) -> Iterator[str]:
    """The sentences of the sheet, in the order of the work."""
    yield "Find and mark wires and pipes before anything is driven."
    if layout.backing.joists is None:
        yield (
            "Joists are not known yet. Find and mark every joist, and report which way they run,"
            " how far apart and where the first one is: then this sheet says what each line is"
            " fixed to, and what needs blocking."
        )
    else:
        yield (
            "Joists are drawn where they were given, evenly spaced. Find each one before fixing:"
            " real ones wander and are doubled at openings."
        )
    yield from _setting_off(layout)
    if layout.ceiling.fixing is not None:
        yield from _fixing(layout, layout.ceiling.fixing, wording)
    yield "Structural members are never cut, notched or drilled; casings are held beside them."
    if layout.items.items:
        yield "Keep backing, blocks and fasteners out of the hatched zones about ceiling items."
    weights = layout.backing.weights
    if weights is not None:
        yield _hanging(weights, wording)


def _hanging(weights: Weights, wording: SheetWording) -> str:
    metric = wording.units is Units.MILLIMETER
    found = weights.kilograms_per_square_meter if metric else weights.pounds_per_square_foot
    unit = "kg to a square meter" if metric else "lb to a square foot"
    return (
        f"All that hangs comes to {float(round(found.value, 1)):.1f} {unit} of the room. Weights"
        " and holding figures are for a licensed engineer or the code official to judge; nothing"
        " here says that this framing carries them."
    )


def _setting_off(layout: Layout) -> Iterator[str]:
    yield (
        "Finished faces govern: backing stands in from them by its offset. Dimensions are to the"
        " faces of the backing, all from the start wall."
    )
    if any(line.side != "middle" for line in layout.backing.lines):
        yield "Cleats beside a member are dimensioned to their middles."
    both = any(unlike(layout, run, TOLD) for run in RunName)
    if both:
        yield "Figures differ at the two ends of a run, so both ends are dimensioned."
    else:
        yield "One end of each run is dimensioned; at the other one the same holds."
    if layout.outlined is not None:
        yield (
            "Backing at inner walls without a dimension is set off from its own wall: full width of"
            " the backing, against it."
        )


def _fixing(layout: Layout, fixing: Fixing, wording: SheetWording) -> Iterator[str]:
    kind = fixing.fastener.replace("_", " ")
    yield (
        f"Fasteners: {kind}s, size {fixing.size}, {wording.detail(fixing.length)} long,"
        f" {fixing.at_crossing} in each joist or block, each clear of the edges of both, into sound"
        f" wood by {wording.detail(fixing.least_penetration)} at least."
    )
    through = fixing.block_through
    backing = [part for each in layout.profiles for part in each.parts if part.name == "backing"]
    if any(part.stock is None and part.thickness.value > through for part in backing):
        yield (
            f"They pass through {wording.detail(through)} of the backing: counterbore it to that,"
            " or build it up on a cleat of that thickness."
        )
    yield (
        "Where no joists cross a piece, it is fixed at even distances of"
        f" {wording.detail(fixing.block_spacing)} at most, the outer ones"
        f" {wording.detail(fixing.end_distance)} from its ends."
    )
    if fixing.shim:
        yield f"Backing is packed down {wording.detail(fixing.shim)} from the ceiling."
    if any(line.carried_by for line in layout.backing.lines):
        yield _CARRIED[fixing.between_joists]
    if any(line.blocks for line in layout.backing.lines):
        blocks = {line.bay.block.value for line in layout.backing.lines if line.blocks and line.bay}
        lengths = ", ".join(wording.length(length) for length in sorted(blocks))
        yield f"Blocks are {lengths} long, from joist to joist."
