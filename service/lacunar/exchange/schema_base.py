"""What all outlines of objects have in common: names that are not known are refused."""

from collections.abc import Mapping
from typing import Any, ClassVar

from marshmallow import EXCLUDE, Schema, ValidationError, validates_schema

from lacunar.exchange.known_names import unknown_name


class SpecSchema(Schema):
    """An object of the spec: names it does not know are refused, with the nearest it does.

    `needed` names what cannot be assumed; `needed_sets` are such names of which one set suffices.
    """

    needed: ClassVar[tuple[str, ...]] = ()
    needed_sets: ClassVar[tuple[tuple[str, ...], ...]] = ()

    class Meta:
        """Unknown names are left to `refuse_unknown_names`, which says more about them."""

        unknown = EXCLUDE

    @validates_schema(pass_original=True, skip_on_field_errors=False)
    def refuse_unknown_names(
        self, data: dict[str, Any], original: Mapping[str, Any], **_: object
    ) -> None:
        """Raise one fault for each name nothing is read from."""
        del data
        unknown = {
            name: unknown_name(name, self.fields).messages
            for name in original
            if name not in self.fields
        }
        if unknown:
            raise ValidationError(unknown)
