"""What a material list can be asked for with, in the description. The tests run every one."""

from collections.abc import Mapping
from typing import Any

from lacunar.api import ceiling_examples

_DEN = ceiling_examples.EXAMPLES["three_numbers"]["value"]

EXAMPLES: Mapping[str, Mapping[str, Any]] = {
    "usual_stock": {"summary": "One ceiling; usual lengths are assumed", "value": _DEN},
    "priced_stock": {
        "summary": "Two rooms alike, two priced lengths and an offcut on hand",
        "value": {
            "ceilings": [{**_DEN, "name": "Room 1"}, {**_DEN, "name": "Room 2"}],
            "stock": {
                "kerf": "1/8",
                "end_trim": "1/4",
                "lengths": [
                    {"material": "1x6", "length": "12 ft", "price": 17.49},
                    {"material": "1x6", "length": "16 ft", "price": 23.49},
                ],
                "offcuts": [{"material": "1x6", "length": 57, "salvage_value": 2}],
                "packs": [
                    {"of": "finish nail", "holds": "5000"},
                    {"of": "paint", "holds": "5 gal"},
                ],
            },
        },
    },
}
