"""Material lists: what is to be bought for one ceiling or several."""

from lacunar.api import material_examples
from lacunar.api.media import CSV, XLSX, table_or_book
from lacunar.api.operation import JSON, Answer, Asked, Media, Operation
from lacunar.exchange.json_bytes import json_bytes
from lacunar.exchange.material_tables import MaterialTable
from lacunar.exchange.query_schema import MaterialQuery
from lacunar.workflow.material_list import (
    materials_answer,
    materials_csv,
    materials_xlsx,
    prepare_materials,
)


def material_list(asked: Asked) -> Answer:
    """One ceiling or several as their material list."""
    query = asked.query
    prepared = prepare_materials(asked.document, query.get("units"))
    if asked.media == CSV:
        which = query.get("table", MaterialTable.ORDER)
        return Answer(materials_csv(prepared, which), f"material-list-{which}.csv")
    if asked.media == XLSX:
        return Answer(materials_xlsx(prepared), "material-list.xlsx")
    trace = query.get("trace", False)
    return Answer(json_bytes(materials_answer(prepared, trace=trace)))


OPERATIONS = (
    Operation(
        method="POST",
        path="/v1/material-lists",
        id="createMaterialList",
        tag="Ceilings",
        summary="List what to buy for one ceiling or several",
        description=(
            "Takes a ceiling's spec, or several that are pooled, and what is sold and on hand, if"
            " that is told; answers with a line for each material: sticks by length and sheets by"
            " size as cutting plans lay all parts out in them, boards, and packs of fasteners,"
            " adhesive, insulation, primer and paint. Each line has what is needed, waste apart"
            " from it, what is left over, what to buy, the part marks behind it, what is proven of"
            " the plan, and what buying one length alone would come to. Parts longer than all"
            " stock are planned as pieces that are joined. Where nothing is told of a material,"
            " usual lengths are assumed and listed. Boards are compared with boards the other way."
            " Nothing is stored."
        ),
        media=(
            Media(JSON, {"$ref": "#/components/schemas/MaterialListAnswer"}, "The material list."),
            Media(
                CSV,
                {"type": "string"},
                "One table, a row to each thing to be bought if `table` says nothing else.",
            ),
            Media(XLSX, {"type": "string", "format": "binary"}, "All tables, a sheet to each."),
        ),
        statuses=(400, 406, 409, 413, 415, 422),
        answer=material_list,
        query=MaterialQuery(),
        chosen=table_or_book,
        document="StockedCeilings",
        examples=material_examples.EXAMPLES,
    ),
)
