"""The section of a spec that a take-off goes by: read into the model, and written again."""

from collections.abc import Callable, Mapping
from dataclasses import fields
from typing import Any

from lacunar.measure.length import Length
from lacunar.model.stock import Stock
from lacunar.model.take_off import (
    Adhesive,
    AdhesiveSpec,
    FinishSpec,
    NailSpacing,
    NailSpacingSpec,
    TakeOff,
    TakeOffSpec,
    Waste,
    WasteSpec,
)

Json = dict[str, Any]

_PARTS = {
    "waste": WasteSpec,
    "nail_spacing": NailSpacingSpec,
    "adhesive": AdhesiveSpec,
    "finish": FinishSpec,
}


def take_off_spec(parts: Mapping[str, Any]) -> TakeOffSpec:
    """Turn the section as it was read, name by name, into what was asked for."""
    made = {name: made_of(**parts[name]) for name, made_of in _PARTS.items() if name in parts}
    return TakeOffSpec(**{**parts, **made})


def take_off_to_json(
    take_off: TakeOff, length: Callable[[Length], str], stock: Callable[[Stock], str | Json]
) -> Json:
    """Turn what a take-off goes by into its section of a spec.

    Parameters: `take_off`; `length` and `stock`, which write these.
    """
    finish = take_off.finish
    return {
        "length_allowance": length(take_off.length_allowance),
        "width_allowance": length(take_off.width_allowance),
        "blocking": stock(take_off.blocking),
        "cleat_width": length(take_off.cleat_width),
        "waste": _each(take_off.waste, str),
        "nail_spacing": _each(take_off.nail_spacing, length),
        "adhesive": _each(take_off.adhesive, length),
        "insulation": str(take_off.insulation),
        "finish": {
            "kind": str(finish.kind),
            "primer_coats": finish.primer_coats,
            "paint_coats": finish.paint_coats,
            "primer_coverage": finish.primer_coverage.text,
            "paint_coverage": finish.paint_coverage.text,
        },
    }


def _each(record: Waste | NailSpacing | Adhesive, write: Callable[[Any], str]) -> Json:
    return {each.name: write(getattr(record, each.name)) for each in fields(record)}
