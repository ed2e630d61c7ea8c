"""What the queries of each operation may hold: every name, what it means, its unit."""

from enum import StrEnum
from typing import ClassVar

from lacunar.exchange import fields, query_reading
from lacunar.exchange.estimate_tables import EstimateTable
from lacunar.exchange.material_tables import MaterialTable
from lacunar.exchange.schema_base import SpecSchema
from lacunar.exchange.take_off_tables import TakeOffTable
from lacunar.layout.moulding_records import Rake
from lacunar.measure.units import Units
from lacunar.model import limits
from lacunar.model.drawing import Paper
from lacunar.model.grid import Parity
from lacunar.model.published_stock import PublishedKind
from lacunar.model.room import RunName


class YesOrNo(StrEnum):
    """How yes and no are written in a query."""

    NO = "0"
    YES = "1"


class SheetFile(StrEnum):
    """What sheets are sent in: a PDF or an archive of many, one by itself, or their index alone."""

    PDF = "pdf"
    SVG = "svg"
    PNG = "png"
    DXF = "dxf"
    ZIP = "zip"
    JSON = "json"


_UNITS_TOLD = "The units the answer is told and marked in, if not the spec's own."


class TableMedia(StrEnum):
    """What a table can be sent as."""

    JSON = "json"
    CSV = "csv"


class BookMedia(StrEnum):
    """What several tables can be sent as: JSON, one of them as CSV, or a workbook of all."""

    JSON = "json"
    CSV = "csv"
    XLSX = "xlsx"


class OptionMedia(StrEnum):
    """What options can be sent as: JSON, or small plans of them on sheets."""

    JSON = "json"
    PDF = "pdf"


class NumberForm(StrEnum):
    """How one bare value is written."""

    DECIMAL = "decimal"
    FRACTION = "fraction"


class ErrorForm(StrEnum):
    """How a refusal reaches a caller who cannot see a status."""

    STATUS = "status"
    TEXT = "text"


class DivisionValue(StrEnum):
    """The values of a division that can be had by themselves."""

    COFFERS = "coffers"
    CLEAR_TOTAL = "clear_total"
    OPENING = "opening"
    NEAR = "near"
    CENTER = "center"
    FAR = "far"
    NEAR_MARK = "near_mark"
    CENTER_MARK = "center_mark"
    FAR_MARK = "far_mark"


class SawValue(StrEnum):
    """The values of saw settings that can be had by themselves."""

    NESTED_MITER = "nested_miter"
    FLAT_MITER = "flat_miter"
    FLAT_BEVEL = "flat_bevel"
    DROP = "drop"
    PROJECTION = "projection"
    CEILING_EDGE = "ceiling_edge"
    RAKED_HEIGHT = "raked_height"
    APART = "apart"
    RUN_DROP = "run_drop"
    RUN_FACE = "run_face"
    WIDER = "wider"


class StockValue(StrEnum):
    """The values of a size of stock that can be had by themselves."""

    THICKNESS = "thickness"
    WIDTH = "width"


class OnFace(StrEnum):
    """What stands at a wall, or on the face of its soffit."""

    NONE = "none"
    HALF = "half"
    FULL = "full"


class NoQuery(SpecSchema):
    """No name is known."""


class LayoutQuery(SpecSchema):
    """How a layout is told."""

    trace = query_reading.Flag("Add rule, formula and operands to every figure.", YesOrNo)
    units = fields.OneOf(_UNITS_TOLD, Units)


class TakeOffQuery(SpecSchema):
    """How a take-off is told."""

    format = fields.OneOf("What it is sent as, before what Accept says.", BookMedia)
    table = fields.OneOf("Which table is sent as CSV; parts if left out.", TakeOffTable)
    trace = query_reading.Flag("Add rule, formula and operands to every figure.", YesOrNo)
    units = fields.OneOf(_UNITS_TOLD, Units)


class MaterialQuery(SpecSchema):
    """How a material list is told."""

    format = fields.OneOf("What it is sent as, before what Accept says.", BookMedia)
    table = fields.OneOf("Which table is sent as CSV; the order if left out.", MaterialTable)
    trace = query_reading.Flag("Add rule, formula and operands to every figure.", YesOrNo)
    units = fields.OneOf(_UNITS_TOLD, Units)


class OptionsQuery(SpecSchema):
    """How options are told."""

    format = fields.OneOf("What they are sent as, before what Accept says.", OptionMedia)
    trace = query_reading.Flag("Add rule, formula and operands to every figure.", YesOrNo)


class EstimateQuery(SpecSchema):
    """How an estimate is told."""

    format = fields.OneOf("What it is sent as, before what Accept says.", BookMedia)
    table = fields.OneOf("Which table is sent as CSV; lines if left out.", EstimateTable)
    trace = query_reading.Flag("Add rule, formula and operands to every figure.", YesOrNo)
    units = fields.OneOf(_UNITS_TOLD, Units)


class DrawingQuery(SpecSchema):
    """Which sheets are drawn, and how they are sent."""

    format = fields.OneOf("What the sheets are sent in, before what Accept says.", SheetFile)
    sheets = query_reading.SheetIds(
        "Sheets to be sent, by id, parted by commas; all of them if left out."
    )
    dpi = query_reading.Dpi(f"Pixels to the inch of a PNG; {limits.USUAL_DPI} if left out.")
    units = fields.OneOf(_UNITS_TOLD, Units)
    paper = fields.OneOf("The paper the sheets are drawn on, if not the spec's own.", Paper)


AS_WORDS = "How a bare value is written: to 6 decimals, or as a tape reads it, rounded to mark_to."
_SAW_AS = f"{AS_WORDS} An angle as a saw is set, to a tenth of a degree."
ON_ERROR_WORDS = (
    "text: a refusal is a 200 with one line starting #ERR, for a cell that sees no status."
)
FORMAT_WORDS = "What the table is sent as, before what Accept says."


class DivisionQuery(SpecSchema):
    """One run, and how its division is told."""

    class Meta(SpecSchema.Meta):
        """`as` is a word of Python's own, so that it cannot stand below."""

        include: ClassVar = {"as": fields.OneOf(AS_WORDS, NumberForm)}

    needed = ("span", "beam_width")

    span = fields.Distance("The run between its finished wall faces.")
    beam_width = fields.Distance("Finished width of every beam between its side faces.")
    coffers = query_reading.CountText("How many coffers.")
    largest_opening = fields.Distance("As few coffers as keep every clear opening within this.")
    wished_opening = fields.Distance("As many coffers as bring openings nearest to this.")
    parity = fields.OneOf("Odd centers a coffer in the run, even a beam.", Parity)
    held = fields.Distance("One size for the inner coffers; the two border coffers take the rest.")
    weights = query_reading.WeightList("Shares of the clear total, one per coffer, by commas.")
    start = fields.OneOf("What stands at the start wall, or on its soffit's face.", OnFace)
    end = fields.OneOf("What stands at the end wall, or on its soffit's face.", OnFace)
    start_soffit = fields.Distance("Width of a soffit along the start wall.")
    end_soffit = fields.Distance("Width of a soffit along the end wall.")
    run = fields.OneOf("The run it is, which decides the ids of beams and walls.", RunName)
    units = fields.OneOf("The units of bare numbers, and of the answer.", Units)
    mark_to = fields.MarkStep("The step marks are rounded to, like 1/16 or 1 mm.")
    trace = query_reading.Flag("Add rule, formula and operands to every figure.", YesOrNo)
    format = fields.OneOf(FORMAT_WORDS, TableMedia)
    field = fields.OneOf("One value instead of all, as bare text.", DivisionValue)
    number = query_reading.NumberFrom1("Which opening or beam the field is of, counted from 1.")
    on_error = fields.OneOf(ON_ERROR_WORDS, ErrorForm)


class SawQuery(SpecSchema):
    """A corner, a crown and the saw it is cut on, and how the settings are told."""

    class Meta(SpecSchema.Meta):
        """`as` is a word of Python's own, so that it cannot stand below."""

        include: ClassVar = {"as": fields.OneOf(_SAW_AS, NumberForm)}

    needed = ("corner", "spring_from_wall")

    corner = fields.Degrees(
        "The angle between the walls, measured inside the room: 90 is square, past 180 an outside"
        " corner."
    )
    spring_from_wall = fields.Degrees(
        "The angle between the crown's flat back and the wall: of crown sold as 38/52, 38."
    )
    face = fields.Distance("Width across the crown's face, for its drop and projection.")
    slope = fields.Degrees(
        "Of a raked run that meets a level one at this corner: how steep it is, above level."
    )
    rake = fields.OneOf("Which way the raked run goes, away from the corner.", Rake)
    fence_height = fields.Distance(
        "The tallest crown the saw takes nested: upright, from its table up its fence."
    )
    most_miter = fields.Degrees("How far the saw's table turns from a square cut.")
    most_bevel = fields.Degrees("How far the saw's blade tilts from upright.")
    units = fields.OneOf("The units of bare numbers, and of the answer.", Units)
    mark_to = fields.MarkStep("The step lengths are rounded to in words, like 1/16 or 1 mm.")
    trace = query_reading.Flag("Add rule, formula and operands to every figure.", YesOrNo)
    format = fields.OneOf(FORMAT_WORDS, TableMedia)
    field = fields.OneOf("One value instead of all, as bare text.", SawValue)
    on_error = fields.OneOf(ON_ERROR_WORDS, ErrorForm)


class StockQuery(SpecSchema):
    """Which sizes of stock are listed, and how they are told."""

    class Meta(SpecSchema.Meta):
        """`as` is a word of Python's own, so that it cannot stand below."""

        include: ClassVar = {"as": fields.OneOf(AS_WORDS, NumberForm)}

    kind = fields.OneOf("Only this published list.", PublishedKind)
    name = fields.Text("Only the size of this trade name, like 1x8.", limits.STOCK_NAME)
    units = fields.OneOf("The units the answer is told in.", Units)
    format = fields.OneOf(FORMAT_WORDS, TableMedia)
    field = fields.OneOf("One value of the named size, as bare text.", StockValue)
    on_error = fields.OneOf(ON_ERROR_WORDS, ErrorForm)
