"""Cutting problems that show what can be said, in the description. The tests run every one."""

from collections.abc import Mapping
from typing import Any

from lacunar.api import ceiling_examples

_DEN = ceiling_examples.EXAMPLES["three_numbers"]["value"]

EXAMPLES: Mapping[str, Mapping[str, Any]] = {
    "priced_lengths": {
        "summary": "Two products, five and two priced lengths, an offcut on the rack",
        "value": {
            "kerf": "1/8",
            "end_trim": "1/4",
            "stock": [
                {"material": "1x6 poplar", "length": "8 ft", "price": 11.49},
                {"material": "1x6 poplar", "length": "10 ft", "price": 14.99},
                {"material": "1x6 poplar", "length": "12 ft", "price": 17.49},
                {"material": "1x6 poplar", "length": "14 ft", "price": 20.99},
                {"material": "1x6 poplar", "length": "16 ft", "price": 23.49},
                {"material": "crown", "length": "12 ft", "price": "31.80"},
                {"material": "crown", "length": "16 ft", "price": "42.40"},
            ],
            "offcuts": [{"material": "1x6 poplar", "length": 57, "salvage_value": 2}],
            "pieces": [
                {"id": "B1", "material": "1x6 poplar", "length": "48 1/16", "quantity": 12},
                {"id": "B2", "material": "1x6 poplar", "length": "34 5/8", "quantity": 9},
                {"id": "C1", "material": "crown", "length": "47 15/16", "quantity": 24},
            ],
            "materials": [{"name": "crown", "section": "sprung", "miter": 45}],
            "most_lengths": 2,
        },
    },
    "least_length": {
        "summary": "Millimeters, no prices: as little length as can be is bought",
        "value": {
            "units": "mm",
            "kerf": 3,
            "stock": [{"length": 2400}, {"length": 3000}, {"length": 4800}],
            "pieces": [{"length": 1115, "quantity": 16}, {"length": 742.5, "quantity": 8}],
        },
    },
    "sheets": {
        "summary": "Panels from two sizes of sheet, some with their grain held",
        "value": {
            "kerf": "1/8",
            "edge_trim": "1/8",
            "usable_offcut": 12,
            "sheets": [
                {"id": "4x8", "length": 96, "width": 48, "price": 62},
                {"id": "4x10", "length": 120, "width": 48, "price": 84},
            ],
            "panels": [
                {"id": "N1", "length": "41 1/4", "width": "38 1/2", "quantity": 9},
                {
                    "id": "N2",
                    "length": "56 3/8",
                    "width": "22 3/4",
                    "quantity": 6,
                    "grain": "length",
                },
            ],
        },
    },
    "ceiling": {
        "summary": "A ceiling, its parts cut from one priced length of each board",
        "value": {
            "ceiling": _DEN,
            "stock": {"lengths": [{"material": "1x6", "length": "16 ft", "price": 23.49}]},
        },
    },
    "nested_miters": {
        "summary": "Flat casing mitred at both ends, every other piece turned over",
        "value": {
            "kerf": "1/8",
            "stock": [{"material": "casing", "length": "16 ft", "price": 28}],
            "pieces": [{"material": "casing", "length": "40 1/2", "quantity": 20}],
            "materials": [{"name": "casing", "miter": 45, "width": "3 1/2", "nested": True}],
        },
    },
}
