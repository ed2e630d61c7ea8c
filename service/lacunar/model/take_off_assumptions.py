"""Decides what a spec leaves open about its take-off, each figure with where it comes from."""

from collections.abc import Mapping
from dataclasses import fields
from fractions import Fraction

from lacunar.measure.length import ZERO, Length
from lacunar.measure.units import Units
from lacunar.measure.writing import decimal_text
from lacunar.model.assuming import Assuming
from lacunar.model.stock import Stock, actual_stock, read_stock
from lacunar.model.take_off import (
    Adhesive,
    AdhesiveSpec,
    Coverage,
    CoverageUnit,
    Finish,
    FinishKind,
    FinishSpec,
    InsulationOver,
    NailSpacing,
    NailSpacingSpec,
    TakeOff,
    TakeOffSpec,
    Waste,
    WasteSpec,
)

_PLACE = "/take_off"
_COMMON = "common practice, no source"
_TENTH = Fraction(1, 10)

# A tenth is what a coverage estimator for boards allows for square-laid ones (WWPA, as reproduced
# in siding guides), what a published case of crown added, and what is usual for all else (common
# practice, no source). What is poured or rolled leaves hardly any.
_WASTE = {
    "beams": (_TENTH, _COMMON),
    "framing": (_TENTH, _COMMON),
    "mouldings": (_TENTH, "a published case of crown added a tenth; else common practice"),
    "sheets": (_TENTH, _COMMON),
    "boards": (_TENTH, "a published coverage estimator allows a tenth for square-laid boards"),
    "finish": (Fraction(0), "coverages are practical ones, waste in them"),
}


def _inches(amount: int | Fraction) -> Length:
    return Length.of_inches(amount)


def _millimeters(amount: int) -> Length:
    return Length.of_millimeters(amount)


# Spacings, widths and beads: common practice, no source, but for bottoms, which a published case of
# prefinished ones nailed every 20 in. A bead of 1/4 in out of 10 fluid ounces is 30.6 ft long by
# arithmetic: 18.05 cubic inches over 0.0491 square inches.
_LENGTHS: Mapping[Units, Mapping[str, Length]] = {
    Units.INCH: {
        "cleat_width": _inches(Fraction(7, 2)),
        "sides": _inches(16),
        "bottoms": _inches(20),
        "mouldings": _inches(16),
        "panels": _inches(12),
        "boards": _inches(16),
        "bead_per_cartridge": _inches(360),
        "bead_spacing": _inches(16),
    },
    Units.MILLIMETER: {
        "cleat_width": _millimeters(90),
        "sides": _millimeters(400),
        "bottoms": _millimeters(500),
        "mouldings": _millimeters(400),
        "panels": _millimeters(300),
        "boards": _millimeters(400),
        "bead_per_cartridge": _millimeters(9000),
        "bead_spacing": _millimeters(400),
    },
}
_BLOCKING: Mapping[Units, Stock] = {
    Units.INCH: read_stock("2x4"),
    Units.MILLIMETER: actual_stock(_millimeters(45), _millimeters(95), Units.MILLIMETER),
}
# Two public guides to coverage give 350 to 400 square feet to a gallon of wall and trim paint, and
# 200 to 300 of primer (8.6 to 9.8 square meters to a liter of paint); the lower end is taken.
_COVERAGES: Mapping[Units, Mapping[str, Coverage]] = {
    Units.INCH: {
        "primer": Coverage(Fraction(200), CoverageUnit.SQUARE_FEET_PER_GALLON),
        "paint": Coverage(Fraction(350), CoverageUnit.SQUARE_FEET_PER_GALLON),
    },
    Units.MILLIMETER: {
        "primer": Coverage(Fraction(5), CoverageUnit.SQUARE_METERS_PER_LITER),
        "paint": Coverage(Fraction(17, 2), CoverageUnit.SQUARE_METERS_PER_LITER),
    },
}
_NAILED = {
    "bottoms": "a published case nailed them every 20 in",
    "boards": f"at each joist; {_COMMON}",
}


def decide_take_off(said: TakeOffSpec | None, units: Units, assuming: Assuming) -> TakeOff:
    """Turn what was said of the take-off into a record with nothing open.

    Parameters: `said`, None where nothing was; `units` of the spec, which decide the usual figures;
    `assuming`, which lists what was assumed.
    """
    said = said or TakeOffSpec()
    usual = _LENGTHS[units]
    return TakeOff(
        length_allowance=assuming.settle(
            said.length_allowance, f"{_PLACE}/length_allowance", ZERO, "parts are cut to size"
        ),
        width_allowance=assuming.settle(
            said.width_allowance, f"{_PLACE}/width_allowance", ZERO, "parts are ripped to size"
        ),
        blocking=assuming.settle(
            said.blocking, f"{_PLACE}/blocking", _BLOCKING[units], f"usual framing; {_COMMON}"
        ),
        cleat_width=assuming.settle(
            said.cleat_width, f"{_PLACE}/cleat_width", usual["cleat_width"], _COMMON
        ),
        waste=_waste(said.waste, assuming),
        nail_spacing=_nail_spacing(said.nail_spacing, usual, assuming),
        adhesive=_adhesive(said.adhesive, usual, assuming),
        insulation=assuming.settle(
            said.insulation, f"{_PLACE}/insulation", InsulationOver.NONE, "nobody asked for it"
        ),
        finish=_finish(said.finish, _COVERAGES[units], assuming),
    )


def _waste(said: WasteSpec, assuming: Assuming) -> Waste:
    decided: dict[str, Fraction] = {}
    for name, (usual, reason) in _WASTE.items():
        share = getattr(said, name)
        if share is None:
            assuming.note(f"{_PLACE}/waste/{name}", decimal_text(usual, 2), reason)
        decided[name] = usual if share is None else share
    return Waste(**decided)


def _nail_spacing(
    said: NailSpacingSpec, usual: Mapping[str, Length], assuming: Assuming
) -> NailSpacing:
    return NailSpacing(
        **{
            each.name: assuming.settle(
                getattr(said, each.name),
                f"{_PLACE}/nail_spacing/{each.name}",
                usual[each.name],
                _NAILED.get(each.name, _COMMON),
            )
            for each in fields(NailSpacing)
        }
    )


def _adhesive(said: AdhesiveSpec, usual: Mapping[str, Length], assuming: Assuming) -> Adhesive:
    reasons = {
        "bead_per_cartridge": "a bead of 1/4 in from a cartridge of 10 fluid ounces, by arithmetic",
        "bead_spacing": f"a bead along each joist; {_COMMON}",
    }
    return Adhesive(
        **{
            name: assuming.settle(
                getattr(said, name), f"{_PLACE}/adhesive/{name}", usual[name], reason
            )
            for name, reason in reasons.items()
        }
    )


def _finish(said: FinishSpec, usual: Mapping[str, Coverage], assuming: Assuming) -> Finish:
    place = f"{_PLACE}/finish"
    guides = "the lower end of what public guides to coverage give"
    return Finish(
        kind=assuming.settle(
            said.kind, f"{place}/kind", FinishKind.PRIMER_AND_PAINT, "usual where trim is painted"
        ),
        primer_coats=assuming.settle(said.primer_coats, f"{place}/primer_coats", 1, _COMMON),
        paint_coats=assuming.settle(said.paint_coats, f"{place}/paint_coats", 2, _COMMON),
        primer_coverage=assuming.settle(
            said.primer_coverage, f"{place}/primer_coverage", usual["primer"], guides
        ),
        paint_coverage=assuming.settle(
            said.paint_coverage, f"{place}/paint_coverage", usual["paint"], guides
        ),
    )
