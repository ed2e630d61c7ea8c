"""Flat beams, and members that run skew, sag, are clad, have cleats or end short of a wall.

They change a spec that is already drawn, with a chance of their own, so that all other specs of a
seed stay what they were.
"""

from fractions import Fraction
from random import Random
from typing import Any

from lacunar.measure.notation import read_length
from lacunar.measure.units import Units

FLAT_SHARE = 0.15
MEMBER_SHARE = 0.5
# Which run's members a family cases: the run that its beams divide.
CASES = {"crosswise": "length", "lengthwise": "width"}
# Mouldings on the sides of beams want more side than flat beams have.
ON_SIDES = ("crown", "flat_mouldings")

Spec = dict[str, Any]


class RandomBuilds:
    """Changes to how beams are built and to what they case."""

    def __init__(self, random: Random) -> None:
        self._random = random

    def changed(self, spec: Spec) -> Spec:
        """The spec with its changes."""
        self._units = Units(spec["units"])
        members = spec["room"].get("members", [])
        for member in members:
            if self._chance(MEMBER_SHARE):
                self._change(member, spec["room"])
        cased = {member["on"] for member in members}
        free = [family for family, run in CASES.items() if run not in cased]
        if free and self._chance(FLAT_SHARE):
            self._flatten(spec, free)
        return spec

    def _chance(self, share: float) -> bool:
        return self._random.random() < share

    def _inches(self, written: object) -> Fraction:
        """What a length in the spec measures."""
        if isinstance(written, str):
            return read_length(written, self._units).inches
        return Fraction(str(written)) * self._units.inches_each

    def _length(self, inches: Fraction) -> object:
        if self._units is Units.MILLIMETER:
            return round(inches * Fraction("25.4") * 2) / 2
        return float(inches)

    def _sixteenths(self, low: int, high: int) -> Fraction:
        return Fraction(self._random.randint(low, high), 16)

    def _change(self, member: Spec, room: Spec) -> None:
        center, drop = self._inches(member["center"]), self._inches(member["drop"])
        across = self._inches(room["width" if member["on"] == "length" else "length"])
        if self._chance(0.5):
            member["center_at_end"] = self._length(center + self._sixteenths(-16, 16))
        if self._chance(0.4):
            member["drop_at_end"] = self._length(drop + self._sixteenths(-8, 8))
        if self._chance(0.4):
            member["cladding"] = self._length(self._sixteenths(4, 10))
        if self._chance(0.6):
            member["cleat"] = self._length(self._sixteenths(0, 24))
        if self._chance(0.3):
            member["starts_at"] = self._length(Fraction(round(across / 5)))
        elif self._chance(0.3):
            member["ends_at"] = self._length(Fraction(round(across * 4 / 5)))

    def _flatten(self, spec: Spec, free: list[str]) -> None:
        beams = spec["beams"]
        if beams.get("lengthwise", "same") == "same":
            beams["lengthwise"] = dict(beams["crosswise"])
        for family in self._random.choice(([free[0]], free)):
            beams[family] = self._flat()
        for name in ON_SIDES:
            spec.pop(name, None)

    def _flat(self) -> Spec:
        flat: Spec = {"profile": "flat", "bottom": self._random.choice(("1x4", "1x6", "5/4x6"))}
        if self._chance(0.6):
            flat["upper_board"] = self._random.choice(("1x6", "1x8", "1x10"))
        return flat
