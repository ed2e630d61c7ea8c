"""The outline of what a take-off goes by: every name it may have, what it means, its unit."""

import re
from fractions import Fraction

from lacunar.exchange import fields, shaped_fields
from lacunar.exchange.fields import SpecField, wrong_type
from lacunar.exchange.schema_base import SpecSchema
from lacunar.model.take_off import Coverage, CoverageUnit, FinishKind, InsulationOver

COVERAGE = r"[0-9]{1,6}(\.[0-9]{1,4})? ?(ft2/gal|m2/L)"
"""How a coverage is written."""

_COVERAGE = re.compile(r"(?P<amount>[0-9.]+) ?(?P<unit>ft2/gal|m2/L)")
_WHOLE = re.compile(COVERAGE)


class CoverageText(SpecField[Coverage]):
    """What area a volume covers, with its unit."""

    def __init__(self, description: str) -> None:
        super().__init__(
            f"{description} [square feet to a US gallon, or square meters to a liter] Text such as"
            ' "350 ft2/gal" or "9 m2/L".'
        )

    def read(self, value: object) -> Coverage:
        """A coverage, exactly as written."""
        if isinstance(value, str) and _WHOLE.fullmatch(value):
            match = _COVERAGE.fullmatch(value)
            assert match is not None, value
            return Coverage(Fraction(match["amount"]), CoverageUnit(match["unit"]))
        raise wrong_type(value, 'a coverage, as text such as "350 ft2/gal" or "9 m2/L"')


def _share(of: str) -> fields.Ratio:
    return fields.Ratio(f"{of} [ratio], like 0.1 for a tenth more.")


class WasteSchema(SpecSchema):
    """What is added to what is needed, as a share of it."""

    beams = _share("Of sides, bottoms and flat boards")
    framing = _share("Of backing, cleats, blocks and nailers")
    mouldings = _share("Of crown and flat mouldings")
    sheets = _share("Of sheets")
    boards = _share("Of boards that fill coffers")
    finish = _share("Of adhesive, insulation, primer and paint")


class NailSpacingSchema(SpecSchema):
    """The most between two nails of a row."""

    sides = fields.Distance("Sides of beams, one row, and upper boards of flat beams, two.")
    bottoms = fields.Distance("Bottoms, a row along each edge.")
    mouldings = fields.Distance("Crown, a row along each edge, and flat mouldings, one row.")
    panels = fields.Distance("Sheet panels, all round.")
    boards = fields.Distance("Boards that fill coffers, one row.")


class AdhesiveSchema(SpecSchema):
    """How far adhesive goes."""

    bead_per_cartridge = fields.Distance("How long a bead one cartridge gives.")
    bead_spacing = fields.Distance("From bead to bead behind a sheet panel.")


class FinishSchema(SpecSchema):
    """Primer and paint on beams, mouldings and panels."""

    kind = fields.OneOf("What is counted.", FinishKind)
    primer_coats = fields.Count("How many coats of primer [count].")
    paint_coats = fields.Count("How many coats of paint [count].")
    primer_coverage = CoverageText("How much one coat of primer covers.")
    paint_coverage = CoverageText("How much one coat of paint covers.")


class TakeOffSchema(SpecSchema):
    """What a take-off goes by; nothing of it changes what is built."""

    length_allowance = fields.Distance("What every part is cut longer than its net length.")
    width_allowance = fields.Distance("What every ripped part is ripped wider than its net width.")
    blocking = shaped_fields.StockPiece(
        "Stock of blocks between joists and of the strips that carry seams."
    )
    cleat_width = fields.Distance("Width of the cleats a casing's sides are fixed to.")
    waste = fields.ObjectOf(WasteSchema, "What is added for waste.")
    nail_spacing = fields.ObjectOf(NailSpacingSchema, "How far apart finish nails are.")
    adhesive = fields.ObjectOf(AdhesiveSchema, "How far adhesive goes.")
    insulation = fields.OneOf("What insulation is counted over.", InsulationOver)
    finish = fields.ObjectOf(FinishSchema, "Primer and paint.")
