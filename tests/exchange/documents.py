"""Spec documents for tests of reading and writing: the least there is, and one that says much."""

import json
from typing import Any

from lacunar.exchange.spec_json import read_spec
from lacunar.model.assumptions import Resolution, resolve
from lacunar.model.faults import Fault, SpecRefused

Document = dict[str, Any]

LEAST: Document = {"room": {"length": 240, "width": "15 ft", "height": "9'"}}

FULL: Document = {
    "name": "Reading room",
    "units": "in",
    "mark_to": "1/32",
    "room": {
        "length": "28' 4\"",
        "width": "16'",
        "height": "9' 6\"",
        "measured_to": "framing",
        "wall_finish": {"W1": "1/2", "W2": "5/8", "W3": "1/2", "W4": "5/8"},
        "headroom": "7'",
        "code_edition": "Model code of 2018, R305",
        "joists": {
            "parallel_to": "width",
            "spacing": "19.2",
            "first": "9 5/8",
            "width": "3 1/2",
            "kind": "truss",
            "ceiling": "open",
            "existing_finish": "5/8",
            "species": "southern_pine",
        },
        "members": [
            {
                "name": "S1",
                "on": "length",
                "center": "14' 2\"",
                "width": "3 1/2",
                "drop": 6,
                "casing": "shift_to_equal",
                "clearance": "3/8",
                "cased_width": "8",
            }
        ],
    },
    "beams": {
        "crosswise": {
            "profile": "box",
            "sides": "5/4x10",
            "bottom": {"nominal": "4/4", "width": "9 1/2"},
            "bottom_joint": "under",
            "overhang": "1/4",
            "width": "6 1/4",
        },
        "lengthwise": {"sides": {"thickness": "3/4", "width": "9"}, "bottom": "3/4 sheet"},
        "through": "crosswise",
        "depth": "stepped",
    },
    "grid": {
        "length": {
            "coffers": [2, 1, 2],
            "start": {"soffit": "12", "then": "half"},
            "end": "full",
            "fixed_beams": [{"center": "20 ft", "width": "7 1/2"}],
        },
        "width": {"coffers": 3, "weights": [1, 1.5, "3/2"], "start": "none"},
    },
    "panel": {"kind": "sheet_goods", "sheet": {"width": 48, "length": 120}, "gap": "1/16"},
    "fixing": {
        "between_joists": "blocking",
        "fastener": "lag_screw",
        "size": "5/16",
        "length": "4",
        "at_crossing": 1,
        "least_penetration": "1 1/4",
        "shim": "1/8",
        "block_through": "1",
        "block_spacing": "32",
        "end_distance": "3",
        "service": "wet",
        "trim": {"species": "cherry", "moisture": 0.08},
        "backing": {"gravity": "9/20", "moisture": "3/20"},
        "panel_gravity": 0.7,
    },
    "take_off": {
        "length_allowance": "1/2",
        "width_allowance": 0.125,
        "blocking": {"thickness": 1.5, "width": "3 1/2"},
        "cleat_width": 3,
        "waste": {"beams": 0.15, "finish": "1/20"},
        "nail_spacing": {"sides": 14, "boards": "15"},
        "adhesive": {"bead_per_cartridge": "28 ft", "bead_spacing": 12},
        "insulation": "room",
        "finish": {
            "kind": "paint",
            "primer_coats": 2,
            "paint_coats": 3,
            "primer_coverage": "5.5 m2/L",
            "paint_coverage": "380 ft2/gal",
        },
    },
    "stock": {"kerf": "3/32"},
    "drawing": {"paper": "arch_c", "number": "RR-7", "revision": "C", "date": "2026-09-30"},
}


def as_bytes(document: object) -> bytes:
    """The document as it would be sent."""
    return json.dumps(document).encode()


def resolved(document: object) -> Resolution:
    """The ceiling a document asks for."""
    return resolve(read_spec(as_bytes(document)))


def faults_of(document: object) -> tuple[Fault, ...]:
    """The faults of a document; none if it can be read."""
    try:
        read_spec(document if isinstance(document, bytes) else as_bytes(document))
    except SpecRefused as refused:
        return refused.faults
    return ()


def codes_at(document: object) -> dict[str, set[str]]:
    """The codes of a document's faults, by pointer."""
    found: dict[str, set[str]] = {}
    for fault in faults_of(document):
        found.setdefault(fault.pointer, set()).add(fault.code)
    return found


def with_changes(document: Document, changes: dict[str, Any]) -> Document:
    """A document with other values at some paths, such as `room.members.0.drop`."""
    changed: Document = json.loads(json.dumps(document))
    for path, value in changes.items():
        *way, last = path.split(".")
        place: Any = changed
        for step in way:
            place = place[int(step)] if isinstance(place, list) else place.setdefault(step, {})
        place[int(last) if isinstance(place, list) else last] = value
    return changed
