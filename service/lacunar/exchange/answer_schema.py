"""The shape of answers as JSON Schema, taken from the records they are written from."""

from collections.abc import Mapping
from dataclasses import fields
from decimal import Decimal
from enum import Enum
from fractions import Fraction
from types import NoneType, UnionType
from typing import Any, Literal, Union, get_args, get_origin, get_type_hints

from lacunar.choosing import records as option_records
from lacunar.drawing import sheet_set
from lacunar.exchange import sheet_index
from lacunar.exchange.answer_words import ALL_WORDS
from lacunar.layout import (
    backing_records,
    board_records,
    crossing_records,
    fitting_records,
    followed_records,
    item_records,
    level_records,
    moulding_records,
    opening_records,
    outline_records,
    records,
    survey_records,
)
from lacunar.layout.panels import lone_boards
from lacunar.layout.runs import lone_run
from lacunar.measure import plane
from lacunar.measure.angle import Angle
from lacunar.measure.figure import Figure
from lacunar.measure.length import Length
from lacunar.measure.moisture import Sorption
from lacunar.model.ceiling import Assumption
from lacunar.model.faults import FigureValue
from lacunar.model.published_stock import PublishedSize
from lacunar.model.stock import Stock
from lacunar.takeoff import material_records, part_records, taken_off
from lacunar.takeoff.cutting import plan_records, sheet_records
from lacunar.takeoff.estimate import estimate_records
from lacunar.takeoff.quantities import quantity_records

Json = dict[str, Any]

# The whole layout is put together in `layout_json`, so its record is not among these.
RECORDS: tuple[type, ...] = (
    records.Point,
    records.EndPositions,
    records.RunElement,
    records.Zone,
    records.RunLayout,
    records.ProfilePart,
    records.BeamProfile,
    records.BeamPiece,
    records.CasedMember,
    records.Beam,
    records.WallBeam,
    records.Coffer,
    records.SeamBearing,
    board_records.PanelPlace,
    records.PanelFit,
    moulding_records.SawCut,
    moulding_records.SawSettings,
    moulding_records.RakedMeeting,
    moulding_records.SawSheet,
    moulding_records.Nailer,
    moulding_records.CrownSection,
    moulding_records.MouldingPiece,
    moulding_records.NailerPiece,
    moulding_records.CofferTrim,
    moulding_records.SideCover,
    moulding_records.Mouldings,
    board_records.Courses,
    board_records.BoardField,
    Sorption,
    board_records.WoodMoistureContent,
    board_records.BoardMovement,
    board_records.BoardLayout,
    board_records.SheetRip,
    records.Mark,
    records.RunMarks,
    records.Clearance,
    records.Caution,
    records.CasingChoice,
    backing_records.Joist,
    backing_records.JoistLines,
    backing_records.BackingPiece,
    backing_records.Bay,
    backing_records.BackingLine,
    backing_records.Forms,
    backing_records.BeamWeight,
    backing_records.Weights,
    backing_records.Hold,
    backing_records.Backing,
    backing_records.Level,
    backing_records.BeamGap,
    backing_records.Heights,
    survey_records.LengthCorrection,
    survey_records.AngleCorrection,
    survey_records.SurveyedCorner,
    survey_records.SurveyedWall,
    survey_records.SurveyReport,
    survey_records.CrookedRun,
    survey_records.StripBoard,
    survey_records.CrookedWall,
    survey_records.ModeCorner,
    survey_records.ModeCoffer,
    survey_records.CrookedMode,
    survey_records.CrookedRoom,
    followed_records.FollowedFace,
    followed_records.FollowedPiece,
    followed_records.FollowedBeam,
    followed_records.CofferTaper,
    followed_records.FollowedWalls,
    plane.Spot,
    outline_records.OutlineCorrection,
    outline_records.OutlineCheck,
    outline_records.OutlineWall,
    outline_records.SideStrip,
    outline_records.PartialSide,
    outline_records.PartialCorner,
    outline_records.CourseLength,
    outline_records.PartialHole,
    outline_records.PartialCoffer,
    outline_records.MeasuredCutSide,
    outline_records.MeasuredCutDiagonal,
    outline_records.MeasuredCutCoffer,
    outline_records.RoomColumn,
    outline_records.AngledBeam,
    outline_records.BeamSpan,
    outline_records.OutlinedRoom,
    crossing_records.BoardEnd,
    crossing_records.CrossingPlace,
    crossing_records.CrossingEnd,
    crossing_records.Crossing,
    crossing_records.PiecePlace,
    crossing_records.CutPiece,
    level_records.StationLevel,
    level_records.LevelPlace,
    level_records.Sag,
    level_records.BeamLevel,
    level_records.Levels,
    fitting_records.Wait,
    fitting_records.FittingStep,
    fitting_records.Passing,
    fitting_records.Fitting,
    item_records.ItemConflict,
    item_records.ClearPlace,
    item_records.CeilingItem,
    item_records.ClearCount,
    item_records.CountSearch,
    item_records.BeamAtFeature,
    item_records.WallFeatureCheck,
    item_records.ItemLayout,
    plan_records.PieceOnStick,
    plan_records.Stick,
    plan_records.PatternPart,
    plan_records.CutPattern,
    plan_records.StockTaken,
    plan_records.PieceValue,
    plan_records.StockHolds,
    plan_records.Certificate,
    plan_records.LengthChoice,
    plan_records.OneLength,
    plan_records.MaterialPlan,
    plan_records.LengthPlans,
    sheet_records.SheetCut,
    sheet_records.PanelOnSheet,
    sheet_records.SheetOffcut,
    sheet_records.CutSheet,
    sheet_records.SheetTaken,
    sheet_records.PanelValue,
    sheet_records.SheetHolds,
    sheet_records.SheetCertificate,
    sheet_records.SheetPlan,
    sheet_records.SheetPlans,
    lone_run.LoneBeam,
    lone_run.LoneWallBeam,
    lone_run.LoneRun,
    lone_boards.LoneBoards,
    opening_records.MeasuredSide,
    opening_records.MeasuredDiagonal,
    opening_records.OpeningCorner,
    opening_records.MeasuredOpening,
    opening_records.CornerCut,
    opening_records.OutOfSquareCrown,
    opening_records.PanelCorner,
    opening_records.TaperedPanel,
    opening_records.TaperedRip,
    opening_records.TaperedCourse,
    opening_records.TaperedField,
    opening_records.MeasuredOpenings,
    part_records.Material,
    part_records.PartEnd,
    part_records.PartPlace,
    part_records.Part,
    quantity_records.Quantity,
    taken_off.TakenCeiling,
    estimate_records.EstimateLine,
    estimate_records.Unpriced,
    estimate_records.LaborCount,
    estimate_records.Totals,
    estimate_records.Estimate,
    estimate_records.LineDifference,
    estimate_records.Comparison,
    material_records.Bought,
    material_records.PartOnLine,
    material_records.LinePlan,
    material_records.MaterialLine,
    material_records.BoardDirection,
    material_records.MaterialList,
    option_records.Judged,
    option_records.OptionRun,
    option_records.SticksBought,
    option_records.CrownStock,
    option_records.Behind,
    option_records.Option,
    option_records.SearchCounts,
    option_records.NotSearched,
    option_records.NudgeChange,
    option_records.OptionCost,
    option_records.Nudge,
    option_records.Nudges,
    sheet_set.SheetEntry,
    sheet_index.SetIndex,
    Stock,
    Assumption,
    PublishedSize,
)

_PLAIN: Mapping[object, str] = {int: "integer", str: "string", bool: "boolean", NoneType: "null"}

_VALUES: Mapping[object, str] = {Length: "Length", Angle: "Angle", Decimal: "Money"}

_FIGURES: Mapping[object, str] = {
    Length: "LengthFigure",
    Angle: "AngleFigure",
    int: "CountFigure",
    Fraction: "NumberFigure",
    Decimal: "MoneyFigure",
}


def reference(name: str) -> Json:
    """A pointer to a schema kept under its name."""
    return {"$ref": f"#/components/schemas/{name}"}


def record_schemas() -> dict[str, Json]:
    """The schema of every record in an answer, by name."""
    found = {record.__name__: _record(record) for record in RECORDS}
    thickness = {
        "type": "object",
        "required": ["least", "most"],
        "properties": {
            "least": {**reference("Length"), "description": "The least [length]."},
            "most": {**reference("Length"), "description": "The greatest [length]."},
        },
    }
    words = ALL_WORDS["Stock"]["thickness_range"]
    found["Stock"]["properties"]["thickness_range"] = {**thickness, "description": words}
    return found


def _record(record: type) -> Json:
    words, hints = ALL_WORDS[record.__name__], get_type_hints(record)
    names = [field.name for field in fields(record)]
    return {
        "type": "object",
        "description": (record.__doc__ or "").split("\n", maxsplit=1)[0],
        "required": names,
        "properties": {
            name: {**schema_of(hints[name]), "description": words[name]} for name in names
        },
    }


def schema_of(hint: Any) -> Json:
    """Turn the type of a record's field into the schema of what is written for it."""
    if hint == FigureValue:
        return {"anyOf": [reference("Length"), {"type": "integer"}, {"type": "string"}]}
    origin = get_origin(hint)
    if origin is not None:
        return _generic(hint, origin)
    if hint in _VALUES:
        return reference(_VALUES[hint])
    if hint in _PLAIN:
        return {"type": _PLAIN[hint]}
    if issubclass(hint, Enum):
        return {"type": "string", "enum": [member.value for member in hint]}
    return reference(hint.__name__)


def _generic(hint: Any, origin: Any) -> Json:
    parts = get_args(hint)
    if origin is Figure:
        return reference(_FIGURES[parts[0]])
    if origin is Literal:
        return {"type": "string", "enum": list(parts)}
    if origin in (Union, UnionType):
        return {"anyOf": [schema_of(part) for part in parts]}
    if origin is tuple:
        return _array(parts)
    return {"type": "object", "additionalProperties": schema_of(parts[1])}


def _array(parts: tuple[Any, ...]) -> Json:
    """A tuple of any length, or of a fixed one."""
    array = {"type": "array", "items": schema_of(parts[0])}
    if parts[-1] is Ellipsis:
        return array
    return {**array, "minItems": len(parts), "maxItems": len(parts)}
