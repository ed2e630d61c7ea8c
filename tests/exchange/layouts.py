"""Layouts of the specs in `documents` and of two more, which together have every kind of figure."""

from functools import cache

from lacunar.layout.ceiling_layout import lay_out
from lacunar.layout.records import Layout
from lacunar.model.ceiling import Assumption
from tests.exchange.documents import FULL, LEAST, Document, resolved

METRIC: Document = {
    "units": "mm",
    "room": {"length": 6200, "width": 4801, "height": 2500, "measured_to": "framing"},
    "grid": {"width": {"held": 1100, "coffers": 4}, "length": {"weights": [1, "4/3", 1]}},
    "panel": {"kind": "sheet_goods", "seat": "above_backing"},
    "beams": {
        "crosswise": {"sides": "23/32 sheet", "bottom": "23/32 sheet", "width": 140, "drop": 150}
    },
}
SHIFTED: Document = {
    "room": {
        "length": "20' 3 1/2\"",
        "width": "14' 10\"",
        "height": "9' 1\"",
        "members": [
            {
                "on": "length",
                "center": 121,
                "width": 3.5,
                "drop": 5.5,
                "casing": "shift_to_equal",
                "cleat": 0,
            }
        ],
    },
    "grid": {"length": {"coffers": [2, 2]}, "width": {"largest_opening": 50, "parity": "odd"}},
}
BOARDED: Document = {
    "room": {"length": 240, "width": 190, "height": "9'"},
    "beams": {"crosswise": {"sides": {"nominal": "3/4 sheet", "width": 6}}},
    "grid": {"length": {"weights": [1, 2, 1]}},
    "panel": {
        "board": "1x8",
        "movement": {
            "species": "cherry",
            "now": 9,
            "driest": {"humidity": 30, "temperature": 70},
            "trim_cover": "1/4",
        },
    },
}
SEAMED: Document = {
    "room": {"length": 240, "width": 190, "height": "9'"},
    "grid": {"length": {"coffers": 2}, "width": {"coffers": 1}},
    "panel": {"grain": "width", "seams": "sheet_edge"},
}
FRAMED: Document = {
    "units": "mm",
    "room": {
        "length": 5200,
        "width": 4100,
        "height": 2700,
        "joists": {"parallel_to": "length", "spacing": 400, "first": 180},
    },
    "grid": {"length": {"coffers": 4, "end": "none"}, "width": {"start": {"soffit": 200}}},
    "panel": {"kind": "sheet_goods", "seat": "above_backing"},
    "fixing": {"fastener": "nail"},
}
CROWNED: Document = {
    "room": {"length": "16'", "width": "12'", "height": "9'"},
    "grid": {"length": {"coffers": 3, "start": "none"}, "width": {"coffers": 2}},
    "beams": {"crosswise": {"sides": "1x8", "bottom_joint": "under", "overhang": "1/4"}},
    "crown": {"face": "3 1/4", "spring_from_wall": 38},
    "flat_mouldings": [
        {"name": "Frieze", "thickness": "3/8", "width": "3 1/2"},
        {"name": "Base cap", "at": "bottom_edge", "thickness": "5/8", "width": "1 1/8"},
    ],
}
COPED: Document = {
    "units": "mm",
    "room": {"length": 4800, "width": 3600, "height": 2700},
    "crown": {"drop": 63, "projection": 50, "spring_from_wall": 38, "method": "coped_in_place"},
}
_SQUARE: Document = {
    "room": {"length": "16'", "width": "12'", "height": "9'"},
    "grid": {"length": {"coffers": 3}, "width": {"coffers": 2}},
    "crown": {"face": "3 1/4", "spring_from_wall": 38},
    "panel": {"kind": "boards", "board": "1x6"},
}
_CROOKED = {"W1": "65 1/4", "W2": "57 1/2", "W3": "65 3/4", "W4": "57 3/4"}
_SIDES = {"W1": "65 1/2", "W2": "57 1/2", "W3": "65 1/2"}
MEASURED: Document = {
    **_SQUARE,
    "measured_openings": {
        "grid": lay_out(resolved(_SQUARE).ceiling).grid_id,
        "coffers": [
            {
                "coffer": "A2",
                "sides": _CROOKED,
                "diagonals": {"rising": "87 3/8", "falling": "87 1/8"},
            },
            {"coffer": "B3", "sides": _SIDES},
        ],
        "out_of_square": "mitred_to_corners",
        "closing_limit": "1/16",
    },
}
LEVELED: Document = {
    "room": {
        "length": 240,
        "width": 180,
        "measured_to": "framing",
        "stations": [
            {"name": "door", "length": 119, "width": 2, "height": 108.5},
            {"length": 121, "width": 60, "height": "107 7/8"},
            {"length": 120, "width": 178, "height": "108 3/8"},
            {"length": 3, "width": 90, "height": "108 1/16"},
        ],
        "leveling": {"uneven": "1/8"},
    },
    "beams": {"crosswise": {"sides": "1x8", "bottom": "1x6", "bottom_joint": "under"}},
    "grid": {"length": {"coffers": 4}, "width": {"coffers": 3}},
}
LEVEL: Document = {
    **LEVELED,
    "panel": {"kind": "sheet_goods", "seat": "between_backing"},
    "room": {**LEVELED["room"], "leveling": {"reach": "2 in"}},
    "fixing": {"shim": "1/4"},
}
TAPED: Document = {
    "room": {
        "height": 108,
        "measured_to": "framing",
        "survey": {
            "sides": {"W1": 144, "W2": "180 1/8", "W3": "144 1/4", "W4": 180},
            "diagonals": {"rising": "230 3/4", "falling": "230 1/4"},
            "bows": {"W2": {"in": "1/4"}, "W3": {"out": "3/8"}},
        },
        "crooked": {"control": "W4"},
        "joists": {"parallel_to": "width", "first": "1/8"},
    },
    "grid": {"length": {"coffers": 4}, "width": {"coffers": 3}},
}
BALANCED: Document = {
    "units": "mm",
    "room": {
        "height": 2700,
        "survey": {
            "sides": {"W1": 3600, "W2": 4806, "W3": 3600, "W4": 4800},
            "angles": {"W4-W1": "89.99", "W3-W4": 90, "W2-W3": "90.02", "W1-W2": 90},
        },
    },
    "grid": {"length": {"coffers": 3}, "width": {"coffers": 2}},
}
FOLLOWED: Document = {
    **TAPED,
    "room": {
        **TAPED["room"],
        "crooked": {"mode": "follow_walls", "out_of_square": "mitred_to_corners"},
    },
    "crown": {"face": "2 1/2"},
    "panel": {"kind": "boards", "cover": 5},
}
SPLIT: Document = {
    **TAPED,
    "room": {
        **TAPED["room"],
        "members": [{"name": "S1", "on": "width", "center": 70, "width": 4, "drop": 4}],
        "crooked": {"control": "S1", "excess": "split"},
    },
    "beams": {"crosswise": {"sides": "1x8", "bottom": "1x12"}, "lengthwise": "same"},
}
OUTLINED: Document = {
    "room": {
        "height": 108,
        "outline": {
            "sides": [
                {"length": 168},
                {"length": 72},
                {"length": 24, "corner": 270},
                {"length": "60 1/8", "corner": 270},
                {"length": 24},
                {"length": 84},
                {"length": 120, "corner": 135},
                {"length": "67 7/8", "corner": 135},
                {"length": 168},
            ],
            "diagonals": [{"from_corner": 1, "to_corner": 6, "length": "213 5/8"}],
            "walls": [{"wall": "W6", "stands": "full"}],
            "surfaces": [{"side": 2, "finish": "5/8", "bow": {"in": "1/4"}}, {"side": 8}],
        },
        "measured_to": "framing",
        "columns": [{"x": 90, "y": 50, "length": 10, "width": 12}],
        "ceiling_items": [{"kind": "light", "x": 96, "y": 55, "diameter": 6}],
        "wall_features": [{"kind": "door", "wall": "W6", "center": 12, "width": 18, "head": 80}],
    },
    "grid": {"length": {"coffers": 4}, "width": {"coffers": 3}},
    "crown": {"face": "2 1/2"},
    "panel": {"kind": "boards", "cover": 5},
    "fixing": {},
}
DOCUMENTS = {
    "least": LEAST,
    "full": FULL,
    "metric": METRIC,
    "shifted": SHIFTED,
    "boarded": BOARDED,
    "seamed": SEAMED,
    "framed": FRAMED,
    "crowned": CROWNED,
    "coped": COPED,
    "measured": MEASURED,
    "leveled": LEVELED,
    "level": LEVEL,
    "taped": TAPED,
    "balanced": BALANCED,
    "followed": FOLLOWED,
    "split": SPLIT,
    "outlined": OUTLINED,
}


@cache
def laid_out(name: str) -> tuple[Layout, tuple[Assumption, ...]]:
    """A layout and what was assumed for it."""
    resolution = resolved(DOCUMENTS[name])
    return lay_out(resolution.ceiling), resolution.assumptions
