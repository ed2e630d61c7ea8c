"""Specs at the edges of what can be drawn: names in any letters, no beams, full fields."""

import json

import pytest

from lacunar.workflow.check import check_drawings
from lacunar.workflow.prepare import prepare

ROOM = {"length": "20'", "width": "15'", "height": "9'"}
MEMBER = {"on": "length", "center": "10'", "width": "4", "drop": "6"}
NONE = {"coffers": 1, "start": "none", "end": "none"}

ODD = {
    "one coffer": {"grid": {"length": {"coffers": 1}, "width": {"coffers": 1}}},
    "no beam at all": {"grid": {"length": NONE, "width": NONE}},
    "a member with a long name": {
        "room": {"members": [{**MEMBER, "name": "Steel beam, north bay"}]}
    },
    "a member named like a coffer": {"room": {"members": [{**MEMBER, "name": "A1"}]}},
    "a member named in signs": {"room": {"members": [{**MEMBER, "name": 'gq/ "<&>"'}]}},
    "members both ways": {
        "room": {
            "members": [
                {**MEMBER, "name": "S1"},
                {**MEMBER, "name": "S2", "on": "width", "center": "7'"},
            ]
        }
    },
    "members of two sizes in one profile": {
        "room": {
            "members": [
                {**MEMBER, "center": "6'"},
                {**MEMBER, "center": "14'", "width": "3 1/2"},
            ]
        }
    },
    "letter paper with a member": {"room": {"members": [MEMBER]}, "drawing": {"paper": "letter"}},
    "full title fields": {
        "name": "W" * 80,
        "drawing": {
            "revision": "WW",
            "number": "Çgjpqy",
            "owner": "W" * 40,
            "status": "Ågjpq (,;/Q)",
        },
    },
    "long names at full size": {
        "name": "W" * 80,
        "drawing": {
            "revision": "WWWW",
            "date": "2026-03-02",
            "mock_up": "tiles",
            "story_poles": "roll",
            "sheets": ["Z-701", "Z-702"],
        },
    },
    "a moulding with a long name": {
        "crown": {"face": "3 1/4"},
        "flat_mouldings": [{"name": "W" * 24, "thickness": "1/4", "width": "4 1/2"}],
        "drawing": {"sheets": ["Z-503"]},
    },
    "names of nothing but spaces": {
        "name": " ",
        "room": {
            "members": [{**MEMBER, "name": "   "}],
            "wall_features": [
                {"kind": "door", "wall": "W1", "center": 60, "width": 32, "name": ""}
            ],
        },
        "flat_mouldings": [{"name": "", "thickness": "1/4", "width": "4 1/2"}],
    },
    "a wall narrower on paper than its neighbors' names": {
        "units": "mm",
        "room": {"length": 2938, "width": 725, "height": 2134},
        "grid": {
            "length": {"coffers": 2, "end": {"soffit": 203}},
            "width": {"coffers": 1, "start": "none", "end": {"soffit": 203}},
        },
        "drawing": {"paper": "tabloid", "second_units": "in", "sheets": ["Z-201"]},
    },
    "a foot square": {"room": {"length": "12", "width": "12", "height": "48"}},
    "joists, no beam": {
        "room": {"joists": {"parallel_to": "width", "first": "8"}},
        "grid": {"length": NONE, "width": NONE},
    },
    "long marks on letter paper": {
        "room": {"length": "13' 1 1/8\"", "width": "14' 7 3/16\""},
        "grid": {
            "length": {"coffers": 5, "start": "full"},
            "width": {"coffers": 4, "start": "full"},
        },
        "beams": {
            "crosswise": {
                "sides": "5/4x6",
                "bottom": {"thickness": 0.75, "width": "4 1/2"},
                "bottom_joint": "under",
                "reveal": "3/16",
                "width": "3 1/4",
            }
        },
        "drawing": {"paper": "letter", "sheets": ["Z-101"]},
    },
    "trusses on letter paper": {
        "room": {
            "joists": {"parallel_to": "length", "first": "5 5/64", "spacing": "24", "kind": "truss"}
        },
        "drawing": {"paper": "letter"},
    },
    "inner coffers held": {"grid": {"length": {"coffers": 5, "held": "48"}}},
    "weighted": {"grid": {"length": {"coffers": 3, "weights": [1, 2, 1]}}},
    "a beam that lines up": {
        "grid": {"length": {"coffers": [2, 2], "fixed_beams": [{"center": "9' 6\""}]}}
    },
    "hardwood": {
        "beams": {
            "crosswise": {
                "sides": {"nominal": "4/4", "width": "7"},
                "bottom": {"nominal": "4/4", "width": "6"},
            }
        }
    },
}


@pytest.mark.parametrize("name", ODD)
def test_an_odd_ceiling_is_drawn_without_a_finding(name):
    more = ODD[name]
    spec = {**more, "room": {**ROOM, **more.get("room", {})}}
    assert check_drawings(prepare(json.dumps(spec).encode())) == ()
