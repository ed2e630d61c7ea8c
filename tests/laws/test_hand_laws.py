"""A law of hands: what is built in a mirrored room is mirrored, left for right."""

from collections import Counter
from collections.abc import Callable
from random import Random
from typing import Any

import pytest

from lacunar.model.faults import SpecRefused
from lacunar.takeoff.part_records import EndCut, Part, PartKind
from lacunar.takeoff.parts import parts_from, pieces_of
from tests.layout.laying_out import Spec, laid_out

COUNT = 150

WALLS = ("none", "half", "full")


def mirrored(spec: Spec) -> Spec:
    """The same room seen in a mirror beside wall W3: the length run starts where it ended."""
    length = dict(spec["grid"]["length"])
    length["start"], length["end"] = length["end"], length["start"]
    return {**spec, "grid": {**spec["grid"], "length": length}}


def transposed(spec: Spec) -> Spec:
    """The same room seen in a mirror that stands upright on its diagonal: the runs exchanged."""
    room, beams, grid = spec["room"], spec["beams"], spec["grid"]
    through = {"crosswise": "lengthwise", "lengthwise": "crosswise"}[beams["through"]]
    return {
        **spec,
        "room": {**room, "length": room["width"], "width": room["length"]},
        "beams": {**beams, "through": through},
        "grid": {"length": grid["width"], "width": grid["length"]},
    }


def random_spec(random: Random) -> Spec:
    """A room with unlike walls, in every look; boards long enough that none is spliced."""

    def run(coffers: int) -> dict[str, Any]:
        start, end = (random.choice(WALLS) for _ in range(2))
        return {"coffers": coffers, "start": start, "end": end}

    joint = random.choice(({"bottom_joint": "between", "reveal": "1/4"}, UNDER, MITRED))
    look = {
        "sides": random.choice(("continuous", "per_coffer")),
        "corners": random.choice(("butted", "mitred")),
        "bottoms": random.choice(("butted", "mitred")),
    }
    return {
        "room": {
            "length": random.randint(140, 260),
            "width": random.randint(120, 240),
            "height": 110,
        },
        "beams": {
            "crosswise": {"sides": "1x6", "bottom": "1x8", **joint},
            "lengthwise": "same",
            "look": look,
            "through": random.choice(("crosswise", "lengthwise")),
        },
        "grid": {"length": run(random.randint(2, 4)), "width": run(random.randint(1, 3))},
        "flat_mouldings": [{"at": "bottom_edge", "thickness": "1/2", "width": 1}],
        "stock": {"longest_board": "50 ft"},
    }


UNDER = {"bottom_joint": "under", "overhang": "1/2"}
MITRED = {"bottom_joint": "mitred"}


def has_hand(part: Part) -> bool:
    """Said here by itself: what a turn on the bench brings to the wrong place."""
    cuts = {part.left.cut, part.right.cut}
    if part.kind is PartKind.SIDE:
        return EndCut.NOTCHED in cuts or bool(part.mitred_edges)
    if part.kind is PartKind.BOTTOM:
        return EndCut.MITRED in cuts or part.mitred_edges == 1
    return True


def told(spec: Spec, *, turned: bool) -> Counter[tuple[object, ...]]:
    """How many of each part; `turned` exchanges left and right of those with a hand."""
    found: Counter[tuple[object, ...]] = Counter()
    kinds = (PartKind.SIDE, PartKind.BOTTOM, PartKind.FLAT_MOULDING)
    for part in parts_from(pieces_of(laid_out(spec))):
        if part.kind in kinds:
            ends = (part.left, part.right)
            if turned and has_hand(part):
                ends = ends[::-1]
            sizes = (part.length.value, part.short_length.value, part.width and part.width.value)
            found[(part.kind, part.name, part.mitred_edges, *sizes, *ends)] += part.quantity
    return found


@pytest.mark.parametrize("mirror", [mirrored, transposed])
def test_a_mirrored_room_has_every_part_with_left_for_right(mirror: Callable[[Spec], Spec]):
    handed, held = 0, 0
    for number in range(COUNT):
        spec = random_spec(Random(f"hands {number}"))
        try:
            plain, seen = told(spec, turned=False), told(mirror(spec), turned=True)
        except SpecRefused:
            continue
        held += 1
        assert plain == seen, spec
        handed += plain != told(spec, turned=True)
    # most rooms are no mirror image of themselves, or the law would say nothing
    assert held > COUNT * 2 // 3
    assert handed > COUNT // 4
