"""A layout as JSON: every length exact and in decimals, and with `trace` the reason of each."""

from collections.abc import Mapping
from dataclasses import dataclass, field, fields, is_dataclass
from decimal import Decimal
from enum import Enum
from typing import Any

from lacunar.exchange.angle_json import angle_to_json
from lacunar.exchange.ceiling_json import ceiling_to_json
from lacunar.exchange.length_json import decimal_number, length_to_json
from lacunar.layout.records import Layout
from lacunar.measure.angle import Angle
from lacunar.measure.figure import Figure, Operand
from lacunar.measure.length import Length
from lacunar.measure.money import money_text
from lacunar.measure.rounding import Step
from lacunar.model.ceiling import Assumption
from lacunar.model.room import RunName
from lacunar.model.stock import Stock, thickness_range

Json = dict[str, Any]


def layout_to_json(layout: Layout, assumptions: tuple[Assumption, ...], *, trace: bool) -> Json:
    """Turn a layout into JSON values; the same layout always gives the same.

    The records of `layout.records` become objects under their own field names. A length, figure or
    not, is what `length_to_json` makes, with `text` rounded to the ceiling's marking step; a count
    is `{"count": 4}`, any other number `{"exact": "21/50", "decimal": 0.42}`; an angle is
    `{"exact": "38 deg", "text": "38°", "degrees": 38}`, its text to a tenth of a degree. A figure
    that rests on something rounded for want of an exact form also has `"approximate": true`; with
    `trace` each has its `rule`, `formula` and `operands`.
    """
    write = RecordWriter(layout.ceiling.mark_to, trace)
    return {
        "ceiling": ceiling_to_json(layout.ceiling),
        "outline": write.value(layout.outline),
        "runs": {str(name): write.value(layout.run(name)) for name in RunName},
        "beams": write.value(layout.beams),
        "wall_beams": write.value(layout.wall_beams),
        "coffers": write.value(layout.coffers),
        "grid_id": layout.grid_id,
        "profiles": write.value(layout.profiles),
        "panel": {
            "kind": str(layout.ceiling.panel.kind),
            "pieces": write.value(layout.panels),
            "boards": write.value(layout.boards),
        },
        "sheet_rips": write.value(layout.sheet_rips),
        "mouldings": write.value(layout.mouldings),
        "headroom": write.value(layout.headroom),
        "heights": write.value(layout.heights),
        "levels": write.value(layout.levels),
        "backing": write.value(layout.backing),
        "marks": write.value(layout.marks),
        "casing_choices": write.value(layout.casing_choices),
        "fitting": write.value(layout.fitting),
        "crossings": write.value(layout.crossings),
        "pieces": write.value(layout.pieces),
        "ceiling_items": write.value(layout.items),
        "wall_features": write.value(layout.wall_features),
        "measured_openings": write.value(layout.measured_openings),
        "crooked": write.value(layout.crooked),
        "followed": write.value(layout.followed),
        "outlined": write.value(layout.outlined),
        "cautions": write.value(layout.cautions),
        "assumptions": write.value(assumptions),
    }


@dataclass(frozen=True, slots=True)
class RecordWriter:
    """Turns records and the values they are made of into JSON values.

    `step` is what texts of lengths are rounded to; with `trace` each figure tells its reason.
    """

    step: Step
    trace: bool
    _known: dict[Length, Json] = field(default_factory=dict)

    def value(self, value: object) -> Any:
        """Anything a record can hold, as a JSON value."""
        match value:
            case Figure():
                return self._figure(value)
            case Length():
                return self._length(value)
            case Angle():
                return angle_to_json(value)
            case Mapping():
                return {name: self.value(each) for name, each in value.items()}
            case tuple():
                return [self.value(each) for each in value]
        return self._plain(value)

    def _plain(self, value: object) -> Any:
        match value:
            case Enum():
                return str(value.value)
            case None | bool() | int() | str():
                return value
            case Decimal():
                return money_text(value)
            case Stock():
                return self._stock(value)
        return self.record(value)

    def record(self, record: object) -> Json:
        """A record as an object under its own field names."""
        if not is_dataclass(record) or isinstance(record, type):
            raise TypeError(f"a {type(record).__name__} has no JSON form")
        return {each.name: self.value(getattr(record, each.name)) for each in fields(record)}

    def _stock(self, stock: Stock) -> Json:
        written = self.record(stock)
        if (bounds := thickness_range(stock)) is not None:
            least, most = bounds
            written["thickness_range"] = {"least": self.value(least), "most": self.value(most)}
        return written

    def _length(self, length: Length) -> Json:
        """A length, worked out once: in a layout most of them stand in several places."""
        if length not in self._known:
            self._known[length] = length_to_json(length, self.step)
        return dict(self._known[length])

    def _figure(self, figure: Figure[Any]) -> Json:
        written = self._operand(figure.value)
        if figure.approximate:
            written["approximate"] = True
        if self.trace:
            written["rule"] = figure.rule.name
            written["formula"] = figure.rule.formula
            written["operands"] = {name: self._operand(each) for name, each in figure.operands}
        return written

    def _operand(self, value: Operand) -> Json:
        if isinstance(value, Length):
            return self._length(value)
        if isinstance(value, Angle):
            return angle_to_json(value)
        if isinstance(value, int):
            return {"count": value}
        if isinstance(value, Decimal):
            return {"amount": money_text(value)}
        return {"exact": str(value), "decimal": decimal_number(value)}
