"""How lengths are written on sheets: one style a set, chosen by units and marking step."""

from collections.abc import Iterable
from dataclasses import dataclass, replace

from lacunar.measure.length import Length
from lacunar.measure.rounding import Step, finest_step_holding, round_to
from lacunar.measure.units import Units
from lacunar.measure.writing import LengthStyle, decimal_text, write_exact, write_length
from lacunar.model.ceiling import Ceiling
from lacunar.model.defaults import DEFAULTS

_UNIT_NOTES = {
    Units.INCH: "DIMENSIONS IN FEET AND INCHES, MARKED TO ",
    Units.MILLIMETER: "DIMENSIONS IN MILLIMETERS, MARKED TO ",
}
_SECOND = {Units.INCH: "FEET AND INCHES", Units.MILLIMETER: "MILLIMETERS"}


@dataclass(frozen=True, slots=True)
class SheetWording:
    """Units and step of a sheet set; writes every length on it."""

    units: Units
    step: Step
    second_step: Step | None = None

    @classmethod
    def of(cls, ceiling: Ceiling) -> "SheetWording":
        """The wording a ceiling's spec asks for."""
        second = ceiling.drawing.second_units
        return cls(ceiling.units, ceiling.mark_to, DEFAULTS[second].mark_to if second else None)

    def length(self, length: Length) -> str:
        """A length rounded to the marking step, as the sheet prints it: `4'-0 1/16"`, `1 220`."""
        return write_length(length, LengthStyle(self.units, self.step, group_thousands=True))

    def dimension(self, length: Length) -> str:
        """A length as `length` writes it, and in brackets what that is in second units."""
        return self.length(length) + self._in_second(self.rounded(length))

    def detailed_dimension(self, length: Length) -> str:
        """A length as `detail` writes it, and in brackets what that is in second units."""
        return self.detail(length) + self._in_second(self.detailed(length))

    def second(self, length: Length) -> str:
        """A length in the second units alone, empty where there are none."""
        step = self.second_step
        if step is None:
            return ""
        return write_length(length, LengthStyle(step.units, step, group_thousands=True))

    def _in_second(self, written: Length) -> str:
        """The length that is written, not the one behind it: both figures are of one length."""
        return f" [{self.second(written)}]" if self.second_step else ""

    def size(self, length: Length) -> str:
        """A board's thickness or width in inches or mm, to the finer step that holds it exactly."""
        return write_length(length, LengthStyle(self.units, self._finer(length), feet_from=None))

    def detail(self, length: Length) -> str:
        """A length as `length` writes it, but to the finer step that holds it exactly."""
        style = LengthStyle(self.units, self._finer(length), group_thousands=True)
        return write_length(length, style)

    def detailed(self, length: Length) -> Length:
        """The length that `detail` prints."""
        return round_to(length, self._finer(length))

    def _finer(self, length: Length) -> Step:
        """The marking step, or the coarsest finer one of which the length is a whole number."""
        finer = finest_step_holding(length, self.units) or self.step
        return min(finer, self.step, key=lambda step: step.size)

    def holding(self, lengths: Iterable[Length]) -> "SheetWording":
        """The same with a step that holds as many of the lengths exactly as any step does."""
        steps = [self.step, *(self._finer(length) for length in lengths)]
        return replace(self, step=min(steps, key=lambda step: step.size))

    def rounded(self, length: Length) -> Length:
        """The length the sheet prints."""
        return round_to(length, self.step)

    def exact(self, length: Length) -> str:
        """The exact value for `data-value`."""
        return write_exact(length, self.units)

    @property
    def unit_note(self) -> str:
        """The sentence that says what the figures are."""
        note = _UNIT_NOTES[self.units] + self.step.text
        if self.units is Units.INCH:
            note += " IN"
        if self.second_step is None:
            return note
        return f"{note}; [{_SECOND[self.second_step.units]}] FOR COMPARISON ONLY"


def decimal_mm(length: Length) -> str:
    """Millimeters with six decimals for `data-…-mm`: enough to check by, never to build by."""
    return decimal_text(length.millimeters)
