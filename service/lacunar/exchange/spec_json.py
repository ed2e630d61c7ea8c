"""The bytes of a spec to a `CeilingSpec`, or every fault in them at once."""

from collections.abc import Iterator, Mapping
from typing import Any

from marshmallow import ValidationError

from lacunar.exchange.column_schema import columns_read
from lacunar.exchange.fields import FieldFault, reading_in, wrong_type
from lacunar.exchange.json_pointer import pointer_to
from lacunar.exchange.outline_json import diagonal_read, outlined
from lacunar.exchange.shaped_fields import SAME
from lacunar.exchange.spec_schema import CeilingSchema
from lacunar.exchange.strict_json import JsonValue, read_json
from lacunar.exchange.survey_json import surveyed
from lacunar.exchange.take_off_section import take_off_spec
from lacunar.measure.units import Units
from lacunar.model.ceiling_items import ItemSpec, WallFeatureSpec
from lacunar.model.drawing import SheetNumber
from lacunar.model.faults import Fault, SpecRefused
from lacunar.model.look import LookSpec
from lacunar.model.moulding import CrownSpec, FlatMouldingSpec
from lacunar.model.openings import CutSideTaken, MeasuredCofferSpec, OpeningsSpec
from lacunar.model.room import WALLS
from lacunar.model.rules import check
from lacunar.model.spec import (
    BeamsSpec,
    BoxSpec,
    CeilingSpec,
    DrawingSpec,
    FixedBeamSpec,
    FixingSpec,
    GridSpec,
    JoistsSpec,
    MemberSpec,
    MovementSpec,
    PanelSpec,
    RoomSpec,
    RunSpec,
    StockSpec,
    WoodSpec,
)
from lacunar.model.stations import LevelingSpec, StationSpec

Parts = Mapping[str, Any]

_SCHEMA = CeilingSchema()


def read_spec(document: bytes) -> CeilingSpec:
    """Turn the bytes of a JSON document into the ceiling as it was asked for.

    Raises `SpecRefused` with all faults at once: either those of the JSON text itself, or those of
    every value that does not fit the outline together with those the model's rules find in what
    does.

    >>> read_spec(b'{"room": {"length": "20 ft", "width": 178, "height": 109}}').room.width
    Length(178 in)
    """
    return spec_from(read_json(document))


def spec_from(value: JsonValue) -> CeilingSpec:
    """Turn an already read JSON value into a `CeilingSpec`; raises as `read_spec` does."""
    if not isinstance(value, dict):
        raise SpecRefused(faults_from(wrong_type(value, "an object").messages))
    with reading_in(units_told(value)):
        parts, misfits = _fitted(value)
    if any(fault.pointer == "/units" for fault in misfits):
        # Which steps there are follows from the units.
        misfits = tuple(fault for fault in misfits if fault.pointer != "/mark_to")
    spec = _ceiling(parts)
    faults = (*misfits, *_broken_rules(spec, misfits))
    if faults:
        raise SpecRefused(faults)
    return spec


def units_of_document(document: bytes) -> Units:
    """The units a document says its lengths are in; inches where it cannot be read that far.

    Of several ceilings, those of the first.

    >>> units_of_document(b'{"units": "mm"}'), units_of_document(b"[")
    (<Units.MILLIMETER: 'mm'>, <Units.INCH: 'in'>)
    """
    try:
        value = read_json(document)
    except SpecRefused:
        return Units.INCH
    for name in ("ceiling", "ceilings"):
        if isinstance(value, dict) and name in value:
            value = value[name]
    if isinstance(value, list) and value:
        value = value[0]
    return units_told(value) if isinstance(value, dict) else Units.INCH


def faults_from(messages: object, path: tuple[str | int, ...] = ()) -> Iterator[Fault]:
    """The faults in what a `ValidationError` carries, each with the pointer it was found at."""
    if isinstance(messages, Mapping):
        for name, below in messages.items():
            yield from faults_from(below, path if name == "_schema" else (*path, name))
    elif isinstance(messages, list):
        for found in messages:
            assert isinstance(found, FieldFault), found
            yield Fault(found.code, pointer_to(path), found.message, found.remedy, found.figures)


def units_told(value: dict[str, JsonValue]) -> Units:
    """The units a document says lengths are in; an unreadable word is told as its own fault."""
    try:
        return Units(str(value.get("units", Units.INCH)))
    except ValueError:
        return Units.INCH


def _fitted(value: dict[str, JsonValue]) -> tuple[Parts, tuple[Fault, ...]]:
    try:
        return _SCHEMA.load(value), ()
    except ValidationError as error:
        parts = error.valid_data if isinstance(error.valid_data, dict) else {}
        return parts, tuple(faults_from(error.messages))


def _broken_rules(spec: CeilingSpec, misfits: tuple[Fault, ...]) -> tuple[Fault, ...]:
    unsound = frozenset(fault.pointer for fault in misfits)
    if "/units" in unsound:
        return ()  # no bare number can be judged
    return check(spec, unsound)


def _ceiling(parts: Parts) -> CeilingSpec:
    plain = {name: parts[name] for name in ("name", "units", "mark_to") if name in parts}
    return CeilingSpec(
        room=_room(parts.get("room", {})),
        beams=_beams(parts.get("beams", {})),
        grid=GridSpec(**{name: _run(run) for name, run in parts.get("grid", {}).items()}),
        panel=_panel(parts["panel"]) if "panel" in parts else None,
        fixing=_fixing(parts["fixing"]) if "fixing" in parts else None,
        stock=StockSpec(**parts.get("stock", {})),
        drawing=_drawing(parts.get("drawing", {})),
        crown=CrownSpec(**parts["crown"]) if "crown" in parts else None,
        flat_mouldings=tuple(FlatMouldingSpec(**each) for each in parts.get("flat_mouldings", ())),
        measured_openings=(
            _openings(parts["measured_openings"]) if "measured_openings" in parts else None
        ),
        take_off=take_off_spec(parts["take_off"]) if "take_off" in parts else None,
        **plain,
    )


def _room(parts: Parts) -> RoomSpec:
    members = tuple(
        MemberSpec(**{**dict.fromkeys(("on", "center", "width", "drop")), **member})
        for member in parts.get("members", ())
    )
    joists = JoistsSpec(**parts["joists"]) if "joists" in parts else None
    items = tuple(
        ItemSpec(**{**item, "coffers": tuple(item.get("coffers", ()))})
        for item in parts.get("ceiling_items", ())
    )
    features = tuple(WallFeatureSpec(**each) for each in parts.get("wall_features", ()))
    read = {
        **surveyed(parts),
        **outlined(parts),
        "members": members,
        "columns": columns_read(parts),
        "joists": joists,
        "stations": tuple(StationSpec(**each) for each in parts.get("stations", ())),
        "leveling": LevelingSpec(**parts["leveling"]) if "leveling" in parts else None,
        "ceiling_items": items,
        "wall_features": features,
    }
    return RoomSpec(**{**parts, **read})


def _fixing(parts: Parts) -> FixingSpec:
    woods = {name: WoodSpec(**parts[name]) for name in ("trim", "backing") if name in parts}
    return FixingSpec(**{**parts, **woods})


def _beams(parts: Parts) -> BeamsSpec:
    crosswise = _box(parts.get("crosswise"))
    lengthwise = parts.get("lengthwise")
    return BeamsSpec(
        crosswise=crosswise,
        # Told to be the same is more than left open: nothing is assumed then.
        lengthwise=(crosswise or BoxSpec()) if lengthwise == SAME else _box(lengthwise),
        through=parts.get("through"),
        depth=parts.get("depth"),
        look=LookSpec(**parts["look"]) if "look" in parts else None,
    )


def _box(parts: Parts | None) -> BoxSpec | None:
    if parts is None:
        return None
    return BoxSpec(**parts)


def _panel(parts: Parts) -> PanelSpec:
    movement = MovementSpec(**parts["movement"]) if "movement" in parts else None
    return PanelSpec(**{**parts, "movement": movement})


def _run(parts: Parts) -> RunSpec:
    fixed = tuple(
        FixedBeamSpec(**{"center": None, **beam}) for beam in parts.get("fixed_beams", ())
    )
    given = {name: part for name, part in parts.items() if name != "weights"}
    weights = tuple(parts["weights"]) if "weights" in parts else None
    return RunSpec(**{**given, "weights": weights, "fixed_beams": fixed})


def _openings(parts: Parts) -> OpeningsSpec:
    coffers = parts.get("coffers")
    measured = None if coffers is None else tuple(_measured_coffer(each) for each in coffers)
    return OpeningsSpec(**{**parts, "coffers": measured})


def _measured_coffer(parts: Parts) -> MeasuredCofferSpec:
    sides = parts.get("sides", {})
    first, second, third, fourth = (sides.get(wall) for wall in WALLS)
    return MeasuredCofferSpec(
        coffer=parts.get("coffer"),
        sides=(first, second, third, fourth),
        cut_sides=tuple(
            CutSideTaken(each.get("side"), each.get("length"))
            for each in parts.get("cut_sides", ())
        ),
        cut_diagonals=tuple(diagonal_read(each) for each in parts.get("cut_diagonals", ())),
        **parts.get("diagonals", {}),
    )


def _drawing(parts: Parts) -> DrawingSpec:
    plain = {name: value for name, value in parts.items() if name != "sheets"}
    if "sheets" not in parts:
        return DrawingSpec(**plain)
    # What could not be read stands in the list as an empty object.
    readable = tuple(number for number in parts["sheets"] if isinstance(number, SheetNumber))
    return DrawingSpec(sheets=readable, **plain)
