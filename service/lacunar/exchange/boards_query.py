"""A question about the boards of one opening: every name it may have, and how it is read."""

from enum import StrEnum
from typing import ClassVar

from lacunar.exchange import fields, panel_fields, query_reading
from lacunar.exchange.query_schema import (
    AS_WORDS,
    FORMAT_WORDS,
    ON_ERROR_WORDS,
    ErrorForm,
    NumberForm,
    TableMedia,
    YesOrNo,
)
from lacunar.exchange.schema_base import SpecSchema
from lacunar.measure.units import Units
from lacunar.model.boards import BoardName, BoardSpecies, CenteredOn, Cut, Fastening


class BoardsValue(StrEnum):
    """The values of an opening's boards that can be had by themselves."""

    COURSES = "courses"
    EDGE = "edge"
    FIRST_RIP = "first_rip"
    LAST_RIP = "last_rip"
    LINEAL = "lineal"
    COVERAGE = "coverage"
    LINEAL_FACTOR = "lineal_factor"
    SHRINK = "shrink"
    SWELL = "swell"


class BoardsQuestion(SpecSchema):
    """One opening and the boards across it; what moves them stands flat beside the rest."""

    needed = ("opening",)

    opening = fields.Distance("What the courses lie across, between the faces they end at.")
    length = fields.Distance("How long each board is.")
    board = fields.OneOf("A nominal size whose face cover is published.", BoardName)
    cover = fields.Distance("The face that one board covers.")
    tongue = fields.Distance("What a board is wider than it covers.")
    gap = fields.Distance("Left open at both edges.")
    centered_on = fields.OneOf(
        "What lies on the middle line; left out, whichever gives wider edge boards.", CenteredOn
    )
    species = fields.OneOf("The wood, if its movement is published.", BoardSpecies)
    cut = fields.OneOf("How the boards lay in the log.", Cut)
    coefficient = panel_fields.Number(
        "Where the species is not listed: the part of its width that a board gains for each percent"
        " of moisture."
    )
    fastening = fields.OneOf(
        "nailed: each board moves by itself; floating: all of them move as one.", Fastening
    )
    now = panel_fields.WoodMoisture("Moisture of the boards when they go up.")
    driest = panel_fields.WoodMoisture("Their least moisture in the years to come.")
    dampest = panel_fields.WoodMoisture("Their greatest moisture in the years to come.")
    trim_cover = fields.Distance("How far the trim reaches over the boards from where they end.")
    units = fields.OneOf("The units of bare numbers, and of the answer.", Units)
    mark_to = fields.MarkStep("The step that texts are rounded to, like 1/16 or 1 mm.")


class BoardsQuery(BoardsQuestion):
    """The question, and how its answer is told."""

    class Meta(SpecSchema.Meta):
        """`as` is a word of Python's own, so that it cannot stand below."""

        include: ClassVar = {"as": fields.OneOf(AS_WORDS, NumberForm)}

    trace = query_reading.Flag("Add rule, formula and operands to every figure.", YesOrNo)
    format = fields.OneOf(FORMAT_WORDS, TableMedia)
    field = fields.OneOf("One value instead of all, as bare text.", BoardsValue)
    on_error = fields.OneOf(ON_ERROR_WORDS, ErrorForm)
