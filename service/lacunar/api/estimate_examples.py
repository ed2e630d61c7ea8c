"""What an estimate can be asked for with, in the description. All prices are invented.

The tests run every one.
"""

from collections.abc import Mapping
from typing import Any

from lacunar.api import ceiling_examples

_DEN = ceiling_examples.EXAMPLES["three_numbers"]["value"]
_CROWNED = {**_DEN, "crown": {"face": "3 1/4", "spring_from_wall": 38, "method": "coped_in_place"}}

EXAMPLES: Mapping[str, Mapping[str, Any]] = {
    "materials_and_labor": {
        "summary": "Invented prices by name and by kind, labor in hours, a markup",
        "value": {
            "ceiling": _DEN,
            "prices": {
                "currency": "USD",
                "materials": [
                    {"of": "1x8", "per": "foot", "price": "2.10", "taxed": True},
                    {"of": "1x6", "per": "board_foot", "price": "3.20", "taxed": True},
                    {"kind": "section", "per": "foot", "price": 0.95, "taxed": True},
                    {"of": "finish nail", "per": "pack", "price": 14, "taxed": True},
                    {"of": "adhesive", "per": "each", "price": "6.40", "taxed": True},
                    {"of": "primer", "per": "pack", "price": 31, "taxed": True},
                    {"of": "paint", "per": "pack", "price": 46, "taxed": True},
                ],
                "labor": {
                    "rate": 55,
                    "work": [
                        {"per": "foot", "of": ["side", "bottom", "backing"], "hours": "0.08"},
                        {"per": "joint", "of": ["cross", "tee", "ell"], "hours": "0.4"},
                        {"per": "set_up", "hours": "0.1"},
                    ],
                },
                "others": [{"name": "Delivery", "per": "job", "price": 85}],
                "overhead": "0.1",
                "contingency": "0.05",
                "markup": "0.2",
                "tax": {"rate": "0.07", "on": "cost"},
            },
        },
    },
    "frames_or_coping": {
        "summary": "Crown coped in place against frames from the bench; a margin",
        "value": {
            "ceilings": [_CROWNED],
            "prices": {
                "currency": "USD",
                "materials": [{"kind": "crown", "per": "foot", "price": "3.60"}],
                "labor": {
                    "rate": 55,
                    "work": [{"per": "joint", "of": ["crown_cope"], "hours": "0.3"}],
                },
                "margin": "0.25",
            },
            "alternates": [
                {"name": "Bench frames", "changes": {"crown": {"method": "bench_frame"}}},
                {
                    "name": "Other crown",
                    "prices": {"materials": [{"kind": "crown", "per": "foot", "price": 2}]},
                },
            ],
        },
    },
}
