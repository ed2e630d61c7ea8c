"""What options can be asked for with, in the published description. The tests run every one."""

from collections.abc import Mapping
from typing import Any

from lacunar.api import ceiling_examples, estimate_examples

_DEN = ceiling_examples.EXAMPLES["three_numbers"]["value"]
_PRICES = estimate_examples.EXAMPLES["materials_and_labor"]["value"]["prices"]

EXAMPLES: Mapping[str, Mapping[str, Any]] = {
    "three_numbers": {"summary": "A bare spec: all it leaves open is varied", "value": _DEN},
    "with_prices": {
        "summary": "What each option costs by a price list, and ranked by it",
        "value": {
            "ceiling": _DEN,
            "choices": {"weights": {"cost": 2, "squareness": 1}, "most_laid_out": 6},
            "prices": _PRICES,
        },
    },
    "within_limits": {
        "summary": "A family room within stated limits, centered on its fireplace and ranked",
        "value": {
            "ceiling": {
                "room": {
                    "length": "16 ft",
                    "width": "12 ft",
                    "height": "9 ft",
                    "wall_features": [
                        {
                            "kind": "fireplace",
                            "name": "Hearth",
                            "wall": "W2",
                            "center": "8 ft",
                            "width": "5 ft",
                        }
                    ],
                },
                "panel": {"kind": "sheet_goods"},
                "crown": {"face": "3 1/4"},
            },
            "choices": {
                "length_coffers": {"fewest": 2, "most": 5},
                "width_coffers": {"fewest": 2, "most": 4},
                "beam_widths": ["5", "6"],
                "walls": ["half", "full"],
                "crown_lengths": ["12 ft", "16 ft"],
                "weights": {"squareness": 3, "seams": 2, "cuts": 1},
                "most_laid_out": 12,
                "nudges_of": 1,
            },
        },
    },
}
