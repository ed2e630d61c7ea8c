"""What a take-off can be asked for with, in the published description. The tests run every one."""

from collections.abc import Mapping
from typing import Any

from lacunar.api import ceiling_examples

_DEN = ceiling_examples.EXAMPLES["three_numbers"]["value"]
_METRIC = ceiling_examples.EXAMPLES["metric"]["value"]

EXAMPLES: Mapping[str, Mapping[str, Any]] = {
    "one_ceiling": {"summary": "One ceiling, as a bare spec", "value": _DEN},
    "two_rooms_alike": {
        "summary": "Two rooms alike, pooled: parts share their marks",
        "value": {"ceilings": [{**_DEN, "name": "Room 1"}, {**_DEN, "name": "Room 2"}]},
    },
    "a_list": {
        "summary": "A bare list, allowances and waste as wished",
        "value": [
            {
                **_METRIC,
                "take_off": {
                    "length_allowance": "25 mm",
                    "waste": {"sheets": "0.05"},
                    "finish": {"kind": "paint", "paint_coverage": "9 m2/L"},
                },
            },
        ],
    },
}
