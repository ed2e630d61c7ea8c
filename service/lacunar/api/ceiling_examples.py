"""Specs that show what can be said, in the published description. The tests run every one."""

from collections.abc import Mapping
from typing import Any

EXAMPLES: Mapping[str, Mapping[str, Any]] = {
    "three_numbers": {
        "summary": "The least that is enough: the size of the room",
        "value": {"room": {"length": "15' 2 1/2\"", "width": "12' 4\"", "height": "8' 10\""}},
    },
    "cased_member": {
        "summary": "A structural member, cased and shifted so that the coffers come out equal",
        "value": {
            "name": "Music room",
            "units": "in",
            "mark_to": "1/16",
            "room": {
                "length": "20' 3 1/2\"",
                "width": "14' 10\"",
                "height": "9' 1\"",
                "members": [
                    {
                        "name": "S1",
                        "on": "length",
                        "center": "121",
                        "width": "3 1/2",
                        "drop": "5 1/2",
                        "casing": "shift_to_equal",
                        "cleat": "0",
                    }
                ],
            },
            "beams": {
                "crosswise": {"sides": "1x8", "bottom": "1x6", "reveal": "1/4"},
                "lengthwise": "same",
            },
            "grid": {
                "length": {"coffers": [2, 2], "start": "half", "end": "half"},
                "width": {"coffers": 3, "start": "half", "end": "half"},
            },
            "drawing": {"paper": "tabloid", "revision": "A", "date": "2026-03-02"},
        },
    },
    "metric": {
        "summary": "Millimeters, a soffit along one wall, sheet panels",
        "value": {
            "units": "mm",
            "room": {"length": 6200, "width": 4480, "height": "2.7 m"},
            "grid": {"length": {"wished_opening": 1100, "start": {"soffit": 300, "then": "half"}}},
            "panel": {"kind": "sheet_goods", "thickness": 9},
            "drawing": {"paper": "a2"},
        },
    },
}
