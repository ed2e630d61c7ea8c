"""How layout tests come by a layout: from a spec as it would be sent, or from lengths in inches."""

import json
from collections.abc import Iterator
from dataclasses import fields, is_dataclass
from fractions import Fraction
from typing import Any

from lacunar.exchange.spec_json import read_spec
from lacunar.layout.ceiling_layout import lay_out
from lacunar.layout.records import Layout
from lacunar.measure.figure import Figure
from lacunar.measure.length import Length
from lacunar.model.assumptions import resolve
from lacunar.model.ceiling import Ceiling
from lacunar.model.faults import Fault, SpecRefused

Spec = dict[str, Any]


def inches(text: str) -> Length:
    """`48 1/16` in inches."""
    return Length.of_inches(sum(Fraction(part) for part in text.split()))


def decided(spec: Spec) -> Ceiling:
    """The ceiling a spec asks for."""
    return resolve(read_spec(json.dumps(spec).encode())).ceiling


def laid_out(spec: Spec) -> Layout:
    """The layout of a spec."""
    return lay_out(decided(spec))


def refused(spec: Spec) -> tuple[Fault, ...]:
    """The faults the layout stage refuses a spec with; the model has let it pass."""
    ceiling = decided(spec)
    try:
        lay_out(ceiling)
    except SpecRefused as refusal:
        return refusal.faults
    raise AssertionError("the spec was laid out")


def room(length: object, width: object, height: object = 120, **more: object) -> Spec:
    """A room, in inches unless the lengths say otherwise."""
    return {"length": length, "width": width, "height": height, **more}


def box(sides: str = "1x6", bottom: str = "1x4", **more: object) -> Spec:
    """A box beam with its bottom between the sides and no reveal: 5 in wide, 5 1/2 in deep."""
    return {"sides": sides, "bottom": bottom, "bottom_joint": "between", "reveal": 0, **more}


def run(coffers: object, walls: object = "none", **more: object) -> Spec:
    """A run with the same at both walls."""
    return {"coffers": coffers, "start": walls, "end": walls, **more}


def openings(layout: Layout, name: str = "length") -> list[Length]:
    """The clear openings along a run, in order from the datum."""
    zones = (layout.length if name == "length" else layout.width).zones
    return [opening.value for zone in zones for opening in zone.openings]


def figures_in(record: object) -> Iterator[Figure[Any]]:
    """Every figure anywhere in a record; one that stands in several places comes as often."""
    if isinstance(record, Figure):
        yield record
    elif isinstance(record, tuple):
        for each in record:
            yield from figures_in(each)
    elif is_dataclass(record):
        for field in fields(record):
            yield from figures_in(getattr(record, field.name))
