"""The plain kinds of values in a spec, each as a marshmallow field that refuses with a reason.

A field turns a JSON value into a value of the model, or raises a `ValidationError` that carries
`FieldFault`s; `spec_schema` gives these the JSON pointer of the place they arose at.
"""

import re
from collections.abc import Iterator, Mapping
from contextlib import contextmanager
from contextvars import ContextVar
from dataclasses import dataclass
from datetime import date
from decimal import Decimal
from enum import StrEnum
from fractions import Fraction
from typing import Any, Generic, TypeVar

from marshmallow import Schema, ValidationError, fields

from lacunar.exchange.json_pointer import shown
from lacunar.measure.angle import PARTS_OF_A_DEGREE, Angle
from lacunar.measure.length import Length
from lacunar.measure.notation import LengthTextError, read_length, read_number
from lacunar.measure.rounding import Step
from lacunar.measure.units import Units
from lacunar.model.faults import FigureValue

_SPEC_UNITS: ContextVar[Units] = ContextVar("units of the spec being read")

# The basic plane without what no sheet can print, or would print elsewhere than it stands: control
# characters, line separators, surrogates, and the marks that turn the writing direction.
PRINTABLE = (
    "[ -~\u00a0-\u061b\u061d-\u200d\u2010-\u2027\u202f-\u2065\u206a-\ud7ff"
    "\ue000-\ufefe\uff00-\ufffd]*"
)
"""What a text may consist of: a pattern that JSON Schema's engines read as Python's does."""

RATIO = r"[0-9]{1,9}(/[1-9][0-9]{0,8}|\.[0-9]{1,9})?"
"""How a share is written as text."""

DEGREES = r"[0-9]{1,3}(\.[0-9]{1,9})?( ?°)?"
"""How an angle is written as text."""

FULL_TURN = 360

_PRINTABLE = re.compile(PRINTABLE)
_RATIO = re.compile(RATIO + r"\Z")
_FINEST_RATIO = 10**8
_DEGREES = re.compile(DEGREES + r"\Z")
_DATE = re.compile(r"[0-9]{4}-[0-9]{2}-[0-9]{2}\Z")

Value = TypeVar("Value")
Choice = TypeVar("Choice", bound=StrEnum)


@contextmanager
def reading_in(units: Units) -> Iterator[None]:
    """While this lasts, a length written without a unit is one in `units`."""
    token = _SPEC_UNITS.set(units)
    try:
        yield
    finally:
        _SPEC_UNITS.reset(token)


def units_being_read() -> Units:
    """The units set by `reading_in`."""
    return _SPEC_UNITS.get()


@dataclass(frozen=True, slots=True)
class FieldFault:
    """A `Fault` that does not know its place yet."""

    code: str
    message: str
    remedy: str
    figures: Mapping[str, FigureValue]


def refusal(
    code: str, message: str, remedy: str, figures: Mapping[str, FigureValue] | None = None
) -> ValidationError:
    """The error to raise for one value that does not fit."""
    # An object is refused whole, so that what stands beside it keeps its place in a list.
    return ValidationError([FieldFault(code, message, remedy, figures or {})], valid_data={})


def wrong_type(value: object, wanted: str) -> ValidationError:
    """The error to raise for a value of a wrong JSON type."""
    return refusal(
        "wrong_type",
        f"Here stands {shown(value)}, where {wanted} is wanted.",
        f"Write {wanted}.",
    )


class _NeverNull:
    """A name that is given has a value: leaving out is done by leaving out."""

    def _validate_missing(self, value: object) -> None:
        if value is None:
            raise refusal(
                "null_given",
                "Here stands null, which is no value.",
                "Leave the name out: what is left out is assumed, and listed as assumed.",
            )


class SpecField(_NeverNull, fields.Field[Value], Generic[Value]):
    """A field that reads one kind of value; `read` is what each kind writes."""

    def __init__(self, description: str) -> None:
        super().__init__(metadata={"description": description})

    def read(self, value: object) -> Value:
        """Turn a JSON value into a model value, or raise what `refusal` makes."""
        raise NotImplementedError

    def _deserialize(
        self,
        value: Any,
        attr: str | None,
        data: Mapping[str, Any] | None,
        **kwargs: Any,
    ) -> Value:
        return self.read(value)


class Text(SpecField[str]):
    """One line of text a sheet can print, trimmed, of at most `most` characters."""

    def __init__(self, description: str, most: int) -> None:
        super().__init__(f"{description} At most {most} characters.")
        self.most = most

    def read(self, value: object) -> str:
        """One line of printable text, trimmed."""
        if not isinstance(value, str):
            raise wrong_type(value, "text")
        text = value.strip(" ")
        if len(text) > self.most:
            raise refusal(
                "text_too_long",
                f"The text has {len(text)} characters; there is room for {self.most}.",
                f"Shorten it to {self.most} characters.",
                {"characters": len(text), "most": self.most},
            )
        if not _PRINTABLE.fullmatch(text):
            raise refusal(
                "text_not_printable",
                f"The text {shown(text)} holds a character that cannot be printed on a sheet.",
                "Leave out control characters, line breaks and signs beyond U+FFFF.",
            )
        return text


class IsoDate(Text):
    """A calendar date as ISO 8601 writes it, or empty."""

    def __init__(self, description: str) -> None:
        super().__init__(description, most=10)

    def read(self, value: object) -> str:
        """A date that is in the calendar, or no text at all."""
        text = super().read(value)
        if text and not _is_date(text):
            raise refusal(
                "not_a_date",
                f"{shown(text)} is no calendar date.",
                "Write year, month and day like 2026-03-02.",
            )
        return text


def _is_date(text: str) -> bool:
    try:
        return bool(_DATE.match(text)) and bool(date.fromisoformat(text))
    except ValueError:
        return False


class OneOf(SpecField[Choice]):
    """One of a few words."""

    def __init__(self, description: str, words: type[Choice]) -> None:
        self.words = words
        super().__init__(f"{description} One of {', '.join(words)}.")

    def read(self, value: object) -> Choice:
        """The word, as the model knows it."""
        if not isinstance(value, str):
            raise wrong_type(value, "text")
        try:
            return self.words(value)
        except ValueError:
            raise unknown_word(value, tuple(self.words)) from None


def unknown_word(value: str, words: tuple[str, ...]) -> ValidationError:
    """The error to raise for a word that is not among those known at its place."""
    return refusal(
        "unknown_word",
        f"{shown(value)} is not one of the words known here.",
        f"Write one of {', '.join(words)}.",
        {"known": ", ".join(words)},
    )


class Distance(SpecField[Length]):
    """A length: text in any notation, or a number in the spec's units."""

    def __init__(self, description: str) -> None:
        super().__init__(
            f"{description} [length] A number in the spec's units, or text such as"
            ' "12\'-0 3/16\\"", "48 1/16", "1220.8 mm".'
        )

    def read(self, value: object) -> Length:
        """A length, exactly as written."""
        try:
            if isinstance(value, str):
                return read_length(value, units_being_read())
            if isinstance(value, int | Decimal) and not isinstance(value, bool):
                return read_number(value, units_being_read())
        except LengthTextError as error:
            raise _not_a_length(value, error) from None
        raise wrong_type(value, "a length, as text or as a number")


def _not_a_length(value: object, error: LengthTextError) -> ValidationError:
    figures: dict[str, FigureValue] = {"character": error.position + 1}
    return refusal(
        "length_not_readable",
        f"{shown(value)} is not read as a length: {_sentence(error.reason)}",
        error.remedy,
        figures if isinstance(value, str) else None,
    )


def _sentence(reason: str) -> str:
    """A whole sentence as the part after a colon."""
    return reason[:1].lower() + reason[1:]


class MarkStep(SpecField[Step]):
    """What marks are rounded to."""

    def read(self, value: object) -> Step:
        """One of the steps of the spec's units."""
        if not isinstance(value, str):
            raise wrong_type(value, "text")
        try:
            return Step.read(value, units_being_read())
        except LengthTextError as error:
            raise refusal(
                "step_not_known",
                f"Nothing is marked to {shown(value)}: {_sentence(error.reason)}",
                error.remedy,
            ) from None


class Count(SpecField[int]):
    """A whole number. 3.0 is one as well: JSON knows but one kind of number."""

    def read(self, value: object) -> int:
        """An int."""
        if isinstance(value, Decimal) and value == value.to_integral_value():
            return int(value)
        if isinstance(value, int) and not isinstance(value, bool):
            return value
        raise wrong_type(value, "a whole number")


class Weight(SpecField[Fraction]):
    """A share: a number, or text such as `3/2`."""

    def read(self, value: object) -> Fraction:
        """A share, exactly as written."""
        if isinstance(value, str) and _RATIO.match(value):
            return Fraction(value)
        if isinstance(value, int | Decimal) and not isinstance(value, bool):
            return Fraction(value)
        raise wrong_type(value, "a number or text such as 3/2")


class Ratio(Weight):
    """A plain number such as a specific gravity, of at most 8 decimals."""

    def read(self, value: object) -> Fraction:
        """A number, exactly as written."""
        ratio = super().read(value)
        if ratio.denominator > _FINEST_RATIO:
            raise refusal(
                "ratio_too_fine",
                f"{shown(value)} has more decimals than any such figure is known to.",
                "Write at most 8 decimals.",
            )
        return ratio


class Degrees(SpecField[Angle]):
    """An angle in degrees: a number, or text such as `67.5` or `38°`, of at most 9 decimals."""

    def __init__(self, description: str) -> None:
        super().__init__(f'{description} [degrees] A number, or text such as "67.5".')

    def read(self, value: object) -> Angle:
        """An angle, exactly as written."""
        if isinstance(value, str) and _DEGREES.match(value):
            return Angle.of_degrees(Fraction(value.rstrip("° ")))
        if isinstance(value, bool) or not isinstance(value, int | Decimal):
            raise wrong_type(value, "a number of degrees, such as 38 or 67.5")
        if not 0 <= value <= FULL_TURN:
            raise wrong_type(value, f"a number of degrees from 0 to {FULL_TURN}")
        angle = Angle.of_degrees(value)
        if angle.degrees * PARTS_OF_A_DEGREE % 1:
            raise refusal(
                "angle_too_fine",
                f"{shown(value)} has more decimals than an angle is read with.",
                "Write at most 9 decimals.",
            )
        return angle


def too_many(items: int, most: int) -> ValidationError:
    """The error to raise for a list that is longer than what is laid out."""
    return refusal(
        "too_many",
        f"The list has {items} items; at most {most} are laid out.",
        f"Keep it to {most}, or make several ceilings of it.",
        {"items": items, "most": most},
    )


class ListOf(_NeverNull, fields.List[Any]):
    """A list of at most `most` values of one kind."""

    def __init__(self, inner: fields.Field[Any], description: str, most: int) -> None:
        super().__init__(inner, metadata={"description": f"{description} At most {most}."})
        self.most = most

    def _deserialize(
        self,
        value: Any,
        attr: str | None,
        data: Mapping[str, Any] | None,
        **kwargs: Any,
    ) -> list[Any]:
        if not isinstance(value, list):
            raise wrong_type(value, "a list")
        if len(value) > self.most:
            raise too_many(len(value), self.most)
        return super()._deserialize(value, attr, data, **kwargs)


class ObjectOf(_NeverNull, fields.Nested):
    """An object with the names of a schema."""

    def __init__(self, schema: type[Schema], description: str) -> None:
        super().__init__(schema, metadata={"description": description})

    def _deserialize(self, value: Any, *args: Any, **kwargs: Any) -> Any:
        if not isinstance(value, dict):
            raise wrong_type(value, "an object")
        return super()._deserialize(value, *args, **kwargs)
