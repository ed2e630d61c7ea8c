"""The outline of what a spec says of its drawing: paper, sheets, and the title block."""

from lacunar.exchange import fields
from lacunar.exchange.schema_base import SpecSchema
from lacunar.model import limits
from lacunar.model.drawing import Paper, SheetNumber, StoryPoles


class DrawingSchema(SpecSchema):
    """Paper, and the fields of the title block."""

    paper = fields.OneOf("The paper all sheets are laid out on.", Paper)
    sheets = fields.ListOf(
        fields.OneOf("A sheet's number.", SheetNumber), "Sheets to be issued.", len(SheetNumber)
    )
    story_poles = fields.OneOf("Story poles: a table alone, or at full size too.", StoryPoles)
    number = fields.Text("Document number.", limits.DOCUMENT_NUMBER)
    revision = fields.Text("Revision index.", limits.REVISION)
    date = fields.IsoDate("Date of issue, like 2026-03-02.")
    status = fields.Text("Document status.", limits.STATUS)
    owner = fields.Text("Legal owner.", limits.PERSON)
    creator = fields.Text("Who drew it.", limits.PERSON)
    approver = fields.Text("Who approved it.", limits.PERSON)
