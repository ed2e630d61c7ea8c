"""What take-offs might go by: a section for some specs, with a chance of its own."""

from random import Random
from typing import Any

SHARE = 0.4

Spec = dict[str, Any]


def with_take_off(spec: Spec, random: Random) -> Spec:
    """The spec, now and then with a `take_off` section that says some of it."""
    if random.random() < SHARE:
        said = {name: value for name, value in _all(random).items() if random.random() < 0.5}
        if said:
            spec["take_off"] = said
    return spec


def _all(random: Random) -> Spec:
    names = ("beams", "framing", "mouldings", "sheets", "boards", "finish")
    nailed = ("sides", "bottoms", "mouldings", "panels", "boards")
    return {
        "length_allowance": f"{random.randint(0, 32)}/16 in",
        "width_allowance": f"{random.randint(0, 4)}/16 in",
        "blocking": random.choice(("2x4", "2x6", "2x8")),
        "cleat_width": f"{random.randint(24, 80)}/16 in",
        "waste": {random.choice(names): f"{random.randint(0, 20)}/100"},
        "nail_spacing": {random.choice(nailed): f"{random.randint(6, 24)} in"},
        "adhesive": {"bead_per_cartridge": f"{random.randint(20, 50)} ft"},
        "insulation": random.choice(("none", "coffers", "room")),
        "finish": {
            "kind": random.choice(("none", "paint", "primer_and_paint")),
            "paint_coats": random.randint(1, 4),
            "paint_coverage": f"{random.randint(250, 450)} ft2/gal",
        },
    }
